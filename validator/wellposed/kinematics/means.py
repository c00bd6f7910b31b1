"""What each clause opens: the table of ``spec/semantics.md``, clause by clause."""

from __future__ import annotations

from collections.abc import Callable
from math import inf
from typing import Any

from wellposed import norms
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import (
    Openings,
    both,
    extraction_of,
    follow_reduction,
    incisor_travel,
    incisors,
    molars,
    motion,
    side_teeth,
    slides_at,
    standing,
    usual_reduction_contacts,
    width_change,
    with_along,
    with_travel,
)
from wellposed.model.clauses import Align, Close, CloseArch, KeepMotion, KeepVariable, Leave, Level, Movement
from wellposed.model.means import (
    AnyMovement,
    ArchSlide,
    ClassElastics,
    EnamelReduction,
    Extraction,
    IncisorTravel,
    LaboratoryChoice,
    PosteriorOpenBite,
    VerticalMovement,
    WidthChange,
)
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.motions import MOTIONS, VARIABLES, Variable
from wellposed.vocabulary.teeth import LOWER, SIDES, UPPER, arch_of, is_incisor, is_molar, position, side_of

Reach = tuple[float, Openings]
"""The amount of an allowance (infinite if none is stated) and what it opens per unit of it."""

_TURNS: tuple[Variable, ...] = ("rotation", "tip")


def allowance_opens(mouth: Mouth, clause: Any) -> Reach:
    """The amount of an allowance and what it opens; nothing for what opens nothing by itself."""
    opens = _ALLOWANCES.get(type(clause))
    return opens(mouth, clause) if opens else (0.0, [])


def clause_opens(mouth: Mouth, clause: Any) -> Openings:
    """What a goal, keep or movement opens; rates are amounts in mm or deg."""
    opens = _CLAUSES.get(type(clause))
    return opens(mouth, clause) if opens else []


# allowances


def _travel(mouth: Mouth, clause: IncisorTravel) -> Reach:
    teeth = standing(mouth, clause.teeth) if clause.teeth else incisors(mouth, clause.arch)
    sign = 1 if clause.use == "incisor-advance" else -1
    return clause.up_to, incisor_travel(mouth, teeth, sign, alike=clause.teeth is None)


def _width(mouth: Mouth, clause: WidthChange) -> Reach:
    return clause.up_to, width_change(mouth, width_teeth(mouth, clause), 1 if clause.use == "widening" else -1)


def width_teeth(mouth: Mouth, clause: WidthChange) -> list[str]:
    """The teeth a change of width is about."""
    return standing(mouth, clause.teeth) if clause.teeth else side_teeth(mouth, clause.arch)


def _slide(mouth: Mouth, clause: ArchSlide) -> Reach:
    teeth = standing(mouth, clause.teeth) if clause.teeth else molars(mouth, clause.arch, clause.sides or SIDES)
    sign = 1 if clause.use == "mesial-movement" else -1
    front = [tooth for tooth in clause.teeth or () if is_incisor(tooth) and tooth in teeth]
    return clause.up_to, motion(teeth, "along", sign) + with_along(motion(front, "out", sign), mouth)


def _vertical(mouth: Mouth, clause: VerticalMovement) -> Reach:
    return clause.up_to, motion(standing(mouth, clause.teeth), "vertical", 1 if clause.use == "extrusion" else -1)


def _any_movement(mouth: Mouth, clause: AnyMovement) -> Reach:
    opened = motion(standing(mouth, clause.teeth), *MOTIONS[clause.motion])
    return clause.up_to, with_along(with_travel(opened), mouth)


def _elastics(mouth: Mouth, clause: ClassElastics) -> Reach:
    usual = norms.value("kinematics.elastics")
    upper = -1 if clause.use == "class-ii-elastics" else 1
    opened: Openings = []
    for arch, sign in ((UPPER, upper), (LOWER, -upper)):
        line = [tooth for tooth in side_teeth(mouth, arch) if side_of(tooth) in clause.sides]
        opened += motion(line, "along", sign)
        opened += with_along(motion(incisors(mouth, arch), "out", sign), mouth)
    if clause.up_to is not None:
        return clause.up_to, opened
    return usual, [o._replace(usual=True) for o in opened]


def _reduction(mouth: Mouth, clause: EnamelReduction) -> Reach:
    contacts = reduction_contacts(mouth, clause)
    return _enamel(clause, len(contacts)), follow_reduction(map(teeth_of, contacts), 1.0)


def _enamel(clause: EnamelReduction, contacts: int) -> float:
    """The enamel allowed in all, mm; where only the contact is bounded, that times the contacts."""
    if clause.in_all is not None:
        return clause.in_all
    return inf if clause.per_contact is None else clause.per_contact * contacts


def reduction_contacts(mouth: Mouth, clause: EnamelReduction) -> list[str]:
    """The contacts a reduction is allowed at: those named, else first molar to first molar of its arch."""
    if clause.contacts:
        named = {normal(contact) for contact in clause.contacts}
        return [c.name for row in mouth.rows.values() for c in row.contacts if c.name in named]
    return usual_reduction_contacts(mouth, clause.arch or UPPER)


def _extraction(mouth: Mouth, clause: Extraction) -> Reach:
    teeth = clause.teeth if mouth.extracting else ()
    return inf, [opening for tooth in teeth for opening in extraction_of(mouth, tooth)]


def _choice(mouth: Mouth, clause: LaboratoryChoice) -> Reach:
    line = [tooth for row in mouth.rows.values() for tooth in row.teeth]
    teeth = standing(mouth, clause.teeth) if clause.teeth else line
    chosen = [tooth for tooth in teeth if clause.arch in (None, arch_of(tooth))]
    opened = [o for t in chosen for variable in clause.variables or VARIABLES for o in both(t, variable, inf, True)]
    return inf, with_along(opened, mouth)


def _gap(mouth: Mouth, clause: PosteriorOpenBite) -> Reach:
    del mouth
    return clause.up_to, []


# goals, keeps, movements


def _align(mouth: Mouth, clause: Align) -> Openings:
    teeth = standing(mouth, clause.align)
    return slides_at(teeth) + [o for tooth in teeth for variable in _TURNS for o in both(tooth, variable)]


def _level(mouth: Mouth, clause: Level) -> Openings:
    teeth = [t for t in mouth.rows[clause.level].teeth if not (is_molar(t) and position(t) == 6)]
    return [o for tooth in teeth for o in both(tooth, "vertical")]


def _close(mouth: Mouth, clause: Close) -> Openings:
    return slides_at(standing(mouth, [tooth for contact in clause.close for tooth in teeth_of(contact)]))


def _close_arch(mouth: Mouth, clause: CloseArch) -> Openings:
    return slides_at(mouth.rows[clause.close_arch].teeth)


def _leave(mouth: Mouth, clause: Leave) -> Openings:
    return slides_at(standing(mouth, teeth_of(clause.leave)))


def _movement(mouth: Mouth, clause: Movement) -> Openings:
    """A movement opens its variable to its upper bound; what travels with a torque, to the same share of it."""
    most = inf if clause.at_most is None else clause.at_most
    opened = motion(standing(mouth, clause.teeth), *MOTIONS[clause.motion], most)
    return with_along(with_travel(opened), mouth)


def _kept(mouth: Mouth, clause: KeepVariable | KeepMotion) -> Openings:
    """A keep replaces silence within its tolerance; others do not follow what it leaves, and none yields to it."""
    teeth = standing(mouth, clause.teeth)
    if isinstance(clause, KeepVariable):
        opened = [o for tooth in teeth for o in both(tooth, clause.variable, clause.within)]
    else:
        opened = motion(teeth, *MOTIONS[clause.motion], clause.within)
    return [o._replace(drawn=False, slack=True, usual=True) for o in opened]


_ALLOWANCES: dict[type, Callable[[Mouth, Any], Reach]] = {
    IncisorTravel: _travel,
    WidthChange: _width,
    ArchSlide: _slide,
    VerticalMovement: _vertical,
    AnyMovement: _any_movement,
    ClassElastics: _elastics,
    EnamelReduction: _reduction,
    Extraction: _extraction,
    LaboratoryChoice: _choice,
    PosteriorOpenBite: _gap,
}
_CLAUSES: dict[type, Callable[[Mouth, Any], Openings]] = {
    Align: _align,
    Level: _level,
    Close: _close,
    CloseArch: _close_arch,
    Leave: _leave,
    Movement: _movement,
    KeepVariable: _kept,
    KeepMotion: _kept,
}
