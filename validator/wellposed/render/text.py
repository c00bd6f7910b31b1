"""A report as text: the verdict in one line, then each finding with its ways out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import wrap

from wellposed.findings import CAUTION, Finding, Severity
from wellposed.render.conflict import ROLES, Fact, limit_words, member, missing, role, silences
from wellposed.render.phrases import amount, up
from wellposed.render.ways import UNUSUAL, way
from wellposed.render.wording import assumption, depends, forced_lines, sentence
from wellposed.report import Report

SCOPE = "A necessary check, not a plan: roots, bone and tooth contacts are not looked at, and planned is not achieved."
_HEADLINES = {
    "possible": "A plan within usual limits can meet every instruction.",
    "beyond-practice": "The instructions can only be met by passing a usual limit.",
    "incomplete": "It is not said how the goals are to be reached.",
    "undecided": "It cannot be told from what is stated.",
    "contradictory": "The instructions cannot hold together.",
    "refused": "The document has faults that must be mended before it can be judged.",
    "unreadable": "The document cannot be read.",
    "not-judged": "A sound document; this version does not judge its content.",
}
_CONFLICTS = (
    "cannot-hold-together",
    "means-not-said",
    "too-close-to-tell",
    "beyond-practice",
    "extraction-not-decided",
    "preference-not-met",
    "space-left-over",
)
_INDENT = "   "


def text(report: Report, name: str, width: int = 100) -> str:
    """The whole report, ending in a line break.

    name   what the document is called where it has no id of its own
    width  longest line, in characters
    """
    blocks = [_head(report, name, width), *_numbered(report, width), _foot(report, width)]
    return "\n".join(block for block in blocks if block) + "\n"


def _head(report: Report, name: str, width: int) -> str:
    title = report.id if report.id is not None else name
    return "\n".join(wrap(f"{title}  {report.verdict}. {_headline(report)}", width)) + "\n"


def _headline(report: Report) -> str:
    """The verdict in one line; about the one conflict if there is just one."""
    conflicts = [finding for finding in report.findings if finding.rule in _CONFLICTS[:-2]]
    if len(conflicts) > 1:
        return f"{_HEADLINES[report.verdict][:-1]}, for {len(conflicts)} separate reasons."
    if report.verdict == "incomplete":
        return _unsaid(conflicts[0])
    if report.verdict == "contradictory":
        return _against(conflicts[0])
    return _HEADLINES[report.verdict]


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


def _numbered(report: Report, width: int) -> Iterator[str]:
    for place, finding in enumerate(report.findings, 1):
        yield "\n".join(_finding(place, finding, width)) + "\n"


def _finding(place: int, finding: Finding, width: int) -> Iterator[str]:
    lines = list(_conflict(finding) if finding.rule in _CONFLICTS else _simple(finding))
    mark = f"{place:<3}"
    for line in lines:
        hang = _INDENT + "  " * (len(line) - len(line.lstrip()) > 0) + _tab(line)
        yield from _wrapped(mark, line, hang, width)
        mark = _INDENT
    yield f"{_INDENT}{_where(finding)}"


def _tab(line: str) -> str:
    """Continuation lines stand under the words, not under the role."""
    role = next((role for role in ROLES.values() if line.startswith(role)), None)
    return " " * 15 if role else ""


def _wrapped(mark: str, line: str, hang: str, width: int) -> list[str]:
    return wrap(mark + line, width, subsequent_indent=hang, break_long_words=False, break_on_hyphens=False)


def _where(finding: Finding) -> str:
    here = finding.line is not None and (finding.pointer or finding.severity == Severity.STOP)
    place = f"line {finding.line}, column {finding.column}" if here else ""
    pointer = "" if finding.clauses or finding.rule in _CONFLICTS else finding.pointer
    told = [finding.severity.value, finding.rule, " ".join(finding.clauses), place, pointer]
    return f"[{' · '.join(part for part in told if part)}]"


def _simple(finding: Finding) -> Iterator[str]:
    if finding.rule == "what-it-forces":
        yield "What a plan must use and can reach:"
        yield from (f"  {line}" for line in forced_lines(finding.facts))
    elif finding.rule == "taken-as-so":
        yield "Taken as so, because not stated:"
        yield from (f"  {assumption(fact)}" for fact in finding.facts["assumed"])
    else:
        yield sentence(finding)


def _conflict(finding: Finding) -> Iterator[str]:
    facts = finding.facts
    if finding.rule == "preference-not-met":
        yield f"A wish gives way: {facts['wish']}."
    for fact in facts["members"]:
        if role(fact) and fact["role"] != "usual":
            ident = f"  ({fact['clause']})" if "clause" in fact else ""
            yield f"{role(fact):<15}{member(fact)}{ident}"
    yield from _usual([fact for fact in facts["members"] if fact["role"] == "usual"])
    silent = [fact for fact in facts["members"] if fact["role"] == "unsaid"]
    if silent:
        yield f"Not mentioned, so kept: {silences(silent)}"
    if finding.rule == "space-left-over":
        yield f"Every plan then opens new space in the {facts['arch']} arch that nothing closes or leaves."
    elif missing(facts):
        yield missing(facts)
    yield from _ways(finding)
    yield from _certainty(finding)


def _usual(facts: list[Fact]) -> Iterator[str]:
    """The practice limits in a conflict, each once, with the places it binds at."""
    for words in dict.fromkeys(limit_words(fact) for fact in facts):
        places = [str(fact["place"]) for fact in facts if limit_words(fact) == words]
        yield f"{ROLES['usual']:<15}{words} ({', '.join(places)})"


def _ways(finding: Finding) -> Iterator[str]:
    usual = [fact for fact in finding.facts["ways_out"] if not fact["beyond_practice"]]
    unusual = [fact for fact in finding.facts["ways_out"] if fact["beyond_practice"]]
    if usual:
        yield "Any one of these settles it:" if len(usual) > 1 else "This settles it:"
        yield from (f"  {way(fact)}" for fact in usual)
    elif not unusual:
        yield "No single change of an amount settles it."
    for passed in dict.fromkeys(_limits(fact) for fact in unusual):
        ways = "; ".join(way(fact) for fact in unusual if _limits(fact) == passed)
        yield f"{'Also, but' if usual else 'Only'} {UNUSUAL} ({passed}): {ways}"


def _limits(fact: Fact) -> str:
    """The usual limits a way out passes; several teeth or contacts of one limit are named once."""
    return "; ".join(dict.fromkeys(limit_words(passed) for passed in fact["passed"]))


def _certainty(finding: Finding) -> Iterator[str]:
    causes = {cause for fact in finding.facts["ways_out"] for cause in fact["by"]}
    if finding.rule == "cannot-hold-together":
        sure = [words for cause, words in _SURE.items() if cause in causes]
        yield f"Certain{': for ' + ' and '.join(sure) if sure else ''}."
    elif finding.rule == "extraction-not-decided":
        yield "With the extraction this cannot hold; without it, it can. Is the extraction decided?"
    elif finding.facts.get("depends_on"):
        yield f"It turns on: {', '.join(depends(name) for name in finding.facts['depends_on'])}"


_SURE = {
    "hinge": "every hinge factor (mm the bite moves per mm at the molars) from 1.0 to 2.5",
    "arch-depth": "every arch depth within 3 mm of the average",
}


def _foot(report: Report, width: int) -> str:
    counts = [_counted(report.count(severity), severity) for severity in Severity if report.count(severity)]
    fit = "fit to send" if report.fit_to_send else "not fit to send"
    profile = f" Practice profile: {report.profile} ({', '.join(_changes(report.changes))})." if report.profile else ""
    told = f"{fit.capitalize()}{': ' + ', '.join(counts) if counts else ''}.{profile}"
    return "\n".join(line for part in (told, SCOPE, CAUTION) for line in wrap(part, width))


def _counted(number: int, severity: Severity) -> str:
    """How many findings: stops, cautions and notes are things, an ask is a question."""
    word = "question" if severity == Severity.ASK else severity.value
    return f"{number} {word}{'' if number == 1 else 's'}"


def _changes(changes: Iterable[tuple[str, float, float]]) -> list[str]:
    return [f"{key} {before:g} → {after:g}" for key, before, after in changes] or ["nothing changed"]
