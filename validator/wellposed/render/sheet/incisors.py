"""Incisors from the side and from the front, dashed where they stand today, heavy where a setup puts them.

Plain shapes: where their edges are is to scale, how large the crowns are is not.
"""

from __future__ import annotations

from wellposed.render.sheet.drawing import Drawing, Point, number
from wellposed.render.sheet.marks import BLUE, INK, PAPER

__all__ = ["CROWN", "FRONT", "front_incisor", "side_incisor"]

CROWN = 12.0
FRONT = 11.0


def side_incisor(d: Drawing, edge: Point, up: bool, planned: bool | None = None, tall: float = CROWN) -> None:
    """A crown from the side, its edge at a place, the tongue to the left; ``up``: an upper one, the root above."""
    sign = (-1 if up else 1) * tall / CROWN

    def told(*places: tuple[float, float]) -> str:
        return " ".join(f"{number(edge.x + x)},{number(edge.y + sign * y)}" for x, y in places)

    data = (
        f"M{told((0, 0))}C{told((1.4, 0.5), (2.0, 6.0), (0.9, CROWN))}"
        f"L{told((-5.4, CROWN))}C{told((-5.6, 7.5), (-2.0, 5.5), (-1.1, 0.3))}Z"
    )
    d.path(data, **_how(planned))


def front_incisor(d: Drawing, middle: Point, side: int, sign: int, planned: bool) -> None:
    """A central incisor from the front beside the midline; ``sign`` -1: an upper one."""
    wide, high = (8.2, FRONT - 1.5) if sign < 0 else (5.2, FRONT - 2.5)

    def told(*places: tuple[float, float]) -> str:
        return " ".join(f"{number(middle.x + side * x)},{number(middle.y + sign * y)}" for x, y in places)

    data = (
        f"M{told((0.1, 1.2))}C{told((0.1, 0.2), (0.5, 0), (1.2, 0))}L{told((wide - 1.2, 0.2))}"
        f"C{told((wide, 0.2), (wide, 1.0), (wide - 0.2, 2.0))}L{told((wide - 1.2, high))}L{told((0.9, high))}Z"
    )
    d.path(data, **_how(planned))


def _how(planned: bool | None) -> dict[str, str | float]:
    """None: it stands for itself; else today or as planned."""
    if planned is None:
        return {"fill": PAPER, "stroke": INK, "stroke_width": 0.35}
    if planned:
        return {"fill": "none", "stroke": BLUE, "stroke_width": 0.7, "stroke_linejoin": "round"}
    return {"fill": "none", "stroke": INK, "stroke_width": 0.35, "stroke_dasharray": "0.9 0.6"}
