"""A document out of a file, for the commands that need a sound one."""

from __future__ import annotations

import click

from wellposed.check import sound_document
from wellposed.commands.codes import NOT_READ
from wellposed.commands.files import FileError, content, shown
from wellposed.commands.refusal import refused
from wellposed.model.envelope import Envelope
from wellposed.reading.limits import MOST_BYTES
from wellposed.report import Report

__all__ = ["sound_in"]


def sound_in(ctx: click.Context, file: str) -> Envelope:
    """The sound document in a file; what is wrong with it is said, and ends the run."""
    name = shown(file)
    try:
        found = sound_document(content(file, MOST_BYTES + 1))
    except FileError as error:
        click.echo(f"wellposed: {name}: {error}", err=True)
        ctx.exit(NOT_READ)
    if isinstance(found, Report):
        ctx.exit(refused(found, name))
    return found
