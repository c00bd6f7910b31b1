"""A JSON text in the making, part by part beside the element each comes from, and the faults met on the way."""

from __future__ import annotations

import json
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

from lxml import etree

from wellposed.reading.faults import TOO_MANY, name_fact
from wellposed.reading.limits import MOST_BYTES, MOST_FAULTS
from wellposed.reading.pointer import Step, pointer
from wellposed_converters.xml import names
from wellposed_converters.xml.faults import Fault
from wellposed_converters.xml.parsing import SPACE

_OURS: Final = f"{{{names.NAMESPACE}}}"


@dataclass(frozen=True, slots=True)
class Told:
    """The JSON text in one line, the element at each of its parts (by offset), faults of the XML.

    No text where there is no use in going on.
    """

    text: str
    starts: tuple[int, ...]
    elements: tuple[Any, ...]
    faults: tuple[Fault, ...]

    def element(self, column: int) -> Any:
        """The element a column of the text, from 1, comes from."""
        return self.elements[max(bisect_right(self.starts, column - 1) - 1, 0)]


class EndedError(Exception):
    """There is no use in going on."""


class Teller:
    """The text so far with its length, the elements it comes from, and the steps that lead to the next."""

    def __init__(self) -> None:
        self.path: list[Step] = []
        self._parts: list[str] = []
        self._length = 0
        self._starts: list[int] = []
        self._elements: list[Any] = []
        self._faults: list[Fault] = []

    def told(self, whole: bool) -> Told:
        """What has been told; if it is not the whole, without its text."""
        text = "".join(self._parts) if whole else ""
        return Told(text, tuple(self._starts), tuple(self._elements), tuple(self._faults))

    def put(self, text: str) -> None:
        """Some of the text."""
        self._parts.append(text)
        self._length += len(text)
        if self._length > MOST_BYTES:
            self._end("document-too-large", {"expected": f"at most {MOST_BYTES} bytes as JSON"})

    def mark(self, element: Any) -> None:
        """What follows comes from this element."""
        self._starts.append(self._length)
        self._elements.append(element)

    def step(self, element: Any, step: Step, first: bool) -> None:
        """One step further in: the comma, the place, the name."""
        self.path.append(step)
        self.put("" if first else ",")
        self.mark(element)
        self.put(f"{quoted(step)}:" if isinstance(step, str) else "")

    def fault(self, rule: str, node: Any, *more: Step, **facts: Any) -> None:
        """A fault at this node, which stands where the steps lead, or some further in."""
        self._faults.append(Fault(rule, node, pointer((*self.path, *more)), facts))
        if len(self._faults) == MOST_FAULTS:
            self._end("too-many-faults", TOO_MANY)

    def _end(self, rule: str, facts: dict[str, Any]) -> None:
        self._faults.append(Fault(rule, self._elements[0], "", facts))
        raise EndedError

    def children(self, element: Any) -> Iterator[Any]:
        """The elements inside; of another namespace they are faults, like all that is neither element nor text."""
        for child in element:
            if not isinstance(child.tag, str):
                self.stray(child)
            elif child.tag.startswith(_OURS):
                yield child
            else:
                self.fault("other-namespace", child, expected=names.NAMESPACE)
                self.passed_over(child)

    def passed_over(self, element: Any) -> None:
        """An element that is not told; even there a comment must not be."""
        for node in element.iter():
            if not isinstance(node.tag, str):
                self.stray(node)

    def stray(self, node: Any) -> None:
        """What is neither an element nor text."""
        found = "a comment" if node.tag is etree.Comment else "a processing instruction"
        self.fault("comment-or-instruction", node, expected="elements and text only", found=found)

    def attributes(self, element: Any, *allowed: str) -> None:
        """An element has these attributes at most."""
        for name in element.attrib:
            if name not in allowed:
                self.fault("unknown-attribute", element, **name_fact(etree.QName(name).localname))

    def no_text(self, element: Any) -> None:
        """An element has elements inside it, and white space between them."""
        if text_of(element).strip(SPACE):
            self.fault("mixed-content", element, expected="elements, and only white space between them")

    def is_called(self, element: Any, *expected: str) -> bool:
        """Whether an element has one of these names; one that has not is passed over."""
        name = name_of(element)
        if name not in expected:
            words = f"one of {', '.join(expected)}" if len(expected) > 1 else expected[0]
            self.fault("wrong-element", element, expected=words, **name_fact(name))
            self.passed_over(element)
        return name in expected

    def has_key(self, element: Any) -> bool:
        """Whether an element says which member it is; one that does not is passed over."""
        if names.KEY not in element.attrib:
            self.fault("missing-key", element, expected=f"the attribute {names.KEY}")
            self.passed_over(element)
        return names.KEY in element.attrib


def name_of(element: Any) -> str:
    """The name of an element without its namespace."""
    return str(element.tag.rpartition("}")[2])


def text_of(element: Any) -> str:
    """The text of an element itself, on both sides of what stands in it."""
    return (element.text or "") + "".join(child.tail or "" for child in element)


def quoted(text: str) -> str:
    """A text as a JSON string."""
    return json.dumps(text, ensure_ascii=False)
