"""Single teeth: those that cannot move, that nothing follows, that are bonded together, or that are still to come."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._acts import is_done
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.aids import WANTED, attached, openers, orders
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import arch_of, is_primary, position, side_of, tooth_at

_AS_ONE = ("out", "vertical", "torque")
_COMING = ("unerupted", "partly-erupted")
_SECOND_MOLAR = 7


@rule(
    "attachment-on-fixed-tooth",
    Severity.ASK,
    title="An attachment is asked for on a tooth that cannot be moved.",
    says="{asked:clause}, but {teeth:list} cannot move ({states:words}), and retention is not the stated reason.",
    do="State retention if that is what it is for, correct the state of the tooth, or leave the attachment out.",
    change="A tooth that can move, or retention as the reason, would change it.",
)
def attachment_on_fixed_tooth(chart: Chart) -> Iterator[Told]:
    """No attachment is asked for or wished for, unless for retention, on a pontic, an implant, an ankylosed tooth, or
    the abutment of a bridge.

    None of these moves. The attachment serves nothing, or the tooth is not what it is stated to be.

    Evidence: none is needed.

    Passes: {"teeth": {"upper": ["16", "15"], "lower": [], "particulars": [{"tooth": "15", "states": ["implant"]}]},
             "attachments": [{"id": "t1", "must_not": ["15"]}]}
    Fails: {"teeth": {"upper": ["16", "15"], "lower": [], "particulars": [{"tooth": "15", "states": ["implant"]}]},
            "attachments": [{"id": "t1", "must": ["15"]}]}
    """
    locked = chart.mouth.locked
    for place in chart.of("attachments"):
        fixed = [tooth for tooth in attached(place, *WANTED) if tooth in locked]
        if fixed and place.said("reason") != "retention":
            states = list(dict.fromkeys(locked[tooth] for tooth in fixed))
            yield told(place.pointer, place.owner, asked=said(place.part), teeth=fixed, states=states)


@rule(
    "primary-tooth-without-successor",
    Severity.ASK,
    title="A primary tooth that nothing follows is to be moved.",
    says="{asked:clause}, but no permanent tooth follows {teeth:list}.",
    do="Say that the tooth is meant and how long it is to stay, or leave it out of the clause.",
    change="A permanent successor listed as present or unerupted, or a clause without the tooth, would change it.",
)
def primary_tooth_without_successor(chart: Chart) -> Iterator[Told]:
    """No goal, movement or allowance names a primary tooth to be moved whose successor is missing: stated as missing,
    or neither present nor unerupted in a permanent dentition.

    The root of such a tooth shortens with the years and is often fused to the bone; loaded, it may be lost, or not
    move and hold its neighbours instead.

    Evidence: textbooks agree; many such teeth last for decades if left alone.

    Passes: {"patient": {"reference": "P-1", "dentition": "mixed"}, "teeth": {"upper": ["16", "55", "14"], "lower": []},
             "movements": [{"id": "m1", "strength": "must", "teeth": ["55"], "motion": "buccal", "at_least": 1,
                            "unit": "mm"}]}
    Fails: {"patient": {"reference": "P-1", "dentition": "permanent"},
            "teeth": {"upper": ["16", "55", "14"], "lower": []},
            "movements": [{"id": "m1", "strength": "must", "teeth": ["55"], "motion": "buccal", "at_least": 1,
                           "unit": "mm"}]}
    """
    for place in chart.of("goals", "movements", "allow"):
        teeth = [t for t in _named(place) if is_primary(t) and _last(chart, t) and place in openers(chart, t)]
        if teeth:
            yield told(place.pointer, place.owner, asked=said(place.part), teeth=teeth)


def _named(place: Place) -> tuple[str, ...]:
    return (*(place.said("align") or ()), *(place.said("teeth") or ()))


def _last(chart: Chart, tooth: str) -> bool:
    """Whether nothing follows a primary tooth; not so where that is merely not stated."""
    successor = tooth_at(arch_of(tooth), side_of(tooth), position(tooth))
    if successor in chart.whole.present:
        return False
    stated = any(successor in (place.said("teeth") or ()) for place in chart.problems("missing-teeth"))
    return stated or chart.rx.patient.dentition == "permanent"


@rule(
    "splinted-teeth-moved-apart",
    Severity.ASK,
    title="Teeth that are bonded together are to be moved singly.",
    says="{asked:clause}, but {teeth:list} is stated as bonded to a neighbour, and bonded teeth move as one or not at "
    "all.",
    do="Say that the bond is opened first, as a step in words that names the teeth, or move the teeth alike.",
    change="A step in words that opens the bond, or the same movement of all teeth of the splint, would change it.",
)
def splinted_teeth_moved_apart(chart: Chart) -> Iterator[Told]:
    """No goal aligns splinted teeth, and no movement moves them otherwise than all alike, unless a step in words names
    them.

    Either the bond breaks, or nothing moves; a wire left behind the teeth may also hold them where they must not stay.

    Evidence: none is needed for teeth that are bonded; which neighbour a tooth is bonded to is taken from the row.

    Passes: {"teeth": {"upper": [], "lower": ["42", "41", "31"],
                       "particulars": [{"tooth": "41", "states": ["splinted"]},
                                       {"tooth": "31", "states": ["splinted"]}]},
             "movements": [{"id": "m1", "strength": "must", "teeth": ["41", "31"], "motion": "labial", "at_least": 0.5,
                            "unit": "mm"}]}
    Fails: {"teeth": {"upper": [], "lower": ["42", "41", "31"],
                      "particulars": [{"tooth": "41", "states": ["splinted"]},
                                      {"tooth": "31", "states": ["splinted"]}]},
            "movements": [{"id": "m1", "strength": "must", "teeth": ["41"], "motion": "labial", "at_least": 0.5,
                           "unit": "mm"}]}
    """
    opened = {t for p in chart.of("process") if p.said("step") == "other" and p.said("words") for t in _named(p)}
    for place in orders(chart):
        splints = [splint for splint in _splints(chart) if _apart(place, splint) and not splint & opened]
        teeth = [tooth for tooth in _named(place) if any(tooth in splint for splint in splints)]
        if teeth:
            yield told(place.pointer, place.owner, asked=said(place.part), teeth=teeth)


def _splints(chart: Chart) -> Iterator[frozenset[str]]:
    """Runs of neighbours that are all stated as splinted."""
    for row in chart.mouth.rows.values():
        for bonded, run in groupby(row.teeth, lambda tooth: chart.state(tooth, "splinted") is not None):
            if bonded:
                yield frozenset(run)


def _apart(place: Place, splint: frozenset[str]) -> bool:
    """Whether a goal or movement moves some tooth of a splint otherwise than the others."""
    if not splint & set(_named(place)):
        return False
    motion = place.said("motion")
    alike = motion is not None and MOTIONS[motion].variable in _AS_ONE
    return not (alike and len(splint) > 1 and splint <= set(_named(place)))


@rule(
    "second-molars-unerupted-while-growing",
    Severity.NOTE,
    title="Second molars are still to come in a patient who grows.",
    says="{teeth:teeth} is still to erupt in a patient who grows: the end of the aligner has to leave it room, and "
    "must neither hold it down nor let it grow out.",
    do="Say how the aligner ends behind the first molars, or when a new scan is taken.",
    change="A new scan stated as a step, or second molars fully in the mouth, would change it.",
)
def second_molars_unerupted_while_growing(chart: Chart) -> Iterator[Told]:
    """No second molar of a treated arch is stated as unerupted or partly erupted in a growing patient, unless a new
    scan is stated as a step.

    Second molars come in during many treatments at this age. Left out of the aligner they over-erupt and open the
    bite; covered too soon they are held back.

    Evidence: common practice.

    Passes: {"patient": {"reference": "P-1", "growth": "growing"}}
    Fails: {"patient": {"reference": "P-1", "growth": "growing"},
            "teeth": {"upper": ["16", "15"], "lower": [], "particulars": [{"tooth": "17", "states": ["unerupted"]}]},
            "treat": {"arches": "upper"}}
    """
    coming = [t for t, states in chart.mouth.states.items() if set(states) & set(_COMING) and _second(chart, t)]
    if chart.growing and coming and not is_done(chart, "new-scan"):
        yield told("/teeth/particulars", teeth=coming)


def _second(chart: Chart, tooth: str) -> bool:
    treated = chart.rx.treat is None or chart.rx.treat.arches in ("both", arch_of(tooth))
    return treated and position(tooth) == _SECOND_MOLAR


RULES = (
    *(attachment_on_fixed_tooth, primary_tooth_without_successor, splinted_teeth_moved_apart),
    second_molars_unerupted_while_growing,
)
