"""A clause said again: for the teeth, contacts or members where it is not met, with the amounts as ordered."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from types import MappingProxyType
from typing import Any, TypeVar

from wellposed.model.base import Part
from wellposed.model.clauses import Align, Close, CloseArch, Hold, KeepMotion, KeepVariable, Movement
from wellposed.model.making import (
    Attachment,
    AttachmentMust,
    AttachmentMustNot,
    AttachmentPrefer,
    AttachmentPreferNot,
    AttachmentRest,
    LargestStep,
    Staging,
)
from wellposed.model.means import (
    AnyMovement,
    ArchSlide,
    EnamelReduction,
    Exclusion,
    IncisorTravel,
    VerticalMovement,
    WidthChange,
)
from wellposed.review.result import Compared
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.teeth import TEETH

__all__ = ["again", "repeated"]

P = TypeVar("P", bound=Part)
Changes = dict[str, Any]
_CARRIED: Mapping[type[Attachment], str] = MappingProxyType(
    {
        AttachmentMust: "must",
        AttachmentMustNot: "must_not",
        AttachmentPrefer: "prefer",
        AttachmentPreferNot: "prefer_not",
    }
)


def again(clause: P, **changes: Any) -> P:
    """The same clause with other members; None takes one out."""
    members = {name: getattr(clause, name) for name in clause.model_fields_set} | changes
    return type(clause).model_validate({name: value for name, value in members.items() if value is not None})


def repeated(clause: Any, unmet: Iterable[Compared], new_id: str) -> Any:
    """The clause under a new id, because of itself, as far as these parts of it are not met; all of it for no parts.

    A staging gives no reasons, and a prescription has but one: it says what is not met, and no more.
    """
    parts = tuple(unmet)
    named: Changes = {"id": new_id, "because": (clause.id,)}
    if isinstance(clause, AttachmentRest):
        rest = {name: getattr(clause, name) for name in ("reason", "shape", "words") if getattr(clause, name)}
        return AttachmentMustNot.model_validate(named | rest | {"must_not": _teeth(parts)})
    if isinstance(clause, Staging):
        return again(clause, id=new_id, **_staged(clause, parts))
    narrow = next((of for kind, of in _NARROWED.items() if isinstance(clause, kind)), None)
    as_one = not parts or any(not part.where or part.what == "alike" for part in parts)
    return again(clause, **named, **({} if as_one or narrow is None else narrow(clause, parts)))


def _places(parts: Iterable[Compared]) -> tuple[str, ...]:
    """Every tooth or contact the parts are taken at, each once."""
    return tuple(dict.fromkeys(one for part in parts for one in part.where.replace("/", " ").split()))


def _teeth(parts: Iterable[Compared]) -> tuple[str, ...]:
    """The teeth the parts are taken at, those of contacts too."""
    found = (teeth_of(place) if "-" in place else (place,) for place in _places(parts))
    return tuple(dict.fromkeys(tooth for teeth in found for tooth in teeth if tooth in TEETH))


def _of(member: str) -> Callable[[Any, tuple[Compared, ...]], Changes]:
    """The teeth of a list that are not met, in the order of the list."""

    def narrowed(clause: Any, parts: tuple[Compared, ...]) -> Changes:
        unmet = _teeth(parts)
        return {member: tuple(tooth for tooth in getattr(clause, member) if tooth in unmet) or None}

    return narrowed


def _named(clause: Any, parts: tuple[Compared, ...]) -> Changes:
    """The teeth not met by name, where the clause spoke of an arch or a group."""
    del clause
    return {"teeth": _teeth(parts)}


def _slid(clause: ArchSlide, parts: tuple[Compared, ...]) -> Changes:
    return _named(clause, parts) | {"sides": None}


def _aligned(clause: Align, parts: tuple[Compared, ...]) -> Changes:
    """Teeth still turned or displaced; of overlap left, all of it, as the sum counts."""
    if any(part.what == "overlap" for part in parts):
        return {}
    return _of("align")(clause, parts)


def _closed(clause: Close, parts: tuple[Compared, ...]) -> Changes:
    unmet = {normal(place) for place in _places(parts)}
    return {"close": tuple(contact for contact in clause.close if normal(contact) in unmet)}


def _reduced(clause: EnamelReduction, parts: tuple[Compared, ...]) -> Changes:
    """The contacts at which too much is taken; the limit in all then says nothing where there is one of each."""
    contacts = tuple(place for place in _places(parts) if "-" in place)
    in_all = None if clause.per_contact is not None else clause.in_all
    return {"contacts": contacts, "arch": None, "at_least": None, "in_all": in_all}


def _barred(clause: Exclusion, parts: tuple[Compared, ...]) -> Changes:
    teeth = _teeth(parts)
    kept = teeth if clause.teeth is None else tuple(tooth for tooth in clause.teeth if tooth in teeth)
    return {"teeth": kept, "arch": None}


def _carried(clause: Attachment, parts: tuple[Compared, ...]) -> Changes:
    return _of(_CARRIED[type(clause)])(clause, parts)


def _staged(clause: Staging, parts: tuple[Compared, ...]) -> Changes:
    """Of a staging the members that are not met; its order of clauses no setup shows."""
    kinds = {part.what for part in parts}
    steps = tuple(step for step in clause.largest_steps or () if _passed(step, clause, parts))
    return {
        "largest_steps": steps or None,
        "wear_interval_days": clause.wear_interval_days if "wear-interval" in kinds else None,
        "most_aligners": clause.most_aligners if "aligners" in kinds else None,
        "order": None,
    }


def _passed(step: LargestStep, clause: Staging, parts: tuple[Compared, ...]) -> bool:
    """Whether a step that is too large is one this entry bounds: by naming the tooth, or where no other names it."""
    where = [part.where.split() for part in parts if part.what == "step"]
    teeth = [names[-1] for names in where if names[0] == step.variable]
    others = {t for one in clause.largest_steps or () if one.variable == step.variable for t in one.teeth or ()}
    return any(tooth in step.teeth if step.teeth else tooth not in others for tooth in teeth)


_NARROWED: Mapping[Any, Callable[[Any, tuple[Compared, ...]], Changes]] = MappingProxyType(
    {
        Align: _aligned,
        Close: _closed,
        CloseArch: lambda clause, parts: {},
        Hold: _of("hold"),
        KeepVariable: _of("teeth"),
        KeepMotion: _of("teeth"),
        Movement: _of("teeth"),
        EnamelReduction: _reduced,
        IncisorTravel: _named,
        WidthChange: _named,
        ArchSlide: _slid,
        VerticalMovement: _of("teeth"),
        AnyMovement: _of("teeth"),
        Exclusion: _barred,
        Attachment: _carried,
    }
)
"""Which members say where a clause is not met; every other clause is repeated as it stands."""
