"""The first line of a report: the verdict in words, and the diagnosis to look at first if there is one."""

from __future__ import annotations

from wellposed.findings import Finding
from wellposed.render.amounts import amount, up
from wellposed.render.conflict import Fact, member
from wellposed.render.filled import joined
from wellposed.report import NOT_JUDGED, Report

__all__ = ["CONFLICTS", "headline"]

CONFLICTS = (
    "cannot-hold-together",
    "means-not-said",
    "too-close-to-tell",
    "beyond-practice",
    "extraction-not-decided",
    "preference-not-met",
    "space-left-over",
)
"""Rules that tell a conflict; the last two are no verdict."""

_HEADLINES = {
    "possible": "A plan within usual limits can meet every instruction.",
    "beyond-practice": "The instructions can only be met by passing a usual limit.",
    "incomplete": "It is not said how the goals are to be reached.",
    "undecided": "It cannot be told from what is stated.",
    "contradictory": "The instructions cannot hold together.",
    "refused": "The document has faults that must be mended before it can be judged.",
    "unreadable": "The document cannot be read.",
    "not-judged": "A sound document, which is not judged.",
}
_NOT_JUDGED = {
    "setup": "A sound setup. What it delivers is judged against its prescription: `wellposed review`.",
    "review": "A sound review. What it decides of the setup is the reviewer's to decide, and is not judged.",
    "receipt": "A sound receipt. It tells what became of a document that was sent; there is nothing in it to judge.",
}
"""Of documents that are read and not judged, by their kind."""


def headline(report: Report) -> str:
    """The verdict in one line; about the one conflict if there is just one. A doubted diagnosis is named with it."""
    return _verdict(report) + _look_first(report)


def _look_first(report: Report) -> str:
    doubted = [one for one in report.findings if one.facts.get("instructions")]
    if not doubted:
        return ""
    ids = joined([str(one.facts["doubts"]) for one in doubted])
    resting = len({instruction["pointer"] for one in doubted for instruction in one.facts["instructions"]})
    told = "1 instruction rests" if resting == 1 else f"{resting} instructions rest"
    graded = all(one.facts.get("overstated") for one in doubted)
    doubt = "whose grade is not that of the measurements" if graded else "which the measurements do not support"
    return f" Look at the diagnosis first: {told} on {ids}, {doubt}."


def _verdict(report: Report) -> str:
    conflicts = [finding for finding in report.findings if finding.rule in CONFLICTS[:-2]]
    if len(conflicts) > 1:
        return f"{_HEADLINES[report.verdict][:-1]}, for {len(conflicts)} separate reasons."
    if report.verdict == "incomplete":
        return _unsaid(conflicts[0])
    if report.verdict == "contradictory":
        return _against(conflicts[0])
    if any(finding.rule == "nothing-asked" for finding in report.findings) and report.verdict == "possible":
        return "Nothing is asked for."
    return _NOT_JUDGED[report.kind] if report.verdict == NOT_JUDGED and report.kind else _HEADLINES[report.verdict]


def _unsaid(finding: Finding) -> str:
    asked = next(fact for fact in finding.facts["members"] if fact["role"] == "asked")
    left = [fact for fact in finding.facts["ways_out"] if fact["what"] == "leave-undone" and fact["part"] == "align"]
    if left:
        room = amount(up(left[0]["amount"]), "mm")
        return f"You have not said where {room} of room is to come from ({asked['clause']})."
    return f"You have not said how {asked.get('clause', 'it')} is to be reached."


def _against(finding: Finding) -> str:
    """Which clauses stand against each other: in words if they are two, else by their ids."""
    stated = [fact for fact in finding.facts["members"] if "clause" in fact]
    others = " while nothing else may move" if any(f["role"] == "unsaid" for f in finding.facts["members"]) else ""
    if len(stated) == 1:
        return f"{_named(stated[0])} cannot be met{others or ' with these teeth'}."
    if len(stated) == 2:
        return f"{_named(stated[0])} and {_named(stated[1])} cannot hold together{others}."
    told = f"{', '.join(finding.clauses[:-1])} and {finding.clauses[-1]}" if finding.clauses else "The instructions"
    return f"{told} cannot hold together{others}."


def _named(fact: Fact) -> str:
    return f"\u201c{member(fact)}\u201d ({fact['clause']})"
