"""The entries of a bundle by their full urls."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wellposed.reading.pointer import escape
from wellposed_converters.fhir.cursor import Cursor
from wellposed_converters.fhir.original import is_original

_DIAGNOSIS = ("Observation", "Condition", "BodyStructure")
OURS = frozenset({"ServiceRequest", "DeviceRequest", *_DIAGNOSIS, "DocumentReference", "Task"})
"""The resources that are looked at; any other is none of the document's, and told as not read."""

MODIFIERS = frozenset({"modifierExtension", "implicitRules"})
"""Elements that may change what others mean: none is known here (hl7.org/fhir/R4/extensibility.html)."""


class Entries:
    """The resources of a bundle; what is wrong with the bundle itself is told while it is made."""

    def __init__(self, bundle: Cursor) -> None:
        self.by_url: dict[str, Cursor] = {}
        _typed(bundle)
        for entry in bundle.each("entry"):
            self._add(entry)
        for modifier in _modifiers(bundle):
            bundle.told.tell("bundle-modifier", modifier, name=modifier.rpartition("/")[2])

    def of(self, kind: str) -> list[Cursor]:
        """The resources of a type."""
        return [at for at in self.by_url.values() if at.value.get("resourceType") == kind]

    def originals(self) -> list[Cursor]:
        """The documents attached."""
        return [at for at in self.by_url.values() if is_original(at.value)]

    def follow(self, reference: Cursor, *kinds: str) -> Cursor | None:
        """The resource a Reference leads to inside the bundle."""
        name = reference.text("reference")
        if name is None:
            return None
        found = self.by_url.get(name)
        if found is None or found.value["resourceType"] not in kinds:
            reference.told.tell("unknown-reference", f"{reference.pointer}/reference", expected=list(kinds))
            return None
        return found

    def _add(self, entry: Cursor) -> None:
        name, resource = entry.text("fullUrl"), entry.need("resource", "an object")
        if name in self.by_url:
            entry.told.tell("bundle-entry-twice", f"{entry.pointer}/fullUrl", first=self.by_url[name].pointer)
        elif name is not None and resource is not None and resource.text("resourceType") is not None:
            self.by_url[name] = resource


def _typed(bundle: Cursor) -> None:
    for name, expected in (("resourceType", "Bundle"), ("type", "collection")):
        found = bundle.text(name)
        if found is not None and found != expected:
            bundle.told.tell("bundle-of-another-type", f"{bundle.pointer}/{name}", expected=expected)
    bundle.need("entry", "a list")


def _modifiers(at: Cursor) -> Iterator[str]:
    """Where modifiers stand, in the bundle about its resources too; a resource that is not looked at is left alone."""
    pairs = enumerate(at.value) if isinstance(at.value, list) else at.value.items()
    for name, value in pairs:
        inner = Cursor(value, f"{at.pointer}/{escape(str(name))}", at.told)
        if name in MODIFIERS:
            yield inner.pointer
        elif isinstance(value, dict | list) and not (name == "resource" and _foreign(value)):
            yield from _modifiers(inner)


def _foreign(resource: Any) -> bool:
    kind = resource.get("resourceType") if isinstance(resource, dict) else None
    return isinstance(kind, str) and kind not in OURS
