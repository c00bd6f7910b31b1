"""What can stand against a document in XML beside what can stand against any, each with the rule that tells it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from wellposed.findings import Finding, Severity

RULES: Final = {
    "not-xml": "the text is not well-formed XML 1.0",
    "document-type": "the document has a document type declaration, the place where entities are declared",
    "comment-or-instruction": "a comment or a processing instruction stands in the document",
    "other-namespace": "an element is not in the namespace of the form",
    "unknown-attribute": "an attribute stands where the form has none",
    "missing-key": "an element does not say which member it is",
    "wrong-element": "an element stands where the form has another",
    "mixed-content": "text stands beside elements",
    "member-order": "a member stands behind one it has to precede",
}
"""Rules of the XML form, and when each speaks. All others are those of the JSON form."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that stands against the XML: its rule, the node it is at, the pointer, what the wording needs."""

    rule: str
    node: Any
    pointer: str
    facts: Mapping[str, Any]


def stop(rule: str, pointer: str = "", **facts: Any) -> Finding:
    """A finding that stops everything else."""
    return Finding(rule, Severity.STOP, pointer, facts)
