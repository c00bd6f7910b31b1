"""What stands at a place in the text, told without repeating any value."""

from __future__ import annotations

import re
from typing import Any

_STARTS = (
    (re.compile(r"\Z"), "the end of the document"),
    (re.compile('"'), "a string"),
    (re.compile("[-+.]?[0-9]"), "a number"),
    (re.compile(r"\{"), "an object"),
    (re.compile(r"\["), "a list"),
    (re.compile("//|/[*]|#"), "a comment"),
    (re.compile(r"(?:true|false)\b"), "true or false"),
    (re.compile(r"null\b"), "null"),
    (re.compile("['\u2018\u2019\u201c\u201d]"), "a quotation mark of another kind"),
    (re.compile(r"\w"), "a word without quotation marks"),
    (re.compile(r"[!-/:-@\[-`{-~]"), "{0}"),
)
_IN_STRING = (
    (re.compile(r"\Z"), "the end of the document"),
    (re.compile("[\r\n]"), "a line break inside a string"),
    (re.compile(r"\\"), "an escape that JSON does not have"),
)


def kind_at(text: str, offset: int, inside: bool = False) -> str:
    """The kind of token at an offset, outside or inside a string."""
    for pattern, kind in _IN_STRING if inside else _STARTS:
        if match := pattern.match(text, offset):
            return kind.format(match[0])
    return f"the character U+{ord(text[offset]):04X}"


def kind_of(value: Any) -> str:
    """The kind of a parsed value, in the same words."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true or false"
    if isinstance(value, float):
        return "a whole number" if value.is_integer() else "a number with decimals"
    kinds = {int: "a whole number", str: "a string", list: "a list", dict: "an object"}
    return kinds.get(type(value), "another kind of value")
