"""A case followed over its documents, as text."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from textwrap import wrap

from wellposed.findings import CAUTION, Severity
from wellposed.render.filled import joined
from wellposed.render.review.laid import block, listed, section
from wellposed.render.revisions.words import part
from wellposed.render.text import numbered, text
from wellposed.revisions.case import Held
from wellposed.revisions.history import CaseHistory, History
from wellposed.revisions.result import Comparison
from wellposed.revisions.threads import Step, Thread

__all__ = ["history_text"]

_HEADINGS = {
    Severity.STOP: "What stops the case",
    Severity.ASK: "What must be answered",
    Severity.CAUTION: "What to bear in mind",
    Severity.NOTE: "Notes",
}
_OUTCOMES = {
    "met": "met",
    "not-met": "NOT met",
    "within": "used within what is allowed",
    "beyond": "used BEYOND what is allowed",
    "cannot-be-told": "cannot be told",
    "declared": "declared by the laboratory",
}
_CHANGES = {"asked": "asked", "again": "asked again", "reversed": "turned round", "reworded": "said in another way"}
_SCOPE = "What the documents say of each other. What was sent besides, and what was carried out, is not seen here."


def history_text(told: History, width: int = 100) -> str:
    """All cases, one after another, then the files that hold no sound document; ends in a line break."""
    cases = [_case(one, width) for one in told.cases]
    none = ["No document of a case is here.\n"] if not cases else []
    unread = section("Files that could not be used", (f"  {one.name}: {one.report.verdict}" for one in told.unread))
    reports = [text(one.report, one.name, width) for one in told.unread]
    foot = "\n".join(line for words in (_SCOPE, CAUTION) for line in wrap(words, width)) + "\n"
    return "\n".join(one for one in (*cases, *none, unread, *reports, foot) if one)


def _case(one: CaseHistory, width: int) -> str:
    parts = [
        f"{one.id}: {_counted(one)}\n",
        *numbered(one.findings, width, headings=_HEADINGS),
        section("Documents", listed(map(_document, one.documents), width)),
        section("From revision to revision", listed(map(_compared, one.comparisons), width)),
        section("Clause by clause", (line for thread in one.threads for line in _thread(thread, width))),
    ]
    return "\n".join(part for part in parts if part)


def _counted(one: CaseHistory) -> str:
    kinds = groupby(one.documents, key=lambda held: held.identity.format.removeprefix("wellposed/"))
    counts = [(kind, len(list(held))) for kind, held in kinds]
    return joined([f"{count} {kind}{'' if count == 1 else 's'}" for kind, count in counts]) + "."


def _document(one: Held) -> tuple[str, str]:
    kind = one.identity.format.removeprefix("wellposed/")
    answers = [f"{answer.id} revision {answer.revision}" for answer in one.answers]
    outcome = getattr(one.document, "outcome", None)
    told = [f"{kind} {one.identity.id} revision {one.identity.revision}, issued {one.document.issued}"]
    told += [f"answers {joined(answers)}"] if answers else []
    told += [outcome] if outcome else []
    return " ".join(one.names), f"{', '.join(told)} ({one.identity.digest[:12]}…)"


def _compared(one: Comparison) -> tuple[str, str]:
    counts = [f"{count} {change}" for change, count in one.counts().items() if count]
    weighed = one.weighed
    verdicts = f"{weighed.before} → {weighed.after}"
    new = [f"new conflict: {joined(list(found.clauses))}" for found in weighed.introduced]
    settled = [f"settled: {joined(list(found.clauses))}" for found in weighed.settled]
    return f"{one.old.revision} → {one.new.revision}", "; ".join(
        (joined(counts) or "no clauses", verdicts, *new, *settled)
    )


def _thread(thread: Thread, width: int) -> Iterator[str]:
    """One clause: as it was last said, then its way, a line for each revision."""
    rows = [("", part(thread.last.part) + ("" if thread.standing else " (no longer asked)"))]
    ids = ["", *(step.item.id if step.item else "" for step in thread.steps)]
    rows += [
        (f"Revision {s.revision}:", _step(s, s.item is not None and was not in ("", s.item.id)))
        for was, s in zip(ids, thread.steps, strict=False)
    ]
    yield from block(thread.last.id, rows, width)


def _step(step: Step, renamed: bool) -> str:
    change = _CHANGES.get(step.change, step.change)
    called = f", as {step.item.id}" if step.item is not None and renamed else ""
    told = [f"{_OUTCOMES[one.outcome]} in {one.setup} {one.revision}{_doing(one.doing)}" for one in step.outcomes]
    return "; ".join((change + called, *told))


def _doing(doing: str | None) -> str:
    words = {"setup": " (another setup could)", "prescription": " (no setup could)", "either": ""}
    return words.get(doing or "", "")
