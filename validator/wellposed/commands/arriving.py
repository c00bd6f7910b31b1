"""Files as they come in: each with its signature, taken in one after the other, and answered when it is stored."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from hashlib import sha256
from pathlib import Path

import click

from wellposed.commands.codes import FIT, INTERNAL, NOT_FIT, NOT_READ, internal
from wellposed.commands.files import FileError, content
from wellposed.exchange.answering import ACCEPTED
from wellposed.exchange.intake import Desk, NotTaken, taken_in
from wellposed.exchange.kept import Answer
from wellposed.exchange.receipts import receipt_name, written
from wellposed.exchange.store import Store, StoreError
from wellposed.model.moments import now
from wellposed.reading.limits import MOST_BYTES
from wellposed.render.intake import not_taken_text, taking_text

__all__ = ["Intake", "files_in"]

_ENDING, SIGNATURE = ".json", ".sig"
_MOST_OF_A_SIGNATURE = 10_000


def files_in(paths: Iterable[str]) -> list[Path]:
    """The files named, and of a folder those named .json, by their names. UsageError where one cannot be read."""
    found: list[Path] = []
    try:
        for path in map(Path, paths):
            inside = [one for one in path.iterdir() if _is_document(one)] if path.is_dir() else [path]
            found += sorted(inside)
    except OSError as error:
        raise click.UsageError("a file or folder that is named cannot be read") from error
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
        """What is said of each file, once it is stored and its receipt written. Only StoreError ends it."""
        for number, file in enumerate(files, start=1):
            try:
                told = self._taken(number, *self._read(file))
            except StoreError:
                raise
            except FileError as error:
                self._failed(number, str(error), NOT_READ)
            except Exception as error:
                self._failed(number, internal(error), INTERNAL)
            else:
                yield told

    def _failed(self, number: int, reason: str, code: int) -> None:
        self.worst = max(self.worst, code)
        click.echo(f"wellposed: file {number}: {reason}", err=True)

    def _read(self, file: Path) -> tuple[bytes, bytes | None]:
        beside = _beside(file)
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
        except FileExistsError as error:
            raise StoreError("what came in is stored, but something else has the name of its receipt there") from error
        except OSError as error:
            raise StoreError("what came in is stored, but a receipt cannot be written; take it in once more") from error


def _beside(file: Path) -> list[Path]:
    """The signatures that stand beside a document. FileError where that cannot be seen."""
    try:
        return [one for one in (file.with_suffix(SIGNATURE), Path(f"{file}{SIGNATURE}")) if one.exists()]
    except OSError as error:
        raise FileError("it cannot be seen whether a signature stands beside it") from error


def _code(told: NotTaken) -> int:
    return NOT_FIT if told.readable else NOT_READ
