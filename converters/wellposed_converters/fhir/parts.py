"""A prescription in the middle of being projected, and what of it the resources have in common."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from wellposed_converters.fhir.extensions import extensions
from wellposed_converters.fhir.left import Left
from wellposed_converters.fhir.lexical import holds_date
from wellposed_converters.fhir.names import Object, full_url, identified
from wellposed_converters.fhir.sections import Section

Entry = Object
"""An entry of a bundle: its full url and its resource."""


def entry(digest: str, part: str, resource: Object) -> Entry:
    """The entry for a part of the document with this digest."""
    return {"fullUrl": full_url(digest, part), "resource": resource}


@dataclass(frozen=True)
class Source:
    """The content of a prescription, strictly read; its digest; what the projection leaves out."""

    content: Object
    digest: str
    left: Left = field(default_factory=Left)

    def name(self, part: str) -> str:
        """The full url of the entry for a part."""
        return full_url(self.digest, part)

    def entry(self, part: str, resource: Object) -> Entry:
        """The entry for a part."""
        return entry(self.digest, part, resource)

    @cached_property
    def subject(self) -> Object:
        """The patient, by the pseudonymous reference alone."""
        return identified("patient-reference", self.content["patient"]["reference"])

    @cached_property
    def named(self) -> dict[str, str]:
        """The full urls of findings and problems, by their ids."""
        kinds = (("findings", "finding"), ("problems", "problem"))
        found = [(part, one["id"]) for member, part in kinds for one in self.content.get(member, ())]
        return {name: self.name(f"{part}/{name}") for part, name in found}

    def entries(self, member: str) -> Iterator[tuple[str, Object]]:
        """Each entry of a list with its pointer. A list with nothing in it is noted."""
        section, _, inner = member.partition("/")
        found: Any = self.content.get(section)
        found = found.get(inner) if inner and found is not None else found
        if found is not None and not found:
            self.left.empty.append(f"/{member}")
        yield from ((f"/{member}/{number}", one) for number, one in enumerate(found or ()))

    def extensions(self, sections: Iterable[Section]) -> list[Object]:
        """The extensions of these sections, in their order."""
        return [made for section in sections for made in self._section(section)]

    def own(self, section: Section, value: Object, place: str) -> list[Object]:
        """The extension of one part, as a list."""
        return extensions(section.name, value, section.slots, place, self.left)

    def text(self, holder: Object, member: str, place: str) -> str | None:
        """A string, where there is one that FHIR holds."""
        said: str | None = holder.get(member)
        return said if said is not None and self.left.text(said, f"{place}/{member}") else None

    def day(self, element: str, holder: Object, member: str, place: str, holds: Holds = holds_date) -> Object:
        """A date or moment as an element, where there is one that FHIR holds."""
        if member not in holder:
            return {}
        if not holds(holder[member]):
            self.left.out.append(f"{place}/{member}")
            return {}
        return {element: holder[member]}

    def _section(self, section: Section) -> Iterator[Object]:
        if section.many:
            for place, one in self.entries(section.member):
                yield from self.own(section, one, place)
        elif section.member in self.content:
            yield from self.own(section, self.content[section.member], f"/{section.member}")


Holds = Callable[[str], bool]
