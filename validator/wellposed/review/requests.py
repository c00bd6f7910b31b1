"""What the next setup is asked for: what was ordered, said again where it is not met, and nothing else."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Any

from wellposed.model.means import (
    AnyMovement,
    ArchSlide,
    ClassElastics,
    EnamelReduction,
    IncisorTravel,
    PosteriorOpenBite,
    VerticalMovement,
    WidthChange,
)
from wellposed.model.prescription import Prescription
from wellposed.model.review import Requests
from wellposed.review.named import clause_of
from wellposed.review.repeated import again, repeated
from wellposed.review.result import Compared, Reviewed, SetupReview, Unasked
from wellposed.review.stay import staying
from wellposed.vocabulary.motions import MOTIONS

__all__ = ["asked_again", "leaning", "requests", "revised_first", "unopened"]

_SECTIONS = ("goals", "keep", "movements", "allow", "exclude", "attachments", "staging")
_UNMET = ("not-met", "beyond")
Sections = dict[str, list[Any]]


def asked_again(review: SetupReview, *, also_preferred: bool = False) -> tuple[Reviewed, ...]:
    """Unmet clauses that another setup can meet, or might, of those a clause can ask for; wishes only if so said."""
    wanted = (one for one in review.clauses if one.outcome in _UNMET and one.section in _SECTIONS)
    return tuple(one for one in wanted if _by_setup(one) and (also_preferred or one.strength != "prefer"))


def _by_setup(one: Reviewed) -> bool:
    return one.doing != "prescription"


def revised_first(review: SetupReview) -> tuple[str, ...]:
    """Ids of the clauses that no setup can meet, wishes left out."""
    return tuple(one.id for one in review.unmet if one.doing == "prescription")


def requests(
    review: SetupReview, prescription: Prescription, accepted: Collection[str] = (), *, also_preferred: bool = False
) -> Requests:
    """Requests for every unmet clause that a setup could meet, and for all that moved unasked; amounts from the start.

    accepted        clauses that are taken as they are: nothing is asked of them
    also_preferred  wishes that are not met are asked for too
    """
    told: Sections = {section: [] for section in _SECTIONS}
    wanted = [one for one in asked_again(review, also_preferred=also_preferred) if one.id not in accepted]
    besides: list[Unasked] = []
    for one in wanted:
        clause = clause_of(prescription, one.section, one.id)
        own, others = _split(clause, one)
        told[one.section].append(repeated(clause, own, "r0"))
        besides += [moved for moved in review.unasked if moved.owner == one.id and (moved.what, moved.where) in others]
    known = {*accepted, *(one.id for one in wanted), *revised_first(review)}
    silent = [one for one in review.unasked if not known & tellers(review, one) and one.doing != "prescription"]
    for section, clause in staying(prescription, [*silent, *besides]):
        told[section].append(clause)
    return _made(told, _new_ids(review))


def unopened(review: SetupReview) -> tuple[Unasked, ...]:
    """What moved unasked, without what an unmet clause tells already."""
    told = {one.id for one in review.unmet}
    return tuple(one for one in review.unasked if not told & tellers(review, one))


def leaning(clause: Reviewed) -> bool:
    """Whether it is met only with a change that is counted on."""
    return clause.outcome in ("met", "within") and any(part.why == "expected" for part in clause.parts)


def tellers(review: SetupReview, one: Unasked) -> set[str]:
    """The clauses that are not met by what moved unasked: the one whose amount is passed, and those that held it."""
    holding = {
        clause.id
        for clause in review.clauses
        for part in clause.parts
        if part.met is False and (part.what, part.where) == (one.what, one.where)
    }
    return holding | ({one.owner} if one.owner is not None else set())


# what of a clause is said again by itself


def _split(clause: Any, one: Reviewed) -> tuple[list[Compared], set[tuple[str, str]]]:
    """The unmet parts a clause names itself; and what an allowance only brings with it, by kind and place."""
    unmet = [part for part in one.parts if part.met is False]
    if one.section != "allow":
        return unmet, set()
    own = [part for part in unmet if _is_own(clause, part)]
    return own, {(part.what, part.where) for part in unmet if part not in own}


def _is_own(clause: Any, part: Compared) -> bool:
    """Whether an allowance speaks of this itself, rather than of what comes or follows with it."""
    teeth = getattr(clause, "teeth", None)
    if part.what in (*_OWN.get(type(clause), ()), *_moved_by(clause)):
        return not teeth or not part.where or set(part.where.split("/")) <= set(teeth)
    return False


def _moved_by(clause: Any) -> tuple[str, ...]:
    return (MOTIONS[clause.motion].variable,) if isinstance(clause, AnyMovement) else ()


_OWN: dict[type, tuple[str, ...]] = {
    EnamelReduction: ("reduction", "reduction-in-all"),
    IncisorTravel: ("out", "alike"),
    WidthChange: ("out", "width"),
    ArchSlide: ("along",),
    VerticalMovement: ("vertical",),
    ClassElastics: ("along", "out"),
    PosteriorOpenBite: ("posterior-open-bite",),
}


# ids of their own


def _new_ids(review: SetupReview) -> Iterator[str]:
    """``r1``, ``r2`` …, without those the prescription has."""
    taken = {one.id for one in review.clauses}
    most = len(taken) + len(review.clauses) + len(review.unasked) + 1
    return (name for name in (f"r{number}" for number in range(1, 2 * most)) if name not in taken)


def _made(told: Sections, ids: Iterator[str]) -> Requests:
    sections = {
        section: tuple(again(clause, id=next(ids)) for clause in clauses)
        for section, clauses in told.items()
        if clauses
    }
    staged = {"staging": sections["staging"][0]} if "staging" in sections else {}
    return Requests.model_validate(sections | staged)
