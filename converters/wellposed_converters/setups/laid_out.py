"""How many cells the library makes of a part of a workbook: one range of a few letters can stand for 17,000,000,000."""

from __future__ import annotations

from typing import Any, Final
from xml.parsers import expat

from wellposed_converters.setups.grid import address

_SINGLE: Final = frozenset({"c", "row"})
_RANGED: Final = frozenset({"mergeCell", "hyperlink", "comment"})
"""Elements whose ``ref`` the library goes through cell by cell (ECMA-376 part 1, 18.3.1 and 18.7)."""
_WHOLE_SHEET: Final = 16_384 * 1_048_576
_NO_SIGNS: Final = b"\0\t\n\r \xef\xbb\xbf\xff\xfe"
"""Blanks, byte order marks, and what UTF-16 and UTF-32 put between signs."""
_XML: Final = (b"<", b"Lo\xa7\x94")
"""How XML begins (XML 1.0, appendix F), the second in EBCDIC."""


def laid_out(part: bytes) -> int:
    """How many cells and rows it says, or spans; 0 for what is no XML.

    Raises:
        ValueError: XML that is damaged, in an encoding no spreadsheet writes, or with a document type declaration
    """
    counted = _Counted()
    reader = expat.ParserCreate(namespace_separator=" ")
    reader.StartElementHandler = counted.element
    reader.StartDoctypeDeclHandler = _declared
    try:
        reader.Parse(part, True)
    except expat.ExpatError as fault:
        if part.translate(None, _NO_SIGNS)[:4].startswith(_XML):
            raise ValueError from fault
        return 0
    return counted.cells


class _Counted:
    """The sum so far."""

    def __init__(self) -> None:
        self.cells = 0

    def element(self, name: str, attributes: dict[str, str]) -> None:
        own = name.rpartition(" ")[2]
        if own in _SINGLE:
            self.cells += 1
        elif own in _RANGED and "ref" in attributes:
            self.cells += _spanned(attributes["ref"])


def _spanned(ref: str) -> int:
    """The cells of ``"A1:C2"``; whole columns, rows and what is no range count as the whole sheet."""
    first, _, last = ref.replace("$", "").upper().partition(":")
    begins, ends = address(first), address(last or first)
    if begins is None or ends is None:
        return _WHOLE_SHEET
    return (abs(ends[0] - begins[0]) + 1) * (abs(ends[1] - begins[1]) + 1)


def _declared(*_: Any) -> None:
    raise ValueError
