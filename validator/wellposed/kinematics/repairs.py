"""The ways out of a conflict: for each member the one amount by which it can give way, as a strain."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf
from typing import Any

from wellposed import norms
from wellposed.kinematics import openings as opening
from wellposed.kinematics.openings import Opening, Sensed, Source
from wellposed.kinematics.rows import Key, Kind, Release, Strain, StrainRow, loosened
from wellposed.kinematics.translate import Translation, alike
from wellposed.model.clauses import Movement, Reach
from wellposed.model.means import EnamelReduction
from wellposed.vocabulary.motions import MOTIONS, VARIABLE_UNITS, Motion
from wellposed.vocabulary.teeth import (
    SIDES,
    is_canine,
    is_incisor,
    is_molar,
    position,
)


@dataclass(frozen=True)
class Repair:
    """One way out.

    what          ``lower-floor``, ``raise-ceiling``, ``widen-tolerance``, ``leave-undone``, ``allow``, ``give-up``
    use           for ``allow``: the allowance; for a motion of single teeth ``movement``
    member        the member of the conflict that gives way
    strain        its strain; the amount is in ``unit``
    facts         what the wording and the clause to write need: teeth, arch, motion, contacts
    irreversible  reduction or extraction
    whole         the amount counts in whole units (aligners)
    """

    what: str
    member: Key
    strain: Strain
    unit: str
    use: str = ""
    facts: tuple[tuple[str, Any], ...] = ()
    irreversible: bool = False
    whole: bool = False


def repairs(translation: Translation, key: Key) -> Iterator[Repair]:
    """The ways in which one member could give way; none for what no words can change."""
    if not isinstance(key, tuple):
        return
    match key:
        case ("clause", str(clause_id), str(part)):
            yield from _of_clause(translation, key, clause_id, part)
        case ("silence", str(arch), str(group)):
            yield from _of_silence(translation, key, arch, group)
        case ("space", str(arch)):
            yield Repair("leave-space", key, _plain(translation, key), "mm", facts=(("arch", arch),))
        case ("practice", *_):
            yield Repair("pass-limit", key, _plain(translation, key), _limit_unit(str(key[1])))


def _plain(translation: Translation, key: Key, rate: float = 1.0, most: float = inf) -> Strain:
    return Strain(drops=(key,), rows=loosened(translation.system, key, rate), most=most)


def _limit_unit(norm: str) -> str:
    return norms.norm(norm).unit


def _of_clause(translation: Translation, key: Key, clause_id: str, part: str) -> Iterator[Repair]:
    item = translation.clause(clause_id)
    unit = str(getattr(item, "unit", None) or "mm")
    facts = (("clause", clause_id),)
    if part == "aligners":
        yield _aligners(translation, key, facts)
    elif part in ("hold",):
        yield Repair("give-up", key, Strain(drops=(key,)), "mm", facts=facts)
    elif part == "floor":
        yield Repair("lower-floor", key, _floor(translation, key, item), unit, facts=facts)
    elif part == "keep":
        yield Repair("widen-tolerance", key, _plain(translation, key, _scale(translation, item)), unit, facts=facts)
    elif part in ("align", "close") or part.startswith("site"):
        yield Repair("leave-undone", key, _plain(translation, key), "mm", facts=(*facts, ("part", part)))
    elif part == "leave":
        yield Repair("change-amount", key, _plain(translation, key), "mm", facts=facts)
    elif part == "exclude":
        yield Repair("lift-exclusion", key, _plain(translation, key), "mm", facts=facts)
    else:
        yield from _ceiling(translation, key, item, part, unit)


def _scale(translation: Translation, item: Any) -> float:
    if isinstance(item, Movement) or item.unit != "percent":
        return 1.0
    return translation.mouth.crown_height / 100 if translation.mouth.crown_height else 1.0


def _floor(translation: Translation, key: Key, item: Any) -> Strain:
    if isinstance(item, Reach):
        return _plain(translation, key, _scale(translation, item))
    return _plain(translation, key, most=item.at_least or 0.0)


def _ceiling(translation: Translation, key: Key, item: Any, part: str, unit: str) -> Iterator[Repair]:
    facts = (("clause", item.id), ("part", part))
    if isinstance(item, Reach):
        yield Repair("raise-ceiling", key, _plain(translation, key, _scale(translation, item)), unit, facts=facts)
        return
    if isinstance(item, Movement):
        yield Repair("raise-ceiling", key, _plain(translation, key), unit, facts=facts)
        return
    yield Repair(
        "raise-ceiling",
        key,
        Strain(drops=(key,), rows=tuple(_allowance_rows(translation, item.id, part))),
        unit,
        facts=facts,
        irreversible=isinstance(item, EnamelReduction),
    )


def _allowance_rows(translation: Translation, owner: str, part: str) -> Iterator[StrainRow]:
    """Every bound an allowance's amount holds, each loosened at its own rate."""
    held = {(c.column, c.sign): c for c in translation.ceilings.get(owner, ())}
    member = translation.system.members[("clause", owner, part)]
    for bound in member.bounds:
        ceiling = None if bound.is_row else held.get((bound.index, bound.side))
        rate = 1.0 if ceiling is None else ceiling.rate
        if bound.is_row and owner in translation.gap_rates and bound.index in translation.frame.shut_gaps().values():
            rate = translation.gap_rates[owner]
        terms = translation.system.row_terms[bound.index] if bound.is_row else {bound.index: 1.0}
        low, high = (bound.value, inf) if bound.side < 0 else (-inf, bound.value)
        yield StrainRow(terms, -bound.side * rate, low, high)


def _aligners(translation: Translation, key: Key, facts: tuple[tuple[str, Any], ...]) -> Repair:
    rows = []
    for (tooth, variable), column in translation.frame.columns.items():
        step = translation.step(tooth, variable)
        if step is not None and translation.rx.staging and translation.rx.staging.most_aligners is not None:
            reach = step * translation.rx.staging.most_aligners
            rows += [StrainRow({column: 1.0}, -step, -inf, reach), StrainRow({column: 1.0}, step, -reach, inf)]
    return Repair("more-aligners", key, Strain((key,), rows=tuple(rows)), "aligners", facts=facts, whole=True)


# what is not mentioned

_TRAVEL = {"incisor-advance": 1, "incisor-retraction": -1}
_WIDTH = {"widening": 1, "narrowing": -1}
_SLIDE = {"distal-movement": -1, "mesial-movement": 1}
_VERTICAL = {"intrusion": -1, "extrusion": 1}
_ANGLES: dict[str, tuple[tuple[Motion, int], ...]] = {
    "torque": (("labial-crown-torque", 1), ("lingual-crown-torque", -1)),
    "tip": (("mesial-crown-tip", 1), ("distal-crown-tip", -1)),
    "rotation": (("mesiolingual-rotation", 1), ("distolingual-rotation", -1)),
}


def _of_silence(translation: Translation, key: Key, arch: str, group: str) -> Iterator[Repair]:
    mouth = translation.mouth
    line = [tooth for tooth in mouth.rows[arch].teeth if tooth not in mouth.locked] if arch != "both" else []
    kind, _, variable = group.partition("-")
    if group == "gap":
        yield _gap(translation, key)
    elif group == "reduction":
        yield _reduction(translation, key, arch)
    elif group == "along":
        yield from _along(translation, key, arch, line)
    elif group == "incisor-out":
        teeth = [tooth for tooth in line if is_incisor(tooth)]
        for use, sign in _TRAVEL.items():
            opened = opening.incisor_travel(mouth, teeth, sign)
            yield _allow(translation, key, use, opened, arch, teeth)
    elif group == "side-out":
        teeth = [tooth for tooth in line if 3 <= position(tooth) <= 7]
        for use, sign in _WIDTH.items():
            opened = opening.with_along([Opening(Sensed(tooth, "out", sign), 1.0) for tooth in teeth], mouth)
            yield _allow(translation, key, use, opened, arch, teeth)
    elif variable == "vertical":
        yield from _vertical(translation, key, arch, [tooth for tooth in line if _is(kind, tooth)], kind)
    else:
        yield from _angle(translation, key, arch, [tooth for tooth in line if _is(kind, tooth)], variable)


def _is(kind: str, tooth: str) -> bool:
    return is_incisor(tooth) if kind == "incisor" else is_canine(tooth) if kind == "canine" else position(tooth) > 3


def _vertical(translation: Translation, key: Key, arch: str, teeth: list[str], kind: str) -> Iterator[Repair]:
    """The bite rests on the first molars: extruding these opens it; to close it all the back teeth must go in."""
    for use, sign in _VERTICAL.items():
        chosen = [tooth for tooth in teeth if position(tooth) == 6] if kind == "posterior" and sign > 0 else teeth
        opened = [Opening(Sensed(tooth, "vertical", sign), 1.0) for tooth in chosen or teeth]
        yield _allow(translation, key, use, opened, arch, chosen or teeth)


def _angle(translation: Translation, key: Key, arch: str, teeth: list[str], variable: str) -> Iterator[Repair]:
    for motion, sign in _ANGLES[variable]:
        sense = MOTIONS[motion]
        opened = opening.torque_with_travel(teeth, sense.variable, sign)
        opened = opening.with_along(opened, translation.mouth)
        yield _allow(translation, key, motion, opened, arch, teeth, VARIABLE_UNITS[sense.variable])


def _along(translation: Translation, key: Key, arch: str, line: list[str]) -> Iterator[Repair]:
    molars = [tooth for tooth in opening.molars_of(translation.mouth, arch, SIDES) if tooth in line]
    for use, sign in _SLIDE.items():
        if molars:
            yield _allow(translation, key, use, opening.arch_slide(molars, sign), arch, molars)
    sliding = [tooth for tooth in line if not is_molar(tooth)]
    opened = opening.arch_slide(sliding, 1) + opening.arch_slide(sliding, -1)
    yield _allow(translation, key, "slide", opened, arch, sliding)


def _reduction(translation: Translation, key: Key, arch: str) -> Repair:
    """Enamel between the first molars; the teeth at the reduced contacts follow."""
    opened = {name for names in translation.reductions.values() for name in names}
    contacts = [n for n in opening.usual_reduction_contacts(translation.mouth, arch) if n not in opened]
    others = [
        c.name for c in translation.mouth.rows[arch].contacts if c.name not in opened and c.name not in contacts
    ]
    columns = {name: translation.frame.contacts[name].reduction for name in (*contacts, *others)}
    rows = [StrainRow(dict.fromkeys((columns[name] for name in contacts), 1.0), -1.0, -inf, 0.0)]
    rows += [StrainRow({columns[name]: 1.0}, 0.0, -inf, 0.0) for name in others]
    follow = _strain(translation, opening.reduction_follows(contacts, 1.0))
    strain = Strain((key,), follow.releases, (*rows, *follow.rows))
    facts = (("arch", arch), ("contacts", tuple(contacts)))
    return Repair("allow", key, strain, "mm", "enamel-reduction", facts, irreversible=True)


def _gap(translation: Translation, key: Key) -> Repair:
    rows = loosened(translation.system, key)
    return Repair("allow", key, Strain((key,), rows=rows), "mm", "posterior-open-bite")


def _allow(
    translation: Translation,
    key: Key,
    use: str,
    opened: list[Opening],
    arch: str,
    teeth: list[str],
    unit: str = "mm",
) -> Repair:
    strain = _strain(translation, opened)
    return Repair("allow", key, strain, unit, use, (("arch", arch), ("teeth", tuple(teeth))))


def _strain(translation: Translation, opened: list[Opening]) -> Strain:
    """Silence lifted where the allowance opens, to ``rate`` times its amount, with all that follows from it."""
    rates: dict[Sensed, float] = {}
    for at, rate in _followed(translation, opened):
        rates[at] = max(rate, rates.get(at, 0.0))
    releases, rows = [], []
    for at, rate in rates.items():
        column = translation.frame.column(at.tooth, at.variable)
        if column is None or translation.deciding(at) is not None:
            continue
        releases.append(Release(Kind.SILENCE, False, column, at.sign))
        if rate < inf:
            rows.append(StrainRow({column: float(at.sign)}, -rate, -inf, 0.0))
    rows += _alike_rows(translation, opened)
    return Strain((), tuple(releases), tuple(rows))


def _followed(translation: Translation, opened: list[Opening]) -> Iterator[tuple[Sensed, float]]:
    """What an allowance opens, teeth between and canines drawn back included, as rates of its amount."""
    table = {at: list(sources) for at, sources in translation.table.items()}
    for o in opened:
        yield o.at, o.rate
        table.setdefault(o.at, []).append(Source("", o.rate, o.rate, o.soft, o.drawn, o.alike, o.slack))
    new = {o.at: [Source("", o.rate, o.rate, o.soft, o.drawn, o.alike, o.slack)] for o in opened}
    for at, source in opening.followers(translation.mouth, table):
        if source.owner == "" or any(o.drawn for o in opened):
            rate = source.rate if source.owner == "" else 1.0
            yield at, rate
            new.setdefault(at, []).append(Source("", rate, rate, False, source.drawn, False, False))
    for at, source in list(opening.straight_back(new)):
        yield at, source.rate
        yield from ((more.at, more.rate) for more in opening.both(at.tooth, "along"))


def _alike_rows(translation: Translation, opened: list[Opening]) -> list[StrainRow]:
    teeth = list(dict.fromkeys(o.at.tooth for o in opened if o.alike))
    others = [s for t in teeth for sign in (1, -1) for s in translation.table.get(Sensed(t, "out", sign), ())]
    if any(not source.alike for source in others):
        return []
    apart = norms.value("kinematics.incisors-alike")
    return [StrainRow(terms, 0.0, -apart, apart) for terms in alike(translation.frame, teeth)]
