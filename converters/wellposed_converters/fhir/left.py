"""What of a document FHIR has no form for, and what it says by an empty list: kept beside the projection by pointer."""

from __future__ import annotations

from dataclasses import dataclass, field

from wellposed_converters.fhir.lexical import holds_text


@dataclass(frozen=True, slots=True)
class Left:
    """Pointers into the document.

    out    members that the projection does not carry
    empty  lists that are there with nothing in them: FHIR has no empty list
    """

    out: list[str] = field(default_factory=list)
    empty: list[str] = field(default_factory=list)

    def text(self, text: str, place: str) -> bool:
        """Whether FHIR holds a string; one it does not is left out."""
        held = holds_text(text)
        if not held:
            self.out.append(place)
        return held
