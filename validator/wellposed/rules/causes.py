"""Findings with one cause told as one: what rests on a diagnosis that the measurements do not support goes under it.

A finding with the fact ``doubts`` (the id of a problem, or of a measurement) leads. The instructions that rest on the
doubted statement alone are found by their reasons (``because``); one that gives none is taken to answer the problem
it could answer, if no other stated problem could be meant. Nothing is left out: every finding stays, under its cause.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Any

from wellposed.consistency.whole import Place
from wellposed.findings import Finding, gathered
from wellposed.model.making import Attachment
from wellposed.model.means import AnyMovement, VerticalMovement
from wellposed.rules._declare import said
from wellposed.rules.alike import as_one
from wellposed.rules.answers import answers
from wellposed.rules.chart import Chart

SECTIONS = ("goals", "movements", "allow", "attachments", "appliance", "process")
DOUBTS, OVERSTATED = "doubts", "overstated"
_ATTACHED = ("must", "may", "prefer")


def sorted_out(chart: Chart, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """All findings, each with what it rests on, under its cause where it has one, in the order of the report."""
    found = [replace(finding, rests_on=rests_on(chart, finding)) for finding in findings]
    leaders = _leaders(found)
    doubted = {leader.facts[DOUBTS] for leader in leaders}
    resting = {leader.name: _resting(chart, leader, doubted, found) for leader in leaders}
    return gathered(as_one(_placed(chart, finding, leaders, resting) for finding in found))


def rests_on(chart: Chart, finding: Finding) -> tuple[tuple[str, str], ...]:
    """Measurements, diagnoses and clauses it names; then what is missing: not stated, or not mentioned and so kept."""
    named = [(chart.kind(one), one) for one in finding.clauses]
    missing = list(finding.facts.get("missing", ()))
    if finding.rule == "baseline-missing":
        missing.append(finding.facts.get("measure", ""))
    silent = (one for one in finding.facts.get("members", ()) if one.get("role") == "unsaid")
    missing += [f"{one['arch']} {one['group']}" for one in silent]
    return (*named, *(("missing", what) for what in dict.fromkeys(missing) if what))


def _leaders(found: Iterable[Finding]) -> list[Finding]:
    """One leader a doubted statement: the heaviest, else the first."""
    leaders: dict[str, Finding] = {}
    for finding in found:
        doubted = finding.facts.get(DOUBTS)
        if doubted and (doubted not in leaders or finding.severity.rank < leaders[doubted].severity.rank):
            leaders[doubted] = finding
    return list(leaders.values())


def _resting(chart: Chart, leader: Finding, doubted: set[str], found: list[Finding]) -> tuple[Place, ...]:
    """The instructions that rest on what a leader doubts; if it is overstated, those that another rule speaks of."""
    statement = leader.facts[DOUBTS]
    resting = [place for place in _instructions(chart) if _rests(chart, place, statement, doubted)]
    if leader.facts.get(OVERSTATED):
        spoken = {one for finding in found if DOUBTS not in finding.facts for one in finding.clauses}
        resting = [place for place in resting if place.owner in spoken]
    return (*resting, *_attached(chart, resting))


def _instructions(chart: Chart) -> Iterator[Place]:
    """Every instruction as a whole, attachments left out."""
    return (p for p in chart.of(*SECTIONS) if p.said("id") and not isinstance(p.part, Attachment))


def _rests(chart: Chart, place: Place, statement: str, doubted: set[str]) -> bool:
    reasons = set(place.said("because") or ())
    if reasons:
        return statement in chart.because(place) and all(_in_doubt(chart, one, doubted) for one in reasons)
    at = chart.place(statement)
    problem = str(at.said("problem") or "") if at else ""
    others = (one.said("problem") for one in chart.of("problems") if one.owner not in doubted)
    return _same_arch(at, place) and answers(problem, place) and not any(answers(other, place) for other in others)


def _in_doubt(chart: Chart, reason: str, doubted: set[str]) -> bool:
    """A doubted statement, or a measurement that only doubted problems cite."""
    if reason in doubted:
        return True
    citing = [p.owner for p in chart.of("problems") if reason in (p.said("because") or ())]
    return chart.kind(reason) == "measurement" and bool(citing) and set(citing) <= doubted


def _same_arch(problem: Place | None, place: Place) -> bool:
    arches = {problem.said("arch") if problem else None, place.said("arch")} - {None}
    return len(arches) < 2  # noqa: PLR2004 - two arches


def _attached(chart: Chart, resting: list[Place]) -> Iterator[Place]:
    """Attachments on teeth that nothing else moves, unless they are said to be for retention."""
    needless = {tooth for place in resting for tooth in _moved(place)}
    needed = {tooth for place in _instructions(chart) if place not in resting for tooth in _moved(place)}
    for place in chart.of("attachments"):
        teeth = {tooth for member in _ATTACHED for tooth in place.said(member) or ()}
        if teeth and teeth <= needless - needed and place.said("reason") != "retention":
            yield place


def _moved(place: Place) -> tuple[str, ...]:
    moving = place.section == "movements" or isinstance(place.part, AnyMovement | VerticalMovement)
    return tuple(place.said("teeth") or ()) if moving else tuple(place.said("align") or ())


def _placed(
    chart: Chart, finding: Finding, leaders: list[Finding], resting: dict[tuple[str, str], tuple[Place, ...]]
) -> Finding:
    """A leader with its instructions; any other finding under the first leader whose instructions it is about."""
    if finding in leaders:
        return replace(finding, facts={**finding.facts, "instructions": [_told(p) for p in resting[finding.name]]})
    doubted = finding.facts.get(DOUBTS)
    about = {one for one in finding.clauses if _is_instruction(chart, one)}
    for leader in leaders:
        same = doubted is not None and leader.facts[DOUBTS] == doubted
        needless = about & {place.owner for place in resting[leader.name]}
        if same or (needless and len(needless) >= len(about - needless)):
            return replace(finding, under=leader.name)
    return finding


def _is_instruction(chart: Chart, name: str) -> bool:
    place = chart.place(name)
    return place is not None and place.section in SECTIONS


def _told(place: Place) -> dict[str, Any]:
    return {"clause": place.owner, "pointer": place.pointer, "said": said(place.part)}
