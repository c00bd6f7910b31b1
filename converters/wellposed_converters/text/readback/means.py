"""What may be used, and what not: sentence to members."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final

from wellposed.vocabulary.teeth import arch_of
from wellposed_converters.text.readback.form import Form, Maker, Members, quantity

_AMOUNTS: Final = {"per_contact": "per_contact", "in_all": "in_all", "at_least": "ordered"}


def _enamel(form: Form) -> Members:
    return {"use": "enamel-reduction"} | form.listed("contacts") | form.arch() | form.amounts(**_AMOUNTS)


def _up_to(form: Form) -> Members:
    told = form.part("up_to")
    if told is None:
        return {}
    number, unit = quantity(told.word("AMOUNT"))
    return {"up_to": number, "unit": unit}


def _used(terminal: str, more: Callable[[Form], Members]) -> Maker:
    return lambda form: {"use": form.term(terminal)} | more(form) | _up_to(form)


def _named(form: Form) -> Members:
    """Teeth named by their numbers; they stand in one arch, or no sound prescription comes of it."""
    teeth = form.inside("teeth").teeth()
    return {"teeth": teeth, "arch": arch_of(teeth[0])}


def _group(form: Form) -> Members:
    """Teeth that are those of an arch or a side: told, but not named by the clause."""
    form.listed()
    return form.arch()


def _sides(form: Form) -> Members:
    sides = form.part("sides")
    return {} if sides is None else {"sides": sides.words("SIDE")}


def _any(form: Form) -> Members:
    moved = form.inside("moved")
    return {"use": "movement", "motion": moved.motion()} | moved.listed() | _up_to(form)


def _elastics(form: Form) -> Members:
    return {"use": "elastics", "pattern": form.term("PATTERN")} | form.listed()


def _auxiliary(form: Form) -> Members:
    return {"use": "auxiliary", "auxiliary": form.term("AUXILIARY")} | form.listed()


def _choice(form: Form) -> Members:
    chosen = form.part("variables")
    variables = {} if chosen is None else {"variables": chosen.terms("VARIABLE")}
    return {"use": "laboratory-choice"} | variables | form.listed() | form.arch()


def _excluded(form: Form) -> Members:
    return {"means": form.term("MEANS")} | form.arch() | form.listed()


MEANS: Final[Mapping[str, tuple[str, Maker]]] = MappingProxyType(
    {
        "enamel": ("allow", _enamel),
        "travel": ("allow", _used("TRAVEL", _named)),
        "travel_group": ("allow", _used("TRAVEL", _group)),
        "width": ("allow", _used("WIDTH", _named)),
        "width_group": ("allow", _used("WIDTH", _group)),
        "slide": ("allow", _used("SLIDE", lambda form: _named(form) | _sides(form))),
        "slide_group": ("allow", _used("SLIDE", lambda form: _group(form) | _sides(form))),
        "vertical": ("allow", _used("UP_DOWN", Form.listed)),
        "any_movement": ("allow", _any),
        "open_bite": ("allow", _used("GAP", lambda form: {})),
        "extraction": ("allow", lambda form: {"use": "extraction"} | form.listed()),
        "class_elastics": ("allow", _used("CLASS_ELASTICS", lambda form: {"sides": form.words("SIDE")})),
        "elastics": ("allow", _elastics),
        "auxiliary": ("allow", _auxiliary),
        "choice": ("allow", _choice),
        "excluded": ("exclude", _excluded),
    }
)
"""Rule of the grammar to the section and what makes its members."""
