"""Whether points can stand in the frame they are said to stand in: if not, questions, and nothing is measured.

What can be seen: teeth of the patient's left have greater x; front teeth have greater y; roots and gums of upper teeth
have greater z than their edges, of lower ones smaller; the occlusal plane is level; opposing teeth stand together;
widths are those of teeth in mm. One axis turned over is a mirror image, two are a frame that was turned.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations
from math import acos, degrees

import numpy as np

from wellposed import norms
from wellposed.landmarks.mouth import Mouth
from wellposed.landmarks.vectors import UP, Array, distance, middle
from wellposed.reading.axes import AXES
from wellposed.reading.points import Points
from wellposed.reading.table import TableFault
from wellposed.vocabulary.landmarks import DISTAL, MESIAL, crown_point
from wellposed.vocabulary.teeth import ARCHES, place, position

LEFT, FORWARD, UP_AXIS = AXES
_LEANS, _APART, _ONE_PLACE = "points.plane-leans", "points.arches-apart", "points.one-place"
_CLEAR = 0.7
_FEW, _LEAST = 3, 6
_DEEP = 2  # places; laterals alone often stand in front of centrals, and back teeth never do
_NEIGHBOURS = 2  # there is no place 0 between the centrals
_BACK = 4
_WIDTH = "plausible.mm.tooth-width"


def questions(points: Points, mouths: Iterable[tuple[str, Mouth]]) -> tuple[TableFault, ...]:
    """What has to be answered first, each by a fault at the axis or the line it is seen at.

    Reasons: mirrored, turned-over, arch-upside-down, axes-turned, plane-tilted, arches-apart,
    width-not-plausible, teeth-in-one-place.
    """
    found = [fault for moment, mouth in mouths for fault in _of_moment(points, moment, mouth)]
    return tuple(_once(found))


def _once(found: Iterable[TableFault]) -> Iterator[TableFault]:
    seen = set()
    for fault in sorted(found, key=lambda one: one[:2]):
        key = (fault.line, fault.column, fault.reason, fault.facts.get("arch"))
        if key not in seen:
            seen.add(key)
            yield fault


def _of_moment(points: Points, moment: str, mouth: Mouth) -> Iterator[TableFault]:
    over = _turned_over(mouth)
    reason = "mirrored" if len(over) % 2 else "turned-over"
    names = " and ".join(points.header.column(axis)[0] for axis in over)
    for axis in over:
        yield _at_axis(points, axis, reason, axes=names)
    if not over:
        yield from _one_upside_down(points, mouth)
        yield from _turned(points, mouth)
        yield from _apart(points, mouth)
    yield from _widths(points, moment, mouth)
    yield from _in_one_place(points, moment, mouth)


def _at_axis(points: Points, axis: str, reason: str, **facts: object) -> TableFault:
    name, column = points.header.column(axis)
    return TableFault(1, column, reason, {"axis": name, **facts})


def _spots(mouth: Mouth, arch: str) -> dict[str, Array]:
    """Where each tooth of an arch is, by its contact points and its edge or cusp."""
    found = {}
    for tooth in mouth.row(arch):
        at = [mouth.teeth[tooth][n] for n in (MESIAL, DISTAL, crown_point(tooth)) if n in mouth.teeth[tooth]]
        if at:
            found[tooth] = middle(at)
    return found


def _alike(first: list[float], second: list[float]) -> float:
    """How two rows of numbers, not empty, go together, -1 to 1; 0 where one of them does not change."""
    if np.ptp(first) == 0 or np.ptp(second) == 0:
        return 0.0
    return float(np.corrcoef(first, second)[0, 1])


def _across(spots: dict[str, Array]) -> float:
    return _alike([place(tooth) for tooth in spots], [float(at[0]) for at in spots.values()])


def _forward(spots: dict[str, Array]) -> float:
    return _alike([-position(tooth) for tooth in spots], [float(at[1]) for at in spots.values()])


def _turned_over(mouth: Mouth) -> list[str]:
    """The axes that run the other way, as far as either arch shows it."""
    arches = [_spots(mouth, arch) for arch in ARCHES]
    senses = {
        LEFT: [_across(spots) for spots in arches if len(spots) >= _FEW],
        FORWARD: [_forward(spots) for spots in arches if len(spots) >= _FEW and _reach(spots) >= _DEEP],
    }
    over = [axis for axis, found in senses.items() if any(sense < -_CLEAR for sense in found)]
    ways = [_rootward(mouth, arch) for arch in ARCHES]
    return over + ([UP_AXIS] if min(ways) < 0 >= max(ways) else [])


def _reach(spots: dict[str, Array]) -> int:
    """How many places the hindmost tooth stands behind the foremost."""
    positions = [position(tooth) for tooth in spots]
    return max(positions) - min(positions)


def _rootward(mouth: Mouth, arch: str) -> float:
    """How far roots and gums of an arch lie to the side they should, in the mean, mm; 0 where none are given."""
    found = [way for tooth in mouth.row(arch) for way in mouth.rootward(tooth)]
    return sum(found) / len(found) if found else 0.0


def _one_upside_down(points: Points, mouth: Mouth) -> Iterator[TableFault]:
    """An arch that is the other way up than the opposing one."""
    for arch in ARCHES:
        if _rootward(mouth, arch) < 0:
            yield _at_axis(points, UP_AXIS, "arch-upside-down", arch=arch)


def _turned(points: Points, mouth: Mouth) -> Iterator[TableFault]:
    """x and y that follow no side, or an occlusal plane that leans, of an arch that reaches back on both sides."""
    for arch in ARCHES:
        spots = _spots(mouth, arch)
        places = [place(tooth) for tooth in spots]
        if len(spots) < _LEAST or min(places) > -_BACK or max(places) < _BACK:
            continue
        for axis, sense in ((LEFT, _across), (FORWARD, _forward)):
            if sense(spots) < _CLEAR:
                yield _at_axis(points, axis, "axes-turned", arch=arch)
        leaning = _tilt(list(spots.values()))
        if leaning > norms.value(_LEANS):
            yield _at_axis(points, UP_AXIS, "plane-tilted", arch=arch, angle=leaning)


def _tilt(spots: list[Array]) -> float:
    """The angle between z and the square to the plane through the teeth, deg."""
    arms = np.stack(spots) - middle(spots)
    square = np.linalg.svd(arms)[2][2]
    return degrees(acos(min(1.0, abs(float(square @ UP)))))


def _apart(points: Points, mouth: Mouth) -> Iterator[TableFault]:
    upper, lower = ({place(tooth): at for tooth, at in _spots(mouth, arch).items()} for arch in ARCHES)
    ways = [upper[number] - lower[number] for number in sorted(upper.keys() & lower.keys())]
    if not ways:
        return
    for axis, way in zip(AXES, middle(ways), strict=True):
        if abs(float(way)) > norms.value(_APART):
            yield _at_axis(points, axis, "arches-apart", apart=abs(float(way)))


def _widths(points: Points, moment: str, mouth: Mouth) -> Iterator[TableFault]:
    least, most = norms.value(f"{_WIDTH}.least"), norms.value(f"{_WIDTH}.most")
    for tooth, width in mouth.widths.items():
        if not least <= width <= most:
            facts = {"tooth": tooth, "width": width, "least": least, "most": most}
            yield TableFault(points.lines[moment, tooth, DISTAL], 1, "width-not-plausible", facts)


def _in_one_place(points: Points, moment: str, mouth: Mouth) -> Iterator[TableFault]:
    """One landmark of two teeth at one spot, as when points were copied. Contact points of neighbours may meet."""
    for arch in ARCHES:
        for first, second in combinations(mouth.row(arch), 2):
            near = place(second) - place(first) <= _NEIGHBOURS
            shared = mouth.teeth[first].keys() & mouth.teeth[second].keys() - ({MESIAL, DISTAL} if near else set())
            for name in sorted(shared):
                if distance(mouth.teeth[first][name], mouth.teeth[second][name]) < norms.value(_ONE_PLACE):
                    line = points.lines[moment, second, name]
                    yield TableFault(line, 1, "teeth-in-one-place", {"tooth": second, "other": first})
