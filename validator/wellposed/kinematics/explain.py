"""A judgement as findings: plain data, still without a sentence."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import ceil, floor, inf
from typing import Any

from wellposed.findings import Finding, Severity
from wellposed.kinematics.repair import Repair
from wellposed.kinematics.rows import Key, Kind
from wellposed.kinematics.judgement import Conflict, Judgement, Range, WayOut
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.motions import MOTIONS

_ROLE = {
    Kind.DEMAND: "asked",
    Kind.SILENCE: "unsaid",
    Kind.KEEP: "kept",
    Kind.CEILING: "allowed",
    Kind.FIXED: "fixed",
    Kind.LIMIT: "usual",
}
_SECTIONS = ("goals", "keep", "movements", "allow", "exclude", "expect", "attachments", "findings")


class Places:
    """Where each clause stands: id to pointer and clause."""

    def __init__(self, prescription: Prescription) -> None:
        self.prescription = prescription
        self.pointers: dict[str, str] = {}
        self.clauses: dict[str, Any] = {}
        for section in _SECTIONS:
            for number, item in enumerate(getattr(prescription, section) or ()):
                self.pointers[item.id] = f"/{section}/{number}"
                self.clauses[item.id] = item
        if prescription.staging:
            self.pointers[prescription.staging.id] = "/staging"
            self.clauses[prescription.staging.id] = prescription.staging
        self.order = {clause_id: number for number, clause_id in enumerate(self.pointers)}

    def pointer(self, clause_id: str) -> str:
        """RFC 6901 pointer of a clause."""
        return self.pointers.get(clause_id, "")

    def sorted(self, ids: set[str]) -> tuple[str, ...]:
        """Clause ids in document order."""
        return tuple(sorted(ids, key=lambda clause_id: self.order.get(clause_id, 0)))


def explained(prescription: Prescription, judgement: Judgement) -> Iterator[Finding]:
    """The findings of a judgement."""
    places = Places(prescription)
    for conflict in judgement.conflicts:
        yield _conflict(places, judgement, conflict)
    for clause_id, conflict in judgement.preferences:
        yield _of(places, "preference-not-met", Severity.NOTE, conflict, places.pointer(clause_id))
    for arch, conflict in judgement.space_left:
        yield _of(places, "space-left-over", Severity.ASK, conflict, "", arch=arch)
    yield from _unmet(places, judgement)
    yield from _notes(places, judgement)


def _conflict(places: Places, judgement: Judgement, conflict: Conflict) -> Finding:
    if judgement.verdict == "beyond-practice":
        return _of(places, "beyond-practice", Severity.ASK, conflict)
    if conflict.unsaid:
        return _of(places, "means-not-said", Severity.ASK, conflict)
    if judgement.verdict == "undecided" or judgement.depends_on:
        depends = list(judgement.depends_on)
        return _of(places, "too-close-to-tell", Severity.ASK, conflict, depends_on=depends)
    return _of(places, "cannot-hold-together", Severity.STOP, conflict)


def _of(
    places: Places, rule: str, severity: Severity, conflict: Conflict, pointer: str | None = None, **more: Any
) -> Finding:
    named = {str(key[1]) for key in conflict.members if isinstance(key, tuple) and key[0] == "clause"}
    clauses = places.sorted(named)
    where = pointer if pointer is not None else _first(places, conflict, clauses)
    facts = {
        "said_alone": conflict.said_alone,
        "members": [_member(places, key, kind) for key, kind in _in_order(places, conflict)],
        "ways_out": [_way(places, way) for way in sorted(conflict.ways_out, key=_rank)],
        **more,
    }
    return Finding(rule, severity, where, facts, clauses)


_GROUPS = (
    "reduction",
    "incisor-out",
    "incisor-vertical",
    "canine-vertical",
    "posterior-vertical",
    "along",
    "side-out",
)


def _rank(way: WayOut) -> tuple[int, int]:
    """What was asked, kept and allowed gives way first in the list, then what was not mentioned; undone comes last."""
    key = way.repair.member
    if way.repair.what == "leave-undone":
        return 9, 0
    if not isinstance(key, tuple) or key[0] != "silence":
        return _WEIGHT.get(way.repair.what, 3), 0
    return 4, _GROUPS.index(key[2]) if key[2] in _GROUPS else len(_GROUPS)


_WEIGHT = {"lower-floor": 0, "raise-ceiling": 1, "widen-tolerance": 2}


def _first(places: Places, conflict: Conflict, clauses: tuple[str, ...]) -> str:
    """The place of the first demand, else of the first clause."""
    for key, kind in conflict.kinds.items():
        if kind == Kind.DEMAND and isinstance(key, tuple) and key[0] == "clause":
            return places.pointer(str(key[1]))
    return places.pointer(clauses[0]) if clauses else ""


def _in_order(places: Places, conflict: Conflict) -> list[tuple[Key, Kind]]:
    rank = {Kind.DEMAND: 0, Kind.KEEP: 1, Kind.CEILING: 2, Kind.FIXED: 3, Kind.LIMIT: 4, Kind.SILENCE: 5}
    return sorted(conflict.kinds.items(), key=lambda item: (rank[item[1]], _place(places, item[0])))


def _place(places: Places, key: Key) -> tuple[int, str]:
    if isinstance(key, tuple) and key[0] == "clause":
        return places.order.get(str(key[1]), 0), str(key)
    return 0, str(key)


def _member(places: Places, key: Key, kind: Kind) -> dict[str, Any]:
    assert isinstance(key, tuple)
    fact: dict[str, Any] = {"role": _ROLE[kind], "of": key[0]}
    match key:
        case ("clause", clause_id, part):
            return fact | {
                "clause": clause_id,
                "part": part,
                "pointer": places.pointer(clause_id),
                **_said(places, clause_id),
            }
        case ("silence", arch, group):
            return fact | {"arch": arch, "group": group}
        case ("state", tooth, *_):
            return fact | {"tooth": tooth, "states": list(_states(places, str(tooth)))}
        case ("practice", norm, place):
            return fact | {"norm": norm, "place": place}
        case ("space", arch):
            return fact | {"arch": arch}
    return fact


def _said(places: Places, clause_id: str) -> dict[str, Any]:
    """The clause itself, as it stands in the document."""
    item = places.clauses.get(clause_id)
    return {"said": item.model_dump(exclude_none=True, mode="json")} if item is not None else {}


def _states(places: Places, tooth: str) -> tuple[str, ...]:
    for entry in places.prescription.teeth.particulars or ():
        if entry.tooth == tooth:
            return entry.states
    return ()


def _way(places: Places, way: WayOut) -> dict[str, Any]:
    repair = way.repair
    fact: dict[str, Any] = {
        "what": repair.what,
        "amount": way.amount,
        "low": way.low,
        "high": None if way.high == inf else way.high,
        "by": list(way.by),
        "unit": repair.unit,
        "beyond_practice": way.beyond_practice,
        "irreversible": repair.irreversible,
        **{name: list(value) if isinstance(value, tuple) else value for name, value in repair.facts},
        **(_said(places, str(dict(repair.facts).get("clause", "")))),
    }
    if repair.use:
        fact["use"] = repair.use
    if isinstance(repair.member, tuple) and repair.member[0] == "practice":
        fact |= {"norm": repair.member[1], "place": repair.member[2]}
    patch = _patch(places, repair, way.amount)
    return fact | ({"patch": patch} if patch else {})


def up(value: float) -> float:
    """The next hundredth that is not less."""
    return ceil(value * 100 - 1e-4) / 100


def down(value: float) -> float:
    """The next hundredth that is not more."""
    return floor(value * 100 + 1e-4) / 100


def _patch(places: Places, repair: Repair, amount: float) -> list[dict[str, Any]]:
    """RFC 6902 operations that make the repair; none where it takes words of the prescriber's own."""
    facts = dict(repair.facts)
    if repair.what == "allow":
        return _added(places, repair.use, facts, up(amount), repair.unit)
    clause_id = facts.get("clause", "")
    item, pointer = places.clauses.get(clause_id), places.pointer(clause_id)
    if item is None:
        return []
    if repair.what == "give-up":
        return [{"op": "remove", "path": pointer}]
    member = _bound_member(repair, facts, item)
    value = getattr(item, member, None) if member else None
    if not member or value is None:
        return []
    changed = (
        value + ceil(amount - 1e-6)
        if repair.whole
        else down(value - amount)
        if _lowers(repair)
        else up(value + amount)
    )
    return [{"op": "replace", "path": f"{pointer}/{member}", "value": changed}]


def _lowers(repair: Repair) -> bool:
    return repair.what == "lower-floor"


def _bound_member(repair: Repair, facts: Mapping[str, Any], item: Any) -> str:
    if repair.what == "lower-floor":
        return "at_least"
    if repair.what == "widen-tolerance":
        return "within"
    if repair.what == "more-aligners":
        return "most_aligners"
    if repair.what != "raise-ceiling":
        return ""
    part = str(facts.get("part", ""))
    if part in ("per-contact", "in-all"):
        return part.replace("-", "_")
    return "at_most" if hasattr(item, "at_most") else "up_to"


def _added(
    places: Places, use: str, facts: Mapping[str, Any], amount: float, unit: str
) -> list[dict[str, Any]]:
    bodies = list(_allowances(use, facts, amount, unit))
    present = places.prescription.allow
    fresh = (f"added-{n}" for n in range(1, 999) if f"added-{n}" not in places.clauses)
    clauses = [{"id": next(fresh), **body} for body in bodies]
    if present is None:
        return [{"op": "add", "path": "/allow", "value": clauses}]
    return [{"op": "add", "path": "/allow/-", "value": clause} for clause in clauses]


def _allowances(use: str, facts: Mapping[str, Any], amount: float, unit: str) -> Iterator[dict[str, Any]]:
    arch, teeth = facts.get("arch"), list(facts.get("teeth", ()))
    if use == "enamel-reduction":
        yield {"use": use, "contacts": list(facts["contacts"]), "in_all": amount, "unit": unit}
    elif use in ("incisor-advance", "incisor-retraction"):
        yield {"use": use, "arch": arch, "up_to": amount, "unit": unit}
    elif use in ("distal-movement", "mesial-movement"):
        yield {"use": use, "arch": arch, "teeth": teeth, "up_to": amount, "unit": unit}
    elif use in ("intrusion", "extrusion"):
        yield {"use": use, "teeth": teeth, "up_to": amount, "unit": unit}
    elif use == "posterior-open-bite":
        yield {"use": use, "up_to": amount, "unit": unit}
    else:
        for motion in {"widening": ("buccal",), "narrowing": ("lingual",), "slide": ("mesial", "distal")}.get(
            use, (use,)
        ):
            assert motion in MOTIONS
            yield {"use": "movement", "motion": motion, "teeth": teeth, "up_to": amount, "unit": unit}


# what is not a conflict


def _unmet(places: Places, judgement: Judgement) -> Iterator[Finding]:
    for lack in judgement.unmet:
        rule = "baseline-missing" if lack.measure else "measure-without-teeth"
        facts: dict[str, Any] = {"measure": lack.measure} if lack.measure else {}
        facts |= _said(places, lack.clause_id)
        yield Finding(rule, Severity.ASK, places.pointer(lack.clause_id), facts, (lack.clause_id,))


def _notes(places: Places, judgement: Judgement) -> Iterator[Finding]:
    if judgement.extraction_open:
        ids = [
            clause.id
            for clause in places.prescription.allow or ()
            if getattr(clause, "use", "") == "extraction"
        ]
        yield Finding("extraction-not-decided", Severity.ASK, places.pointer(ids[0]), {}, tuple(ids))
    if judgement.shortfall > 0:
        yield Finding("small-shortfall", Severity.NOTE, "", {"amount": judgement.shortfall, "unit": "mm"})
    if judgement.forced:
        yield Finding(
            "what-it-forces", Severity.NOTE, "", {"ranges": [_range(places, r) for r in judgement.forced]}
        )
    if judgement.already_met:
        yield Finding("goals-already-met", Severity.NOTE, "/goals")
    for clause_id in judgement.leans_on:
        facts = _said(places, clause_id)
        yield Finding("leans-on-expectation", Severity.NOTE, places.pointer(clause_id), facts, (clause_id,))
    if judgement.assumed:
        told = [{"what": assumption.what, "where": assumption.where} for assumption in judgement.assumed]
        yield Finding("taken-as-so", Severity.NOTE, "", {"assumed": told})


def _range(places: Places, found: Range) -> dict[str, Any]:
    return {
        "clause": found.clause_id,
        "pointer": places.pointer(found.clause_id),
        "what": found.what,
        **_said(places, found.clause_id),
        "least": None if abs(found.least) == inf else found.least,
        "most": None if abs(found.most) == inf else found.most,
        "unit": found.unit,
    }
