"""What ``wellposed read`` does: read, ask, draft, write."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final, get_args

import click

from wellposed.model.envelope import NOTE_EXTENSION
from wellposed.vocabulary.terms import Retainer
from wellposed_converters.text.answers import Answered, ask_all
from wellposed_converters.text.clause import Question
from wellposed_converters.text.draft import Draft, NotFinished, draft, finish
from wellposed_converters.text.draft import answered as to_format
from wellposed_converters.text.files import NoteError, read_file
from wellposed_converters.text.read import Reading, read_text
from wellposed_converters.text.readback import draft_of, is_read_back, read_back
from wellposed_converters.text.readback import lines as account
from wellposed_converters.text.said import asked_in_words, lines
from wellposed_converters.text.standing import GAP, with_standing

CLEAR: Final = 0
OPEN: Final = 1
NOT_READ: Final = 3
WIDTH: Final = 100
NUMBER: Final = re.compile(r"-?[0-9]+(?:[.][0-9]+)?")
TERMS: Final[Mapping[str, tuple[str, ...]]] = {
    "unit": ("mm", "deg", "percent"),
    "arches": ("upper", "lower", "both"),
    "retainer": get_args(Retainer),
}
"""Members that are answered with a term of the format; every other is a number."""


def run(ctx: click.Context, note: str, options: Mapping[str, Any]) -> int:
    """Read the note, say and write what came of it; the exit status."""
    if options["ask"] and not options["by"]:
        raise click.UsageError("--ask needs --by, so that the draft can say who answered")
    try:
        text = read_file(Path(note)).text
        if is_read_back(text):
            return _again(ctx, text, options)
        note_, standing = read_text(text), _standing(options["standing"])
    except NoteError as error:
        click.echo(f"wellposed: {error}", err=True)
        return NOT_READ
    by = options["by"] if options["ask"] else None
    reading, given = _answered(note_, standing, by)
    drafted = draft(reading.text, reading.clauses, reading.questions)
    drafted = replace(_filled(drafted) if by else drafted, note_sha256=_digest(text))
    answers = [*_answers(given), *({"by": by, **one} for one in drafted.answers)]
    record = drafted.record() | _marks(text, standing) | {"answers": answers}
    if options["particulars"]:
        record = _finished(drafted, options["particulars"], ctx)
        record["extensions"][NOTE_EXTENSION]["content"]["answers"] = [_undated(one) for one in answers]
    _written(options, record, lines(reading, drafted, WIDTH))
    return OPEN if drafted.open_questions() else CLEAR


def _answered(note: Reading, standing: Reading | None, by: str | None) -> tuple[Reading, tuple[Answered, ...]]:
    """Both texts as one; what is asked of each is put for each by itself, then what is asked between them."""
    given: tuple[Answered, ...] = ()
    if by:
        note, given = ask_all(note, _put, by, _now)
    if standing is None:
        return note, given
    if by:
        standing, more = ask_all(standing, _put, by, _now)
        given += more
    both = with_standing(note, standing)
    if by:
        put = both.questions[: len(note.questions) + len(standing.questions)]
        both, more = ask_all(both, _put, by, _now, put)
        given += more
    return both, given


def _undated(answer: Mapping[str, Any]) -> dict[str, Any]:
    """An answer as the prescription keeps it, whose own date says when."""
    return {name: value for name, value in answer.items() if name != "at"}


def _again(ctx: click.Context, text: str, options: Mapping[str, Any]) -> int:
    """A read-back read again; the exit status."""
    if options["ask"] or options["standing"]:
        raise click.UsageError("a read-back is corrected in its own text: --ask and --standing are for notes")
    read = read_back(text)
    drafted = draft_of(read)
    record = drafted.record()
    if options["particulars"]:
        record = _finished(drafted, options["particulars"], ctx)
    _written(options, record, account(read, drafted, WIDTH))
    return OPEN if drafted.open_questions() else CLEAR


def _standing(file: str | None) -> Reading | None:
    return read_text(read_file(Path(file)).text) if file is not None else None


def _marks(text: str, standing: Reading | None) -> dict[str, Any]:
    """What identifies the standing instructions, and where their offsets begin."""
    if standing is None:
        return {}
    return {"standing_sha256": _digest(standing.text), "standing_from": len(text) + len(GAP)}


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()


def _now() -> str:
    return datetime.now(UTC).isoformat(timespec="seconds")


def _put(question: Question, reading: Reading, fault: str) -> str:
    if fault:
        click.echo(f"  {fault}", err=True)
    else:
        click.echo("\n" + asked_in_words(question, reading), err=True)
    return _prompt("Answer (empty leaves it open)")


def _prompt(words: str) -> str:
    """What is typed; at the end of the input everything stays open."""
    try:
        said: str = click.prompt(words, default="", show_default=False, err=True)
    except click.Abort:
        return ""
    return said


def _filled(drafted: Draft) -> Draft:
    """The questions of the format, put at the terminal."""
    for one in drafted.questions:
        if "members" in one:
            drafted = _amounts(drafted, one)
        elif one.get("options") == ["as-note"]:
            click.echo("\n" + one["text"], err=True)
            if _prompt("Keep it as a note that does not bind? (y, or empty leaves it open)").casefold() in ("y", "yes"):
                drafted = to_format(drafted, one["id"], "as-note")
    return drafted


def _amounts(drafted: Draft, asked: Mapping[str, Any]) -> Draft:
    click.echo("\n" + asked["text"], err=True)
    values: dict[str, float | str] = {}
    for member in asked["members"]:
        value = _member(member)
        if value is not None:
            values[member] = value
    try:
        return to_format(drafted, asked["id"], values) if values else drafted
    except ValueError as error:
        click.echo(f"  {error}", err=True)
        return drafted


def _member(member: str) -> float | str | None:
    """The number or term typed; what is none is asked for again, so that no answer before it is lost."""
    terms = TERMS.get(member)
    while said := _prompt(f"{member.replace('_', ' ')} (empty leaves it open)").strip():
        if terms is not None and said in terms:
            return said
        if terms is None and NUMBER.fullmatch(said):
            return float(said)
        needed = f"one of these: {', '.join(terms)}" if terms else "a number with a decimal point, such as 0.5"
        click.echo(f"  it must be {needed}", err=True)
    return None


def _answers(given: tuple[Answered, ...]) -> list[dict[str, Any]]:
    return [
        {
            "question": f"n{number}",
            "asks": one.question.asks,
            "spans": [list(span) for span in one.question.spans],
            "answer": one.words,
            "by": one.by,
            "at": one.at,
        }
        for number, one in enumerate(given, start=1)
    ]


def _finished(drafted: Draft, particulars: str, ctx: click.Context) -> dict[str, Any]:
    try:
        given = json.loads(Path(particulars).read_text("utf-8"))
    except (OSError, ValueError) as error:
        raise click.UsageError("the particulars cannot be read as JSON") from error
    if not isinstance(given, dict):
        raise click.UsageError("the particulars must be an object: id, revision, issued and so on")
    try:
        return finish(drafted, given)
    except NotFinished as error:
        for lack in error.lacks:
            click.echo(f"wellposed: not a prescription yet: {lack.rule} {lack.about}", err=True)
        ctx.exit(OPEN)


def _written(options: Mapping[str, Any], record: Mapping[str, Any], told: str) -> None:
    text = json.dumps(record, ensure_ascii=False, indent=2) + "\n"
    if options["output"]:
        try:
            Path(options["output"]).write_text(text, "utf-8", newline="")
        except OSError as error:
            raise click.UsageError("the output file cannot be written") from error
    click.echo(text if options["form"] == "json" else told, nl=False)
