"""Data files of the reader, read once."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import resources
from typing import Any


@cache
def read_table(package: str | None, name: str) -> dict[str, Any]:
    """The TOML file of that name in a package. Whoever reads it leaves it as it is."""
    return tomllib.loads(resources.files(package or "").joinpath(name).read_text("utf-8"))
