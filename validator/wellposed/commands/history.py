"""``wellposed history``."""

from __future__ import annotations

from collections.abc import Iterator

import click

from wellposed.commands.codes import FIT, NOT_FIT, NOT_READ
from wellposed.commands.files import FileError, content, documents_in, shown
from wellposed.commands.output import printed, width
from wellposed.commands.practice import limits, profile_option
from wellposed.commands.run import code_of
from wellposed.findings import Severity
from wellposed.reading.limits import MOST_BYTES
from wellposed.render.revisions import history_json, history_text
from wellposed.review import review
from wellposed.revisions.history import History, history

__all__ = ["command"]


@click.command("history", epilog="Example: wellposed history --format json case/ > history.json")
@click.argument("folder", metavar="FOLDER", type=click.Path(exists=True, file_okay=False, readable=True))
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@profile_option
@click.pass_context
def command(ctx: click.Context, /, folder: str, form: str, profile: str | None) -> None:
    """Follow the cases in a folder over their revisions.

    Every file of the FOLDER named .json, without those of the folders in it, is read: prescriptions, and the setups,
    receipts and reviews that answer them. Clause by clause: when it was asked, how it changed, what each setup made of
    it, whether it was undone. Where the documents do not join up is said, and nothing is mended.

    \b
    Exit status, the worst of all that applies:
      0  the documents join up, and no clause needs a second look
      1  they do not, a clause does, or a fault stops a document
      2  the command was called wrongly
      3  a file or document could not be read
      4  a fault inside the program
    """
    lost: list[str] = []
    told = history(_files(folder, lost), review, limits(profile))
    printed(history_json(told) if form == "json" else history_text(told, width()))
    ctx.exit(max(_code(told), NOT_READ if lost else FIT))


def _files(folder: str, lost: list[str]) -> Iterator[tuple[str, bytes]]:
    """Base name and bytes of every file, by name; what cannot be read is said, and the rest goes on."""
    for file in documents_in(folder):
        name = shown(file)
        try:
            yield name, content(file, MOST_BYTES + 1)
        except FileError as error:
            click.echo(f"wellposed: {name}: {error}", err=True)
            lost.append(name)


def _code(told: History) -> int:
    codes = [code_of(one.report) for one in told.unread]
    weighs = (Severity.STOP, Severity.ASK, Severity.CAUTION)
    found = any(one.severity in weighs for case in told.cases for one in case.findings)
    return max([*codes, NOT_FIT if found else FIT])
