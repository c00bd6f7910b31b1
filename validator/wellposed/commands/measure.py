"""``wellposed measure``."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import click

from wellposed.commands.codes import NOT_READ
from wellposed.commands.files import FileError, content, shown
from wellposed.commands.output import printed, width
from wellposed.commands.refusal import refused
from wellposed.measure import Measures, PointMeasures, measure, measure_table
from wellposed.reading.limits import MOST_BYTES
from wellposed.reading.table import TableFault
from wellposed.render.measures import faults_text, measures_text
from wellposed.render.measures_json import measures_json
from wellposed.render.points_json import findings_json, movements_json, points_json
from wellposed.render.points_text import beside_section, points_text
from wellposed.report import Report

__all__ = ["command"]

_TABLE = ".csv"
_MOVED = "movements"
_SECTIONS = ("findings", _MOVED)
_POINTS: dict[str, Callable[[PointMeasures, str], str]] = {
    "text": lambda found, name: points_text(found, name, width()),
    "json": points_json,
    "findings": lambda found, name: findings_json(found),
    _MOVED: lambda found, name: movements_json(found),
}


@click.command("measure", epilog="Example: wellposed measure --format json prescription.json > measures.json")
@click.argument("file", metavar="FILE", type=click.Path())
@click.option(
    "--format",
    "form",
    type=click.Choice(list(_POINTS)),
    default="text",
    show_default=True,
    help="findings, movements: of landmark points, the sections of a prescription and of a setup.",
)
@click.pass_context
def command(ctx: click.Context, file: str, form: str) -> None:
    """Derive what follows from the measurements in a file.

    Tooth-size ratios, room along each arch, angles, components of indices. FILE is a prescription, or - for one on
    the standard input; or, named .csv, a plain table. Its header says which:

    \b
      tooth,width                    tooth widths
      tooth,landmark,x,y,z           landmark points: measures of the mouth
      tooth,landmark,moment,x,y,z    the same before and after: movements too

    A line for each tooth or point, in mm with a decimal point; spec/landmarks.md has the landmarks and the axes.

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
    found = measure_table(data) if Path(file).suffix.lower() == _TABLE else measure(data)
    if isinstance(found, Measures | PointMeasures):
        printed(_shown(found, form, name))
        return
    ctx.exit(_refused(found, name))


def _shown(found: Measures | PointMeasures, form: str, name: str) -> str:
    if isinstance(found, PointMeasures):
        return _of_points(found, form, name)
    if form in _SECTIONS:
        raise click.UsageError(f"--format {form} is for landmark points; {name} has none.")
    return measures_json(found, name) if form == "json" else measures_text(found, name, width())


def _of_points(found: PointMeasures, form: str, name: str) -> str:
    """What is shown of points; what a section for a document leaves out is said on the error stream."""
    if form == _MOVED and not found.taken.movements:
        raise click.UsageError(f"--format {form} is for points of two moments; {name} has one.")
    if form in _SECTIONS:
        for line in beside_section(found.taken, form == _MOVED):
            click.echo(f"wellposed: {name}: {line}", err=True)
    return _POINTS[form](found, name)


def _refused(found: Report | tuple[TableFault, ...], name: str) -> int:
    """Say on the error stream why the file cannot be used; the exit code."""
    if isinstance(found, Report):
        return refused(found, name)
    click.echo(faults_text(found, name), err=True, nl=False)
    return NOT_READ
