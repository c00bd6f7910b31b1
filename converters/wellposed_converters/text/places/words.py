"""Places in words: ``upper right lateral incisor``, ``premolars``, ``front teeth``, ``canine to canine``."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.places.atom import Atom
from wellposed_converters.text.places.frame import Frame, frame
from wellposed_converters.text.places.meaning import Form, Meaning, of_form, with_arch
from wellposed_converters.text.places.notation import BOTH
from wellposed_converters.text.places.pieces import Scan
from wellposed_converters.text.places.tooth_words import Group, Phrases, groups, phrases, table, tooth_phrases, words

DETERMINERS: Final[Phrases] = phrases("groups", "determiners")
OTHERS: Final[Phrases] = phrases("groups", "others")
POINTING: Final[Phrases] = phrases("groups", "pointing")


@dataclass(frozen=True)
class Said:
    """A tooth word as found: what stands before it, its group, one tooth or all of them."""

    start: int
    last: int
    before: Frame
    group: Group
    one: bool
    every: bool
    others: bool
    count: int = 0


def group(scan: Scan, index: int) -> Atom | None:
    """Any place in words that begins at the index."""
    pointing = scan.phrase(index, POINTING)
    if pointing:
        return Atom(index, pointing[1], "words", ()).asked("antecedent", "reference")
    said = _said(scan, index)
    if said is None:
        return None
    if said.group.asks:
        return _options(said)
    atom = _one(scan, said) if said.one and not said.every else _all(said)
    if said.others:
        return atom.asked("other-teeth", "reference")
    teeth = with_arch(atom.meanings[0], BOTH).teeth if said.count else ()
    return atom.asked("counted-teeth") if said.count and len(teeth) != said.count else atom


def _said(scan: Scan, index: int) -> Said | None:
    determiner = scan.phrase(index, DETERMINERS)
    at = determiner[1] if determiner else index
    others = scan.phrase(at, OTHERS)
    at = others[1] if others else at
    first = _count(scan, at)
    before = frame(scan, at + bool(first))
    second = _count(scan, before.last) if before.arch or before.side else 0
    word = before.last + bool(second)
    found = scan.phrase(word, tooth_phrases())
    if not found or (word > at and scan.broken(word)):
        return None
    before = replace(before, last=word)
    number, name = found[0].split(":")
    every = determiner is not None and " ".join(scan.norm(one) for one in range(index, determiner[1])) in words(
        "groups", "every"
    )
    one = number == "one"
    said = Said(index, found[1], before, groups()[name], one, every, others is not None, 0 if one else first or second)
    return _ranged(scan, said, name) or (said if _is_place(scan, said) else None)


def _count(scan: Scan, at: int) -> int:
    """``2 premolars``, ``two premolars``: how many are meant, which has to be as many as there are."""
    if scan.phrase(at, tooth_phrases()):
        return 0
    named: int = table()["groups"]["counts"].get(scan.norm(at), 0)
    joined = scan.dash(at - 1) or scan.norm(at - 1) in ("/", "#") or scan.tight(at)
    digit = scan.norm(at) if scan.sort(at) in ("number", "amount") and not joined else ""
    return named or (int(digit) if digit in tuple("2345678") else 0)


def _ranged(scan: Scan, said: Said, name: str) -> Said | None:
    """``second premolar to second premolar``."""
    joined = scan.norm(said.last) in words("join", "to") or scan.dash(said.last)
    at = said.last + 1 + (scan.norm(said.last + 1) == "the")
    again = scan.phrase(at, tooth_phrases()) if joined and said.one and not said.before.side else None
    if not again or again[0] != f"one:{name}" or len(said.group.positions) > 1:
        return None
    positions = tuple(range(1, said.group.positions[0] + 1))
    return replace(
        said, last=again[1], group=replace(said.group, positions=positions, whole=False, range=True), one=False
    )


def _is_place(scan: Scan, said: Said) -> bool:
    if scan.norm(said.last) in words("groups", "not_places"):
        return False
    lone = said.last == said.before.last + 1 and scan.norm(said.before.last) in words("groups", "framed")
    return bool(said.before.arch or said.before.side or said.every or not lone)


def _form(said: Said, positions: tuple[int, ...]) -> Form:
    form = Form(tuple(reversed(positions)), positions, run=said.group.range, primary=said.group.primary)
    return form.of_side(said.before.side or BOTH)


def _all(said: Said) -> Atom:
    whole = said.group.whole or said.every
    meaning = of_form(_form(said, said.group.positions), said.before.arch, "words", whole=whole)
    if said.group.inferred:
        meaning = replace(meaning, inferred=("teeth",))
    return Atom(said.start, said.last, "group", (meaning,), framed=bool(said.before.arch))


def _one(scan: Scan, said: Said) -> Atom:
    """One tooth: the one that arch, side and name leave, or every one before a word like ``inclination``."""
    if scan.norm(said.last) in words("groups", "attributive"):
        return _all(said)
    atom = _all(said)
    teeth = atom.meanings[0].teeth
    if len(teeth) == 1 and not atom.meanings[0].needs:
        return replace(atom, sort="tooth", single=True)
    needs = tuple(dict.fromkeys((*atom.meanings[0].needs, "one")))
    return atom.with_((replace(atom.meanings[0], needs=needs),)).asked("one-of-several")


def _options(said: Said) -> Atom:
    found: list[Meaning] = [of_form(_form(said, row), said.before.arch, "words") for row in said.group.options]
    return Atom(said.start, said.last, "group", tuple(found), framed=bool(said.before.arch)).asked(
        said.group.asks or ""
    )
