"""What is written in a cell for a value, and the way back; the same in separated values and in a workbook."""

from __future__ import annotations

import json
import re
from decimal import Decimal
from typing import Any, Final

from wellposed_converters.tables.layout import CONTENT, LIST, NUMBER, TRUTH

NONE: Final = "(none)"
"""What stands for an empty list, an empty section and an empty table of names."""
MARK: Final = "'"
_BLANKS: Final = r"[\s\ufeff'\"]*"
RISKY: Final = re.compile(rf"{_BLANKS}[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\n\r]|'|#[A-Z/0]+[!?]?\Z", re.ASCII)
"""Text that a spreadsheet may run as a formula or take for an error value, and text that begins with the mark."""
_ESCAPE: Final = re.compile("_x([0-9A-Fa-f]{4})_")
_UNFIT: Final = re.compile("[\x00-\x08\x0b-\x1f]|_(?=x[0-9A-Fa-f]{4}_)")


def written(kind: str, value: Any) -> str:
    """The text of a cell."""
    if kind == NUMBER:
        return f"{(Decimal(repr(value)) + 0).normalize():f}"
    if kind == LIST:
        return " ".join(value) if value else NONE
    if kind == TRUTH:
        return "true" if value else "false"
    return marked(json.dumps(value, ensure_ascii=False, separators=(",", ":")) if kind == CONTENT else value)


def marked(text: str) -> str:
    """A text behind an apostrophe where it would not be safe, or not be seen, without."""
    return MARK + text if not text or RISKY.match(text) else text


def unmarked(text: str) -> str | None:
    """The text without its apostrophe; None where one marks nothing."""
    if not text.startswith(MARK):
        return text
    rest = text[1:]
    return rest if not rest or RISKY.match(rest) else None


def escaped(text: str) -> str:
    """A text without characters that no cell holds: each as ``_x`` and four hexadecimal digits, as ECMA-376 has it."""
    return _UNFIT.sub(lambda match: f"_x{ord(match[0]):04X}_", text)


def unescaped(text: str) -> str | None:
    """The text those stand for; None where one stands for half a character."""
    if any("D8" <= code[:2].upper() <= "DF" for code in _ESCAPE.findall(text)):
        return None
    return _ESCAPE.sub(lambda match: chr(int(match[1], 16)), text)
