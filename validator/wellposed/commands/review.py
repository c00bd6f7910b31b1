"""``wellposed review``."""

from __future__ import annotations

from pathlib import Path
from typing import Any, TypeVar

import click

from wellposed.commands.codes import FIT, NOT_FIT
from wellposed.commands.deciding import document_text, options_fit
from wellposed.commands.documents import sound_in
from wellposed.commands.files import STDIN, shown
from wellposed.commands.output import printed, put, width
from wellposed.commands.practice import limits, profile_option
from wellposed.findings import Severity
from wellposed.model import Prescription, Review, Setup
from wellposed.model.envelope import Envelope
from wellposed.render.review import review_json, review_text
from wellposed.review import review
from wellposed.review.requests import unopened
from wellposed.review.result import SetupReview

__all__ = ["command"]

D = TypeVar("D", bound=Envelope)
_KINDS: dict[type[Envelope], str] = {Prescription: "a prescription", Setup: "a setup", Review: "a review"}


@click.command("review", epilog="Example: wellposed review prescription.json setup.json")
@click.argument("prescription", metavar="PRESCRIPTION", type=click.Path())
@click.argument("setup", metavar="SETUP", type=click.Path())
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@profile_option
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    type=click.Path(dir_okay=False, writable=True),
    help="Write the review there as the document that is sent, beside printing what it says.",
)
@click.option("--id", metavar="ID", help="Id of that document.")
@click.option("--reviewer", metavar="ID", help="Pseudonymous id of whoever decides.")
@click.option(
    "--replaces",
    metavar="FILE",
    type=click.Path(),
    help="A review written before, which that document takes the place of: same id, next revision.",
)
@click.option("--outcome", type=click.Choice(["approved", "returned"]), help="What the reviewer decides.")
@click.option(
    "--accept", metavar="CLAUSE", multiple=True, help="A clause taken as it is though not met; once for each."
)
@click.option("--accept-unopened", is_flag=True, help="Approve what moved though nothing opened it.")
@click.option("--also-preferred", is_flag=True, help="Ask for wishes that are not met, too.")
@click.option("--issued", metavar="TIME", help="RFC 3339 date-time of the document; now where it is not given.")
@click.pass_context
def command(ctx: click.Context, /, prescription: str, setup: str, form: str, **options: Any) -> None:
    """Hold a setup against the prescription it answers, clause by clause.

    What is met, what is not and by how much, what moved though nothing opened it, and whether another setup could have
    met it. With -o the review is also written as a document, whose requests are clauses. Whether the setup is approved
    or returned is for the reviewer to say. One of the two files may be -, the standard input.

    \b
    Exit status:
      0  everything that can be told is as ordered
      1  something is not, or stops the setup
      2  the command was called wrongly
      3  a file or document could not be read
      4  a fault inside the program
    """
    if [prescription, setup, options["replaces"]].count(STDIN) > 1:
        raise click.UsageError("- (the standard input) can be given once only")
    options_fit(options)
    _not_over(options["output"], [prescription, setup, options["replaces"]])
    order, plan = _document(ctx, prescription, Prescription), _document(ctx, setup, Setup)
    options["replaces"] = _document(ctx, options["replaces"], Review) if options["replaces"] else None
    told = review(order, plan, limits(options["profile"]))
    written = None if options["output"] is None else document_text(told, order, plan, options)
    names = shown(prescription), shown(setup)
    printed(review_json(told, order, names) if form == "json" else review_text(told, order, plan, width()))
    if written is not None:
        put([written], options["output"], coloured=False)
    ctx.exit(_code(told))


def _not_over(output: str | None, read: list[str | None]) -> None:
    """UsageError where the review would be written over a document it is about."""
    if output is not None and Path(output).resolve() in {Path(file).resolve() for file in read if file}:
        raise click.UsageError(f"-o {shown(output)}: that is a document the review is about; it is not written over")


def _document(ctx: click.Context, file: str, kind: type[D]) -> D:
    """The sound document of a kind in a file; what is wrong with it is said, and ends the run."""
    found = sound_in(ctx, file)
    if not isinstance(found, kind):
        raise click.UsageError(f"{shown(file)} is not {_KINDS[kind]}")
    return found


def _code(told: SetupReview) -> int:
    stopped = any(one.severity == Severity.STOP for one in told.findings)
    return NOT_FIT if told.unmet or unopened(told) or stopped else FIT
