"""Files, and what of them is the text of a note."""

from wellposed_converters.text.files.formats import LARGEST, decoded, read_file
from wellposed_converters.text.files.notes import Note, NoteError

__all__ = ["LARGEST", "Note", "NoteError", "decoded", "read_file"]
