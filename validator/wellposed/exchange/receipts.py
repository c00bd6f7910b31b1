"""What a laboratory answers, as a document: made of what was found and where, and of nothing that stands there."""

from __future__ import annotations

import json
import os
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from secrets import token_hex
from shutil import copymode
from typing import Any

from wellposed import __version__
from wellposed.digests import digest
from wellposed.exchange.arrival import Received
from wellposed.findings import Finding, Severity, ordered
from wellposed.model import Receipt

__all__ = ["Facts", "Listed", "grave", "listed", "put_whole", "receipt_bytes", "receipt_name", "told_in", "written"]

MOST_LISTED = 2000
"""As many as the format has room for."""
_SHORTENED = 40
"""Digits of a digest that name a receipt: 160 bits."""
Listed = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Facts:
    """What a receipt is made of.

    answered    the document it answers
    outcome     ``accepted`` or ``returned``
    laboratory  id of the laboratory
    received    when the document first came in, RFC 3339
    issued      when the receipt is made, RFC 3339
    findings    as ``listed`` gives them
    before      the bytes of the receipt it takes the place of; None for the first
    number      its revision, 1 for the first
    """

    answered: Received
    outcome: str
    laboratory: str
    received: str
    issued: str
    findings: Sequence[Listed]
    before: bytes | None = None
    number: int = 1


def listed(findings: Iterable[Finding]) -> list[Listed]:
    """Each finding by rule, weight, place and clauses, in order and each once; its facts stay behind."""
    found = (_listed(one) for one in ordered(findings))
    return list({json.dumps(one): one for one in found}.values())


def _listed(one: Finding) -> Listed:
    clauses = {"clauses": list(one.clauses)} if one.clauses else {}
    return {"rule": one.rule, "severity": str(one.severity), "pointer": one.pointer, **clauses}


def grave(findings: Iterable[Listed]) -> bool:
    """Whether any of them stops, or must be answered first."""
    return any(one["severity"] in (Severity.STOP, Severity.ASK) for one in findings)


def receipt_bytes(facts: Facts) -> bytes:
    """The receipt as it is stored and sent: the same bytes for the same facts. ValueError where a fact is none."""
    made = Receipt.model_validate(_content(facts))
    text = json.dumps(made.model_dump(mode="json", exclude_unset=True), indent=2)
    return f"{text}\n".encode()


def _content(facts: Facts) -> dict[str, Any]:
    answered = facts.answered
    more = len(facts.findings) - MOST_LISTED
    replaces = {} if facts.before is None else {"replaces": digest(Receipt.model_validate_json(facts.before))}
    return {
        "format": "wellposed/receipt",
        "version": "1.0",
        "id": f"RC-{answered.digest[:_SHORTENED]}",
        "revision": facts.number,
        **replaces,
        "issued": facts.issued,
        "answers": {"id": answered.id, "revision": answered.revision, "sha256": answered.digest},
        "outcome": facts.outcome,
        "laboratory": {"id": facts.laboratory},
        "received": facts.received,
        "program": {"name": "wellposed", "version": __version__},
        "findings": [*facts.findings[:MOST_LISTED]],
        **({"more_findings": more} if more > 0 else {}),
    }


def told_in(receipt: bytes) -> list[Listed]:
    """The findings a receipt lists."""
    found: list[Listed] = json.loads(receipt).get("findings", [])
    return found


def receipt_name(sha256: str, number: int) -> str:
    """The name of a receipt's file: the digest of what it answers, and which receipt of it this is."""
    return f"{sha256}-{number}.json"


def written(folder: Path, name: str, data: bytes) -> None:
    """Put a receipt into a folder, if it is not there. OSError where it cannot be.

    FileExistsError where something else has its name: that stays.
    """
    final = folder / name
    if not final.exists():
        put_whole(final, data)
    elif final.read_bytes() != data:
        raise FileExistsError


def put_whole(final: Path, data: bytes) -> None:
    """Write a file whole, durable, and under its name only when it is both, with the mode of the one it replaces."""
    folder = final.parent
    draft = folder / f".{token_hex(8)}.part"
    try:
        with draft.open("xb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
        if final.exists():
            copymode(final, draft)
        draft.replace(final)
    except BaseException:
        with suppress(OSError):
            draft.unlink(missing_ok=True)
        raise
    _synced(folder)


def _synced(folder: Path) -> None:
    """The name is on the disk as well; where folders cannot be opened (Windows) it is left to the system."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
