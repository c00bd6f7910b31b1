"""One error of pydantic, and the finding it becomes."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from wellposed.findings import Finding
from wellposed.reading.faults import finding, name_fact
from wellposed.reading.locate import Spot
from wellposed.reading.nearest import nearest
from wellposed.reading.pointer import Step, holds, pointer
from wellposed.reading.tokens import kind_of

KINDS = {
    **dict.fromkeys(("string_type", "date_type", "datetime_type", "time_type"), "a string"),
    **dict.fromkeys(("float_type", "decimal_type"), "a number"),
    **dict.fromkeys(("int_type", "int_from_float"), "a whole number"),
    **dict.fromkeys(("list_type", "tuple_type", "set_type", "frozen_set_type", "iterable_type"), "a list"),
    **dict.fromkeys(("dict_type", "mapping_type", "model_type", "model_attributes_type"), "an object"),
    **dict.fromkeys(("dataclass_type", "dataclass_exact_type"), "an object"),
    "bool_type": "true or false",
    "none_required": "null",
}
BOUNDS = {
    "greater_than": ("gt", "more than"),
    "greater_than_equal": ("ge", "at least"),
    "less_than": ("lt", "less than"),
    "less_than_equal": ("le", "at most"),
    "multiple_of": ("multiple_of", "a multiple of"),
}
_CHARACTERS = ("character", "characters")
_ENTRIES = ("entry", "entries")
LENGTHS = {
    "string_too_long": ("too-long", "at most", "max_length", _CHARACTERS),
    "string_too_short": ("too-short", "at least", "min_length", _CHARACTERS),
    "too_long": ("too-many", "at most", "max_length", _ENTRIES),
    "too_short": ("too-few", "at least", "min_length", _ENTRIES),
}
_LONGEST_SHOWN = 64
_QUOTED = re.compile(r"'((?:[^'\\]|\\.)*)'")


@dataclass(frozen=True, slots=True)
class Case:
    """An error: pydantic's type and context, the place, the value there, and what is known about it.

    shown  whether a value of this place may be told
    names  the members known for the object the place is in
    rivals the members of which one would tell what form the object is
    """

    type: str
    context: Mapping[str, Any]
    spot: Spot
    value: Any
    shown: bool
    names: Callable[[], tuple[str, ...]]
    rivals: Callable[[], tuple[str, ...]] = tuple

    def finding(self, rule: str, *more: Step, **facts: Any) -> Finding:
        """A finding at the place, or some steps further in."""
        about = {"about": "name"} if self.spot.is_name else {}
        return finding(rule, pointer((*self.spot.steps, *more)), **about, **facts)

    @property
    def name(self) -> str:
        """The last step."""
        return str(self.spot.steps[-1]) if self.spot.steps else ""

    @property
    def follows(self) -> bool:
        """Whether pydantic only counted too few because it had refused some of enough entries."""
        least = self.context.get("min_length", 0)
        return self.type == "too_short" and isinstance(self.value, list | dict) and len(self.value) >= least


def judged(case: Case) -> Finding:
    """The finding of an error; one of a type not known here is still told."""
    if case.type in KINDS:
        return case.finding("wrong-kind", expected=KINDS[case.type], found=kind_of(case.value))
    if case.type in BOUNDS:
        return _out_of_range(case)
    if case.type in LENGTHS:
        return _wrong_length(case)
    return _OTHERS.get(case.type, _of_unknown_type)(case)


def _out_of_range(case: Case) -> Finding:
    key, words = BOUNDS[case.type]
    found = {"found": case.value} if case.shown and isinstance(case.value, int | float) else {}
    return case.finding("out-of-range", expected=f"{words} {_plain(case.context[key])}", **found)


def _wrong_length(case: Case) -> Finding:
    rule, words, key, counted = LENGTHS[case.type]
    limit = case.context[key]
    return case.finding(rule, expected=f"{words} {limit} {counted[limit != 1]}")


def _missing(case: Case) -> Finding:
    rivals = case.rivals()
    if case.name in rivals:
        return case.finding("missing-member", expected=f"one of {', '.join(rivals)}", name=case.name)
    return case.finding("missing-member", expected=f"a member named {case.name}", name=case.name)


def _unknown(case: Case) -> Finding:
    known = sorted(case.names())
    close = nearest(case.name, known)
    return case.finding("unknown-member", expected=known, nearest=close, **name_fact(case.name))


def _not_one_of(case: Case) -> Finding:
    value = case.name if case.spot.is_name else case.value
    if not isinstance(value, str):
        return case.finding("wrong-kind", expected="a string", found=kind_of(value))
    return case.finding("not-one-of", **_choice(case, value, _alternatives(case.context["expected"])))


def _tag(case: Case) -> Finding:
    """A union whose form cannot be told: the tag is missing, unknown, or found by a function."""
    member = next(iter(_QUOTED.findall(case.context["discriminator"])), None)
    if member is None:
        return case.finding("wrong-form", expected="one of the known forms", type=case.type)
    if not holds(case.value, member):
        return case.finding("missing-member", member, expected=f"a member named {member}", name=member)
    expected = _alternatives(case.context.get("expected_tags", ""))
    if not isinstance(case.value[member], str):
        return case.finding("wrong-kind", member, expected="a string", found=kind_of(case.value[member]))
    return case.finding("not-one-of", member, **_choice(case, case.value[member], expected))


def _choice(case: Case, value: Any, expected: list[str]) -> dict[str, Any]:
    facts: dict[str, Any] = {"expected": expected, "nearest": None}
    if case.shown and isinstance(value, str):
        facts["nearest"] = nearest(value, expected)
    if case.shown and not isinstance(value, list | dict) and len(str(value)) <= _LONGEST_SHOWN:
        facts["found"] = value
    return facts


def _wrong_form(case: Case) -> Finding:
    pattern = case.context["pattern"]
    return case.finding("wrong-form", expected=_description(case) or pattern, pattern=pattern)


def _own_rule(case: Case) -> Finding:
    """An error a model raised itself: it may bring its rule and facts as ``ValueError({"rule": ...})``."""
    told = next(iter(getattr(case.context.get("error"), "args", ())), None)
    if not isinstance(told, dict) or not isinstance(told.get("rule"), str):
        return _of_unknown_type(case)
    kept = told if case.shown else {key: told[key] for key in ("expected", "name") if key in told}
    return case.finding(told["rule"], **{str(key): fact for key, fact in kept.items() if key != "rule"})


def _not_finite(case: Case) -> Finding:
    return case.finding("out-of-range", expected="a finite number")


def _of_unknown_type(case: Case) -> Finding:
    return case.finding("wrong-form", expected=_description(case) or "another form", type=case.type)


def _description(case: Case) -> str | None:
    descriptions = case.spot.shape.descriptions if case.spot.shape else ()
    return descriptions[-1] if descriptions else None


def _alternatives(listed: str) -> list[str]:
    """Pydantic lists what it allows in words: ``'a', 'b' or 'c'``."""
    return _QUOTED.findall(listed) or [word for word in re.split(", | or ", listed) if word]


def _plain(limit: Any) -> str:
    return str(int(limit)) if isinstance(limit, float) and limit.is_integer() else str(limit)


_OTHERS: dict[str, Callable[[Case], Finding]] = {
    "missing": _missing,
    "extra_forbidden": _unknown,
    "literal_error": _not_one_of,
    "enum": _not_one_of,
    "union_tag_invalid": _tag,
    "union_tag_not_found": _tag,
    "string_pattern_mismatch": _wrong_form,
    "finite_number": _not_finite,
    "value_error": _own_rule,
    "assertion_error": _own_rule,
}
