"""Spaces and enamel reduction in one arch, reduction that nothing calls for, spaces that nothing is said of."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.clauses import Close, CloseArch, Leave
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._enamel import Taken, reasons, share_of, taken
from wellposed.rules._room import (
    CROWDING,
    SPACING,
    aligned,
    amount_of,
    needed,
    rooms,
    uses_room,
)
from wellposed.rules._sizes import STRICT, excesses, reached
from wellposed.rules.chart import Chart
from wellposed.rules.enamel_places import reduction_at_a_gap
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import ARCHES, arch_of

SOME = "space.remainder"
_FOR_ENAMEL = {"tooth-size-discrepancy", "open-gingival-embrasures"}
_FOR_ROOM = (
    *("tooth-size-discrepancy", "open-gingival-embrasures", "protrusive-incisors", "increased-overjet"),
    *("midline-deviation", "class-ii", "class-iii", "reverse-overjet", "crossbite-anterior", "deep-curve-of-spee"),
    *("gingival-margin-unevenness", "missing-teeth", "impacted-tooth", "relapse", "other"),
)


def _enamel(chart: Chart, arch: str) -> list[Taken]:
    """The reductions that may take enamel in an arch."""
    return [one for one in taken(chart) if share_of(one, arch, "") > 0]


def _reduction_told(arch: str, enamel: list[Taken], *ids: str, **facts: object) -> Told:
    asked, owners = [said(one.place.part) for one in enamel], [one.place.owner for one in enamel]
    return told(enamel[0].place.pointer, *owners, *ids, arch=arch, asked=asked, **facts)


def _fits(chart: Chart, arch: str, enamel: list[Taken]) -> bool:
    """Whether tooth size or open embrasures are stated as the reason, or the teeth of the arch measure as too wide."""
    wide = any(one.arch == arch and reached(one.amount, chart.limit(STRICT)) for one in excesses(chart))
    return wide or any(reasons(chart, one.place) & _FOR_ENAMEL for one in enamel) or any(chart.problems(*_FOR_ENAMEL))


# spaces and reduction in one arch


@rule(
    "closing-and-reducing",
    Severity.ASK,
    title="Spaces of an arch are to be closed and enamel is to be taken in it, and no reason is stated for both.",
    says="In the {arch} arch spaces are to be closed ({close:clause}), and enamel is to be taken, which makes more:"
    " {asked:clause}.",
    do="Say what the reduction is for, or leave it out.",
    change="Crowding larger than the spaces, retraction, tooth size or open embrasures as a reason would settle it.",
    figures=(STRICT,),
)
def closing_and_reducing(chart: Chart) -> Iterator[Told]:
    """No enamel is to be taken in an arch whose spaces are to be closed, unless something stated needs more room than
    the spaces have.

    Every contact reduced is one more space to close, and the incisors go back by what nobody asked for.

    Evidence: arithmetic. Teeth too wide for the other arch, dark triangles or a retraction explain it, and are looked
    for; a stricter school's threshold of tooth size is enough.

    Passes: {"findings": [{"id": "f1", "measure": "upper-spacing", "value": 2, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "close_arch": "upper"}],
             "allow": [{"id": "a1", "use": "incisor-retraction", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-spacing", "value": 2, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "close_arch": "upper"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "upper", "in_all": 1, "unit": "mm"}]}
    """
    spoken = {one for finding in reduction_at_a_gap.look(chart) for one in finding.clauses}
    for room in rooms(chart):
        closing, enamel = _closing(chart, room.arch), _enamel(chart, room.arch)
        asking = [one for one in enamel if one.place.owner not in spoken]
        spaces, need = amount_of(room, SPACING), needed(room)
        explained = uses_room(chart) or need is None or need > spaces or amount_of(room, "extraction")
        if closing and asking and spaces and not explained and not _fits(chart, room.arch, enamel):
            close = [said(place.part) for place in closing]
            ids = (*(place.owner for place in closing), *chart.found(f"{room.arch}-spacing"))
            yield _reduction_told(room.arch, asking, *ids, close=close)


def _closing(chart: Chart, arch: str) -> list[Place]:
    """The goals that close spaces of an arch."""

    def closes(part: object) -> bool:
        if isinstance(part, Close):
            return any(arch_of(teeth_of(name)[0]) == arch for name in part.close)
        return isinstance(part, CloseArch) and part.close_arch == arch

    return [place for place in chart.of("goals") if closes(place.part)]


@rule(
    "spaces-cover-the-crowding",
    Severity.CAUTION,
    title="An arch has spaces as large as its crowding, yet enamel is to be taken in it.",
    says="The {arch} arch has {spaces:mm} of spaces and {crowding:mm} of crowding, and enamel is to be taken:"
    " {asked:clause}.",
    do="Look whether the spaces will do, or say why they are not used.",
    change="Crowding larger than the spaces, or a stated reason beside crowding, would settle it.",
    figures=(STRICT,),
)
def spaces_cover_the_crowding(chart: Chart) -> Iterator[Told]:
    """In an arch with both, no enamel is to be taken while its own spaces give the room that its crowding needs.

    Room that is there need not be made, and enamel does not come back.

    Evidence: arithmetic. Spaces far behind may not reach a crowded front; then it is said.

    Passes: {"findings": [{"id": "f1", "measure": "lower-spacing", "value": 1, "unit": "mm", "contacts": ["34-35"]},
                {"id": "f2", "measure": "lower-crowding", "value": 2, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.4,
                        "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-spacing", "value": 2, "unit": "mm", "contacts": ["34-35"]},
               {"id": "f2", "measure": "lower-crowding", "value": 2, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.4,
                       "unit": "mm"}]}
    """
    for room in rooms(chart):
        enamel, need = _enamel(chart, room.arch), needed(room)
        spaces, crowding = amount_of(room, SPACING), amount_of(room, CROWDING)
        used = uses_room(chart) or need is None or need > spaces or _left(chart, room.arch)
        if (
            enamel
            and crowding > 0
            and not used
            and not _closing(chart, room.arch)
            and not _fits(chart, room.arch, enamel)
        ):
            ids = chart.found(f"{room.arch}-spacing", f"{room.arch}-crowding")
            yield _reduction_told(room.arch, enamel, *ids, spaces=spaces, crowding=crowding)


def _left(chart: Chart, arch: str) -> bool:
    """Whether a goal leaves room somewhere in an arch."""
    goals = chart.rx.goals or ()
    return any(isinstance(goal, Leave) and arch_of(teeth_of(goal.leave)[0]) == arch for goal in goals)


@rule(
    "reduction-without-reason",
    Severity.CAUTION,
    title="Enamel is to be taken in an arch without crowding, and nothing stated calls for it.",
    says="{asked:clause}: the {arch} arch is measured without crowding, and nothing stated needs room there.",
    do="Say what the reduction is for, or leave it out.",
    change="Crowding, a tooth-size excess from {limit:mm}, or another problem stated as its reason would settle it.",
    figures=(STRICT,),
)
def reduction_without_reason(chart: Chart) -> Iterator[Told]:
    """No enamel is to be taken in an arch measured without crowding unless tooth size, retraction, a midline, dark
    triangles or another stated reason calls for it.

    Enamel does not come back. Taken by habit, it leaves spaces that are then closed by drawing the incisors in.

    Evidence: indications of the texts, without numbers. Crowding must be measured as none; where it is not measured, or
    a problem is given as the reason, the rule is silent. Of an arch with spaces `closing-and-reducing` speaks.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 0, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    for room in rooms(chart):
        enamel = [one for one in _enamel(chart, room.arch) if not reasons(chart, one.place)]
        none = chart.value(f"{room.arch}-crowding") == 0 and not amount_of(room, SPACING) and needed(room) == 0
        called = uses_room(chart) or any(chart.problems(*_FOR_ROOM)) or _fits(chart, room.arch, enamel)
        if enamel and none and not called:
            found = chart.found(f"{room.arch}-crowding")
            yield _reduction_told(room.arch, enamel, *found, limit=chart.limit(STRICT), figures=(STRICT,))


@rule(
    "spaces-not-mentioned",
    Severity.NOTE,
    title="An arch in which teeth are aligned has spaces, and no goal closes or leaves them.",
    says="The {arch} arch has {spaces:mm} of spaces, more than {limit:mm}, and no goal says what becomes of them.",
    do="Say whether they are closed, left, or used for the alignment.",
    change="A goal that closes or leaves a space of this arch would settle it.",
    figures=(SOME,),
)
def spaces_not_mentioned(chart: Chart) -> Iterator[Told]:
    """In an arch that is aligned or levelled, measured spaces are to be closed, left open, or use up crowding.

    Spaces not spoken of may stay or go, and both were once expected by somebody.

    Evidence: common practice, without a source.

    Passes: {"findings": [{"id": "f1", "measure": "upper-spacing", "value": 2, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "align": ["12", "11"]},
                       {"id": "g2", "strength": "must", "close_arch": "upper"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-spacing", "value": 2, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["12", "11"]}]}
    """
    for arch in ARCHES:
        spaces = chart.mouth.amount(f"{arch}-spacing") - chart.mouth.amount(f"{arch}-crowding")
        silent = not _closing(chart, arch) and not _left(chart, arch) and not uses_room(chart)
        if aligned(chart, arch) and silent and above(spaces, chart.limit(SOME)):
            goals = [p for p in chart.of("goals") if p.said("level") == arch or _aligns(p, arch)]
            ids = (*(place.owner for place in goals), *chart.found(f"{arch}-spacing"))
            facts = {"arch": arch, "spaces": chart.mouth.amount(f"{arch}-spacing"), "limit": chart.limit(SOME)}
            yield told(goals[0].pointer, *ids, **facts, figures=(SOME,))


def _aligns(place: Place, arch: str) -> bool:
    return any(arch_of(tooth) == arch for tooth in place.said("align") or ())


RULES = (closing_and_reducing, spaces_cover_the_crowding, reduction_without_reason, spaces_not_mentioned)
