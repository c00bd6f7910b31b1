"""A judgement as findings: plain data, still without a sentence."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import Any

from wellposed.findings import Finding, Severity
from wellposed.kinematics.judgement import Conflict, Judgement, Range, WayOut
from wellposed.kinematics.patches import patch
from wellposed.kinematics.places import Places
from wellposed.kinematics.rows import Key, Kind
from wellposed.model.prescription import Prescription

_ROLE = {
    Kind.DEMAND: "asked",
    Kind.SILENCE: "unsaid",
    Kind.KEEP: "kept",
    Kind.BAN: "excluded",
    Kind.CEILING: "allowed",
    Kind.FIXED: "fixed",
    Kind.LIMIT: "usual",
}


def explained(prescription: Prescription, judgement: Judgement) -> Iterator[Finding]:
    """The findings of a judgement."""
    places = Places(prescription)
    for conflict in judgement.conflicts:
        yield _conflict(places, judgement, conflict)
    for clause_id, conflict in judgement.preferences:
        pointer = places.pointer(clause_id)
        yield _of(places, "preference-not-met", Severity.NOTE, conflict, pointer, wish=clause_id)
    for arch, conflict in judgement.space_left:
        yield _of(places, "space-left-over", Severity.ASK, conflict, "", arch=arch)
    yield from _unmet(places, judgement)
    yield from _notes(places, judgement)


def _conflict(places: Places, judgement: Judgement, conflict: Conflict) -> Finding:
    if judgement.extraction_open:
        return _of(places, "extraction-not-decided", Severity.ASK, conflict)
    if Kind.LIMIT in conflict.kinds.values():
        return _of(places, "beyond-practice", Severity.ASK, conflict)
    if conflict.unsaid:
        turns: dict[str, Any] = {} if conflict.proven else {"depends_on": list(judgement.depends_on)}
        return _of(places, "means-not-said", Severity.ASK, conflict, **turns)
    if conflict.proven:
        return _of(places, "cannot-hold-together", Severity.STOP, conflict)
    return _of(places, "too-close-to-tell", Severity.ASK, conflict, depends_on=list(judgement.depends_on))


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
    rank = {Kind.DEMAND: 0, Kind.KEEP: 1, Kind.BAN: 1, Kind.CEILING: 2, Kind.FIXED: 3, Kind.LIMIT: 4, Kind.SILENCE: 5}
    return sorted(conflict.kinds.items(), key=lambda item: (rank[item[1]], _place(places, item[0])))


def _place(places: Places, key: Key) -> tuple[int, str]:
    if isinstance(key, tuple) and key[0] == "clause":
        return places.order.get(str(key[1]), 0), str(key)
    return 0, str(key)


def _member(places: Places, key: Key, kind: Kind) -> dict[str, Any]:
    assert isinstance(key, tuple)
    fact: dict[str, Any] = {"role": _role(places, key, kind), "of": key[0]}
    match key:
        case ("clause", clause_id, part):
            return fact | {
                "clause": clause_id,
                "part": part,
                "pointer": places.pointer(clause_id),
                **_said(places, clause_id),
            }
        case ("silence", arch, group):
            return fact | {"arch": arch, "group": group} | _excluded(places, str(arch), str(group))
        case ("state", tooth, *_):
            return fact | {"tooth": tooth, "states": list(_states(places, str(tooth)))}
        case ("practice", norm, place):
            return fact | {"norm": norm, "place": place}
        case ("space", arch):
            return fact | {"arch": arch}
    return fact


def _role(places: Places, key: Key, kind: Kind) -> str:
    """A member's role; the upper bound of an order limits, where an allowance's amount allows."""
    if kind == Kind.CEILING and isinstance(key, tuple) and not hasattr(places.clauses.get(str(key[1])), "use"):
        return "limited"
    return _ROLE[kind]


_MEANS_OF = {
    "reduction": ("enamel-reduction",),
    "incisor-out": ("incisor-advance", "incisor-retraction"),
    "side-out": ("widening", "narrowing"),
    "along": ("distal-movement", "mesial-movement"),
    "gap": ("posterior-open-bite",),
}


def _excluded(places: Places, arch: str, group: str) -> dict[str, Any]:
    """The exclusion that says what silence says already, if there is one for the whole arch."""
    means = _MEANS_OF.get(group, ("intrusion", "extrusion") if group.endswith("vertical") else ())
    for item in places.prescription.exclude or ():
        if item.means in means and item.teeth is None and item.arch in (None, arch):
            return {"excluded_by": item.id}
    return {}


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
        "amount": _steady(way.amount),
        "low": _steady(way.low),
        "high": _steady(way.high),
        "by": list(way.by),
        "unit": repair.unit,
        "beyond_practice": bool(way.passed),
        "passed": [{"norm": key[1], "place": key[2]} for key in way.passed if isinstance(key, tuple)],
        "irreversible": repair.irreversible,
        **{name: list(value) if isinstance(value, tuple) else value for name, value in repair.facts},
        **(_said(places, str(dict(repair.facts).get("clause", "")))),
    }
    if repair.use:
        fact["use"] = repair.use
    if isinstance(repair.member, tuple) and repair.member[0] == "practice":
        fact |= {"norm": repair.member[1], "place": repair.member[2]}
    made = patch(places, repair, way.amount)
    return fact | ({"patch": made} if made else {})


# what is not a conflict


def _unmet(places: Places, judgement: Judgement) -> Iterator[Finding]:
    for lack in judgement.unmet:
        rule = "baseline-missing" if lack.measure else "measure-without-teeth"
        facts: dict[str, Any] = {"measure": lack.measure} if lack.measure else {}
        facts |= _said(places, lack.clause_id)
        wish = getattr(places.clauses.get(lack.clause_id), "strength", "must") == "prefer"
        severity = Severity.NOTE if wish else Severity.ASK
        yield Finding(rule, severity, places.pointer(lack.clause_id), facts, (lack.clause_id,))


def _notes(places: Places, judgement: Judgement) -> Iterator[Finding]:
    if judgement.shortfall > 0:
        yield Finding("small-shortfall", Severity.NOTE, "", {"amount": judgement.shortfall, "unit": "mm"})
    if judgement.forced:
        yield Finding("what-it-forces", Severity.NOTE, "", {"ranges": [_range(places, r) for r in judgement.forced]})
    if judgement.already_met:
        yield Finding("goals-already-met", Severity.NOTE, "/goals")
    for clause_id in judgement.leans_on:
        facts = _said(places, clause_id)
        yield Finding("leans-on-expectation", Severity.NOTE, places.pointer(clause_id), facts, (clause_id,))
    if judgement.assumed:
        told = [{"what": assumption.what, "where": assumption.where} for assumption in judgement.assumed]
        yield Finding("taken-as-so", Severity.NOTE, "", {"assumed": told})


def _steady(value: float) -> float | None:
    """An amount without the noise of the last digits, which may differ between machines; None: without bound."""
    return None if abs(value) == inf else round(value, 9) + 0.0


def _range(places: Places, found: Range) -> dict[str, Any]:
    return {
        "clause": found.clause_id,
        "pointer": places.pointer(found.clause_id),
        "what": found.what,
        **_said(places, found.clause_id),
        "least": _steady(found.least),
        "most": _steady(found.most),
        "unit": found.unit,
    }
