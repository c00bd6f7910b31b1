"""The forms a document can be carried in: how they are found, and what reading and writing one gives.

A form is found through the entry-point group ``wellposed.formats``: its name to a ``Form``. Other packages add theirs
the same way. The JSON form is the program's own.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from importlib.metadata import entry_points
from types import MappingProxyType

from wellposed.findings import Finding
from wellposed.model.envelope import Envelope

GROUP = "wellposed.formats"


@dataclass(frozen=True, slots=True)
class Loss:
    """What could not be carried from one form to another.

    pointer  where it stands in the document that was to be carried (RFC 6901), or the place in the other form
    what     a short phrase for the kind of loss, such as ``no-place-for-it``; worded in ``wellposed.render``
    detail   names of members or columns, never their contents
    """

    pointer: str
    what: str
    detail: str = ""


@dataclass(frozen=True, slots=True)
class Carried:
    """One document as it was read from another form.

    document  None where findings stop it: then nothing of it is used
    findings  everything wrong, with line, column or cell in their facts; the rules and names of the JSON form
    losses    what the other form had that the document cannot hold, or the projection lacks
    """

    document: Envelope | None
    findings: tuple[Finding, ...] = ()
    losses: tuple[Loss, ...] = ()


@dataclass(frozen=True, slots=True)
class Written:
    """A document, or several, in another form, and what could not be carried into it."""

    data: bytes
    losses: tuple[Loss, ...] = ()


@dataclass(frozen=True, slots=True)
class Form:
    """A form documents can be carried in.

    name      as ``--from`` and ``--to`` take it
    words     what it is, in a line
    suffixes  of file names, with their dot; a file is never told by anything else, and never by its content
    many      whether one file can carry several documents
    read      bytes to documents, in their order; never raises for what is in the bytes; None: it is not read
    write     documents to bytes; refuses more than one unless ``many``; None: it is not written
    kinds     the ``format`` members of documents it can carry
    rules     its rules beside those of the catalogue, and in a line when each speaks
    """

    name: str
    words: str
    suffixes: tuple[str, ...]
    read: Callable[[bytes], tuple[Carried, ...]] | None
    write: Callable[[Sequence[Envelope]], Written] | None
    many: bool = False
    kinds: tuple[str, ...] = ("wellposed/prescription", "wellposed/setup", "wellposed/receipt", "wellposed/review")
    rules: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))


@cache
def forms() -> dict[str, Form]:
    """Every form that is installed, by its name, in the order of the names."""
    found = {entry.name: entry.load() for entry in entry_points(group=GROUP)}
    return dict(sorted(found.items()))
