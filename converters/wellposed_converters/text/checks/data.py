"""The data of ``checks.toml``, read once."""

from __future__ import annotations

from functools import cache
from typing import Any

from wellposed_converters.text.tables import read_table


@cache
def data() -> dict[str, Any]:
    """Everything in the file."""
    return read_table(__package__, "checks.toml")


@cache
def names(key: str) -> frozenset[str]:
    """A list of the file as a set."""
    return frozenset(data()[key])


@cache
def opposite(one: str | None, other: str | None) -> bool:
    """Whether two directions undo each other."""
    pairs = data()["opposite"]
    return other in pairs.get(one, ()) or one in pairs.get(other, ())
