"""Room at a contact along the path: what movement has made of it by an aligner, and what enamel has."""

from __future__ import annotations

from wellposed.kinematics.mouth import Contact
from wellposed.review.held import Held
from wellposed.review.travel import place_after
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import RIGHT, arch_of, side_of

_ROUNDING = 2


def told_after(held: Held, contact: Contact) -> list[int]:
    """The aligners of its arch after which the path says where teeth stand."""
    arch = arch_of(contact.first)
    return sorted({stage.aligner for stage in held.setup.stages or () if stage.arch == arch})


def made_by_movement(held: Held, contact: Contact, aligner: int) -> float | None:
    """Room made between two teeth after an aligner by ``along`` and ``out``, mm; None where a place is not told.

    As in the check: along the arch line one to one, in and out through the geometry of the arch at the start.
    """
    row = held.mouth.rows[arch_of(contact.first)]
    loses, gains = row.line(0.0).chord(row.initial.index(contact.first), row.initial.index(contact.second))
    outs = _out(held, contact.first, aligner), _out(held, contact.second, aligner)
    slides = _slide(held, contact.first, aligner), _slide(held, contact.second, aligner)
    if outs[0] is None or outs[1] is None or slides[0] is None or slides[1] is None:
        return None
    return round(slides[1] - slides[0] + gains * outs[1] - loses * outs[0], _ROUNDING)


def made_by_enamel(held: Held, contact: Contact, aligner: int) -> float:
    """Enamel taken off there before an aligner is first worn, mm; what is not timed counts as taken at the start."""
    return sum(
        one.amount
        for one in held.setup.reductions or ()
        if normal(one.contact) == contact.name and (one.before_aligner or 0) <= aligner
    )


def _slide(held: Held, tooth: str, aligner: int) -> float | None:
    along = _place(held, tooth, "along", aligner)
    return along if along is None or side_of(tooth) == RIGHT else -along


def _out(held: Held, tooth: str, aligner: int) -> float | None:
    """``out`` of the arch form: a displaced tooth's way to the line makes no room, and comes first."""
    moved, way = _place(held, tooth, "out", aligner), held.matter.ended.way_to_line(tooth)
    return None if moved is None else moved - min(max(moved, min(0.0, way)), max(0.0, way))


def _place(held: Held, tooth: str, variable: Variable, aligner: int) -> float | None:
    way = held.ways.get((tooth, variable))
    if way:
        return place_after(way, aligner)
    stays = tooth in held.mouth.locked or held.plan.movement(tooth, variable) == 0
    return 0.0 if stays else None
