"""What stands in parentheses: the state of the tooth before them, or the present value of the measure."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.fold import HEADS, Part
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.statements.force import measured
from wellposed_converters.text.statements.statement import Bag, Context, Read, Refused, spans

Readers = Mapping[str, Callable[[Bag, Context], Read]]


def asides(part: Part, read: Read, context: Context, readers: Readers) -> Read:
    """The clauses and questions of the parentheses of a statement. :raises Refused: for one that means nothing."""
    clauses: list[Clause] = []
    questions: list[Question] = []
    for inside, before in zip(part.asides, part.after, strict=True):
        said = _aside(inside, before, part, read, context, readers)
        clauses += said.clauses
        questions += said.questions
    return Read(tuple(clauses), tuple(questions))


def _aside(inside: list[Item], before: Item | None, part: Part, read: Read, context: Context, readers: Readers) -> Read:
    asked = [item for item in inside if item.category == "ASKED"]
    if asked:
        facts: Any = asked[0].value.facts
        return Read((), (Question(facts["type"], asked[0].name, spans(inside), tuple(facts["options"])),))
    heads = [item for item in inside if item.category in HEADS]
    if len(heads) == 1 and heads[0].category == "STATE" and before is not None and before.category == "PLACE":
        rest = [item for item in inside if item is not heads[0]]
        every = (before, *inside)
        return readers["STATE"](Bag([before, *rest], heads[0], "start", every), context)
    if [item.category for item in inside] == ["AMOUNT"]:
        return _present(inside[0], part, read)
    raise Refused("aside")


def _present(item: Item, part: Part, read: Read) -> Read:
    """An amount in parentheses after a measure is its present value."""
    head = part.head
    if head is None or head.category not in ("MEASURE", "STATE") or item.value.asks or not read.clauses:
        raise Refused("amount-aside")
    first = read.clauses[0]
    if first.mode == "state" and first.minimum is None and len(read.clauses) == 1:
        raise Refused("amount-of-a-state")
    state = Clause(
        first.kind, "state", spans([head, item]), first.teeth, first.contacts, first.arch, first.side, of=first.of
    )
    return Read((measured(state, item.value, "current"),))
