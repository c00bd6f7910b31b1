"""``wellposed check``."""

from __future__ import annotations

from functools import partial
from typing import Any

import click

from wellposed.check import check, prescription_of
from wellposed.commands.files import STDIN, FileError, content, shown
from wellposed.commands.output import put, width
from wellposed.commands.practice import limits, profile_option
from wellposed.commands.progress import watched
from wellposed.commands.run import Run
from wellposed.model import Prescription
from wellposed.reading.limits import MOST_BYTES
from wellposed.render.forms import FORMS, TEXT, text_form
from wellposed.render.note import Note, OtherNote, note_of

__all__ = ["command"]


@click.command("check", epilog="Example: wellposed check --format json prescription.json > report.json")
@click.argument("files", metavar="FILE...", nargs=-1, required=True, type=click.Path())
@click.option("--format", "form", type=click.Choice(list(FORMS)), default=TEXT, show_default=True)
@profile_option
@click.option(
    "--earlier",
    metavar="FILE",
    multiple=True,
    type=click.Path(exists=True, dir_okay=False, readable=True),
    help="A revision before this one; once for each. Used where the id is the same.",
)
@click.option(
    "--note",
    metavar="NOTE.txt",
    type=click.Path(exists=True, dir_okay=False, readable=True),
    help="The note a prescription was made of: the report quotes it. For one file, as text.",
)
@click.option(
    "--output",
    metavar="FILE",
    type=click.Path(dir_okay=False, writable=True),
    help="Write the report there instead of printing it.",
)
@click.pass_context
def command(ctx: click.Context, /, files: tuple[str, ...], form: str, **options: Any) -> None:
    """Check documents and say what stands against them.

    A FILE of - is the standard input.

    \b
    Exit status, the worst of all files:
      0  every document is fit to send
      1  something stops one, or must be answered first
      2  the command was called wrongly
      3  a file or document could not be read
      4  a fault inside the program
    """
    if files.count(STDIN) > 1:
        raise click.UsageError("- (the standard input) can be given once only")
    note = options["note"]
    if note is not None and (len(files) > 1 or form != TEXT or STDIN in files):
        raise click.UsageError("--note goes with one file, named, and a report as text")
    quoted = _note(note, files[0]) if note is not None else None
    chosen = text_form(width(), len(files) > 1, quoted) if form == TEXT else FORMS[form]
    asked = partial(
        check, numbers=limits(options["profile"]), earlier=[_prescription(file) for file in options["earlier"]]
    )
    run = Run(asked, chosen, MOST_BYTES + 1)
    put(run.pieces(watched(files)), options["output"], coloured=form == TEXT)
    ctx.exit(run.worst)


def _prescription(file: str) -> Prescription:
    found = prescription_of(content(file, MOST_BYTES + 1))
    if found is None:
        raise click.UsageError(f"--earlier {shown(file)}: not a sound prescription; check it by itself")
    return found


def _note(note: str, file: str) -> Note:
    try:
        text = content(note, MOST_BYTES + 1).decode("utf-8-sig")
        return note_of(content(file, MOST_BYTES + 1), text)
    except FileError as error:
        raise click.UsageError(f"{shown(file)}: {error}") from error
    except UnicodeDecodeError as error:
        raise click.UsageError(f"--note {shown(note)}: not UTF-8 text") from error
    except OtherNote as error:
        raise click.UsageError(f"--note {shown(note)}: {error}") from error
