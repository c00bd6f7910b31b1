"""The cheap way to accept a document without fault. Any doubt is left to the scanner, the judge.

Every step is one call into compiled code over the whole text; which ones, was settled by measuring.
"""

from __future__ import annotations

import re
from string import ascii_letters
from typing import Any

from pydantic_core import from_json, to_json

from wellposed.reading.limits import MOST_BYTES, MOST_LEVELS

_KEPT = {**dict.fromkeys(b"0123456789", ord("0")), **dict.fromkeys(b"eE", ord("e")), ord("."): ord(".")}
_SHAPE = bytes(_KEPT.get(code, ord("x")) for code in range(256))
"""Digits look alike, so does either E; points stay; other letters go; all else is an x."""

_LETTERS = bytes(code for code in ascii_letters.encode() if code not in _KEPT)
_EXPONENT = re.compile(b"0e").search
_DECIMALS = re.compile(rb"\.000").search
_DIGITS = b"0" * 16
_TOO_DEEP = b"\n" + b" " * MOST_LEVELS


def fast(data: bytes) -> tuple[Any, bool]:
    """The value and true, or nothing and false where only the scanner can tell."""
    if len(data) > MOST_BYTES or _odd_number(data):
        return None, False
    try:
        value = from_json(data, allow_inf_nan=False, cache_strings="keys")
    except ValueError:
        return None, False
    return (value, True) if type(value) is dict and _faithful(value, data) else (None, False)


def _odd_number(data: bytes) -> bool:
    """Whether a number outside strings may have an exponent, three decimals or sixteen digits."""
    return _odd(data) and _odd(_outside_strings(data))


def _outside_strings(data: bytes) -> bytes:
    if b"\\" in data:
        data = data.replace(b"\\\\", b"").replace(b'\\"', b"")
    return b"".join(data.split(b'"')[::2])


def _odd(data: bytes) -> bool:
    shape = data.translate(_SHAPE, _LETTERS)
    return bool(_EXPONENT(shape) or _DECIMALS(shape)) or _DIGITS in shape


def _faithful(value: Any, data: bytes) -> bool:
    """Whether nothing was lost in parsing, and all that came out may be exchanged.

    A duplicate name drops its two quotation marks at least; only escaped ones could make up for them.
    """
    few = data.count(b"[") + data.count(b"{") <= MOST_LEVELS
    again = to_json(value, indent=None if few else 1)
    return (
        again.count(b'"') == data.count(b'"')
        and (b"\\" not in data or b"\\u0022" not in data)
        and (few or _TOO_DEEP not in again)
        and (again.isascii() or not _noncharacter(again))
    )


def _noncharacter(text: bytes) -> bool:
    """Whether U+FDD0 to U+FDEF or the end of a plane may be there: in UTF-8 each holds one of these."""
    return b"\xef\xb7" in text or b"\xbf\xbe" in text or b"\xbf\xbf" in text
