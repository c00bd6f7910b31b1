"""Members stand in the order of the model; what that is depends on which form an object has."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from wellposed_converters.xml.plan import Form, Plan


def misplaced(plan: Plan, present: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """The fewest members that would have to be moved: the name of each, and where it belongs.

    present  name to element, in the order in which they stand

    Members no form knows are passed over; all of them where the form cannot be told.
    """
    form = _form(plan, present)
    order = list(form.members) if form else []
    ranks = [order.index(name) for name in present if name in order]
    kept = set(_rising(ranks))
    for rank in (rank for rank in ranks if rank not in kept):
        behind = next((order[other] for other in sorted(kept) if other > rank), "")
        yield order[rank], f"before {behind}" if behind else "behind all others"


def _form(plan: Plan, present: Mapping[str, Any]) -> Form | None:
    for form in plan.forms:
        if not form.told or (form.told in present and _tells(form, present[form.told])):
            return form
    return None


def _tells(form: Form, element: Any) -> bool:
    return not form.values or element.text in form.values


def _rising(ranks: Sequence[int]) -> list[int]:
    """The longest rising sequence within a sequence, the first one where there are several."""
    best: list[list[int]] = []
    for rank in ranks:
        before = [run for run in best if run[-1] < rank]
        best.append([*max(before, key=len, default=[]), rank])
    return max(best, key=len, default=[])
