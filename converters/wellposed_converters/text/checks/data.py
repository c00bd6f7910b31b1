"""The data of ``checks.toml``, read once."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import resources
from typing import Any


@cache
def data() -> dict[str, Any]:
    """Everything in the file."""
    return tomllib.loads(resources.files(__package__).joinpath("checks.toml").read_text("utf-8"))


@cache
def names(key: str) -> frozenset[str]:
    """A list of the file as a set."""
    return frozenset(data()[key])


@cache
def opposite(one: str | None, other: str | None) -> bool:
    """Whether two directions undo each other."""
    pairs = data()["opposite"]
    return other in pairs.get(one, ()) or one in pairs.get(other, ())
