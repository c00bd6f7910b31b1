"""Bundles that are wrong, each in one way: the rule, the place, and no document made of it."""

import json

import pytest
from tests.converters.wellposed_converters.fhir.samples import (
    FULL,
    PLAIN,
    bundle_of,
    carried,
    changed,
    taken_out,
    without_original,
)

from wellposed.catalogue import rules
from wellposed.findings import Severity
from wellposed_converters.fhir.faults import ASKS, NOTES, RULES
from wellposed_converters.fhir.form import read

WHOLE, ALONE = bundle_of(FULL), without_original(bundle_of(PLAIN))
LAST = len(WHOLE["entry"]) - 1
ORDER, SERIES = "/entry/0/resource", "/entry/1/resource"
DATA = f"/entry/{LAST}/resource/content/0/attachment/data"
OUT = object()


def place_of(kind, number=0):
    """The place of a resource of a type."""
    found = [place for place, one in enumerate(ALONE["entry"]) if one["resource"]["resourceType"] == kind]
    return f"/entry/{found[number]}/resource"


def clause(name, nested=""):
    """The place of an extension of the order, or of one inside it."""
    extensions = ALONE["entry"][0]["resource"]["extension"]
    place = next(place for place, one in enumerate(extensions) if one["url"].endswith(f":{name}"))
    inner = [at for at, one in enumerate(extensions[place]["extension"]) if one["url"] == nested]
    return f"{ORDER}/extension/{place}" + (f"/extension/{inner[0]}" if nested else "")


OBSERVED, TEETH, PROBLEM, TOOTH = (
    place_of("Observation"),
    place_of("Observation", 2),
    place_of("Condition"),
    place_of("BodyStructure"),
)
ONE_TOOTH = place_of("Observation", 3)
KEEP, STEP = clause("keep", "within"), f"{SERIES}/extension/0/extension/2"

TEXTS = [
    ("nothing at all", b"", "document-empty", ""),
    ("no JSON", b"<Bundle/>", "not-json", ""),
    ("a list", b"[]", "not-an-object", ""),
    ("a byte order mark", b"\xef\xbb\xbf{}", "byte-order-mark", ""),
    ("Latin-1", b'{"resourceType": "B\xfcndel"}', "not-utf-8", ""),
    ("a name twice", b'{"resourceType": "Bundle", "resourceType": "Bundle"}', "duplicate-member", "/resourceType"),
    ("a comment", b'{"resourceType": "Bundle" /* ours */}', "not-json", ""),
    ("broken off", json.dumps(WHOLE).encode()[:5000], "not-json", None),
    ("no number", b'{"total": NaN}', "number-not-finite", "/total"),
    ("a number of many digits", b'{"total": 1.2345}', "number-form", "/total"),
    ("a lone surrogate", b'{"id": "\\ud800"}', None, "/id"),
    ("too deep", b'{"a":' * 70 + b"1" + b"}" * 70, "nesting-too-deep", None),
    ("nine million bytes", b'{"a": "' + b"x" * 9_000_000 + b'"}', "document-too-large", ""),
    ("large, and not UTF-8", b'{"a": "' + b"x" * 2_000_001 + b'\xff"}', "not-utf-8", ""),
    ("large, with a mark", b"\xef\xbb\xbf" + b" " * 2_000_001 + b"{}", "byte-order-mark", ""),
    ("large, and no JSON", b" " * 2_000_001 + b"{,}", "not-json", ""),
]

SHAPES = [
    ("a resource by itself", WHOLE, "/resourceType", "ServiceRequest", "bundle-of-another-type", "/resourceType"),
    ("no type of resource", WHOLE, "/resourceType", OUT, "missing-member", "/resourceType"),
    ("a transaction", WHOLE, "/type", "transaction", "bundle-of-another-type", "/type"),
    ("no type of bundle", WHOLE, "/type", OUT, "missing-member", "/type"),
    ("a type that is a number", WHOLE, "/type", 1, "wrong-kind", "/type"),
    ("no entries", WHOLE, "/entry", OUT, "missing-member", "/entry"),
    ("entries that are no list", WHOLE, "/entry", {}, "wrong-kind", "/entry"),
    ("an empty list of entries", WHOLE, "/entry", [], "bundle-without-order", "/entry"),
    ("an entry that is null", WHOLE, "/entry/2", None, "wrong-kind", "/entry/2"),
    ("an entry without a name", WHOLE, "/entry/2/fullUrl", OUT, "missing-member", "/entry/2/fullUrl"),
    ("an entry without a resource", WHOLE, "/entry/2/resource", OUT, "missing-member", "/entry/2/resource"),
    ("a resource that is a string", WHOLE, "/entry/2/resource", "x", "wrong-kind", "/entry/2/resource"),
    (
        "a resource of no type",
        WHOLE,
        "/entry/2/resource/resourceType",
        OUT,
        "missing-member",
        "/entry/2/resource/resourceType",
    ),
    (
        "two entries of one name",
        WHOLE,
        "/entry/3/fullUrl",
        WHOLE["entry"][2]["fullUrl"],
        "bundle-entry-twice",
        "/entry/3/fullUrl",
    ),
    (
        "a modifier extension",
        WHOLE,
        f"{ORDER}/modifierExtension",
        [],
        "bundle-modifier",
        f"{ORDER}/modifierExtension",
    ),
    (
        "a modifier extension deep inside",
        WHOLE,
        f"{SERIES}/parameter/0/modifierExtension",
        [{"url": "urn:x"}],
        "bundle-modifier",
        f"{SERIES}/parameter/0/modifierExtension",
    ),
    (
        "a modifier extension of an entry",
        WHOLE,
        "/entry/2/modifierExtension",
        [{"url": "urn:x"}],
        "bundle-modifier",
        "/entry/2/modifierExtension",
    ),
    (
        "a modifier under an odd name",
        WHOLE,
        f"{ORDER}/a",
        {"b/~": {"implicitRules": "x"}},
        "bundle-modifier",
        f"{ORDER}/a/b~1~0/implicitRules",
    ),
    ("rules of somebody", WHOLE, "/implicitRules", "urn:x", "bundle-modifier", "/implicitRules"),
    ("a document in no Base64", WHOLE, DATA, "#", "bundle-original-unreadable", DATA),
    ("Base64 broken into lines", WHOLE, DATA, "e30=\n", "bundle-original-unreadable", DATA),
    ("Base64 for urls", WHOLE, DATA, "-_-_", "bundle-original-unreadable", DATA),
    ("a document by its address", WHOLE, DATA, OUT, "bundle-original-unreadable", DATA),
    ("a document that is no JSON", WHOLE, DATA, "YWJj", "not-json", ""),
    ("a document that is no order", WHOLE, DATA, "e30=", "missing-member", "/format"),
    (
        "another digest beside it",
        WHOLE,
        f"/entry/{LAST}/resource/masterIdentifier/value",
        "0" * 64,
        "bundle-original-altered",
        f"/entry/{LAST}/resource/masterIdentifier/value",
    ),
]

PROJECTIONS = [
    ("no order", "/entry/0/resource/resourceType", "Basic", "bundle-without-order", "/entry"),
    ("no digest", f"{ORDER}/identifier/1", OUT, "bundle-without-digest", f"{ORDER}/identifier"),
    ("another digest", f"{ORDER}/identifier/1/value", "0" * 64, "bundle-not-whole", ORDER),
    ("no identifier", f"{ORDER}/identifier/0", OUT, "missing-member", ORDER),
    ("no series", "/entry/1/resource/resourceType", "Basic", "bundle-not-whole", ORDER),
    ("a clause without a url", f"{clause('goal')}/url", OUT, "missing-member", f"{clause('goal')}/url"),
    ("a member that is not known", f"{KEEP}/url", "inside", "unknown-member", f"{KEEP}/url"),
    ("a member without a value", f"{clause('keep', 'id')}/valueString", OUT, "missing-member", None),
    ("a member twice", f"{clause('keep', 'id')}/url", "strength", "missing-member", None),
    ("an amount without a unit", f"{KEEP}/valueQuantity/code", OUT, "missing-member", f"{KEEP}/valueQuantity/code"),
    ("an amount in inches", f"{KEEP}/valueQuantity/code", "[in_i]", "not-one-of", f"{KEEP}/valueQuantity/code"),
    ("an amount in a unit of another list", f"{KEEP}/valueQuantity/system", "urn:x", "not-one-of", None),
    ("an amount that is a string", f"{KEEP}/valueQuantity/value", "0.5", "wrong-kind", f"{KEEP}/valueQuantity/value"),
    ("an amount that is true", f"{KEEP}/valueQuantity/value", True, "wrong-kind", f"{KEEP}/valueQuantity/value"),
    ("no amount", f"{KEEP}/valueQuantity/value", OUT, "missing-member", f"{KEEP}/valueQuantity/value"),
    (
        "a tooth there is not",
        f"{clause('goal', 'align')}/valueCode",
        "19",
        "not-one-of",
        f"{clause('goal', 'align')}/valueCode",
    ),
    ("a tooth that is a number", f"{clause('goal', 'align')}/valueCode", 33, "wrong-kind", None),
    ("a motion there is not", f"{clause('movement', 'motion')}/valueCode", "sideways", "not-one-of", None),
    ("an observation without a value", f"{OBSERVED}/valueQuantity", OUT, "missing-member", None),
    (
        "an observation of another list",
        f"{OBSERVED}/code/coding/0/system",
        "http://loinc.org",
        "not-one-of",
        f"{OBSERVED}/code",
    ),
    ("an observation without a code", f"{OBSERVED}/code", OUT, "missing-member", f"{OBSERVED}/code"),
    (
        "a measure there is not",
        f"{OBSERVED}/code/coding/0/code",
        "overbit",
        "not-one-of",
        f"{OBSERVED}/code/coding/0/code",
    ),
    ("a finding without its id", f"{OBSERVED}/extension", OUT, "missing-member", OBSERVED),
    ("a tooth without a place", f"{ONE_TOOTH}/bodySite", OUT, "missing-member", f"{ONE_TOOTH}/bodySite"),
    ("a member that leads nowhere", f"{TEETH}/hasMember/0/reference", "urn:uuid:0", "unknown-reference", None),
    ("a member without a reference", f"{TEETH}/hasMember/0/reference", OUT, "missing-member", None),
    (
        "units that differ",
        f"{ONE_TOOTH}/valueQuantity/code",
        "deg",
        "bundle-units-differ",
        f"{ONE_TOOTH}/valueQuantity",
    ),
    ("a problem of no list", f"{PROBLEM}/code/coding", [], "not-one-of", f"{PROBLEM}/code"),
    ("evidence that leads nowhere", f"{PROBLEM}/evidence/0/detail/0/reference", "#a", "unknown-reference", None),
    (
        "a reason that is no condition",
        f"{ORDER}/reasonReference/0/reference",
        ALONE["entry"][1]["fullUrl"],
        "unknown-reference",
        None,
    ),
    ("information that leads nowhere", f"{ORDER}/supportingInfo/0/reference", "urn:uuid:0", "unknown-reference", None),
    ("a structure without a place", f"{TOOTH}/location", OUT, "missing-member", f"{TOOTH}/location"),
    ("a state there is not", f"{TOOTH}/extension/0/valueCode", "gold", "not-one-of", f"{TOOTH}/extension/0/valueCode"),
    ("a step that is a string", f"{STEP}/extension", "x", "wrong-kind", f"{STEP}/extension"),
    ("aligners counted in weeks", f"{SERIES}/parameter/1/valueQuantity/code", "wk", "not-one-of", None),
    ("aligners that are no number", f"{SERIES}/parameter/1/valueQuantity/value", "14", "wrong-kind", None),
    ("a patient by another system", f"{ORDER}/subject/identifier/system", "urn:x", "not-one-of", None),
    ("a patient by a resource", f"{ORDER}/subject/identifier", OUT, "missing-member", f"{ORDER}/subject/identifier"),
    ("a moment without an offset", f"{ORDER}/authoredOn", "2026-03-04T09:30:00", "wrong-form", f"{ORDER}/authoredOn"),
    ("no version", f"{ORDER}/extension/0/extension/0", OUT, "missing-member", ORDER),
    ("none of something far away", f"{ORDER}/extension/0/extension/2/valueString", "/a" * 9000, "wrong-form", ORDER),
    ("a note without words", f"{ORDER}/note/0/text", OUT, "missing-member", f"{ORDER}/note/0/text"),
]


def spoilt(bundle, pointer, value):
    return taken_out(bundle, pointer) if value is OUT else changed(bundle, pointer, value)


def held_to(found, sentence, rule, place):
    """The finding is there, at its place, stops, and nothing is given."""
    stops = [(one.rule, one.pointer) for one in found.findings if one.severity == Severity.STOP]
    matching = [one for one in stops if rule in (one[0], None) and place in (one[1], None)]
    assert (sentence, found.document, bool(matching)) == (sentence, None, True), stops


@pytest.mark.parametrize("sentence, data, rule, place", TEXTS, ids=[row[0] for row in TEXTS])
def test_a_text_that_is_wrong(sentence, data, rule, place):
    (found,) = read(data)
    held_to(found, sentence, rule, place)


@pytest.mark.parametrize("sentence, bundle, pointer, value, rule, place", SHAPES, ids=[row[0] for row in SHAPES])
def test_a_bundle_that_is_wrong(sentence, bundle, pointer, value, rule, place):
    held_to(carried(spoilt(bundle, pointer, value)), sentence, rule, place)


@pytest.mark.parametrize("sentence, pointer, value, rule, place", PROJECTIONS, ids=[row[0] for row in PROJECTIONS])
def test_a_projection_that_is_wrong_without_its_document(sentence, pointer, value, rule, place):
    held_to(carried(spoilt(ALONE, pointer, value)), sentence, rule, place)


def doubled(bundle, place):
    """The bundle with an entry a second time under another name."""
    again = {**bundle["entry"][place], "fullUrl": "urn:uuid:1"}
    return {**bundle, "entry": [*bundle["entry"], again]}


@pytest.mark.parametrize(
    "sentence, bundle, place, rule",
    [
        ("two documents", WHOLE, LAST, "bundle-original-twice"),
        ("two orders", ALONE, 0, "bundle-without-order"),
        ("two series", ALONE, 1, "too-many"),
    ],
)
def test_what_may_be_there_once(sentence, bundle, place, rule):
    held_to(carried(doubled(bundle, place)), sentence, rule, None)


def test_more_disagreements_than_can_be_told_stop_a_bundle():
    """A thousand findings are listed; where there are more, nobody has seen them all, and nothing is given."""
    strange = [{"url": f"urn:x:{number}"} for number in range(1001)]
    found = carried(changed(WHOLE, f"{ORDER}/note", strange))
    held_to(found, "too many", "too-many-faults", "")
    assert len(found.findings) == 1001


def test_every_rule_of_bundles_is_tried_and_none_is_new():
    spoken = [carried(spoilt(bundle, pointer, value)) for _, bundle, pointer, value, _, _ in SHAPES]
    spoken += [carried(spoilt(ALONE, pointer, value)) for _, pointer, value, _, _ in PROJECTIONS]
    spoken += [carried(doubled(WHOLE, LAST)), carried(changed(WHOLE, f"{ORDER}/status", "draft"))]
    spoken += [carried(ALONE), carried(changed(WHOLE, "/id", "1"))]
    spoken += [carried(changed(WHOLE, f"{ORDER}/x", 1)), carried(taken_out(WHOLE, f"{ORDER}/intent"))]
    found = {(one.rule, one.severity) for carry in spoken for one in carry.findings}
    assert RULES.keys() <= {rule for rule, _ in found}
    assert {rule for rule, _ in found} - RULES.keys() <= {one.id for one in rules()}
    assert {rule for rule, severity in found if severity == Severity.ASK} == ASKS
    assert {rule for rule, severity in found if severity == Severity.NOTE} == NOTES
