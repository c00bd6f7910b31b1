"""Whose doing it is that a clause is not met: another setup could have met it, or none could."""

from __future__ import annotations

from dataclasses import replace

from wellposed.kinematics.judgement import Conflict, Judgement
from wellposed.kinematics.rows import Key
from wellposed.review.reach import Reach
from wellposed.review.result import Doing, Reviewed, Unasked
from wellposed.review.silence import silent_key


def with_doing(judgement: Judgement, reach: Reach, one: Reviewed) -> Reviewed:
    """The same, with whose doing it is, where the clause is not met."""
    if one.outcome not in ("not-met", "beyond"):
        return one
    found = [conflict for conflict in _conflicts(judgement) if any(_of(key, one.id) for key in conflict.members)]
    if not found:
        return replace(one, doing="setup")
    against = dict.fromkeys(_named(key) for conflict in found for key in conflict.members if not _of(key, one.id))
    return replace(one, doing=_whose(judgement, found), against=tuple(against), nearer=reach.nearer(one))


def broken_by(judgement: Judgement, reach: Reach, one: Unasked) -> Unasked:
    """The same, with whose doing it is that this silence is broken; the setup's, where it need not have been."""
    key = silent_key(one)
    owned = [c for c in _conflicts(judgement) if key in c.members or (one.owner and _has(c, one.owner))]
    spared = reach.spared(one) if owned else one.beyond
    if spared >= one.beyond - one.tolerance:
        return one
    return replace(one, doing=_whose(judgement, owned), nearer=spared if spared > one.tolerance else 0.0)


def _conflicts(judgement: Judgement) -> list[Conflict]:
    """What no setup, or none within practice limits, can meet; a preference that has to give way too."""
    return [*judgement.conflicts, *(conflict for _, conflict in judgement.preferences)]


def _whose(judgement: Judgement, found: list[Conflict]) -> Doing:
    """A proof, or a practice limit that would have to be passed, is the prescription's; the rest is open."""
    certain = judgement.verdict == "beyond-practice" or any(conflict.proven for conflict in found)
    preferred = any(conflict in found for _, conflict in judgement.preferences)
    return "prescription" if certain or preferred else "either"


def _has(conflict: Conflict, clause_id: str) -> bool:
    return any(_of(key, clause_id) for key in conflict.members)


def _of(key: Key, clause_id: str) -> bool:
    return isinstance(key, tuple) and key[0] == "clause" and key[1] == clause_id


def _named(key: Key) -> str:
    """A clause by its id; a silence, a state or a practice limit by its parts."""
    if not isinstance(key, tuple):
        return str(key)
    return str(key[1]) if key[0] == "clause" else " ".join(str(part) for part in key)
