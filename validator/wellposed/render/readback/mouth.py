"""What is there and what was found: arches, teeth, conditions, measurements, the diagnosis."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.consistency.whole import Place
from wellposed.model.findings import Finding, Problem, ToothFinding
from wellposed.model.mouth import Condition, Teeth, ToothStates, Treat
from wellposed.render.filled import joined
from wellposed.render.readback.measured import measure, valued
from wellposed.render.readback.sentence import Context, Sentence, Teller, said, saying
from wellposed.render.readback.terms import gloss, plain
from wellposed.render.readback.words import amount, contacts, quoted, teeth, tooth, where
from wellposed.vocabulary.teeth import ARCHES, along_arch, arch_of

__all__ = ["MOUTH", "PARTICULARS"]

_GOES = "to-be-extracted"
PARTICULARS = "anything not ordinary about a tooth"


def _treat(part: Treat, ctx: Context) -> str:
    del ctx
    other = {"upper": "lower", "lower": "upper"}.get(part.arches)
    told = f"the {part.arches} arch only; in the {other} arch no tooth is moved and no enamel taken off"
    told = told if other else "both arches"
    passive = part.passive_appliance
    return told + ("" if passive is None else f"; a passive appliance (moves nothing) is {plain(passive)}")


def _teeth(place: Place, ctx: Context) -> Iterator[Sentence]:
    """The teeth of each arch; what is not ordinary about one is a part of its own."""
    for arch in ARCHES:
        listed = ctx.rx.teeth.upper if arch == "upper" else ctx.rx.teeth.lower
        told = f"Present in the {arch} arch: {teeth(listed)}" if listed else f"No tooth is present in the {arch} arch"
        yield Sentence(f"{place.pointer}/{arch}", "there", f"{told}.")
    if place.said("particulars") == ():
        yield Sentence(f"{place.pointer}/particulars", "there", f"Stated as none: {PARTICULARS}.")


def _states(place: Place, ctx: Context) -> Iterator[Sentence]:
    """A tooth to be extracted goes with what will change; what locks a tooth is said with its states."""
    part = place.part
    if not isinstance(part, ToothStates):
        return
    told, states = tooth(part.tooth), joined([plain(state) for state in part.states if state != _GOES])
    if _GOES in part.states:
        also = f", {states}" if states else ""
        yield said(place, "change", f"Must: extract {told}{also}; its place closes unless a goal leaves room")
    else:
        still = ", so it does not move" if part.tooth in ctx.mouth.locked else ""
        yield said(place, "there", f"Present: {told}, {states}{still}")


def _condition(part: Condition, ctx: Context) -> str:
    del ctx
    return plain(part.condition) + where(part.teeth)


def _finding(part: Finding, ctx: Context) -> str:
    del ctx
    told = [f"{measure(part.measure, part.pair)} {valued(part.measure, part.value, part.unit)}"]
    told += [f"at {contacts(part.contacts)}"] if part.contacts else []
    told += [gloss(part.jaw_position)] if part.jaw_position else []
    return ", ".join(told) + _taken(part)


def _tooth_finding(part: ToothFinding, ctx: Context) -> str:
    del ctx
    order = [one for arch in ARCHES for one in along_arch([t for t in part.values if arch_of(t) == arch])]
    told = [f"{tooth(one)} {valued(part.tooth_measure, part.values[one], part.unit)}" for one in order]
    return f"{measure(part.tooth_measure)} of {joined(told)}{_taken(part)}"


def _taken(part: Finding | ToothFinding) -> str:
    """How exactly, how and when it was measured."""
    error = "" if part.error is None else f", measuring error at most {amount(part.error, part.unit)} either way"
    method = "" if part.method is None else f", taken {quoted(part.method)}"
    return error + method + (f", on {part.date}" if part.date else "")


def _problem(part: Problem, ctx: Context) -> str:
    del ctx
    told = f"{plain(part.grade)} " if part.grade else ""
    told += gloss(part.problem)
    told += f", {part.arch} arch" if part.arch else ""
    told += f", {part.side} side" if part.side else ""
    return told + where(part.teeth)


MOUTH: Mapping[type, Teller] = MappingProxyType(
    {
        Treat: saying("there", "Treat: ", _treat),
        Teeth: _teeth,
        ToothStates: _states,
        Condition: saying("there", "Condition: ", _condition),
        Finding: saying("found", "Found: ", _finding),
        ToothFinding: saying("found", "Found: ", _tooth_finding),
        Problem: saying("found", "Diagnosis: ", _problem),
    }
)
"""What tells each part of the mouth."""
