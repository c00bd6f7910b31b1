"""The area ``fhir``: rows of the tables of the tests; expectations are those of the tables."""

import json

from tests.converters.wellposed_converters.fhir.samples import (
    FULL,
    PLAIN,
    bundle_of,
    changed,
    taken_out,
    without_original,
)
from tests.converters.wellposed_converters.fhir.test_malformed import (
    ALONE,
    LAST,
    ORDER,
    PROJECTIONS,
    SHAPES,
    TEXTS,
    WHOLE,
    doubled,
    spoilt,
)
from tests.converters.wellposed_converters.fhir.test_reading import ADDED, NO_MATTER
from tests.spec.conformance.canonical_bytes import digest
from tests.spec.conformance.laying import Area, Row, expecting, finding

PAGE = "fhir.md#reading-a-bundle"
LARGE = 5_000
WHOLE_ONES = (
    "a transaction",
    "no entries",
    "an entry without a name",
    "two entries of one name",
    "a modifier extension",
    "a document in no Base64",
    "another digest beside it",
)
ALONE_ONES = (
    "no order",
    "no digest",
    "another digest",
    "no series",
    "a member that is not known",
    "an amount in inches",
    "an amount that is a string",
    "a tooth there is not",
    "an observation of another list",
    "a measure there is not",
    "a tooth without a place",
    "units that differ",
    "a problem of no list",
    "a state there is not",
    "a moment without an offset",
)
BESIDE = ("an instruction", "that it is not to be done")


def written(bundle):
    return json.dumps(bundle, separators=(",", ":")).encode()


def refused(sentence, data, rule, place):
    one = finding(rule, pointer=place) if place is not None else finding(rule, line=1)
    return Row(f"Refused in a bundle: {sentence}", PAGE, data, expecting("reject", one, match="at-least"))


def kept(sentence, bundle, rule, severity, place, document=FULL):
    """A bundle of which the document is read all the same, and something is said."""
    outcome = "accept-with-findings" if severity == "ask" else "accept"
    said = expecting(outcome, finding(rule, severity, pointer=place), digest=digest(document))
    return Row(sentence, PAGE, written(bundle), said)


def read():
    plain = bundle_of(PLAIN)
    for name, bundle, document in (("a whole document", WHOLE, FULL), ("one without extensions", plain, PLAIN)):
        yield Row(f"A bundle is read: {name}", PAGE, written(bundle), expecting("accept", digest=digest(document)))
    alone = without_original(plain)
    yield kept("A bundle is read: its order alone", alone, "bundle-without-original", "note", "/entry", PLAIN)
    for sentence, place, value in NO_MATTER:
        yield kept(f"Noted in a bundle: {sentence}", changed(WHOLE, place, value), "bundle-bookkeeping", "note", place)
    for sentence, place, value, rule in ADDED:
        if sentence in BESIDE:
            yield kept(f"Asked about in a bundle: {sentence}", changed(WHOLE, place, value), rule, "ask", place)
    draft = changed(WHOLE, f"{ORDER}/status", "draft")
    yield kept("Asked about in a bundle: another status", draft, "bundle-differs", "ask", f"{ORDER}/status")
    lacking = taken_out(WHOLE, f"{ORDER}/intent")
    yield kept("Asked about in a bundle: no intent", lacking, "bundle-lacks", "ask", f"{ORDER}/intent")


def rows():
    yield from read()
    for sentence, data, rule, place in TEXTS:
        if rule and len(data) < LARGE:
            yield refused(sentence, data, rule, place)
    for sentence, bundle, pointer, value, rule, place in SHAPES:
        if sentence in WHOLE_ONES:
            yield refused(sentence, written(spoilt(bundle, pointer, value)), rule, place)
    for sentence, pointer, value, rule, place in PROJECTIONS:
        if sentence in ALONE_ONES:
            yield refused(sentence, written(spoilt(ALONE, pointer, value)), rule, place)
    yield refused("two documents", written(doubled(WHOLE, LAST)), "bundle-original-twice", None)


AREA = Area("fhir", "read", "application/fhir+json", "input.json", tuple(rows()))
