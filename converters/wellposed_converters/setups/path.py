"""Movements stage by stage: each once, where they end, steps added up."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from decimal import Decimal
from typing import Final

from wellposed.vocabulary.teeth import ARCHES, arch_of
from wellposed_converters.setups.faults import Fault, Place, Tell
from wellposed_converters.setups.mapping import Stages
from wellposed_converters.setups.movements import FINAL, Item, Unsaid

_STATE: Final = 'State it, or declare `steps_not_listed = "unmoved"`.'


def once(items: Iterable[Item], tell: Tell) -> list[Item]:
    """The items; a variable of a tooth that is stated twice for one stage is told."""
    first: dict[tuple[str, str, int], Item] = {}
    for item in items:
        before = first.setdefault((item.tooth, item.variable, item.stage), item)
        if before is not item:
            found = f"{item.variable} of tooth {item.tooth} a second time (first in row {before.place.row})"
            do = "Leave the one that holds."
            tell(Fault("setup-table-movement-twice", item.place, found, "each variable of a tooth once", do))
    return list(first.values())


def last_stages(said: Iterable[Item | Unsaid]) -> dict[str, int]:
    """The last stage of each arch that has any."""
    found: dict[str, int] = {}
    for one in said:
        if one.stage != FINAL:
            found[arch_of(one.tooth)] = max(one.stage, found.get(arch_of(one.tooth), 0))
    return found


def at_the_end(items: Iterable[Item], unsaid: Collection[Unsaid], stages: Stages, tell: Tell) -> list[Item]:
    """Where each variable ends, as its last stage says; one that the last stage of its arch leaves out is told."""
    last: dict[tuple[str, str], Item] = {}
    for item in sorted(items, key=lambda one: one.stage):
        last[item.tooth, item.variable] = item
    ends = last_stages((*last.values(), *unsaid))
    for item in last.values():
        silent = [one for one in _silent(item, unsaid) if one.stage > item.stage]
        if silent:
            _says_nothing(silent[0], tell)
        elif item.stage < ends[arch_of(item.tooth)] and stages.steps_not_listed is None:
            found = f"no {item.variable} of tooth {item.tooth} after the last stage"
            tell(Fault("setup-table-step-missing", item.place, found, "where it ends", _STATE))
    return list(last.values())


def cumulated(items: Iterable[Item], unsaid: Collection[Unsaid], stages: Stages, tell: Tell) -> list[Item]:
    """Steps added up to movements from the start; a step that is missing counts as none only where that is declared."""
    by_subject: dict[tuple[str, str], list[Item]] = {}
    for item in items:
        by_subject.setdefault((item.tooth, item.variable), []).append(item)
    said: list[Item | Unsaid] = [*(item for steps in by_subject.values() for item in steps), *unsaid]
    numbers = {(arch_of(one.tooth), one.stage) for one in said}
    if stages.steps_not_listed is None and by_subject:
        _left_out(numbers, next(iter(by_subject.values()))[0].place.sheet, tell)
    found: list[Item] = []
    for (tooth, variable), steps in by_subject.items():
        steps.sort(key=lambda one: one.stage)
        wanted = sorted(stage for arch, stage in numbers if arch == arch_of(tooth))
        silent = _silent(steps[0], unsaid)
        lacking = [stage for stage in wanted if stage not in {one.stage for one in steps}]
        if silent:
            _says_nothing(silent[0], tell)
        elif lacking and stages.steps_not_listed is None:
            what = f"no {variable} of tooth {tooth} for aligner {lacking[0]}"
            tell(Fault("setup-table-step-missing", steps[0].place, what, "every step of what moves", _STATE))
        found += _added(steps)
    return found


def _left_out(numbers: Collection[tuple[str, int]], sheet: str, tell: Tell) -> None:
    """Tell the first aligner of each arch of which there is no row, though there is one of a later aligner."""
    for arch in ARCHES:
        held = {stage for own, stage in numbers if own == arch}
        lacking = next((stage for stage in range(1, max(held, default=0)) if stage not in held), None)
        if lacking is not None:
            found = f"no row of aligner {lacking} of the {arch} arch"
            tell(Fault("setup-table-step-missing", Place(sheet), found, "a row of every aligner", _STATE))


def _silent(item: Item, unsaid: Iterable[Unsaid]) -> list[Unsaid]:
    return [one for one in unsaid if (one.tooth, one.variable) == (item.tooth, item.variable)]


def _says_nothing(one: Unsaid, tell: Tell) -> None:
    """Tell a step that says nothing: where the tooth stands after it is not known, whatever else is declared."""
    found = f"{one.variable} of tooth {one.tooth} after aligner {one.stage} not stated, as declared"
    tell(Fault("setup-table-step-missing", one.place, found, "where what moves stands", "State it."))


def _added(steps: list[Item]) -> Iterator[Item]:
    total = Decimal(0)
    for one in steps:
        total += one.value
        yield Item(one.tooth, one.variable, one.stage, total, one.place, (*one.said, "added to the steps before"))
