"""Pydantic's ``loc`` to the steps of a pointer: it also names forms of a union, and ``[key]``."""

from __future__ import annotations

from typing import Any, NamedTuple

from wellposed.reading.pointer import Step, below, holds
from wellposed.reading.shapes import Shape

_KEY = "[key]"


class Spot(NamedTuple):
    """Steps of the pointer, what the model expects there if known, and whether the name itself is meant."""

    steps: tuple[Step, ...]
    shape: Shape | None
    is_name: bool = False


def spot(loc: tuple[Step, ...], document: Any, root: Shape | None, absent: bool = False) -> Spot:
    """Where an error is. With a root it is exact; without, a form named like a member can mislead.

    ``absent`` says that the last step names a member that is not there.
    """
    is_name = loc[-1:] == (_KEY,)
    path = loc[:-1] if is_name else loc
    steps, shape, value = list[Step](), root, document
    for place, step in enumerate(path, 1):
        last = place == len(path)
        if shape and shape.is_union:
            shape = shape.form(step)
        elif (absent and last) or _is_member(value, step, path[place : place + 1], shape):
            steps.append(step)
            value = below(value, step) if holds(value, step) else None
            shape = _further(shape, step, is_name and last)
    return Spot(tuple(steps), shape, is_name)


def _further(shape: Shape | None, step: Step, is_name: bool) -> Shape | None:
    if shape is None:
        return None
    return shape.keys() if is_name else shape.inside(step)


def _is_member(value: Any, step: Step, following: tuple[Step, ...], shape: Shape | None) -> bool:
    """Whether a step leads further in; where no shape says so, not if the step after it fits only here."""
    if not holds(value, step):
        return False
    if shape or isinstance(step, int) or not following:
        return True
    inner, (after,) = below(value, step), following
    possible = isinstance(inner, dict) or (isinstance(inner, list) and isinstance(after, int))
    return holds(inner, after) or (possible and not holds(value, after))
