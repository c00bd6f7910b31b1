"""Moments as documents state them, made comparable."""

from __future__ import annotations

import re
from datetime import UTC, datetime

from wellposed.model.base import MOMENT

__all__ = ["Time", "later", "now", "time_of"]

Time = datetime
"""Always with an offset."""
_FORM = re.compile(MOMENT)


def time_of(moment: str) -> Time | None:
    """An RFC 3339 date-time as a time; None where it is not written as the format writes it, or no day is this one."""
    try:
        return datetime.fromisoformat(moment) if _FORM.fullmatch(moment) else None
    except ValueError:
        return None


def later(one: Time, other: Time) -> bool:
    """Whether the first is after the second, whatever their offsets."""
    return (one - other).total_seconds() > 0


def now() -> str:
    """This moment, RFC 3339, in UTC."""
    return datetime.now(UTC).isoformat(timespec="seconds")
