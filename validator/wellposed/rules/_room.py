"""The space budget of an arch as the rules look at it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wellposed.derive.space import Budget, Line, budget
from wellposed.model.clauses import Align, Level, Reach
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import ARCHES, arch_of

REDUCTION, SPACING, CROWDING, LEVELLING = "enamel-reduction", "spacing", "crowding", "levelling"
_USING_ROOM = (
    "overjet",
    "midline",
    "relation",
    "incisor-to",
    "interincisal",
    "crowding",
    "spacing",
    "width",
    "overlap",
)


def needed(room: Budget) -> float | None:
    """The room an arch needs, mm; None where a part of it is not known."""
    return known(line.amount for line in room.needs)


def known(amounts: Iterable[float | None]) -> float | None:
    """The sum of amounts, mm; None where one is not known."""
    listed = list(amounts)
    return None if None in listed else sum(amount or 0.0 for amount in listed)


def ids_of(chart: Chart, *rooms: Budget) -> tuple[str, ...]:
    """The ids of the findings and clauses behind the lines of some budgets."""
    lines: list[Line] = [line for room in rooms for line in (*room.needs, *room.means)]
    return tuple(dict.fromkeys(one for line in lines for one in line.from_ if chart.place(one)))


def pointer_of(chart: Chart, room: Budget) -> str:
    """The place of the first clause among the means of a budget, else of its first finding; "" if it has none."""
    places = [at for one in ids_of(chart, room) if (at := chart.place(one))]
    return next((at.pointer for at in places if at.section != "findings"), places[0].pointer if places else "")


def rooms(chart: Chart) -> Iterator[Budget]:
    """The budgets of the arches in which something is ordered or allowed."""
    for arch in ARCHES:
        room = budget(chart.mouth, arch)
        if any(at.section != "findings" for one in ids_of(chart, room) if (at := chart.place(one))):
            yield room


def amount_of(room: Budget, what: str) -> float:
    """The room of one kind of line, mm; what is not known counts as none."""
    return sum(line.amount or 0.0 for line in (*room.needs, *room.means) if line.what == what)


def aligned(chart: Chart, arch: str) -> bool:
    """Whether teeth of an arch are to be aligned, or the arch levelled."""
    goals = chart.rx.goals or ()
    align = any(arch_of(tooth) == arch for goal in goals if isinstance(goal, Align) for tooth in goal.align)
    return align or any(isinstance(goal, Level) and goal.level == arch for goal in goals)


def uses_room(chart: Chart) -> bool:
    """Whether a goal on a measure may use room, or make it, in a way the budget does not count."""
    measures = [goal.measure for goal in chart.rx.goals or () if isinstance(goal, Reach)]
    return any(word in measure for measure in measures for word in _USING_ROOM)


def settled(chart: Chart) -> bool:
    """Whether the arithmetic has found a plan and no new space: of what it finds itself other findings speak."""
    return chart.judgement.verdict == "possible" and not chart.judgement.space_left
