"""A read-back read again: each of its sentences to the part of the prescription that it says."""

from wellposed_converters.text.readback.drafted import draft_of, lines
from wellposed_converters.text.readback.page import is_read_back
from wellposed_converters.text.readback.reading import ReadBack, read_back

__all__ = ["ReadBack", "draft_of", "is_read_back", "lines", "read_back"]
