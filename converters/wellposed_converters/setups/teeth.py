"""What a table calls a tooth, in the numbering declared; and whether another numbering was meant."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Mapping
from typing import Final, NamedTuple

from wellposed_converters.setups.faults import Fault, Place, Tell
from wellposed_converters.setups.mapping import NOTATIONS, Notation
from wellposed_converters.text.places import notation as numbering

_CORNER: Final = re.compile(r"(UR|UL|LR|LL)([1-8A-E])", re.ASCII)
_HADERUP: Final = re.compile(r"(?P<before>[+-])?(?P<number>0?[1-8])(?P<after>[+-])?", re.ASCII)


class Named(NamedTuple):
    """A tooth as a table names it."""

    place: Place
    text: str


def _two_digits(text: str) -> int | None:
    return numbering.from_fdi(int(text)) if re.fullmatch(r"[1-8][1-8]", text, re.ASCII) else None


def _universal(text: str) -> int | None:
    if re.fullmatch(r"[1-9][0-9]?", text, re.ASCII):
        return numbering.from_universal(int(text))
    return numbering.from_universal_letter(text) if re.fullmatch(r"[A-T]", text, re.ASCII) else None


def _palmer(text: str) -> int | None:
    name = re.fullmatch(r"(.)([1-8A-E])|([1-8A-E])(.)", text)
    if name and name[1] in numbering.PALMER_LEFT:
        return numbering.from_palmer(name[1], name[2])
    if name and name[4] in numbering.PALMER_RIGHT:
        return numbering.from_palmer(name[4], name[3])
    return None


def _corner(text: str) -> int | None:
    name = _CORNER.fullmatch(text)
    return numbering.from_corner(name[1], name[2]) if name else None


def _haderup(text: str) -> int | None:
    name = _HADERUP.fullmatch(text)
    if name is None or bool(name["before"]) == bool(name["after"]):
        return None
    sign, first = name["before"] or name["after"], bool(name["before"])
    return numbering.from_haderup(name["number"], sign, sign_first=first)


_READERS: Final[Mapping[Notation, Callable[[str], int | None]]] = {
    "ISO 3950": _two_digits,
    "Universal": _universal,
    "Palmer": _palmer,
    "quadrant letters": _corner,
    "Haderup": _haderup,
}


def tooth_of(text: str, notation: Notation) -> str | None:
    """The ISO 3950 number of the tooth a text names; None where the numbering has no such tooth."""
    found = _READERS[notation](text)
    return None if found is None else str(found)


def questions(
    named: Iterable[Named], notation: Notation, mouth: Collection[str], confirmed: Collection[str]
) -> list[Fault]:
    """What is to be asked of the teeth of a table, in the order in which they stand.

    mouth      the teeth the prescription lists
    confirmed  teeth that are said to be right though it does not
    """
    named = list(dict.fromkeys(named))
    read = {one: tooth_of(one.text, notation) for one in named}
    known = {*mouth, *confirmed}
    strange = [one for one in named if read[one] is not None and read[one] not in known]
    impossible = [one for one in named if read[one] is None]
    others = [other for other in NOTATIONS if other != notation and _all_in(named, other, mouth)]
    if others and (strange or impossible):
        expected = f"teeth of the prescription in the numbering declared ({notation})"
        do = f"All of them fit in {' and '.join(others)}: look which numbering the table has, and declare it."
        found = "teeth that the prescription does not list"
        return [Fault("setup-table-notation-questioned", (strange or impossible)[0].place, found, expected, do)]
    return [_strange(one.place, str(read[one])) for one in strange]


def _all_in(named: Iterable[Named], notation: Notation, mouth: Collection[str]) -> bool:
    return all(tooth_of(one.text, notation) in mouth for one in named)


def _strange(place: Place, tooth: str) -> Fault:
    expected = "a tooth that the prescription lists"
    do = f'Look at the number. If it is right, list "{tooth}" under `confirmed` of [tooth].'
    return Fault("setup-table-tooth-not-in-mouth", place, f"tooth {tooth}", expected, do)


def not_a_tooth(place: Place, notation: Notation, tell: Tell) -> None:
    """Tell that a cell names no tooth."""
    do = "Look at it, or leave a row of the table of movements out by `ignore_rows` or `ignore_rows_with`."
    tell(Fault("setup-table-not-a-tooth", place, "what names no tooth there", f"a tooth in {notation}", do))
