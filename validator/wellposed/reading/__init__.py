"""The one way in: bytes to a strictly parsed document with positions, or all that is wrong with it."""

from wellposed.reading.document import Document, read_document
from wellposed.reading.documents import structured
from wellposed.reading.shapes import known_members
from wellposed.reading.structure import structure_findings

__all__ = ["Document", "known_members", "read_document", "structure_findings", "structured"]
