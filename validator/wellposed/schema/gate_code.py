"""The gate: a schema as a Python module that needs no model, made by fastjsonschema."""

from __future__ import annotations

import ast
import copy
from typing import Any

import fastjsonschema

from wellposed.schema.documents import document_schema

__all__ = ["compiled", "gate_text"]

Schema = dict[str, Any]
Edit = tuple[tuple[int, int], tuple[int, int], str]

_HEAD = """\
# Generated from the models by: python -m wellposed.generate. Do not edit.
# mypy: ignore-errors
# ruff: noqa
# fmt: off
"""
_SILENT = ("description", "title", "$comment", "$id")


def gate_text(name: str) -> str:
    """The gate of the document called ``name``, byte for byte."""
    return _HEAD + compiled(document_schema(name))


def compiled(schema: Schema) -> str:
    """Python source whose ``validate(data)`` raises every fault at once, and changes nothing."""
    code = fastjsonschema.compile_to_code(
        _as_definition(copy.deepcopy(schema)),
        handlers=dict.fromkeys(("http", "https", "file", "ftp", "urn"), _refuse),
        use_default=False,
        use_formats=False,
        fast_fail=False,
    )
    return _lighter(code.split("\n", 1)[1])  # the first line is the version of the compiler


def _refuse(uri: str) -> Any:
    raise ValueError(f"a schema may not be fetched: {uri}")


def _as_definition(schema: Schema) -> Schema:
    """The document as one definition beside the others: every fault carries the schema it broke."""
    bare: Schema = _without_words(schema)
    definitions = bare.pop("$defs", {})
    dialect = bare.pop("$schema")
    return {"$schema": dialect, "$ref": "#/$defs/document", "$defs": {**definitions, "document": bare}}


def _without_words(node: Any, names_inside: bool = False) -> Any:
    if isinstance(node, list):
        return [_without_words(item) for item in node]
    if not isinstance(node, dict):
        return node
    kept = {word: item for word, item in node.items() if names_inside or word not in _SILENT}
    return {word: _without_words(item, word in ("properties", "$defs")) for word, item in kept.items()}


def _lighter(code: str) -> str:
    """The same code, each fault with the one rule it broke in place of the whole definition."""
    lines = [line.encode() for line in code.split("\n")]
    for (first, start), (last, end), text in sorted(_edits(code), reverse=True):
        joined = lines[first - 1][:start] + text.encode() + lines[last - 1][end:]
        lines[first - 1 : last] = [joined]
    return b"\n".join(lines).decode().rstrip("\n") + "\n"


def _edits(code: str) -> list[Edit]:
    return [
        ((node.lineno, node.col_offset), (node.end_lineno or 0, node.end_col_offset or 0), text)
        for call in ast.walk(ast.parse(code))
        if isinstance(call, ast.Call)
        for node, text in _broken(call)
    ]


def _broken(call: ast.Call) -> list[tuple[ast.expr, str]]:
    """The definition a fault is raised with, and the part of it that is worth keeping."""
    given = {keyword.arg: keyword.value for keyword in call.keywords}
    if not {"definition", "rule"} <= set(given):
        return []
    rule = ast.literal_eval(given["rule"])
    definition = ast.literal_eval(given["definition"])
    return [(given["definition"], repr({rule: definition[rule]}))]
