"""One run over files: each is read, checked and told, and a failure of one does not stop the others."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Any

import click

from wellposed.commands.codes import FIT, INTERNAL, NOT_FIT, NOT_READ, internal
from wellposed.commands.files import FileError, content, shown
from wellposed.render.forms import Form
from wellposed.render.outcome import Judged, NotChecked, Outcome
from wellposed.report import UNREADABLE, Report

__all__ = ["Run"]

Check = Callable[[bytes], Report]


class Run:
    """A run, and the worst exit code so far."""

    def __init__(self, check: Check, form: Form, most: int) -> None:
        self.check = check
        self.form = form
        self.most = most
        self.worst = FIT

    def pieces(self, files: Iterable[str]) -> Iterator[str]:
        """The output, piece by piece."""
        return self.form.whole(self._part(file) for file in files)

    def _part(self, file: str) -> Any:
        """What one file adds, whatever happens to it."""
        name = shown(file)
        try:
            report = self.check(content(file, self.most))
            part = self.form.one(Judged(name, report))
        except FileError as error:
            return self.form.one(self._failed(name, str(error), NOT_READ))
        except Exception as error:
            return self.form.one(self._failed(name, internal(error), INTERNAL))
        self.worst = max(self.worst, code_of(report))
        return part

    def _failed(self, name: str, reason: str, code: int) -> Outcome:
        self.worst = max(self.worst, code)
        click.echo(f"wellposed: {name}: {reason}", err=True)
        return NotChecked(name, reason)


def code_of(report: Report) -> int:
    """What a report ends a run with."""
    if report.verdict == UNREADABLE:
        return NOT_READ
    return FIT if report.fit_to_send else NOT_FIT
