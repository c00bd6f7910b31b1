"""What the check says of two revisions, and which conflicts came with the later one."""

from __future__ import annotations

from itertools import islice

from wellposed.findings import Finding
from wellposed.kinematics.explain import explained
from wellposed.kinematics.verdict import judge
from wellposed.model.prescription import Prescription
from wellposed.norms import Norms
from wellposed.revisions.meaning import GONE, Names
from wellposed.revisions.result import Weighed

Conflicts = list[tuple[frozenset[str], Finding]]
"""Each conflict by the clauses in it."""


def weighed(old: Prescription, new: Prescription, names: Names, numbers: Norms) -> Weighed:
    """Both verdicts; a conflict is the same where the same clauses take part in it, whatever their ids."""
    (before, was), (after, now) = _conflicts(old, numbers), _conflicts(new, numbers)
    renamed = [(frozenset(names.get(one, GONE + one) for one in key), found) for key, found in was]
    earlier, later = {key for key, _ in renamed}, {key for key, _ in now}
    return Weighed(
        before,
        after,
        tuple(found for key, found in now if key not in earlier),
        tuple(found for key, found in renamed if key not in later),
        tuple(found for key, found in now if key in earlier),
    )


def _conflicts(prescription: Prescription, numbers: Norms) -> tuple[str, Conflicts]:
    judgement = judge(prescription, numbers)
    found = islice(explained(prescription, judgement), len(judgement.conflicts))
    return judgement.verdict, [(frozenset(one.clauses), one) for one in found]
