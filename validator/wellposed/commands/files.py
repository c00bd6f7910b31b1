"""Files as they are named and read."""

from __future__ import annotations

import sys
from pathlib import Path

__all__ = ["STDIN", "FileError", "content", "documents_in", "shown"]

STDIN = "-"


class FileError(Exception):
    """A file that cannot be read, and why; nothing of its content."""


def shown(file: str) -> str:
    """The base name of a file, with a mark in place of what cannot be printed."""
    name = "standard input" if file == STDIN else Path(file).name or file
    return "".join(character if character.isprintable() else "\ufffd" for character in name)


def documents_in(folder: str) -> list[str]:
    """The files of a folder named .json, by name, without those of the folders in it. FileError if it is not read."""
    try:
        found = (path for path in sorted(Path(folder).iterdir()) if path.suffix.lower() == ".json")
        return [str(path) for path in found if not path.is_dir()]
    except OSError as error:
        raise FileError(_reason(error)) from error


def content(file: str, most: int) -> bytes:
    """The bytes of a file, and no more than ``most``. FileError where there are none to be had."""
    try:
        if file == STDIN:
            return sys.stdin.buffer.read(most)
        with Path(file).open("rb") as stream:
            return stream.read(most)
    except (OSError, ValueError) as error:
        raise FileError(_reason(error)) from error


def _reason(error: OSError | ValueError) -> str:
    kinds = {
        FileNotFoundError: "there is no such file",
        IsADirectoryError: "it is a directory",
        PermissionError: "there is no permission to read it",
    }
    return next((words for kind, words in kinds.items() if isinstance(error, kind)), "it cannot be read")
