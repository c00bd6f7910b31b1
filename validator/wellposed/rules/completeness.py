"""What an order leaves unsaid about the patient, the records and what the law of the place asks for."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import COMPLETE, Chart
from wellposed.rules.work_orders import work_order
from wellposed.vocabulary.teeth import ARCHES

_SHAPES = ("intraoral-scan", "model-scan", "plaster-model", "impression")
_GROWN = "normal.growth-asked-below"


@rule(
    "work-order-incomplete",
    Severity.CAUTION,
    title="The order does not hold all that the example of a work order for its jurisdiction asks for.",
    says="The example of a work order for this jurisdiction asks for {contents:list}; the order does not hold that.",
    do="State it, or look at the law in force: the list is an example.",
    change="These contents, or another jurisdiction, would change it.",
)
def work_order_incomplete(chart: Chart) -> Iterator[Told]:
    """The order holds what the example of its jurisdiction asks for, as far as the format can carry it.

    A laboratory may not be allowed to begin without it, and the copy on file would be found wanting.

    Evidence: examples in `spec/work-orders`, read in copies of the law or recalled, each with how sure it is. They are
    not legal advice, and local law governs. A signature by hand, an address and what the maker states lie outside.

    Passes: {"prescriber": {"id": "clinic-17/dr-2", "licence": "L-20417", "jurisdiction": "US-MT"},
             "goals": [{"id": "g1", "strength": "must", "level": "lower"}],
             "appliance": [{"id": "b1", "part": "material", "words": "the laboratory's usual sheet"}]}
    Fails: {"prescriber": {"id": "clinic-17/dr-2", "jurisdiction": "US-MT"},
            "goals": [{"id": "g1", "strength": "must", "level": "lower"}],
            "appliance": [{"id": "b1", "part": "material", "words": "the laboratory's usual sheet"}]}
    """
    asked = work_order(chart.rx.prescriber.jurisdiction or "")
    lacking = asked.lacking(chart.rx.model_dump(exclude_unset=True, mode="json")) if asked else []
    if lacking:
        yield told("/prescriber/jurisdiction", contents=lacking, missing=tuple(lacking))


@rule(
    "work-order-not-known",
    Severity.NOTE,
    title="What the law of the place asks of a work order is not known here.",
    says="{why}, so the order was not held to what a work order must contain.",
    do="State the jurisdiction, or look at the law of the place.",
    change="A jurisdiction for which there is an example would change it.",
)
def work_order_not_known(chart: Chart) -> Iterator[Told]:
    """The prescriber's jurisdiction is stated, and there is an example of what its law asks for.

    Else nobody has looked whether something the law asks for is missing.

    Evidence: none is needed; the examples are in `spec/work-orders`.

    Passes: {"prescriber": {"id": "clinic-17/dr-2", "jurisdiction": "EU"}}
    Fails: {"prescriber": {"id": "clinic-17/dr-2"}}
    """
    stated = chart.rx.prescriber.jurisdiction
    if stated is None:
        yield told("/prescriber", why="No jurisdiction is stated", missing=("jurisdiction",))
    elif work_order(stated) is None:
        yield told("/prescriber/jurisdiction", why="There is no example for the jurisdiction stated")


@rule(
    "age-not-stated",
    Severity.NOTE,
    title="The age is not stated.",
    says="The age is not stated, so nothing that depends on it was looked at.",
    do="State the age in years.",
    change="An age under `patient` would change it.",
)
def age_not_stated(chart: Chart) -> Iterator[Told]:
    """The patient's age is stated.

    What shows of the teeth, what growth may bring, and what treatment can reach depend on it.

    Evidence: none is needed.

    Passes: {"patient": {"reference": "P-7F3A", "age_years": 27}}
    Fails: {"patient": {"reference": "P-7F3A"}}
    """
    if chart.age is None:
        yield told("/patient", missing=("age",))


@rule(
    "growth-unknown",
    Severity.NOTE,
    title="It is not known whether the patient still grows.",
    says="It is not known whether the patient still grows. It matters below {limit:years}, with primary teeth, "
    "and where growth is counted on.",
    do="State `growth`, from records where there are any.",
    change="`growing` or `complete` under `growth` would change it.",
    figures=(_GROWN,),
)
def growth_unknown(chart: Chart) -> Iterator[Told]:
    """Where the patient is young, has primary teeth, or growth is counted on, it is stated whether growth goes on.

    Jaws that grow change the bite beside what is planned, and so do lips; teeth erupt.

    Evidence: the age below which it is asked is common practice. From that age on nothing is said unless the order
    counts on growth.

    Passes: {"patient": {"reference": "P-7F3A", "age_years": 13, "growth": "growing"}}
    Fails: {"patient": {"reference": "P-7F3A", "age_years": 13}}
    """
    counting, limit = list(_counting(chart)), chart.limit(_GROWN)
    young = chart.age is not None and chart.age < limit
    changing = chart.rx.patient.dentition in ("primary", "mixed")
    if chart.growing is None and (young or changing or counting):
        yield told("/patient", *counting, limit=limit, missing=("growth",), figures=(_GROWN,))


@rule(
    "growth-counted-on-after-growth",
    Severity.ASK,
    title="The order counts on growth, and growth is stated to be complete.",
    says="{asked:clause} is counted on, but growth is stated to be complete.",
    do="Correct `growth`, or take back what is counted on.",
    change="Growth that goes on, or another ground, would change it.",
)
def growth_counted_on_after_growth(chart: Chart) -> Iterator[Told]:
    """No change is expected from growth in a patient whose growth is stated to be complete.

    One of the two is wrong, and the plan rests on both.

    Evidence: none is needed.

    Passes: {"patient": {"reference": "P-7F3A", "growth": "growing"},
             "expect": [{"id": "e1", "measure": "overjet", "at_least": -1, "at_most": 0, "unit": "mm",
                         "ground": "growth"}]}
    Fails: {"patient": {"reference": "P-7F3A", "growth": "complete"},
            "expect": [{"id": "e1", "measure": "overjet", "at_least": -1, "at_most": 0, "unit": "mm",
                        "ground": "growth"}]}
    """
    for place in chart.of("expect"):
        if place.said("ground") == "growth" and chart.rx.patient.growth == COMPLETE:
            yield told(place.pointer, place.owner, asked=said(place.part))


def _counting(chart: Chart) -> Iterator[str]:
    """The expectations that rest on growth."""
    return (one.id for one in chart.rx.expect or () if one.ground == "growth")


@rule(
    "records-missing",
    Severity.NOTE,
    title="No scan, model or impression is named for an arch.",
    says="No scan, model or impression of {arches:list} is named among the records.",
    do="Name it, so that both sides speak of the same one.",
    change="A scan, model or impression under `records` would change it.",
)
def records_missing(chart: Chart) -> Iterator[Told]:
    """A scan, a model or an impression of each arch treated is named among the records.

    Aligners are made on it, and the order is about the teeth as they stand there.

    Evidence: none is needed. A record that names no arch counts for both.

    Passes: {"records": [{"kind": "intraoral-scan", "date": "2026-02-27"}]}
    Fails: {"records": [{"kind": "panoramic-radiograph"}]}
    """
    shapes = [record for record in chart.rx.records or () if record.kind in _SHAPES]
    named = {record.arch for record in shapes}
    lacking = [] if None in named else [f"the {arch} arch" for arch in treated(chart) if arch not in named]
    if lacking:
        pointer = "" if chart.rx.records is None else "/records"
        yield told(pointer, arches=lacking, missing=("scan, model or impression",))


def treated(chart: Chart) -> tuple[str, ...]:
    """The arches that are treated: both where it is not said."""
    treat = chart.rx.treat
    return tuple(arch for arch in ARCHES if treat is None or treat.arches in (arch, "both"))


RULES = (
    *(work_order_incomplete, work_order_not_known, age_not_stated),
    *(growth_unknown, growth_counted_on_after_growth, records_missing),
)
