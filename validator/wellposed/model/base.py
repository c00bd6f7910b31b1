"""The ground every model stands on: strict, frozen, nothing unknown; and the format's small types."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Annotated, Any, Literal, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, GetCoreSchemaHandler, Strict
from pydantic_core import CoreSchema

from wellposed.vocabulary.teeth import TEETH
from wellposed.vocabulary.units import Unit

__all__ = [
    "MOMENT",
    "Amount",
    "ArchTeeth",
    "ClauseId",
    "ContactList",
    "ContactName",
    "Date",
    "Digest",
    "Identifier",
    "Moment",
    "Part",
    "Quantity",
    "References",
    "Signed",
    "Stated",
    "Text",
    "ToothList",
    "ToothNumber",
    "Unit",
    "Whole",
    "Words",
    "told_by",
]


T = TypeVar("T")


class _NeverNull:
    """Keeps ``None`` for "not stated" inside Python while a document's ``null`` is refused."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        schema = handler(source)
        return schema["schema"] if schema["type"] == "nullable" else schema


Stated = Annotated[T | None, _NeverNull()]
"""A member that may be left out: ``None`` means "not stated". It is never written as ``null``."""


class Part(BaseModel):
    """A part of a document. Once made it is valid and cannot be changed."""

    model_config = ConfigDict(
        extra="forbid",
        strict=True,
        frozen=True,
        allow_inf_nan=False,
        hide_input_in_errors=True,
        validate_default=False,
        protected_namespaces=(),
    )


def one_line(pattern: str, longest: int, meaning: str) -> Any:
    """A string of one line; the ``not`` says to every regex engine that no line break may follow."""
    return Field(
        pattern=pattern,
        max_length=longest,
        description=meaning,
        json_schema_extra={"not": {"type": "string", "pattern": "[\n]"}},
    )


def _whole(value: Any) -> Any:
    """``1.0`` is the whole number 1 in JSON, as the schema counts it."""
    return int(value) if isinstance(value, float) and value.is_integer() else value


if TYPE_CHECKING:
    ToothNumber = str
else:
    ToothNumber = Literal[TEETH]
ToothList = Annotated[tuple[ToothNumber, ...], Strict(False), Field(min_length=1, max_length=52)]
ArchTeeth = Annotated[tuple[ToothNumber, ...], Strict(False), Field(max_length=26)]
ContactName = Annotated[str, one_line("^[1-8][1-8]-[1-8][1-8]$", 5, 'two neighbours, such as "33-32"')]
ContactList = Annotated[tuple[ContactName, ...], Strict(False), Field(min_length=1, max_length=32)]

ClauseId = Annotated[
    str,
    one_line("^[A-Za-z][A-Za-z0-9._-]{0,31}$", 32, "a letter, then letters, digits, dots, hyphens or underscores"),
]
References = Annotated[tuple[ClauseId, ...], Strict(False), Field(min_length=1, max_length=50)]
Identifier = Annotated[
    str,
    one_line("^[A-Za-z0-9][A-Za-z0-9._:/-]{0,63}$", 64, "letters and digits, with . _ : / - between them"),
]
Digest = Annotated[str, one_line("^[0-9a-f]{64}$", 64, "SHA-256 as 64 lower-case hexadecimal digits")]

_DAY = "[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])"
_CLOCK = "([01][0-9]|2[0-3]):[0-5][0-9]"
MOMENT = f"^{_DAY}T{_CLOCK}:[0-5][0-9]([.][0-9]{{1,6}})?(Z|[+-]{_CLOCK})$"
"""How a moment is written; whether the calendar has the day is another matter."""
Date = Annotated[str, one_line(f"^{_DAY}$", 10, "a date such as 2026-03-04")]
Moment = Annotated[
    str,
    one_line(MOMENT, 32, "an RFC 3339 date-time with its offset, such as 2026-03-04T09:30:00+01:00"),
]

Words = Annotated[str, Field(min_length=1, max_length=200)]
Text = Annotated[str, Field(min_length=1, max_length=4000)]
Amount = Annotated[float, Field(ge=0, le=200)]
Signed = Annotated[float, Field(ge=-400, le=400)]
Whole = Annotated[int, BeforeValidator(_whole)]


class Quantity(Part):
    """An amount with its unit."""

    value: Amount
    unit: Unit


def told_by(*members: str) -> Callable[[Any], str]:
    """Tell forms apart by the member only one of them has; the last is meant where none is there."""

    def form(value: Any) -> str:
        if isinstance(value, dict):
            return next((name for name in members if name in value), members[-1])
        return next((name for name in members if hasattr(value, name)), members[-1])

    return form
