"""Text to values with the place of each, and every fault on the way: the judge of what is JSON."""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import dataclass
from typing import Any, NoReturn

from wellposed.reading.faults import TOO_MANY, Fault, name_fact
from wellposed.reading.limits import MOST_FAULTS, MOST_LEVELS
from wellposed.reading.numbers import NOT_FINITE, NUMBER, UNREAL, fault_of, number
from wellposed.reading.pointer import Step, pointer
from wellposed.reading.positions import Span
from wellposed.reading.strings import BODY, decoded, faults_of
from wellposed.reading.tokens import kind_at

_SPACE = re.compile(r"[ \t\n\r]*+")
_WORD = re.compile("true|false|null")
_WORDS = {"true": True, "false": False, "null": None}


@dataclass(frozen=True, slots=True)
class Scan:
    """What a text holds; value and root mean nothing where there are faults."""

    value: Any
    root: Span
    faults: tuple[Fault, ...]


class _EndedError(Exception):
    """Nothing behind this place can be read."""


def scan(text: str, start: int = 0) -> Scan:
    """Read a whole text from an offset on. Never raises."""
    scanner = _Scanner(text, start)
    value, root = None, Span(start, len(text))
    with suppress(_EndedError):
        value, root = scanner.document()
    return Scan(value, root, tuple(scanner.faults))


def _past(pattern: re.Pattern[str], text: str, at: int) -> int:
    match = pattern.match(text, at)
    return match.end() if match else at


class _Scanner:
    """A place in the text, the steps that lead to it, the faults so far."""

    def __init__(self, text: str, start: int) -> None:
        self.text = text
        self.at = start
        self.path: list[Step] = []
        self.faults: list[Fault] = []

    def document(self) -> tuple[Any, Span]:
        self.space()
        if self.at == len(self.text):
            self.end("document-empty", expected="a JSON object")
        value, span = self.value()
        if not isinstance(value, dict):
            found = kind_at(self.text, span.start)
            self.fault("not-an-object", span.start, expected="an object", found=found)
        self.space()
        if self.at < len(self.text):
            self.syntax("the end of the document")
        return value, span

    def value(self) -> tuple[Any, Span]:
        start, head = self.at, self.text[self.at : self.at + 1]
        if head == '"':
            return self.string(), Span(start, self.at)
        if head in ("{", "["):
            return self.nested(head)
        value = self.scalar()
        return value, Span(start, self.at)

    def nested(self, head: str) -> tuple[Any, Span]:
        if len(self.path) >= MOST_LEVELS:
            self.end("nesting-too-deep", expected=f"at most {MOST_LEVELS} levels of objects and lists")
        return self.object() if head == "{" else self.array()

    def object(self) -> tuple[dict[str, Any], Span]:
        start, values, spans = self.at, dict[str, Any](), dict[str, Span]()
        while self.more("}", first=self.at == start):
            name, place = self.name()
            if name in spans:
                self.duplicate(name, place, spans[name])
            value, span = self.inner(name)
            values[name] = value
            spans.setdefault(name, span._replace(name=place))
        return values, Span(start, self.at, None, spans)

    def array(self) -> tuple[list[Any], Span]:
        start, values, spans = self.at, list[Any](), list[Span]()
        while self.more("]", first=self.at == start):
            value, span = self.inner(len(values))
            values.append(value)
            spans.append(span)
        return values, Span(start, self.at, None, spans)

    def more(self, closing: str, first: bool) -> bool:
        """Pass the opening bracket or the comma; false, and past it, at the closing bracket."""
        if first:
            self.at += 1
        self.space()
        head = self.text[self.at : self.at + 1]
        if head == closing:
            self.at += 1
            return False
        if not first:
            self.expect(",", f"a comma or {closing}")
            self.space()
        return True

    def inner(self, step: Step) -> tuple[Any, Span]:
        self.path.append(step)
        self.space()
        both = self.value()
        self.path.pop()
        return both

    def name(self) -> tuple[str, int]:
        place = self.at
        if not self.text.startswith('"', place):
            self.syntax("a member name in quotation marks")
        name = self.string()
        self.space()
        self.expect(":", "a colon behind the member name")
        return name, place

    def string(self) -> str:
        start = self.at + 1
        self.at = _past(BODY, self.text, start)
        body = self.text[start : self.at]
        value = decoded(body)
        for offset, rule, facts in faults_of(body, value):
            self.fault(rule, start + offset, **facts)
        self.expect('"', "a closing quotation mark", inside=True)
        return value

    def scalar(self) -> Any:
        text, start = self.text, self.at
        if match := NUMBER.match(text, start):
            return self.number(match)
        if match := _WORD.match(text, start):
            self.at = match.end()
            return _WORDS[match[0]]
        if match := UNREAL.match(text, start):
            self.at = match.end()
            return self.fault(NOT_FINITE[0], start, **NOT_FINITE[1], found=match[0])
        return self.syntax("a value")

    def number(self, match: re.Match[str]) -> Any:
        self.at = match.end()
        if wrong := fault_of(match[0]):
            return self.fault(wrong[0], match.start(), **wrong[1])
        return number(match[0])

    def space(self) -> None:
        self.at = _past(_SPACE, self.text, self.at)

    def expect(self, character: str, expected: str, inside: bool = False) -> None:
        if not self.text.startswith(character, self.at):
            self.syntax(expected, inside)
        self.at += 1

    def duplicate(self, name: str, place: int, first: Span) -> None:
        facts = {"expected": "each member name once in an object", **name_fact(name)}
        self.add(Fault("duplicate-member", place, facts, pointer((*self.path, name)), first.name))

    def fault(self, rule: str, offset: int, **facts: Any) -> None:
        self.add(Fault(rule, offset, facts, pointer(self.path)))

    def syntax(self, expected: str, inside: bool = False) -> NoReturn:
        self.end("not-json", expected=expected, found=kind_at(self.text, self.at, inside))

    def end(self, rule: str, **facts: Any) -> NoReturn:
        self.fault(rule, self.at, **facts)
        raise _EndedError

    def add(self, fault: Fault) -> None:
        self.faults.append(fault)
        if len(self.faults) >= MOST_FAULTS:
            self.faults.append(Fault("too-many-faults", self.at, TOO_MANY))
            raise _EndedError
