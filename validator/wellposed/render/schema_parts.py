"""What the published schemas of this tool's output are put together from."""

from __future__ import annotations

from typing import Any

from wellposed.findings import CAUTION

__all__ = [
    "COUNT",
    "NAME",
    "POINTER",
    "TEXT",
    "Schema",
    "closing",
    "listed",
    "named",
    "one_of",
    "or_null",
    "profile",
    "ref",
]

Schema = dict[str, Any]

TEXT: Schema = {"type": "string", "minLength": 1}
NAME: Schema = {"type": "string", "pattern": "^[a-z]+(-[a-z0-9]+)*$"}
COUNT: Schema = {"type": "integer", "minimum": 0}
POINTER: Schema = {"type": "string", "pattern": "^(/([^~/]|~[01])*)*$", "description": "RFC 6901"}


def named(**members: Schema) -> Schema:
    """An object of these members, all of them there and no others."""
    return {
        "type": "object",
        "additionalProperties": False,
        "required": list(members),
        "properties": members,
    }


def listed(items: Schema) -> Schema:
    """A list of these."""
    return {"type": "array", "items": items}


def or_null(form: Schema) -> Schema:
    """This, or null where there is none."""
    return {**form, "type": [form["type"], "null"]}


def one_of(values: list[str]) -> Schema:
    """One of these texts."""
    return {"type": "string", "enum": values}


def ref(name: str) -> Schema:
    """What is defined under this name."""
    return {"$ref": f"#/$defs/{name}"}


def profile() -> Schema:
    """A practice profile and what it changed; null where there is none."""
    value: Schema = {"type": ["number", "string"], "description": "a limit, or how much a rule weighs"}
    change = named(key=TEXT, **{"from": value, "to": value})
    return or_null(named(name=TEXT, changes=listed(change)))


def closing(name: str) -> dict[str, Schema]:
    """How everything this tool writes ends: the caution, what it is, by which tool."""
    return {
        "caution": {"type": "string", "const": CAUTION},
        "format": {"type": "string", "const": f"wellposed/{name}"},
        "version": {"type": "string", "const": "1.0"},
        "tool": named(name={"type": "string", "const": "wellposed"}, version=TEXT),
    }
