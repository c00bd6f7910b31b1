"""Codes out of CodeableConcepts."""

from __future__ import annotations

from wellposed_converters.fhir.cursor import Cursor
from wellposed_converters.fhir.names import system


def code(at: Cursor | None, terms: str, place: str = "") -> str | None:
    """The code of one of our lists; None, and told, where it is not there once.

    place  where it goes in the document, if it does
    """
    if at is None:
        return None
    found = [one for one in at.each("coding") if one.value.get("system") == system(terms)]
    if len(found) != 1:
        at.told.tell("not-one-of", at.pointer, expected=[system(terms)])
        return None
    said = found[0].need("code", "a string")
    if said is None:
        return None
    return str(said.found(place) if place else said.value)
