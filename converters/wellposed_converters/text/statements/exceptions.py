"""What an exception takes out of a statement: "except 15", "but not on 13", "rather than on the incisors"."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.fold import Part
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.statement import Bag, Context, Read, spans
from wellposed_converters.text.statements.where import where

INSTEAD: Final = ("rather than", "instead of")
"""What stands after these is forbidden, not merely left out."""


def excepted(part: Part, context: Context, read: Callable[[Part, Context], Read]) -> Read:
    """The statement without what is excepted. :raises Refused: when the exception is no place, or there are two."""
    marks = [number for number, item in enumerate(part.items) if item.category == "EXCEPT"]
    before, after = part.items[: marks[0]], part.items[marks[0] + 1 :]
    if len(marks) > 1 or not before or not after or any(item.category != "PLACE" for item in after) or part.asides:
        raise Refused("exception")
    said = read(replace(part, items=before), context)
    bag = Bag(list(after), None, "start", tuple(after), True)
    if len(said.clauses) != 1 or said.questions:
        raise Refused("exception-of-what")
    clause = said.clauses[0]
    place = where(bag, _same_arch(context, clause), "contacts" if clause.kind == "ipr" else "teeth")
    if place.open:
        return Read(
            said.clauses, (*said.questions, *(replace(one, spans=spans(part.items)) for one in place.questions))
        )
    if part.items[marks[0]].words.casefold() in INSTEAD and clause.mode == "do":
        away = Clause(clause.kind, "forbid", spans(part.items), place.teeth, place.contacts, inferred=place.inferred)
        return Read((clause, away))
    return _without(clause, place.teeth, part)


def _without(clause: Clause, teeth: tuple[int, ...], part: Part) -> Read:
    whole = clause.with_(spans=spans(part.items))
    if teeth and set(teeth) < set(clause.teeth):
        return Read((whole.with_(teeth=tuple(tooth for tooth in clause.teeth if tooth not in teeth)),))
    return Read((), (Question("scope", "exception-of-what", spans(part.items)),))


def _same_arch(context: Context, clause: Clause) -> Context:
    """Teeth that are named instead of others are in their arch, unless an arch is named."""
    upper = {tooth // 10 in (1, 2, 5, 6) for tooth in clause.teeth}
    return (
        context.with_(arch="upper" if upper.pop() else "lower") if len(upper) == 1 and context.arch is None else context
    )
