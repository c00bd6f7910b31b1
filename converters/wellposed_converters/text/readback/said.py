"""What a sentence of a read-back says, as a part of the prescription."""

from __future__ import annotations

from typing import Final, NamedTuple

from wellposed_converters.text.readback.binding import BINDING
from wellposed_converters.text.readback.form import Form, Members
from wellposed_converters.text.readback.making import MAKING
from wellposed_converters.text.readback.means import MEANS
from wellposed_converters.text.readback.mouth import MOUTH


class Said(NamedTuple):
    """A part of the prescription.

    place  the section it stands in; ``particulars`` of teeth; ``order`` for one of staging; ``none`` for a list that is
           stated as none
    value  its members, without the id
    """

    place: str
    value: Members


FOLLOWS: Final = frozenset(
    ("kept_teeth", "kept_enamel", "kept_arch", "kept_back", "unused", "kept_measures", "free", "not_stated")
)
"""Sentences on what follows from silence, or on what is not stated: they order nothing."""
_MAKERS: Final = {**MOUTH, **BINDING, **MEANS, **MAKING}


def said(form: Form) -> Said | None:
    """What a sentence says; None for one that orders nothing.

    Raises:
        NotSaidAlike: the sentence says one thing in two ways that differ
    """
    if form.name in FOLLOWS:
        form.listed()
        form.listed("contacts")
        return None
    place, make = _MAKERS[form.name]
    return Said(place, make(form) | form.rest())
