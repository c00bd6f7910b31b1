"""Places written as tooth numbers: single teeth, ranges, contacts, surfaces."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from wellposed_converters.text.places.atom import Atom
from wellposed_converters.text.places.meaning import Meaning, in_order, linked
from wellposed_converters.text.places.notation import (
    LAST,
    beside,
    from_fdi,
    from_universal,
    from_universal_letter,
    in_mouth_order,
    neighbours,
    opposed,
    segment,
)
from wellposed_converters.text.places.pieces import TWO, Scan
from wellposed_converters.text.places.tooth_words import phrases, words

Conversion = Callable[[int], int | None]
NUMBERINGS: Final[tuple[tuple[str, Conversion], ...]] = (("FDI", from_fdi), ("Universal", from_universal))
SURFACES: Final = {"m": "mesial", "d": "distal"}
POSITION: Final = Meaning("position", needs=("arch", "side"))
"""A digit 1 to 8 alone: a position in some quadrant, or a tooth of the Universal numbering."""


def number(scan: Scan, index: int) -> Atom | None:
    """``13``, ``#8``, ``tooth 13``, ``13-23``, ``#6-11``, ``24/25``, ``33d``, ``D33``, ``#A``."""
    said = scan.phrase(index, phrases("number", "tooth"))
    at = said[1] if said else index
    if said and scan.broken(at):
        return None
    prefix = SURFACES.get(scan.norm(at)) if scan.sort(at + 1) == "number" and scan.tight(at + 1) else None
    if prefix and not scan.tight(at):
        return _surface(scan, index, at + 1, at + 2, prefix)
    at, signs = _signed(scan, at)
    if signs and scan.sort(at) == "word":
        return _letters(scan, index, at)
    if scan.sort(at) != "number" or _after_word(scan, at):
        return None
    suffix = _suffix(scan, at)
    if suffix:
        return None if suffix == "other" else _surface(scan, index, at, at + 2, suffix)
    return _row(scan, index, at, signs) or _one(scan, index, at, signs, said=bool(said))


def _after_word(scan: Scan, at: int) -> bool:
    """``B12``, ``II/1``: part of something else."""
    stroke = scan.norm(at - 1) == "/" and scan.tight(at) and scan.tight(at - 1) and scan.sort(at - 2) == "word"
    return stroke or (scan.tight(at) and scan.sort(at - 1) == "word")


def _signed(scan: Scan, at: int) -> tuple[int, int]:
    return (at + 1, 1) if scan.norm(at) == "#" else (at, 0)


def _suffix(scan: Scan, at: int) -> str:
    """What is written directly after a number."""
    if not (scan.tight(at + 1) and scan.sort(at + 1) == "word"):
        return ""
    return SURFACES.get(scan.norm(at + 1), "other")


def _one(scan: Scan, index: int, at: int, signs: int, *, said: bool) -> Atom:
    value = scan.value(at)
    meanings = [Meaning(system, (tooth,)) for system, to in NUMBERINGS if (tooth := to(value))]
    if scan.position(at) and not signs:
        meanings.append(POSITION)
    slot = said or signs or scan.norm(at - 1) in words("number", "slot") or scan.pieces[at].dotted
    atom = Atom(index, at + 1, "number", tuple(meanings), None, None, not slot, _speaks_for([value]), signs)
    return _checked(scan, atom)


def _speaks_for(values: Sequence[int]) -> frozenset[str]:
    """The numberings that alone have one of the numbers (R2); positions 1 to 8 speak for none."""
    fdi = any(from_fdi(value) and not from_universal(value) for value in values)
    universal = any(from_universal(value) and not from_fdi(value) and value > LAST for value in values)
    return frozenset(["FDI"] * fdi + ["Universal"] * universal)


def _checked(scan: Scan, atom: Atom) -> Atom:
    if not atom.meanings:
        return atom.asked("impossible-number", "implausible")
    if all("link" in meaning.needs for meaning in atom.meanings):
        return atom.asked("crosses-arches")
    dotted = any(piece.dotted for piece in scan.pieces[atom.first : atom.last])
    if not dotted:
        return atom
    meanings = tuple(one for one in atom.meanings if one.system == "FDI")
    only = replace(atom, meanings=meanings, evidence=frozenset())
    return only if meanings else only.asked("impossible-number", "implausible")


def _row(scan: Scan, index: int, at: int, signs: int) -> Atom | None:
    """A range or a chain of contacts that begins with the number at ``at``."""
    numbers, end = [at], at + 1
    while scan.norm(end) == "/" and not scan.broken(end + 1):
        after, more = _signed(scan, end + 1)
        if scan.sort(after) != "number" or _suffix(scan, after):
            return None
        numbers, end, signs = [*numbers, after], after + 1, signs + more
    values = [scan.value(one) for one in numbers]
    if len(numbers) > 1:
        return _contacts(scan, index, end, values, signs)
    joined = scan.dash(end) or scan.norm(end) in ("~", *words("join", "to"))
    after, more = _signed(scan, end + 1)
    if not joined or scan.broken(after) or scan.sort(after) != "number" or _suffix(scan, after):
        return None
    return _range(scan, index, after + 1, (values[0], scan.value(after)), signs + more)


def _range(scan: Scan, index: int, end: int, ends: tuple[int, int], signs: int) -> Atom | None:
    first, second = ends
    if not signs and (max(ends) <= LAST or second <= LAST):
        return None
    meanings = [_from_to(system, one, two) for system, to in NUMBERINGS if (one := to(first)) and (two := to(second))]
    evidence = _speaks_for(ends) | _range_speaks(first, second, meanings)
    return _checked(scan, Atom(index, end, "number", tuple(meanings), evidence=evidence, signs=signs))


def _from_to(system: str, one: int, two: int) -> Meaning:
    teeth = segment(one, two)
    if teeth is None:
        return linked(system, one, two)
    return Meaning(system, teeth, runs=(teeth,))


def _range_speaks(first: int, second: int, meanings: Sequence[Meaning]) -> frozenset[str]:
    fits = {meaning.system for meaning in meanings if not meaning.needs}
    across = first // 10 != second // 10 and "FDI" in fits and "Universal" not in fits
    starts = min(first, second) <= LAST and "Universal" in fits
    return frozenset(["FDI"] * across + ["Universal"] * starts)


def _contacts(scan: Scan, index: int, end: int, values: list[int], signs: int) -> Atom | None:
    small = [value for value in values if value <= LAST]
    if not signs and len(small) == len(values):
        return None
    if (
        not signs
        and small
        and not all(neighbours(*pair) for pair in pairwise(_teeth(from_universal, values) or (11, 48)))
    ):
        return None
    meanings = [_joined(system, teeth) for system, to in NUMBERINGS if (teeth := _teeth(to, values))]
    evidence = _speaks_for(values) | _contact_speaks(meanings)
    sort = "contact" if any(meaning.contacts for meaning in meanings) else "number"
    atom = _checked(scan, Atom(index, end, sort, tuple(meanings), evidence=evidence, signs=signs))
    return atom.asked("date-or-contacts") if _may_be_date(values) else atom


def _teeth(to: Conversion, values: Sequence[int]) -> tuple[int, ...]:
    found = [to(value) for value in values]
    teeth = tuple(one for one in found if one)
    return teeth if len(teeth) == len(values) else ()


def _joined(system: str, teeth: Sequence[int]) -> Meaning:
    """Neighbours joined by a stroke are contacts; others are teeth that belong together."""
    pairs = list(pairwise(teeth))
    if all(neighbours(*pair) for pair in pairs):
        return Meaning(system, contacts=in_order(pairs))
    return Meaning(system, in_mouth_order(teeth))


def _contact_speaks(meanings: Sequence[Meaning]) -> frozenset[str]:
    """Neighbours in one numbering only, unless the two bite on each other in the other."""
    touching = [meaning.system for meaning in meanings if meaning.contacts]
    others = [meaning.teeth for meaning in meanings if not meaning.contacts]
    biting = any(len(teeth) == TWO and opposed(*teeth) for teeth in others)
    return frozenset(touching) if len(touching) == 1 and len(others) == 1 and not biting else frozenset()


_DAYS, _MONTHS = 31, 12


def _may_be_date(values: Sequence[int]) -> bool:
    return len(values) == TWO + 1 and max(values[:2]) <= _DAYS and min(values[:2]) <= _MONTHS


def _surface(scan: Scan, index: int, at: int, end: int, surface: str) -> Atom | None:
    value = scan.value(at)
    meanings = [on_surface(Meaning(system, (tooth,)), surface) for system, to in NUMBERINGS if (tooth := to(value))]
    if not meanings or value <= LAST or (scan.tight(end) and scan.sort(end) == "word"):
        return None
    return Atom(index, end, "surface", tuple(meanings), bare=end > at + 1, evidence=_speaks_for([value]))


def on_surface(meaning: Meaning, surface: str) -> Meaning:
    """The contacts on a side of the teeth; ``both`` for either side of them."""
    sides = ("mesial", "distal") if surface == "both" else (surface,)
    pairs = [(tooth, other) for tooth in meaning.teeth for side in sides if (other := beside(tooth, side))]
    said = None if surface == "both" else surface
    return Meaning(
        meaning.system, () if surface == "both" else meaning.teeth, in_order(pairs), surface=said, needs=meaning.needs
    )


def _letters(scan: Scan, index: int, at: int) -> Atom | None:
    """``#A`` to ``#T``: primary teeth of the Universal numbering."""
    first = from_universal_letter(scan.norm(at))
    if not first:
        return None
    after, _ = _signed(scan, at + 2)
    second = from_universal_letter(scan.norm(after)) if scan.dash(at + 1) else None
    meaning = _from_to("Universal", first, second) if second else Meaning("Universal", (first,))
    end = after + 1 if second else at + 1
    return _checked(scan, Atom(index, end, "number", (meaning,), evidence=frozenset(("Universal",)), signs=1))


def glued(scan: Scan, index: int) -> Atom | None:
    """``1121``: two tooth numbers written as one."""
    norm = scan.norm(index)
    pair = (norm[:TWO], norm[TWO:])
    if scan.sort(index) != "digits" or len(norm) != TWO * TWO or scan.tight(index) or scan.tight(index + 1):
        return None
    teeth = [tooth for part in pair if (tooth := from_fdi(int(part)))]
    meaning = Meaning("FDI", in_mouth_order(teeth))
    return Atom(index, index + 1, "glued", (meaning,), bare=True).asked("glued") if len(teeth) == TWO else None
