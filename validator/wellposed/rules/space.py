"""The space budget of an arch: room that would be left over, and room that would be lacking."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.derive.space import Budget, Line
from wellposed.findings import Severity
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._room import SPACING, aligned, ids_of, known, needed, pointer_of, rooms, settled, uses_room
from wellposed.rules.chart import Chart

SOME, MUCH = "space.remainder", "space.remainder-strong"
_OVER = (
    "In the {arch} arch {made:mm} of room is made whatever else is done ({means:list}), and {need:mm} is used at the"
    " most: {left:mm} is left over."
)
_SHORT = (
    "The {arch} arch needs {need:mm} of room ({needs:list}), and all its means come to {made:mm} ({means:list}):"
    " {left:mm} is lacking."
)
_DO_OVER = "Say what becomes of the rest: retraction, molars forward, or a space that is left."
_DO_SHORT = "Look at the needs again, or say where the rest of the room comes from."
_CHANGE_OVER = (
    "A need that uses it, stated as a goal or a movement, or a remainder of {limit:mm} or less, would settle it."
)
_CHANGE_SHORT = "Another means, less need, or a remainder of {limit:mm} or less would settle it."


def _words(lines: tuple[Line, ...], least: bool = False) -> list[str]:
    """Each kind of line with something in it, in words, at its whole or at its least amount."""
    sums: dict[str, float] = {}
    for line in lines:
        sums[line.what] = sums.get(line.what, 0.0) + ((line.least if least else line.amount) or 0.0)
    return [f"{what.replace('-', ' ')} {round(amount, 2)} mm" for what, amount in sums.items() if amount] or ["nothing"]


def _over(chart: Chart, room: Budget) -> tuple[float, float] | None:
    """Room that is made whatever is done, and the most that is used of it, mm; spaces that are there are not made."""
    made = known(line.least for line in room.means if line.what != SPACING)
    used = known(line.high for line in room.needs)
    return None if made is None or used is None or uses_room(chart) or not settled(chart) else (made, used)


def _left_over(chart: Chart, low: str, high: str | None) -> Iterator[Told]:
    for room in rooms(chart):
        found = _over(chart, room)
        left = found[0] - found[1] if found else 0.0
        if found and above(left, chart.limit(low)) and not (high and above(left, chart.limit(high))):
            facts = {"arch": room.arch, "made": found[0], "need": found[1], "left": left, "limit": chart.limit(low)}
            lines = tuple(line for line in room.means if line.what != SPACING)
            pointer, ids = pointer_of(chart, room), ids_of(chart, room)
            yield told(pointer, *ids, means=_words(lines, least=True), **facts, figures=(low,))


def _short(chart: Chart, low: str, high: str | None) -> Iterator[Told]:
    for room in rooms(chart):
        need, made = needed(room), known(line.amount for line in room.means)
        if need is None or made is None or not aligned(chart, room.arch) or not settled(chart) or uses_room(chart):
            continue
        if above(need - made, chart.limit(low)) and not (high and above(need - made, chart.limit(high))):
            facts = {"arch": room.arch, "made": made, "need": need, "left": need - made, "limit": chart.limit(low)}
            words = {"needs": _words(room.needs), "means": _words(room.means)}
            yield told(pointer_of(chart, room), *ids_of(chart, room), **words, **facts, figures=(low,))


@rule(
    "room-left-over",
    Severity.CAUTION,
    title="More room is made in an arch than anything stated uses.",
    says=_OVER,
    do=_DO_OVER,
    change=_CHANGE_OVER,
    figures=(MUCH,),
)
def room_left_over(chart: Chart) -> Iterator[Told]:
    """Of the room that an order makes for sure, all but what measuring explains is used by needs that are stated.

    What becomes of the rest is the plan: molars forward, incisors back, or a space. Not said, the laboratory chooses.

    Evidence: space planning ends with nothing left; how much may be left is common practice. Where goals on overjet,
    midline, relation or width may use room, or the order cannot be met as it is, the rule is silent.

    Passes: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 8, "unit": "mm"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "palatal",
                            "at_least": 2, "at_most": 4, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "extraction", "teeth": ["14", "24"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 4, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "extraction", "teeth": ["14", "24"]}]}
    """
    yield from _left_over(chart, MUCH, None)


@rule(
    "room-somewhat-left-over",
    Severity.NOTE,
    title="A little more room is made in an arch than anything stated uses.",
    says=_OVER,
    do=_DO_OVER,
    change=_CHANGE_OVER,
    figures=(SOME, MUCH),
)
def room_somewhat_left_over(chart: Chart) -> Iterator[Told]:
    """Of the room that an order makes for sure, no more than about a millimetre is left unused in an arch.

    It is within what two measurements of crowding differ by, yet worth knowing before spaces are found at the end.

    Evidence: as for `room-left-over`; the smaller amount is common practice.

    Passes: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 6, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 5, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}]}
    """
    yield from _left_over(chart, SOME, MUCH)


@rule(
    "room-short",
    Severity.CAUTION,
    title="All means of an arch together do not come to the room it needs.",
    says=_SHORT,
    do=_DO_SHORT,
    change=_CHANGE_SHORT,
    figures=(MUCH,),
)
def room_short(chart: Chart) -> Iterator[Told]:
    """All means allowed in an arch that is to be aligned or levelled come to the room it needs, but for what measuring
    explains.

    Where they do not, the front goes forward, or the crowding stays, whichever the aligner meets first.

    Evidence: the room that levelling a curve takes is a convention of space planning, 0 to 2 mm, which newer work calls
    small. The arithmetic does not count it, so the order may be possible there and short here.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 2, "unit": "mm"},
                {"id": "f2", "measure": "curve-of-spee", "value": 5, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "level": "lower"}],
             "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 2, "unit": "mm"},
               {"id": "f2", "measure": "curve-of-spee", "value": 5, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "level": "lower"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 1, "unit": "mm"}]}
    """
    yield from _short(chart, MUCH, None)


@rule(
    "room-somewhat-short",
    Severity.NOTE,
    title="All means of an arch together come to a little less room than it needs.",
    says=_SHORT,
    do=_DO_SHORT,
    change=_CHANGE_SHORT,
    figures=(SOME, MUCH),
)
def room_somewhat_short(chart: Chart) -> Iterator[Told]:
    """All means allowed in an arch that is to be aligned or levelled come within about a millimetre of what it needs.

    It is within what two measurements of crowding differ by, and the incisors may come forward by as much.

    Evidence: as for `room-short`; the smaller amount is common practice.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 0, "unit": "mm"},
                {"id": "f2", "measure": "curve-of-spee", "value": 2, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "level": "lower"}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 0.5, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 0.5, "unit": "mm"},
               {"id": "f2", "measure": "curve-of-spee", "value": 4, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "level": "lower"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 0.5, "unit": "mm"}]}
    """
    yield from _short(chart, SOME, MUCH)


RULES = (room_left_over, room_somewhat_left_over, room_short, room_somewhat_short)
