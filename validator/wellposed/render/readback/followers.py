"""Measures that neither a goal nor a keep holds: those that nothing opened can change, and those that may follow."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.kinematics.measures import ROOM, measure_row
from wellposed.kinematics.translate import Translation
from wellposed.model.clauses import Hold
from wellposed.render.filled import joined
from wellposed.render.readback.sentence import Context, Sentence
from wellposed.vocabulary.measures import MEASURE_KINDS

__all__ = ["measures_left"]


def measures_left(ctx: Context) -> Iterator[Sentence]:
    """What holds for the measures nothing is said of; those whose teeth are not there are left out."""
    named = _named(ctx)
    left = [name for name in MEASURE_KINDS if name not in named and measure_row(ctx.translation.frame, name)]
    follow = [name for name in left if _may_change(ctx.translation, name)]
    stay = [name for name in left if name not in follow]
    if stay:
        yield Sentence("", "kept", f"Kept, as nothing that moves them is opened: {_words(stay)}.")
    if follow:
        yield Sentence(
            "", "open", f"Free to follow what is moved, as no goal and no keep holds them: {_words(follow)}."
        )


def _named(ctx: Context) -> set[str]:
    items = [*(ctx.rx.goals or ()), *(ctx.rx.keep or ()), *(ctx.rx.expect or ())]
    return {item.measure for item in items if hasattr(item, "measure")}


def _words(names: list[str]) -> str:
    return joined([MEASURE_KINDS[name].words for name in names])


def _may_change(translation: Translation, name: str) -> bool:
    if name == "posterior-open-bite":
        return translation.hinge_live
    if name.endswith(ROOM):
        return _room_changes(translation, name.partition("-")[0])
    row = measure_row(translation.frame, name)
    columns = set(row.terms) if row else set()
    bite = translation.hinge_live and translation.frame.hinge.closing in columns
    return bite or not columns.isdisjoint(_free(translation))


def _room_changes(translation: Translation, arch: str) -> bool:
    """Whether anything that makes or takes room in an arch is opened: slides, travel in or out, enamel."""
    frame, row = translation.frame, translation.mouth.rows[arch]
    columns = {frame.columns[tooth, variable] for tooth in row.teeth for variable in ("along", "out")}
    columns |= {frame.contacts[contact.name].reduction for contact in row.contacts}
    return not columns.isdisjoint(_free(translation))


def _free(translation: Translation) -> set[int]:
    """The columns that something opens, without those of teeth that are held or locked."""
    held = {tooth for keep in translation.rx.keep or () if isinstance(keep, Hold) for tooth in keep.hold}
    still = held | set(translation.mouth.locked)
    columns = {column for (tooth, _), column in translation.frame.columns.items() if tooth in still}
    return translation.bounds.opened_columns - columns
