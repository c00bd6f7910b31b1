"""Key files read and written: a new one never over another, a list of keys whole or not at all."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import TypeVar

import click

from wellposed.commands.files import FileError, content, shown
from wellposed.exchange.keys import belongs, thumbprint
from wellposed.exchange.receipts import written as durable
from wellposed.exchange.trusting import TrustError, content_of, trust_of
from wellposed.model.base import Part
from wellposed.model.keys import PrivateKey, PublicKey, TrustedKeys
from wellposed.reading.keys import read_keys
from wellposed.reading.limits import MOST_BYTES

__all__ = ["either_half", "key_file", "new_file", "private_key", "put_trust", "read_trust", "written"]

P = TypeVar("P", bound=Part)
_OTHERS = 0o077
_MOST = 10_000


def written(part: Part) -> bytes:
    """Keys as they stand in a file."""
    return (json.dumps(content_of(part), indent=2) + "\n").encode()


def new_file(file: str, data: bytes, mode: int = 0o644) -> None:
    """Write a file that is not there yet; of a private key only its owner may read it from the first moment on."""
    try:
        handle = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode)
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
    except FileExistsError as error:
        raise click.UsageError(f"{shown(file)} is there, and is not written over") from error
    except OSError as error:
        raise click.UsageError(f"{shown(file)} cannot be written") from error


def put_trust(file: str, trust: TrustedKeys) -> None:
    """Write a list of keys in the place of the old one, whole or not at all."""
    try:
        durable(Path(file).parent, Path(file).name, written(trust))
    except OSError as error:
        raise click.UsageError(f"{shown(file)} cannot be written") from error


def read_trust(file: str) -> TrustedKeys:
    """The list in a file. UsageError where there is none that can be used."""
    try:
        return trust_of(_bytes(file, MOST_BYTES + 1))
    except TrustError as error:
        raise click.UsageError(f"{shown(file)}: {error}") from error


def key_file(file: str, *kinds: type[P]) -> P:
    """What a file is of these kinds. UsageError, without a word of its content, where it is none of them."""
    data = _bytes(file, _MOST + 1)
    read = (read_keys(data, kind) for kind in kinds if len(data) <= _MOST)
    found = next((one for one in read if not isinstance(one, tuple)), None)
    if found is None:
        raise click.UsageError(f"{shown(file)} is not a key, or not of the kind that is needed here")
    if isinstance(found, PublicKey) and found.kid not in (None, thumbprint(found.x)):
        raise click.UsageError(f"{shown(file)}: kid is not the thumbprint of the key")
    return found


def either_half(file: str) -> PublicKey:
    """A key, public or private."""
    return key_file(file, PublicKey, PrivateKey)


def private_key(file: str) -> PrivateKey:
    """The key to sign with. UsageError where others can read the file, or its halves do not belong together."""
    found = key_file(file, PrivateKey)
    if os.name == "posix" and Path(file).stat().st_mode & _OTHERS:
        raise click.UsageError(f"{shown(file)}: others can read it; make it readable for its owner only")
    if not belongs(found):
        raise click.UsageError(f"{shown(file)}: the halves of the key do not belong together")
    return found


def _bytes(file: str, most: int) -> bytes:
    try:
        return content(file, most)
    except FileError as error:
        raise click.UsageError(f"{shown(file)}: {error}") from error
