"""Two prescriptions compared."""

from __future__ import annotations

from wellposed import norms
from wellposed.digests import digest
from wellposed.model.envelope import Envelope
from wellposed.model.prescription import Prescription
from wellposed.norms import Norms
from wellposed.revisions.clauses import Matched
from wellposed.revisions.facts import facts_changed
from wellposed.revisions.result import Comparison, Identity, Lineage
from wellposed.revisions.weighing import weighed


def compared(old: Prescription, new: Prescription, numbers: Norms | None = None) -> Comparison:
    """Two sound prescriptions clause by clause, and what the check makes of both.

    numbers  practice limits with a profile in place; the published ones by default
    """
    matched = Matched(old, new)
    changes = matched.changes()
    return Comparison(
        identity(old),
        identity(new),
        lineage(old, new),
        changes,
        facts_changed(old, new),
        matched.opposites(changes),
        weighed(old, new, matched.names, numbers or norms.load()),
    )


def identity(document: Envelope) -> Identity:
    """Which document it is."""
    name: str = vars(document)["format"]
    return Identity(name, document.id, document.revision, digest(document))


def lineage(old: Envelope, new: Envelope) -> Lineage:
    """Whether one document is the next revision of another."""
    return Lineage(
        same_id=old.id == new.id,
        next_one=new.revision == old.revision + 1,
        replaces=None if new.replaces is None else new.replaces == digest(old),
        same=digest(old) == digest(new),
    )
