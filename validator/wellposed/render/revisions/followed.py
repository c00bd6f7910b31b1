"""A case followed over its documents, as text."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from textwrap import wrap

from wellposed.findings import CAUTION
from wellposed.render.filled import joined
from wellposed.render.review.laid import block, listed, section
from wellposed.render.review.lists import unasked
from wellposed.render.revisions.words import part
from wellposed.render.text import headings, numbered, text
from wellposed.review.requests import unopened
from wellposed.review.result import SetupReview
from wellposed.revisions.case import Held
from wellposed.revisions.history import CaseHistory, History
from wellposed.revisions.result import Comparison, Item
from wellposed.revisions.threads import Outcome, Step, Thread

__all__ = ["history_text"]

_HEADINGS = headings("case")
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
        section("What moved though nothing opened it", listed(map(_moved, one.reviews), width)),
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


def _moved(one: SetupReview) -> tuple[str, str]:
    """What a setup moves unasked, without what an unmet clause tells already."""
    found = unopened(one)
    told = f"{len(found)} change{'' if len(found) == 1 else 's'}: {'; '.join(unasked(found))}" if found else "nothing"
    return f"{one.setup[0]} {one.setup[1]}", told


def _thread(thread: Thread, width: int) -> Iterator[str]:
    """One clause: as it was first said, then its way, a line for each revision."""
    rows = [("", part(thread.first.part) + ("" if thread.standing else " (no longer asked)"))]
    said: Item | None = None
    for step in thread.steps:
        rows.append((f"Revision {step.revision}:", _step(step, said)))
        said = step.item or said
    yield from block(thread.last.id, rows, width)


def _step(step: Step, said: Item | None) -> str:
    """How it changed, what it says where that differs from what was ``said`` last, what each setup makes of it."""
    change = _CHANGES.get(step.change, step.change)
    if step.item is not None and said is not None:
        change += f", as {step.item.id}" if step.item.id != said.id else ""
        now = part(step.item.part)
        change += f", now: {now}" if now != part(said.part) else ""
    return "; ".join((change, *(_made(one) for one in step.outcomes)))


def _made(one: Outcome) -> str:
    leans = " with what is counted on" if one.leaning else ""
    return f"{_OUTCOMES[one.outcome]}{leans} in {one.setup} {one.revision}{_doing(one.doing)}"


def _doing(doing: str | None) -> str:
    words = {"setup": " (another setup could)", "prescription": " (no setup could)", "either": ""}
    return words.get(doing or "", "")
