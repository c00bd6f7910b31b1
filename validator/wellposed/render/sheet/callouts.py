"""Blocks of text in a column beside a drawing, each as near as can be to what it is about, none over another."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wellposed.render.sheet.drawing import TEXT
from wellposed.render.sheet.metrics import ASCENT, DESCENT, LEADING, wrapped

__all__ = ["Block", "block", "spread"]

_GAP = 1.5


class Block(NamedTuple):
    """Lines of text under a heading, the last few of them bold, and how high they are, mm."""

    head: str
    lines: tuple[str, ...]
    bold: int = 0

    @property
    def height(self) -> float:
        """From the top of the first line to the foot of the last, and the gap below."""
        return (len(self.lines) * LEADING + ASCENT + DESCENT) * TEXT + _GAP

    def baselines(self, top: float) -> list[float]:
        """Where the lines stand, the first one too."""
        return [top + (ASCENT + place * LEADING) * TEXT for place in range(len(self.lines) + 1)]


def block(head: str, phrases: Sequence[str], warned: Sequence[str], room: float) -> Block:
    """A block that fits the room: what it is about, what is said of it, what is warned of."""
    first, *more = wrapped(head, TEXT, room)
    plain = [line for phrase in phrases for line in wrapped(phrase, TEXT, room)]
    bold = [line for phrase in warned for line in wrapped(phrase, TEXT, room, bold=True)]
    return Block(first, (*more, *plain, *bold), len(bold))


def spread(wanted: Sequence[float], heights: Sequence[float]) -> list[float]:
    """Tops in order, none nearer than its height to the next, as near to the wanted ones as that allows.

    Least squares by pooling neighbours that are in each other's way (isotonic regression).
    """
    pools: list[tuple[float, int]] = []
    reached = 0.0
    for top, height in zip(wanted, heights, strict=True):
        pool, size = top - reached, 1
        while pools and pools[-1][0] > pool:
            before, count = pools.pop()
            pool, size = (before * count + pool * size) / (count + size), count + size
        pools.append((pool, size))
        reached += height
    starts = [pool for pool, size in pools for _ in range(size)]
    offsets = [sum(heights[:place]) for place in range(len(heights))]
    return [start + offset for start, offset in zip(starts, offsets, strict=True)]
