"""The schemas as plain Python, for whoever wants no model: ``check(document)``, ``errors(document)``.

A document is what a strict JSON parser gives: finite numbers, no duplicate names, text without lone
surrogates, little nesting. The modules named after documents are generated.
"""

from __future__ import annotations

from copy import deepcopy
from importlib import import_module
from typing import Any

from fastjsonschema import JsonSchemaValueException, JsonSchemaValuesException

from wellposed.gate.place import pointer_of

__all__ = ["GateError", "check", "errors"]

_NAMES = ("prescription", "setup", "receipt", "review")
_GATES = {f"wellposed/{name}": f"wellposed.gate.{name}" for name in _NAMES}

_WORDS = {
    "additionalProperties": "has a member that is not known",
    "const": "must be {}",
    "enum": "must be one of: {}",
    "exclusiveMaximum": "must be less than {}",
    "exclusiveMinimum": "must be more than {}",
    "maxItems": "must have at most {} items",
    "maxLength": "must have at most {} characters",
    "maxProperties": "must have at most {} members",
    "maximum": "must be at most {}",
    "minItems": "must have at least {} items",
    "minLength": "must have at least {} characters",
    "minProperties": "must have at least {} members",
    "minimum": "must be at least {}",
    "not": "must stand on one line",
    "pattern": "must match {}",
    "propertyNames": "has a member whose name is not allowed",
    "required": "must have {}",
    "type": "must be of type {}",
}


class GateError(ValueError):
    """One fault: a JSON pointer, and a message that holds nothing of the document's values."""

    def __init__(self, pointer: str, message: str) -> None:
        super().__init__(f"{pointer or 'the document'} {message}")
        self.pointer = pointer
        self.message = message


def check(document: object) -> None:
    """Raise the first fault, in the order of the pointers; the document is not touched."""
    for error in errors(document):
        raise error


def errors(document: object) -> tuple[GateError, ...]:
    """Every fault, one a place, in the order of the pointers."""
    if not isinstance(document, dict):
        return (GateError("", "must be of type object"),)
    form = document.get("format")
    if not isinstance(form, str) or form not in _GATES:
        return (GateError("/format", f"must be one of: {', '.join(_GATES)}"),)
    return _found(import_module(_GATES[form]), document)


def _found(gate: Any, document: object) -> tuple[GateError, ...]:
    try:
        gate.validate(deepcopy(document))
    except JsonSchemaValuesException as fault:
        placed: dict[str, GateError] = {}
        for one in fault.errors:
            error = _error(one, document)
            placed.setdefault(error.pointer, error)
        return tuple(placed[pointer] for pointer in sorted(placed))
    return ()


def _error(fault: JsonSchemaValueException, document: object) -> GateError:
    limit = fault.rule_definition
    if fault.rule == "required":
        limit = [name for name in limit if name not in fault.value]
    told = ", ".join(map(str, limit)) if isinstance(limit, list) else limit
    return GateError(pointer_of(str(fault.name), document), _WORDS[str(fault.rule)].format(told))
