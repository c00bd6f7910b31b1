"""A clause that is not met: what was asked, what is delivered, how far off, and whose doing it is."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.model.base import Part
from wellposed.render.amounts import amount
from wellposed.render.conflict import limit
from wellposed.render.conflict import silences as silences_of
from wellposed.render.filled import joined
from wellposed.render.review.clause_words import in_words
from wellposed.render.review.delivered import grouped, place
from wellposed.render.review.laid import block
from wellposed.render.review.words import LABELS
from wellposed.review.result import Compared, Nearer, Reviewed
from wellposed.vocabulary.teeth import TEETH

__all__ = ["nearer_words", "unmet_block"]

_SILENCE = "silence "


def unmet_block(reviewed: Reviewed, clause: Part, width: int) -> str:
    """The clause with all there is to say of it, ending in a line break."""
    return "\n".join(block(reviewed.id, _rows(reviewed, clause), width)) + "\n"


def _rows(reviewed: Reviewed, clause: Part) -> Iterator[tuple[str, str]]:
    label = "Wished:" if reviewed.strength == "prefer" else LABELS.get(reviewed.section, "Asked:")
    yield label, in_words(clause) + _tolerance(reviewed.parts)
    label = "Delivered:"
    for line in _delivered(reviewed, clause):
        yield label, line
        label = " "
    if reviewed.against:
        yield "Against it:", _against(reviewed.against)
    if reviewed.nearer:
        yield "All the same:", nearer_words(reviewed.nearer)


_COUNTED = {"1": "aligners", "d": "days"}


def nearer_words(nearer: Nearer) -> str:
    """That the setup could have done better by a clause that none can meet."""
    size = amount(nearer.amount, _COUNTED.get(nearer.unit, nearer.unit))
    return f"another setup could have come {size} nearer with all else no worse than here"


def _delivered(reviewed: Reviewed, clause: Part) -> Iterator[str]:
    """First what is not met, then what cannot be told, then that the others are as asked."""
    unmet = [part for part in reviewed.parts if part.met is False]
    untold = [part for part in reviewed.parts if part.met is None]
    yield from grouped(unmet, reviewed.section, clause)
    yield from grouped(untold, reviewed.section, clause)
    if reviewed.section == "allow":
        return
    others = [tooth for tooth in _teeth(clause) if tooth not in {part.where for part in (*unmet, *untold)}]
    if others and all(part.where in TEETH for part in unmet):
        yield f"{place(others)}: as asked"


def _teeth(clause: Part) -> tuple[str, ...]:
    """The teeth a clause asks something of, each by itself."""
    return next((getattr(clause, name) for name in _EACH if getattr(clause, name, None)), ())


_EACH = ("teeth", "must", "must_not", "prefer", "prefer_not")


def _tolerance(parts: tuple[Compared, ...]) -> str:
    """The tolerance, once for each unit."""
    told = dict.fromkeys(amount(part.tolerance, part.unit) for part in parts if part.met is False and part.tolerance)
    return f"; tolerance {joined(list(told))}" if told else ""


def _against(names: tuple[str, ...]) -> str:
    """What the clause conflicts with: other clauses, what fixes teeth, usual limits, what was not mentioned."""
    stated = [_named(name) for name in names if not name.startswith(_SILENCE)]
    silences = silences_of(_silence(name) for name in names if name.startswith(_SILENCE))
    return joined([*stated, *([f"what is not mentioned and so kept: {silences}"] if silences else [])])


def _silence(name: str) -> dict[str, str]:
    """``silence lower incisor-vertical`` as what a conflict names."""
    arch, _, group = name.removeprefix(_SILENCE).partition(" ")
    return {"arch": arch, "group": group}


def _named(name: str) -> str:
    kind, _, rest = name.partition(" ")
    if kind == "state":
        return f"{place([rest.partition(' ')[0]])}, which cannot be moved"
    if kind == "practice":
        norm, _, where = rest.partition(" ")
        return f"the usual limit ({limit({'norm': norm, 'place': where})})"
    return f"that no new space is left in the {rest} arch" if kind == "space" and rest else name
