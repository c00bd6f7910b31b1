"""The teeth at one moment: their points, and where they stand on the line of their arch."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import atan2, degrees

from wellposed.landmarks.line import Line, Stand, fitted
from wellposed.landmarks.result import Lack
from wellposed.landmarks.vectors import Array, Teeth, distance, middle
from wellposed.vocabulary.landmarks import DISTAL, GUM, MESIAL, ROOT, crown_point
from wellposed.vocabulary.teeth import ARCHES, RIGHT, UPPER, along_arch, arch_of, side_of

ARCH_LINE = "arch-line"


@dataclass(frozen=True)
class Mouth:
    """Points of teeth at one moment; ``midline`` is a point on the facial midline."""

    teeth: Teeth
    midline: Array | None = None

    def lacking(self, needs: Iterable[tuple[str, str]]) -> tuple[Lack, ...]:
        """What of these is not there: a landmark of a tooth, or the line of an arch."""
        return tuple(Lack(where, what) for where, what in needs if not self._there(where, what))

    def _there(self, where: str, what: str) -> bool:
        if what == ARCH_LINE:
            return self.lines[where] is not None
        return self.midline is not None if where == "face" else what in self.teeth.get(where, {})

    def row(self, arch: str) -> tuple[str, ...]:
        """The teeth of an arch that have points, from the patient's right to left."""
        return along_arch([tooth for tooth in self.teeth if arch_of(tooth) == arch])

    def crown(self, tooth: str) -> Array:
        """Its edge or cusp. KeyError if not there."""
        return self.teeth[tooth][crown_point(tooth)]

    # single teeth

    @cached_property
    def middles(self) -> dict[str, Array]:
        """Of each tooth that has both contact points, the middle between them."""
        return {t: middle((points[MESIAL], points[DISTAL])) for t, points in self.teeth.items() if _both(points)}

    @cached_property
    def widths(self) -> dict[str, float]:
        """Mesiodistal widths, straight from contact point to contact point, mm."""
        return {t: distance(self.teeth[t][MESIAL], self.teeth[t][DISTAL]) for t in self.middles}

    @cached_property
    def heights(self) -> dict[str, float]:
        """Clinical crown heights, straight from the gum to the edge or cusp, mm."""
        return {
            tooth: distance(points[GUM], points[crown_point(tooth)])
            for tooth, points in self.teeth.items()
            if GUM in points and crown_point(tooth) in points
        }

    def rootward(self, tooth: str) -> list[float]:
        """How far its gum and its root lie rootward of its edge or cusp, mm; those that are given."""
        points, up = self.teeth[tooth], 1 if arch_of(tooth) == UPPER else -1
        crown = points.get(crown_point(tooth))
        return [] if crown is None else [float(points[n][2] - crown[2]) * up for n in (GUM, ROOT) if n in points]

    # on the line

    @cached_property
    def lines(self) -> dict[str, Line | None]:
        """The line of each arch; None where too few teeth determine it."""
        return {
            arch: fitted({tooth: at for tooth, at in self.middles.items() if arch_of(tooth) == arch}) for arch in ARCHES
        }

    @cached_property
    def stands(self) -> dict[str, Stand]:
        """Where the middle of each tooth is on the line of its arch, if there is one."""
        found = {}
        for tooth, at in self.middles.items():
            line = self.lines[arch_of(tooth)]
            if line is not None:
                found[tooth] = line.stand(at)
        return found

    @cached_property
    def displacements(self) -> dict[str, float]:
        """How far each tooth is off the line, labially or buccally +, mm."""
        return {tooth: stand.off for tooth, stand in self.stands.items()}

    @cached_property
    def rotations(self) -> dict[str, float]:
        """How each tooth is turned against the line, seen from above; mesial surface towards the tongue +, deg."""
        return {tooth: self._rotation(tooth, stand) for tooth, stand in self.stands.items()}

    def _rotation(self, tooth: str, stand: Stand) -> float:
        x, y, _ = self.teeth[tooth][MESIAL] - self.teeth[tooth][DISTAL]
        mesially = (x * stand.leftward[0] + y * stand.leftward[1]) * leftward(tooth)
        return degrees(atan2(-(x * stand.out[0] + y * stand.out[1]), mesially))

    def room(self, arch: str) -> Mapping[str, float]:
        """Per contact of neighbours that are there: room between them along the line, mm; a gap +, an overlap -.

        The way from middle to middle on the line less half of both widths.
        """
        row = [tooth for tooth in self.row(arch) if tooth in self.stands]
        return {f"{first}-{second}": self.between(first, second) for first, second in pairwise(row)}

    def between(self, first: str, second: str) -> float:
        """The same of two teeth that have a line."""
        way = self.stands[second].along - self.stands[first].along
        return way - (self.widths[first] + self.widths[second]) / 2


def leftward(tooth: str) -> int:
    """1 where mesial is towards the patient's left, else -1."""
    return 1 if side_of(tooth) == RIGHT else -1


def _both(points: Mapping[str, Array]) -> bool:
    return MESIAL in points and DISTAL in points
