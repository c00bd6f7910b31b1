"""What ``wellposed setup`` does: read, make, check, ask, write."""

from __future__ import annotations

import json
from collections.abc import Iterable
from collections.abc import Mapping as Mappings
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final

import click

from wellposed.check import check, sound
from wellposed.digests import digest
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.model.envelope import Envelope
from wellposed.model.prescription import Prescription
from wellposed.model.setup import Setup
from wellposed.reading import Document, read_document, structured
from wellposed.render.wording import sentence
from wellposed.review.signs import sign_questions
from wellposed_converters.setups import account
from wellposed_converters.setups.building import Identity, document
from wellposed_converters.setups.csv_file import csv_book
from wellposed_converters.setups.declared import mapping_of
from wellposed_converters.setups.faults import Fault, Place, RefusedError, UnreadableError, in_order
from wellposed_converters.setups.grid import Book
from wellposed_converters.setups.mapping import Mapping
from wellposed_converters.setups.reading import Reading, read_table

CLEAR: Final = 0
OPEN: Final = 1
NOT_READ: Final = 3
LARGEST: Final = 5_000_000
SEPARATED: Final = (".csv", ".tsv", ".txt")
WORKBOOK: Final = ".xlsx"
_NO_FILE: Final = ": no file was named with -o"


def run(table: str, options: Mappings[str, Any]) -> int:
    """Read the table, say what came of it, write the setup; the exit status."""
    also = dict(_named(one) for one in options["also"])
    if len(also) < len(options["also"]):
        raise click.UsageError("--also takes each name once")
    _kept(options, (table, options["columns"], options["answers"], options["replaces"], *also.values()))
    try:
        prescription = _prescription(options["answers"])
        mapping = mapping_of(_bytes(options["columns"]), Path(options["columns"]).name)
        book = _book(table, mapping, also)
        said = read_table(book, options["sheet"], mapping, prescription)
        who = _identity(options)
    except RefusedError as refused:
        _tell(in_order(refused.faults), options)
        return NOT_READ if isinstance(refused, UnreadableError) else OPEN
    unlisted = mapping.setup.unlisted if mapping.setup else None
    record = document(said, who, prescription, unlisted)
    data = (json.dumps(record, ensure_ascii=False, indent=2) + "\n").encode()
    findings = _findings(data, prescription)
    stops = any(one.severity == Severity.STOP for one in findings)
    written = bool(options["output"]) and not stops
    if written:
        _write(options["output"], data)
    _said(said, mapping, record, findings, options, written)
    return OPEN if any(one.severity in (Severity.STOP, Severity.ASK) for one in findings) else CLEAR


def _named(one: str) -> tuple[str, str]:
    name, _, file = one.partition("=")
    if not name or not file:
        raise click.UsageError("--also takes NAME=FILE")
    return name, file


def _identity(options: Mappings[str, Any]) -> Identity:
    issued = options["issued"] or datetime.now(UTC).isoformat(timespec="seconds")
    if options["replaces"] is None:
        return Identity(options["name"], 1, None, issued)
    before = _document(options["replaces"])
    if not isinstance(before, Setup) or before.id != options["name"]:
        raise click.UsageError("--replaces must be a setup of the same id")
    return Identity(options["name"], before.revision + 1, digest(before), issued)


def _bytes(file: str) -> bytes:
    try:
        with Path(file).open("rb") as stream:
            data = stream.read(LARGEST + 1)
    except (OSError, ValueError) as fault:
        raise _unreadable(file, "no file that can be read", "a file") from fault
    if len(data) > LARGEST:
        raise _unreadable(file, "more than that", f"at most {LARGEST} bytes")
    return data


def _unreadable(file: str, found: str, expected: str) -> UnreadableError:
    return UnreadableError(
        [Fault("setup-table-unreadable", Place(Path(file).name), found, expected, "Look which file it is.")]
    )


def _document(file: str) -> Envelope | None:
    read = read_document(_bytes(file))
    made = structured(read) if isinstance(read, Document) else None
    return made if isinstance(made, Envelope) else None


def _prescription(file: str) -> Prescription:
    made = sound(_bytes(file))
    if isinstance(made, Prescription):
        return made
    raise _unreadable(file, "no sound prescription", "one that `wellposed check` does not refuse")


def _book(file: str, mapping: Mapping, also: Mappings[str, str]) -> Book:
    """The table, and further ones as sheets of it."""
    book = _opened(file, Path(file).name, mapping)
    for name, other in also.items():
        more = _opened(other, name, mapping)
        if len(more.sheets) != 1 or name in book.sheets:
            raise click.UsageError("--also takes a file of one table, under a name that no sheet has")
        (grid,) = more.sheets.values()
        book = Book({**book.sheets, name: grid}, book.hidden_sheets, (*book.said, *more.said))
    return book


def _opened(file: str, name: str, mapping: Mapping) -> Book:
    ending = Path(file).suffix.casefold()
    if ending in SEPARATED:
        return csv_book(_bytes(file), name, mapping.table.encoding, mapping.table.delimiter)
    if ending == WORKBOOK:
        from wellposed_converters.setups.workbook import workbook  # noqa: PLC0415  # openpyxl only for a workbook

        return workbook(_bytes(file), name)
    raise _unreadable(file, "an ending that is not known", f"a file that ends in {', '.join(SEPARATED)} or {WORKBOOK}")


def _findings(data: bytes, prescription: Prescription) -> tuple[Finding, ...]:
    """What the format's own rules say of the setup, then what its signs raise."""
    found = check(data).findings
    read = read_document(data)
    made = structured(read) if isinstance(read, Document) else None
    return (*found, *sign_questions(made, prescription)) if isinstance(made, Setup) else found


def _kept(options: Mappings[str, Any], inputs: Iterable[str | None]) -> None:
    """A file that is read is never written over."""
    output = options["output"]
    if output and any(Path(output).resolve() == Path(one).resolve() for one in inputs if one):
        raise click.UsageError("-o names a file that is read; a setup never takes its place")


def _write(file: str, data: bytes) -> None:
    try:
        Path(file).write_bytes(data)
    except OSError as error:
        raise click.UsageError("the output file cannot be written") from error


def _tell(faults: tuple[Fault, ...], options: Mappings[str, Any]) -> None:
    """Every fault, and that nothing was written."""
    if options["form"] == "json":
        _json({"faults": [account.fault_data(fault) for fault in faults]})
        return
    for fault in faults:
        click.echo(account.fault_line(fault))
    click.echo(f"No setup was made: {len(faults)} to settle.\n\n{CAUTION}")


def _said(
    said: Reading,
    mapping: Mapping,
    record: Mappings[str, Any],
    findings: tuple[Finding, ...],
    options: Mappings[str, Any],
    written: bool,
) -> None:
    """What was read and found, and whether the setup was written."""
    if options["form"] == "json":
        about = {"left_out": account.left_out(mapping), "not_stated": account.unsaid(said), "file": list(said.said)}
        _json({**about, "read": account.rows(said), "findings": [_data(one) for one in findings], "setup": record})
        return
    for line in account.lines(said, mapping, every_cell=options["every_cell"]):
        click.echo(line)
    for one in findings:
        click.echo(f"{one.severity}  {sentence(one)} [{one.rule}]")
    if not written:
        click.echo(f"No setup was written{'' if options['output'] else _NO_FILE}.")
    click.echo(f"\n{CAUTION}")


def _data(one: Finding) -> dict[str, Any]:
    return {"rule": one.rule, "severity": one.severity, "pointer": one.pointer, "words": sentence(one)}


def _json(record: Mappings[str, Any]) -> None:
    click.echo(json.dumps({**record, "caution": CAUTION}, ensure_ascii=False, indent=2))
