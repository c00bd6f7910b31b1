"""The area ``signature``: documents signed without the program, and what a receiver has to say of them.

Which rules speak stands in the tables of the tests and on the pages of the rules; where, is written here.
"""

import json
from dataclasses import asdict

from tests.spec.conformance.canonical_bytes import digest
from tests.spec.conformance.laying import Area, Row, expecting, finding
from tests.validator.wellposed.exchange.arrivals import (
    DOCUMENT,
    NOW,
    STRANGER,
    header,
    sealed,
    sent,
    trusted,
)
from tests.validator.wellposed.exchange.test_rules import ARRIVALS
from tests.validator.wellposed.exchange.test_tampering import (
    CANONICAL,
    CHANGES,
    HEADERS,
    MALFORMED,
    SIGNATURE,
    SPELLINGS,
)

from wellposed.exchange import order
from wellposed.exchange.verification import RULES

PAGE = "signatures.md#what-a-receiver-checks"
WHERE = {
    "signature-left-out": "/prescriber/id",
    "issued-at-no-time": "/issued",
    "key-was-replaced": "/issued",
    "sender-not-named": "/laboratory/id",
    "key-of-another": "/prescriber/id",
    "addressed-elsewhere": "/laboratory/id",
    "revision-conflict": "/revision",
    "revision-overtaken": "/revision",
    "replaces-another": "/replaces",
    "revision-ahead": "/revision",
    "issued-in-the-future": "/issued",
}
"""Of the other rules no place in the document is told."""
WEIGHS = {rule.id: str(rule.severity) for rule in RULES}
HARMLESS = {"key-was-replaced"} | {rule.id for rule in order.RULES}
"""What leaves a document authentic."""
LATER = {"now": "2026-04-01T08:00:00Z"}
NO_LIST = ("a key whose end is no day", "a key whose revocation is no day")
"""A list of keys with these is none, and nothing is asked of it."""
FORMS = (
    "nothing",
    "no header",
    "with its payload",
    "a line break behind",
    "padded",
    "of 63 bytes",
    "another last letter",
    "as JSON",
    "a header with a name twice",
    "a header with a mark before",
    "two points",
    "letters of the other base64",
)
ASKING = (
    "RSA",
    "an empty algorithm",
    "without algorithm",
    "without key",
    "without type",
    "the type in other letters",
    "a key of its own",
    "an address of keys",
    "a certificate",
    "something critical",
    "a member nobody knows",
    "a key as a path",
)


def place(rule, document):
    """Where a rule speaks; of a first revision it is the next one's ``replaces`` that does not fit."""
    return "/revision" if rule == "replaces-another" and "replaces" not in document else WHERE.get(rule, "")


def expected(rules, document):
    """What is said where these rules speak."""
    found = [finding(rule, WEIGHS[rule], pointer=place(rule, document)) for rule in rules]
    if not set(rules) <= HARMLESS:
        return expecting("reject", *found)
    heavy = any(WEIGHS[rule] in ("stop", "ask") for rule in rules)
    return expecting("accept-with-findings" if heavy else "accept", *found, digest=digest(document))


def row(sentence, rules, arrived, page=PAGE):
    data, signature, keys, now, earlier = arrived
    beside = {"signature": signature, "trust": written(keys)}
    if earlier:
        beside["received"] = written([asdict(one) for one in earlier])
    kept = {name: content for name, content in beside.items() if content is not None}
    return Row(sentence, page, data, expected(rules, json.loads(data)), kept, now)


def written(value):
    return json.dumps(value, indent=1).encode() + b"\n"


def signed(data, signature):
    return data, signature, trusted(), NOW, []


def of_rules():
    """The failing example of each page."""
    for rule in RULES:
        told = {**(LATER if "setup" in rule.fails else {}), **rule.fails}
        yield row(f"{rule.title.rstrip('.')} ({rule.id})", [rule.id], sent(**told), f"rules.md#{rule.id}")


def of_arrivals():
    """Keys, senders, revisions and clocks that the pages do not have."""
    given = [rule.fails for rule in RULES]
    for sentence, (told, rules) in ARRIVALS.items():
        if told not in given and sentence not in NO_LIST:
            yield row(f"On arrival: {sentence}", rules, sent(**told))


def of_spellings():
    """The same content, and another, under one signature."""
    for sentence, data in SPELLINGS.items():
        if data != CANONICAL:
            yield row(f"Signed, and spelt otherwise: {sentence}", [], signed(data, SIGNATURE))
    for sentence, data in CHANGES.items():
        yield row(f"Changed after it was signed: {sentence}", ["signature-does-not-fit"], signed(data, SIGNATURE))


def of_signatures():
    """Signatures that have not their form, or ask for less."""
    for name in FORMS:
        yield row(f"A signature that is none: {name}", ["signature-form"], signed(CANONICAL, MALFORMED[name].encode()))
    for name in ASKING:
        members, rule = HEADERS[name]
        yield row(f"A header refused: {name}", [rule], signed(CANONICAL, sealed(DOCUMENT, head=header(**members))))
    theirs = sealed(DOCUMENT, STRANGER, header())
    yield row("A stranger names the trusted key", ["signature-does-not-fit"], signed(CANONICAL, theirs))


def rows():
    yield row("What is signed by its sender comes from its sender", [], sent())
    yield from of_rules()
    yield from of_arrivals()
    yield from of_spellings()
    yield from of_signatures()


AREA = Area("signature", "verify", "application/json", "input.json", tuple(rows()))
