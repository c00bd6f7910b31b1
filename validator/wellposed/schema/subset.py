"""The portable subset: keywords every validator reads alike, and everything bounded."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

__all__ = ["outside_subset"]

Schema = dict[str, Any]

VALUES = ("type", "const", "enum", "pattern", "not")
RANGES = ("minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum")
SIZES = ("minLength", "maxLength", "minItems", "maxItems", "minProperties", "maxProperties", "required")
WORDS = ("$schema", "$id", "$comment", "$ref", "title", "description")
ONE_SCHEMA = ("additionalProperties", "propertyNames", "items", "if", "then", "else")
NAMED_SCHEMAS = ("properties", "$defs")
KNOWN = frozenset((*VALUES, *RANGES, *SIZES, *WORDS, *ONE_SCHEMA, *NAMED_SCHEMAS, "allOf"))

NO_LINE_BREAK = {"type": "string", "pattern": "[\n]"}
_PATTERN = re.compile(r"\^[ -\[\]-~]*\$", re.ASCII)
_BOUNDS = {
    "string": (("enum", "const", "maxLength"),),
    "array": (("maxItems",), ("items",)),
    "number": (("minimum", "exclusiveMinimum"), ("maximum", "exclusiveMaximum")),
    "integer": (("minimum", "exclusiveMinimum"), ("maximum", "exclusiveMaximum")),
    "object": (("additionalProperties",),),
}


def outside_subset(schema: Schema) -> list[str]:
    """What the schema holds that some validator would read differently: ``pointer: what``, in order."""
    names = schema.get("$defs", {})
    nodes = _nodes(schema)
    return [f"{pointer}: {what}" for pointer, node, test in nodes for what in _faults(node, names, test)]


def _nodes(node: Any, pointer: str = "", test: bool = False) -> Iterator[tuple[str, Any, bool]]:
    """Every schema inside, and whether it only chooses a branch: a test need not be closed."""
    yield pointer, node, test
    if not isinstance(node, dict):
        return
    for word, name, inner in _inside(node):
        yield from _nodes(inner, f"{pointer}/{word}{name}", test or word == "if")


def _inside(node: Schema) -> Iterator[tuple[str, str, Any]]:
    for word, value in node.items():
        if word in NAMED_SCHEMAS:
            yield from ((word, f"/{name}", inner) for name, inner in value.items())
        elif word == "allOf":
            yield from ((word, f"/{place}", inner) for place, inner in enumerate(value))
        elif word in ONE_SCHEMA and value is not False:
            yield word, "", value


def _faults(node: Any, names: Schema, test: bool) -> Iterator[str]:
    if not isinstance(node, dict):
        yield "not an object"
        return
    yield from (f"{word} is no keyword of the subset" for word in node if word not in KNOWN)
    yield from _reference(node, names)
    yield from _strings(node)
    if not test:
        yield from _open(node)


def _reference(node: Schema, names: Schema) -> Iterator[str]:
    if "$ref" not in node:
        return
    if set(node) - {"$ref", "description"}:
        yield "$ref beside other keywords"
    if node["$ref"] not in [f"#/$defs/{name}" for name in names]:
        yield "$ref leads out of the schema"


def _strings(node: Schema) -> Iterator[str]:
    values = [*node.get("enum", []), *([node["const"]] if "const" in node else [])]
    if not all(isinstance(value, str) for value in values):
        yield "enum and const compare strings only"
    if "pattern" in node and not _PATTERN.fullmatch(node["pattern"]):
        yield "pattern is not anchored, not ASCII or has a backslash"
    if "pattern" in node and ("maxLength" not in node or "not" not in node):
        yield "pattern without maxLength or without a ban on line breaks"
    if node.get("not", NO_LINE_BREAK) != NO_LINE_BREAK:
        yield "not may only ban line breaks"


def _open(node: Schema) -> Iterator[str]:
    """What is not bounded, or lets unknown members in."""
    for either in _BOUNDS.get(str(node.get("type")), ()):
        if not set(either) & set(node) and not _union(node):
            yield f"{node['type']} without {' or '.join(either)}"
    named = {"propertyNames", "maxProperties"} <= set(node)
    if node.get("additionalProperties", False) is not False and not named:
        yield "additionalProperties without propertyNames and maxProperties"
    if not {"$ref", "enum", "pattern"} & set(node.get("propertyNames", {"enum": []})):
        yield "propertyNames lets any name in"


def _union(node: Schema) -> bool:
    """Whether the branches of a union close the object."""
    return "allOf" in node and all("then" in branch for branch in node["allOf"])
