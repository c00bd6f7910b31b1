"""The catalogue of rules as JSON, described by ``spec/schema/1/rules.schema.json``."""

from __future__ import annotations

from dataclasses import asdict

from wellposed.catalogue import rules
from wellposed.render.json_report import TOOL, VERSION, dumped

__all__ = ["rules_json"]


def rules_json() -> str:
    """Every rule with its page, in the order in which a document meets them."""
    listed = [asdict(rule) for rule in rules()]
    return dumped({"rules": listed, "format": "wellposed/rules", "version": VERSION, "tool": TOOL}, indent=2)
