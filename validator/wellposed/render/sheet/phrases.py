"""What the clauses of a prescription say of one tooth, in as few words as tell it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType
from typing import Any

from wellposed.kinematics.means import allowance_opens, width_teeth
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import incisors, molars
from wellposed.model.clauses import Align, Close, CloseArch, Hold, KeepMotion, KeepVariable, Leave, Level, Movement
from wellposed.model.means import (
    AnyMovement,
    ArchSlide,
    ClassElastics,
    Exclusion,
    IncisorTravel,
    LaboratoryChoice,
    VerticalMovement,
    WidthChange,
)
from wellposed.render.readback.words import amount
from wellposed.render.sheet.at_contacts import plain
from wellposed.render.words import MEANS_WORDS, VARIABLE_WORDS
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import SIDES, arch_of, is_molar

__all__ = ["phrases_of"]

_ATTACHED = {
    "must": "attachment",
    "must_not": "no attachment",
    "may": "attachment allowed",
    "prefer": "attachment wished for",
    "prefer_not": "no attachment wished for",
}


def phrases_of(mouth: Mouth, tooth: str) -> Iterator[str]:
    """A phrase a clause, in the order of the document: what moves, what is kept, what may be used, attachments."""
    rx = mouth.prescription
    if tooth in mouth.extracted:
        yield "taken out"
        return
    if rx.treat is not None and rx.treat.arches not in ("both", arch_of(tooth)):
        return
    for item in (*(rx.movements or ()), *(rx.goals or ()), *(rx.keep or ()), *(rx.allow or ()), *(rx.exclude or ())):
        told = _TOLD.get(type(item))
        words = told(mouth, item, tooth) if told else None
        if words:
            yield words
    for clause in rx.attachments or ():
        yield from (words for member, words in _ATTACHED.items() if tooth in getattr(clause, member, ()))


# what moves, what is kept


def _movement(mouth: Mouth, item: Movement, tooth: str) -> str | None:
    del mouth
    if tooth not in item.teeth:
        return None
    more = f", then {amount(item.overcorrection.value, item.overcorrection.unit)} over" if item.overcorrection else ""
    return f"{_wish(item)}{_motion(item.motion)} {_bounds(item.at_least, item.at_most, item.unit)}{more}"


def _bounds(low: float | None, high: float | None, unit: str) -> str:
    """``2 to 2.5 mm``, ``2 mm or more``, ``up to 2 mm``."""
    if low is None or high is None:
        return f"{amount(low, unit)} or more" if low is not None else f"up to {amount(high or 0.0, unit)}"
    return amount(high, unit) if low == high else f"{plain(low)} to {amount(high, unit)}"


def _motion(motion: str) -> str:
    return motion.replace("-", " ")


def _wish(item: Any) -> str:
    return "preferably " if item.strength == "prefer" else ""


def _align(mouth: Mouth, item: Align, tooth: str) -> str | None:
    del mouth
    return f"{_wish(item)}align" if tooth in item.align else None


def _level(mouth: Mouth, item: Level, tooth: str) -> str | None:
    del mouth
    return f"{_wish(item)}level" if item.level == arch_of(tooth) and tooth[1] != "6" else None


def _close(mouth: Mouth, item: Close, tooth: str) -> str | None:
    del mouth
    return f"{_wish(item)}close space" if any(tooth in teeth_of(contact) for contact in item.close) else None


def _close_arch(mouth: Mouth, item: CloseArch, tooth: str) -> str | None:
    del mouth
    return f"{_wish(item)}close spaces" if item.close_arch == arch_of(tooth) and not is_molar(tooth) else None


def _leave(mouth: Mouth, item: Leave, tooth: str) -> str | None:
    del mouth
    return f"{_wish(item)}leave space" if tooth in teeth_of(item.leave) else None


def _hold(mouth: Mouth, item: Hold, tooth: str) -> str | None:
    del mouth
    return f"{_wish(item)}do not move" if tooth in item.hold else None


def _keep(mouth: Mouth, item: KeepVariable | KeepMotion, tooth: str) -> str | None:
    del mouth
    if tooth not in item.teeth:
        return None
    what = VARIABLE_WORDS[item.variable] if isinstance(item, KeepVariable) else _motion(item.motion)
    return f"{_wish(item)}keep: {what} at most {amount(item.within, item.unit)}"


# what may be used


def _travel(mouth: Mouth, item: IncisorTravel, tooth: str) -> str | None:
    return _may(item, tooth in (item.teeth or incisors(mouth, item.arch)))


def _width(mouth: Mouth, item: WidthChange, tooth: str) -> str | None:
    return _may(item, tooth in width_teeth(mouth, item), " a pair")


def _slide(mouth: Mouth, item: ArchSlide, tooth: str) -> str | None:
    return _may(item, tooth in (item.teeth or molars(mouth, item.arch, item.sides or SIDES)))


def _vertical(mouth: Mouth, item: VerticalMovement, tooth: str) -> str | None:
    del mouth
    return _may(item, tooth in item.teeth)


def _any(mouth: Mouth, item: AnyMovement, tooth: str) -> str | None:
    del mouth
    return f"may: {_motion(item.motion)} up to {amount(item.up_to, item.unit)}" if tooth in item.teeth else None


def _may(item: Any, meant: bool, more: str = "") -> str | None:
    return f"may: {MEANS_WORDS[item.use]} up to {amount(item.up_to, item.unit)}{more}" if meant else None


def _elastics(mouth: Mouth, item: ClassElastics, tooth: str) -> str | None:
    pulled = {opening.at.tooth for opening in allowance_opens(mouth, item)[1]}
    amounts = "" if item.up_to is None else f" up to {amount(item.up_to, item.unit or 'mm')}"
    return f"may: {MEANS_WORDS[item.use]}{amounts}" if tooth in pulled else None


def _choice(mouth: Mouth, item: LaboratoryChoice, tooth: str) -> str | None:
    del mouth
    meant = (item.teeth is None or tooth in item.teeth) and item.arch in (None, arch_of(tooth))
    what = ": " + ", ".join(VARIABLE_WORDS[one] for one in item.variables) if item.variables else ""
    return f"may: laboratory's choice{what}" if meant else None


def _excluded(mouth: Mouth, item: Exclusion, tooth: str) -> str | None:
    del mouth
    return f"not: {MEANS_WORDS[item.means]}" if item.teeth and tooth in item.teeth else None


_TOLD: Mapping[type, Callable[[Mouth, Any, str], str | None]] = MappingProxyType(
    {
        Movement: _movement,
        Align: _align,
        Level: _level,
        Close: _close,
        CloseArch: _close_arch,
        Leave: _leave,
        Hold: _hold,
        KeepVariable: _keep,
        KeepMotion: _keep,
        IncisorTravel: _travel,
        WidthChange: _width,
        ArchSlide: _slide,
        VerticalMovement: _vertical,
        AnyMovement: _any,
        ClassElastics: _elastics,
        LaboratoryChoice: _choice,
        Exclusion: _excluded,
    }
)
