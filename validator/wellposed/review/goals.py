"""What must be reached, and what of it is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wellposed.kinematics.room import left_open
from wellposed.model.clauses import Align, AnyGoal, Close, CloseArch, Hold, KeepMeasure, Leave, Level, Reach
from wellposed.review.matter import Matter, unit_of
from wellposed.review.result import Compared, Span
from wellposed.review.weighing import NONE_EXPECTED, exactly, weighed
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.teeth import arch_of
from wellposed.vocabulary.units import MM

_NO_BASELINE = "no-baseline"
_OFF = {"displacement": ("out", "achieved.relevant-error.mm"), "rotation": ("rotation", "achieved.relevant-error.deg")}


def goal_parts(matter: Matter, goal: AnyGoal) -> list[Compared]:
    """What a goal asks, part by part."""
    if isinstance(goal, Align):
        return [*_overlaps(matter, goal), *_off_the_line(matter, goal)]
    if isinstance(goal, Close):
        return [gap_at(matter, normal(contact), 0.0) for contact in goal.close]
    if isinstance(goal, CloseArch):
        return _closed_arch(matter, goal)
    if isinstance(goal, Leave):
        return [gap_at(matter, normal(goal.leave), goal.amount)]
    return _level(goal) if isinstance(goal, Level) else [_reach(matter, goal)]


def _overlaps(matter: Matter, goal: Align) -> Iterator[Compared]:
    """No overlap left between these teeth, all contacts together; then those that are left, each."""
    names = matter.translation.frame.aligned_contacts[goal.id]
    if not names:
        return
    most, told = matter.numbers.value("kinematics.shortfall"), _told(matter, names)
    total = None if told is None else exactly(sum(max(0.0, -room) for room in told.values()))
    why = None if told is not None else _why_no_room(matter, names)
    room = _expected_room(matter, {arch_of(teeth_of(name)[0]) for name in names})
    yield weighed("overlap", "", MM, Span(0.0, 0.0), total, most, why=why, expected=room)
    for name, left in (told or {}).items():
        if -left > most:
            yield weighed("overlap", name, MM, Span(0.0, 0.0), exactly(-left), most, expected=room)


def _expected_room(matter: Matter, arches: set[str]) -> Span:
    """Room that is counted on, as a change of the overlap."""
    spans = [matter.expected(f"{arch}-crowding") for arch in arches]
    spans += [Span(-(one.high or 0.0), -(one.low or 0.0)) for one in (matter.expected(f"{a}-spacing") for a in arches)]
    return Span(min(0.0, sum(one.low or 0.0 for one in spans)), max(0.0, sum(one.high or 0.0 for one in spans)))


def _told(matter: Matter, names: Sequence[str]) -> dict[str, float] | None:
    """The room left at each of these contacts; None if it cannot be told of one."""
    rooms = {name: matter.ended.rooms.get(name) for name in names}
    known = all(matter.mouth.room_known(arch_of(teeth_of(name)[0])) for name in names)
    if not known or any(room is None for room in rooms.values()):
        return None
    return {name: room for name, room in rooms.items() if room is not None}


def _why_no_room(matter: Matter, names: Sequence[str]) -> str:
    known = all(matter.mouth.room_known(arch_of(teeth_of(name)[0])) for name in names)
    if not known:
        return _NO_BASELINE
    return "not-stated" if all(name in matter.ended.rooms for name in names) else "teeth-missing"


def _off_the_line(matter: Matter, goal: Align) -> Iterator[Compared]:
    """Teeth measured as turned or displaced come to the line, but for those that must not or cannot move."""
    held = {tooth for kept in matter.prescription.keep or () if isinstance(kept, Hold) for tooth in kept.hold}
    for measure, (variable, norm) in _OFF.items():
        values = matter.mouth.tooth_values(measure)
        for tooth in goal.align:
            if values.get(tooth) and matter.ended.stands(tooth) and tooth not in held | matter.mouth.locked.keys():
                unit = MM if variable == "out" else "deg"
                left = _left_of(matter, tooth, measure, values[tooth])
                most = matter.numbers.value(norm)
                over = goal.overcorrection.value if goal.overcorrection and goal.overcorrection.unit == unit else 0.0
                delivered = None if left is None else exactly(left)
                yield weighed(f"{measure}-left", tooth, unit, Span(-over, over), delivered, most, before=values[tooth])


def _left_of(matter: Matter, tooth: str, measure: str, before: float) -> float | None:
    if measure == "displacement":
        moved = matter.plan.movement(tooth, "out")
        return None if moved is None else before + matter.ended.way_to_line(tooth)
    turned = matter.plan.movement(tooth, "rotation")
    return None if turned is None else before + turned


def gap_at(matter: Matter, name: str, amount: float) -> Compared:
    """The gap left at one contact against what is wanted there."""
    told = _told(matter, [name])
    room = None if told is None else exactly(told[name] if amount > 0 else max(0.0, told[name]))
    why = None if told is not None else _why_no_room(matter, [name])
    return weighed("gap", name, MM, Span(amount, amount), room, matter.within(MM), why=why)


def _closed_arch(matter: Matter, goal: CloseArch) -> list[Compared]:
    left = left_open(matter.prescription)
    names = [c.name for c in matter.mouth.rows[goal.close_arch].contacts if c.name not in left]
    told = _told(matter, names)
    if told is None:
        return [weighed("gap", "", MM, exactly(0.0), None, matter.within(MM), why=_why_no_room(matter, names))]
    most = matter.numbers.value("kinematics.shortfall")
    total = sum(max(0.0, room) for room in told.values())
    parts = [weighed("gap", "", MM, exactly(0.0), exactly(total), most)]
    return parts + [
        weighed("gap", name, MM, exactly(0.0), exactly(room), most) for name, room in told.items() if room > most
    ]


def _level(goal: Level) -> list[Compared]:
    """By itself it states no amount: a goal on the curve of Spee does."""
    return [weighed("level", goal.level, MM, Span(None, None), None, 0.0, why="no-amount")]


def _reach(matter: Matter, goal: Reach) -> Compared:
    asked = Span(goal.at_least, goal.at_most)
    return measured(matter, goal, asked, start_of(matter, goal.measure, goal.pair))


def measured(matter: Matter, clause: Reach | KeepMeasure, asked: Span, start: float | None) -> Compared:
    """A measure at the end against bounds for its value, in the unit of the clause.

    start  its value before treatment, in the model's unit; None: not measured
    """
    measure, pair, unit = clause.measure, clause.pair, clause.unit
    reading, scale = matter.measures.reading(measure, pair), matter.mouth.scale(measure, unit)
    where, within = "/".join(pair or ()), matter.within(unit_of(measure))
    if start is None or scale is None:
        return weighed(measure, where, unit, asked, None, within, why=_NO_BASELINE)
    end = scaled(reading.span, 0.0 if reading.absolute else start, scale)
    helped, why = counted_on(matter, measure, pair, scale), reading.why
    return weighed(measure, where, unit, asked, end, within / scale, before=start / scale, why=why, expected=helped)


def counted_on(matter: Matter, measure: str, pair: tuple[str, ...] | None, scale: float) -> Span:
    """The change of a measure that is counted on, in the unit of a clause; of a named pair none is."""
    return scaled(matter.expected(measure), 0.0, scale) or NONE_EXPECTED if pair is None else NONE_EXPECTED


def scaled(span: Span | None, base: float, scale: float) -> Span | None:
    """Both ends, added to a value and turned into the unit of a clause."""
    if span is None:
        return None
    low, high = (None if end is None else (base + end) / scale for end in (span.low, span.high))
    return Span(low, high)


def start_of(matter: Matter, measure: str, pair: tuple[str, ...] | None = None) -> float | None:
    """A measure's value before treatment, in the model's unit; None if it was not measured."""
    if measure.endswith(("crowding", "spacing")):
        arch = measure.partition("-")[0]
        return matter.mouth.amount(measure) if matter.mouth.room_known(arch) else None
    return matter.mouth.baseline(measure, pair)
