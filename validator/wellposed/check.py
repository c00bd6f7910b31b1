"""bytes → strict parse → model → references → kinematics → ``Report``."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from wellposed import norms
from wellposed.findings import Finding, Severity, ordered
from wellposed.model import Prescription
from wellposed.model.envelope import Envelope
from wellposed.norms import Norms
from wellposed.reading import Document, read_document, structured
from wellposed.report import NOT_JUDGED, REFUSED, UNREADABLE, Report


def check(data: bytes, numbers: Norms | None = None, earlier: Sequence[Prescription] = ()) -> Report:
    """Check one document of the conversation.

    data     the document's bytes, UTF-8 JSON
    numbers  practice limits with a profile in place; the published ones by default
    earlier  revisions of the prescription before this one, as far as they are at hand; those of another id are not used

    Never raises for what is in the document; what is wrong with it is in the report.
    """
    document = read_document(data)
    if not isinstance(document, Document):
        return Report(UNREADABLE, ordered(document))
    made = structured(document)
    if not isinstance(made, Envelope):
        return Report(REFUSED, _placed(document, made))
    return _judged(document, made, numbers or norms.load(), tuple(earlier))


def prescription_of(data: bytes) -> Prescription | None:
    """The prescription in a document, if it is sound: nothing stops it before its clauses are weighed."""
    made = sound(data)
    return made if isinstance(made, Prescription) else None


def sound(data: bytes) -> Prescription | Report:
    """The prescription in a document, or the report on why there is none that could be used.

    The report is ``unreadable``, ``refused``, or ``not-judged`` for another document of the conversation.
    """
    made = sound_document(data)
    if isinstance(made, Report | Prescription):
        return made
    return Report(NOT_JUDGED, (), made.id, made.revision)


def sound_document(data: bytes) -> Envelope | Report:
    """Any document of the conversation, or the report on why there is none that could be used.

    The report is ``unreadable`` or ``refused``, and holds what stops the document.
    """
    from wellposed.consistency import faults

    document = read_document(data)
    if not isinstance(document, Document):
        return Report(UNREADABLE, ordered(document))
    made = structured(document)
    if not isinstance(made, Envelope):
        return Report(REFUSED, _placed(document, made))
    stops = [one for one in faults(made) if one.severity == Severity.STOP]
    return Report(REFUSED, _placed(document, stops), made.id, made.revision) if stops else made


def _placed(document: Document, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return document.placed(ordered(findings))


def _judged(document: Document, made: Envelope, numbers: Norms, earlier: tuple[Prescription, ...]) -> Report:
    changes = tuple((change.key, change.before, change.after) for change in numbers.changes)
    from wellposed.consistency import faults

    found = tuple(faults(made))
    if any(finding.severity == Severity.STOP for finding in found):
        return Report(REFUSED, _placed(document, found), made.id, made.revision, numbers.profile, changes)
    if not isinstance(made, Prescription):
        kind = vars(made)["format"].removeprefix("wellposed/")
        return Report(NOT_JUDGED, _placed(document, found), made.id, made.revision, numbers.profile, changes, kind)
    from wellposed.kinematics.explain import explained
    from wellposed.kinematics.verdict import judge
    from wellposed.rules import Chart, clinical
    from wellposed.rules.causes import sorted_out

    judgement = judge(made, numbers)
    before = sorted((one for one in earlier if one.id == made.id), key=lambda one: one.revision)
    chart = Chart(made, numbers, tuple(before), judgement)
    findings = sorted_out(chart, (*found, *explained(made, judgement), *clinical(chart)))
    return Report(judgement.verdict, document.placed(findings), made.id, made.revision, numbers.profile, changes)
