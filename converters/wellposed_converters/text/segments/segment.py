"""One segment: every grouping of its items read, groupings removed by named rules, one left or a question."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.grammar.cut import cut
from wellposed_converters.text.grammar.fold import Part, parts
from wellposed_converters.text.grammar.items import HEADS, Found, Item, alternatives
from wellposed_converters.text.grammar.parse import Unit, derivations
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.layout import Block
from wellposed_converters.text.places import Meaning, Numbering, in_mouth_order
from wellposed_converters.text.segments.resolve import Outcome, settle_outcomes
from wellposed_converters.text.statements.asides import asides
from wellposed_converters.text.statements.exceptions import excepted
from wellposed_converters.text.statements.headless import headless
from wellposed_converters.text.statements.measures import measure
from wellposed_converters.text.statements.motions import motion
from wellposed_converters.text.statements.staging import interval, staging
from wellposed_converters.text.statements.statement import Bag, Context, Read, Said, spans
from wellposed_converters.text.statements.states import state
from wellposed_converters.text.statements.uses import use
from wellposed_converters.text.statements.where import lead_place

READERS: Final[Mapping[str, Callable[[Bag, Context], Read]]] = {
    "MEASURE": measure,
    "MEANS": use,
    "MOTION": motion,
    "STATE": state,
    "FACT": state,
    "STEPS": staging,
}
BARE: Final = frozenset(("PLACE", "PERMIT", "GRADE", "RELATION"))
"""What a lead before a colon may hold beside its head and still say nothing by itself."""


ENVELOPE: Final = frozenset(("keep", "envelope"))
"""Verbs of a lead that only announces what follows it: "keep the lower incisors within the present envelope: ..."."""


@dataclass(frozen=True)
class Segment:
    """What one segment says, and what the next may lean on."""

    clauses: tuple[Clause, ...]
    questions: tuple[Question, ...]
    said: Said | None = None


def read_segment(items: Sequence[Item], context: Context, span: Span) -> Segment:
    """The clauses and questions of a segment of items; ``span`` is the whole of it."""
    outcomes: list[Outcome] = []
    for row in alternatives(items):
        found = derivations(tuple(item.category for item in row))
        if found is None:
            return _not_understood(span, "too-many-readings")
        outcomes += [outcome for units in found if (outcome := _outcome(units, row, context)) is not None]
    if not outcomes:
        return islands(items, context, span)
    chosen = settle_outcomes(outcomes, span)
    return Segment(chosen.clauses, chosen.questions, chosen.said)


REACHING: Final = frozenset(("NEG", "COND", "EXCEPT", "ONLY", "THERE", "PREFER", "LPAR", "COLON", "BUT"))
"""What may reach over a comma: where it stands, the segment is one piece."""


def islands(items: Sequence[Item], context: Context, span: Span) -> Segment:
    """A list of statements of which some are not understood: each by itself, when nothing reaches from one to the next."""
    rows = _rows(items)
    own = all(any(item.category in HEADS | {"ASKED", "CLASS", "UNKNOWN"} for item in row) for row in rows)
    if len(rows) == 1 or not own:
        return _not_understood(span, "not-understood")
    reads = [_island(row, context, span) for row in rows]
    for number, read in enumerate(reads):
        beside = [item for row in (*rows[max(0, number - 1) : number], *rows[number + 1 : number + 2]) for item in row]
        if _lost(read) and (any(map(_reaches, beside)) or any(map(_reaches_out, rows[number]))):
            return _not_understood(span, "not-understood")
    return _one(reads)


def _reaches(item: Item) -> bool:
    """Whether an item may bear on what stands beyond the comma; "as needed" never does."""
    return item.category in REACHING and item.name != "discretion"


def _reaches_out(item: Item) -> bool:
    """The same of a statement that is asked about: what it points back to is not changed by it."""
    return _reaches(item) and item.category != "THERE"


BEGINS: Final = frozenset(("VERB", "MOTION"))


def _rows(items: Sequence[Item]) -> list[list[Item]]:
    rows: list[list[Item]] = [[]]
    for item, after in zip(items, [*items[1:], None], strict=True):
        if item.category == "COMMA" or (item.category == "AND" and after is not None and after.category in BEGINS):
            rows.append([])
        else:
            rows[-1].append(item)
    return [row for row in rows if row]


def _island(row: Sequence[Item], context: Context, span: Span) -> Segment:
    own = (row[0].start, row[-1].end)
    if any(item.category == "UNKNOWN" for item in row):
        return _not_understood(own, "unknown-words")
    return read_segment(row, context.with_(before=None), own)


def _lost(read: Segment) -> bool:
    return any(question.type == "not_understood" for question in read.questions)


def _one(reads: Sequence[Segment]) -> Segment:
    clauses: list[Clause] = []
    questions: list[Question] = []
    for read in reads:
        questions += [_moved(question, len(clauses)) for question in read.questions]
        clauses += read.clauses
    return Segment(tuple(clauses), tuple(questions), reads[-1].said)


def _not_understood(span: Span, why: str) -> Segment:
    return Segment((), (Question("not_understood", why, (span,)),))


def _outcome(units: tuple[Unit, ...], items: Sequence[Item], context: Context) -> Outcome | None:
    try:
        return _read_all(parts(units, items), context)
    except Refused:
        return None


def _read_all(made: list[Part], context: Context) -> Outcome:
    clauses: list[Clause] = []
    questions: list[Question] = []
    marks: set[str] = set()
    lead, here = context.lead, context
    for number, part in enumerate(made):
        opens = any(later.level > part.level for later in made[number + 1 :])
        if opens and part.level > 0 and not _bare(part):
            raise Refused("two-leads")
        if opens and _bare(part):
            lead = (*lead, _lead(part, here))
            here = here.with_(arch=_arch_alone(lead[-1]) or here.arch)
            continue
        if _adds(part, clauses):
            clauses[-1] = _more(part, clauses[-1], here)
            continue
        read = _under(_read_part(part, here.with_(lead=lead)), lead)
        marks |= _marks(part, made[number - 1] if number else None, read)
        questions += [_moved(question, len(clauses)) for question in read.questions]
        clauses += read.clauses
        here = here.with_(before=read.said or _said(part, read) or here.before)
    _share_condition(made, clauses, questions)
    if lead != context.lead and not clauses and not questions:
        raise Refused("lead-alone")
    return Outcome(tuple(clauses), tuple(questions), here.before, frozenset(marks))


def _share_condition(made: list[Part], clauses: list[Clause], questions: list[Question]) -> None:
    """A condition at the end that nobody can decide hangs over everything joined to it."""
    open_ = [number for number, question in enumerate(questions) if question.asks == "who-decides"]
    if not open_ or not made[-1].join.endswith(("or", "and")):
        return
    held = clauses[-1].condition
    for number, clause in enumerate(clauses):
        if clause.condition is None and clause.mode == clauses[-1].mode:
            clauses[number] = clause.with_(condition=held)
    every = tuple(number for number, clause in enumerate(clauses) if clause.condition)
    questions[open_[-1]] = replace(questions[open_[-1]], concerns=every)


def _under(read: Read, lead: Sequence[Said]) -> Read:
    """The words of a lead belong to everything under it."""
    words = spans([item for said in lead for item in said.items])
    return Read(
        tuple(clause.with_(spans=tuple(sorted({*words, *clause.spans}))) for clause in read.clauses),
        tuple(replace(question, spans=tuple(sorted({*words, *question.spans}))) for question in read.questions),
        read.said,
    )


def _moved(question: Question, by: int) -> Question:
    return replace(question, concerns=tuple(index + by for index in question.concerns))


def _bare(part: Part) -> bool:
    """A head or a place that says nothing before its colon."""
    if part.head is not None and part.head.category in ("FACT", "STATE", "STEPS"):
        return False
    verbs = {item.name for item in part.items if item.category == "VERB"}
    if verbs == ENVELOPE and part.head is None and not part.asides:
        return part.categories() == {"VERB", "PLACE"}
    return not part.asides and part.categories() <= BARE | HEADS and part.form != "whole"


def _lead(part: Part, context: Context) -> Said:
    places = [item for item in part.items if item.category == "PLACE"]
    if len(places) > 1 or (places and places[0].value.asks):
        raise Refused("two-places")
    place = lead_place(places[0].value, context) if places else None
    return Said(part.head, None, place, (), tuple(part.items))


def _adds(part: Part, clauses: list[Clause]) -> bool:
    """ "the upper canines too": the same again for other teeth."""
    return part.head is None and bool(clauses) and part.categories() == {"PLACE", "TOO"}


def _more(part: Part, clause: Clause, context: Context) -> Clause:
    places = [item for item in part.items if item.category == "PLACE"]
    if len(places) != 1 or not clause.teeth or places[0].value.asks:
        raise Refused("same-for-what")
    meaning = lead_place(places[0].value, context)
    if meaning is None or not meaning.teeth:
        raise Refused("same-for-what")
    teeth = in_mouth_order({*clause.teeth, *meaning.teeth})
    return clause.with_(teeth=tuple(teeth), spans=(*clause.spans, *spans(part.items)))


def _marks(part: Part, before: Part | None, read: Read) -> set[str]:
    marks = {"bare-parameter" for question in read.questions if question.asks == "no-action"}
    if any(item.category == "PLACE" and item.value.bare_number for item in part.items):
        marks |= {"no-such-tooth" for question in read.questions if question.type in ("teeth", "implausible")}
    denied = before is not None and before.categories() & {"NEG"}
    if part.join.endswith("or") and denied and "NEG" not in part.categories():
        marks.add("escaped-negation")
    if part.join in ("shared-comma", "governed-comma") and part.head is not None:
        if part.head.category in ("MOTION", "MEANS") and "NEG" not in part.categories():
            marks.add("comma-starts-anew")
    bare = any(question.asks == "which-teeth" for question in read.questions) and part.head is not None
    if bare and "NEG" not in part.categories():
        marks.add("object-shared")
    return marks


def _said(part: Part, read: Read) -> Said | None:
    if not read.clauses:
        return None
    last = read.clauses[-1]
    place = Meaning("words", last.teeth, contacts=last.contacts, arch=last.arch, side=last.side)
    nowhere = not (last.teeth or last.contacts or last.arch or last.side)
    return Said(part.head, last.mode, None if nowhere else place, read.clauses, tuple(part.items))


def _read_part(part: Part, context: Context) -> Read:
    bag = Bag(list(part.items), part.head, part.join, tuple(part.items), part.union)
    if part.head is not None and part.head in bag.items:
        bag.items.remove(part.head)
    asked = [item for item in part.items if item.category == "ASKED"]
    if asked:
        return _asked(asked, part)
    if any(item.category == "EXCEPT" for item in part.items):
        return excepted(part, context, _read_part)
    if part.form == "whole":
        return _whole(bag, context)
    _same_verb(bag, context)
    read = _headed(bag, part, context) if part.head is not None else _rest(bag, part, context)
    read = _spanned(read, bag)
    more = asides(part, read, context, READERS)
    return Read((*read.clauses, *more.clauses), (*read.questions, *more.questions), read.said)


def _same_verb(bag: Bag, context: Context) -> None:
    """ "Level the margins of 11 and 21, not the edges": the verb and the teeth before hold for what is denied."""
    before, head = context.before, bag.head
    if (
        head is None
        or head.category != "MEASURE"
        or bag.has("VERB")
        or not bag.has("NEG")
        or before is None
        or before.far
    ):
        return
    if before.head is None or _kind(before.head) != _kind(head) or before.head.name == head.name:
        return
    own = {item.category for item in bag.every}
    bag.items += [
        item for item in before.items if item.category == "VERB" or (item.category == "PLACE" and "PLACE" not in own)
    ]


def _asked(asked: list[Item], part: Part) -> Read:
    """A word that nobody may decide: the whole statement is a question."""
    every = spans([*part.items, *(item for aside in part.asides for item in aside)])
    return Read(
        (),
        tuple(
            Question(item.value.facts["type"], item.name, every, tuple(item.value.facts["options"]))
            for item in asked[:1]
        ),
    )


def _whole(bag: Bag, context: Context) -> Read:
    item = next(item for item in bag.every if item.category == "WHOLE")
    if any(one.category not in ("WHOLE", "YES") for one in bag.every):
        raise Refused("whole-and-more")
    facts = item.value.facts
    clause = Clause(facts["kind"], facts["mode"], bag.spans(), of=facts.get("of"), arch=facts.get("arch"))
    if not facts.get("teeth"):
        return Read((clause,))
    place = context.before.place if context.before else None
    if place is None or not place.teeth:
        raise Refused("whose-units")
    return Read((clause.with_(teeth=place.teeth),))


def _headed(bag: Bag, part: Part, context: Context) -> Read:
    """A statement with a head of its own; a lead with another head must not be lost."""
    head = part.head
    led = [said for said in context.lead if said.head is not None and said.items]
    if any(_kind(said.head) != _kind(head) for said in led):
        raise Refused("lead-of-another-kind")
    return READERS[head.category](bag, context)  # type: ignore[union-attr]  # it has a head


def _kind(head: Item | None) -> str | None:
    entry = head.value if head is not None else None
    facts = getattr(entry, "facts", None)
    return str(facts["kind"]) if facts else None


def _rest(bag: Bag, part: Part, context: Context) -> Read:
    """A statement without a head: staging, a verb with teeth, or one that leans on a head before it."""
    head, said = _leans_on(context, bag)
    about = interval(bag)
    if about is not None:
        return about
    if _doubtful(part, context):
        return Read((), (Question("scope", "same-or-not", bag.spans()),))
    if head is None or bag.has("CLASS") or bag.has("VERB", *(OWN if head.category != "MEASURE" else ALWAYS_OWN)):
        own = headless(bag, context)
        if own is not None:
            return own
        if head is None:
            raise Refused("no-head")
    bag.items = [item for item in bag.every]
    bag.head = head
    _lead_items(bag, context, head)
    here = _inherits(bag, said, context)
    return _same_way(READERS[head.category](bag, here), said, bag)


def _same_way(read: Read, said: Said | None, bag: Bag) -> Read:
    """A rest that does not repeat the direction: is it the same?"""
    if said is None or said.head is not bag.head or len(read.clauses) != 1 or not said.clauses:
        return read
    before, clause = said.clauses[-1], read.clauses[0]
    if before.mode != "do" or clause.mode != "do" or before.dir == clause.dir or clause.dir is not None:
        return read
    asked = Question("meaning", "same-direction", bag.spans(), concerns=(0,))
    return Read((clause.with_(pending=(*clause.pending, "dir")),), (*read.questions, asked), read.said)


OWN: Final = ("lock", "treat", "hold", "move", "leave", "open", "close", "keep", "accept")
ALWAYS_OWN: Final = ("lock", "treat", "hold", "move", "change")
"""Verbs that say something of teeth by themselves, whatever stands before them."""


def _doubtful(part: Part, context: Context) -> bool:
    """ "16 26 if possible" after an order: the same again, or the contrary?"""
    before = context.before
    return before is not None and before.head is None and part.categories() == {"PLACE", "PREFER"}


def _lead_items(bag: Bag, context: Context, head: Item) -> None:
    """Permission words that stand in the lead hold for what follows."""
    for said in context.lead:
        bag.items += [item for item in said.items if item.category == "PERMIT" and said.head is head]


def _leans_on(context: Context, bag: Bag) -> tuple[Item | None, Said | None]:
    before = context.before
    led = next((said for said in reversed(context.lead) if said.head is not None), None)
    near = before is not None and before.head is not None and (not before.far or _points_far(bag, before))
    later = (
        led is None or led.head is None or before is None or before.head is None or led.head.start < before.head.start
    )
    if near and before is not None and (later or not before.far):
        return before.head, before
    return (led.head, None) if led else (None, None)


def _points_far(bag: Bag, before: Said) -> bool:
    """Words that reach back over a full stop: "none on 12", "reduce to 3 mm"."""
    if before.head is None:
        return False
    if before.head.category == "MEANS":
        return bag.has("NEG", "none")
    measured = before.head.category in ("MEASURE", "STATE") and bag.has("VERB", "reduce", "increase")
    return measured and bag.has("TO") and bag.has("AMOUNT")


def _inherits(bag: Bag, said: Said | None, context: Context) -> Context:
    """What a rest without a place or a force of its own takes over; a prohibition is never taken over in silence."""
    if said is None:
        return context
    if said.mode in ("forbid", "keep") and not (bag.has("NEG") or bag.has("AMOUNT") or bag.has("PERMIT")):
        raise Refused("force-not-said")
    if said.far:
        return context
    if said.place is not None and not bag.has("PLACE") and not bag.has("NEG"):
        return context.with_(lead=(*context.lead, Said(None, None, said.place)))
    return context


def _spanned(read: Read, bag: Bag) -> Read:
    """Questions that do not say where they stand concern the whole statement."""
    open_ = tuple(index for index, clause in enumerate(read.clauses) if clause.pending or clause.condition)
    questions = (
        replace(question, spans=question.spans or bag.spans(), concerns=question.concerns or open_)
        for question in read.questions
    )
    return Read(read.clauses, tuple(questions), read.said)


Finder = Callable[[str, Span, Numbering], list[Found]]


def lead_of(text: str, block: Block, context: Context, found: Finder) -> Context | None:
    """The context under the block's key or heading: "Lower:", "Overbite:", "12:"; unknown headings say nothing.

    ``None`` when the key names a place that cannot be told.
    """
    if block.key is None or block.start <= block.key[0] < block.end:
        return context
    items = cut(text, *block.key, found(text, block.key, context.numbering))
    kept = [item for item in items.items if item.category != "COLON"]
    part = Part(next((item for item in kept if item.category in HEADS), None), kept, "start", 0, "single")
    if items.unknown or not kept or not _bare(part) or sum(item.category in HEADS for item in kept) > 1:
        return context
    if part.head is not None and part.head.name == "space":
        return context
    try:
        said = _lead(part, context)
    except Refused:
        return None
    carried = said.place is not None and bool(said.place.teeth) and block.key != block.heading
    return context.with_(lead=(replace(said, far=carried),), arch=_arch_alone(said))


def _arch_alone(said: Said) -> str | None:
    """The arch a lead names, when it names nothing else."""
    place = said.place
    return place.arch if place is not None and not (place.teeth or place.contacts) else None
