"""A folder sorted into conversations: which documents belong together, and which line of orders they follow."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import datetime
from functools import cached_property
from typing import Any

from wellposed import norms
from wellposed.check import sound_document
from wellposed.digests import digest
from wellposed.model import Prescription, Receipt, Review, Setup
from wellposed.model.envelope import Answers, Envelope
from wellposed.norms import Norms
from wellposed.report import Report
from wellposed.revisions.result import Identity
from wellposed.rules.chart import Chart

_KINDS: tuple[type[Envelope], ...] = (Prescription, Receipt, Setup, Review)


@dataclass(frozen=True)
class Held:
    """A sound document at hand: the base names of its files, what it is, the document itself."""

    names: tuple[str, ...]
    identity: Identity
    document: Envelope

    @property
    def answers(self) -> tuple[Answers, ...]:
        """What it says it answers: of a review the setup, then the prescription."""
        found = (getattr(self.document, member, None) for member in ("answers", "prescription"))
        return tuple(one for one in found if one is not None)

    @property
    def issued(self) -> datetime:
        """When it was issued; the day is one of the calendar, or the document would not be sound."""
        return datetime.fromisoformat(self.document.issued)

    @property
    def case(self) -> str:
        """The id of the prescription it belongs to."""
        return self.document.id if isinstance(self.document, Prescription) else self.answers[-1].id


@dataclass(frozen=True, slots=True)
class Unread:
    """A file that holds no sound document: its base name, and the report on what is wrong with it."""

    name: str
    report: Report


def opened(files: Iterable[tuple[str, bytes]]) -> tuple[tuple[Held, ...], tuple[Unread, ...]]:
    """The sound documents in files, each once, and the files that hold none.

    files  base name and bytes of each
    """
    held: dict[str, Held] = {}
    unread = []
    for name, data in files:
        made = sound_document(data)
        if isinstance(made, Report):
            unread.append(Unread(name, made))
            continue
        key = digest(made)
        names = held[key].names if key in held else ()
        held[key] = Held((*names, name), Identity(vars(made)["format"], made.id, made.revision, key), made)
    return tuple(sorted(held.values(), key=_order)), tuple(unread)


def _order(one: Held) -> tuple[Any, ...]:
    kind = next(number for number, cls in enumerate(_KINDS) if isinstance(one.document, cls))
    return kind, one.identity.id, one.identity.revision, one.document.issued, one.identity.digest


@dataclass(frozen=True)
class Conversation:
    """All that is at hand of one case.

    id    that of its prescriptions
    held  its documents: prescriptions, receipts, setups, reviews, each by id and revision
    """

    id: str
    held: tuple[Held, ...]
    numbers: Norms = field(default_factory=norms.load)

    def figure(self, key: str) -> dict[str, Any]:
        """A number of the norms as a finding tells it."""
        return Chart(self.orders[-1], self.numbers).figure(key)

    @cached_property
    def line(self) -> tuple[Held, ...]:
        """The prescriptions followed, one a revision, oldest first.

        Of two different ones of a revision the one that the next replaces is followed; where nothing tells, none.
        """
        found: list[Held] = []
        for revision in sorted({one.identity.revision for one in self._prescriptions}, reverse=True):
            rivals = [one for one in self._prescriptions if one.identity.revision == revision]
            named = [one for one in rivals if found and _replaces(found[-1]) == one.identity.digest]
            found += named or (rivals if len(rivals) == 1 else [])
        return tuple(reversed(found))

    @property
    def orders(self) -> tuple[Prescription, ...]:
        """The documents of the line."""
        return tuple(one.document for one in self.line if isinstance(one.document, Prescription))

    @property
    def _prescriptions(self) -> list[Held]:
        return [one for one in self.held if isinstance(one.document, Prescription)]

    def answering(self, order: Held) -> Iterator[tuple[Held, Setup]]:
        """The setups that answer exactly this prescription: revision after revision, of several ids by their issue."""
        for one in sorted(self.held, key=self._followed_at):
            if isinstance(one.document, Setup) and one.answers[0].sha256 == order.identity.digest:
                yield one, one.document

    def _followed_at(self, one: Held) -> tuple[datetime, str, int]:
        """A place in time in which no document stands before an earlier revision of its own."""
        name, revision = one.identity.id, one.identity.revision
        before = (was for was in self.held if type(was.document) is type(one.document) and was.identity.id == name)
        return max(was.issued for was in before if was.identity.revision <= revision), name, revision


def _replaces(one: Held) -> str | None:
    return one.document.replaces


def conversations(held: Iterable[Held], numbers: Norms | None = None) -> tuple[Conversation, ...]:
    """The documents by the case they belong to, by its id."""
    cases: dict[str, list[Held]] = {}
    for one in held:
        cases.setdefault(one.case, []).append(one)
    return tuple(Conversation(name, tuple(cases[name]), numbers or norms.load()) for name in sorted(cases))
