"""A place in a bundle: what stands there, taken by name and kind; anything else is told."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from wellposed.reading.pointer import escape
from wellposed_converters.fhir.faults import Told

_KINDS: dict[str, tuple[type, ...]] = {
    "an object": (dict,),
    "a list": (list,),
    "a string": (str,),
    "a number": (int, float),
    "a whole number": (int,),
}


@dataclass(frozen=True, slots=True)
class Cursor:
    """``value`` stands at ``pointer`` in the bundle; ``told`` hears what is wrong."""

    value: Any
    pointer: str
    told: Told

    def has(self, name: str) -> bool:
        """Whether a member is there."""
        return isinstance(self.value, dict) and name in self.value

    def maybe(self, name: str, kind: str) -> Cursor | None:
        """A member, if it is there and of its kind."""
        if not self.has(name):
            return None
        return Cursor(self.value[name], f"{self.pointer}/{escape(name)}", self.told).of(kind)

    def need(self, name: str, kind: str) -> Cursor | None:
        """A member that must be there."""
        if isinstance(self.value, dict) and name not in self.value:
            self.told.tell("missing-member", f"{self.pointer}/{escape(name)}", name=name)
        return self.maybe(name, kind)

    def each(self, name: str) -> Iterator[Cursor]:
        """The objects of a list; of none where it is not there."""
        found = self.maybe(name, "a list")
        for number, value in enumerate(found.value if found else ()):
            item = Cursor(value, f"{self.pointer}/{name}/{number}", self.told).of("an object")
            if item:
                yield item

    def text(self, name: str) -> str | None:
        """A string that must be there."""
        found = self.need(name, "a string")
        return found.value if found else None

    def of(self, kind: str) -> Cursor | None:
        """The same, if it is of a kind."""
        if isinstance(self.value, _KINDS[kind]) and not isinstance(self.value, bool):
            return self
        self.told.tell("wrong-kind", self.pointer, expected=kind)
        return None

    def found(self, place: str) -> Any:
        """The value, noted as what a place of the document says."""
        self.told.places[place] = self.pointer
        return self.value
