"""What pydantic has against a document, as findings with pointers."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import partial
from typing import Any

from pydantic import BaseModel, ValidationError

from wellposed.findings import Finding, ordered
from wellposed.reading.cases import Case, judged
from wellposed.reading.faults import TOO_MANY, finding
from wellposed.reading.limits import MOST_FAULTS
from wellposed.reading.locate import spot
from wellposed.reading.pointer import Step, below, holds, pointer, within
from wellposed.reading.shapes import Shape, known_members, shape_of, telling_members

Known = Callable[[str], tuple[str, ...]]

_ABOUT_A_NAME = ("missing", "extra_forbidden")


def structure_findings(
    error: ValidationError,
    document: Any,
    private: tuple[str, ...] = (),
    known: Known | None = None,
    root: type[BaseModel] | None = None,
) -> tuple[Finding, ...]:
    """Every error as a finding, one for a pointer and rule, in stable order; no error is left out.

    document  the parsed value pydantic refused
    private   pointers at and below which no value is told; names of members may be
    known     from the pointer of an object to the members it may have; by default those of ``root``
    root      the model that was tried: with it pointers are exact and descriptions are told
    """
    if known is None:
        known = partial(known_members, root, document) if root else _nothing_known
    rivals = partial(telling_members, root, document) if root else _nothing_known
    shape = shape_of(root) if root else None
    errors = error.errors(include_url=False, include_input=False)
    cases = [_case(dict(one), document, private, (known, rivals), shape) for one in errors[:MOST_FAULTS]]
    found = _merged(judged(case) for case in [case for case in cases if not case.follows] or cases)
    more = [finding("too-many-faults", **TOO_MANY)] if len(errors) > MOST_FAULTS else []
    return ordered([*found, *more])


def _case(
    error: dict[str, Any], document: Any, private: tuple[str, ...], known: tuple[Known, Known], root: Shape | None
) -> Case:
    at = spot(error["loc"], document, root, absent=error["type"] in _ABOUT_A_NAME)
    holder = pointer(at.steps[:-1])
    return Case(
        type=error["type"],
        context=error.get("ctx", {}),
        spot=at,
        value=_value(document, at.steps),
        shown=not within(pointer(at.steps), private),
        names=partial(known[0], holder),
        rivals=partial(known[1], holder),
    )


def _nothing_known(_: str) -> tuple[str, ...]:
    return ()


def _value(document: Any, steps: tuple[Step, ...]) -> Any:
    for step in steps:
        document = below(document, step) if holds(document, step) else None
    return document


def _merged(findings: Iterable[Finding]) -> Iterable[Finding]:
    """One for a pointer and rule; where several forms were tried, what any of them expects."""
    kept: dict[tuple[str, str], Finding] = {}
    for one in findings:
        place = one.pointer, one.rule
        kept[place] = _joined(kept[place], one) if place in kept else one
    return kept.values()


def _joined(first: Finding, second: Finding) -> Finding:
    one, two = first.facts.get("expected"), second.facts.get("expected")
    if isinstance(one, list) and isinstance(two, list):
        return _expecting(first, [*one, *(word for word in two if word not in one)])
    if first.rule == "wrong-kind" and two not in str(one).split(" or "):
        return _expecting(first, f"{one} or {two}")
    return first


def _expecting(one: Finding, expected: Any) -> Finding:
    return replace(one, facts={**one.facts, "expected": expected})
