"""The data of ``draft.toml``, read once."""

from __future__ import annotations

from functools import cache
from typing import Any

from wellposed.vocabulary.motions import Motion
from wellposed_converters.text.tables import read_table


@cache
def data() -> dict[str, Any]:
    """Everything in the file."""
    return read_table(__package__, "draft.toml")


def term(table: str, name: str | None) -> Any:
    """An entry of a table, ``None`` where it has none."""
    return data()[table].get(name or "")


def motion(kind: str, way: str | None) -> Motion | None:
    """The motion of the format for a direction of a kind of movement."""
    found: Motion | None = data()["motion"].get(kind, {}).get(way or "")
    return found
