"""Reviews made by hand: an invented order, an invented setup, and what a review says of the two."""

import json
from pathlib import Path

from wellposed.check import prescription_of
from wellposed.findings import Finding, Severity
from wellposed.model.setup import Setup
from wellposed.review.result import Compared, MeasureLine, Reviewed, SetupReview, Span, Unasked

EXAMPLES = Path(__file__).parents[5] / "examples"
UPPER = ["17", "16", "15", "14", "13", "12", "11", "21", "22", "23", "24", "25", "26", "27"]
LOWER = ["47", "46", "45", "44", "43", "42", "41", "31", "32", "33", "34", "35", "36", "37"]


def must(clause, **members):
    return {"id": clause, "strength": "must", **members}


def wish(clause, **members):
    return {"id": clause, "strength": "prefer", **members}


ORDER = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "RV-12",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "prescriber": {"id": "clinic-17/dr-2"},
    "laboratory": {"id": "lab-4"},
    "treat": {"arches": "both"},
    "patient": {"reference": "P-51C0", "age_years": 31, "growth": "complete", "dentition": "permanent"},
    "teeth": {"upper": UPPER, "lower": LOWER},
    "findings": [
        {"id": "f1", "measure": "overbite", "value": 4.5, "unit": "mm"},
        {"id": "f2", "measure": "overjet", "value": 3.0, "unit": "mm"},
        {"id": "f3", "measure": "lower-crowding", "value": 3.0, "unit": "mm"},
        {"id": "f4", "measure": "upper-spacing", "value": 0.0, "unit": "mm"},
        {"id": "f5", "measure": "lower-midline", "value": -1.0, "unit": "mm"},
        {"id": "f6", "tooth_measure": "rotation", "values": {"33": 20.0, "43": -8.0}, "unit": "deg"},
    ],
    "goals": [
        must("g1", align=["43", "42", "41", "31", "32", "33"], because=["f3", "f6"]),
        must("g2", measure="overbite", at_least=2, at_most=3, unit="mm", because=["f1"]),
        wish("g3", measure="lower-midline", at_least=-0.3, at_most=0.3, unit="mm", because=["f5"]),
        must("g4", measure="interincisal-angle", at_least=125, at_most=135, unit="deg"),
    ],
    "keep": [
        must("k1", measure="overjet", within=1.0, unit="mm"),
        must("k2", measure="lower-inter-canine-width", within=0.5, unit="mm"),
        must("k3", hold=["16", "26"]),
    ],
    "movements": [
        must("m1", teeth=["42", "41", "31", "32"], motion="intrusion", at_least=1.8, at_most=2.2, unit="mm"),
    ],
    "allow": [
        {
            "id": "a1",
            "use": "enamel-reduction",
            "contacts": ["43-42", "42-41", "41-31", "31-32", "32-33"],
            "per_contact": 0.4,
            "in_all": 1.6,
            "unit": "mm",
        },
        {"id": "a2", "use": "incisor-advance", "arch": "lower", "up_to": 1.0, "unit": "mm"},
    ],
    "exclude": [{"id": "x1", "means": "distal-movement"}],
    "attachments": [{"id": "t1", "must_not": ["11", "21"]}, {"id": "t2", "must": ["44", "34"], "reason": "movement"}],
    "staging": must(
        "s1",
        largest_steps=[{"variable": "vertical", "amount": 0.2, "unit": "mm"}],
        most_aligners=20,
        wear_interval_days=14,
    ),
    "process": [{"id": "v1", "step": "approval-before-making"}, {"id": "v2", "step": "new-scan"}],
    "retention": [{"id": "r1", "arch": "lower", "retainer": "bonded"}],
}
SETUP = {
    "format": "wellposed/setup",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "RV-12-S",
    "revision": 1,
    "issued": "2026-03-11T16:00:00+01:00",
    "answers": {"id": "RV-12", "revision": 1, "sha256": "0" * 64},
    "movements": [{"variable": "vertical", "values": {"42": -1.2, "41": -2.0}, "unit": "mm"}],
    "unlisted": "unmoved",
    "statements": [
        {"clause": "v1", "standing": "done"},
        {"clause": "r1", "standing": "changed", "words": "wire from 34 to 44"},
    ],
}


def order(**members):
    """The invented order, sound by our own check, with other members in place."""
    found = prescription_of(json.dumps(ORDER | members).encode())
    assert found is not None
    return found


def setup(**members):
    """The invented setup, with other members in place."""
    return Setup.model_validate_json(json.dumps(SETUP | members))


# what a review says, in short


def at(value):
    return Span(value, value)


def part(what, where, unit, asked, delivered, *, off=0.0, tolerance=0.1, met=True, before=None, why=None):
    told = Span(*delivered) if isinstance(delivered, tuple) else None if delivered is None else at(delivered)
    return Compared(what, where, unit, Span(*asked), before, told, off, tolerance, met, why)


def lacking(what, where, unit, asked, why, **more):
    return part(what, where, unit, asked, None, off=None, met=None, why=why, **more)


SECTIONS = {
    "g": "goals",
    "k": "keep",
    "m": "movements",
    "a": "allow",
    "x": "exclude",
    "e": "expect",
    "t": "attachments",
    "s": "staging",
    "v": "process",
    "r": "retention",
}
USUAL = {"a": "within", "v": "cannot-be-told", "r": "declared", "v1": "declared"}


def where_is(prescription, clause):
    section = SECTIONS[clause[0]]
    if section == "staging":
        return "/staging", prescription.staging
    items = getattr(prescription, section)
    number = next(number for number, item in enumerate(items) if item.id == clause)
    return f"/{section}/{number}", items[number]


def clause_ids(prescription):
    for section in SECTIONS.values():
        found = getattr(prescription, section) or ()
        yield from [found.id] if section == "staging" and found else [item.id for item in found]


def review(prescription, *, verdict="possible", unasked=(), measures=(), findings=(), profile=None, **told):
    """Every clause of the order met, used within or not shown, but for those told: outcome, parts and more."""
    clauses = []
    for clause in clause_ids(prescription):
        pointer, item = where_is(prescription, clause)
        usual = {"outcome": USUAL.get(clause, USUAL.get(clause[0], "met"))}
        given = {"strength": getattr(item, "strength", None)} | usual | told.get(clause, {})
        clauses.append(Reviewed(clause, SECTIONS[clause[0]], pointer, **given))
    ids = (prescription.id, prescription.revision), ("RV-12-S", 1)
    return SetupReview(*ids, verdict, tuple(clauses), tuple(unasked), tuple(measures), tuple(findings), profile)


def unmet(*parts, doing="setup", against=(), outcome="not-met"):
    return {"outcome": outcome, "parts": parts, "doing": doing, "against": against}


def fulfilled(*parts, outcome="met"):
    return {"outcome": outcome, "parts": parts}


# measures of the invented order


def line(measure, before, after, *, unit="mm", where="", claimed=None, agrees=None, tolerance=0.2, is_change=False):
    told = Span(*after) if isinstance(after, tuple) else None if after is None else at(after)
    linear = None if told is None else told.low
    return MeasureLine(measure, where, unit, before, told, linear, claimed, tolerance, agrees, is_change)


MEASURES = (
    line("overbite", 4.5, 2.5, claimed=2.5, agrees=True),
    line("overjet", 3.0, 2.6),
    line("lower-midline", -1.0, -0.2),
    line("lower-inter-canine-width", None, 0.2, is_change=True),
)
INTRUDED = fulfilled(*(part("vertical", tooth, "mm", (-2.2, -1.8), -2.0) for tooth in ("42", "41", "31", "32")))
OVERBITE = fulfilled(part("overbite", "", "mm", (2.0, 3.0), 2.5, before=4.5))
NO_ANGLE = {
    "outcome": "cannot-be-told",
    "parts": (lacking("interincisal-angle", "", "deg", (125.0, 135.0), "no-baseline"),),
}
REDUCED = fulfilled(
    part("reduction", "42-41", "mm", (None, 0.4), 0.3),
    part("reduction-in-all", "", "mm", (None, 1.6), 1.2),
    outcome="within",
)
USED = {"m1": INTRUDED, "g2": OVERBITE, "g4": NO_ANGLE, "a1": REDUCED}

# the reviews

CLEAN = review(order(), measures=MEASURES, **USED)

SHORT_OF = review(
    order(),
    measures=(
        line("overbite", 4.5, 3.3, claimed=2.5, agrees=False),
        line("overjet", 3.0, 3.4, claimed=3.3, agrees=True),
        line("lower-midline", -1.0, -0.8),
    ),
    unasked=(
        Unasked("out", "13", "mm", 0.6, 0.0, 0.1),
        Unasked("out", "23", "mm", 0.6, 0.0, 0.1),
        Unasked("torque", "14", "deg", 3.0, 0.0, 1.0),
        Unasked("out", "42", "mm", 1.3, 1.0, 0.1, "a2"),
        Unasked("out", "31", "mm", 1.4, 1.0, 0.1, "a2"),
        Unasked("reduction", "13-12", "mm", 0.3, 0.0, 0.1),
    ),
    **USED
    | {
        "m1": unmet(
            part("vertical", "42", "mm", (-2.2, -1.8), -1.2, off=0.6, met=False),
            part("vertical", "32", "mm", (-2.2, -1.8), -1.2, off=0.6, met=False),
        ),
        "g2": unmet(part("overbite", "", "mm", (2.0, 3.0), 3.3, off=0.3, met=False, before=4.5)),
        "g3": unmet(part("lower-midline", "", "mm", (-0.3, 0.3), -0.8, off=-0.5, met=False, before=-1.0)),
        "a1": unmet(
            part("reduction", "42-41", "mm", (None, 0.4), 0.6, off=0.2, met=False),
            part("reduction", "41-31", "mm", (None, 0.4), 0.6, off=0.2, met=False),
            part("reduction-in-all", "", "mm", (None, 1.6), 1.9, off=0.3, met=False),
            outcome="beyond",
        ),
        "a2": unmet(
            part("out", "42", "mm", (None, 1.0), 1.3, off=0.3, met=False),
            part("out", "31", "mm", (None, 1.0), 1.4, off=0.4, met=False),
            outcome="beyond",
        ),
    },
)

STEPS = review(
    order(),
    measures=MEASURES,
    findings=(
        Finding("note-may-instruct", Severity.CAUTION, "/notes/0/text"),
        Finding("unknown-member", Severity.NOTE, "/movements/0", {"name": "colour"}),
    ),
    **USED
    | {
        "g1": unmet(
            part("overlap", "", "mm", (0.0, 0.0), 1.4, off=1.4, tolerance=0.2, met=False),
            part("overlap", "43-42", "mm", (0.0, 0.0), 0.9, off=0.9, tolerance=0.2, met=False),
            part("overlap", "32-33", "mm", (0.0, 0.0), 0.5, off=0.5, tolerance=0.2, met=False),
            part("rotation-left", "33", "deg", (0.0, 0.0), 12.0, off=12.0, tolerance=5.0, met=False, before=20.0),
        ),
        "k3": unmet(
            part("along", "16", "mm", (0.0, 0.0), -0.5, off=-0.5, met=False),
            part("along", "26", "mm", (0.0, 0.0), -0.5, off=-0.5, met=False),
        ),
        "x1": unmet(
            part("along", "16", "mm", (0.0, None), -0.5, off=-0.5, met=False),
            part("along", "26", "mm", (0.0, None), -0.5, off=-0.5, met=False),
        ),
        "t1": unmet(part("attachment", "11", "1", (0.0, 0.0), 1.0, off=1.0, tolerance=0.0, met=False)),
        "t2": unmet(part("attachment", "34", "1", (1.0, 1.0), 0.0, off=-1.0, tolerance=0.0, met=False)),
        "s1": unmet(
            part("aligners", "lower", "1", (None, 20.0), 26.0, off=6.0, tolerance=0.0, met=False),
            part("wear-interval", "", "d", (14.0, 14.0), 10.0, off=-4.0, tolerance=0.0, met=False),
        ),
    },
)

WITHOUT_WORD = review(
    order(),
    measures=(line("overbite", 4.5, None), line("overjet", 3.0, (2.4, 3.1))),
    g1={"outcome": "cannot-be-told", "parts": (lacking("overlap", "", "mm", (0.0, 0.0), "not-stated"),)},
    g2={
        "outcome": "cannot-be-told",
        "parts": (part("overbite", "", "mm", (2.0, 3.0), (2.6, 3.4), off=0.0, met=None, before=4.5, why="hinge"),),
    },
    g4=NO_ANGLE,
    m1={
        "outcome": "cannot-be-told",
        "parts": tuple(lacking("vertical", one, "mm", (-2.2, -1.8), "not-stated") for one in ("42", "41")),
    },
    s1={"outcome": "cannot-be-told", "parts": (lacking("aligners", "lower", "1", (None, 20.0), "not-stated"),)},
)

ANOTHER = review(
    order(revision=2, replaces="0" * 64),
    findings=(
        Finding(
            "setup-answers-another",
            Severity.STOP,
            "/answers",
            {"id": "RV-12", "revision": 1, "own_id": "RV-12", "own_revision": 2},
        ),
    ),
    measures=MEASURES,
    **USED | {"g2": unmet(part("overbite", "", "mm", (2.0, 3.0), 3.3, off=0.3, met=False, before=4.5))},
)


def example(name):
    found = prescription_of((EXAMPLES / name / "prescription.json").read_bytes())
    assert found is not None
    return found


AT_ODDS_ORDER = example("intrusion-with-overbite-kept")
AT_ODDS = review(
    AT_ODDS_ORDER,
    verdict="contradictory",
    measures=(
        line("overbite", 2.5, 0.6),
        line("gingival-display-on-smiling", 4.0, 2.1),
        line("incisor-display-at-rest", 4.5, 2.6),
    ),
    k1=unmet(
        part("overbite", "", "mm", (2.0, 3.0), 0.6, off=-1.4, met=False, before=2.5),
        doing="prescription",
        against=("m1", "silence lower incisor-vertical", "silence upper posterior-vertical"),
    ),
    m1=fulfilled(*(part("vertical", tooth, "mm", (-2.2, -1.8), -1.9) for tooth in ("12", "11", "21", "22"))),
)

REVIEWS = {
    "clean": (CLEAN, order(), setup()),
    "short-of": (SHORT_OF, order(), setup()),
    "teeth-left-and-steps": (STEPS, order(), setup()),
    "without-a-word": (WITHOUT_WORD, order(), setup()),
    "answers-another": (ANOTHER, order(revision=2, replaces="0" * 64), setup()),
    "order-at-odds": (AT_ODDS, AT_ODDS_ORDER, setup()),
}
