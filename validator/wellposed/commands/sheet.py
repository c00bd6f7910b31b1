"""``wellposed sheet``."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple, NoReturn

import click

from wellposed.check import check, sound_document
from wellposed.commands.codes import NOT_READ
from wellposed.commands.files import STDIN, FileError, content, documents_in, shown
from wellposed.commands.practice import limits, profile_option
from wellposed.commands.refusal import refused
from wellposed.model import Prescription, Setup
from wellposed.model.envelope import Envelope
from wellposed.norms import Norms
from wellposed.reading.limits import MOST_BYTES
from wellposed.render.sheet import (
    Page,
    PdfMissingError,
    history_sheet,
    html,
    order_sheet,
    pdf,
    review_sheet,
    svg,
)
from wellposed.report import Report
from wellposed.review import review
from wellposed.revisions.history import history

__all__ = ["command"]

_FORMS = (".html", ".pdf", ".svg")


class Given(NamedTuple):
    """A file: its base name, its bytes, the sound document in it."""

    name: str
    data: bytes
    document: Envelope


@click.command("sheet", epilog="Example: wellposed sheet prescription.json setup.json -o case.html")
@click.argument("files", metavar="FILE...", nargs=-1, required=True, type=click.Path())
@click.option(
    "-o",
    "--output",
    metavar="FILE.html|.pdf|.svg",
    required=True,
    type=click.Path(dir_okay=False, writable=True),
    help="What is written; its ending says in which form. An .svg holds the drawings alone.",
)
@profile_option
@click.pass_context
def command(ctx: click.Context, files: tuple[str, ...], output: str, profile: str | None) -> None:
    """Write a page to look at and to print, with the arches drawn.

    What must stay, what moves and how far, the measures and the room as drawings, what is said of each clause.

    \b
    The files tell what it is about:
      one prescription             the order, and what the check finds
      a prescription and a setup   the setup, clause by clause
      several of one case          its revisions, in order

    A FILE that is a folder stands for its files named .json; a FILE of - is the standard input. A PDF needs the extra
    wellposed[pdf]; the other forms do not.

    \b
    Exit status:
      0  the page was written, whatever it says
      1  faults in a document stop it
      2  the command was called wrongly
      3  a file or document could not be read
      4  a fault inside the program
    """
    form = Path(output).suffix.lower()
    if form not in _FORMS:
        raise click.UsageError(f"-o must end in one of {', '.join(_FORMS)}")
    if files.count(STDIN) > 1:
        raise click.UsageError("- (the standard input) can be given once only")
    page = _page([_given(ctx, one) for file in files for one in _each(ctx, file)], limits(profile))
    _written(output, _formed(page, form))


def _each(ctx: click.Context, file: str) -> Sequence[str]:
    try:
        return documents_in(file) if Path(file).is_dir() else (file,)
    except FileError as error:
        _unread(ctx, shown(file), error)


def _unread(ctx: click.Context, name: str, error: FileError) -> NoReturn:
    click.echo(f"wellposed: {name}: {error}", err=True)
    ctx.exit(NOT_READ)


def _given(ctx: click.Context, file: str) -> Given:
    """The sound document in a file; what is wrong with it is said, and ends the run."""
    name = shown(file)
    try:
        data = content(file, MOST_BYTES + 1)
    except FileError as error:
        _unread(ctx, name, error)
    found = sound_document(data)
    if isinstance(found, Report):
        ctx.exit(refused(found, name))
    return Given(name, data, found)


def _page(given: Sequence[Given], numbers: Norms | None) -> Page:
    """What the documents together are about. UsageError where that is nothing there is a page of."""
    kinds = sorted(type(one.document).__name__ for one in given)
    orders = [one.document for one in given if isinstance(one.document, Prescription)]
    setups = [one.document for one in given if isinstance(one.document, Setup)]
    if not orders:
        raise click.UsageError("a sheet needs a prescription among its files")
    if kinds == ["Prescription"]:
        return order_sheet(orders[0], check(given[0].data, numbers))
    if kinds == ["Prescription", "Setup"]:
        return review_sheet(orders[0], setups[0], review(orders[0], setups[0], numbers))
    return _of_history(given, numbers)


def _of_history(given: Sequence[Given], numbers: Norms | None) -> Page:
    cases = history([(one.name, one.data) for one in given], review, numbers).cases
    if len(cases) != 1:
        raise click.UsageError(f"the files are of {len(cases)} cases; a sheet is of one")
    if not cases[0].followed:
        raise click.UsageError("two prescriptions have one revision, and nothing tells which is meant")
    return history_sheet(cases[0])


def _formed(page: Page, form: str) -> bytes:
    if form == ".svg":
        return svg(page).encode()
    if form == ".html":
        return html(page).encode()
    try:
        return pdf(html(page))
    except PdfMissingError as error:
        raise click.UsageError(str(error)) from error


def _written(output: str, data: bytes) -> None:
    try:
        Path(output).write_bytes(data)
    except OSError as error:
        raise click.UsageError("the output file cannot be written") from error
