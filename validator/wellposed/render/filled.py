"""Sentences with facts in them: ``{name:kind}`` in the words of a rule, each kind with its own form.

======== =========================================== ===============================================
kind     of                                          becomes
======== =========================================== ===============================================
(none)   a number or a text                          ``2.5``, the text as it is
mm …     a number (mm, deg, percent, years, months,  ``2.5 mm``, ``5.0°``, ``40.0 %``, ``12 years``
         days, aligners)
teeth    tooth numbers                               ``12 11 21 22 (upper incisors)``
contacts contacts                                    ``33-32 32-31 (lower)``
measure  a measure, or several                       ``overbite``, ``overbite and overjet``
clause   a clause or several, as they stand          ``intrude 11 (...) by at least 1.8 mm``
words    a term or several                           ``deep bite``, ``veneer and crown``
list     texts                                       ``a, b and c``
======== =========================================== ===============================================
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from string import Formatter
from typing import Any

from wellposed.render.amounts import UNITS, amount, number
from wellposed.render.phrases import clause, contacts, teeth
from wellposed.vocabulary.measures import MEASURE_KINDS, TOOTH_MEASURE_KINDS

__all__ = ["filled", "joined"]


def joined(words: list[str]) -> str:
    """``a, b and c``."""
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else "".join(words)


def _clauses(words: list[str]) -> str:
    """Several clauses, which have commas of their own."""
    return joined(words) if len(words) < 3 else f"{'; '.join(words[:-1])}; and {words[-1]}"


def _each(phrase: Callable[[Any], str]) -> Callable[[Any], str]:
    def of(value: Any) -> str:
        return joined([phrase(one) for one in value]) if isinstance(value, list | tuple) else phrase(value)

    return of


def _measure(name: str) -> str:
    kind = MEASURE_KINDS.get(name) or TOOTH_MEASURE_KINDS.get(name)
    return kind.words if kind else name.replace("-", " ")


def _plain(value: Any) -> str:
    return number(value) if isinstance(value, float) else str(value)


_KINDS: Mapping[str, Callable[[Any], str]] = {
    "": _each(_plain),
    "teeth": lambda value: teeth([value] if isinstance(value, str) else value),
    "contacts": lambda value: contacts([value] if isinstance(value, str) else value),
    "measure": _each(_measure),
    "clause": lambda value: _clauses([clause(one) for one in value]) if isinstance(value, list) else clause(value),
    "words": _each(lambda value: str(value).replace("-", " ")),
    "list": _each(str),
}


class _Filling(Formatter):
    def format_field(self, value: Any, format_spec: str) -> str:
        if format_spec in UNITS:
            return _each(lambda one: amount(one, format_spec))(value)
        return _KINDS[format_spec](value)


def filled(sentence: str, facts: Mapping[str, Any]) -> str:
    """A sentence with its facts in it, its first letter a capital. KeyError where a fact or a kind is not there."""
    told = _Filling().vformat(sentence, (), facts)
    return told[:1].upper() + told[1:]
