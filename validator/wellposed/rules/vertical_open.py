"""Up and down where the bite in front is open or shallow: what closes it at the back, and what opens it further."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.model.clauses import Level
from wellposed.rules._acts import Act, acts, anchored
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._front import BACK, MOLARS, OVERBITE
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import ARCHES, arch_of

OPEN = "open-bite-anterior"
SHALLOW = "caution.overbite.open-bite-tendency"
_POSTERIOR = {arch: f"caution.intrusion.{arch}-posterior" for arch in ARCHES}
SECOND_OF = {"16": ("17", "47"), "46": ("17", "47"), "26": ("27", "37"), "36": ("27", "37")}
"""By first molar, the second molars of its side, upper and lower."""


def tends_open(chart: Chart) -> bool:
    """Whether the bite in front is open or shallow: as measured, else as diagnosed."""
    overbite = chart.value(OVERBITE)
    return any(chart.problems(OPEN)) if overbite is None else overbite <= chart.limit(SHALLOW)


def _bite(chart: Chart) -> tuple[str, ...]:
    return (*(place.owner for place in chart.problems(OPEN)), *chart.found(OVERBITE))


@rule(
    "posterior-intrusion-in-open-bite-tendency",
    Severity.ASK,
    title="Back teeth are intruded to close the bite by more than aligners alone reach.",
    says="{asked:clause}: aligners alone reach about {limit:mm}, and this bite is open or no deeper than {shallow:mm}.",
    do="Say what anchors the intrusion, or whether the patient is to be referred.",
    change="With bone screws named under the allowances, or at {limit:mm} or less, this no longer applies.",
    figures=(*_POSTERIOR.values(), SHALLOW),
)
def posterior_intrusion_in_open_bite_tendency(chart: Chart) -> Iterator[Told]:
    """No intrusion of back teeth beyond what aligners reach is relied on to close an open or shallow bite.

    What is missing at the molars is missing more than once in front, and the bite stays open.

    Evidence: 0.39 mm in one group of adults with aligners, 2 to 3 mm with screws or plates; the limit of 0.5 mm is
    common practice. An overbite of 1 mm or less counts as a tendency.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": -1, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "intrusion", "teeth": ["17", "16", "26", "27"], "up_to": 0.5, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": -1, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "intrusion", "teeth": ["17", "16", "26", "27"], "up_to": 1.5, "unit": "mm"}]}
    """
    if anchored(chart) or not tends_open(chart):
        return
    for act in acts(chart, "vertical", -1, BACK):
        arches = dict.fromkeys(arch_of(tooth) for tooth in act.teeth)
        passed = {key: chart.limit(key) for arch in arches if act.amount > chart.limit(key := _POSTERIOR[arch])}
        if passed:
            limits = {"limit": list(dict.fromkeys(passed.values())), "figures": (*passed, SHALLOW)}
            yield act.told(*_bite(chart), shallow=chart.limit(SHALLOW), **limits)


@rule(
    "distal-movement-in-open-bite",
    Severity.CAUTION,
    title="Molars are moved back although the bite in front is open or shallow.",
    says="{asked:clause}: molars moved back wedge the bite open; in front it is open or {shallow:mm} deep at most.",
    do="Weigh another way to the relation, or say how the bite is to be kept closed.",
    change="An overbite above {shallow:mm} would change this.",
    figures=(SHALLOW,),
)
def distal_movement_in_open_bite(chart: Chart) -> Iterator[Told]:
    """No distal movement of molars is ordered or allowed where the bite in front is open or shallow.

    Molars moved back into the narrower part of the wedge between the jaws hold them apart.

    Evidence: texts; a study of aligners saw a little intrusion of the molars instead. The limit of 1 mm is common
    practice.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 3, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "distal-movement", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": 0, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "distal-movement", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    """
    if tends_open(chart):
        for act in acts(chart, "along", -1, MOLARS):
            yield act.told(*_bite(chart), shallow=chart.limit(SHALLOW), figures=(SHALLOW,))


@rule(
    "bite-closed-by-molars-second-molars-silent",
    Severity.ASK,
    title="The bite is to be closed by intruding first molars, but second molars still touch.",
    says="{asked:clause}: {touching:teeth} are not to be intruded and hold the bite open.",
    do="Say what is to become of the second molars.",
    change="Intrusion of a second molar on each side where first molars are intruded would change this.",
    figures=(SHALLOW,),
)
def bite_closed_by_molars_second_molars_silent(chart: Chart) -> Iterator[Told]:
    """Where the bite is to be closed by intruding first molars, something is said of second molars that still touch.

    The jaw closes until teeth meet; with the first molars out of the way the second molars meet, further back.

    Evidence: geometry. Only sides on which both second molars stand in the mouth are meant, and only an open or shallow
    bite.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": -1, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "intrusion", "teeth": ["16", "17", "26", "27"], "up_to": 0.5, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": -1, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "intrusion", "teeth": ["16", "26"], "up_to": 0.5, "unit": "mm"}]}
    """
    if tends_open(chart):
        for act in acts(chart, "vertical", -1, SECOND_OF):
            touching = _touching(chart, act)
            if touching:
                yield act.told(
                    *_bite(chart), touching=touching, figures=(SHALLOW,), missing=("intrusion of second molars",)
                )


def _touching(chart: Chart, act: Act) -> list[str]:
    """Second molars of the sides of these first molars that stand opposed, with neither of them to be intruded."""
    standing = {tooth for row in chart.mouth.rows.values() for tooth in row.teeth}
    pairs = dict.fromkeys(SECOND_OF[tooth] for tooth in act.teeth)
    kept = [pair for pair in pairs if not any(chart.reach(tooth, "vertical", -1) > 0 for tooth in pair)]
    return [tooth for pair in kept if set(pair) <= standing for tooth in pair]


@rule(
    "levelling-opens-shallow-bite",
    Severity.CAUTION,
    title="The lower arch is to be levelled although the overbite is shallow.",
    says="{asked:clause}: the overbite is {overbite:mm}; {limit:mm} or less tends to open, and levelling opens it.",
    do="Say what the overbite is to be at the end.",
    change="A goal or a keep on the overbite, or an overbite above {limit:mm}, would change this.",
    figures=(SHALLOW,),
)
def levelling_opens_shallow_bite(chart: Chart) -> Iterator[Told]:
    """No lower arch is levelled under a shallow overbite without saying what becomes of the overbite.

    Levelling sinks the lower incisors or raises the premolars; both lessen the overbite.

    Evidence: geometry; the limit of 1 mm is common practice.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 4, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "level": "lower"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": 0.5, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "level": "lower"}]}
    """
    key, overbite = "caution.overbite.open-bite-tendency", chart.value(OVERBITE)
    said_of = any(place.said("measure") == OVERBITE for place in chart.of("goals", "keep"))
    if overbite is None or said_of or overbite > chart.limit(key):
        return
    for place in chart.of("goals"):
        if isinstance(place.part, Level) and place.part.level == "lower":
            facts = {"asked": said(place.part), "overbite": overbite, "limit": chart.limit(key), "figures": (key,)}
            yield told(place.pointer, place.owner, *chart.found(OVERBITE), **facts)


RULES = (
    posterior_intrusion_in_open_bite_tendency,
    distal_movement_in_open_bite,
    bite_closed_by_molars_second_molars_silent,
    levelling_opens_shallow_bite,
)
