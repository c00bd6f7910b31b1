"""Teeth named in texts: numbers that may be of another notation, and words that disagree with numbers."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import TOOTH_MEMBERS, mentions
from wellposed.findings import Severity
from wellposed.rules import _numbers as numbers
from wellposed.rules._declare import Told, rule, told
from wellposed.rules.chart import Chart
from wellposed.rules.free_text import Text, texts
from wellposed.vocabulary.teeth import arch_of, side_of


@rule(
    "bare-number-in-words",
    Severity.NOTE,
    title="A text names a tooth by a number that is legal in two notations.",
    says="This text names a tooth by a number that is one tooth in ISO 3950 and another in the numbering from 1 to 32.",
    do="Write jaw, side and tooth in words beside the number.",
    change="The notation, or the tooth in words beside the number, would change it.",
)
def bare_number_in_words(chart: Chart) -> Iterator[Told]:
    """No text names a tooth by a bare number that is a tooth in two notations, unless the text settles which is meant.

    Eighteen numbers are legal in both, and none of them is the same tooth in both: 14 is an upper right first premolar,
    or an upper left first molar.

    Evidence: counted. A number counts as a tooth if a word such as `tooth`, `crown` or `between` leads to it. A number
    above 32, words for jaw or side, the name of a notation, or the same tooth in the clause itself settle it.

    Passes: {"notes": [{"text": "The crown on 14 (upper right first premolar) is new."}]}
    Fails: {"notes": [{"text": "The crown on 14 is new."}]}
    """
    for one in texts(chart):
        if set(numbers.either(one.text)) - set(_teeth(one)):
            yield told(one.pointer, one.owner)


@rule(
    "number-of-another-notation",
    Severity.CAUTION,
    title="A text gives a tooth a number that no tooth has in ISO 3950.",
    says="This text gives a tooth a number that no tooth has in ISO 3950, the notation of the order.",
    do="Write the tooth by its number in ISO 3950, and in words.",
    change="The tooth in ISO 3950 would change it.",
)
def number_of_another_notation(chart: Chart) -> Iterator[Told]:
    """No text gives a tooth a number from 1 to 32 that is no tooth in ISO 3950.

    Who wrote it thinks in another notation, and other numbers in the order may be of that notation too.

    Evidence: none is needed. Only numbers after `tooth`, `teeth` or a number sign are looked at.

    Passes: {"notes": [{"text": "Tooth 36 (lower left first molar) is tender."}]}
    Fails: {"notes": [{"text": "Tooth 19 is tender."}]}
    """
    for one in texts(chart):
        if numbers.foreign(one.text):
            yield told(one.pointer, one.owner)


@rule(
    "quadrant-mark-in-words",
    Severity.NOTE,
    title="A text names teeth by quadrant and digit, or by a bare digit.",
    says="This text names teeth by quadrant and digit, or by a bare digit; the notation of the order does neither.",
    do="Write the teeth by their numbers in ISO 3950.",
    change="The teeth in ISO 3950 would change it.",
)
def quadrant_mark_in_words(chart: Chart) -> Iterator[Told]:
    """No text names teeth as `UR6`, by a digit in an angle, or as `upper 4s`.

    A digit without its quadrant may be any of four teeth; the letter of a primary tooth stands for other teeth in other
    notations.

    Evidence: none is needed. Patterns, nothing more.

    Passes: {"notes": [{"text": "16 and 26 (upper first molars) have large fillings."}]}
    Fails: {"notes": [{"text": "UR6 has a large filling."}]}
    """
    for one in texts(chart):
        if numbers.has_palmer(one.text):
            yield told(one.pointer, one.owner)


@rule(
    "words-disagree-with-number",
    Severity.ASK,
    title="Words name another jaw or side than the tooth number beside them.",
    says="The words here name another jaw or side than the tooth number that goes with them.",
    do="Say which tooth is meant, and correct the other.",
    change="Words and number that name one tooth would change it.",
)
def words_disagree_with_number(chart: Chart) -> Iterator[Told]:
    """Words for jaw and side right beside a tooth number agree with it, and so do words in a clause with its teeth.

    Of number and words one is wrong, and the work would be done on the wrong tooth.

    Evidence: reports of teeth taken out in error name unclear tooth numbers among the causes; two ways of writing catch
    it. In a clause words are held against its teeth only if they speak of one place, and of no other tooth.

    Passes: {"appliance": [{"id": "b1", "part": "button-opening", "teeth": ["24"],
                            "words": "on the upper left premolar"}]}
    Fails: {"appliance": [{"id": "b1", "part": "button-opening", "teeth": ["24"],
                           "words": "on the upper right premolar"}]}
    """
    for one in texts(chart):
        if numbers.contradicted(one.text) or _elsewhere(one):
            yield told(one.pointer, one.owner)


def _elsewhere(one: Text) -> bool:
    """Whether its words name one jaw or one side, and none of the teeth of its part stands there."""
    if not numbers.of_one_place(one.text):
        return False
    said, teeth = numbers.places(one.text), _teeth(one)
    arches, sides = {place.arch for place in said} - {None}, {place.side for place in said} - {None}
    stated = one.place.said("arch") if one.place and not teeth else None
    in_arch = {*map(arch_of, teeth), *filter(None, [stated])}
    return _apart(arches, in_arch) or _apart(sides, set(map(side_of, teeth)))


def _apart(said: set[str | None], there: set[str]) -> bool:
    return len(said) == 1 and bool(there) and not said & there


def _teeth(one: Text) -> list[str]:
    """The teeth of the part a text belongs to."""
    return [name.name for name in mentions(one.place, TOOTH_MEMBERS)] if one.place else []


RULES = (bare_number_in_words, number_of_another_notation, quadrant_mark_in_words, words_disagree_with_number)
