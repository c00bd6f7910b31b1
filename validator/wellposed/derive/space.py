"""The space budget of an arch: what needs room, what makes it, and what is left over.

Amounts are by the geometry of the model, the bands beside them by published coefficients (``space.*`` of the norms).
An allowance is a permission: it counts from nothing up to its amount. What is not stated stays unknown.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from wellposed.derive.space_means import means
from wellposed.derive.space_needs import needs
from wellposed.derive.space_parts import Line as Line
from wellposed.derive.space_parts import Part
from wellposed.kinematics.mouth import Mouth


@dataclass(frozen=True, slots=True)
class Budget:
    """The room of one arch, mm.

    needs      what takes room
    means      what gives it
    remainder  all means at their whole amount less all needs; + is room left over; None where one is unknown
    low        least that can remain: the means at their least, the needs at their most; None where unknown
    high       most that can remain: the means at their most, the needs at their least; None where unknown
    unknown    the lines whose amount is not stated
    """

    arch: str
    needs: tuple[Line, ...]
    means: tuple[Line, ...]
    remainder: float | None
    low: float | None
    high: float | None
    unknown: tuple[str, ...]

    @property
    def band(self) -> tuple[float | None, float | None]:
        """Least and most that can remain, mm."""
        return self.low, self.high


def budget(mouth: Mouth, arch: str) -> Budget:
    """The budget of the upper or lower arch."""
    taking, giving = _merged(needs(mouth, arch)), _merged(means(mouth, arch))
    return Budget(
        arch,
        taking,
        giving,
        remainder=_less((line.amount for line in giving), (line.amount for line in taking)),
        low=_less((line.least for line in giving), (line.high for line in taking)),
        high=_less((line.high for line in giving), (line.least for line in taking)),
        unknown=tuple(line.what for line in (*taking, *giving) if line.amount is None),
    )


def _less(given: Iterable[float | None], taken: Iterable[float | None]) -> float | None:
    """One sum less the other; None where an amount is."""
    plus, minus = list(given), list(taken)
    known = [*(amount for amount in plus if amount is not None), *(-amount for amount in minus if amount is not None)]
    return sum(known) if len(known) == len(plus) + len(minus) else None


def _merged(parts: Iterable[Part]) -> tuple[Line, ...]:
    """One line for clauses that move the same teeth the same way: the larger amount holds, they do not add up."""
    kept: list[Part] = []
    for part in parts:
        same = next(
            (n for n, one in enumerate(kept) if one.line.what == part.line.what and one.teeth & part.teeth), None
        )
        if same is None:
            kept.append(part)
        else:
            kept[same] = Part(_larger(kept[same].line, part.line), kept[same].teeth | part.teeth)
    return tuple(part.line for part in kept)


def _larger(one: Line, other: Line) -> Line:
    return replace(
        one,
        amount=_most(one.amount, other.amount),
        low=_most(one.low, other.low),
        high=_most(one.high, other.high),
        least=_most(one.least, other.least),
        from_=tuple(dict.fromkeys((*one.from_, *other.from_))),
    )


def _most(one: float | None, other: float | None) -> float | None:
    """The larger; unknown where one is."""
    return None if one is None or other is None else max(one, other)
