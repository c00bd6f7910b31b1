"""Movements stage by stage: each once, where they end, steps added up."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from decimal import Decimal

from wellposed.vocabulary.teeth import ARCHES, arch_of
from wellposed_converters.setups.faults import Fault, Tell
from wellposed_converters.setups.mapping import Stages
from wellposed_converters.setups.movements import Item


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


def at_the_end(items: Iterable[Item], stages: Stages, tell: Tell) -> list[Item]:
    """Where each variable ends, as its last stage says; one that the last stage of its arch leaves out is told."""
    last: dict[tuple[str, str], Item] = {}
    for item in sorted(items, key=lambda one: one.stage):
        last[item.tooth, item.variable] = item
    ends = {arch: max((i.stage for i in last.values() if arch_of(i.tooth) == arch), default=0) for arch in ARCHES}
    for item in last.values():
        if item.stage < ends[arch_of(item.tooth)] and stages.steps_not_listed is None:
            found = f"no {item.variable} of tooth {item.tooth} after the last stage"
            do = 'State it, or declare `steps_not_listed = "unmoved"`.'
            tell(Fault("setup-table-step-missing", item.place, found, "where it ends", do))
    return list(last.values())


def cumulated(items: Iterable[Item], stages: Stages, tell: Tell) -> list[Item]:
    """Steps added up to movements from the start; a step that is missing counts as none only where that is declared."""
    by_subject: dict[tuple[str, str], list[Item]] = {}
    numbers: set[tuple[str, int]] = set()
    for item in items:
        by_subject.setdefault((item.tooth, item.variable), []).append(item)
        numbers.add((arch_of(item.tooth), item.stage))
    found: list[Item] = []
    for (tooth, variable), steps in by_subject.items():
        steps.sort(key=lambda one: one.stage)
        wanted = sorted(stage for arch, stage in numbers if arch == arch_of(tooth))
        lacking = [stage for stage in wanted if stage not in {one.stage for one in steps}]
        if lacking and stages.steps_not_listed is None:
            what = f"no {variable} of tooth {tooth} for aligner {lacking[0]}"
            do = 'State it, or declare `steps_not_listed = "unmoved"`.'
            tell(Fault("setup-table-step-missing", steps[0].place, what, "every step of what moves", do))
        found += _added(steps)
    return found


def _added(steps: list[Item]) -> Iterator[Item]:
    total = Decimal(0)
    for one in steps:
        total += one.value
        yield Item(one.tooth, one.variable, one.stage, total, one.place, (*one.said, "added to the steps before"))
