"""JSON Pointers, RFC 6901, in their string form."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any, TypeAlias

from wellposed.reading.limits import LONGEST_POINTER

Step: TypeAlias = str | int

_SURROGATE = re.compile("[\ud800-\udfff]")
_INDEX = re.compile("0|[1-9][0-9]{0,6}", re.ASCII)


def writable(name: str) -> str:
    """The name with every lone surrogate replaced by U+FFFD, so that it can be written in UTF-8."""
    return _SURROGATE.sub("\ufffd", name)


def escape(step: Step) -> str:
    """One step as it stands in a pointer."""
    return writable(str(step)).replace("~", "~0").replace("/", "~1")


def unescape(token: str) -> str:
    """The name an escaped step stands for."""
    return token.replace("~1", "/").replace("~0", "~")


def pointer(steps: Iterable[Step]) -> str:
    """The pointer to a place, or to its nearest parent that does not need an overlong one."""
    whole = ""
    for step in steps:
        longer = f"{whole}/{escape(str(step)[:LONGEST_POINTER])}"
        if len(longer) > LONGEST_POINTER:
            break
        whole = longer
    return whole


def steps(of: str) -> tuple[str, ...]:
    """The unescaped steps of a pointer; "" has none."""
    return tuple(unescape(token) for token in of.split("/")[1:])


def index(step: Step) -> int | None:
    """The step as a list index, if it is one."""
    if isinstance(step, int):
        return step
    return int(step) if _INDEX.fullmatch(step) else None


def holds(value: Any, step: Step) -> bool:
    """Whether an object has this member, or a list this index."""
    if isinstance(value, dict):
        return step in value
    place = index(step)
    return isinstance(value, list) and place is not None and 0 <= place < len(value)


def below(value: Any, step: Step) -> Any:
    """The member or entry that ``holds`` says is there."""
    return value[step] if isinstance(value, dict) else value[index(step) or 0]


def within(place: str, parents: Iterable[str]) -> bool:
    """Whether a pointer is one of the parents or lies below one."""
    return any(place == parent or place.startswith(f"{parent}/") for parent in parents)
