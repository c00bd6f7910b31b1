"""How far a reading of a text agrees with the expected one, over plain records.

A record of a clause or question is what ``clause.record`` makes and the samples hold: a mapping with ``kind`` or
``type``, ``spans`` and the other members that are said. The measure that matters is the silent error: something wrong
or missing that no question points at.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from wellposed_converters.text.clause import HARD, OF_IS_HARD

Record = Mapping[str, Any]

WAITING: Final = {"amount": ("measure", "min", "max", "unit"), "condition": ("if",), "relation": ("class",)}
"""Names under ``pending`` that stand for more than the member of that name."""
UNORDERED: Final = ("teeth", "contacts", "links")
PLACES: Final = ("teeth", "contacts")
DIRECTIONS: Final = ("dir", "side", "arch")


@dataclass(frozen=True)
class Silent:
    """One silent error: its sort, the kinds of error that weigh more, and the clauses or question it is about.

    sort  "wrong" (another clause in place of the expected one), "invented" (a clause nothing expects), "missing" (an
          expected clause without a clause or question), "answered" (an expected question settled by firm clauses),
          "swallowed" (an expected question of which nothing is left)
    """

    sort: str
    weights: tuple[str, ...]
    expected: Record | None
    made: Record | None


@dataclass(frozen=True)
class Score:
    """What became of one sample. Numbers are indexes into the expected (first) or the made clauses and questions.

    ``wrong_made`` and ``lost`` are the silent errors by the two definitions: (a) made clauses that match no expected
    one and that no question points at, (b) expected clauses that are not right and that no question covers.
    """

    right: tuple[tuple[int, int], ...]
    asked: tuple[int, ...]
    lost: tuple[int, ...]
    wrong_made: tuple[int, ...]
    silent: tuple[Silent, ...]
    questions_right: tuple[int, ...]
    questions_covered: tuple[int, ...]
    questions_missed: tuple[int, ...]
    questions_needless: tuple[int, ...]


def score(expected: Sequence[Record], asked: Sequence[Record], made: Sequence[Record], put: Sequence[Record]) -> Score:
    """Compare expected clauses and questions with made clauses and put questions."""
    pointed = _pointed(made, put)
    right = _right(expected, made, pointed)
    done, used = {g for g, _ in right}, {p for _, p in right}
    rest = [g for g in range(len(expected)) if g not in done]
    covered = [g for g in rest if _is_covered(g, expected, made, pointed, put)]
    lost = [g for g in rest if g not in covered]
    spare = [p for p in range(len(made)) if p not in used and not _repeats(p, made, expected, [*done])]
    wrong = [p for p in spare if p not in pointed]
    answers = [_question(question, made, pointed, put) for question in asked]
    return Score(
        tuple(right),
        tuple(covered),
        tuple(lost),
        tuple(wrong),
        (*_silent(lost, wrong, expected, made), *_unasked(answers, asked, made)),
        tuple(q for q, answer in enumerate(answers) if answer == "right"),
        tuple(q for q, answer in enumerate(answers) if answer == "covered"),
        tuple(q for q, answer in enumerate(answers) if answer in ("answered", "swallowed")),
        tuple(q for q, question in enumerate(put) if not any(overlap(question, other) for other in asked)),
    )


def overlap(one: Record, other: Record) -> bool:
    """Whether the spans of two records share a character."""
    return any(a < d and c < b for a, b in one["spans"] for c, d in other["spans"])


def agrees(expected: Record, made: Record) -> bool:
    """Whether all hard fields agree, but for those the expected clause leaves pending."""
    waiting = {member for name in expected.get("pending", ()) for member in (name, *WAITING.get(name, ()))}
    members = [member for member in _hard(expected) if member not in waiting]
    return all(_value(expected, member) == _value(made, member) for member in members)


def _hard(expected: Record) -> tuple[str, ...]:
    placed = any(expected.get(member) or member in expected.get("pending", ()) for member in PLACES)
    members = tuple(member for member in HARD if not (member == "arch" and placed))
    return (*members, "if", *(("of",) if expected["kind"] in OF_IS_HARD else ()))


def _value(clause: Record, member: str) -> Any:
    value = clause.get(member)
    if member in UNORDERED:
        return frozenset(frozenset(one) if isinstance(one, Sequence) else one for one in value or ())
    return value is not None if member == "if" else value or (value if value == 0 and value is not False else None)


def _pointed(made: Sequence[Record], put: Sequence[Record]) -> set[int]:
    """The made clauses that a question concerns or overlaps."""
    concerned = {index for question in put for index in question.get("for", ())}
    return concerned | {p for p, clause in enumerate(made) if any(overlap(clause, question) for question in put)}


def _right(expected: Sequence[Record], made: Sequence[Record], pointed: set[int]) -> list[tuple[int, int]]:
    """The pairs that agree, those that share most words first; each expected and each made clause at most once."""
    pairs = [
        (_shared(clause, other), g, p)
        for g, clause in enumerate(expected)
        for p, other in enumerate(made)
        if overlap(clause, other) and agrees(clause, other) and (p in pointed or not clause.get("pending"))
    ]
    chosen: dict[int, int] = {}
    taken: set[int] = set()
    for _, g, p in sorted(pairs, key=lambda pair: (-pair[0], pair[1], pair[2])):
        if g not in chosen and p not in taken:
            chosen[g] = p
            taken.add(p)
    notes = {g: _note_over(clause, made) for g, clause in enumerate(expected) if clause["kind"] == "note"}
    return sorted((chosen | {g: p for g, p in notes.items() if p is not None and g not in chosen}).items())


def _note_over(expected: Record, made: Sequence[Record]) -> int | None:
    """The made note that holds every word of an expected one: two notes may be made as one."""
    over = (p for p, other in enumerate(made) if other["kind"] == "note" and characters(expected) <= characters(other))
    return next(over, None)


def _shared(one: Record, other: Record) -> float:
    here, there = characters(one), characters(other)
    return len(here & there) / len(here | there)


def characters(record: Record) -> set[int]:
    """The offsets in the spans of a record."""
    return {at for start, end in record["spans"] for at in range(start, end)}


def _is_covered(
    g: int, expected: Sequence[Record], made: Sequence[Record], pointed: set[int], put: Sequence[Record]
) -> bool:
    """Whether a question covers words that are the clause's own, or concerns a made clause over them."""
    others = {at for n, other in enumerate(expected) if n != g for at in characters(other)}
    own = (characters(expected[g]) - others) or characters(expected[g])
    asked = [characters(question) for question in put]
    asked += [characters(made[p]) for q in put for p in q.get("for", ()) if p in pointed]
    return any(own & words for words in asked)


def _repeats(p: int, made: Sequence[Record], expected: Sequence[Record], done: Iterable[int]) -> bool:
    """Whether a made clause says again what another says rightly."""
    return any(
        overlap(expected[g], made[p]) and agrees(expected[g], made[p]) for g in done if not expected[g].get("pending")
    )


def _question(question: Record, made: Sequence[Record], pointed: set[int], put: Sequence[Record]) -> str:
    over = [other for other in put if overlap(question, other)]
    if any(other["type"] == question["type"] for other in over):
        return "right"
    if over or any(overlap(question, made[p]) for p in pointed):
        return "covered"
    firm = [p for p, clause in enumerate(made) if overlap(question, clause) and p not in pointed]
    return "answered" if firm else "swallowed"


def _silent(lost: list[int], wrong: list[int], expected: Sequence[Record], made: Sequence[Record]) -> Iterable[Silent]:
    """The lost and the wrong clauses, each wrong one in place of the lost one it is most like."""
    free = list(wrong)
    for g in lost:
        near = [p for p in free if overlap(expected[g], made[p])]
        p = max(near, key=lambda n: (_likeness(expected[g], made[n]), -n), default=None)
        if p is None:
            yield Silent("missing", _weights(expected[g], None), expected[g], None)
        else:
            free.remove(p)
            yield Silent("wrong", _weights(expected[g], made[p]), expected[g], made[p])
    for p in free:
        yield Silent("invented", _weights(None, made[p]), None, made[p])


def _likeness(expected: Record, made: Record) -> int:
    same = sum(bool(_value(expected, member) == _value(made, member)) for member in _hard(expected))
    return same + len(HARD) * bool(expected["kind"] == made["kind"])


def _weights(expected: Record | None, made: Record | None) -> tuple[str, ...]:
    """Extraction and IPR by name; a wrong tooth or direction, within one kind, and a lost negation by comparing."""
    both = [record for record in (expected, made) if record]
    kinds = [kind for kind in ("extraction", "ipr") if any(record["kind"] == kind for record in both)]
    if expected is None or made is None:
        negative = expected is not None and expected["mode"] == "forbid"
        return (*kinds, *(["lost negation"] if negative else []))
    differs = {member for member in _hard(expected) if _value(expected, member) != _value(made, member)}
    alike = expected["kind"] == made["kind"]
    found = [
        ("wrong tooth", alike and bool(differs & set(PLACES))),
        ("wrong direction", alike and bool(differs & set(DIRECTIONS))),
        ("lost negation", expected["mode"] == "forbid" != made["mode"]),
    ]
    return (*kinds, *(name for name, holds in found if holds))


def _unasked(answers: Sequence[str], asked: Sequence[Record], made: Sequence[Record]) -> Iterable[Silent]:
    for answer, question in zip(answers, asked, strict=True):
        if answer in ("answered", "swallowed"):
            over = [clause for clause in made if overlap(question, clause)]
            kinds = tuple(kind for kind in ("extraction", "ipr") if any(clause["kind"] == kind for clause in over))
            yield Silent(answer, kinds, question, over[0] if over else None)
