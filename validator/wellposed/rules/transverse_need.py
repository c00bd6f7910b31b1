"""From side to side: whether widening answers anything, fits the other arch, and agrees with earlier revisions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._acts import above, is_done
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._widths import (
    CANINES,
    PAIRS,
    Width,
    by_clause,
    overlaps,
    sides,
    total,
    width_measure,
    widths,
)
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import ARCHES, LOWER, SIDES, UPPER, arch_of, position, side_of

CROSSBITE, SCISSORS = "crossbite-posterior", "scissors-bite"
_NEEDS = (
    *(CROSSBITE, SCISSORS, "narrow-arch", "crowding", "displaced-teeth", "rotated-teeth", "impacted-tooth"),
    *("increased-overjet", "protrusive-incisors", "class-ii", "class-iii", "crossbite-anterior", "tilted-teeth"),
    *("relapse", "other"),
)
_OVERLAPS = ("transverse-overlap-right", "transverse-overlap-left")
_APART = "caution.widths-apart"


@rule(
    "widening-without-need",
    Severity.CAUTION,
    title="An arch is widened, but no crossbite, no lack of room and no narrow arch is stated.",
    says="{asked:clause}: the {arch} arch has no crowding, and nothing stated asks for more width.",
    do="Say what the width is for, or leave it as it is.",
    change="A crossbite, a narrow arch, crowding or another stated reason would change this.",
)
def widening_without_need(chart: Chart) -> Iterator[Told]:
    """No arch without crowding is widened unless something stated asks for width.

    Width that nothing holds is lost again, and the gum on the outside of the tipped teeth recedes.

    Evidence: common practice. Crowding must be measured as none; where it is not measured, where teeth are to be
    aligned or drawn back, or where a problem is given as the reason, the rule is silent. Indices that compute a width
    from the incisors are not used, as they predict it poorly.

    Passes: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 3, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 0, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    """
    if any(chart.problems(*_NEEDS)) or any(overlap <= 0 for overlap in overlaps(chart)):
        return
    for place, changes in by_clause(one for one in widths(chart) if one.sign > 0 and one.place.section != "goals"):
        arch, problems = changes[0].arch, [problem.owner for problem in chart.of("problems")]
        reasoned = not set(problems).isdisjoint(chart.because(place))
        both = {side for one in changes for side in sides(one.teeth)} == set(SIDES)
        if both and not reasoned and chart.value(f"{arch}-crowding") == 0 and not _room_used(chart, arch):
            yield told(place.pointer, place.owner, *chart.found(f"{arch}-crowding"), asked=said(place.part), arch=arch)


def _room_used(chart: Chart, arch: str) -> bool:
    """Whether something asked of an arch uses room or width: alignment, levelling, retraction, a width as a goal."""
    measures = {width_measure(arch, number) for number in PAIRS} | set(_OVERLAPS)
    aimed = any(place.said("measure") in measures or place.said("level") == arch for place in chart.of("goals"))
    aligned = any(arch_of(tooth) == arch for place in chart.of("goals") for tooth in place.said("align") or ())
    back = any(chart.reach(tooth, "out", -1) > 0 for tooth in chart.whole.line(arch) if position(tooth) == 1)
    return aimed or aligned or back


@rule(
    "widths-moved-apart",
    Severity.CAUTION,
    title="The arches are moved apart in width, and no crossbite or scissors bite explains it.",
    says="{asked:clause}: at {teeth:teeth} the {arch} arch gains {amount:mm} on the other; up to {limit:mm} is usual.",
    do="Look at how the back teeth meet at the end, on each side.",
    change="A {explains:words}, stated or measured, or a like change of the other arch, would change this.",
    figures=(_APART,),
)
def widths_moved_apart(chart: Chart) -> Iterator[Told]:
    """No arch is widened against the other, or the other narrowed, unless the bite from side to side is wrong today.

    Back teeth that meet well today end with the upper ones too far out, or in crossbite.

    Evidence: geometry; the difference of 2 mm is common practice. Canines are left out, as the lower ones are kept.
    Where a clause says how the transverse overlap is to end, the arithmetic judges it.

    Passes: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 3, "unit": "mm"},
                       {"id": "a2", "use": "widening", "arch": "lower", "up_to": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 3, "unit": "mm"}]}
    """
    changes, measured = list(widths(chart)), overlaps(chart)
    if any(place.said("measure") in _OVERLAPS for place in chart.of("goals", "keep")):
        return
    for sign, (wider, explains) in {1: (UPPER, CROSSBITE), -1: (LOWER, SCISSORS)}.items():
        apart = {n: sign * (total(changes, UPPER, n) - total(changes, LOWER, n)) for n in PAIRS if n != CANINES}
        beyond = [number for number in apart if above(apart[number], chart.limit(_APART))]
        explained = any(chart.problems(explains)) or (wider == UPPER and any(overlap <= 0 for overlap in measured))
        if beyond and not explained:
            facts = {"arch": wider, "amount": max(apart.values()), "explains": explains.removesuffix("-posterior")}
            missing = () if measured else ("transverse overlap",)
            yield _of_pairs(chart, [one for one in changes if one.number in beyond], missing=missing, **facts)


def _of_pairs(chart: Chart, changes: list[Width], **facts: Any) -> Told:
    places = list(dict.fromkeys(one.place for one in changes))
    facts |= {"asked": [said(place.part) for place in places], "limit": chart.limit(_APART), "figures": (_APART,)}
    ids = [place.owner for place in places]
    return told(places[0].pointer, *ids, teeth=[tooth for one in changes for tooth in one.teeth], **facts)


@rule(
    "crossbite-without-width-change",
    Severity.CAUTION,
    title="A posterior crossbite is stated, but nothing may change a width or move its teeth.",
    says="A posterior crossbite is stated at {teeth:teeth}; nothing lets the upper ones go out or the lower ones in.",
    do="Say by what means it is corrected, or that it is accepted.",
    change="Widening, narrowing or movement of these teeth, or a keep that says it is accepted, would change this.",
)
def crossbite_without_width_change(chart: Chart) -> Iterator[Told]:
    """Where a posterior crossbite is stated, something may change a width or move its teeth, or it is said to be kept.

    A laboratory that finds the diagnosis and no means leaves the crossbite or guesses.

    Evidence: geometry. Screws, cross elastics and surgery are taken as means; so is alignment of teeth that are
    measured to stand off the line. Where the overlap is a goal, the arithmetic judges it.

    Passes: {"problems": [{"id": "p1", "problem": "crossbite-posterior", "teeth": ["16", "46"]}],
             "allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 3, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "crossbite-posterior", "teeth": ["16", "46"]}],
            "goals": [{"id": "g1", "strength": "must", "level": "lower"}]}
    """
    for problem in () if _otherwise_met(chart) else chart.problems(CROSSBITE):
        teeth = _in_crossbite(chart, problem)
        moved = any(chart.reach(tooth, "out", 1 if arch_of(tooth) == UPPER else -1) > 0 for tooth in teeth)
        held = any(not set(place.said("hold") or ()).isdisjoint(teeth) for place in chart.of("keep"))
        if teeth and not moved and not held and not set(chart.tooth_values("displacement")) & set(teeth):
            yield told(problem.pointer, problem.owner, *problem.said("because") or (), teeth=teeth)


def _in_crossbite(chart: Chart, problem: Place) -> list[str]:
    """The teeth a crossbite is stated at and those they bite on; all back teeth of its side where none are named."""
    named = {position(tooth) for tooth in problem.said("teeth") or ()} or set(PAIRS)
    where = {problem.said("side")} - {None} or sides(problem.said("teeth") or ()) or set(SIDES)
    line = (tooth for arch in ARCHES for tooth in chart.whole.line(arch))
    return [tooth for tooth in line if position(tooth) in named and side_of(tooth) in where]


def _otherwise_met(chart: Chart) -> bool:
    """Whether another means is stated, or a goal or keep says how the arches are to meet from side to side."""
    measures = {width_measure(arch, number) for arch in ARCHES for number in PAIRS} | set(_OVERLAPS)
    aimed = any(place.said("measure") in measures for place in chart.of("goals", "keep"))
    screw = any(place.said("auxiliary") == "expansion-screw" for place in chart.allowed("auxiliary"))
    cross = any(place.said("pattern") == "cross" for place in chart.allowed("elastics"))
    return aimed or screw or cross or is_done(chart, "surgery")


@rule(
    "width-reversed-since-last",
    Severity.ASK,
    title="A width that an earlier revision changed one way is now changed the other way.",
    says="{asked:clause}; revision {revision} said: {before:clause}.",
    do="Confirm that the width is to go back, or correct the clause.",
    change="The same sense as before, or other teeth, would change this.",
)
def width_reversed_since_last(chart: Chart) -> Iterator[Told]:
    """No width is changed in the sense opposite to that of an earlier revision.

    The teeth make a round trip through the bone: it costs time, root and gum, and is mostly a slip.

    Evidence: round trips go with root resorption, from memory. A revision that changed the pair both ways is left out.

    Passes: {"revision": 2, "replaces": "abababababababababababababababababababababababababababababababab",
             "allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 1, "unit": "mm"}],
             "earlier": [{"allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"}]}]}
    Fails: {"revision": 2, "replaces": "abababababababababababababababababababababababababababababababab",
            "allow": [{"id": "a1", "use": "narrowing", "arch": "upper", "up_to": 1, "unit": "mm"}],
            "earlier": [{"allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"}]}]}
    """
    for place, changes in by_clause(_of_widths(chart)):
        for rx in reversed(chart.earlier):
            before = [one for one in _of_widths(Chart(rx, chart.numbers)) if _reversed(one, changes)]
            if before:
                facts = {"asked": said(place.part), "revision": rx.revision, "before": said(before[0].place.part)}
                yield told(place.pointer, place.owner, **facts, teeth=[t for one in before for t in one.teeth])
                break


def _of_widths(chart: Chart) -> list[Width]:
    """Changes of width as such: those of single teeth go by another rule. A pair changed both ways is left out."""
    found = [one for one in widths(chart) if one.place.section == "goals" or one.place.said("arch")]
    signs = {(one.arch, one.number): {o.sign for o in found if o[1:3] == one[1:3]} for one in found}
    return [one for one in found if len(signs[one.arch, one.number]) == 1]


def _reversed(one: Width, now: list[Width]) -> bool:
    return any(o.arch == one.arch and o.number == one.number and o.sign != one.sign for o in now)


RULES = (
    widening_without_need,
    widths_moved_apart,
    crossbite_without_width_change,
    width_reversed_since_last,
)
