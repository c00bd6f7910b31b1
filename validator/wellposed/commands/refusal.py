"""What is said of a document that a command cannot use."""

from __future__ import annotations

import click

from wellposed.commands.output import width
from wellposed.commands.run import code_of
from wellposed.render.text import text
from wellposed.report import NOT_JUDGED, Report

__all__ = ["refused"]


def refused(found: Report, name: str) -> int:
    """Say on the error stream why there is no sound prescription in a file; the exit code."""
    if found.verdict == NOT_JUDGED:
        raise click.UsageError(f"{name} is not a prescription")
    click.echo(text(found, name, width()), err=True, nl=False)
    return code_of(found)
