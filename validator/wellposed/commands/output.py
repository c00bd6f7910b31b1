"""Where the output goes: a file, a pipe, or a terminal with colour."""

from __future__ import annotations

import re
import shutil
import sys
from collections.abc import Iterable
from pathlib import Path

import click

__all__ = ["printed", "put", "width"]

_PLAIN_WIDTH = 100
_NARROWEST = 60
_COLOURS = {
    "possible": "green",
    "not-judged": "green",
    "beyond-practice": "yellow",
    "incomplete": "yellow",
    "undecided": "yellow",
    "contradictory": "red",
    "refused": "red",
    "unreadable": "red",
}
_VERDICT = re.compile(rf"(?m)^(\S.*?  )({'|'.join(_COLOURS)})(?=\.)")


def width() -> int:
    """The longest line: that of the terminal within reason; where there is none, always the same."""
    if not sys.stdout.isatty():
        return _PLAIN_WIDTH
    return min(max(shutil.get_terminal_size().columns, _NARROWEST), _PLAIN_WIDTH)


def put(pieces: Iterable[str], output: str | None, coloured: bool) -> None:
    """Write the pieces to the file named, else print them."""
    if output is None:
        for piece in pieces:
            printed(_marked(piece) if coloured else piece)
        return
    try:
        Path(output).write_text("".join(pieces), "utf-8", newline="")
    except OSError as error:
        raise click.UsageError("the output file cannot be written") from error


def printed(text: str) -> None:
    """Print text as it is; what the terminal has no letters for is replaced."""
    encoding = getattr(sys.stdout, "encoding", None) or "utf-8"
    click.echo(text.encode(encoding, "replace").decode(encoding), nl=False)


def _marked(piece: str) -> str:
    """The verdict in its colour, in the first line; click drops colour where it has no place."""
    return _VERDICT.sub(_colour, piece, count=1)


def _colour(match: re.Match[str]) -> str:
    return match[1] + click.style(match[2], fg=_COLOURS[match[2]], bold=True)
