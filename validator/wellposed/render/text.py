"""A report as text: the verdict in one line, then each finding with its ways out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from textwrap import wrap

from wellposed.findings import CAUTION, Finding, Severity
from wellposed.render.clinical import clinical_lines, clinical_sentence, is_clinical
from wellposed.render.conflict import ROLES, Fact, limit_words, member, missing, role, silences
from wellposed.render.headline import CONFLICTS, headline
from wellposed.render.note import Note
from wellposed.render.ways import UNUSUAL, way
from wellposed.render.wording import assumption, depends, forced_lines, sentence
from wellposed.report import Report

SCOPE = "A necessary check, not a plan: roots, bone and tooth contacts are not looked at, and planned is not achieved."
_INDENT = "   "


def headings(what: str) -> Mapping[Severity, str]:
    """What findings stand under, by their weight; ``what`` is stopped by the heaviest."""
    return {
        Severity.STOP: f"What stops the {what}",
        Severity.ASK: "What must be answered",
        Severity.CAUTION: "What to bear in mind",
        Severity.NOTE: "Notes",
    }


HEADINGS = headings("order")


def text(report: Report, name: str, width: int = 100, note: Note | None = None) -> str:
    """The whole report, ending in a line break.

    name   what the document is called where it has no id of its own
    width  longest line, in characters
    note   the note the document was made of; each finding then quotes it
    """
    blocks = [_head(report, name, width), *numbered(report.findings, width, note), _foot(report, width)]
    return "\n".join(block for block in blocks if block) + "\n"


def _head(report: Report, name: str, width: int) -> str:
    title = report.id if report.id is not None else name
    return "\n".join(wrap(f"{title}  {report.verdict}. {headline(report)}", width)) + "\n"


def numbered(
    findings: Sequence[Finding], width: int, note: Note | None = None, headings: Mapping[Severity, str] = HEADINGS
) -> Iterator[str]:
    """Each finding that leads or stands alone, under the heading of its weight; what goes under it follows it."""
    heading = None
    leading = [finding for finding in findings if not finding.under]
    for place, finding in enumerate(leading, 1):
        members = [one for one in findings if one.under == finding.name]
        heaviest = min((finding, *members), key=lambda one: one.severity.rank).severity
        if heaviest != heading and len(leading) > 1:
            yield f"{headings[heaviest]}\n"
        heading = heaviest
        lines = [*_finding(f"{place:<3}", finding, width)]
        quote = note.words(finding) if note else ""
        lines += _wrapped(_INDENT, quote, _INDENT, width) if quote else []
        lines += [line for one in members for line in _member(one, finding, width)]
        yield "\n".join(lines) + "\n"


def _finding(mark: str, finding: Finding, width: int) -> Iterator[str]:
    yield from _laid(mark, finding, _lines(finding), width)


def _laid(mark: str, finding: Finding, lines: Iterable[str], width: int) -> Iterator[str]:
    for line in lines:
        hang = _INDENT + "  " * (len(line) - len(line.lstrip()) > 0) + _tab(line)
        yield from _wrapped(mark, line, hang, width)
        mark = _INDENT
    yield f"{_INDENT}{_where(finding)}"


def _member(finding: Finding, leader: Finding, width: int) -> Iterator[str]:
    """What goes under another finding, a step in: its sentence; all of it where it weighs more, or is a conflict."""
    brief = is_clinical(finding) and finding.severity.rank >= leader.severity.rank
    lines = [clinical_sentence(finding)] if brief else _lines(finding)
    yield from (f"{_INDENT}{line}" for line in _laid(f"{'-':<3}", finding, lines, width - len(_INDENT)))


def _lines(finding: Finding) -> Iterator[str]:
    if finding.rule in CONFLICTS:
        return _conflict(finding)
    return clinical_lines(finding) if is_clinical(finding) else _simple(finding)


def _tab(line: str) -> str:
    """Continuation lines stand under the words, not under the role."""
    role = next((role for role in ROLES.values() if line.startswith(role)), None)
    return " " * 15 if role else ""


def _wrapped(mark: str, line: str, hang: str, width: int) -> list[str]:
    return wrap(mark + line, width, subsequent_indent=hang, break_long_words=False, break_on_hyphens=False)


def _where(finding: Finding) -> str:
    here = finding.line is not None and (finding.pointer or finding.severity == Severity.STOP)
    place = f"line {finding.line}, column {finding.column}" if here else ""
    pointer = "" if finding.clauses or finding.rule in CONFLICTS else finding.pointer
    told = [finding.severity.value, finding.rule, " ".join(finding.clauses), place, pointer]
    return f"[{' · '.join(part for part in told if part)}]"


finding_lines, finding_place = _lines, _where
"""What is said of a finding, a line each; its weight, rule and place. For the other forms of a report."""


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
    profile = f" {profile_line(report.profile, report.changes)}" if report.profile else ""
    told = f"{fit.capitalize()}{': ' + ', '.join(counts) if counts else ''}.{profile}"
    return "\n".join(line for part in (told, SCOPE, CAUTION) for line in wrap(part, width))


def _counted(number: int, severity: Severity) -> str:
    """How many findings: stops, cautions and notes are things, an ask is a question."""
    word = "question" if severity == Severity.ASK else severity.value
    return f"{number} {word}{'' if number == 1 else 's'}"


def profile_line(name: str, changes: Iterable[tuple[str, float | str, float | str]]) -> str:
    """A practice profile by its name, and all that it changed."""
    return f"Practice profile: {name} ({', '.join(_changes(changes))})."


def _changes(changes: Iterable[tuple[str, float | str, float | str]]) -> list[str]:
    return [f"{key} {_plain(before)} → {_plain(after)}" for key, before, after in changes] or ["nothing changed"]


def _plain(value: float | str) -> str:
    return value if isinstance(value, str) else f"{value:g}"
