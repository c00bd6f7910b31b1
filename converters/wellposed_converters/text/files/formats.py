"""A file to the text of a note: plain text, mail, word-processor document.

Nothing is guessed and nothing dropped unsaid: an encoding that is not sure, a part that cannot be read, are errors that
say what was expected and what to do; what a note can do without is named in its warnings.
"""

from __future__ import annotations

import codecs
from collections.abc import Callable, Mapping
from email import message_from_bytes, policy
from email.message import EmailMessage
from pathlib import Path
from typing import Final, cast

from wellposed_converters.text.files.notes import Note, NoteError, checked, position

LARGEST: Final = 1_000_000
WIDE: Final = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)


def read_file(source: str | Path | bytes, name: str | None = None) -> Note:
    """The note in a file, or in bytes that come under a name; its ending says what it is: .txt, .md, .eml or .docx.

    Raises:
        NoteError: with a rule, a place, what was expected and what to do
    """
    title = name or (Path(source).name if not isinstance(source, bytes) else "note.txt")
    data = source if isinstance(source, bytes) else _bytes(Path(source))
    if len(data) > LARGEST:
        raise NoteError("note-too-large", title, f"a note of at most {LARGEST} bytes", "Send the note without pictures")
    reader = READERS.get(Path(title).suffix.casefold())
    if reader is None:
        known = ", ".join(sorted(READERS))
        raise NoteError("note-format-unknown", title, f"a file that ends in {known}", "Save the note as plain text")
    return reader(data, title)


def _bytes(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(LARGEST + 1)


def _plain(data: bytes, name: str) -> Note:
    return checked(decoded(data, name), name)


def decoded(data: bytes, name: str) -> str:
    """The text of bytes in UTF-8, or in UTF-16 with its mark.

    Raises:
        NoteError: "note-encoding", naming the line, the column and the byte
    """
    encoding = "utf-16" if data.startswith(WIDE) else "utf-8-sig"
    try:
        return data.decode(encoding)
    except UnicodeDecodeError as fault:
        before = data[: fault.start].decode(encoding, errors="ignore")
        place = f"{name}, {position(before)} (byte 0x{data[fault.start] if fault.start < len(data) else 0:02X})"
        advice = "Save it with the encoding UTF-8: other encodings look alike and turn one sign into another"
        raise NoteError("note-encoding", place, "text in UTF-8, or UTF-16 with its mark", advice) from fault


def _mail(data: bytes, name: str) -> Note:
    message = message_from_bytes(data, policy=policy.default)
    body = message.get_body(("plain",))
    if body is None:
        advice = "Send it as plain text, or paste its words into a text file"
        raise NoteError("note-mail-without-plain-text", name, "a mail with a plain-text part", advice)
    _undamaged(message, cast("EmailMessage", body), name)
    head = f"Subject: {message['subject']}\n\n" if message["subject"] else ""
    return checked(head + _body(cast("EmailMessage", body), name), name, _left_out(message))


def _undamaged(message: EmailMessage, body: EmailMessage, name: str) -> None:
    faults = [type(fault).__name__ for part in {id(p): p for p in (message, body)}.values() for fault in part.defects]
    if faults:
        advice = "Save the mail again from the mail program, or paste its words into a text file"
        raise NoteError("note-mail-damaged", f"{name} ({faults[0]})", "a mail that is whole", advice)


def _body(body: EmailMessage, name: str) -> str:
    try:
        return str(body.get_content(errors="strict"))
    except (UnicodeDecodeError, LookupError) as fault:
        charset = body.get_content_charset("not stated")
        advice = "Send it again in UTF-8, or paste its words into a text file"
        raise NoteError(
            "note-encoding", f"{name} (charset {charset})", "words in the stated encoding", advice
        ) from fault


def _left_out(message: EmailMessage) -> tuple[str, ...]:
    named = [part.get_filename() or part.get_content_type() for part in message.iter_attachments()]
    files = [f"the attachment is not read: {one}" for one in named]
    styled = message.get_body(("html",)) is not None
    return (*files, *(["the HTML form of the mail is not read, only its plain text"] if styled else []))


def _document(data: bytes, name: str) -> Note:
    from wellposed_converters.text.files.documents import document_text  # noqa: PLC0415  # python-docx only for a document

    text, warnings = document_text(data, name)
    return checked(text, name, warnings)


READERS: Final[Mapping[str, Callable[[bytes, str], Note]]] = {
    ".txt": _plain,
    ".md": _plain,
    ".eml": _mail,
    ".docx": _document,
}
