"""How it is made, what does not bind, and what is stated as none: sentence to members."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from wellposed_converters.text.readback.form import Form, Maker, Members, dated, quantity

_RELATIONS: Final = {
    "BEGINS": "before",
    "TOGETHER": "together-with",
    "DONE": "not-before-done",
    "ONLY_IF": "only-if",
}


def _attached(member: str) -> tuple[str, Maker]:
    return "attachments", lambda form: form.listed(member) | _why(form)


def _why(form: Form) -> Members:
    terms = {"shape": "SHAPE", "reason": "REASON"}
    return {member: form.term(name) for member, name in terms.items() if form.words(name)}


def _number(form: Form, terminal: str) -> int:
    return int(form.word(terminal).partition(" ")[0])


def _step(form: Form) -> Members:
    number, unit = quantity(form.word("AMOUNT"))
    step = {"variable": form.term("VARIABLE"), "amount": number, "unit": unit} | form.listed()
    return form.strength() | {"largest_steps": [step]}


def _order(form: Form) -> Members:
    first, then = form.ids()
    relation = next(name for terminal, name in _RELATIONS.items() if form.words(terminal))
    return form.strength() | {"first": first, "relation": relation, "then": then}


def _appliance(form: Form) -> Members:
    ends = {"start": form.part("from_tooth"), "end": form.part("to_tooth")}
    told = {"part": form.term("PART")} | form.listed() | form.arch()
    told |= {member: end.teeth()[0] for member, end in ends.items() if end is not None}
    for member, rule, terminal in (("wear", "worn", "WEAR"), ("trimming", "edge", "TRIMMING")):
        part = form.part(rule)
        told |= {} if part is None else {member: part.term(terminal)}
    return told | form.amounts(size="size")


def _process(form: Form) -> Members:
    before = form.part("before")
    told = {"step": form.term("STEP")} | form.listed() | dated(form)
    return told if before is None else told | {"before": before.ids()[0]}


def _retention(form: Form) -> Members:
    return {"arch": form.word("ARCH"), "retainer": form.term("RETAINER")} | form.listed()


def _note(form: Form) -> Members:
    about = form.part("about")
    return {} if about is None else {"about": about.ids()}


MAKING: Final[Mapping[str, tuple[str, Maker]]] = MappingProxyType(
    {
        "attach_must": _attached("must"),
        "attach_must_not": _attached("must_not"),
        "attach_may": _attached("may"),
        "attach_prefer": _attached("prefer"),
        "attach_prefer_not": _attached("prefer_not"),
        "attach_rest": ("attachments", lambda form: {"otherwise": form.term("REST")} | _why(form)),
        "aligners": ("staging", lambda form: form.strength() | {"most_aligners": _number(form, "ALIGNERS")}),
        "days": ("staging", lambda form: form.strength() | {"wear_interval_days": _number(form, "DAYS")}),
        "bare": ("staging", Form.strength),
        "step": ("staging", _step),
        "order": ("order", _order),
        "appliance": ("appliance", _appliance),
        "process": ("process", _process),
        "retention": ("retention", _retention),
        "note": ("notes", _note),
        "extension": ("extensions", lambda form: {form.word("KEY")[1:-1]: {}}),
        "none": ("none", lambda form: {form.term("SECTION"): []}),
    }
)
"""Rule of the grammar to the section and what makes its members."""
