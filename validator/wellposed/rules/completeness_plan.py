"""What an order leaves unsaid about the plan: means, measurements, consent, retention."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.clauses import Align, Reach
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart
from wellposed.rules.completeness import treated
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.measures import MEASURES
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import arch_of, is_incisor

_CROWDED = "index.crowding.moderate.from"
_REDUCTION, _EXTRACTION = "enamel-reduction", "extraction"
_OPERATIONS = (_EXTRACTION, "surgery", "exposure")


@rule(
    "allowance-neither-given-nor-excluded",
    Severity.NOTE,
    title="A crowded arch is to be aligned, and enamel reduction is neither allowed nor excluded.",
    says="{asked:clause}, with {crowding:mm} of crowding; enamel reduction there is neither allowed nor excluded, and "
    "so not used.",
    do="Allow it with its amounts, or exclude it.",
    change="An allowance or an exclusion of enamel reduction in this arch would change it.",
    figures=(_CROWDED,),
)
def allowance_neither_given_nor_excluded(chart: Chart) -> Iterator[Told]:
    """Where a crowded arch is to be aligned, enamel reduction is allowed or excluded.

    Silence means that it is not used. In so crowded an arch it is the first thing a laboratory asks about.

    Evidence: moderate crowding begins where one index puts it. Where the order cannot be met without more means, the
    verdict asks, and nothing is added here.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 4, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31", "32"]}],
             "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 4, "unit": "mm"}],
             "exclude": [{"id": "x1", "means": "enamel-reduction"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 4, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31", "32"]}],
            "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 4, "unit": "mm"}]}
    """
    for place in chart.of("goals"):
        arch = _uncrowds(place)
        crowding = (chart.value(f"{arch}-crowding") if arch else None) or 0.0
        if crowding < chart.limit(_CROWDED) or _decided(chart, arch) or chart.judgement.verdict != "possible":
            continue
        facts = {"asked": said(place.part), "crowding": crowding, "figures": (_CROWDED,)}
        yield told(place.pointer, place.owner, *chart.found(f"{arch}-crowding"), missing=(_REDUCTION,), **facts)


def _uncrowds(place: Place) -> str:
    """The arch whose crowding a goal is to relieve."""
    part = place.part
    if isinstance(part, Align):
        arches = {arch_of(tooth) for tooth in part.align}
        return arches.pop() if len(arches) == 1 else ""
    crowding = isinstance(part, Reach) and part.measure.endswith("-crowding")
    return str(place.said("measure")).partition("-")[0] if crowding else ""


def _decided(chart: Chart, arch: str) -> bool:
    reduced = {arch_of(teeth_of(one.contact)[0]) for one in chart.reductions}
    excluded = (place.said("arch") in (None, arch) for place in chart.excluded(_REDUCTION))
    return arch in reduced or any(excluded)


@rule(
    "measurement-needed-but-missing",
    Severity.NOTE,
    title="A measurement that instructions are judged by is not stated.",
    says="{asked:clause}: {measures:measure} is not stated.",
    do="State it, so that what is planned can be compared with what is there.",
    change="A finding of {measures:measure} would change it.",
)
def measurement_needed_but_missing(chart: Chart) -> Iterator[Told]:
    """What an instruction changes in the first place has been measured: the curve of Spee where the lower arch is
    levelled, the overbite where incisors go up or down, the overjet where they go forward or back, the relation where
    elastics of a class are used, a width or the transverse overlap where an arch is widened.

    Without it nobody can tell how far to go, or afterwards how far it went.

    Evidence: none is needed. A measurement that a goal lacks is asked for by `baseline-missing`.

    Passes: {"findings": [{"id": "f1", "measure": "curve-of-spee", "value": 3, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "level": "lower"}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "level": "lower"}]}
    """
    lacking: dict[str, list[Place]] = {}
    for place in chart.of("goals", "movements", "allow"):
        for measures in _judged_by(place):
            if not chart.found(*measures):
                lacking.setdefault(measures[0], []).append(place)
    for measure in {one.measure for one in chart.judgement.unmet} if lacking else ():
        lacking.pop(measure, None)
    for measure, places in lacking.items():
        asked = [said(place.part) for place in places]
        yield told(places[0].pointer, *(p.owner for p in places), asked=asked, measures=[measure], missing=(measure,))


def _judged_by(place: Place) -> Iterator[tuple[str, ...]]:
    """The measures an instruction is judged by, any one of each group, the usual one first."""
    use, arch = place.said("use"), str(place.said("arch"))
    if place.said("level") == "lower":
        yield ("curve-of-spee",)
    if use in ("class-ii-elastics", "class-iii-elastics"):
        yield from ((f"molar-relation-{side}", f"canine-relation-{side}") for side in place.said("sides"))
    if use in ("widening", "narrowing"):
        widths = (measure for measure in MEASURES if measure.startswith(arch) and measure.endswith("-width"))
        yield f"{arch}-inter-first-molar-width", *widths, "transverse-overlap-right", "transverse-overlap-left"
    if use in ("incisor-advance", "incisor-retraction"):
        yield ("overjet",)
    if _lifts(place) and any(is_incisor(tooth) for tooth in place.said("teeth") or ()):
        yield ("overbite",)


def _lifts(place: Place) -> bool:
    motion = place.said("motion")
    vertical = motion is not None and place.said("within") is None and MOTIONS[motion].variable == "vertical"
    return vertical or place.said("use") in ("intrusion", "extrusion")


@rule(
    "consent-not-recorded",
    Severity.NOTE,
    title="Something that cannot be undone may be done, and no consent is recorded.",
    says="{asked:clause} cannot be undone, and no consent to the plan is recorded.",
    do="Add the step `consent-given` once it is given.",
    change="The step `consent-given` would change it.",
)
def consent_not_recorded(chart: Chart) -> Iterator[Told]:
    """Where enamel may be reduced, teeth taken out or an operation done, it is recorded that the patient agreed.

    What cannot be undone is agreed to beforehand, by the patient or who answers for the patient.

    Evidence: none is needed; how consent is recorded is a matter of local law.

    Passes: {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14", "24"]}],
             "process": [{"id": "q1", "step": "consent-given"}]}
    Fails: {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14", "24"]}]}
    """
    steps, allowed = list(chart.of("process")), list(chart.allowed(_REDUCTION, _EXTRACTION))
    known = {place.said("use") for place in allowed}
    done = [step for step in steps if step.said("step") in _OPERATIONS and step.said("step") not in known]
    lasting = [*allowed, *done]
    if lasting and not any(step.said("step") == "consent-given" for step in steps):
        asked = [said(place.part) for place in lasting]
        yield told(lasting[0].pointer, *(place.owner for place in lasting), asked=asked, missing=("consent",))


@rule(
    "retention-not-mentioned",
    Severity.NOTE,
    title="Nothing is said of retention.",
    says="Teeth of {arches:list} are to move, and nothing is said of how they are held afterwards.",
    do="State the retainer, or `none` where none is wanted.",
    change="An entry under `retention` for {arches:list} would change it.",
)
def retention_not_mentioned(chart: Chart) -> Iterator[Told]:
    """For each arch in which something is asked for, it is said what holds the teeth afterwards, if only `none`.

    Teeth drift back, most of them in the first months; without a word nobody knows whether a retainer is to be made.

    Evidence: relapse without retention is well known; no figure is used.

    Passes: {"goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31", "32"]}],
             "retention": [{"id": "r1", "arch": "lower", "retainer": "none"}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31", "32"]}]}
    """
    held = {one.arch for one in chart.rx.retention or ()}
    moved = {arch for place in chart.of("goals", "movements", "allow") for arch in _arches(place)}
    lacking = [f"the {arch} arch" for arch in treated(chart) if arch in moved - held]
    if lacking and chart.rx.retention != ():
        yield told("" if chart.rx.retention is None else "/retention", arches=lacking, missing=("retention",))


def _arches(place: Place) -> Iterator[str]:
    """The arches a goal, a movement or an allowance names."""
    named = (*(place.said("align") or ()), *(place.said("teeth") or ()))
    contacts = (*(place.said("close") or ()), *(place.said("contacts") or ()), *filter(None, [place.said("leave")]))
    yield from (arch_of(tooth) for tooth in (*named, *(teeth_of(contact)[0] for contact in contacts)))
    yield from filter(None, (place.said("level"), place.said("close_arch"), place.said("arch")))


RULES = (
    *(allowance_neither_given_nor_excluded, measurement_needed_but_missing),
    *(consent_not_recorded, retention_not_mentioned),
)
