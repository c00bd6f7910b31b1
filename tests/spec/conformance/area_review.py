"""The area ``review``: a setup held against the prescription beside it.

Rules about a setup and about its signs come from their pages. What a clause comes to is worked out by hand in
``test_clauses``, and the sum is written here.
"""

from tests.spec.conformance.canonical_bytes import digest
from tests.spec.conformance.kit import written
from tests.spec.conformance.laying import Area, Row, expecting, finding
from tests.validator.wellposed.consistency.ordinary import document, found
from tests.validator.wellposed.review.rules.held import BASE, held
from tests.validator.wellposed.review.test_clauses import ROWS, STILL

from wellposed.review.rules import RULES
from wellposed.review.signs import RULES as SIGNS

PAGE = "review.md#what-is-compared"
NEAR = "review.md#tolerance"
UNMOVED = {"unlisted": "unmoved"}
PLACES = {
    "sign-against-the-order": "/movements/0",
    "sign-against-the-prediction": "/predicted/0",
    "sign-mirrored": "/movements/0",
}
"""Where a sign is asked about: at its first table of movements, or at what is predicted."""
QUIET = {
    "sign-against-the-order": "No sign is asked about where teeth go the way that is ordered",
    "sign-against-the-prediction": "No sign is asked about where a measure goes the way that is predicted",
    "sign-mirrored": "No sign is asked about where both sides of an arch go alike",
}
CLAUSES = [
    ("1.5 mm of intrusion meets an order of 1 to 2 mm", PAGE,
     "1.5 mm of intrusion is between 1 and 2.",
     "1 <= 1.5 <= 2 mm"),
    ("0.9 mm of intrusion meets an order of 1 mm at least", NEAR,
     "0.9 mm is within 0.1 mm of 1.",
     "1 - 0.9 = 0.1 mm short, and 0.1 mm is let pass"),
    ("0.89 mm of intrusion does not meet an order of 1 mm at least", NEAR,
     "0.89 mm is not; it is 0.11 mm short, and short is above a bound of a negative sense.",
     "1 - 0.89 = 0.11 mm short, more than the 0.1 mm that is let pass"),
    ("Extrusion does not meet an order of intrusion", PAGE,
     "Extrusion is no intrusion.",
     "+1.5 mm, where -1 mm or less is ordered: 1.5 + 1 = 2.5 mm off"),
    ("An order of a movement that the setup does not state cannot be told", PAGE,
     "What the setup does not state cannot be told.",
     "no movement of 11 up or down is stated, nor that it stays"),
    ("An order of labial root torque is met by lingual crown torque", PAGE,
     "Labial root torque is lingual crown torque: the sign is turned.",
     "crown torque of -6 deg is 6 deg of labial root torque, and 6 >= 5"),
    ("An overbite kept within 0.5 mm is not met by 1 mm less", PAGE,
     "Overbite 3 mm, both upper centrals up by 1: 2 mm, kept within 0.5 it is 0.5 below.",
     "3 - 1 = 2 mm; the least is 3 - 0.5 = 2.5 mm, and 2.5 - 2 = 0.5 mm is more than 0.1"),
    ("A goal on a measure that was not measured cannot be told", PAGE,
     "A goal without one cannot be told.",
     "at most 3 mm of overjet: without a measurement there is no end value"),
    ("A space closed by half of it from each side is closed", PAGE,
     "A space of 1 mm, closed by half of it from each side.",
     "1 - 0.5 - 0.5 = 0 mm"),
    ("A space closed by half of it from one side is not", PAGE,
     "Closed from one side only: half is left.",
     "1 - 0.5 = 0.5 mm is left, more than 0.1"),
    ("1 mm of crowding is not resolved by 0.5 mm of enamel", PAGE,
     "0.5 mm of enamel leaves half a millimetre.",
     "1 - 0.5 = 0.5 mm of overlap is left, more than 0.2"),
    ("Enamel is within what is allowed at a contact and in all", PAGE,
     "Enamel within both bounds.",
     "0.3 <= 0.3 mm at the contact, 0.3 <= 0.3 mm in all"),
    ("Enamel taken twice at one contact is beyond what is allowed there", PAGE,
     "In two goes it is one sum.",
     "0.3 + 0.3 = 0.6 mm at the contact; 0.6 - 0.3 = 0.3 mm beyond"),
    ("An advance is passed by the incisor that goes furthest", PAGE,
     "An advance is passed by the tooth that goes furthest.",
     "1.4 - 1 = 0.4 mm beyond, more than 0.1"),
    ("Premolars 1 mm out on each side are within 2 mm of widening", PAGE,
     "A pair of premolars moved straight out by 1 mm each is under 2 mm of width.",
     "1 + 1 = 2 mm if both went straight across; they face forward a little, so it is less"),
    ("An exclusion of enamel reduction is met where none is taken", PAGE,
     "No enamel where none may be taken.",
     "0 mm is taken"),
    ("An attachment that is ordered and not there is not met", PAGE,
     "None is one too few.",
     "0 attachments on 13, where 1 is ordered: 0 - 1 = -1"),
    ("A bound of twenty aligners is not met by 21", PAGE,
     "Twenty aligners at most.",
     "21 - 20 = 1 aligner too many; counts are exact"),
    ("A retainer that the laboratory says is made is declared", PAGE,
     "The laboratory says that the retainer is made.",
     "a word of the laboratory; no position shows it"),
    ("A retainer that the laboratory says is not made is not met", PAGE,
     "Or that it is not.",
     "a word of the laboratory that it is not done"),
]  # fmt: skip
"""What is so, where it follows from, its row in ``test_clauses``, and the sum."""


def json_of(whole):
    return written({name: value for name, value in whole.items() if value is not None}).encode()


def row(sentence, page, members, expected, **said):
    """A setup of these members and the prescription it answers; ``prescription`` holds members of that."""
    order = document(**members.get("prescription", {}))
    answers = {"id": order["id"], "revision": order["revision"], "sha256": digest(order)}
    made = {**BASE, "answers": answers, **{name: value for name, value in members.items() if name != "prescription"}}
    return Row(sentence, page, json_of(made), expected, {"prescription": json_of(order)}, **said)


def of_page(members):
    """Members of a page as a pair of documents. ``computed`` of a page is what is measured where no tooth moves."""
    kept = dict(members)
    computed = kept.pop("computed", {})
    if not computed:
        return kept
    measured = [found(f"f{n}", measure, value) for n, (measure, value) in enumerate(computed.items(), 1)]
    return {**kept, **UNMOVED, "prescription": {"findings": measured}}


def of_signs():
    """Both examples of each page: what is asked about, and what is not."""
    for rule in SIGNS:
        page, place = f"rules.md#{rule.id}", PLACES[rule.id]
        asked = expecting("accept-with-findings", finding(rule.id, "ask", pointer=place), match="at-least")
        yield row(rule.title.rstrip("."), page, UNMOVED | dict(rule.fails), asked)
        quiet = expecting("accept", match="at-least", absent=[{"rule": rule.id}])
        yield row(QUIET[rule.id], page, UNMOVED | dict(rule.passes), quiet)


def of_rules():
    """The failing example of each page: what the rule by itself finds in it."""
    for rule in RULES:
        told = [finding(one.rule, str(one.severity), pointer=one.pointer) for one in rule.findings(held(**rule.fails))]
        expected = expecting("accept", *told, match="at-least")
        yield row(rule.title.rstrip("."), f"rules.md#{rule.id}", of_page(rule.fails), expected, level="should")


def of_clauses():
    """What is told of the clause ``c1``."""
    worked = {one.sentence: one for one in ROWS}
    for title, page, sentence, reason in CLAUSES:
        one = worked[sentence]
        expected = expecting("accept", match="at-least", clauses=[{"clause": "c1", "outcome": one.outcome}])
        members = {**STILL, **one.made, "prescription": one.order}
        yield row(title, page, members, expected, reason=reason)


def of_setups():
    """Setups that nothing is held against."""
    refused = expecting("reject", finding("unit-not-allowed", pointer="/movements/0/unit"))
    wrong = [{"variable": "out", "unit": "deg", "values": {"11": 1}}]
    yield row("A setup that is refused is not reviewed", "setup.md#movements", {"movements": wrong}, refused)
    cut = row("", "", {}, {})
    unreadable = expecting("unreadable", finding("not-json", line=1, column=1))
    yield Row("A setup that is no JSON is not reviewed", "setup.md#the-setup", b"Setup\n", unreadable, cut.beside)


def rows():
    yield from of_signs()
    yield from of_clauses()
    yield from of_setups()
    yield from of_rules()


AREA = Area("review", "review", "application/json", "input.json", tuple(rows()))
