"""``wellposed verify``."""

from __future__ import annotations

from typing import Any

import click

from wellposed.check import sound_document
from wellposed.commands.codes import FIT, NOT_FIT, NOT_READ
from wellposed.commands.files import STDIN, FileError, content, shown
from wellposed.commands.key_files import read_trust
from wellposed.commands.output import printed, width
from wellposed.exchange import jws
from wellposed.exchange.arrival import Received, received
from wellposed.exchange.verification import Verification, verified
from wellposed.model.moments import now, time_of
from wellposed.reading.limits import MOST_BYTES
from wellposed.render.verification import verification_json, verification_text
from wellposed.report import Report

__all__ = ["command"]


@click.command("verify", epilog="Example: wellposed verify order.json order.sig --trust keys.json")
@click.argument("document", metavar="DOCUMENT", type=click.Path())
@click.argument("signature", metavar="[SIGNATURE]", type=click.Path(), required=False)
@click.option("--trust", "store", metavar="STORE", type=click.Path(), required=True, help="The list of trusted keys.")
@click.option(
    "--earlier",
    metavar="FILE",
    multiple=True,
    type=click.Path(exists=True, dir_okay=False, readable=True),
    help="A document that was received before; once for each. Used where kind, sender and id are the same.",
)
@click.option("--received", "at", metavar="TIME", help="RFC 3339 date-time of receipt; now where it is not given.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@click.pass_context
def command(ctx: click.Context, /, document: str, signature: str | None, store: str, **options: Any) -> None:
    """Say whether a document comes unchanged from the sender it names.

    Without SIGNATURE the document counts as not signed, which is told and is never the same as signed. Whether its
    content is sound is for check to say. DOCUMENT may be -, the standard input.

    \b
    Exit status:
      0  signed by its sender with a trusted key, unchanged, and nothing stands against it
      1  not shown to be so, or something stands against it
      2  the command was called wrongly
      3  a file or the document could not be read
      4  a fault inside the program
    """
    at = options["at"] or now()
    if time_of(at) is None:
        raise click.UsageError("--received: not an RFC 3339 date-time such as 2026-03-04T09:30:00+01:00")
    if signature == STDIN:
        raise click.UsageError("SIGNATURE is a file; the standard input is for the document")
    data = _content(ctx, document, MOST_BYTES + 1)
    sealed = _content(ctx, signature, jws.MOST_BYTES + 1) if signature is not None else None
    earlier = [_received(ctx, file) for file in options["earlier"]]
    told = verified(data, sealed, read_trust(store), at, earlier)
    name = shown(document)
    as_json = options["form"] == "json"
    printed(verification_json(told, name, at) if as_json else verification_text(told, name, at, width()))
    ctx.exit(_code(told))


def _content(ctx: click.Context, file: str, most: int) -> bytes:
    """The bytes of a file; that there are none ends the run."""
    try:
        return content(file, most)
    except FileError as error:
        click.echo(f"wellposed: {shown(file)}: {error}", err=True)
        ctx.exit(NOT_READ)


def _received(ctx: click.Context, file: str) -> Received:
    found = sound_document(_content(ctx, file, MOST_BYTES + 1))
    if isinstance(found, Report):
        raise click.UsageError(f"--earlier {shown(file)}: not a sound document; check it by itself")
    return received(found)


def _code(told: Verification) -> int:
    if told.digest is None:
        return NOT_READ
    return FIT if told.accepted else NOT_FIT
