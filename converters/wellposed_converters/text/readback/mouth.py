"""What is there, what was found, what is counted on: sentence to members."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from wellposed_converters.text.readback.form import (
    Form,
    Maker,
    Members,
    NotSaidAlike,
    dated,
    measured,
    quantity,
    quotation,
)


def _treat(form: Form) -> Members:
    passive = form.part("passive")
    if form.words("ARCH") == form.words("OTHER") != []:
        raise NotSaidAlike("arches", form.word("ARCH"))
    told: Members = {"arches": form.words("ARCH")[0] if form.words("ARCH") else "both"}
    return told if passive is None else told | {"passive_appliance": passive.term("WANTED")}


def _present(form: Form) -> Members:
    return {form.word("ARCH"): form.listed().get("teeth", [])}


def _states(form: Form) -> Members:
    goes = ["to-be-extracted"] if form.name == "leaves" else []
    return {"tooth": form.teeth()[0], "states": [*goes, *form.terms("STATE")]}


def _condition(form: Form) -> Members:
    return {"condition": form.term("CONDITION")} | form.listed()


def _found(form: Form) -> Members:
    measure = measured(form)
    number, unit = form.inside("value").value(measure["measure"])
    position = form.term("JAW")
    more = {} if position is None else {"jaw_position": position}
    return measure | {"value": number, "unit": unit} | form.listed("contacts") | more | _taken(form, unit)


def _taken(form: Form, unit: str) -> Members:
    """How exactly, how and when it was measured."""
    error, taken = form.part("error"), form.part("taken")
    told: Members = {}
    if error is not None:
        told["error"], of = quantity(error.word("AMOUNT"))
        if of != unit:
            raise NotSaidAlike("units", error.word("AMOUNT"))
    if taken is not None:
        told["method"] = quotation(taken.word("TAKEN"))
    return told | dated(form)


def _tooth_found(form: Form) -> Members:
    measure = form.term("TOOTH_MEASURE")
    values = [(one.teeth()[0], *one.inside("value").value(measure)) for one in form.parts("tooth_value")]
    units, teeth = {unit for _, _, unit in values}, {tooth for tooth, _, _ in values}
    if len(units) > 1 or len(teeth) < len(values):
        raise NotSaidAlike("units" if len(units) > 1 else "tooth-twice", form.word("TOOTH_MEASURE"))
    told = {"tooth_measure": measure, "values": {tooth: number for tooth, number, _ in values}, "unit": units.pop()}
    return told | _taken(form, told["unit"])


def _problem(form: Form) -> Members:
    terms = {"problem": "PROBLEM", "grade": "GRADE", "arch": "IN_ARCH", "side": "ON_SIDE"}
    return {member: form.term(name) for member, name in terms.items() if form.words(name)} | form.listed()


def _expected(form: Form) -> Members:
    measure = form.term("MEASURE")
    at = {"tooth": form.teeth()[0]} if form.teeth() else {}
    told = {"measure": measure, "ground": form.term("GROUND")}
    return told | form.bounds(measure, change=True) | form.listed("contacts") | at


MOUTH: Final[Mapping[str, tuple[str, Maker]]] = MappingProxyType(
    {
        "treat": ("treat", _treat),
        "present": ("teeth", _present),
        "nobody": ("teeth", _present),
        "state": ("particulars", _states),
        "leaves": ("particulars", _states),
        "condition": ("conditions", _condition),
        "found": ("findings", _found),
        "tooth_found": ("findings", _tooth_found),
        "problem": ("problems", _problem),
        "expected": ("expect", _expected),
    }
)
"""Rule of the grammar to the section and what makes its members."""
