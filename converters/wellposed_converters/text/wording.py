"""Questions in words, from ``questions.toml``: the sentence by the question's name, and the words of each choice."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import Any, Final

from wellposed.vocabulary.teeth import in_words
from wellposed_converters.text.clause import Clause, Question, quoted
from wellposed_converters.text.tables import read_table

TEETH: Final = "teeth"
"""The fact that is a list of tooth numbers."""


@cache
def _data() -> dict[str, Any]:
    return read_table(__package__, "questions.toml")


def _entry(asks: str) -> Mapping[str, Any]:
    entry: Mapping[str, Any] = _data()["ask"][asks]
    return entry


def asked_names() -> frozenset[str]:
    """The names of all questions that have words."""
    return frozenset(_data()["ask"])


def options_of(asks: str) -> tuple[str, ...]:
    """The names of the choices a question offers; none where the answer is free. :raises KeyError: if unknown."""
    return tuple(_entry(asks).get("options", ()))


def wording(question: Question, clauses: Sequence[Clause], text: str) -> str:
    """The question as a sentence. :raises KeyError: for a name without words, or a fact that the words need."""
    words: str = _entry(question.asks)["text"]
    return words.format_map(_facts(question, clauses, text))


def option_words(question: Question, clauses: Sequence[Clause], text: str) -> tuple[str, ...]:
    """The choices in words, in the order of the question; a choice that is not a name stands for itself."""
    facts, known = _facts(question, clauses, text), _data()["option"]
    return tuple(known[name].format_map(facts) if name in known else name for name in question.options)


def tooth_words(teeth: Iterable[int]) -> str:
    """Teeth in numbers and words: ``"13, upper right canine; 14, upper right first premolar"``."""
    return "; ".join(f"{tooth}, {in_words(str(tooth))}" for tooth in teeth)


def _facts(question: Question, clauses: Sequence[Clause], text: str) -> dict[str, str]:
    quotes = [_quote(text, clauses[at]) for at in question.concerns]
    facts = dict(question.facts) | {"said": _flat(quoted(text, question.spans))}
    for name, words in zip(("first", "second"), quotes, strict=False):
        facts[name] = words
    facts["others"] = "”, “".join(quotes[1:])
    if TEETH in facts:
        facts[TEETH] = tooth_words(int(number) for number in facts[TEETH].split())
    return facts


def _quote(text: str, clause: Clause) -> str:
    return _flat(quoted(text, clause.spans))


def _flat(words: str) -> str:
    return " ".join(words.split())
