"""A document as XML, byte for byte the same each time."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final

from lxml import etree

from wellposed.formats import Loss, Written
from wellposed.model.envelope import Envelope
from wellposed.reading.limits import MOST_LEVELS
from wellposed.reading.numbers import fault_of
from wellposed.reading.pointer import Step, pointer
from wellposed_converters.xml import names
from wellposed_converters.xml.plan import Plan, plans

_NO_XML: Final = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What is no character of XML 1.0 (its production 2), by a reference neither."""


def write(documents: Sequence[Envelope]) -> Written:
    """One document as XML, UTF-8. A character XML cannot hold is left out, and told as a loss with its place.

    Raises ValueError for more than one document, or none.
    """
    (document,) = documents
    value = document.model_dump(exclude_unset=True, mode="json")
    name = value.pop("format").removeprefix("wellposed/")
    writer = _Writer()
    root = etree.Element(_tag(name), nsmap={None: names.NAMESPACE})
    writer.object_of(root, value, plans()[name])
    etree.indent(root)
    writer.contents()
    data: bytes = etree.tostring(root, encoding="UTF-8", xml_declaration=True) + b"\n"
    if len(data) > names.MOST_XML_BYTES:
        writer.lose("document-too-large")
    return Written(data, tuple(writer.losses))


def _tag(name: str) -> str:
    return f"{{{names.NAMESPACE}}}{name}"


class _Writer:
    """The steps that lead to a value, what could not be carried, and what is filled in when all else stands.

    Content of an extension is somebody's own: no line break is put into it.
    """

    def __init__(self) -> None:
        self.path: list[Step] = []
        self.losses: list[Loss] = []
        self._later: list[tuple[tuple[Step, ...], Any, Any]] = []

    def lose(self, what: str) -> None:
        self.losses.append(Loss(pointer(self.path), what))

    def contents(self) -> None:
        for path, element, value in self._later:
            self.path[:] = path
            self.json(element, value)

    def value(self, element: Any, value: Any, plan: Plan) -> None:
        if plan.kind == "content":
            self._later.append((tuple(self.path), element, value))
        elif plan.kind in ("object", "map", "list"):
            getattr(self, f"{plan.kind}_of")(element, value, plan)
        else:
            element.text = self.scalar(value)

    def object_of(self, element: Any, value: Mapping[str, Any], plan: Plan) -> None:
        for name, inner in value.items():
            planned = plan.member(name)
            assert planned is not None, name  # the plans are of the models
            self.inside(name, etree.SubElement(element, _tag(name)), inner, planned)

    def map_of(self, element: Any, value: Mapping[str, Any], plan: Plan) -> None:
        assert plan.inner is not None
        for name, inner in value.items():
            self.inside(name, self.keyed(element, names.MEMBER, name), inner, plan.inner)

    def list_of(self, element: Any, value: Sequence[Any], plan: Plan) -> None:
        assert plan.inner is not None
        for place, inner in enumerate(value):
            self.inside(place, etree.SubElement(element, _tag(names.ITEM)), inner, plan.inner)

    def inside(self, step: Step, element: Any, value: Any, plan: Plan) -> None:
        self.path.append(step)
        self.value(element, value, plan)
        self.path.pop()

    def keyed(self, element: Any, name: str, key: str) -> Any:
        return etree.SubElement(element, _tag(name), {names.KEY: self.text(key)})

    def json(self, parent: Any, value: Any, key: str | None = None) -> None:
        """Any JSON as one element inside another."""
        name = _json_name(value)
        made = etree.SubElement(parent, _tag(name)) if key is None else self.keyed(parent, name, key)
        if isinstance(value, dict | list):
            self.nested(made, value)
        elif value is not None:
            made.text = self.scalar(value)

    def nested(self, made: Any, value: dict[str, Any] | list[Any]) -> None:
        if len(self.path) >= MOST_LEVELS:
            self.lose("nesting-too-deep")
            return
        pairs: Iterable[tuple[Step, Any]] = value.items() if isinstance(value, dict) else enumerate(value)
        for step, inner in pairs:
            self.path.append(step)
            self.json(made, inner, step if isinstance(step, str) else None)
            self.path.pop()

    def scalar(self, value: Any) -> str:
        if isinstance(value, bool):
            return "true" if value else "false"
        return self.text(value) if isinstance(value, str) else self.number(value)

    def text(self, value: str) -> str:
        held = _NO_XML.sub("", value)
        if held != value:
            self.lose("character-not-in-xml")
        return held

    def number(self, value: float) -> str:
        text = str(int(value)) if isinstance(value, int) or value.is_integer() else repr(value)
        if wrong := fault_of(text):
            self.lose(wrong[0])
        return text


def _json_name(value: Any) -> str:
    if value is None:
        return names.NULL
    kinds = {bool: names.BOOLEAN, str: names.STRING, dict: names.MAP, list: names.ARRAY}
    return kinds.get(type(value), names.NUMBER)
