"""From ``data.goals[3].amount`` to ``/goals/3/amount``, names with dots included."""

from __future__ import annotations

import re
from collections.abc import Iterator

__all__ = ["pointer_of"]

_PLACE = re.compile(r"\[([0-9]+)\]", re.ASCII)


def pointer_of(name: str, document: object) -> str:
    """The JSON pointer of a dotted name; where two are possible, of what they have in common."""
    readings = list(_readings(name.removeprefix("data"), document))
    return "".join(f"/{_escaped(step)}" for step in _common(readings))


def _readings(rest: str, node: object) -> Iterator[tuple[str, ...]]:
    """Every path through the document that is written so."""
    if not rest:
        yield ()
    for step, inner, written in _steps(rest, node):
        yield from ((step, *path) for path in _readings(rest[len(written) :], inner))


def _steps(rest: str, node: object) -> Iterator[tuple[str, object, str]]:
    if isinstance(node, list) and (place := _PLACE.match(rest)):
        yield place[1], node[int(place[1])], place[0]
    if isinstance(node, dict):
        yield from ((key, node[key], f".{key}") for key in node if rest.startswith(f".{key}"))


def _common(readings: list[tuple[str, ...]]) -> list[str]:
    return [steps[0] for steps in _while_alike(readings)]


def _while_alike(readings: list[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    for steps in zip(*readings, strict=False):
        if len(set(steps)) > 1:
            return
        yield steps


def _escaped(step: str) -> str:
    return step.replace("~", "~0").replace("/", "~1")
