"""The data of ``draft.toml``, read once."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import resources
from typing import Any

from wellposed.vocabulary.motions import Motion


@cache
def data() -> dict[str, Any]:
    """Everything in the file."""
    return tomllib.loads(resources.files(__package__).joinpath("draft.toml").read_text("utf-8"))


def term(table: str, name: str | None) -> Any:
    """An entry of a table, ``None`` where it has none."""
    return data()[table].get(name or "")


def motion(kind: str, way: str | None) -> Motion | None:
    """The motion of the format for a direction of a kind of movement."""
    found: Motion | None = data()["motion"].get(kind, {}).get(way or "")
    return found
