"""Units of the format; UCUM codes are the same words but for percent (``%``)."""

from __future__ import annotations

from typing import Final, Literal

Unit = Literal["mm", "deg", "percent"]

MM: Final = "mm"
DEG: Final = "deg"
PERCENT: Final = "percent"
