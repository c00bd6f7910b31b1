"""What each clause opens: the table of ``spec/semantics.md``, as data an amount is multiplied into."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from math import inf
from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.mouth import Mouth
from wellposed.model.clauses import (
    Align,
    Close,
    CloseArch,
    Hold,
    KeepMeasure,
    KeepMotion,
    KeepVariable,
    Leave,
    Level,
    Movement,
)
from wellposed.model.means import (
    AnyAllowance,
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
from wellposed.vocabulary.teeth import (
    LOWER,
    RIGHT,
    SIDES,
    UPPER,
    arch_of,
    is_canine,
    is_incisor,
    is_molar,
    position,
    side_of,
)


class Sensed(NamedTuple):
    """One variable of one tooth in one sense."""

    tooth: str
    variable: Variable
    sign: int


class Opening(NamedTuple):
    """A sensed variable opened ``rate`` times the clause's amount; infinite: without bound.

    soft   yields to an amount stated for the same motion, teeth and sense
    drawn  the tooth is drawn distally by a means, so a canine may go straight back
    alike  the incisors of the arch move alike
    slack  no movement of its own that others could follow
    """

    at: Sensed
    rate: float
    soft: bool = False
    drawn: bool = False
    alike: bool = False
    slack: bool = False


Openings = list[Opening]


def both(tooth: str, variable: Variable, rate: float = inf, soft: bool = False) -> Openings:
    """Both senses of a variable."""
    return [Opening(Sensed(tooth, variable, sign), rate, soft) for sign in (1, -1)]


def with_along(openings: Openings, mouth: Mouth) -> Openings:
    """Any opened ``out`` opens ``along`` of the same tooth, molars excepted; of a last molar a little."""
    return openings + [more for o in openings if o.at.variable == "out" for more in _along_of(o, mouth)]


def _along_of(opening: Opening, mouth: Mouth) -> Openings:
    tooth = opening.at.tooth
    if not is_molar(tooth):
        return both(tooth, "along", inf, opening.soft)
    line = mouth.rows[arch_of(tooth)].teeth
    if tooth not in (line[0], line[-1]):
        return []
    rate = opening.rate * norms.value("kinematics.last-molar-along-per-out")
    return [o._replace(slack=True) for o in both(tooth, "along", rate, opening.soft)]


def incisors(mouth: Mouth, arch: str) -> list[str]:
    """The incisors standing in an arch."""
    return [tooth for tooth in mouth.rows[arch].teeth if is_incisor(tooth)]


def standing(mouth: Mouth, teeth: Iterable[str]) -> list[str]:
    """Those of the teeth that stand in line."""
    present = {tooth for row in mouth.rows.values() for tooth in row.teeth}
    return [tooth for tooth in teeth if tooth in present]


def incisor_travel(mouth: Mouth, teeth: Iterable[str], sign: int, alike: bool = True) -> Openings:
    """Incisors forward (+) or back (-): ``out``, their torque with it, and the arc of their edges."""
    torque = norms.value("kinematics.torque-per-advance")
    arc = norms.value("kinematics.sink-per-advance")
    return with_along(
        [
            opening
            for tooth in teeth
            for opening in (
                Opening(Sensed(tooth, "out", sign), 1.0, alike=alike),
                Opening(Sensed(tooth, "torque", sign), torque),
                Opening(Sensed(tooth, "vertical", -sign), arc),
            )
        ],
        mouth,
    )


def width_change(mouth: Mouth, teeth: Iterable[str], sign: int) -> Openings:
    """Teeth of both sides apart (+) or together (-); the pair's width bounds them, not the single tooth."""
    slide = norms.value("kinematics.last-molar-along-per-out")
    opened = with_along([Opening(Sensed(tooth, "out", sign), inf) for tooth in teeth], mouth)
    return [
        o._replace(rate=slide) if o.at.variable == "along" and is_molar(o.at.tooth) else o for o in opened
    ]


def arch_slide(teeth: Iterable[str], sign: int) -> Openings:
    """Teeth along the arch, mesial (+) or distal (-)."""
    return [Opening(Sensed(tooth, "along", sign), 1.0, drawn=sign < 0) for tooth in teeth]


def torque_with_travel(teeth: Iterable[str], variable: Variable, sign: int, rate: float = 1.0) -> Openings:
    """A variable of these teeth; torque takes ``out`` along in the same sense."""
    opened = [Opening(Sensed(tooth, variable, sign), rate, drawn=_distal(variable, sign)) for tooth in teeth]
    if variable != "torque":
        return opened
    travel = norms.value("kinematics.out-per-torque")
    return opened + [Opening(Sensed(tooth, "out", sign), rate * travel) for tooth in teeth]


def _distal(variable: Variable, sign: int) -> bool:
    return variable == "along" and sign < 0


def molars_of(mouth: Mouth, arch: str, sides: Iterable[str]) -> list[str]:
    """First and second molars of these sides of an arch."""
    return [t for t in mouth.rows[arch].teeth if position(t) in (6, 7) and is_molar(t) and side_of(t) in sides]


def side_teeth(mouth: Mouth, arch: str) -> list[str]:
    """Canines to second molars of an arch."""
    return [tooth for tooth in mouth.rows[arch].teeth if 3 <= position(tooth) <= 7]


def _elastics(mouth: Mouth, clause: ClassElastics) -> Openings:
    class_ii = clause.use == "class-ii-elastics"
    opened: Openings = []
    for arch, sign in ((UPPER, -1 if class_ii else 1), (LOWER, 1 if class_ii else -1)):
        line = [tooth for tooth in side_teeth(mouth, arch) if side_of(tooth) in clause.sides]
        opened += arch_slide(line, sign)
        front = [Opening(Sensed(tooth, "out", sign), 1.0) for tooth in incisors(mouth, arch)]
        opened += with_along(front, mouth)
    return opened


def _extraction(mouth: Mouth, clause: Extraction) -> Openings:
    if not mouth.extracting:
        return []
    opened: Openings = []
    for tooth in clause.teeth:
        opened += extraction_of(mouth, tooth)
    return opened


def extraction_of(mouth: Mouth, tooth: str) -> Openings:
    """What the loss of one tooth opens."""
    arch = arch_of(tooth)
    line = mouth.rows[arch].teeth
    front = [t for t in line if position(t) <= 3]
    if is_incisor(tooth):
        sliding = front
    else:
        mesial = [t for t in line if side_of(t) == side_of(tooth) and position(t) < position(tooth)]
        sliding = sorted({*mesial, *incisors(mouth, arch)})
    opened = [
        Opening(Sensed(t, "along", sign), inf, True, drawn=sign < 0) for t in sliding for sign in (1, -1)
    ]
    back = [Opening(Sensed(t, "out", -1), inf, True, alike=is_incisor(t)) for t in front]
    return opened + with_along(back, mouth)


def _choice(mouth: Mouth, clause: LaboratoryChoice) -> Openings:
    teeth = standing(mouth, clause.teeth) if clause.teeth else [t for row in mouth.rows.values() for t in row.teeth]
    if clause.arch:
        teeth = [tooth for tooth in teeth if arch_of(tooth) == clause.arch]
    opened = [o for t in teeth for variable in clause.variables or VARIABLES for o in both(t, variable, inf, True)]
    return with_along(opened, mouth)


def reduction_contacts(mouth: Mouth, clause: EnamelReduction) -> list[str]:
    """The contacts a reduction is allowed at: those named, else first molar to first molar of its arch."""
    if clause.contacts:
        named = {normal(contact) for contact in clause.contacts}
        return [c.name for row in mouth.rows.values() for c in row.contacts if c.name in named]
    return usual_reduction_contacts(mouth, clause.arch or UPPER)


def usual_reduction_contacts(mouth: Mouth, arch: str) -> list[str]:
    """First molar to first molar."""
    return [c.name for c in mouth.rows[arch].contacts if position(c.first) <= 6 and position(c.second) <= 6]


def reduction_follows(contacts: Iterable[str], rate: float) -> Openings:
    """Non-molar teeth at reduced contacts may move along by the amount."""
    teeth = sorted({tooth for contact in contacts for tooth in teeth_of(contact) if not is_molar(tooth)})
    return [o for tooth in teeth for o in both(tooth, "along", rate)]


def _reduction(mouth: Mouth, clause: EnamelReduction) -> Openings:
    contacts = reduction_contacts(mouth, clause)
    return reduction_follows(contacts, 1.0)


def reduction_amount(mouth: Mouth, clause: EnamelReduction) -> float:
    """The enamel a reduction allows in all, mm; where only the contact is bounded, that times the contacts."""
    if clause.in_all is not None:
        return clause.in_all
    return inf if clause.per_contact is None else clause.per_contact * len(reduction_contacts(mouth, clause))


def allowance_opens(mouth: Mouth, clause: AnyAllowance) -> tuple[float, Openings]:
    """The amount of an allowance (infinite if none is stated) and what it opens per unit of it."""
    match clause:
        case IncisorTravel():
            teeth = standing(mouth, clause.teeth) if clause.teeth else incisors(mouth, clause.arch)
            sign = 1 if clause.use == "incisor-advance" else -1
            return clause.up_to, incisor_travel(mouth, teeth, sign, alike=clause.teeth is None)
        case WidthChange():
            teeth = standing(mouth, clause.teeth) if clause.teeth else side_teeth(mouth, clause.arch)
            return clause.up_to, width_change(mouth, teeth, 1 if clause.use == "widening" else -1)
        case ArchSlide():
            named = standing(mouth, clause.teeth) if clause.teeth else None
            teeth = named if named is not None else molars_of(mouth, clause.arch, clause.sides or SIDES)
            return clause.up_to, arch_slide(teeth, 1 if clause.use == "mesial-movement" else -1)
        case VerticalMovement():
            sign = 1 if clause.use == "extrusion" else -1
            teeth = standing(mouth, clause.teeth)
            return clause.up_to, [Opening(Sensed(t, "vertical", sign), 1.0) for t in teeth]
        case AnyMovement():
            sense = MOTIONS[clause.motion]
            opened = torque_with_travel(standing(mouth, clause.teeth), sense.variable, sense.sign)
            return clause.up_to, with_along(opened, mouth)
        case ClassElastics():
            usual = norms.value("kinematics.elastics")
            return (usual if clause.up_to is None else clause.up_to), _elastics(mouth, clause)
        case EnamelReduction():
            return reduction_amount(mouth, clause), _reduction(mouth, clause)
        case Extraction():
            return inf, _extraction(mouth, clause)
        case LaboratoryChoice():
            return inf, _choice(mouth, clause)
        case PosteriorOpenBite():
            return clause.up_to, []
    return 0.0, []


def _slides_at(teeth: Iterable[str]) -> Openings:
    return [o for t in teeth if not is_molar(t) for v in ("along", "tip") for o in both(t, v)]


def _align(mouth: Mouth, clause: Align) -> Openings:
    teeth = standing(mouth, clause.align)
    return _slides_at(teeth) + [o for t in teeth for v in _TURNS for o in both(t, v)]


_TURNS: tuple[Variable, ...] = ("rotation", "tip")


def _level(mouth: Mouth, clause: Level) -> Openings:
    teeth = [t for t in mouth.rows[clause.level].teeth if not (is_molar(t) and position(t) == 6)]
    return [o for t in teeth for o in both(t, "vertical")]


def _close(mouth: Mouth, clause: Close) -> Openings:
    return _slides_at(standing(mouth, [tooth for contact in clause.close for tooth in teeth_of(contact)]))


def _close_arch(mouth: Mouth, clause: CloseArch) -> Openings:
    return _slides_at(mouth.rows[clause.close_arch].teeth)


def _leave(mouth: Mouth, clause: Leave) -> Openings:
    return _slides_at(standing(mouth, teeth_of(clause.leave)))


def _movement(mouth: Mouth, clause: Movement) -> Openings:
    sense = MOTIONS[clause.motion]
    teeth = standing(mouth, clause.teeth)
    opened = [Opening(Sensed(t, sense.variable, sense.sign), inf, drawn=_distal(*sense)) for t in teeth]
    if sense.variable == "torque":
        most = inf if clause.at_most is None else clause.at_most
        travel = norms.value("kinematics.out-per-torque") * most
        opened += [Opening(Sensed(t, "out", sense.sign), travel) for t in teeth]
    return with_along(opened, mouth)


def _kept(mouth: Mouth, clause: KeepVariable | KeepMotion) -> Openings:
    """A keep replaces silence within its tolerance; where it only prefers, no further."""
    rate = inf if clause.strength == "must" else clause.within
    teeth = standing(mouth, clause.teeth)
    if isinstance(clause, KeepVariable):
        return [o for t in teeth for o in both(t, clause.variable, rate)]
    sense = MOTIONS[clause.motion]
    return [Opening(Sensed(t, sense.variable, sense.sign), rate) for t in teeth]


_CLAUSES: dict[type, Callable[..., Openings]] = {
    Align: _align,
    Level: _level,
    Close: _close,
    CloseArch: _close_arch,
    Leave: _leave,
    Movement: _movement,
    KeepVariable: _kept,
    KeepMotion: _kept,
}
_NO_OPENING = (Hold, KeepMeasure)


def clause_opens(mouth: Mouth, clause: object) -> Openings:
    """What a goal, keep or movement opens; amounts are in mm or deg."""
    opens = _CLAUSES.get(type(clause))
    return opens(mouth, clause) if opens else []


class Source(NamedTuple):
    """Where an opening comes from. ``owner`` is the clause whose amount bounds it; None: nothing to relax."""

    owner: str | None
    rate: float
    amount: float
    soft: bool
    drawn: bool
    alike: bool
    slack: bool


def followers(mouth: Mouth, sources: dict[Sensed, list[Source]]) -> Iterator[tuple[Sensed, Source]]:
    """Non-molar teeth between two whose ``along`` is opened may follow, to the largest amount stated."""
    for row in mouth.rows.values():
        opened = [
            (place, source)
            for place, tooth in enumerate(row.teeth)
            for sign in (1, -1)
            for source in sources.get(Sensed(tooth, "along", sign), ())
            if not source.slack
        ]
        if len({place for place, _ in opened}) < 2:
            continue
        drawn = [source for _, source in opened if source.drawn]
        largest = [_largest(kind) for kind in ([source for _, source in opened], drawn) if kind]
        first, last = min(place for place, _ in opened), max(place for place, _ in opened)
        for tooth in row.teeth[first + 1 : last]:
            if not is_molar(tooth):
                yield from ((Sensed(tooth, "along", sign), source) for sign in (1, -1) for source in largest)


def _largest(sources: list[Source]) -> Source:
    return max(sources, key=lambda source: source.amount)


def straight_back(sources: dict[Sensed, list[Source]]) -> Iterator[tuple[Sensed, Source]]:
    """A canine drawn distally may go straight back: inwards by a share of the amount."""
    share = norms.value("kinematics.canine-out-per-distal")
    for at, found in list(sources.items()):
        if at.variable == "along" and at.sign < 0 and is_canine(at.tooth):
            for source in found:
                if source.drawn:
                    inwards = source._replace(rate=source.rate * share, amount=source.amount * share)
                    yield Sensed(at.tooth, "out", -1), inwards


__all__ = ["RIGHT", "Opening", "Openings", "Sensed", "Source"]
