"""Teeth, contacts, amounts, bounds, ids and the prescriber's own words, each in its one form. Nothing is rounded."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from wellposed.render.filled import joined
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.teeth import ARCHES, along_arch, arch_of, in_words, place

__all__ = ["amount", "bounded", "contacts", "each", "ids", "pair", "quoted", "teeth", "tooth", "where"]

_UNITS = {"mm": " mm", "deg": "°", "percent": " %"}


def amount(value: float, unit: str) -> str:
    """A value as it stands, with its unit: ``0.25 mm``, ``2 mm``, ``-5°``, ``30 %``."""
    return f"{Decimal(repr(float(value))).normalize() + 0:f}{_UNITS[unit]}"


def bounded(low: str | None, high: str | None) -> str:
    """``at least 1 mm``, ``at most 2 mm``, both, or ``exactly 1 mm`` where they are one."""
    if low is not None and low == high:
        return f"exactly {low}"
    bounds = (("at least", low), ("at most", high))
    return " and ".join(f"{words} {bound}" for words, bound in bounds if bound is not None)


def tooth(number: str) -> str:
    """``13 (upper right canine)``."""
    return f"{number} ({in_words(number)})"


def teeth(listed: Iterable[str]) -> str:
    """Every tooth in number and words, the upper ones first, each arch from the patient's right to left."""
    named = list(listed)
    rows = (along_arch([one for one in named if arch_of(one) == arch]) for arch in ARCHES)
    return joined([tooth(one) for row in rows for one in row])


def contacts(listed: Iterable[str]) -> str:
    """``42/41 (lower right lateral incisor and lower right central incisor)`` and the others, in the same order."""
    named = sorted((normal(contact) for contact in listed), key=_along)
    return joined([_contact(*teeth_of(contact)) for contact in named])


def pair(two: Iterable[str]) -> str:
    """An upper and a lower tooth as a measure is taken at them."""
    return _contact(*sorted(two, key=lambda one: ARCHES.index(arch_of(one))))


def where(listed: Iterable[str] | None, before: str = " at ") -> str:
    """`` at 13 (upper right canine)``; nothing where no tooth is named."""
    return f"{before}{teeth(listed)}" if listed else ""


def each(listed: Iterable[str]) -> str:
    """The word that makes a bound one of each tooth, where there are several."""
    return "each " if len(list(listed)) > 1 else ""


def ids(listed: Iterable[str]) -> str:
    """``[p1] and [f2]``."""
    return joined([f"[{one}]" for one in listed])


def quoted(words: str) -> str:
    """The prescriber's own words on one line, in quotation marks that nothing inside them can end."""
    line = " ".join(words.split()).translate({ord("“"): '"', ord("”"): '"'})
    return f"“{''.join(one if one.isprintable() else chr(0xFFFD) for one in line)}”"


def _contact(first: str, second: str) -> str:
    return f"{first}/{second} ({in_words(first)} and {in_words(second)})"


def _along(contact: str) -> tuple[int, int, str]:
    first, _ = teeth_of(contact)
    return ARCHES.index(arch_of(first)), place(first), contact
