"""``wellposed convert``."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any, Final

import click

from wellposed.catalogue import rules
from wellposed.commands.codes import FIT, NOT_FIT, NOT_READ
from wellposed.commands.files import STDIN, FileError, content, shown
from wellposed.commands.output import put, width
from wellposed.findings import Severity
from wellposed.formats import Form, Written, forms
from wellposed.model.envelope import Envelope
from wellposed.render.conversion import Conversion, conversion_json, conversion_text

__all__ = ["command"]

MOST_BYTES: Final = 100_000_000


@click.command("convert", epilog="Example: wellposed convert order.xlsx --to json -o order.json")
@click.argument("file", metavar="IN", type=click.Path())
@click.option("--from", "source", metavar="FORMAT", help="The form it is in, where its ending does not tell.")
@click.option("--to", "target", metavar="FORMAT", required=True, help="The form it is carried into.")
@click.option("-o", "--output", metavar="OUT", help="Write it there instead of printing it.")
@click.option("--lossy", is_flag=True, help="Write it though something could not be carried.")
@click.option("--report", metavar="FILE", help="Write as JSON what stands against it and what was lost.")
@click.pass_context
def command(ctx: click.Context, /, file: str, source: str | None, target: str, **options: Any) -> None:
    """Carry documents from one form into another.

    IN may be -, the standard input; `wellposed formats` lists the forms. What stands against the documents, and what
    could not be carried, is said on the error stream. All documents of a file are written, or none.

    \b
    Exit status:
      0  they were written, and whole, or with --lossy what could be carried of them
      1  one is not sound, or asks something, or something could not be carried
      2  the command was called wrongly
      3  a file could not be read, or not in its form
      4  a fault inside the program
    """
    if options["report"] and options["report"] in (file, options["output"]):
        raise click.UsageError("the report would be written over the documents: give it a file of its own")
    known = forms()
    into = _writer(known, target)
    out_of = _reader(known, source, file)
    try:
        data = content(file, MOST_BYTES + 1)
        if len(data) > MOST_BYTES:
            raise FileError(f"it has more than {MOST_BYTES} bytes")
    except FileError as error:
        click.echo(f"wellposed: {shown(file)}: {error}", err=True)
        ctx.exit(NOT_READ)
    told = _converted(shown(file), out_of, into, data, options)
    click.echo(conversion_text(told, width()), err=True, nl=False)
    if options["report"]:
        put([conversion_json(told)], options["report"], coloured=False)
    ctx.exit(_code(told))


def _writer(known: dict[str, Form], name: str) -> Form:
    form = _named(known, name)
    if form.write is None:
        raise click.UsageError(f"{name} is read only")
    return form


def _reader(known: dict[str, Form], name: str | None, file: str) -> Form:
    """The form a file is in: the one named, else the only one of its ending."""
    form = _named(known, name) if name is not None else _told_by_ending(known, file)
    if form.read is None:
        raise click.UsageError(f"{form.name} is written only")
    return form


def _named(known: dict[str, Form], name: str) -> Form:
    if name not in known:
        raise click.UsageError(f"no form {name!r}; there are {', '.join(known)}")
    return known[name]


def _told_by_ending(known: dict[str, Form], file: str) -> Form:
    """The form with the longest ending the name has, if it is the only one."""
    name = "" if file == STDIN else Path(file).name.casefold()
    ends = [(len(end), form) for form in known.values() for end in form.suffixes if name.endswith(end)]
    longest = max((length for length, _ in ends), default=0)
    found = {form.name: form for length, form in ends if length == longest}
    if len(found) != 1:
        which = f"could be {' or '.join(found)}" if found else "is not told by an ending that is known"
        raise click.UsageError(f"its form {which}: name it with --from")
    return next(iter(found.values()))


def _converted(name: str, source: Form, target: Form, data: bytes, options: dict[str, Any]) -> Conversion:
    """Read, then written where nothing stands against it."""
    carried = source.read(data) if source.read else ()
    documents = [one.document for one in carried if one.document is not None]
    if len(documents) < len(carried) or not documents:
        return Conversion(name, source, target, carried)
    written = _written(target, documents)
    lost = Conversion(name, source, target, carried, written.losses)
    if (lost.lost and not options["lossy"]) or not written.data:
        return lost
    _put(written.data, options["output"])
    return Conversion(name, source, target, carried, written.losses, True)


def _written(target: Form, documents: list[Envelope]) -> Written:
    if len(documents) > 1 and not target.many:
        raise click.UsageError(f"{target.name} carries one document, and there are {len(documents)}")
    kinds = {str(getattr(one, "format", "")) for one in documents} - set(target.kinds)
    if kinds:
        raise click.UsageError(f"{target.name} does not carry {', '.join(sorted(kinds))}")
    return Written(b"") if target.write is None else target.write(documents)


def _put(data: bytes, output: str | None) -> None:
    if output is None:
        sys.stdout.buffer.write(data)
        sys.stdout.buffer.flush()
        return
    try:
        Path(output).write_bytes(data)
    except OSError as error:
        raise click.UsageError("the output file cannot be written") from error


def _code(told: Conversion) -> int:
    stops = [finding for finding in told.findings if finding.severity == Severity.STOP]
    read = {rule.id for rule in rules() if rule.group != "text"}
    if any(finding.rule not in read for finding in stops):
        return NOT_READ
    asks = any(finding.severity == Severity.ASK for finding in told.findings)
    return FIT if told.written and not asks else NOT_FIT
