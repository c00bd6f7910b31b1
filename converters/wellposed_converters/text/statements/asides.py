"""What stands in parentheses: the state of the tooth before them, or the present value of the measure."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.grammar.fold import Part
from wellposed_converters.text.grammar.items import HEADS, Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import measured
from wellposed_converters.text.statements.statement import Bag, Context, Read, spans

Readers = Mapping[str, Callable[[Bag, Context], Read]]


def asides(part: Part, read: Read, context: Context, readers: Readers) -> Read:
    """The clauses and questions of the parentheses of a statement. :raises Refused: for one that means nothing."""
    clauses: list[Clause] = []
    questions: list[Question] = []
    again: list[Span] = []
    for inside, before in zip(part.asides, part.after, strict=True):
        said = _aside(inside, before, part, read, context, readers)
        clauses += said.clauses
        questions += said.questions
        again += said.again
    return Read(tuple(clauses), tuple(questions), again=tuple(again))


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
    if len(heads) == 1 and _says_again(inside, heads[0], part, read):
        return Read(again=spans(inside))
    if [item.category for item in inside] == ["AMOUNT"]:
        return _present(inside[0], part, read)
    raise Refused("aside")


def _says_again(inside: list[Item], head: Item, part: Part, read: Read) -> bool:
    """Whether they say the same again, of teeth that include those named: "41 goes out (lower incisor extraction)"."""
    own = part.head.value.facts["kind"] if part.head is not None and part.head.category == "MOTION" else None
    places = [item.value for item in inside if item.category == "PLACE"]
    teeth = {tooth for clause in read.clauses for tooth in clause.teeth}
    wider = all(teeth <= set(one.teeth) for place in places for one in place.meanings)
    only = {item.category for item in inside} <= {"PLACE", "MOTION"}
    return head.category == "MOTION" and head.value.facts["kind"] == own and only and bool(teeth) and wider


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
