"""What each clause does to the width of an arch, pair by pair, from the canines to the second molars."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from itertools import groupby
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.kinematics.openings import standing
from wellposed.model.clauses import Movement, Reach
from wellposed.model.means import AnyMovement, WidthChange
from wellposed.rules._acts import above, amount_of
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import UPPER, arch_of, position, side_of

CANINES, FIRST_PREMOLARS, SECOND_PREMOLARS, FIRST_MOLARS, SECOND_MOLARS = 3, 4, 5, 6, 7
PAIRS = (CANINES, FIRST_PREMOLARS, SECOND_PREMOLARS, FIRST_MOLARS, SECOND_MOLARS)
MOLAR_PAIRS = (FIRST_MOLARS, SECOND_MOLARS)
_MEASURES = {
    CANINES: "inter-canine-width",
    FIRST_PREMOLARS: "inter-first-premolar-width",
    SECOND_PREMOLARS: "inter-second-premolar-width",
    FIRST_MOLARS: "inter-first-molar-width",
    SECOND_MOLARS: "inter-second-molar-width",
}
_NUMBERS = {f"{arch}-{name}": (arch, n) for n, name in _MEASURES.items() for arch in ("upper", "lower")}
_TWO = 2


class Width(NamedTuple):
    """What one clause does to the width of one pair.

    arch    ``upper`` or ``lower``
    number  3 (canines) to 7 (second molars)
    teeth   those of the pair that it moves
    sign    +1 wider, -1 narrower
    amount  of the width, both sides together, mm: how far it may go; of a goal, how far it must
    each    how far each of its teeth goes in or out for that, mm
    """

    place: Place
    arch: str
    number: int
    teeth: tuple[str, ...]
    sign: int
    amount: float
    each: float


def widths(chart: Chart) -> Iterator[Width]:
    """Every change of width that is asked or allowed. One tooth moved by itself is brought into line and left out."""
    for place in chart.of("goals", "movements", "allow"):
        part = place.part
        if isinstance(part, WidthChange):
            yield from _allowed(chart, place, part)
        elif isinstance(part, Movement | AnyMovement) and MOTIONS[part.motion].variable == "out":
            yield from _moved(chart, place, part)
        elif isinstance(part, Reach) and part.measure in _NUMBERS:
            yield from _asked(chart, place, part)


def by_clause(changes: Iterable[Width]) -> list[tuple[Place, list[Width]]]:
    """The changes of each clause."""
    return [(place, list(group)) for place, group in groupby(changes, key=lambda one: one.place)]


def width_measure(arch: str, number: int) -> str:
    """The measure of the width of a pair."""
    return f"{arch}-{_MEASURES[number]}"


def total(changes: Iterable[Width], arch: str, number: int) -> float:
    """How far a pair may be widened (+) or narrowed (-) in all, mm: allowances and movements added, or a goal."""
    of_pair = [one for one in changes if (one.arch, one.number) == (arch, number)]
    asked = [one.sign * one.amount for one in of_pair if one.place.section == "goals"]
    return asked[0] if asked else sum(one.sign * one.amount for one in of_pair)


def overlaps(chart: Chart) -> list[float]:
    """Every transverse overlap measured, at whatever pair, mm; less than 0 in a crossbite."""
    found = (place for place in chart.of("findings") if str(place.said("measure")).startswith("transverse-overlap"))
    return [float(place.said("value")) for place in found]


def _allowed(chart: Chart, place: Place, part: WidthChange) -> Iterator[Width]:
    sign = 1 if part.use == "widening" else -1
    for number, teeth in _pairs(standing(chart.mouth, chart.whole.widened(part))):
        if part.up_to > 0:
            yield Width(place, part.arch, number, teeth, sign, part.up_to, part.up_to / len(teeth))


def _moved(chart: Chart, place: Place, part: Movement | AnyMovement) -> Iterator[Width]:
    sign, amount = MOTIONS[part.motion].sign, amount_of(place)
    off_line = chart.tooth_values("displacement")
    teeth = [t for t in standing(chart.mouth, part.teeth) if position(t) in PAIRS and not off_line.get(t)]
    for arch in dict.fromkeys(map(arch_of, teeth)):
        row = [tooth for tooth in teeth if arch_of(tooth) == arch]
        for number, pair in _pairs(row) if len(row) >= _TWO and amount > 0 else ():
            share = sideways(chart, arch)
            yield Width(place, arch, number, pair, sign, amount * sum(share[tooth] for tooth in pair), amount)


def _asked(chart: Chart, place: Place, part: Reach) -> Iterator[Width]:
    (arch, number), today = _NUMBERS[part.measure], chart.value(part.measure)
    teeth = tuple(tooth for tooth in chart.whole.line(arch) if position(tooth) == number)
    if today is None or not teeth:
        return
    wider = 0.0 if part.at_least is None else part.at_least - today
    narrower = 0.0 if part.at_most is None else today - part.at_most
    if above(max(wider, narrower), 0.0):
        sign, amount = (1, wider) if wider > narrower else (-1, narrower)
        yield Width(place, arch, number, teeth, sign, amount, amount / len(teeth))


def _pairs(teeth: Iterable[str]) -> list[tuple[int, tuple[str, ...]]]:
    listed = list(teeth)
    pairs = ((number, tuple(t for t in listed if position(t) == number)) for number in PAIRS)
    return [(number, pair) for number, pair in pairs if pair]


def sideways(chart: Chart, arch: str) -> Mapping[str, float]:
    """By tooth, how much 1 mm outwards adds to the width of its pair, mm: less towards the front of the arch."""
    row = chart.mouth.rows[arch]
    return {tooth: abs(facing.out_x) for tooth, facing in zip(row.initial, row.line(0.0).facings, strict=True)}


def advice(one: Width) -> str:
    """The norm from which a careful colleague asks about a widening."""
    if one.arch == UPPER:
        return f"caution.widening.upper-{'molars' if one.number in MOLAR_PAIRS else 'canines-premolars'}"
    return f"caution.widening.lower-{'canines' if one.number == CANINES else 'premolars-molars'}"


def most(one: Width) -> str:
    """The norm of the most that is ordinary practice."""
    if one.arch == UPPER:
        return "practice.widening.upper"
    return advice(one).replace("caution", "practice")


def sides(teeth: Iterable[str]) -> set[str]:
    """The sides of the mouth these teeth stand on."""
    return {side_of(tooth) for tooth in teeth}
