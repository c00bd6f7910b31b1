"""Pydantic's own schema of a model, with its unions written so that every validator places a fault alike."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

__all__ = ["Portable"]

Told = Callable[[Any], Any]


class Portable(GenerateJsonSchema):
    """Unions as ``if``/``then`` in place of ``oneOf``; no defaults, and no titles made out of names."""

    def tagged_union_schema(self, schema: core_schema.TaggedUnionSchema) -> JsonSchemaValue:
        """One branch for each tag: chosen by the tag's value, or by which member is there."""
        forms = {str(tag): self.generate_inner(choice).copy() for tag, choice in schema["choices"].items()}
        told = schema["discriminator"]
        if isinstance(told, str):
            return _by_value(told, forms)
        if callable(told):
            return _by_member(told, forms)
        raise TypeError("a union is told by one member or by a function")

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        """Absent means "not stated", never a value."""
        return self.generate_inner(schema["schema"])

    def field_title_should_be_set(self, schema: Any) -> bool:  # noqa: ARG002 - the signature is pydantic's
        """A member is named by its name."""
        return False


def _by_value(tag: str, forms: dict[str, JsonSchemaValue]) -> JsonSchemaValue:
    """The branch whose model lists this value of ``tag``; values of one model share a branch."""
    shared: dict[str, list[str]] = {}
    for value, form in forms.items():
        shared.setdefault(form["$ref"], []).append(value)
    return {
        "type": "object",
        "required": [tag],
        "properties": {tag: {"enum": list(forms)}},
        "allOf": [{"if": _has(tag, values), "then": {"$ref": ref}} for ref, values in shared.items()],
    }


def _has(tag: str, values: list[str]) -> JsonSchemaValue:
    """An object with one of these values there, so that anything else chooses no branch at all."""
    named = {"enum": values} if len(values) > 1 else {"const": values[0]}
    return {"type": "object", "required": [tag], "properties": {tag: named}}


def _by_member(told: Told, forms: dict[str, JsonSchemaValue]) -> JsonSchemaValue:
    """The first of the members that is there chooses; where none is, the last form is meant."""
    _same_order(told, list(forms))
    *others, (_, chain) = forms.items()
    for member, form in reversed(others):
        chain = {"if": {"required": [member]}, "then": form, "else": chain}
    return chain


def _same_order(told: Told, members: list[str]) -> None:
    """The function must choose as the chain does."""
    for place, member in enumerate(members):
        if told(dict.fromkeys(members[place:])) != member or told({}) != members[-1]:
            raise ValueError(f"told_by must name the members in the order of the union, last: {members[-1]}")
