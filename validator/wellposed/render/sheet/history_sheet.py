"""The sheet of a case over its revisions: its documents in order, and every clause from revision to revision."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.translate import Translation
from wellposed.model import Prescription, Review
from wellposed.render.review.clause_words import in_words
from wellposed.render.review.lists import unasked
from wellposed.render.sheet.chart import arch_chart
from wellposed.render.sheet.ordered import ordered
from wellposed.render.sheet.page import Figure, Page, Section, Table
from wellposed.render.sheet.parts import CLOSING, arches, digest_facts, findings, running
from wellposed.render.sheet.review_sheet import OUTCOMES
from wellposed.render.sheet.timeline import Event, timeline
from wellposed.render.text import headings
from wellposed.review.requests import unopened
from wellposed.review.result import SetupReview
from wellposed.revisions.case import Held
from wellposed.revisions.history import CaseHistory
from wellposed.revisions.threads import Outcome, Step, Thread
from wellposed.vocabulary.teeth import ARCHES

__all__ = ["history_sheet"]

_CHANGES: Mapping[str, str] = MappingProxyType(
    {
        "asked": "asked",
        "unchanged": "as before",
        "reworded": "as before, in other words",
        "tightened": "asks more",
        "loosened": "asks less",
        "reversed": "turned round",
        "changed": "changed",
        "added": "added",
        "again": "asked again",
        "dropped": "dropped",
    }
)
_NONE = "The documents join up, and no clause needs a second look."
_SAME = ("unchanged", "reworded")


def history_sheet(case: CaseHistory) -> Page:
    """The page of a case with at least one prescription."""
    last = _orders(case)[-1]
    mouth = Mouth(last)
    translation = Translation(mouth)
    drawn = [arch_chart(ordered(translation, arch)) for arch in ARCHES]
    return Page(
        f"Case {case.id}, followed over {_counted(len(_orders(case)), 'revision')}",
        running("Prescription", last),
        (("Patient", last.patient.reference), ("Last revision issued", last.issued), *digest_facts(last)),
        (f"Revision {last.revision} is the last at hand.", _standing(case)),
        (
            Section("The documents", (Figure(timeline([_event(case, one) for one in _in_order(case)])),)),
            _clauses(case),
            *_moved(case),
            findings(case.findings, headings("case"), "What the case shows", _NONE),
            arches(drawn, mouth, planned=False, heading=f"The arches, as revision {last.revision} orders them"),
        ),
        CLOSING,
        last.issued,
    )


def _orders(case: CaseHistory) -> list[Prescription]:
    return [one.document for one in case.followed if isinstance(one.document, Prescription)]


def _counted(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def _standing(case: CaseHistory) -> str:
    standing = [thread for thread in case.threads if thread.standing]
    unmet = [thread.last.id for thread in standing if thread.still_unmet()]
    verdict = dict(_verdicts(case)).get(_orders(case)[-1].revision)
    told = f"It has {_counted(len(standing), 'clause')}."
    told += f" Its check: {verdict.replace('-', ' ')}." if verdict else ""
    return f"{told} Not met so far: {', '.join(unmet)}." if unmet else told


# documents


def _in_order(case: CaseHistory) -> list[Held]:
    return sorted(case.documents, key=lambda one: (one.document.issued, one.identity.format, one.identity.revision))


def _event(case: CaseHistory, held: Held) -> Event:
    kind = held.identity.format.rpartition("/")[2]
    words = f"{kind.capitalize()} {held.identity.id}, revision {held.identity.revision}{_more(case, held)}"
    return Event(kind, held.document.issued[:10], words)


def _more(case: CaseHistory, held: Held) -> str:
    """Of an order its verdict, of an answer what it answers, of a review how it ends."""
    verdict = dict(_verdicts(case)).get(held.identity.revision) if held in case.followed else None
    if verdict:
        return f": {verdict.replace('-', ' ')}"
    if isinstance(held.document, Review):
        return f": setup {held.document.answers.id}, revision {held.document.answers.revision}, {held.document.outcome}"
    answered = held.answers
    return f", for {answered[0].id}, revision {answered[0].revision}" if answered else ""


def _verdicts(case: CaseHistory) -> Iterator[tuple[int, str]]:
    for step in case.comparisons:
        yield step.old.revision, step.weighed.before
        yield step.new.revision, step.weighed.after
    yield from ((review.prescription[1], review.verdict) for review in case.reviews)


# clauses


def _clauses(case: CaseHistory) -> Section:
    revisions = [one.revision for one in _orders(case)]
    head = ("Clause", *(f"Revision {revision}" for revision in revisions))
    rows = tuple((thread.last.id, *_cells(thread, revisions)) for thread in case.threads)
    wide = 92 // max(len(revisions), 1)
    table = Table("Each clause from revision to revision", head, rows, (8, *[wide] * len(revisions)))
    return Section("Clause by clause", (table,))


def _cells(thread: Thread, revisions: list[int]) -> Iterator[str]:
    steps = {step.revision: step for step in thread.steps}
    for revision in revisions:
        yield _step(steps[revision]) if revision in steps else ""


def _step(step: Step) -> str:
    """How it changed, what it says where that is new, what each setup makes of it."""
    told = _CHANGES[step.change]
    if step.item is not None and step.change not in _SAME:
        told += f": {in_words(step.item.part)}"
    return "\n".join((told, *(_made(one) for one in step.outcomes)))


def _made(one: Outcome) -> str:
    leans = ", with what is counted on" if one.leaning else ""
    return f"Setup {one.setup}, revision {one.revision}: {OUTCOMES[one.outcome]}{leans}"


# what moved


def _moved(case: CaseHistory) -> Iterator[Section]:
    """Setup by setup, without what an unmet clause tells already."""
    rows = tuple((*_named(one), "\n".join(unasked(unopened(one))) or "nothing") for one in case.reviews)
    if rows:
        table = Table("Setup by setup", ("Setup", "For", "What moved"), rows, (20, 20, 60))
        yield Section("What moved though nothing opened it", (table,))


def _named(review: SetupReview) -> tuple[str, str]:
    (setup, revision), (_, ordered_in) = review.setup, review.prescription
    return f"{setup}, revision {revision}", f"revision {ordered_in} of the order"
