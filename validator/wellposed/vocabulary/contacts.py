"""Contacts between neighbouring teeth, written ``"33-32"``; the two may stand in either order."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

from wellposed.vocabulary.teeth import along_arch, arch_of, in_words


@cache
def teeth_of(contact: str) -> tuple[str, str]:
    """The two teeth of a contact as written."""
    first, _, second = contact.partition("-")
    return first, second


def same_arch(contact: str) -> bool:
    """Whether both teeth belong to one arch."""
    first, second = teeth_of(contact)
    return arch_of(first) == arch_of(second)


def contact_between(first: str, second: str) -> str:
    """The contact's name with its teeth from the patient's right to left."""
    return "-".join(along_arch((first, second)))


@cache
def normal(contact: str) -> str:
    """The same contact, its teeth from the patient's right to left."""
    return contact_between(*teeth_of(contact))


def contacts_of(row: tuple[str, ...]) -> tuple[str, ...]:
    """The contacts of a row of neighbours, in its order."""
    return tuple(f"{first}-{second}" for first, second in pairwise(row))


def contact_in_words(contact: str) -> str:
    """``"between 33 (lower left canine) and 32 (lower left lateral incisor)"``."""
    first, second = teeth_of(contact)
    return f"between {first} ({in_words(first)}) and {second} ({in_words(second)})"
