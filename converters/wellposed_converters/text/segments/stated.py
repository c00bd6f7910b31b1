"""One statement of a grouping to clauses and questions."""

from __future__ import annotations

from dataclasses import replace

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.fold import Part
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.segments.leaning import headless_rest
from wellposed_converters.text.segments.readers import READERS
from wellposed_converters.text.statements.asides import asides
from wellposed_converters.text.statements.exceptions import excepted
from wellposed_converters.text.statements.statement import Bag, Context, Read, spans


def read_part(part: Part, context: Context) -> Read:
    """What the statement says. :raises Refused: when it means nothing, or nothing certain."""
    bag = Bag(list(part.items), part.head, part.join, tuple(part.items), part.union)
    if part.head is not None and part.head in bag.items:
        bag.items.remove(part.head)
    asked = [item for item in part.items if item.category == "ASKED"]
    if asked:
        return _asked(asked, part)
    if any(item.category == "EXCEPT" for item in part.items):
        return excepted(part, context, read_part)
    if part.form == "whole":
        return _whole(bag, context)
    _same_verb(bag, context)
    read = _headed(bag, part.head, context) if part.head is not None else headless_rest(bag, part, context)
    read = _spanned(read, bag)
    more = asides(part, read, context, READERS)
    own = list(read.clauses)
    if more.again:
        own[0] = own[0].with_(spans=(*own[0].spans, *more.again))
    return Read((*own, *more.clauses), (*read.questions, *more.questions), read.said)


def _same_verb(bag: Bag, context: Context) -> None:
    """The verb and the teeth before hold for what is denied: "level the margins of 11 and 21, not the edges"."""
    before = context.before
    if before is None or before.far or bag.has("VERB") or not bag.has("NEG") or not _another(before.head, bag.head):
        return
    own = {item.category for item in bag.every}
    bag.items += [item for item in before.items if item.category in {"VERB", "PLACE"} - (own - {"VERB"})]


def _another(before: Item | None, head: Item | None) -> bool:
    """Whether both are measures of one kind, and not the same."""
    if before is None or head is None or head.category != "MEASURE":
        return False
    return _kind(before) == _kind(head) and before.name != head.name


def _asked(asked: list[Item], part: Part) -> Read:
    """A word that nobody may decide: the whole statement is a question."""
    every = spans([*part.items, *(item for aside in part.asides for item in aside)])
    facts = asked[0].value.facts
    return Read((), (Question(facts["type"], asked[0].name, every, tuple(facts["options"])),))


def _whole(bag: Bag, context: Context) -> Read:
    item = next(item for item in bag.every if item.category == "WHOLE")
    if any(one.category not in ("WHOLE", "YES") for one in bag.every):
        raise Refused("whole-and-more")
    facts = item.value.facts
    clause = Clause(facts["kind"], facts["mode"], bag.spans(), of=facts.get("of"), arch=facts.get("arch"))
    if not facts.get("teeth"):
        return Read((clause,))
    teeth = context.before.teeth if context.before else ()
    if not teeth:
        raise Refused("whose-units")
    return Read((clause.with_(teeth=teeth),))


def _headed(bag: Bag, head: Item, context: Context) -> Read:
    """A statement with a head of its own; a lead with another head must not be lost."""
    led = [said for said in context.lead if said.head is not None and said.items]
    if any(_kind(said.head) != _kind(head) for said in led):
        raise Refused("lead-of-another-kind")
    return READERS[head.category](bag, context)


def _kind(head: Item | None) -> str | None:
    entry = head.value if head is not None else None
    facts = getattr(entry, "facts", None)
    return str(facts["kind"]) if facts else None


def _spanned(read: Read, bag: Bag) -> Read:
    """Questions that do not say where they stand concern the whole statement."""
    open_ = tuple(index for index, clause in enumerate(read.clauses) if clause.pending or clause.condition)
    questions = (
        replace(question, spans=question.spans or bag.spans(), concerns=question.concerns or open_)
        for question in read.questions
    )
    return Read(read.clauses, tuple(questions), read.said)
