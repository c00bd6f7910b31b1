"""The answer to one check: a verdict, findings in order, and what they were measured against."""

from __future__ import annotations

from dataclasses import dataclass

from wellposed.findings import Finding, Severity

READ_VERDICTS = ("possible", "beyond-practice", "incomplete", "undecided", "contradictory")
UNREADABLE = "unreadable"
REFUSED = "refused"
NOT_JUDGED = "not-judged"


@dataclass(frozen=True, slots=True)
class Report:
    """What is said about one document.

    verdict   one of READ_VERDICTS for a prescription; ``unreadable``: no document could be read;
              ``refused``: read, but not a sound document of the format; ``not-judged``: a sound setup,
              receipt or review: a setup is judged against its prescription only
    kind      of a document that is not judged: ``setup``, ``receipt`` or ``review``
    findings  heaviest first
    id        the document's own id and revision, if it could be read that far
    profile   name of the practice profile, with what it changed: (key or rule, from, to)
    """

    verdict: str
    findings: tuple[Finding, ...] = ()
    id: str | None = None
    revision: int | None = None
    profile: str | None = None
    changes: tuple[tuple[str, float | str, float | str], ...] = ()
    kind: str | None = None

    @property
    def fit_to_send(self) -> bool:
        """Whether nothing stops the document and nothing must be answered first."""
        heavy = any(finding.severity in (Severity.STOP, Severity.ASK) for finding in self.findings)
        return self.verdict in ("possible", NOT_JUDGED) and not heavy

    def count(self, severity: Severity) -> int:
        """How many findings of a severity there are."""
        return sum(finding.severity == severity for finding in self.findings)
