"""What in a text looks like a person: names, dates of birth, telephone numbers, addresses. Patterns, nothing more."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

_TITLES = "Mr|Mrs|Ms|Miss|Dr|Prof|Herr|Frau|Mme|Mlle|Señora?|Signora?"
_TITLED = re.compile(rf"\b(?:{_TITLES})\b\.?[\s_-]+([^\W\d_])\w")
_NAMED = re.compile(r"(?i:\b(?:named|(?:sur)?name is|(?:sur)?name:))\s+([^\W\d_])\w")
_OF_PATIENT = re.compile(r"(?i:\bpatient:?)\s+((?:[^\W\d_]\w+\s+){1,2}[^\W\d_]\w+)")
_WORD = re.compile(r"[^\W\d_]+")
_SHORTEST_NAME = 3
_OF_RECORDS = """
    upper lower jaw jaws arch arches maxilla maxillary mandible mandibular left right front frontal side lateral buccal
    labial lingual palatal occlusal oblique scan scans model models cast casts plaster impression bite occlusion class
    registration record records photo photos photograph picture image images face facial smile rest profile extraoral
    intraoral oral panoramic pano ceph cephalogram cephalometric radiograph tomogram volume opg cbct ios stl ply obj
    dcm dicom jpg jpeg png pdf zip initial start first second third final progress refinement before after new old case
    order patient stage set setup teeth tooth dental ortho orthodontic digital study export copy file archive surface
    mesh open closed centric relation wax tray silicone alginate retracted repose view division and for with from
    january february march april may june july august september october november december
"""
_TRADE = frozenset(_OF_RECORDS.split())

_MONTH = "(?i:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
_DAY = r"(?:0?[1-9]|[12]\d|3[01])"
_DATE = re.compile(
    r"(?<!\d)(?:((?:19|20)\d\d)([-./_]?)(?:0[1-9]|1[0-2])\2(?:0[1-9]|[12]\d|3[01])"
    rf"|{_DAY}[-./_ ]{_DAY}[-./_ ]((?:19|20)\d\d)"
    rf"|(?:{_DAY}(?:st|nd|rd|th)?\.? )?{_MONTH}\.? (?:{_DAY}(?:st|nd|rd|th)?,? )?((?:19|20)\d\d))(?!\d)"
)
_BORN = re.compile(
    r"(?i:\b(?:born|d\.?\s?o\.?\s?b\b\.?|dates? of birth|birth ?(?:date|day)|geb\.|geboren|n[ée]e? le|nacid[oa]))"
    rf"[\s:=,-]*(?:(?:is|was|on|in|the|am)\b[\s:]*)*(?:(?:19|20)\d\d|{_DAY}(?:st|nd|rd|th)?[-./ ]|{_MONTH}\b)"
)

_MAIL = re.compile(r"(?<![\w.+-])[\w.+%-]+@[\w-]+(?:\.[\w-]+)+")
# 7 to 15 digits (the longest number by ITU-T E.164), in groups; a point is followed by two digits at least.
_NUMBER = r"\d(?:(?:[ ()/\u00a0-]|\.(?=\d\d))*\d){6,14}(?!\d)"
_TELEPHONE = re.compile(
    rf"(?i:\b(?:tel|telephone|phone|mobile|fax|whatsapp|sms)\b)[^\d\n]{{0,20}}{_NUMBER}"
    rf"|(?<![\w.,+-])(?:\+|00)\(?(?=[1-9]){_NUMBER}"
    rf"|(?<![\w.,+/-])\(?(?=0[1-9]){_NUMBER}"
    r"|(?<![\w.,+/-])(?:\(\d{3}\) ?|\d{3}[-. ])\d{3}[-. ]\d{4}(?!\w)"
)


def names_somebody(text: str) -> bool:
    """Whether a title, ``named`` or the like stands before a word with a capital; or ``patient`` before two."""
    letters = (found[1] for pattern in (_TITLED, _NAMED) for found in pattern.finditer(text))
    return any(letter.isupper() for letter in letters) or any(
        looks_like_a_name(f[1]) for f in _OF_PATIENT.finditer(text)
    )


def looks_like_a_name(text: str) -> bool:
    """Whether two words with a capital stand side by side that are no words of the trade, as in the name of a file."""
    strange = [_strange(word) for word in _WORD.findall(text)]
    return any(first and second for first, second in pairwise(strange))


def _strange(word: str) -> bool:
    capital = word[0].isupper() and (word.isupper() or word[1:].islower())
    return capital and len(word) >= _SHORTEST_NAME and word.lower() not in _TRADE


def tells_a_birth(text: str) -> bool:
    """Whether a date or a year follows a word for birth."""
    return _BORN.search(text) is not None


def years(text: str) -> Iterator[int]:
    """The years of the dates in a text."""
    return (int(found[1] or found[3] or found[4]) for found in _DATE.finditer(text))


def has_a_telephone_number(text: str) -> bool:
    """Whether digits stand as telephone numbers do; dates are put aside first."""
    return _TELEPHONE.search(_DATE.sub(" ", text)) is not None


def has_a_mail_address(text: str) -> bool:
    """Whether an e-mail address stands in it."""
    return _MAIL.search(text) is not None


def tells_who(text: str) -> bool:
    """Whether any of these stands in it."""
    return any(found(text) for found in (names_somebody, tells_a_birth, has_a_telephone_number, has_a_mail_address))
