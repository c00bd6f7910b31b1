"""One slip of the keyboard a word: a letter too many, too few, wrong, or two letters changed about (R17).

Only a word of five letters or more that stands in no form is looked at, only a single target at distance one is taken,
and no word of the danger list is ever a target or a source.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final

from rapidfuzz.distance import OSA

from wellposed_converters.text.clause import Span
from wellposed_converters.text.lexicon import entry_of
from wellposed_converters.text.lexicon.lexer import Token, tokens
from wellposed_converters.text.tables import read_table

SHORTEST: Final = 5


@dataclass(frozen=True)
class Repaired:
    """A text with its slips repaired; ``at[i]`` is where its character ``i`` stood, ``words`` what was repaired."""

    text: str
    at: tuple[int, ...]
    words: tuple[tuple[Span, str], ...]

    def back(self, span: Span) -> Span:
        """A span of the repaired text in the text as given."""
        return self.at[span[0]], self.at[span[1] - 1] + 1 if span[1] > span[0] else self.at[span[0]]


@cache
def _danger() -> frozenset[str]:
    return frozenset(read_table(f"{__package__}.lexicon", "danger.toml")["words"])


def repair(text: str, targets: frozenset[str], known: frozenset[str]) -> Repaired:
    """The text with every slip repaired that can be repaired in one way only."""
    parts: list[str] = []
    at: list[int] = []
    words: list[tuple[Span, str]] = []
    done = 0
    for token in tokens(text):
        target = _target(token, targets, known)
        if target is None:
            continue
        parts.append(text[done : token.start])
        at += range(done, token.start)
        parts.append(target)
        at += _spread(token, len(target))
        words.append(((token.start, token.end), target))
        done = token.end
    parts.append(text[done:])
    at += range(done, len(text) + 1)
    return Repaired("".join(parts), tuple(at), tuple(words))


def _spread(token: Token, length: int) -> list[int]:
    """The characters of the repaired word, laid over the word as written."""
    last = token.end - 1
    return [min(token.start + index, last) for index in range(length - 1)] + [last]


def _target(token: Token, targets: frozenset[str], known: frozenset[str]) -> str | None:
    word = token.norm
    if (
        token.sort != "word"
        or len(word) < SHORTEST
        or word in known
        or word in targets
        or word in _danger()
        or not word.isascii()
    ):
        return None
    near = {other for other in _near(len(word), targets) if OSA.distance(word, other, score_cutoff=1) == 1}
    if len(near) != 1 or near & _danger() or _others(word, near, known):
        return None
    return near.pop()


def _others(word: str, near: set[str], known: frozenset[str]) -> bool:
    """Whether a known word that is no target is as near: "booth" may be both."""
    sizes = (len(word) - 1, len(word), len(word) + 1)
    meant = {entry_of(other) for other in near}
    rest = (other for size in sizes for other in _by_length(known).get(size, ()) if other not in near)
    return any(OSA.distance(word, other, score_cutoff=1) == 1 and entry_of(other) not in meant for other in rest)


@cache
def _by_length(known: frozenset[str]) -> dict[int, tuple[str, ...]]:
    return {size: tuple(sorted(word for word in known if len(word) == size)) for size in range(SHORTEST - 1, 30)}


def _near(length: int, known: frozenset[str]) -> tuple[str, ...]:
    sizes = _by_length(known)
    return tuple(word for size in (length - 1, length, length + 1) if size >= SHORTEST for word in sizes.get(size, ()))
