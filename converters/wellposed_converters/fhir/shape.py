"""The members of the format as parts of an extension, taken from the published schema of the prescription."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import Any

from wellposed.schema import document_schema

Node = dict[str, Any]

CODE, TEXT, DATE, NUMBER, WHOLE, PART, TABLE = "code", "text", "date", "number", "whole", "part", "table"
"""What a member holds: one of a closed list, a string, a day, an amount, a count, members of its own, a table."""

_PLAIN = {"string": TEXT, "number": NUMBER, "integer": WHOLE, "object": PART}


@dataclass(frozen=True, slots=True)
class Slot:
    """A member where it stands in an extension.

    name      the member's name, and the url inside the extension
    kind      one of the words above
    many      whether it is a list
    required  whether it must be there
    terms     the name of the list its codes are of
    codes     that list
    parts     the members inside it
    """

    name: str
    kind: str
    many: bool = False
    required: bool = False
    terms: str = ""
    codes: tuple[str, ...] = ()
    parts: tuple[Slot, ...] = ()


@cache
def slots(section: str, owner: str, without: tuple[str, ...] = ()) -> tuple[Slot, ...]:
    """The members of one entry of a section, of all forms it may take.

    section  the member of the prescription
    owner    the name of its extension, from which lists of codes that belong to it alone are named
    without  members that FHIR has a place of its own for
    """
    forms = _forms(_item(_schema()["properties"][section])[0])
    return tuple(slot for slot in _merged(forms, owner) if slot.name not in without)


@cache
def _schema() -> Node:
    return document_schema("prescription")


def _resolved(node: Node) -> Node:
    name = node["$ref"].removeprefix("#/$defs/") if "$ref" in node else ""
    found: Node = _schema()["$defs"][name] if name else node
    return found


def _item(node: Node) -> tuple[Node, bool]:
    """What a list is of, and whether it is one."""
    whole = _resolved(node)
    return (whole["items"], True) if whole.get("type") == "array" else (node, False)


def _forms(node: Node) -> list[Node]:
    """The objects a member may be."""
    whole = _resolved(node)
    if "allOf" in whole:
        return [form for branch in whole["allOf"] for form in _forms(branch["then"])]
    if "if" in whole:
        return [*_forms(whole["then"]), *_forms(whole["else"])]
    return [whole]


def _merged(forms: Iterable[Node], owner: str) -> tuple[Slot, ...]:
    forms = list(forms)
    names = dict.fromkeys(name for form in forms for name in form["properties"])
    having = {name: [form for form in forms if name in form["properties"]] for name in names}
    return tuple(_slot(name, found, len(forms), owner) for name, found in having.items())


def _slot(name: str, forms: list[Node], most: int, owner: str) -> Slot:
    """A member of all the forms that have it. ValueError where they do not agree on what it is."""
    items = [_item(form["properties"][name]) for form in forms]
    kinds = {(_kind(node), many) for node, many in items}
    if len(kinds) != 1:
        raise ValueError(f"{owner}.{name} is not the same in every form")
    ((kind, many),) = kinds
    needed = len(forms) == most and all(name in form.get("required", ()) for form in forms)
    own = f"{owner}-{name.replace('_', '-')}"
    parts = _merged(_forms(items[0][0]), own) if kind == PART else ()
    codes = tuple(dict.fromkeys(code for node, _ in items for code in _codes(node)))
    return Slot(name, kind, many, needed, _terms(items[0][0], own) if codes else "", codes, parts)


def _kind(node: Node) -> str:
    if node.get("$ref") == "#/$defs/Date":
        return DATE
    if _codes(node):
        return CODE
    whole = _resolved(node)
    return TABLE if "additionalProperties" in whole and "properties" not in whole else _PLAIN[whole["type"]]


def _codes(node: Node) -> tuple[str, ...]:
    whole = _resolved(node)
    return tuple(whole["enum"]) if "enum" in whole else (whole["const"],) if "const" in whole else ()


def _terms(node: Node, own: str) -> str:
    """A list that many members share has its own name in the schema."""
    shared = node.get("$ref", "").removeprefix("#/$defs/")
    return {"ToothNumber": "tooth"}.get(shared, shared.lower()) if shared else own
