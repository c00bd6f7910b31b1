"""Any JSON, as the content of an extension: one element inside another, each named after its kind."""

from __future__ import annotations

from typing import Any, Final

from wellposed.reading.limits import MOST_LEVELS
from wellposed.reading.numbers import NUMBER, UNREAL
from wellposed_converters.xml import names
from wellposed_converters.xml.teller import Teller, name_of, quoted, text_of

WORDS: Final = ("true", "false")
_EXPECTED: Final = {
    names.NUMBER: "a number",
    names.BOOLEAN: "true or false",
    names.NULL: "nothing inside it",
}


def content(teller: Teller, element: Any) -> None:
    """The content of an extension: one element."""
    inside = list(teller.children(element))
    if len(inside) != 1:
        teller.fault("wrong-element", element, expected="one element inside it", found=f"{len(inside)}")
    for other in inside[1:]:
        teller.passed_over(other)
    if inside and teller.is_called(inside[0], *names.JSON):
        teller.attributes(inside[0])
        _value(teller, inside[0])
    else:
        teller.put("null")


def is_number(text: str) -> bool:
    """Whether a text is written as JSON writes a number, or as some write one that is not finite."""
    return bool(NUMBER.fullmatch(text) or UNREAL.fullmatch(text))


def _value(teller: Teller, element: Any) -> None:
    name = name_of(element)
    if name in (names.MAP, names.ARRAY):
        teller.no_text(element)
        _nested(teller, element, keyed=name == names.MAP)
    else:
        for child in teller.children(element):
            teller.fault("wrong-element", child, expected="text only")
            teller.passed_over(child)
        _scalar(teller, element, name)


def _nested(teller: Teller, element: Any, keyed: bool) -> None:
    """What lies deeper than any document may go is not told; that it does, the reader of the text finds."""
    opening, closing = "{}" if keyed else "[]"
    teller.put(opening)
    place = 0
    for child in teller.children(element) if len(teller.path) < MOST_LEVELS else ():
        if teller.is_called(child, *names.JSON) and (not keyed or teller.has_key(child)):
            teller.attributes(child, *((names.KEY,) if keyed else ()))
            teller.step(child, child.get(names.KEY) if keyed else place, not place)
            _value(teller, child)
            teller.path.pop()
            place += 1
    teller.put(closing)


def _scalar(teller: Teller, element: Any, name: str) -> None:
    text = text_of(element)
    if name == names.STRING:
        teller.put(quoted(text))
    elif name == names.NUMBER and is_number(text):
        teller.put(text)
    elif (name == names.BOOLEAN and text in WORDS) or (name == names.NULL and not text):
        teller.put(text or "null")
    else:
        teller.put("null")
        teller.fault("wrong-kind", element, expected=_EXPECTED[name], found="a string")
