"""Tooth references: where they stand in a text, everything each can mean, and the numbering that settles it."""

from wellposed_converters.text.places.find import find_places
from wellposed_converters.text.places.meaning import Form, Meaning, Place, inner_contacts, with_arch
from wellposed_converters.text.places.notation import in_mouth_order, neighbours
from wellposed_converters.text.places.numbering import Numbering, resolve, settle, stated

__all__ = [
    "Form",
    "Meaning",
    "Numbering",
    "Place",
    "find_places",
    "in_mouth_order",
    "inner_contacts",
    "neighbours",
    "resolve",
    "settle",
    "stated",
    "with_arch",
]
