"""Numbers as the format writes them: RFC 8259 section 6, no exponent, at most two decimals."""

from __future__ import annotations

import re
from decimal import Decimal
from math import isinf
from typing import Any

from wellposed.reading.limits import LARGEST_WHOLE, LONGEST_NUMBER, MOST_DECIMALS

NUMBER = re.compile(r"-?(?:0|[1-9][0-9]*+)(?:\.[0-9]++)?(?:[eE][+-]?[0-9]++)?")
UNREAL = re.compile(r"-?(?:NaN|Infinity)")
NOT_FINITE = ("number-not-finite", {"expected": "a finite number"})

_FORM = f"a number without exponent, with at most {MOST_DECIMALS} decimals and {LONGEST_NUMBER} characters"
_RANGE = f"a number from -{LARGEST_WHOLE} to {LARGEST_WHOLE}"


def number(text: str) -> int | float:
    """The value of a number without fault; whole unless it is written with a point."""
    return float(text) if "." in text else int(text)


def fault_of(text: str) -> tuple[str, dict[str, Any]] | None:
    """Rule and facts of what is wrong with the text of a number, if anything is."""
    found = _misformed(text)
    if found and len(text) <= LONGEST_NUMBER and isinf(float(text)):
        return NOT_FINITE
    if found:
        return "number-form", {"expected": _FORM, "found": found}
    if abs(Decimal(text)) > LARGEST_WHOLE:
        return "number-too-large", {"expected": _RANGE}
    return None


def _misformed(text: str) -> str:
    if len(text) > LONGEST_NUMBER:
        return f"{len(text)} characters"
    if "e" in text or "E" in text:
        return "an exponent"
    decimals = len(text.partition(".")[2])
    return f"{decimals} decimals" if decimals > MOST_DECIMALS else ""
