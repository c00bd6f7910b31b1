"""What may be used, what may not, and what is counted on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from wellposed import norms
from wellposed.kinematics.means import width_teeth
from wellposed.kinematics.openings import incisors, molars
from wellposed.model.means import (
    AnyMovement,
    ArchSlide,
    AuxiliaryUse,
    ClassElastics,
    Elastics,
    EnamelReduction,
    Exclusion,
    Expectation,
    Extraction,
    IncisorTravel,
    LaboratoryChoice,
    PosteriorOpenBite,
    VerticalMovement,
    WidthChange,
)
from wellposed.render.filled import joined
from wellposed.render.readback.measured import changed, measure
from wellposed.render.readback.senses import BOTH_WAYS, moved
from wellposed.render.readback.sentence import Context, Teller, saying
from wellposed.render.readback.terms import MEANS, gloss
from wellposed.render.readback.words import amount, bounded, contacts, each, teeth, tooth, where
from wellposed.vocabulary.teeth import SIDES

__all__ = ["MEANS_TOLD", "TRAVEL", "WIDTH"]

TRAVEL = {
    "incisor-advance": "advance (forwards)",
    "incisor-retraction": "retract (backwards; nothing is extracted by it)",
}
WIDTH = {"widening": "widen (the teeth of a pair apart)", "narrowing": "narrow (the teeth of a pair together)"}
_ALONE = "no tooth moves by this alone"


def _enamel(part: EnamelReduction, ctx: Context) -> str:
    del ctx
    place = f"at {contacts(part.contacts)}" if part.contacts else f"in the {part.arch} arch, first molar to first molar"
    told = [f"enamel reduction {place}, both teeth together"]
    if part.per_contact is not None:
        told.append(f"at most {amount(part.per_contact, part.unit)} per contact")
    if part.in_all is not None:
        told.append(f"at most {amount(part.in_all, part.unit)} in all over these contacts")
    if part.at_least is not None:
        told.append(f"at least {amount(part.at_least, part.unit)} in all over these contacts, which is ordered")
    return ", ".join(told)


def _travel(part: IncisorTravel, ctx: Context) -> str:
    group = f"the incisors of the {part.arch} arch: {_there(incisors(ctx.mouth, part.arch))}, all alike "
    which = f"{teeth(part.teeth)}, {each(part.teeth)}" if part.teeth else group
    return f"{TRAVEL[part.use]} {which}by at most {amount(part.up_to, part.unit)}"


def _width(part: WidthChange, ctx: Context) -> str:
    group = f"the {part.arch} arch, canines to second molars: {_there(width_teeth(ctx.mouth, part))}"
    named = teeth(part.teeth) if part.teeth else group
    return f"{WIDTH[part.use]} {named}, by at most {amount(part.up_to, part.unit)} per pair, both teeth together"


def _slide(part: ArchSlide, ctx: Context) -> str:
    named = part.teeth or molars(ctx.mouth, part.arch, part.sides or SIDES)
    sides = f", on the {_sides(part.sides)}" if part.sides else ""
    group = f"in the {part.arch} arch{sides}, first and second molars: {_there(named)}"
    which = f"of {teeth(part.teeth)}{sides}" if part.teeth else group
    return f"{MEANS[part.use]} {which}, {each(named)}by at most {amount(part.up_to, part.unit)}"


def _vertical(part: VerticalMovement, ctx: Context) -> str:
    del ctx
    which = f"{MEANS[part.use]} of {teeth(part.teeth)}"
    return f"{which}, {each(part.teeth)}by at most {amount(part.up_to, part.unit)}"


def _any(part: AnyMovement, ctx: Context) -> str:
    del ctx
    return f"{moved(part.motion, part.teeth)}, {each(part.teeth)}by at most {amount(part.up_to, part.unit)}"


def _there(named: Sequence[str]) -> str:
    """The teeth of a group that are there."""
    return teeth(named) if named else "none is there"


def _sides(sides: Iterable[str]) -> str:
    return joined([side for side in SIDES if side in sides])


def _open_bite(part: PosteriorOpenBite, ctx: Context) -> str:
    del ctx
    return f"{MEANS[part.use]}, by at most {amount(part.up_to, part.unit)} more than there is"


def _extraction(part: Extraction, ctx: Context) -> str:
    del ctx
    places = "its place closes" if len(part.teeth) == 1 else "their places close"
    return f"extract {teeth(part.teeth)}; counted as done, and {places} unless a goal leaves room"


def _class_elastics(part: ClassElastics, ctx: Context) -> str:
    del ctx
    sides = f"{MEANS[part.use]} on the {_sides(part.sides)}"
    if part.up_to is not None and part.unit is not None:
        return f"{sides}, each tooth by at most {amount(part.up_to, part.unit)}"
    usual = norms.norm("kinematics.elastics")
    told = f"{amount(usual.value, usual.unit)} ({usual.sure})"
    return f"{sides}, no amount stated: as usual each tooth by at most {told}"


def _elastics(part: Elastics, ctx: Context) -> str:
    del ctx
    return f"elastics, {gloss(part.pattern)}{where(part.teeth)}; {_ALONE}"


def _auxiliary(part: AuxiliaryUse, ctx: Context) -> str:
    del ctx
    return f"{gloss(part.auxiliary)}{where(part.teeth)}; {_ALONE}"


def _choice(part: LaboratoryChoice, ctx: Context) -> str:
    del ctx
    chosen = "every movement: " * (not part.variables) + joined([BOTH_WAYS[one] for one in part.variables or BOTH_WAYS])
    arch = f" of the {part.arch} arch" if part.arch else ""
    named = teeth(part.teeth) + (f", those{arch}" if arch else "") if part.teeth else f"all teeth{arch}"
    return f"the laboratory chooses {chosen} of {named}; never enamel reduction or extraction"


def _excluded(part: Exclusion, ctx: Context) -> str:
    del ctx
    arch = f" in the {part.arch} arch" if part.arch else ""
    return f"{MEANS[part.means]}{arch}{where(part.teeth)}{'' if arch or part.teeth else ' anywhere'}"


def _expected(part: Expectation, ctx: Context) -> str:
    del ctx
    bounds = (changed(part.measure, bound, part.unit) for bound in (part.at_least, part.at_most))
    told = f"the {measure(part.measure)} changes by {bounded(*bounds)}, by {gloss(part.ground)}"
    at = f", at {contacts(part.contacts)}" if part.contacts else ""
    return told + at + (f", from {tooth(part.tooth)}" if part.tooth else "")


_ALLOWED = "Allowed: "

MEANS_TOLD: Mapping[type, Teller] = MappingProxyType(
    {
        EnamelReduction: saying("means", _ALLOWED, _enamel),
        IncisorTravel: saying("means", _ALLOWED, _travel),
        WidthChange: saying("means", _ALLOWED, _width),
        ArchSlide: saying("means", _ALLOWED, _slide),
        VerticalMovement: saying("means", _ALLOWED, _vertical),
        AnyMovement: saying("means", _ALLOWED, _any),
        PosteriorOpenBite: saying("means", _ALLOWED, _open_bite),
        Extraction: saying("means", _ALLOWED, _extraction),
        ClassElastics: saying("means", _ALLOWED, _class_elastics),
        Elastics: saying("means", _ALLOWED, _elastics),
        AuxiliaryUse: saying("means", _ALLOWED, _auxiliary),
        LaboratoryChoice: saying("means", _ALLOWED, _choice),
        Exclusion: saying("means", "Not allowed: ", _excluded),
        Expectation: saying("expected", "Counted on, not ordered: ", _expected),
    }
)
"""What tells each means, allowed or not, and each change counted on."""
