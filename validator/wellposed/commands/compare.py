"""``wellposed compare``."""

from __future__ import annotations

import click

from wellposed.commands.codes import FIT, NOT_FIT
from wellposed.commands.documents import sound_in
from wellposed.commands.files import STDIN, shown
from wellposed.commands.output import printed, width
from wellposed.commands.practice import limits, profile_option
from wellposed.model import Prescription, Review, Setup
from wellposed.model.envelope import Envelope
from wellposed.norms import Norms
from wellposed.render.revisions import comparison_json, comparison_text, reviews_text, setups_text
from wellposed.revisions.comparing import compared
from wellposed.revisions.plans import SetupComparison, setups_compared
from wellposed.revisions.result import Comparison
from wellposed.revisions.reviews import ReviewComparison, reviews_compared

__all__ = ["command"]

Told = Comparison | SetupComparison | ReviewComparison


@click.command("compare", epilog="Example: wellposed compare first.json second.json")
@click.argument("old", metavar="OLD", type=click.Path())
@click.argument("new", metavar="NEW", type=click.Path())
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@profile_option
@click.pass_context
def command(ctx: click.Context, /, old: str, new: str, form: str, profile: str | None) -> None:
    """Compare two prescriptions, two setups or two reviews.

    Of prescriptions every clause: added, dropped, tightened, loosened, turned round, or said in another way; and what
    the check says of both, with the conflicts that are new. Of setups every movement and amount that differs by more
    than rounding. One of the two may be -, the standard input.

    \b
    Exit status:
      0  the documents were compared
      1  a fault stops one of them, or the new prescription has a conflict the old one had not
      2  the command was called wrongly
      3  a file or document could not be read
      4  a fault inside the program
    """
    if old == new == STDIN:
        raise click.UsageError("- (the standard input) can be given once only")
    told = _told(sound_in(ctx, old), sound_in(ctx, new), limits(profile))
    printed(comparison_json(told, (shown(old), shown(new))) if form == "json" else _text(told))
    ctx.exit(NOT_FIT if isinstance(told, Comparison) and told.weighed.introduced else FIT)


def _told(old: Envelope, new: Envelope, numbers: Norms | None) -> Told:
    if isinstance(old, Prescription) and isinstance(new, Prescription):
        return compared(old, new, numbers)
    if isinstance(old, Setup) and isinstance(new, Setup):
        return setups_compared(old, new)
    if isinstance(old, Review) and isinstance(new, Review):
        return reviews_compared(old, new)
    kinds = [vars(one)["format"].removeprefix("wellposed/") for one in (old, new)]
    if kinds[0] == kinds[1]:
        raise click.UsageError(f"two {kinds[0]}s cannot be compared: prescriptions, setups and reviews can")
    raise click.UsageError(f"a {kinds[0]} cannot be compared with a {kinds[1]}: both must be of one kind")


def _text(told: Told) -> str:
    if isinstance(told, SetupComparison):
        return setups_text(told, width())
    return reviews_text(told, width()) if isinstance(told, ReviewComparison) else comparison_text(told, width())
