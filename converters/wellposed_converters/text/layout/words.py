"""The words of ``layout.toml``: read once, handed out as sets and compiled patterns."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache
from typing import Any, Final

from wellposed_converters.text.tables import read_table

TITLE: Final = r"(?:{titles})\.?"
NAME: Final = r"(?-i:[A-Z][\w'-]*\.?)"
NAMES: Final = rf"{NAME}(?: {NAME}){{0,3}}"
CODE: Final = r"(?:[a-z]{1,4}-\d{2,}[\w-]*|[a-z]{1,4}\d{3,}\w*|\d{4,})"
DATE: Final = (
    r"(?:\d{1,2}[./-]\d{1,2}[./-]\d{2,4}|\d{4}-\d\d-\d\d"
    r"|\d{1,2}(?:st|nd|rd|th)? [a-z]{3,9},? \d{4}|[a-z]{3,9} \d{1,2},? \d{4})"
)
FILE: Final = r"[\w()-]+(?:[ .][\w()-]+)*\.(?:stl|ply|obj|dcm|pdf|png|jpe?g|zip|docx?|xlsx?|txt)"
FILES: Final = rf"{FILE}(?:, {FILE})*"


@cache
def table(name: str) -> dict[str, Any]:
    """One table of the data file."""
    return dict(_all()[name])


@cache
def headings() -> dict[str, tuple[str | None, bool]]:
    """A heading's words to the section it opens (None: the one it stands in) and whether it says what is below."""
    entries = ((word, entry) for entry in _all()["heading"] for word in entry["words"])
    return {word: (entry.get("section"), bool(entry.get("subject"))) for word, entry in entries}


@cache
def words(name: str, member: str) -> frozenset[str]:
    """A list of the data file as a set."""
    return frozenset(table(name)[member])


@cache
def pattern(name: str, member: str = "patterns") -> re.Pattern[str]:
    """The patterns of a table as one, without regard to case."""
    return compiled(table(name)[member])


def compiled(parts: Iterable[str]) -> re.Pattern[str]:
    """The patterns as one; names in braces stand for the shapes of this module."""
    return re.compile("|".join(f"(?:{_filled(part)})" for part in parts), re.IGNORECASE)


def plain(words_of_text: str) -> str:
    """What patterns are matched against: single spaces, straight quotes, no punctuation at the end."""
    return " ".join(words_of_text.split()).replace("\u2019", "'").replace("\u2018", "'").rstrip(" .,!;:\u2013-")


@cache
def title() -> str:
    """The pattern of Dr, Mr and so on."""
    return TITLE.format(titles="|".join(table("signature")["titles"]))


@cache
def _all() -> dict[str, Any]:
    return read_table(__package__, "layout.toml")


def _filled(part: str) -> str:
    addressee = f"(?:{'|'.join(table('greeting')['addressees'])}|(?:{title()} )?{NAMES})"
    shapes = {"CODE": CODE, "NAMES": NAMES, "DATE": DATE, "FILES": FILES, "ADDRESSEE": addressee}
    for name, shape in shapes.items():
        part = part.replace(f"{{{name}}}", shape)
    return part
