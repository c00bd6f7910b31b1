"""Files as they come in: each with its signature, taken in one after the other, and answered when it is stored."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from hashlib import sha256
from pathlib import Path

import click

from wellposed.commands.codes import FIT, NOT_FIT, NOT_READ
from wellposed.commands.files import FileError, content
from wellposed.exchange.answering import ACCEPTED
from wellposed.exchange.intake import Desk, NotTaken, taken_in
from wellposed.exchange.kept import Answer
from wellposed.exchange.receipts import receipt_name, written
from wellposed.exchange.store import Store, StoreError
from wellposed.exchange.times import now
from wellposed.reading.limits import MOST_BYTES
from wellposed.render.intake import not_taken_text, taking_text

__all__ = ["Intake", "files_in"]

_ENDING, SIGNATURE = ".json", ".sig"
_MOST_OF_A_SIGNATURE = 10_000


def files_in(paths: Iterable[str]) -> list[Path]:
    """The files named, and of a folder those named .json, in the order of their names."""
    found: list[Path] = []
    for path in map(Path, paths):
        inside = [one for one in path.iterdir() if _is_document(one)] if path.is_dir() else [path]
        found += sorted(inside)
    return found


def _is_document(path: Path) -> bool:
    return path.suffix.lower() == _ENDING and not path.is_dir() and not path.name.startswith(".")


class Intake:
    """A run of the intake, and the worst exit code so far."""

    def __init__(self, store: Store, desk: Desk, folder: Path | None) -> None:
        self.store = store
        self.desk = desk
        self.folder = folder
        self.worst = FIT

    def pieces(self, files: Sequence[Path]) -> Iterator[str]:
        """What is said of each file, once it is stored and its receipt written. StoreError ends it."""
        for number, file in enumerate(files, start=1):
            try:
                data, signature = self._read(file)
            except FileError as error:
                self.worst = NOT_READ
                click.echo(f"wellposed: file {number}: {error}", err=True)
                continue
            yield self._taken(number, data, signature)

    def _read(self, file: Path) -> tuple[bytes, bytes | None]:
        beside = [one for one in (file.with_suffix(SIGNATURE), Path(f"{file}{SIGNATURE}")) if one.exists()]
        if len(beside) > 1:
            raise FileError("two signatures stand beside it; take the one away that is not meant")
        if beside and not self.desk.trust.keys:
            raise FileError("it comes with a signature; --trust names the keys to hold it against")
        signature = content(str(beside[0]), _MOST_OF_A_SIGNATURE) if beside else None
        return content(str(file), MOST_BYTES + 1), signature

    def _taken(self, number: int, data: bytes, signature: bytes | None) -> str:
        told = taken_in(self.store, self.desk, data, signature, now())
        if isinstance(told, NotTaken):
            self.worst = max(self.worst, _code(told))
            return not_taken_text(told, number, sha256(data).hexdigest())
        self.write((told.answer, *told.answers))
        self.worst = max(self.worst, FIT if told.answer.outcome == ACCEPTED else NOT_FIT)
        return taking_text(told)

    def write(self, answers: Iterable[Answer]) -> None:
        """Write receipts into their folder, where there is one; those that are there stay as they are."""
        if self.folder is None:
            return
        try:
            for one in answers:
                written(self.folder, receipt_name(one.sha256, one.number), one.receipt)
        except OSError as error:
            raise StoreError("what came in is stored, but a receipt cannot be written; take it in once more") from error


def _code(told: NotTaken) -> int:
    return NOT_FIT if told.readable else NOT_READ
