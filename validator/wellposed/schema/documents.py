"""The schema of each document: shared types under their names, an identifier that cannot be fetched."""

from __future__ import annotations

import json
from typing import Any

from pydantic import TypeAdapter

from wellposed.model import DOCUMENTS, base
from wellposed.schema.emit import Portable
from wellposed.vocabulary.measures import Measure
from wellposed.vocabulary.motions import Motion, Variable
from wellposed.vocabulary.terms import Arch, Strength

__all__ = ["FOLDER", "document_schema", "names", "text"]

Schema = dict[str, Any]

FOLDER = "spec/schema/1"
_COMMENT = "Generated from the models by: python -m wellposed.generate. Do not edit."
_DIALECT = "https://json-schema.org/draft/2020-12/schema"

SHARED: dict[str, Any] = {
    "Amount": base.Amount,
    "Arch": Arch,
    "ArchTeeth": base.ArchTeeth,
    "ClauseId": base.ClauseId,
    "ContactList": base.ContactList,
    "ContactName": base.ContactName,
    "Date": base.Date,
    "Digest": base.Digest,
    "Identifier": base.Identifier,
    "Measure": Measure,
    "Moment": base.Moment,
    "Motion": Motion,
    "References": base.References,
    "Signed": base.Signed,
    "Strength": Strength,
    "Text": base.Text,
    "ToothList": base.ToothList,
    "ToothNumber": base.ToothNumber,
    "Unit": base.Unit,
    "Variable": Variable,
    "Words": base.Words,
}
"""Types many members share: written once, and referred to."""

_BOUNDS = {"ge": "minimum", "le": "maximum"}
"""Pydantic hands bounds laid over a validating function on under its own names."""

_LAST = {"if": 1, "then": 2, "else": 3}


def names() -> tuple[str, ...]:
    """``prescription`` and its kin: the documents that have a schema."""
    return tuple(name.removeprefix("wellposed/") for name in DOCUMENTS)


def document_schema(name: str) -> Schema:
    """The schema of the document called ``name``."""
    made = _tidied(DOCUMENTS[f"wellposed/{name}"].model_json_schema(schema_generator=Portable))
    own = made.pop("$defs", {})
    shared = {title: _emitted(source) for title, source in SHARED.items()}
    definitions = _used(_named({**made, "$defs": own}, shared), shared)
    head = {
        "$comment": _COMMENT,
        "$schema": _DIALECT,
        "$id": f"urn:wellposed:schema:1:{name}",
        "title": f"Wellposed {name}, version 1",
    }
    whole: Schema = _ordered({**_named(made, shared), **head, "$defs": definitions})
    return whole


def text(name: str) -> str:
    """The schema as it is published, byte for byte."""
    return json.dumps(document_schema(name), indent=2, ensure_ascii=True) + "\n"


def _emitted(source: Any) -> Schema:
    emitted: Schema = _tidied(TypeAdapter(source).json_schema(schema_generator=Portable))
    return emitted


def _tidied(node: Any, names_inside: bool = False) -> Any:
    """Without titles, bounds under their right names, docstrings as plain text."""
    if isinstance(node, list):
        return [_tidied(item) for item in node]
    if not isinstance(node, dict):
        return node
    if names_inside:
        return {name: _tidied(item) for name, item in node.items()}
    kept = {word: item for word, item in node.items() if word != "title"}
    return {_BOUNDS.get(word, word): _plain(word, item) for word, item in kept.items()}


def _plain(word: str, item: Any) -> Any:
    if word == "description":
        return " ".join(str(item).replace("``", "`").split())
    if word == "propertyNames":
        return _tidied({**item, "type": "string"})
    return _tidied(item, names_inside=word in ("properties", "$defs"))


def _named(node: Any, shared: dict[str, Schema]) -> Any:
    """The same, with a reference wherever a shared type is written out."""
    if isinstance(node, list):
        return [_named(item, shared) for item in node]
    if not isinstance(node, dict):
        return node
    for title, form in shared.items():
        if node == form:
            return {"$ref": f"#/$defs/{title}"}
    return {word: _named(item, shared) for word, item in node.items()}


def _used(schema: Schema, shared: dict[str, Schema]) -> Schema:
    """The definitions, with those shared types that something refers to."""
    definitions: Schema = dict(schema["$defs"])
    waiting = _references(schema)
    while waiting:
        title = waiting.pop()
        if title not in definitions:
            others = {other: form for other, form in shared.items() if other != title}
            definitions[title] = _named(shared[title], others)
            waiting |= _references(definitions[title])
    return definitions


def _references(node: Any) -> set[str]:
    if isinstance(node, list):
        return {title for item in node for title in _references(item)}
    if not isinstance(node, dict):
        return set()
    here = {node["$ref"].removeprefix("#/$defs/")} if isinstance(node.get("$ref"), str) else set()
    return here.union(*(_references(item) for item in node.values()))


def _ordered(node: Any, names_inside: bool = False) -> Any:
    """Keywords by name, choices last; members in the order of the model."""
    if isinstance(node, list):
        return [_ordered(item) for item in node]
    if not isinstance(node, dict):
        return node
    words = list(node) if names_inside else sorted(node, key=lambda word: (_LAST.get(word, 0), word))
    return {word: _ordered(node[word], word == "properties") for word in words}
