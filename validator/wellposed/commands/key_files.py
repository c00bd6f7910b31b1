"""Key files read and written: a new one never over another, a list of keys whole or not at all, and one at a time."""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TypeVar

import click
from filelock import FileLock, Timeout

from wellposed.commands.files import STDIN, FileError, content, shown
from wellposed.exchange.keys import LOCKED, LONGEST, SHORTEST, belongs, locked, thumbprint, unlocked
from wellposed.exchange.receipts import put_whole
from wellposed.exchange.trusting import TrustError, content_of, trust_of
from wellposed.model.base import Part
from wellposed.model.keys import PrivateKey, PublicKey, TrustedKeys
from wellposed.reading.keys import read_keys
from wellposed.reading.limits import MOST_BYTES

__all__ = [
    "alone",
    "either_half",
    "key_file",
    "new_file",
    "new_pair",
    "new_phrase",
    "private_key",
    "put_trust",
    "read_trust",
    "written",
]

P = TypeVar("P", bound=Part)
_OWN, _OTHERS = 0o600, 0o077
_MOST = 10_000
_PATIENCE = 30.0
"""Seconds until somebody else is done with a list of keys."""


def written(part: Part) -> bytes:
    """Keys as they stand in a file."""
    return (json.dumps(content_of(part), indent=2) + "\n").encode()


def new_file(file: str, data: bytes, mode: int = 0o644) -> None:
    """Write a file that is not there yet, whole or not at all; who may read it is so from the first moment on."""
    try:
        handle = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode)
    except FileExistsError as error:
        raise click.UsageError(f"{shown(file)} is there, and is not written over") from error
    except OSError as error:
        raise click.UsageError(f"{shown(file)} cannot be written") from error
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
    except OSError as error:
        _taken_back(file)
        raise click.UsageError(f"{shown(file)} cannot be written") from error


def new_pair(private: str, public: str, key: PrivateKey, half: PublicKey, phrase: str | None) -> None:
    """Write the two halves of a new key, both or neither; the private one for its owner alone."""
    new_file(public, written(half))
    try:
        new_file(private, written(key) if phrase is None else locked(key, phrase), _OWN)
    except click.UsageError:
        _taken_back(public)
        raise


def _taken_back(file: str) -> None:
    with suppress(OSError):
        Path(file).unlink()


def new_phrase(file: str) -> str:
    """A pass phrase for a new key, asked for twice. UsageError where it is too short or too long."""
    length = f"{SHORTEST} to {LONGEST} characters"
    phrase = _asked(f"Pass phrase for {shown(file)}, {length}", twice=True)
    if not SHORTEST <= len(phrase) <= LONGEST:
        raise click.UsageError(f"a pass phrase has {length}; several words are best")
    return phrase


def _asked(words: str, *, twice: bool = False) -> str:
    """What is typed and not shown; from nowhere else, so that it stands in no list of commands."""
    try:
        told: str = click.prompt(words, hide_input=True, confirmation_prompt=twice, err=True)
    except click.Abort as error:
        raise click.UsageError("no pass phrase was given") from error
    return told


@contextmanager
def alone(file: str) -> Iterator[None]:
    """Nobody else changes this list of keys meanwhile. UsageError where others do for too long."""
    path = _real(file)
    if not path.parent.is_dir():
        raise click.UsageError(f"{shown(file)} cannot be written")
    lock = FileLock(path.with_name(f".{path.name}.lock"))
    try:
        lock.acquire(_PATIENCE)
    except Timeout as error:
        raise click.UsageError(f"{shown(file)}: somebody else is changing it; try again") from error
    except OSError as error:
        raise click.UsageError(f"{shown(file)} cannot be written") from error
    try:
        yield
    finally:
        lock.release()


def put_trust(file: str, trust: TrustedKeys) -> None:
    """Write a list of keys in the place of the old one, whole or not at all."""
    try:
        put_whole(_real(file), written(trust))
    except OSError as error:
        raise click.UsageError(f"{shown(file)} cannot be written") from error


def _real(file: str) -> Path:
    """Where the file itself lies: a link to it stays one."""
    return Path(os.path.realpath(file))


def read_trust(file: str) -> TrustedKeys:
    """The list in a file. UsageError where there is none that can be used."""
    try:
        return trust_of(_bytes(file, MOST_BYTES + 1))
    except TrustError as error:
        raise click.UsageError(f"{shown(file)}: {error}") from error


def key_file(file: str, *kinds: type[P]) -> P:
    """What a file is of these kinds. UsageError, without a word of its content, where it is none of them."""
    data = _bytes(file, _MOST + 1)
    if data.startswith(LOCKED):
        raise click.UsageError(f"{shown(file)} is a private key under a pass phrase, and stays with its owner")
    return _key_in(file, data, *kinds)


def _key_in(file: str, data: bytes, *kinds: type[P]) -> P:
    read = (read_keys(data, kind) for kind in kinds if len(data) <= _MOST)
    found = next((one for one in read if not isinstance(one, tuple)), None)
    if found is None:
        raise click.UsageError(f"{shown(file)} is not a key, or not of the kind that is needed here")
    if isinstance(found, PublicKey) and found.kid not in (None, thumbprint(found.x)):
        raise click.UsageError(f"{shown(file)}: kid is not the thumbprint of the key")
    return found


def either_half(file: str) -> PublicKey:
    """A key, public or private; the pass phrase of one that has one is asked for."""
    data = _bytes(file, _MOST + 1)
    return _unlocked(file, data) if data.startswith(LOCKED) else _key_in(file, data, PublicKey, PrivateKey)


def private_key(file: str) -> PrivateKey:
    """The key to sign with. UsageError where others can read the file, or its halves do not belong together."""
    data = _bytes(file, _MOST + 1)
    if os.name == "posix" and Path(file).stat().st_mode & _OTHERS:
        raise click.UsageError(f"{shown(file)}: others can read it; make it readable for its owner only")
    found = _unlocked(file, data) if data.startswith(LOCKED) else _key_in(file, data, PrivateKey)
    if not belongs(found):
        raise click.UsageError(f"{shown(file)}: the halves of the key do not belong together")
    return found


def _unlocked(file: str, data: bytes) -> PrivateKey:
    found = unlocked(data, _asked(f"Pass phrase of {shown(file)}"))
    if found is None:
        raise click.UsageError(f"{shown(file)}: this is not its pass phrase, or it holds no key of the kind needed")
    return found


def _bytes(file: str, most: int) -> bytes:
    if file == STDIN:
        raise click.UsageError("keys are read from files, not from the standard input")
    try:
        return content(file, most)
    except FileError as error:
        raise click.UsageError(f"{shown(file)}: {error}") from error
