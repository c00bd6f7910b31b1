"""One grouping of a segment read from its first statement to its last."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.fold import Part, parts
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.parse import Unit
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.places import Meaning, in_mouth_order
from wellposed_converters.text.segments.leads import arch_alone, bare, lead_said
from wellposed_converters.text.segments.pieces import moved
from wellposed_converters.text.segments.resolve import Outcome
from wellposed_converters.text.segments.stated import read_part
from wellposed_converters.text.statements.statement import Context, Read, Said, spans
from wellposed_converters.text.statements.where import lead_place


def outcome_of(units: tuple[Unit, ...], items: Sequence[Item], context: Context) -> Outcome | None:
    """What the grouping says; ``None`` when one of its statements means nothing."""
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
        if opens and part.level > 0 and not bare(part):
            raise Refused("two-leads")
        if opens and bare(part):
            lead = (*lead, lead_said(part, here))
            here = here.with_(arch=arch_alone(lead[-1]) or here.arch)
            continue
        if _adds(part, clauses):
            clauses[-1] = _more(part, clauses[-1], here)
            continue
        read = _under(read_part(part, here.with_(lead=lead)), lead)
        marks |= _marks(part, made[number - 1] if number else None, read)
        questions += [moved(question, len(clauses)) for question in read.questions]
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


def _adds(part: Part, clauses: list[Clause]) -> bool:
    """The same again for other teeth: "the upper canines too"."""
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
    return marks if "NEG" in part.categories() else marks | set(_marks_of_orders(part, before, read))


def _marks_of_orders(part: Part, before: Part | None, read: Read) -> Iterator[str]:
    if part.join.endswith("or") and before is not None and "NEG" in before.categories():
        yield "escaped-negation"
    if part.head is None:
        return
    if part.join in ("shared-comma", "governed-comma") and part.head.category in ("MOTION", "MEANS"):
        yield "comma-starts-anew"
    if any(question.asks == "which-teeth" for question in read.questions):
        yield "object-shared"


def _said(part: Part, read: Read) -> Said | None:
    if not read.clauses:
        return None
    last = read.clauses[-1]
    place = Meaning("words", last.teeth, contacts=last.contacts, arch=last.arch, side=last.side)
    nowhere = not (last.teeth or last.contacts or last.arch or last.side)
    return Said(part.head, last.mode, None if nowhere else place, read.clauses, tuple(part.items))
