"""What came of one file: a report on it, or the reason why there is none."""

from __future__ import annotations

from dataclasses import dataclass

from wellposed.report import Report

__all__ = ["Judged", "NotChecked", "Outcome"]


@dataclass(frozen=True, slots=True)
class Judged:
    """A report on the document called ``name``."""

    name: str
    report: Report


@dataclass(frozen=True, slots=True)
class NotChecked:
    """No report on the file called ``name``, and why: a reason that holds nothing of its content."""

    name: str
    reason: str


Outcome = Judged | NotChecked
