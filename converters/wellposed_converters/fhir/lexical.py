"""What the data types of FHIR R4 can hold of the format's strings (hl7.org/fhir/R4/datatypes.html)."""

from __future__ import annotations

import re
from datetime import date

_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_MOMENT = re.compile(
    r"(?P<day>[0-9]{4}-[0-9]{2}-[0-9]{2})T[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]+)?(Z|[+-](0[0-9]|1[0-3]):[0-5][0-9]|[+-]14:00)"
)
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f]")


def holds_text(text: str) -> bool:
    """Whether ``string`` holds it: no control character but tab and line ends, and not blanks only."""
    return bool(text.strip()) and not _CONTROL.search(text)


def holds_date(text: str) -> bool:
    """Whether ``date`` holds it: a day there is, from year 1 on."""
    return bool(_DAY.fullmatch(text)) and _there_is(text)


def holds_moment(text: str) -> bool:
    """Whether ``dateTime`` and ``instant`` hold it: also, an offset of at most 14 hours."""
    found = _MOMENT.fullmatch(text)
    return found is not None and _there_is(found["day"])


def _there_is(day: str) -> bool:
    try:
        date.fromisoformat(day)
    except ValueError:
        return False
    return True
