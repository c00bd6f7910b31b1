"""What a comparison has to say, as plain ordered data; the words are made in ``wellposed.render``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from wellposed.findings import Finding
from wellposed.model.base import Part

Change = Literal[
    "unchanged",
    "reworded",
    "tightened",
    "loosened",
    "reversed",
    "changed",
    "added",
    "dropped",
]
CHANGES: tuple[Change, ...] = (
    *("reversed", "dropped", "added", "tightened", "loosened", "changed"),
    *("reworded", "unchanged"),
)
"""In the order in which they are told."""

Turn = Literal["same", "more", "less", "both"]
"""Of what is asked or opened: as before, more, less, or more in one part and less in another."""

MIRRORED: dict[str, str] = {
    "added": "dropped",
    "dropped": "added",
    "tightened": "loosened",
    "loosened": "tightened",
    "more": "less",
    "less": "more",
}
"""What becomes of a change or a turn when old and new trade places; what is not named stays as it is."""


@dataclass(frozen=True, slots=True)
class Item:
    """A part of a prescription that is compared as one: its section, where it stands, its id, the part itself."""

    section: str
    pointer: str
    id: str
    part: Part


@dataclass(frozen=True, slots=True)
class Member:
    """One member that differs: as it stood and as it stands, JSON values; None: not stated."""

    name: str
    before: Any
    after: Any


@dataclass(frozen=True, slots=True)
class ClauseChange:
    """One clause, finding or problem over two revisions.

    before, after  the part in each; None where it is not there
    asks           whether it asks more or less of a plan than before
    opens          whether it opens more or less
    members        what differs, member by member; ids in references are those of each document
    reused         its id named something else in the other revision
    """

    change: Change
    before: Item | None
    after: Item | None
    asks: Turn = "same"
    opens: Turn = "same"
    members: tuple[Member, ...] = ()
    reused: bool = False

    @property
    def item(self) -> Item:
        """The part as it stands in the new revision, else as it stood in the old one."""
        item = self.after or self.before
        assert item is not None
        return item

    @property
    def section(self) -> str:
        """The section it stands in, the new one where it moved."""
        return self.item.section


@dataclass(frozen=True, slots=True)
class FactChange:
    """A fact without an id of its own that was added, dropped or changed.

    section  ``treat``, ``patient``, ``teeth``, ``conditions`` and the like
    what     a member, a tooth or a condition; "" for the section as a whole
    before, after  JSON values; both None where the values of the section are never told
    """

    section: str
    what: str
    change: Literal["added", "dropped", "changed"]
    before: Any = None
    after: Any = None


@dataclass(frozen=True, slots=True)
class Opposite:
    """Two clauses of which one says the opposite of the other: ids in the old and in the new revision."""

    before: str
    after: str


@dataclass(frozen=True, slots=True)
class Identity:
    """Which document this is."""

    format: str
    id: str
    revision: int
    digest: str


@dataclass(frozen=True, slots=True)
class Lineage:
    """Whether the new document is the next revision of the old one.

    same_id     both have one id
    next_one    the new revision's number is one above the old one's
    replaces    whether ``replaces`` is the digest of the old one; None where the new one replaces nothing
    same        both are one document, byte for byte in canonical form
    """

    same_id: bool
    next_one: bool
    replaces: bool | None
    same: bool

    @property
    def follows(self) -> bool:
        """Whether nothing speaks against it."""
        return self.same_id and self.next_one and self.replaces is True


@dataclass(frozen=True, slots=True)
class Weighed:
    """What the check says of both.

    before, after  verdicts
    introduced     conflicts of the new one between clauses that did not conflict before, as findings of the new one
    settled        conflicts of the old one that are gone, as findings of the old one
    standing       conflicts that were there before
    """

    before: str
    after: str
    introduced: tuple[Finding, ...] = ()
    settled: tuple[Finding, ...] = ()
    standing: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two prescriptions, clause by clause in the order of the new one, what was dropped at its place in the old."""

    old: Identity
    new: Identity
    lineage: Lineage
    clauses: tuple[ClauseChange, ...]
    facts: tuple[FactChange, ...]
    opposites: tuple[Opposite, ...]
    weighed: Weighed

    def of(self, change: Change) -> tuple[ClauseChange, ...]:
        """The clauses that changed so."""
        return tuple(one for one in self.clauses if one.change == change)

    def counts(self) -> dict[str, int]:
        """How many clauses changed how, in the order of ``CHANGES``."""
        return {change: len(self.of(change)) for change in CHANGES}
