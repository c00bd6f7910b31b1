"""Moments as documents state them, made comparable."""

from __future__ import annotations

from datetime import UTC, datetime

__all__ = ["Time", "later", "now", "time_of"]

Time = datetime
"""Always with an offset."""


def time_of(moment: str) -> Time | None:
    """An RFC 3339 date-time as a time; None where the calendar has no such day, or there is no offset."""
    try:
        found = datetime.fromisoformat(moment)
    except ValueError:
        return None
    return found if found.tzinfo is not None else None


def later(one: Time, other: Time) -> bool:
    """Whether the first is after the second, whatever their offsets."""
    return (one - other).total_seconds() > 0


def now() -> str:
    """This moment, RFC 3339, in UTC."""
    return datetime.now(UTC).isoformat(timespec="seconds")
