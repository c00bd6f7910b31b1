"""``wellposed intake``."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import click

from wellposed.commands.arriving import Intake, files_in
from wellposed.commands.codes import FIT, NOT_FIT, NOT_READ
from wellposed.commands.key_files import read_trust
from wellposed.commands.output import printed, width
from wellposed.exchange.answering import stands
from wellposed.exchange.audit import audited
from wellposed.exchange.intake import Desk, prescription_case, withdrawn
from wellposed.exchange.store import Store, StoreError
from wellposed.exchange.trusting import TrustError, empty
from wellposed.model.moments import now
from wellposed.render.intake import audit_text, closing, standing_text, withdrawal_text

__all__ = ["command"]

_HASH = re.compile("[0-9a-f]{64}")


@click.command("intake", epilog="Example: wellposed intake inbox/ --store intake.db -o receipts/")
@click.argument("paths", metavar="[FOLDER|FILE]...", nargs=-1, type=click.Path())
@click.option(
    "--store", "file", metavar="DB", required=True, type=click.Path(dir_okay=False), help="Where everything is kept."
)
@click.option("--laboratory", metavar="ID", help="Whose store it is; needed when it is begun.")
@click.option(
    "--trust",
    metavar="STORE",
    type=click.Path(exists=True, dir_okay=False),
    help="The keys signatures are held against.",
)
@click.option("--require-signature", is_flag=True, help="Only what is signed counts.")
@click.option("-o", "--output", metavar="RECEIPTS/", type=click.Path(file_okay=False), help="Write the receipts there.")
@click.option(
    "--withdraw",
    metavar="PRESCRIBER ID REVISION",
    type=(str, str, click.IntRange(1, 9999)),
    help="Write down that a prescriber has withdrawn a revision, received or not.",
)
@click.option("--verify-log", is_flag=True, help="Look whether the store is as it was written.")
@click.option("--head", metavar="HASH", help="With --verify-log: the last hash of an earlier time, kept elsewhere.")
@click.pass_context
def command(ctx: click.Context, /, paths: tuple[str, ...], file: str, **options: Any) -> None:
    """Take in what clinics send: verify, check, store, answer with a receipt.

    Of a FOLDER every file named .json is taken, without those of the folders in it. A signature stands beside its
    document, under its name with .sig in place of .json or behind it. A receipt is written when its document is on the
    disk, and not before; to take in the same files once more changes nothing. With nothing to take in, how every
    document stands is listed.
    No name of a file and no text of a document is printed.

    \b
    Exit status, the worst of all that applies:
      0  everything was accepted
      1  something is returned or not taken in, or the store is not as it was written
      2  the command was called wrongly
      3  a file or document could not be read, or not be stored
      4  a fault inside the program
    """
    _fits(paths, options)
    try:
        with Store(file, options["laboratory"], now()) as store:
            ctx.exit(_run(store, paths, options))
    except StoreError as error:
        click.echo(f"wellposed: the store: {error}", err=True)
        ctx.exit(NOT_READ)


def _fits(paths: tuple[str, ...], options: dict[str, Any]) -> None:
    if options["laboratory"] is not None:
        _identifier(options["laboratory"])
    chosen = sum(map(bool, (paths, options["withdraw"], options["verify_log"])))
    if chosen > 1:
        raise click.UsageError("files, --withdraw and --verify-log are three things to do: one at a time")
    if options["head"] is not None and not (options["verify_log"] and _HASH.fullmatch(options["head"])):
        raise click.UsageError("--head goes with --verify-log, and is 64 digits of 0 to 9 and a to f")


def _identifier(laboratory: str) -> None:
    try:
        empty([laboratory])
    except TrustError as error:
        raise click.UsageError("--laboratory is not written as the format writes an id") from error


def _run(store: Store, paths: tuple[str, ...], options: dict[str, Any]) -> int:
    if options["verify_log"]:
        audit = audited(store, options["head"])
        printed(audit_text(audit))
        return NOT_FIT if audit.faults else FIT
    if not paths and options["withdraw"] is None:
        printed(standing_text(_cases(store)))
        return FIT
    intake = Intake(store, _desk(store, options), _folder(options["output"]))
    if options["withdraw"] is not None:
        return _withdrawn(intake, *options["withdraw"])
    for piece in intake.pieces(files_in(paths)):
        printed(piece)
    printed(closing(width()))
    return intake.worst


def _cases(store: Store) -> Iterator[Any]:
    for case in store.cases():
        yield case, store.taken(case), stands(store, case), store.withdrawn(case)


def _desk(store: Store, options: dict[str, Any]) -> Desk:
    if options["trust"] is None:
        if options["require_signature"]:
            raise click.UsageError("--require-signature needs --trust, the keys to hold signatures against")
        return Desk(empty([store.laboratory]))
    trust = read_trust(options["trust"])
    if store.laboratory not in trust.holder:
        raise click.UsageError("--trust: the list of keys is not that of this laboratory")
    return Desk(trust, options["require_signature"])


def _folder(output: str | None) -> Path | None:
    if output is None:
        return None
    try:
        Path(output).mkdir(exist_ok=True)
    except OSError as error:
        raise click.UsageError("the folder for receipts cannot be made") from error
    return Path(output)


def _withdrawn(intake: Intake, prescriber: str, name: str, revision: int) -> int:
    try:
        case = prescription_case(prescriber, name, revision)
    except ValueError as error:
        raise click.UsageError("--withdraw: the prescriber or the id is not written as the format writes it") from error
    answers, changed = withdrawn(intake.store, case, revision, now())
    intake.write(answers)
    printed(withdrawal_text(case, revision, changed))
    return FIT
