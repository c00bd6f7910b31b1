"""What stands where in a document, read from the published schemas: the ground of reader, writer and XSD.

A plan says how a value of the JSON form is written as an element. Members keep the order of the model.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any, Literal, TypeAlias

from wellposed.schema import document_schema, names

Schema: TypeAlias = Mapping[str, Any]
Kind: TypeAlias = Literal["object", "map", "list", "text", "number", "truth", "content"]

_PREFIX = "#/$defs/"


@dataclass(frozen=True, slots=True)
class Form:
    """One form an object may have.

    members   name to plan, in the order in which they are written
    required  those that must be there
    told      the member that chooses this form by being there, or by its value where ``values`` names some
    values    the values of ``told`` that choose it; none where its being there is enough
    words     what the model says of it
    """

    members: Mapping[str, Plan]
    required: frozenset[str]
    told: str = ""
    values: tuple[str, ...] = ()
    words: str = ""


@dataclass(frozen=True, slots=True)
class Plan:
    """One place of a document.

    kind   an object has members of known names, a map has some of its own; content is any JSON
    node   the schema of the place, for its bounds
    name   the name under which the schemas share it, "" for none
    forms  of an object, in the order in which they are tried; the last is meant where none is told
    inner  the entries of a list, the values of a map
    keys   the schema of the names of a map
    """

    kind: Kind
    node: Schema = field(repr=False)
    name: str = ""
    forms: tuple[Form, ...] = ()
    inner: Plan | None = None
    keys: Schema = field(default_factory=dict)

    def member(self, name: str) -> Plan | None:
        """The plan of a member, whichever form has it."""
        return next((form.members[name] for form in self.forms if name in form.members), None)


@cache
def plans() -> dict[str, Plan]:
    """The documents by the name of their outermost element, such as ``prescription``.

    That name says what the member ``format`` says, which is not written again.
    """
    return {name: _document(name) for name in names()}


def _document(name: str) -> Plan:
    schema = document_schema(name)
    plan = _Planner(schema["$defs"]).plan(schema)
    (form,) = plan.forms
    members = {member: inner for member, inner in form.members.items() if member != "format"}
    form = Form(members, form.required - {"format"}, words=form.words)
    return Plan("object", schema, name.capitalize(), (form,))


class _Planner:
    """Plans of one schema: what it defines once is planned once."""

    def __init__(self, definitions: Mapping[str, Schema]) -> None:
        self._definitions = definitions
        self._made: dict[str, Plan] = {}

    def plan(self, node: Schema, name: str = "") -> Plan:
        """The plan of a place."""
        if "$ref" in node:
            return self._shared(node["$ref"].removeprefix(_PREFIX))
        if "if" in node or "allOf" in node or "properties" in node:
            return Plan("object", node, name, tuple(self._forms(node)))
        if node.get("type") == "object":
            return Plan("map", node, name, inner=self.plan(node["additionalProperties"]), keys=self._keys(node))
        if node.get("type") == "array":
            return Plan("list", node, name, inner=self.plan(node["items"]))
        return Plan(_KINDS[node.get("type")], node, name)

    def _shared(self, name: str) -> Plan:
        if name not in self._made:
            self._made[name] = self.plan(self._definitions[name], name)
        return self._made[name]

    def _keys(self, node: Schema) -> Schema:
        keys: Schema = node["propertyNames"]
        return self._definitions[keys["$ref"].removeprefix(_PREFIX)] if "$ref" in keys else keys

    def _forms(self, node: Schema) -> list[Form]:
        if "properties" in node and "allOf" not in node:
            return [self._form(node)]
        if "allOf" in node:
            (tag,) = node["required"]
            return [self._form(branch["then"], tag, _values(branch["if"], tag)) for branch in node["allOf"]]
        (told,) = node["if"]["required"]
        rest = node["else"]
        others = self._forms(rest) if "if" in rest else [self._form(rest)]
        return [self._form(node["then"], told), *others]

    def _form(self, node: Schema, told: str = "", values: tuple[str, ...] = ()) -> Form:
        if "$ref" in node:
            node = self._definitions[node["$ref"].removeprefix(_PREFIX)]
        members = {name: self.plan(inner) for name, inner in node["properties"].items()}
        return Form(members, frozenset(node.get("required", ())), told, values, node.get("description", ""))


_KINDS: Mapping[str | None, Kind] = {
    "string": "text",
    "number": "number",
    "integer": "number",
    "boolean": "truth",
    None: "content",
}


def _values(test: Schema, tag: str) -> tuple[str, ...]:
    named = test["properties"][tag]
    return tuple(named["enum"]) if "enum" in named else (named["const"],)
