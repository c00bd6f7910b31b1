"""The sheet of a review: what a setup plans, what it makes of each clause, what moved though nothing opened it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.digests import digest
from wellposed.kinematics.mouth import Mouth
from wellposed.model import Prescription
from wellposed.model.setup import Setup
from wellposed.render.amounts import number, value
from wellposed.render.review.amounts import measure_name, reached
from wellposed.render.review.clause_words import in_words, part_of
from wellposed.render.review.delivered import grouped
from wellposed.render.review.head import summary
from wellposed.render.review.lists import declared, unasked
from wellposed.render.review.unmet import nearer_words
from wellposed.render.sheet.chart import arch_chart
from wellposed.render.sheet.gauges import gauges
from wellposed.render.sheet.page import Line, Listed, Page, Section, Table
from wellposed.render.sheet.parts import CLOSING, arches, digest_facts, findings, measures, notes, read_back, room
from wellposed.render.sheet.parts import running as foot
from wellposed.render.sheet.planned import Planning, planned
from wellposed.render.sheet.profiles import MEASURES
from wellposed.render.sheet.words import SENSES
from wellposed.render.text import headings
from wellposed.review.plan import Plan
from wellposed.review.requests import leaning, unopened
from wellposed.review.result import MeasureLine, Reviewed, SetupReview
from wellposed.vocabulary.motions import VARIABLES, Variable
from wellposed.vocabulary.teeth import ARCHES
from wellposed.vocabulary.teeth import in_words as tooth_in_words

__all__ = ["OUTCOMES", "review_sheet"]

OUTCOMES: Mapping[str, str] = MappingProxyType(
    {
        "met": "met",
        "not-met": "not met",
        "within": "within what is allowed",
        "beyond": "beyond what is allowed",
        "cannot-be-told": "cannot be told",
        "declared": "said by the laboratory",
    }
)
_DOING = {
    "setup": "another setup can meet it",
    "prescription": "no setup can meet it",
    "either": "it cannot be told whether a setup could",
}
_MOVED = (
    *("Tooth", "Along the arch, mm", "In or out, mm", "Up or down, mm"),
    *("Torque, °: the crown", "Tip, °: the crown", "Rotation, °: the side that goes in"),
)
_WAYS = {
    **SENSES,
    **{("torque", sign): words for sign, words in ((1, "out"), (-1, "in"))},
    **{(angle, sign): words for angle in ("tip", "rotation") for sign, words in ((1, "mesial"), (-1, "distal"))},
}
"""The senses under these headings."""


def review_sheet(prescription: Prescription, setup: Setup, review: SetupReview) -> Page:
    """The page of a setup beside the prescription it answers."""
    mouth, plan = Mouth(prescription), Plan(setup)
    case = Planning(mouth, plan, review)
    return Page(
        f"Setup {_name(setup)}, for prescription {_name(prescription)}",
        foot("Setup", setup),
        tuple(_facts(prescription, setup)),
        ("Held against the order.", summary(review)),
        (
            arches([arch_chart(planned(case, arch), planned=True) for arch in ARCHES], mouth, planned=True),
            *measures(gauges(mouth, MEASURES, review)),
            _clauses(prescription, setup, review),
            *_unopened(review),
            _measured(review),
            _movements(mouth, plan),
            room(mouth),
            findings(review.findings, headings("setup"), "What else the review found"),
            read_back(prescription),
            *notes(setup.notes),
        ),
        CLOSING,
        setup.issued,
    )


def _name(document: Prescription | Setup) -> str:
    return f"{document.id}, revision {document.revision}"


def _facts(prescription: Prescription, setup: Setup) -> Iterator[tuple[str, str]]:
    yield "Patient", prescription.patient.reference
    yield "Setup issued", setup.issued
    yield from digest_facts(setup)
    yield "Prescription issued", prescription.issued
    yield "Prescription SHA-256 (RFC 8785)", digest(prescription)


# clause by clause


def _clauses(prescription: Prescription, setup: Setup, review: SetupReview) -> Section:
    said = dict(declared(review.clauses, prescription, setup))
    rows = tuple(_clause(prescription, one, said.get(one.id, "")) for one in review.clauses)
    head = ("Clause", "What it says", "What the setup makes of it", "So it is")
    return Section("Clause by clause", (Table("Each clause of the prescription", head, rows, (8, 32, 38, 22)),))


def _clause(prescription: Prescription, one: Reviewed, said: str) -> tuple[str, ...]:
    part = part_of(prescription, one)
    told = "\n".join(grouped(one.parts, one.section, part))
    words = in_words(part)
    wish = "wished for: " if one.strength == "prefer" else ""
    doing = f": {_DOING[one.doing]}" if one.doing else ""
    leans = ", with what is counted on" if leaning(one) else ""
    stated = said.removeprefix(words).removeprefix(": ")
    return (
        one.id,
        f"{wish}{words}",
        stated or told or "nothing to compare",
        f"{OUTCOMES[one.outcome]}{leans}{doing}" + (f"\n{nearer_words(one.nearer)}" if one.nearer else ""),
    )


def _unopened(review: SetupReview) -> Iterator[Section]:
    items = tuple(("", (Line(line),)) for line in unasked(unopened(review)))
    if items:
        yield Section("What moved though nothing opened it", (Listed("", items),))


# tables of numbers


def _measured(review: SetupReview) -> Section:
    """Every measure; what the laboratory says of them only where it says anything."""
    rows = tuple(_measure(line) for line in review.measures)
    head: tuple[str, ...] = ("Measure", "Today", "As planned", "As the laboratory says", "Does that agree")
    widths: tuple[int, ...] = (30, 18, 20, 18, 14)
    if all(line.claimed is None for line in review.measures):
        head, rows, widths = head[:3], tuple(row[:3] for row in rows), (40, 30, 30)
    return Section("Measures", (Table("Computed from the movements", head, rows, widths),))


def _measure(line: MeasureLine) -> tuple[str, ...]:
    today = "not measured" if line.before is None else value(line.measure, line.before, line.unit)
    after = "cannot be told"
    if line.after is not None:
        after = reached(line.measure, line.after, line.unit, is_change=line.is_change)
    claimed = "not stated" if line.claimed is None else value(line.measure, line.claimed, line.unit)
    agrees = {True: "yes", False: "no", None: "" if line.claimed is None else "cannot be told"}[line.agrees]
    return measure_name(line.measure, line.where), today, after, claimed, agrees


def _movements(mouth: Mouth, plan: Plan) -> Section:
    teeth = [tooth for arch in ARCHES for tooth in mouth.rows[arch].initial]
    rows = tuple((f"{t} {tooth_in_words(t)}", *(_moved(plan, t, name) for name in VARIABLES)) for t in teeth)
    return Section(
        "Tooth by tooth",
        (Table("How far the setup moves each tooth, at the crown", _MOVED, rows, (30, 11, 9, 15, 10, 11, 14)),),
    )


def _moved(plan: Plan, tooth: str, variable: Variable) -> str:
    size = plan.movement(tooth, variable)
    if size is None:
        return "not stated"
    shown = round(size, 2) + 0.0
    return f"{number(abs(shown))} {_WAYS[variable, 1 if shown > 0 else -1]}" if shown else "0"
