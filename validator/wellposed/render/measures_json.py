"""Derived measurements as JSON, described by ``spec/schema/1/measures.schema.json``."""

from __future__ import annotations

from typing import Any

from wellposed import norms
from wellposed.derive.table import Derived
from wellposed.measure import Measures
from wellposed.render.json_report import CLOSING, dumped

__all__ = ["derived_object", "measures_json", "norm_object"]


def measures_json(measures: Measures, name: str) -> str:
    """Each measurement, then every norm used, once; ``name`` is the base name of the file. Amounts are as computed."""
    keys = dict.fromkeys(key for one in measures.derived for key in one.keys)
    whole = {
        "document": {"name": name, "id": measures.id, "revision": measures.revision},
        "measures": [derived_object(one) for one in measures.derived],
        "norms": [norm_object(key) for key in keys],
        **CLOSING,
        "format": "wellposed/measures",
    }
    return dumped(whole, indent=2)


def derived_object(one: Derived) -> dict[str, Any]:
    return {
        "name": one.name,
        "value": one.value,
        "unit": one.unit,
        "low": one.low,
        "high": one.high,
        "usual": {"least": one.usual[0], "most": one.usual[1]} if one.usual else None,
        "refused": one.refused,
        "from": list(one.from_),
        "norms": list(one.keys),
        "facts": dict(one.facts),
    }


def norm_object(key: str) -> dict[str, Any]:
    norm = norms.norm(key)
    return {
        "key": key,
        "value": norm.value,
        "unit": norm.unit,
        "sure": norm.sure,
        "sources": list(norms.load().references(key)),
        "note": norm.note,
    }
