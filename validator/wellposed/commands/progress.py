"""Progress over many files, for whoever watches."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence

__all__ = ["MANY", "watched"]

MANY = 20


def watched(files: Sequence[str]) -> Iterable[str]:
    """The files; for many of them with a bar on the error stream, if that is a terminal."""
    if len(files) <= MANY or not sys.stderr.isatty():
        return files
    from rich.console import Console  # noqa: PLC0415 - rich is loaded by those who see it
    from rich.progress import track  # noqa: PLC0415 - the same

    return track(files, "Checking", console=Console(stderr=True), transient=True)
