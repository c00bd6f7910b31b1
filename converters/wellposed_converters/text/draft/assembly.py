"""Parts put together: ids, clauses that belong in one entry, and what cannot stand together."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from wellposed.vocabulary.motions import MOTIONS, VARIABLE_UNITS, Variable
from wellposed.vocabulary.teeth import arch_of
from wellposed_converters.text.draft.part import NotCarried, Part

LISTS: Final = (
    "conditions", "findings", "problems", "goals", "keep", "movements", "allow", "exclude", "attachments", "appliance",
    "process", "retention", "notes",
)  # fmt: skip
"""The sections that are lists, in the order of the format."""
NAMELESS: Final = frozenset(("conditions", "notes", "particulars", "absent", "patient", "treat"))
"""Sections whose entries have no id."""


@dataclass(frozen=True)
class Entry:
    """An entry of the document so far: the part, its id, and the clauses it comes from."""

    part: Part
    id: str | None
    clauses: tuple[int, ...]

    def also(self, at: int, part: Part) -> Entry:
        """The entry with another clause in it."""
        new = tuple(one for one in part.assumed if one not in self.part.assumed)
        kept = replace(part, assumed=(*self.part.assumed, *new), because=tuple({*self.part.because, *part.because}))
        return replace(self, part=kept, clauses=tuple(dict.fromkeys((*self.clauses, at))))


OVERCORRECTED: Final[dict[str, Variable]] = {"rotation": "rotation", "tip": "tip", "inclination": "torque"}

Entries = tuple[Entry, ...]
Joiner = Callable[[Part, Part], Part | None]


def added(entries: Entries, parts: Iterable[Part], at: int) -> Entries:
    """The entries with those of a clause. :raises NotCarried: when one of them cannot stand beside what is there."""
    number = 0
    for part in parts:
        joined = _joined(entries, part, at)
        if joined is not None:
            entries = joined
            continue
        named = part.section not in NAMELESS
        number += named
        name = (f"c{at + 1}" if number == 1 else f"c{at + 1}.{number}") if named else None
        entries = (*entries, Entry(part, name, (at,)))
    return entries


def _joined(entries: Entries, part: Part, at: int) -> Entries | None:
    """The entries with the part joined to one of them; ``None`` if it stands by itself."""
    for place, entry in enumerate(entries):
        one = entry.part
        if one.section == part.section and (one.value, one.open, one.fill) == (part.value, part.open, part.fill):
            return (*entries[:place], entry.also(at, part), *entries[place + 1 :])
        joiner = JOINERS.get(part.section)
        both = joiner(one, part) if joiner else None
        if both is not None:
            both = replace(
                both, open=tuple(dict.fromkeys(name for name in (*one.open, *part.open) if name not in both.value))
            )
            return (*entries[:place], entry.also(at, replace(both, assumed=part.assumed)), *entries[place + 1 :])
    if part.section == "overcorrection":
        raise NotCarried("nothing-to-overcorrect")
    return None


def _reduction(one: Part, part: Part) -> Part | None:
    """Amounts per contact and in all of the same contacts are one allowance; other overlaps are asked about."""
    if one.section != "allow" or {one.value["use"], part.value["use"]} != {"enamel-reduction"}:
        return None
    place = [(entry.value.get("contacts"), entry.value.get("arch")) for entry in (one, part)]
    if place[0] != place[1]:
        if _overlap(one.value, part.value):
            raise NotCarried("reduction-said-twice")
        return None
    return part.with_(**_merged(one.value, part.value))


def _overlap(one: Mapping[str, Any], other: Mapping[str, Any]) -> bool:
    """Whether two reductions share a contact; an arch meets every contact in it."""
    if "arch" in one or "arch" in other:
        return bool(_arches(one) & _arches(other))
    return bool(set(one["contacts"]) & set(other["contacts"]))


def _arches(value: Mapping[str, Any]) -> set[str]:
    return {value["arch"]} if "arch" in value else {arch_of(contact[:2]) for contact in value["contacts"]}


def _merged(one: Mapping[str, Any], other: Mapping[str, Any]) -> dict[str, Any]:
    if any(one[name] != other[name] for name in one.keys() & other.keys()):
        raise NotCarried("said-otherwise")
    return {**one, **other}


def _width(one: Part, part: Part) -> Part | None:
    """Two findings of one spacing or crowding at different contacts are asked about: a measure has one value."""
    if one.section == "findings" and "contacts" in part.value and one.value.get("measure") == part.value["measure"]:
        raise NotCarried("said-otherwise")
    return None


def _tooth(one: Part, part: Part) -> Part | None:
    """All states of a tooth are one entry."""
    if one.section != "particulars" or one.value["tooth"] != part.value["tooth"]:
        return None
    states = list(dict.fromkeys((*one.value["states"], *part.value["states"])))
    return part.with_(states=states)


def _row(one: Part, part: Part) -> Part | None:
    """All that is said of the row of aligners is one entry."""
    if one.section != "staging":
        return None
    steps = [*one.value.get("largest_steps", ()), *part.value.get("largest_steps", ())]
    rest = [{name: value for name, value in entry.value.items() if name != "largest_steps"} for entry in (one, part)]
    places = [(step["variable"], tuple(step.get("teeth", ()))) for step in steps]
    if len(set(places)) != len(places):
        raise NotCarried("said-otherwise")
    return Part("staging", _merged(*rest) | ({"largest_steps": steps} if steps else {}))


def _one_answer(one: Part, part: Part) -> Part | None:
    """The arches treated, and each fact of the patient, are said in one way."""
    return part.with_(**_merged(one.value, part.value)) if one.section == part.section else None


def _further(one: Part, part: Part) -> Part | None:
    """An overcorrection belongs to the one movement it is of; of a rotation also to teeth turned into line."""
    variable = OVERCORRECTED.get(part.value["of"] or "")
    if "overcorrection" in one.value or variable is None:
        return None
    if one.section == "movements":
        fits = one.value["teeth"] == part.value["teeth"] and MOTIONS[one.value["motion"]].variable == variable
    else:
        turned = variable == "rotation" and any(rule == "derotated-is-in-line" for _, rule in one.assumed)
        fits = turned and one.value.get("align") == part.value["teeth"]
    right = part.value["quantity"]["unit"] in (
        VARIABLE_UNITS[variable],
        *(("percent",) if "motion" in one.value else ()),
    )
    return one.with_(overcorrection=part.value["quantity"]) if fits and right else None


def _rest(one: Part, part: Part) -> Part | None:
    """What holds for all other teeth is said once."""
    if one.section == "attachments" and "otherwise" in one.value and "otherwise" in part.value:
        raise NotCarried("said-otherwise")
    return None


JOINERS: Final[dict[str, Joiner]] = {
    "allow": lambda one, part: _reduction(one, part) if "use" in one.value and "use" in part.value else None,
    "findings": _width,
    "particulars": _tooth,
    "staging": _row,
    "treat": _one_answer,
    "patient": _one_answer,
    "overcorrection": _further,
    "attachments": _rest,
}
