"""``wellposed measure``."""

from __future__ import annotations

from pathlib import Path

import click

from wellposed.commands.codes import NOT_READ
from wellposed.commands.files import FileError, content, shown
from wellposed.commands.output import printed, width
from wellposed.commands.refusal import refused
from wellposed.measure import Measures, measure, measure_widths
from wellposed.reading.limits import MOST_BYTES
from wellposed.reading.widths import WidthFault
from wellposed.render.measures import faults_text, measures_text
from wellposed.render.measures_json import measures_json
from wellposed.report import Report

__all__ = ["command"]

_TABLE = ".csv"


@click.command("measure", epilog="Example: wellposed measure --format json prescription.json > measures.json")
@click.argument("file", metavar="FILE", type=click.Path())
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@click.pass_context
def command(ctx: click.Context, file: str, form: str) -> None:
    """Derive what follows from the measurements in a file.

    Tooth-size ratios, room along each arch, angles, components of indices. FILE is a prescription, or - for one on
    the standard input; or, named .csv, a plain table of tooth widths: the header tooth,width and a line for each
    tooth, in mm with a decimal point.

    \b
    Exit status:
      0  the measurements were used
      1  faults in the prescription stop it
      2  the command was called wrongly
      3  the file or the document could not be read
      4  a fault inside the program
    """
    name = shown(file)
    try:
        data = content(file, MOST_BYTES + 1)
    except FileError as error:
        click.echo(f"wellposed: {name}: {error}", err=True)
        ctx.exit(NOT_READ)
    found = measure_widths(data) if Path(file).suffix.lower() == _TABLE else measure(data)
    if isinstance(found, Measures):
        printed(measures_json(found, name) if form == "json" else measures_text(found, name, width()))
        return
    ctx.exit(_refused(found, name))


def _refused(found: Report | tuple[WidthFault, ...], name: str) -> int:
    """Say on the error stream why the file cannot be used; the exit code."""
    if isinstance(found, Report):
        return refused(found, name)
    click.echo(faults_text(found, name), err=True, nl=False)
    return NOT_READ
