"""What a model expects at each place, read from the schema pydantic made of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any, TypeAlias

from pydantic import BaseModel, TypeAdapter

from wellposed.reading.pointer import Step, below, holds, index, steps

Node: TypeAlias = Mapping[str, Any]

_UNIONS = ("union", "tagged-union")


@dataclass(frozen=True, slots=True)
class Shape:
    """A place in a model: its schema without wrappers, and the descriptions met on the way to it.

    rivals  where no member tells which of several forms is meant, the members that would
    """

    node: Node
    shared: Mapping[str, Node]
    descriptions: tuple[str, ...] = ()
    rivals: tuple[str, ...] = ()

    @property
    def is_union(self) -> bool:
        """Whether one of several forms is expected here."""
        return self.node["type"] in _UNIONS

    @property
    def members(self) -> tuple[str, ...]:
        """Names of the members an object may have here."""
        own = tuple(_outer(name, field) for name, field in _fields(self.node))
        return (*own, *(name for name in self.rivals if name not in own))

    def form(self, label: Step) -> Shape | None:
        """The form of a union that pydantic calls by this label."""
        return next((shape for name, shape in self._forms() if name == label), None)

    def forms(self, value: Any) -> tuple[Shape, ...]:
        """The forms meant by a value: one where its tag tells, else all; outside a union the place itself."""
        if not self.is_union:
            return (self,)
        told = self.form(_tag(self.node.get("discriminator"), value))
        inner = (self._untold(told, value),) if told else tuple(shape for _, shape in self._forms())
        return tuple(form for shape in inner for form in shape.forms(value))

    def _untold(self, told: Shape, value: Any) -> Shape:
        """The fallback form, with the members that tell the others apart, where the value has none of them."""
        if isinstance(self.node.get("discriminator"), str) or not isinstance(value, dict):
            return told
        labels = tuple(str(label) for label, _ in self._forms())
        return told if any(label in value for label in labels) else replace(told, rivals=labels)

    def inside(self, step: Step) -> Shape | None:
        """What is expected one step further in, if anything is known about it."""
        node = self.node
        for name, field in _fields(node):
            if _outer(name, field) == step:
                return self._shape(field)
        if "values_schema" in node:
            return self._shape(node["values_schema"])
        return self._entry(node.get("items_schema"), index(step))

    def keys(self) -> Shape | None:
        """What is expected of the names of a mapping."""
        return self._shape(self.node["keys_schema"]) if "keys_schema" in self.node else None

    def _entry(self, items: Any, place: int | None) -> Shape | None:
        if place is None or not items:
            return None
        if isinstance(items, list):
            items = items[min(place, self.node.get("variadic_item_index", place), len(items) - 1)]
        return self._shape(items)

    def _forms(self) -> Iterator[tuple[Step, Shape]]:
        choices = self.node["choices"]
        if isinstance(choices, dict):
            yield from ((tag, self._shape(node)) for tag, node in choices.items())
            return
        for choice in choices:
            node, label = choice if isinstance(choice, tuple) else (choice, None)
            shape = self._shape(node)
            yield label or _label(shape.node), shape

    def _shape(self, node: Node) -> Shape:
        return _unwrapped(node, self.shared)


@cache
def shape_of(root: type[BaseModel]) -> Shape:
    """What the model expects of a whole document."""
    return _unwrapped(TypeAdapter(root).core_schema, {})


def shapes_at(root: type[BaseModel], document: Any, pointer: str) -> tuple[Shape, ...]:
    """What may be expected at a place of this document; several where a form cannot be told."""
    places, value = shape_of(root).forms(document), document
    for step in steps(pointer):
        value = below(value, step) if holds(value, step) else None
        inner = (shape.inside(step) for shape in places)
        places = tuple(form for shape in inner if shape for form in shape.forms(value))
    return places


def known_members(root: type[BaseModel], document: Any, pointer: str) -> tuple[str, ...]:
    """The sorted names of the members the model knows for the object at this place."""
    return tuple(sorted({name for shape in shapes_at(root, document, pointer) for name in shape.members}))


def telling_members(root: type[BaseModel], document: Any, pointer: str) -> tuple[str, ...]:
    """The members of which one would tell what form an object is, where it has none of them."""
    return tuple(dict.fromkeys(name for shape in shapes_at(root, document, pointer) for name in shape.rivals))


def _fields(node: Node) -> Iterable[tuple[str, Node]]:
    fields = node.get("fields")
    return fields.items() if isinstance(fields, dict) else ()


def _unwrapped(node: Node, shared: Mapping[str, Node]) -> Shape:
    """Look through defaults, validators, optional values and references."""
    descriptions: tuple[str, ...] = ()
    while True:
        if "definitions" in node:
            shared = {**shared, **{one["ref"]: one for one in node["definitions"]}}
        descriptions += _described(node)
        inner = _inner(node, shared)
        if inner is None:
            return Shape(node, shared, descriptions)
        node = inner


def _inner(node: Node, shared: Mapping[str, Node]) -> Node | None:
    if node["type"] == "definition-ref":
        return shared.get(node["schema_ref"])
    if node["type"] == "chain":
        return _mapping(node["steps"][0])
    return _mapping(node.get("schema") or node.get("strict_schema") or node.get("json_schema"))


def _mapping(node: Any) -> Node | None:
    return node if isinstance(node, dict) else None


def _described(node: Node) -> tuple[str, ...]:
    updates = (node.get("metadata") or {}).get("pydantic_js_updates") or {}
    return (updates["description"],) if "description" in updates else ()


def _outer(name: str, field: Node) -> str:
    alias = field.get("validation_alias")
    return alias if isinstance(alias, str) else name


def _label(node: Node) -> str:
    return str(node.get("model_name") or node["type"])


def _tag(told_by: str | Callable[[Any], Any] | None, value: Any) -> Any:
    """The tag a value bears."""
    if isinstance(told_by, str):
        return value.get(told_by) if isinstance(value, dict) else None
    try:
        return told_by(value) if callable(told_by) else None
    except Exception:  # a function of the model, which may expect another kind of value
        return None
