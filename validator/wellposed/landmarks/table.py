"""All that the points of a mouth tell, in one list."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wellposed.landmarks.doubts import doubts_between, doubts_of, doubts_of_values
from wellposed.landmarks.frame import questions
from wellposed.landmarks.measures import Formula, formulas
from wellposed.landmarks.mouth import Mouth
from wellposed.landmarks.movements import movements
from wellposed.landmarks.result import PointsTaken, Room, Taken, TakenOfTeeth
from wellposed.landmarks.vectors import arrays
from wellposed.reading.points import Points
from wellposed.reading.table import TableFault
from wellposed.vocabulary.measures import MEASURES, TOOTH_MEASURE_KINDS
from wellposed.vocabulary.teeth import ARCHES, TEETH

FOLLOWS = frozenset(
    f"{name}-tooth-size-{what}" for name in ("overall", "anterior", "upper", "lower") for what in ("ratio", "excess")
)
"""Measures that follow from the widths; ``wellposed.derive`` has them."""


def taken(points: Points) -> PointsTaken | tuple[TableFault, ...]:
    """Every measure and movement, or the questions that have to be answered first."""
    middle = None if points.midline is None else arrays({"face": {"midline": points.midline}})["face"]["midline"]
    mouths = [Mouth(arrays(teeth), middle) for teeth in points.teeth.values()]
    asked = questions(points, zip(points.teeth, mouths, strict=True))
    return asked or _taken(tuple(points.teeth), mouths)


def _taken(moments: tuple[str, ...], mouths: list[Mouth]) -> PointsTaken:
    moved = movements(*mouths) if len(mouths) > 1 else ()
    told = formulas()
    measures, of_teeth = tuple(_measured(one, mouths) for one in told), tuple(_of_teeth(mouths))
    doubts = [doubt for name, mouth in zip(moments, mouths, strict=True) for doubt in doubts_of(name, mouth)]
    doubts += [doubt for at, name in enumerate(moments) for doubt in doubts_of_values(name, _values(at, measures))]
    doubts += doubts_between(mouths[0], mouths[1], moved) if moved else []
    return PointsTaken(
        moments=moments,
        teeth=len(mouths[0].teeth),
        measures=measures,
        of_teeth=of_teeth,
        room=Room(tuple({name: at for arch in ARCHES for name, at in m.room(arch).items()} for m in mouths)),
        movements=moved,
        doubts=tuple(doubts),
        untouched=tuple(m for m in MEASURES if m not in {one.measure for one in told} | FOLLOWS),
    )


def _measured(formula: Formula, mouths: list[Mouth]) -> Taken:
    found = [formula.of(mouth) for mouth in mouths]
    values = tuple(None if isinstance(one, tuple) else one for one in found)
    lacks = tuple(one if isinstance(one, tuple) else () for one in found)
    return Taken(formula.measure, formula.unit, values, lacks)


def _values(at: int, measures: Iterable[Taken]) -> Iterator[tuple[str, str, float]]:
    """What was told of the mouth at a moment, by its number: measure, unit, value."""
    for one in measures:
        if (value := one.values[at]) is not None:
            yield one.measure, one.unit, value


def _of_teeth(mouths: list[Mouth]) -> Iterator[TakenOfTeeth]:
    for name, kind in TOOTH_MEASURE_KINDS.items():
        found = tuple(_SINGLE[name](mouth) for mouth in mouths)
        rows = tuple({tooth: one[tooth] for tooth in TEETH if tooth in one} for one in found)
        yield TakenOfTeeth(name, kind.unit, rows)


_SINGLE = {
    "tooth-width": lambda mouth: mouth.widths,
    "crown-height": lambda mouth: mouth.heights,
    "rotation": lambda mouth: mouth.rotations,
    "displacement": lambda mouth: mouth.displacements,
}
