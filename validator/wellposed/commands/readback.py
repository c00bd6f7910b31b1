"""``wellposed readback``."""

from __future__ import annotations

import click

from wellposed.check import sound
from wellposed.commands.codes import NOT_READ
from wellposed.commands.files import FileError, content, shown
from wellposed.commands.output import printed, width
from wellposed.commands.refusal import refused
from wellposed.reading.limits import MOST_BYTES
from wellposed.render.readback import BRITISH, USAGES, readback_json, readback_text
from wellposed.report import Report

__all__ = ["command"]


@click.command("readback", epilog="Example: wellposed readback --usage american prescription.json")
@click.argument("file", metavar="FILE", type=click.Path())
@click.option("--usage", type=click.Choice(USAGES), default=BRITISH, show_default=True, help="Words and spelling.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@click.pass_context
def command(ctx: click.Context, file: str, usage: str, form: str) -> None:
    """Say a prescription back in plain sentences.

    What will change, what must stay, what may be used, and what was not mentioned and is therefore kept: a sentence for
    each clause. FILE is a prescription, or - for one on the standard input. Whether its clauses can hold together is
    for check to say.

    \b
    Exit status:
      0  the prescription was read back
      1  faults in the prescription stop it
      2  the command was called wrongly
      3  the file or the document could not be read
      4  a fault inside the program
    """
    name = shown(file)
    try:
        found = sound(content(file, MOST_BYTES + 1))
    except FileError as error:
        click.echo(f"wellposed: {name}: {error}", err=True)
        ctx.exit(NOT_READ)
    if isinstance(found, Report):
        ctx.exit(refused(found, name))
    printed(readback_json(found, name, usage) if form == "json" else readback_text(found, usage, width()))
