"""Parts of a prescription and their members in words, for one line of a comparison."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any

from wellposed.model.base import Part
from wellposed.model.clauses import Reach
from wellposed.model.findings import Finding, Problem, ToothFinding
from wellposed.model.making import ProcessStep
from wellposed.model.means import Expectation
from wellposed.render import phrases
from wellposed.render.amounts import amount, change, value
from wellposed.render.filled import joined
from wellposed.render.phrases import contacts
from wellposed.render.readback.measured import measure
from wellposed.render.readback.terms import gloss, plain
from wellposed.render.readback.words import quoted
from wellposed.render.review.clause_words import in_words
from wellposed.render.sides import sided
from wellposed.revisions.result import ClauseChange, Identity, Item, Lineage, Member
from wellposed.vocabulary.teeth import TEETH

__all__ = ["HEADINGS", "clause_name", "identity", "lineage", "member", "part", "turns"]

HEADINGS: Mapping[str, str] = MappingProxyType(
    {
        "reversed": "Turned round",
        "dropped": "Dropped",
        "added": "Added",
        "tightened": "Tightened: fewer plans will do",
        "loosened": "Loosened: more plans will do",
        "changed": "Changed otherwise",
        "reworded": "Said in another way, and meaning the same",
        "unchanged": "Unchanged",
    }
)
"""What became of a clause, as the heading it stands under."""

_NAMES = {
    "at_least": "at least",
    "at_most": "at most",
    "per_contact": "at a contact",
    "in_all": "in all",
    "up_to": "up to",
    "must_not": "must not",
    "prefer_not": "preferably not",
    "because": "answers",
    "most_aligners": "most aligners",
    "wear_interval_days": "days of wear",
    "largest_steps": "largest steps",
    "close_arch": "close arch",
    "tooth_measure": "measure",
    "jaw_position": "jaw position",
}
_ENDS = {"at_least": "from", "at_most": "to"}
_TURNS = {"more": "more", "less": "less", "both": "more in one part and less in another"}


def part(one: Part) -> str:
    """A clause, finding or problem, without its id; what is only wished for says so."""
    if isinstance(one, Finding):
        return f"{measure(one.measure, one.pair)} {_measured(one.measure, one.value, one.unit)}"
    if isinstance(one, ToothFinding):
        told = (f"{tooth} {_measured(one.tooth_measure, size, one.unit)}" for tooth, size in one.values.items())
        return f"{measure(one.tooth_measure)}: {', '.join(told)}"
    if isinstance(one, Problem):
        return " ".join(filter(None, (one.grade, one.arch, one.side, plain(one.problem))))
    if isinstance(one, ProcessStep):
        return gloss(one.step) + (f" of {phrases.teeth(one.teeth)}" if one.teeth else "")
    wish = "preferably: " if getattr(one, "strength", None) == "prefer" else ""
    return wish + in_words(one)


def _measured(name: str, size: float, unit: str) -> str:
    return value(name, size, unit) if unit != "percent" else amount(size, unit)


def clause_name(change: ClauseChange) -> str:
    """Its id, or both where it has another now."""
    before, after = (item.id if item else None for item in (change.before, change.after))
    return f"{before} → {after}" if before and after and before != after else str(after or before)


def turns(change: ClauseChange) -> str:
    """``asks more and opens less``; nothing where neither changed."""
    told = [f"asks {_TURNS[change.asks]}"] if change.asks in _TURNS else []
    told += [f"opens {_TURNS[change.opens]}"] if change.opens in _TURNS else []
    return joined(told)


def member(one: Member, change: ClauseChange) -> str:
    """``at most: 4.0 mm → 3.0 mm``."""
    before, after = (
        _told(one.name, said, item) for said, item in ((one.before, change.before), (one.after, change.after))
    )
    return f"{_name(one.name, change.item)}: {before} → {after}"


def _name(name: str, item: Item) -> str:
    """What a member is called; of bounds that lie to two sides, or of a change, where they begin and end."""
    if isinstance(item.part, Expectation) or (isinstance(item.part, Reach) and sided(item.part.measure)):
        name = _ENDS.get(name, name)
    return _NAMES.get(name, plain(name.replace("_", "-")))


def _told(name: str, said: Any, item: Item | None) -> str:
    """A JSON value as it stands in a part; its unit is that of the part."""
    if said is None:
        return "not stated"
    if isinstance(said, bool | int):
        return str(said)
    if isinstance(said, float):
        return _size(said, name, item)
    if isinstance(said, str):
        return quoted(said) if name in ("words", "method") else plain(said)
    if isinstance(said, list):
        return _listed(said)
    return _object(said)


def _size(said: float, name: str, item: Item | None) -> str:
    """An amount of a part; of a measure its value, or its change, with what its sign means."""
    one = item.part if item else None
    unit = getattr(one, "unit", None) or "1"
    if isinstance(one, Expectation):
        return change(one.measure, said, unit)
    if isinstance(one, Finding | Reach) and name in ("value", "at_least", "at_most"):
        return _measured(one.measure, said, unit)
    return amount(said, unit)


def _listed(said: list[Any]) -> str:
    if not said:
        return "none"
    if all(isinstance(one, str) for one in said):
        return contacts(said) if "-" in said[0] and said[0][:2] in TEETH else " ".join(said)
    return "; ".join(_object(one) for one in said)


def _object(said: Mapping[str, Any]) -> str:
    """An amount, a step, an order of two clauses, or values by tooth."""
    if "relation" in said:
        return f"{said['first']} {plain(said['relation'])} {said['then']}"
    if "amount" in said:
        teeth = f" of {' '.join(said['teeth'])}" if said.get("teeth") else ""
        return f"{said['variable']}{teeth} {amount(said['amount'], said['unit'])}"
    if "value" in said:
        return amount(said["value"], said["unit"])
    return ", ".join(f"{name} {size:g}" for name, size in said.items())


# documents


def identity(one: Identity) -> str:
    """``HR-2031, revision 2``."""
    return f"{one.id}, revision {one.revision}"


def lineage(one: Lineage, old: Identity, new: Identity) -> str:
    """Whether the new document is the next revision of the old one, and if not, why not."""
    if one.same:
        return "Both are the same document."
    if one.follows:
        return "It is the next revision: its number and the digest it replaces agree."
    return f"It is not shown to be the next revision: {joined(list(_doubts(one, old, new)))}."


def _doubts(one: Lineage, old: Identity, new: Identity) -> Iterable[str]:
    if not one.same_id:
        yield f"the ids differ ({old.id}, {new.id})"
    if not one.next_one:
        yield f"revision {new.revision} does not come next after revision {old.revision}"
    if one.replaces is None:
        yield "it says that it replaces nothing"
    elif not one.replaces:
        yield "the digest it replaces is that of another document"
