"""What every document of the conversation has."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field

from wellposed.model.base import Digest, Identifier, Moment, Part, Stated, Whole, one_line
from wellposed.model.making import Extension

Version = Annotated[str, one_line("^1[.](0|[1-9][0-9]{0,2})$", 5, 'a version 1.x, such as "1.0"')]
NOTE_EXTENSION = "org.wellposed.note"
"""Which note a prescription was made of: ``sha256`` of its text, and ``sources``, clause id or pointer to spans."""
ExtensionKey = Annotated[
    str, one_line("^[a-z][a-z0-9-]{0,30}([.][a-z][a-z0-9-]{0,30}){1,5}$", 200, "a reverse-domain name")
]


def _closed(schema: dict[str, Any]) -> None:
    """Every key must match: pydantic's own schema would let others through."""
    for pattern, value in schema.pop("patternProperties", {}).items():
        schema["propertyNames"] |= {"pattern": pattern}
        schema["additionalProperties"] = value


Extensions = Annotated[dict[ExtensionKey, Extension], Field(max_length=20, json_schema_extra=_closed)]


class Answers(Part):
    """The exact revision a document answers."""

    id: Identifier
    revision: Annotated[Whole, Field(ge=1, le=9999)]
    sha256: Digest


class Envelope(Part):
    """Identity of a document: ``replaces`` names the digest of the revision before, absent on revision 1."""

    version: Version
    id: Identifier
    revision: Annotated[Whole, Field(ge=1, le=9999)]
    replaces: Stated[Digest] = None
    issued: Moment
    extensions: Stated[Extensions] = None
