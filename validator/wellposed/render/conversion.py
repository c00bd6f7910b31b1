"""What is said of a conversion: what stands against it, what could not be carried, and whether anything was written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from textwrap import wrap
from typing import Any, Final

from wellposed.findings import CAUTION, Finding
from wellposed.formats import Carried, Form, Loss
from wellposed.render.json_report import CLOSING, dumped, finding_object
from wellposed.render.plain import plain_sentence
from wellposed.render.wording import sentence

__all__ = ["Conversion", "conversion_json", "conversion_text", "forms_json", "forms_text"]

LOSSES: Final[Mapping[str, str]] = {
    "no-place-for-it": "the form has no place for it",
    "not-in-cells": "beside the cells something lies that is not read",
    "too-long-for-a-cell": "too long for a cell",
    "too-many-rows": "more rows than a table may have",
    "character-not-in-xml": "a character XML does not have",
    "no-original": "no document is attached that can be used",
    "left-out": "the bundle says that it leaves this out",
    "not-there": "the bundle does not say this anywhere",
    "narrative-not-read": "a text for people, which is not read",
    "resource-not-read": "a resource of another type, which is not read",
}
"""Kinds of losses in words; those of other forms are said by their names."""


@dataclass(frozen=True, slots=True)
class Conversion:
    """What came of one conversion.

    name     base name of the file that was read
    source   its form, and ``target`` the one it was to be carried into
    carried  each document as it was read
    losses   of writing them
    written  whether they were written
    """

    name: str
    source: Form
    target: Form
    carried: tuple[Carried, ...]
    losses: tuple[Loss, ...] = ()
    written: bool = False

    @property
    def lost(self) -> tuple[Loss, ...]:
        """All that could not be carried, in reading first."""
        return (*(loss for one in self.carried for loss in one.losses), *self.losses)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All that was found in reading."""
        return tuple(finding for one in self.carried for finding in one.findings)


def conversion_text(told: Conversion, width: int) -> str:
    """A line on what was done, then each finding and each loss."""
    lines = [_headline(told), *_findings(told), *_losses(told)]
    laid = [part for line in lines for part in wrap(line, width, subsequent_indent="    ", break_on_hyphens=False)]
    caution = [*wrap(CAUTION, width)] if told.findings else []
    return "\n".join([*laid, *caution]) + "\n"


def _headline(told: Conversion) -> str:
    number = len(told.carried)
    said = f"{told.name}: {number} document{'s' * (number != 1)}, {told.source.name} to {told.target.name}"
    if told.written:
        return f"{said}; {'not all of it was carried' if told.lost else 'nothing lost'}."
    return f"{said}; nothing was written."


def _findings(told: Conversion) -> Iterator[str]:
    for finding in told.findings:
        yield f"  {finding.severity}  {_sentence(finding, told.source)} [{finding.rule}{_place(finding)}]"


def _sentence(finding: Finding, form: Form) -> str:
    title = form.rules.get(finding.rule, "")
    return plain_sentence(finding, title[:1].upper() + title[1:]) if title else sentence(finding)


def _place(finding: Finding) -> str:
    """Where it is, as the user of the form counts; else its pointer."""
    facts = finding.facts
    sheet = f'sheet "{facts["sheet"]}"' if "sheet" in facts else ""
    row = f"row {facts['row']}" if "row" in facts else ""
    column = f"column {facts['column']}" if row and facts.get("column") else ""
    header = f"{column} ({facts['header']})" if facts.get("header") else column
    line = f"line {finding.line}" if finding.line not in (None, facts.get("row")) else ""
    at = f"column {finding.column}" if line and finding.column is not None and not row else ""
    told = [part for part in (sheet, row, header, line, at) if part]
    within = f"in the document at {facts['within']}" if "within" in facts else ""
    pointer = " ".join(filter(None, (finding.pointer, within)))
    return "".join(f" · {part}" for part in (", ".join(told), pointer) if part)


def _losses(told: Conversion) -> Iterator[str]:
    if told.lost:
        yield "Not carried:"
    for loss in told.lost:
        yield f"  {loss.pointer or 'the whole document'}: {_loss(loss)}"
    if told.lost and not told.written and not any(one.document is None for one in told.carried):
        yield "With --lossy the rest is written, if there is any."


def _loss(loss: Loss) -> str:
    words = LOSSES.get(loss.what, loss.what.replace("-", " "))
    return f"{words} ({loss.detail})" if loss.detail else words


def conversion_json(told: Conversion) -> str:
    """The same as JSON."""
    return dumped(
        {
            "file": told.name,
            "from": told.source.name,
            "to": told.target.name,
            "written": told.written,
            "documents": [_document(one, told.source) for one in told.carried],
            "losses": _lost(told.losses),
            **CLOSING,
            "format": "wellposed/conversion",
        },
        indent=2,
    )


def _document(one: Carried, form: Form) -> dict[str, Any]:
    made = one.document
    return {
        "format": None if made is None else getattr(made, "format", None),
        "id": None if made is None else made.id,
        "revision": None if made is None else made.revision,
        "findings": [finding_object(it) | {"message": _sentence(it, form)} for it in one.findings],
        "losses": _lost(one.losses),
    }


def _lost(losses: Sequence[Loss]) -> list[dict[str, str]]:
    return [{"pointer": one.pointer, "what": one.what, "detail": one.detail, "message": _loss(one)} for one in losses]


def forms_text(forms: Mapping[str, Form]) -> str:
    """The forms that are installed, a line each."""
    rows = [(form.name, _can(form), " ".join(form.suffixes), form.words) for form in forms.values()]
    widths = [max((len(row[place]) for row in rows), default=0) for place in range(3)]
    laid = ("  ".join(f"{cell:<{wide}}" for cell, wide in zip(row, [*widths, 0], strict=True)) for row in rows)
    return "".join(f"{line.rstrip()}\n" for line in laid)


def _can(form: Form) -> str:
    return " and ".join(["read"] * (form.read is not None) + ["written"] * (form.write is not None))


def forms_json(forms: Mapping[str, Form]) -> str:
    """The same as JSON."""
    listed = [
        {
            "name": form.name,
            "words": form.words,
            "suffixes": list(form.suffixes),
            "read": form.read is not None,
            "written": form.write is not None,
            "many": form.many,
            "kinds": list(form.kinds),
            "rules": dict(form.rules),
        }
        for form in forms.values()
    ]
    ending = {name: said for name, said in CLOSING.items() if name != "caution"}
    return dumped({"formats": listed, **ending, "format": "wellposed/formats"}, indent=2)
