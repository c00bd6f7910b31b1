"""Places said together: lists of one sort, joined by commas, joining words or, for numbers and signs, mere space."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from wellposed_converters.text.places.atom import Atom, Reader, first_of
from wellposed_converters.text.places.frame import suffix
from wellposed_converters.text.places.meaning import of_side as on_side
from wellposed_converters.text.places.meaning import with_arch
from wellposed_converters.text.places.pieces import Scan
from wellposed_converters.text.places.several import combined
from wellposed_converters.text.places.tooth_words import words

BY_SPACE: Final = frozenset(("number", "contact", "tooth", "haderup", "surface"))
WORDED: Final = frozenset(("group", "position", "arch"))
"""Sorts whose comma may as well part two statements."""
LISTED: Final = {
    "position": "group",
    "letter": "",
    "loose-range": "",
    "glued": "",
    "fraction": "",
    "arch": "arch",
    "side": "side",
}


def listed(scan: Scan, index: int, readers: Sequence[Reader]) -> Atom | None:
    """The longest list of places of one sort that begins at the index."""
    first = _framed(scan, first_of(readers, scan, index))
    if first is None:
        return None
    parts, joins = [first], [""]
    while True:
        found = _next(scan, parts, joins, readers)
        if found is None:
            break
        parts.append(found[0])
        joins.append(found[1])
    kept = _without_open_end(scan, parts, joins)
    return _after(scan, _together(scan, parts[:kept], joins[:kept]))


def _sort(atom: Atom) -> str:
    return LISTED.get(atom.sort, atom.sort)


def _next(scan: Scan, parts: list[Atom], joins: list[str], readers: Sequence[Reader]) -> tuple[Atom, str] | None:
    last = parts[-1]
    if not _sort(last):
        return None
    at, join = _connector(scan, last.last)
    by_space = join == "space"
    if by_space and (last.sort not in BY_SPACE or scan.broken(at)):
        return None
    atom = _framed(scan, first_of(readers, scan, at))
    if atom is None or _sort(atom) != _sort(last) or (scan.broken(at) and scan.norm(atom.last) == ":"):
        return None
    if by_space and not _alike(scan, parts, atom):
        return None
    regrouped = join == "comma" and "space" in joins and _row_by_space(scan, atom, readers)
    return None if regrouped else (atom, join)


def _connector(scan: Scan, at: int) -> tuple[int, str]:
    """The index after what joins two places, and what it is."""
    comma = scan.norm(at) == ","
    joined = scan.norm(at + comma) in ("&", "+", *words("join", "list"))
    if joined:
        return at + comma + 1, "or" if scan.norm(at + comma) == "or" else "and"
    return (at + 1, "comma") if comma else (at, "space")


def _row_by_space(scan: Scan, atom: Atom, readers: Sequence[Reader]) -> bool:
    following = first_of(readers, scan, atom.last)
    return following is not None and following.sort == atom.sort and not scan.broken(atom.last)


def _alike(scan: Scan, parts: Sequence[Atom], atom: Atom) -> bool:
    """Whether a number after mere space goes on the list rather than being an amount without its unit."""
    if atom.sort != "number":
        return atom.sort == parts[-1].sort
    one, two = (scan.raw(part.last - 1).lstrip("0") for part in (parts[-1], atom))
    counted = one.isdecimal() and two.isdecimal() and int(two) == int(one) + 1
    even = len(one) == len(two) or counted or bool(atom.signs)
    systems = {meaning.system for meaning in combined([*[part.meanings for part in parts], atom.meanings])}
    return even and bool(systems)


def _without_open_end(scan: Scan, parts: Sequence[Atom], joins: Sequence[str]) -> int:
    """How many parts are certain to belong together: worded places joined by commas only where the list closes."""
    if _sort(parts[0]) not in WORDED or "comma" not in joins:
        return len(parts)
    last_and = max((at for at, join in enumerate(joins) if join in ("and", "or")), default=-1)
    end = parts[-1].last
    closed = scan.at(end) is None or scan.norm(end) in (".", ";", ":", ")") or scan.broken(end)
    if closed or last_and == len(parts) - 1:
        return len(parts)
    return joins.index("comma") if joins.index("comma") > last_and else last_and + 1


def _framed(scan: Scan, atom: Atom | None) -> Atom | None:
    """The place with the arch or side that follows it."""
    if atom is None or _sort(atom) not in ("group", "tooth"):
        return atom
    after = suffix(scan, atom.last)
    wants = any("arch" in meaning.needs for meaning in atom.meanings)
    if after is None or (after.arch and not wants):
        return atom
    if after.side and _sort(atom) != "group":
        return atom
    return replace(_placed(atom, after.last, after.arch, after.side), follows=bool(after.arch))


def _placed(atom: Atom, last: int, arch: str | None, side: str | None) -> Atom:
    meanings = atom.meanings
    if side:
        meanings = tuple(on_side(meaning, side) for meaning in meanings)
    if arch:
        meanings = tuple(with_arch(meaning, arch) for meaning in meanings)
    return replace(atom, last=last, meanings=meanings, framed=bool(arch) or atom.framed)


def _together(scan: Scan, parts: Sequence[Atom], joins: Sequence[str]) -> Atom:
    if len(parts) == 1:
        return parts[0]
    parts = _shared_arch(parts)
    meanings = combined([part.meanings for part in parts])
    whole = Atom(
        parts[0].first,
        parts[-1].last,
        parts[0].sort,
        meanings,
        evidence=frozenset().union(*(part.evidence for part in parts)),
        signs=sum(part.signs for part in parts),
        framed=all(part.framed for part in parts),
        loose=joins[-1] == "space" and parts[-1].sort == "number" and parts[-1].bare,
        choice="or" in joins,
    )
    asked = next((part for part in parts if part.asks), None)
    if asked:
        return replace(whole, asks=asked.asks, why=asked.why)
    if not meanings:
        return whole.asked("mixed-numbering", "notation")
    return whole.asked("lost-signs") if _repeats(scan, parts) else replace(whole, bare=_bare(scan, parts))


def _bare(scan: Scan, parts: Sequence[Atom]) -> bool:
    """Digits 1 to 8 in a row are still nothing that only a tooth can be."""
    return all(part.bare and scan.position(part.first) for part in parts)


def _repeats(scan: Scan, parts: Sequence[Atom]) -> bool:
    """``3 3``, ``3 and 3``: the corner signs are lost."""
    digits = [scan.position(part.first) for part in parts if part.bare and part.last == part.first + 1]
    return len(digits) == len(parts) and all(digits) and len(set(digits)) < len(digits)


def _shared_arch(parts: Sequence[Atom]) -> Sequence[Atom]:
    """``lower 6s or 7s``, ``6s and 7s upper``: an arch holds for the list; a group that stands whole makes all so."""
    if _sort(parts[0]) != "group":
        return parts
    shared = [part if part.framed else _sharing(parts, at) for at, part in enumerate(parts)]
    whole = any(meaning.teeth and "arch" in meaning.needs for part in shared for meaning in part.meanings)
    return [_whole(part) if whole and not part.framed else part for part in shared]


def _sharing(parts: Sequence[Atom], at: int) -> Atom:
    """A part in the arch last said before it, else in the one said after the next that has one."""
    before = next((part for part in reversed(parts[:at]) if part.framed), None)
    later = next((part for part in parts[at:] if part.framed), None)
    source = before or (later if later and later.follows else None)
    arch = _arch(source) if source else None
    return _placed(parts[at], parts[at].last, arch, None) if arch else parts[at]


def _arch(part: Atom) -> str | None:
    found = {"upper" if tooth // 10 % 4 in (1, 2) else "lower" for meaning in part.meanings for tooth in meaning.teeth}
    return "both" if len(found) > 1 else next(iter(found), None)


def _whole(part: Atom) -> Atom:
    both = [
        replace(one, teeth=with_arch(one, "both").teeth, inferred=("teeth",))
        if "arch" in one.needs and not one.teeth
        else one
        for one in part.meanings
    ]
    return part.with_(both)


def _after(scan: Scan, atom: Atom) -> Atom:
    """A list with the arch that follows it as a whole."""
    return _framed(scan, atom) or atom
