"""Goals, movements and what is kept: sentence to members."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from wellposed_converters.text.readback.form import Form, Maker, Members, NotSaidAlike, measured, quantity


def _binding(make: Maker) -> Maker:
    return lambda form: form.strength() | make(form)


def _leave(form: Form) -> Members:
    number, unit = quantity(form.word("AMOUNT"))
    return {"leave": form.contacts()[0], "amount": number, "unit": unit}


def _reach(form: Form) -> Members:
    measure = measured(form)
    return measure | form.bounds(measure["measure"])


def _beyond(form: Form) -> Members:
    further = form.part("overcorrection")
    if further is None:
        return {}
    number, unit = quantity(further.word("AMOUNT"))
    if (unit == "percent") != bool(further.words("OF_IT")):
        raise NotSaidAlike("units", further.word("AMOUNT"))
    return {"overcorrection": {"value": number, "unit": unit}}


def _movement(form: Form) -> Members:
    moved = form.inside("moved")
    return moved.listed() | {"motion": moved.motion()} | form.bounds() | _beyond(form)


def _within(form: Form) -> Members:
    number, unit = quantity(form.word("AMOUNT"))
    return {"within": number, "unit": unit}


def _kept(form: Form, **what: str) -> Members:
    return what | form.listed() | _within(form)


BINDING: Final[Mapping[str, tuple[str, Maker]]] = MappingProxyType(
    {
        "align": ("goals", _binding(lambda form: form.listed("align") | _beyond(form))),
        "level": ("goals", _binding(lambda form: {"level": form.word("ARCH")})),
        "close": ("goals", _binding(lambda form: {"close": form.inside("contacts").contacts()})),
        "close_arch": ("goals", _binding(lambda form: {"close_arch": form.word("ARCH")})),
        "leave": ("goals", _binding(_leave)),
        "reach": ("goals", _binding(_reach)),
        "movement": ("movements", _binding(_movement)),
        "keep_measure": ("keep", _binding(lambda form: measured(form) | _within(form))),
        "keep_variable": ("keep", _binding(lambda form: _kept(form, variable=form.term("VARIABLE")))),
        "keep_motion": ("keep", _binding(lambda form: _kept(form, motion=form.term("MOTION")))),
        "hold": ("keep", _binding(lambda form: form.listed("hold"))),
    }
)
"""Rule of the grammar to the section and what makes its members."""
