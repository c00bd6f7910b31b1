"""What a setup does to each tooth and each contact, and where that is not what was asked, for the drawing of arches."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.kinematics.mouth import Mouth
from wellposed.render.amounts import number
from wellposed.render.sheet.arches import line_of, mesial, notes_of, states_of, today_of
from wellposed.render.sheet.metrics import TIE
from wellposed.render.sheet.said import ArchSaid, ContactSaid, Standing, Stands, ToothSaid
from wellposed.render.sheet.words import SENSES, short_name
from wellposed.review.plan import Plan
from wellposed.review.result import SetupReview
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES, Variable
from wellposed.vocabulary.units import DEG, MM

__all__ = ["Planning", "moved", "planned"]

_NOTHING = 0.005
_IN_TABLE = "little, or torque and tip: see the table"
_SHOWN = {MM: 0.05, DEG: 0.5}
"""What is less than this is left to the table of movements."""


class Planning(NamedTuple):
    """A setup beside the mouth it is for, and its review."""

    mouth: Mouth
    plan: Plan
    review: SetupReview


def planned(case: Planning, arch: str) -> ArchSaid:
    """One arch as the setup plans it."""
    row = case.mouth.rows[arch]
    teeth = tuple(_tooth(case, tooth, width) for tooth, width in zip(row.initial, row.widths, strict=True))
    notes = (*notes_of(case.mouth, arch), *_aligners(case.plan, arch))
    return ArchSaid(arch, line_of(row), teeth, tuple(_contacts(case, row.initial)), notes)


def _aligners(plan: Plan, arch: str) -> Iterator[str]:
    count = plan.setup.aligners and getattr(plan.setup.aligners, arch)
    if count is not None:
        yield f"{count} aligner{'' if count == 1 else 's'}"


def _tooth(case: Planning, tooth: str, width: float) -> ToothSaid:
    today, stated = today_of(case.mouth, tooth), moved(case.plan, tooth)
    along, out = stated.get("along", 0.0) * mesial(tooth), stated.get("out", 0.0)
    stands = _standing(case, tooth)
    return ToothSaid(
        tooth,
        short_name(tooth),
        width,
        stands,
        (*states_of(case.mouth, tooth), *_phrases(stated), *(("taken out",) if stands == "gone" else ())),
        _joined(_warnings(case.review, tooth)),
        way=(along, out) if along or out else None,
        vertical=_sign(stated.get("vertical", 0.0)),
        turns=_sign(stated.get("rotation", 0.0)) * mesial(tooth),
        carries="attached" if tooth in (case.plan.carriers or ()) else None,
        today=today,
        planned=_there(today, stated, tooth) if stands == "moves" else None,
    )


def moved(plan: Plan, tooth: str) -> dict[Variable, float]:
    """The movements of a tooth that are not nought, mm or deg."""
    found = {variable: plan.movement(tooth, variable) for variable in VARIABLES}
    return {variable: size for variable, size in found.items() if size is not None and abs(size) >= _NOTHING}


def _sign(value: float) -> int:
    return (value > 0) - (value < 0)


def _there(today: Stands, stated: dict[Variable, float], tooth: str) -> Stands:
    turned = today.turned + stated.get("rotation", 0.0) * mesial(tooth)
    return Stands(stated.get("along", 0.0) * mesial(tooth), today.out + stated.get("out", 0.0), turned)


def _standing(case: Planning, tooth: str) -> Standing:
    taken = case.plan.setup.extractions
    if tooth in (case.mouth.extracted if taken is None else taken):
        return "gone"
    if moved(case.plan, tooth):
        return "moves"
    if all(case.plan.movement(tooth, variable) is None for variable in VARIABLES):
        return "unsaid"
    return "fixed" if tooth in case.mouth.locked else "silent"


# in words


def _phrases(stated: dict[Variable, float]) -> Iterator[str]:
    """Travel and turning, to tenths of a mm and whole degrees: ``in 1.2, intrusion 0.5 mm, turn 8° mesial in``."""
    told = [
        f"{SENSES[variable, _sign(size)]} {abs(size):.1f}"
        for variable, size in stated.items()
        if VARIABLE_UNITS[variable] == MM and abs(size) >= _SHOWN[MM]
    ]
    turned = stated.get("rotation", 0.0)
    words = [f"{', '.join(told)} mm"] if told else []
    if abs(turned) >= _SHOWN[DEG]:
        words.append(f"turn{TIE}{abs(turned):.0f}° {SENSES['rotation', _sign(turned)].replace(' side', '')}")
    if stated:
        yield ", ".join(words) or _IN_TABLE


def _warnings(review: SetupReview, tooth: str) -> Iterator[str]:
    """Clauses this tooth does not meet or passes; that it moves though nothing opens it."""
    for outcome, words in (("not-met", "not met"), ("beyond", "beyond")):
        names = [
            one.id
            for one in review.clauses
            if one.outcome == outcome and any(part.met is False and part.where == tooth for part in one.parts)
        ]
        if names:
            yield f"{words}: {', '.join(names)}"
    if any(one.where == tooth and one.owner is None for one in review.unasked):
        yield "not opened"


def _joined(phrases: Iterator[str]) -> tuple[str, ...]:
    told = "; ".join(phrases)
    return (told,) if told else ()


def _contacts(case: Planning, row: tuple[str, ...]) -> Iterator[ContactSaid]:
    for name, size in case.plan.reductions.items():
        one, other = teeth_of(name)
        if size >= _NOTHING and one in row and other in row:
            yield ContactSaid(row.index(one), row.index(other), "reduction", number(size))
