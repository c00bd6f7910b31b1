"""Strings: RFC 8259 section 7, without what RFC 7493 section 2.1 forbids."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

_PLAIN = r'[^"\\\x00-\x1f]*+'
BODY = re.compile(rf'{_PLAIN}(?:\\(?:["\\/bfnrt]|u[0-9A-Fa-f]{{4}}){_PLAIN})*+')
"""All that may stand between two quotation marks."""

_PLANE_ENDS = "".join(chr(plane << 16 | low) for plane in range(17) for low in (0xFFFE, 0xFFFF))
_NONCHARACTERS = f"\ufdd0-\ufdef{_PLANE_ENDS}"
_ODD = re.compile(f"[\ud800-\udfff{_NONCHARACTERS}]")
_PAIR = r"\\u([dD][89abAB][0-9A-Fa-f]{2})\\u([dD][c-fC-F][0-9A-Fa-f]{2})"
_ESCAPE = re.compile(rf"{_PAIR}|\\u([0-9A-Fa-f]{{4}})|\\(.)|([{_NONCHARACTERS}])")
_SHORT = {"b": "\b", "f": "\f", "n": "\n", "r": "\r", "t": "\t"}


def decoded(body: str) -> str:
    """What the text between two quotation marks stands for."""
    return _ESCAPE.sub(_character, body) if "\\" in body else body


def faults_of(body: str, value: str) -> Iterator[tuple[int, str, dict[str, Any]]]:
    """Offset in the body, rule and facts of every character that may not be exchanged."""
    if not _ODD.search(value):
        return
    for match in _ESCAPE.finditer(body):
        character = _character(match)
        if _ODD.fullmatch(character):
            yield match.start(), *_fault(character)


def _character(match: re.Match[str]) -> str:
    high, low, code, short, raw = match.groups()
    if high:
        return chr(0x10000 + ((int(high, 16) - 0xD800) << 10) + int(low, 16) - 0xDC00)
    if code:
        return chr(int(code, 16))
    return _SHORT.get(short, short) if short else str(raw)


def _fault(character: str) -> tuple[str, dict[str, Any]]:
    found = f"U+{ord(character):04X}"
    if "\ud800" <= character <= "\udfff":
        return "lone-surrogate", {"expected": "both halves of a surrogate pair", "found": f"{found} alone"}
    return "noncharacter", {"expected": "characters meant for interchange", "found": found}
