"""Teeth in texts: numbers that may be of either notation, marks of another, and words for jaw and side beside them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from wellposed.vocabulary.teeth import PERMANENT_TEETH, TEETH, arch_of, side_of

_NOUNS = (
    "incisors?|canines?|cuspids?|premolars?|bicuspids?|molars?|centrals?|laterals?|teeth|tooth|arch|jaw|side|quadrant"
    "|segment|front|central|lateral|first|second|third|posteriors?|anteriors?"
)
_ARCHES = {"upper": "upper", "maxillary": "upper", "lower": "lower", "mandibular": "lower"}
_PHRASE = r"(?=upper|lower|max|mand|right|left)(?:(upper|lower|maxillary|mandibular)\b\s*)?(?:(right|left)\b\s*)?"
_PLACE = re.compile(rf"(?i)\b{_PHRASE}(?:{_NOUNS})\b")
_BEFORE = re.compile(rf"(?i)\b{_PHRASE}(?:(?:{_NOUNS})\s*)*(?:[(=:]\s*)?(\d\d)(?![\d.]\d|\d)")
_AFTER = re.compile(rf"(?i)(?<![\d.,:/-])(\d\d)\s*(?:[(=:]\s*)?(?:(?:is|the)\s+)*{_PHRASE}(?:{_NOUNS})")

# A number that is a tooth by the word before it, and those joined to it.
_CUE = (
    r"(?:\b(?:tooth|teeth|incisors?|canines?|premolars?|molars?|crowns?|crowned|veneers?|implants?|attachments?|buttons?"
    r"|hooks?|notch(?:es)?|contacts?|gap|space|between|behind|mesial|distal|pontics?)\b\.?"
    r"(?:\s+(?:on|of|at|for|to|from|in|is|no\.?|nos\.?|numbers?|between|behind))*\s*(?:[:#(]\s*)?)"
)
_JOINED = r"\s*(?:(?:,|and|&|or|to|/|-)\s*)?(?=#?\d)"
_UNITS = r"\s*(?:mm|cm|deg|°|%|(?:st|nd|rd|th|x|h)\b|hours?|days?|weeks?|months?|years?|aligners?|stages?|steps?|times)"
_LIST = re.compile(rf"(?i){_CUE}((?:#?\d{{1,2}}(?![\d:/]|[.,]\d)(?:{_JOINED})?)++)(?!{_UNITS})")
_COUNTED = (
    "aligners?|appointments?|cases?|charts?|files?|images?|invoices?|items?|jobs?|labs?|no|notes?|options?|orders?|pages?|patients?"
    "|photos?|plans?|points?|questions?|records?|refs?|revisions?|scans?|setups?|sets?|stages?|steps?|trays?|versions?|visits?"
)
_HASH = re.compile(rf"(?i)(\b(?:{_COUNTED})\b\.?\s*)?#\s?(\d{{1,2}})(?!\d)")
_DIGITS = re.compile(r"\d{1,2}")
_NAMED = re.compile(r"\bISO\b|\bFDI\b|(?i:\buniversal\b|\bpalmer\b|\bzsigmondy\b)")

_ANGLES = "\u2510\u250c\u2518\u2514\u23cc\u23bf\u231f\u231e\u2309\u2308\u230b\u230a\u23cb\u23be"
_PALMER = re.compile(
    rf"\b(?:UR|UL|LR|LL)\s?[1-8A-E]\b|[1-8A-E]\s?[{_ANGLES}]|[{_ANGLES}]\s?[1-8A-E]"
    r"|(?i:\b(?:upper|lower|all|both|four|the)\s+(?:right\s+|left\s+)?[1-8]['\u2019]?s\b)"
)

_OTHER_TEETH = re.compile(
    r"(?i)\b(?:to|from|for|with|against|opposite|opposing|also|other|than|like|unlike|because|until|towards?|beside|next"
    r"|near|and|or|replac\w+)\b|\d"
)
"""Words that speak of a second tooth."""

_OF_BOTH = frozenset(tooth for tooth in PERMANENT_TEETH if int(tooth) <= len(PERMANENT_TEETH))
"""The codes that are a tooth in ISO 3950 and in the numbering from 1 to 32; no code is the same tooth in both."""


class Said(NamedTuple):
    """Jaw and side as words say them; None where they do not."""

    arch: str | None
    side: str | None


def numbered(text: str) -> list[str]:
    """The numbers that are said to be teeth, as written."""
    return [number for found in _LIST.finditer(text) for number in _DIGITS.findall(found[1])]


def either(text: str) -> list[str]:
    """Tooth numbers legal in two notations, where nothing in the text tells which is meant."""
    found = numbered(text)
    settled = _NAMED.search(text) or _PLACE.search(text) or any(one in TEETH and one not in _OF_BOTH for one in found)
    return [] if settled else [one for one in found if one in _OF_BOTH]


def foreign(text: str) -> bool:
    """Whether a tooth has a number that no tooth has in ISO 3950, but one has from 1 to 32."""
    hashed = [found[2] for found in _HASH.finditer(text) if not found[1]]
    numbers = (one for one in (*_of_teeth(text), *hashed) if one not in TEETH)
    return any(1 <= int(number) <= len(PERMANENT_TEETH) for number in numbers)


def _of_teeth(text: str) -> Iterator[str]:
    """The numbers after the word tooth or teeth."""
    for found in _LIST.finditer(text):
        if re.match(r"(?i)tooth|teeth", found[0]):
            yield from _DIGITS.findall(found[1])


def has_palmer(text: str) -> bool:
    """Whether teeth are named by quadrant and digit or letter, by an angle, or by a bare digit such as ``4s``."""
    return _PALMER.search(text) is not None


def places(text: str) -> list[Said]:
    """Every jaw or side that words of the text name."""
    return [_said(found[1], found[2]) for found in _PLACE.finditer(text)]


def of_one_place(text: str) -> bool:
    """Whether nothing in the text speaks of a second tooth, or of one by its number."""
    return _OTHER_TEETH.search(text) is None


def contradicted(text: str) -> bool:
    """Whether words right beside a tooth number name another jaw or side than the number."""
    before = ((_said(found[1], found[2]), found[3]) for found in _BEFORE.finditer(text))
    after = ((_said(found[2], found[3]), found[1]) for found in _AFTER.finditer(text))
    return any(tooth in TEETH and not fits(said, tooth) for said, tooth in (*before, *after))


def fits(said: Said, tooth: str) -> bool:
    """Whether a tooth stands in the jaw and on the side that words name."""
    return said.arch in (None, arch_of(tooth)) and said.side in (None, side_of(tooth))


def _said(arch: str | None, side: str | None) -> Said:
    return Said(_ARCHES[arch.lower()] if arch else None, side.lower() if side else None)
