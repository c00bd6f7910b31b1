"""How the generated areas of the kit are laid down: a row of a test table becomes the folder of a case."""

import re
import shutil
from typing import NamedTuple

from tests.spec.conformance.kit import KIT, written


class Row(NamedTuple):
    """A case as it is written: what is so, where that stands, what is sent, what is expected.

    sentence   what is so; the folder is named after it
    spec       file and heading of the specification
    data       the input's bytes
    expected   outcome, match, findings, and the digest of what was read
    beside     the files beside the input, by what they are
    now        when it was received
    level      how binding it is
    reason     how what is expected comes about, as a sum
    """

    sentence: str
    spec: str
    data: bytes
    expected: dict
    beside: dict = {}  # noqa: RUF012 - never changed
    now: str | None = None
    level: str = "must"
    reason: str | None = None


class Area(NamedTuple):
    """An area that is generated: its task and form, and its rows."""

    name: str
    task: str
    media_type: str
    file: str
    rows: tuple


ROOM = 60
FILES = {
    "signature": "signature.jws",
    "trust": "trust.json",
    "received": "received.json",
    "prescription": "prescription.json",
}


def expecting(outcome, *findings, match="exact", **members):
    return {"outcome": outcome, "match": match, "findings": list(findings), **members}


def finding(rule, severity="stop", **place):
    """A finding of a rule; places that are not known are left out."""
    return {"rule": rule, "severity": severity} | {name: at for name, at in place.items() if at is not None}


def folder_of(number, sentence):
    """Number and words, as many as have room in an id."""
    words = re.sub(r"[^a-z0-9]+", "-", sentence.lower()).strip("-")
    return f"{number:03}-{words if len(words) <= ROOM else words[:ROOM].rpartition('-')[0]}"


def about(area, number, row):
    """What a case says of itself; the digest is written by the kit."""
    beside = {name: FILES[name] for name in row.beside} or None
    more = {"reason": row.reason, "now": row.now, "beside": beside}
    return {
        "id": f"{area.name}/{folder_of(number, row.sentence)}",
        "title": row.sentence,
        "level": row.level,
        "spec": f"spec/{row.spec}",
        "since": "1.0",
        "input": area.file,
        "media_type": area.media_type,
        "task": area.task,
        **{name: said for name, said in more.items() if said is not None},
        "sha256": "",
    }


def lay(area):
    """Write an area anew."""
    shutil.rmtree(KIT / "cases" / area.name, ignore_errors=True)
    for number, row in enumerate(area.rows, 1):
        said = about(area, number, row)
        folder = KIT / "cases" / said["id"]
        folder.mkdir(parents=True)
        (folder / "case.json").write_text(written(said), "utf-8")
        (folder / "expected.json").write_text(written(row.expected), "utf-8")
        (folder / area.file).write_bytes(row.data)
        for name, data in row.beside.items():
            (folder / FILES[name]).write_bytes(data)
