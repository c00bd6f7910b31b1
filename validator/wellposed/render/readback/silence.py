"""What was not mentioned and is therefore kept: teeth, enamel, the contact of the back teeth, means.

Taken from what the arithmetic counts as opened, so that the read-back and a check never differ on it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.kinematics.excluded import excluded_senses, excludes_contact
from wellposed.kinematics.openings import Sensed, sensed
from wellposed.model.clauses import Align, Hold
from wellposed.model.means import Exclusion
from wellposed.render.filled import joined
from wellposed.render.readback.senses import BOTH_WAYS, ONE_WAY
from wellposed.render.readback.sentence import Context, Sentence
from wellposed.render.readback.terms import MEANS
from wellposed.render.readback.words import contacts, teeth
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.motions import VARIABLES, Variable

__all__ = ["kept"]

_BUILT = {
    "elastic": ("class-ii-elastics", "class-iii-elastics", "elastics"),
    "elastic-notch": ("class-ii-elastics", "class-iii-elastics", "elastics"),
    "button-opening": ("class-ii-elastics", "class-iii-elastics", "elastics", "auxiliary"),
    "bite-plane": ("auxiliary",),
    "bite-block": ("auxiliary",),
}
"""Means that something built beside the movement speaks of."""

_SHUT = "Kept: the contact of the back teeth; no gap opens there, and none that is there grows."


class Still(NamedTuple):
    """What of a tooth nothing speaks of: silent senses, and whether it may yet come to the arch line."""

    silent: frozenset[tuple[Variable, int]]
    comes: bool


def kept(ctx: Context) -> Iterator[Sentence]:
    """Every sentence on what is kept because nothing speaks of it."""
    for text in (*_teeth(ctx), *_enamel(ctx), *_back(ctx), *_means(ctx)):
        yield Sentence("", "kept", text)


# teeth


def _teeth(ctx: Context) -> Iterator[str]:
    groups: dict[Still, list[str]] = {}
    for tooth in _spoken_of_nowhere(ctx):
        silent = frozenset(_silent(ctx, tooth))
        comes = ("out", _homewards(ctx, tooth)) in silent and _aligned(ctx, tooth)
        groups.setdefault(Still(silent, comes), []).append(tooth)
    for still, alike in groups.items():
        if still.silent:
            yield f"Kept: {teeth(alike)}; no {_movements(still)}."


def _spoken_of_nowhere(ctx: Context) -> Iterator[str]:
    """The teeth in line that no hold, no state and no untreated arch keeps already."""
    held = {tooth for keep in ctx.rx.keep or () if isinstance(keep, Hold) for tooth in keep.hold}
    for arch in _treated(ctx):
        yield from (t for t in ctx.mouth.rows[arch].teeth if t not in held and t not in ctx.mouth.locked)


def _treated(ctx: Context) -> list[str]:
    arches = ctx.rx.treat.arches if ctx.rx.treat else "both"
    return [arch for arch in ctx.mouth.rows if arches in (arch, "both")]


def _silent(ctx: Context, tooth: str) -> Iterator[tuple[Variable, int]]:
    barred = _barred(ctx)
    for variable in VARIABLES:
        for sign in (1, -1):
            at = sensed(tooth, variable, sign)
            if at not in barred and not ctx.translation.opened.sources(at):
                yield variable, sign


def _barred(ctx: Context) -> set[Sensed]:
    return {at for item in ctx.rx.exclude or () for at in excluded_senses(ctx.mouth, item)}


def _homewards(ctx: Context, tooth: str) -> int:
    """The sense in which a displaced tooth comes to the arch line; 0 for one that stands in it."""
    displaced = ctx.mouth.tooth_values("displacement").get(tooth, 0.0)
    return -1 if displaced > 0 else 1 if displaced < 0 else 0


def _aligned(ctx: Context, tooth: str) -> bool:
    return any(isinstance(goal, Align) and tooth in goal.align for goal in ctx.rx.goals or ())


def _movements(still: Still) -> str:
    if len(still.silent) == 2 * len(VARIABLES) and not still.comes:
        return "movement at all"
    return ", no ".join(told for variable in VARIABLES for told in _of(variable, still))


def _of(variable: Variable, still: Still) -> Iterator[str]:
    signs = [sign for sign in (1, -1) if (variable, sign) in still.silent]
    home = " but to come to the arch line" if still.comes and variable == "out" else ""
    if len(signs) == 2:
        yield BOTH_WAYS[variable] + home
    elif signs:
        yield ONE_WAY[variable, signs[0]] + home


# enamel, the back teeth


def _enamel(ctx: Context) -> Iterator[str]:
    """The contacts of a treated arch at which enamel may neither be taken off nor is expressly kept."""
    allowed = {name for names in ctx.translation.bounds.reductions.values() for name in names}
    for arch in _treated(ctx):
        every = [contact.name for contact in ctx.mouth.rows[arch].contacts]
        silent = [name for name in every if name not in allowed and not _enamel_kept(ctx, name)]
        if silent and silent == every:
            yield f"Kept: all enamel of the {arch} arch; none is taken off at any contact."
        elif silent:
            yield f"Kept: the enamel at {contacts(silent)}; none is taken off there."


def _enamel_kept(ctx: Context, contact: str) -> bool:
    barred = [item for item in ctx.rx.exclude or () if item.means == "enamel-reduction"]
    held = [keep for keep in ctx.rx.keep or () if isinstance(keep, Hold)]
    return any(excludes_contact(item, contact) for item in barred) or any(
        tooth in keep.hold for keep in held for tooth in teeth_of(contact)
    )


def _back(ctx: Context) -> Iterator[str]:
    said = [*(ctx.rx.goals or ()), *(ctx.rx.keep or ()), *(ctx.rx.exclude or ())]
    told = {getattr(item, "measure", None) or getattr(item, "means", None) for item in said}
    translation = ctx.translation
    if translation.frame.hinge.shut and not translation.bounds.gap_opened and "posterior-open-bite" not in told:
        yield _SHUT


# means


def _means(ctx: Context) -> Iterator[str]:
    unused = [words for means, words in MEANS.items() if means not in _mentioned(ctx) and not _moves(ctx, means)]
    if unused:
        yield f"Not used, as neither allowed nor excluded: {joined(unused)}."


def _mentioned(ctx: Context) -> set[str]:
    named: set[str] = {item.use for item in ctx.rx.allow or ()}
    named |= {item.means for item in ctx.rx.exclude or ()}
    named |= {means for item in ctx.rx.appliance or () for means in _BUILT.get(item.part, ())}
    return named | ({"extraction"} if ctx.mouth.extracted else set())


def _moves(ctx: Context, means: str) -> bool:
    """Whether some clause, of whatever kind, opens what this means would move."""
    anywhere = Exclusion.model_validate({"id": "x", "means": means})
    return any(ctx.translation.opened.sources(at) for at in excluded_senses(ctx.mouth, anywhere))
