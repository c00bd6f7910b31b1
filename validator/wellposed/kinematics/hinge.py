"""The hinge: how the height of the back teeth moves the bite, and the variants it makes of every question.

m = -mean vertical(16, 26) - mean vertical(36, 46) - what the gap at the back grows by; closing = k m, k known only
between bounds. A gap that is there already keeps the back teeth out of contact: filling it moves nothing else.
Over every k the set is two cones; at the stated values both ends of k are asked.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import inf

from wellposed import norms
from wellposed.kinematics.rows import Setting, System, mean, plus
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import LOWER, SIDES, UPPER, tooth_at

_FREE = (-inf, inf)
_NIL = (0.0, 0.0)
_NOT_LESS = (0.0, inf)
_NOT_MORE = (-inf, 0.0)
_STATED = {"least": (_NIL, _FREE, _FREE), "most": (_FREE, _NIL, _FREE)}
_PROOF = {"closes": (_NOT_LESS, _NOT_MORE, _NOT_LESS), "opens": (_NOT_MORE, _NOT_LESS, _NOT_MORE)}


class Hinge:
    """Columns and rows of the hinge.

    before   the gap at the back at the start, mm
    closing  column: the bite closes, mm at the incisors
    gaps     columns of the posterior gap, one in all or one a side
    shut     rows that a silent gap bounds from above, by side
    columns  every column that the hinge turns on
    stated   names of the settings at the stated values, one group an end of k
    proof    names of the settings of a proof
    """

    def __init__(
        self, system: System, columns: dict[tuple[str, Variable], int], uneven: bool, open_before: float
    ) -> None:
        self.before = open_before
        self.closing = system.column()
        self.gaps: dict[str, int] = {}
        self.columns: set[int] = set()
        pairs = {side: pair for side in SIDES if (pair := _opposed(columns, side))}
        self.rests = bool(pairs)
        self._settings: dict[str, tuple[Setting, ...]] = {}
        if pairs:
            self._lever(system, pairs, uneven, open_before)
        self.shut = {side: system.row({column: 1.0}) for side, column in self.gaps.items()}
        self.stated: tuple[tuple[str, ...], ...]
        self.proof: tuple[str, ...]
        if pairs:
            self._variants()
        else:
            system.row({self.closing: 1.0}, 0.0, 0.0)
            self._settings = {"stated": (), "proof": ()}
            self.stated, self.proof = (("stated",),), ("proof",)

    def _lever(
        self,
        system: System,
        pairs: dict[str, tuple[int, int]],
        uneven: bool,
        open_before: float,
    ) -> None:
        m = system.column()
        heights = {side: dict.fromkeys(pair, 1.0) for side, pair in pairs.items()}
        self.columns = {column for pair in pairs.values() for column in pair}
        sides = heights if uneven and len(pairs) == 2 else {"both": mean(list(heights.values()))}
        for side, height in sides.items():
            self.gaps[side] = system.column(0.0)
            system.row(plus({m: 1.0, self.gaps[side]: 1.0}, height), open_before, open_before)
            if open_before > 0:
                system.row(plus({self.gaps[side]: 1.0}, height), low=open_before)
        self.columns |= set(self.gaps.values())
        factors = (norms.value("kinematics.hinge.least"), norms.value("kinematics.hinge.most"))
        self._rows = (*(system.row({self.closing: 1.0, m: -k}) for k in factors), system.row({m: 1.0}))

    def _variants(self) -> None:
        """With uneven sides silence means that one of the two gaps is shut: one variant each."""
        sides = list(self.shut) if len(self.shut) == 2 else [""]
        self.stated = tuple(tuple(self._variant(end, ends, side) for side in sides) for end, ends in _STATED.items())
        self.proof = tuple(self._variant(cone, ends, side) for cone, ends in _PROOF.items() for side in sides)

    def _variant(self, name: str, ends: Iterable[tuple[float, float]], side: str) -> str:
        hinge = [Setting(True, row, *pair) for row, pair in zip(self._rows, ends, strict=True)]
        open_side = [Setting(True, row, *_FREE) for other, row in self.shut.items() if side and other != side]
        full = f"{name}-{side}" if side else name
        self._settings[full] = (*hinge, *open_side)
        return full

    def set_errors(self, system: System, errors: Iterable[tuple[int, float, float]]) -> None:
        """Fix the error columns at 0 in the stated settings, free them between their bounds in the proofs."""
        known = list(errors)
        fixed = tuple(Setting(False, column, 0.0, 0.0) for column, _, _ in known)
        freed = tuple(Setting(False, *error) for error in known)
        for name, settings in self._settings.items():
            system.settings[name] = settings + (freed if name in self.proof else fixed)


def _opposed(columns: dict[tuple[str, Variable], int], side: str) -> tuple[int, int] | None:
    """Heights of the opposed first molars of a side, if both stand."""
    pair = [columns.get((tooth_at(arch, side, 6), "vertical")) for arch in (UPPER, LOWER)]
    return (pair[0], pair[1]) if pair[0] is not None and pair[1] is not None else None
