"""The forms a check can be told in: what is made of each file, and of all of them together."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from typing import Any, NamedTuple

from wellposed.render.json_report import dumped, json_object, json_reports
from wellposed.render.jsonl import jsonl
from wellposed.render.note import Note
from wellposed.render.operation_outcome import operation_outcome_of
from wellposed.render.outcome import NotChecked, Outcome
from wellposed.render.problem import problem_of
from wellposed.render.sarif import sarif, sarif_part
from wellposed.render.text import text

__all__ = ["FORMS", "TEXT", "Form", "text_form"]

TEXT = "text"


class Form(NamedTuple):
    """``one`` makes a part of each outcome, ``whole`` the pieces of the output of all parts."""

    one: Callable[[Outcome], Any]
    whole: Callable[[Iterable[Any]], Iterator[str]]


def text_form(width: int = 100, titled: bool = False, note: Note | None = None) -> Form:
    """The text form: the longest line, whether each text begins with the name of its file, the note to quote."""
    return Form(partial(_text, width=width, titled=titled, note=note), _spaced)


def _text(outcome: Outcome, width: int, titled: bool, note: Note | None) -> str:
    """The report; nothing for a file not checked, which the command names on its own."""
    if isinstance(outcome, NotChecked):
        return ""
    title = f"{outcome.name}:\n" if titled else ""
    return title + text(outcome.report, outcome.name, width, note)


def _spaced(parts: Iterable[str]) -> Iterator[str]:
    """A blank line between two texts."""
    between = ""
    for part in parts:
        if part:
            yield between + part
            between = "\n"


def _at_the_end(written: Callable[[list[Any]], str]) -> Callable[[Iterable[Any]], Iterator[str]]:
    return lambda parts: iter([written(list(parts))])


def _lines(parts: Iterable[Any]) -> Iterator[str]:
    """One object a line; of a file that has none, nothing."""
    return (dumped(part) for part in parts if part is not None)


FORMS = {
    TEXT: text_form(),
    "json": Form(json_object, _at_the_end(json_reports)),
    "jsonl": Form(jsonl, iter),
    "sarif": Form(sarif_part, _at_the_end(sarif)),
    "operation-outcome": Form(operation_outcome_of, _lines),
    "problem": Form(problem_of, _lines),
}
"""Every form by its name; text as it is where there is no terminal."""
