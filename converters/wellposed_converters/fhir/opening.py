"""The bytes of a bundle to its value, as strictly as a document is read; only the size it may have is larger."""

from __future__ import annotations

from wellposed.findings import Finding
from wellposed.reading import Document, limits, read_document
from wellposed.reading.faults import finding, findings_of
from wellposed.reading.scan import scan
from wellposed_converters.fhir.bundle import MOST_BYTES


def opened(data: bytes) -> Document | tuple[Finding, ...]:
    """The bundle, strictly parsed, or all that is wrong with its text."""
    if len(data) <= limits.MOST_BYTES:
        return read_document(data)
    if len(data) > MOST_BYTES:
        return (finding("document-too-large", expected=f"at most {MOST_BYTES} bytes"),)
    try:
        text = data.decode()
    except UnicodeDecodeError:
        return (finding("not-utf-8", expected="UTF-8 without a byte order mark"),)
    if text.startswith("\ufeff"):
        return (finding("byte-order-mark", expected="UTF-8 without a byte order mark"),)
    found = scan(text)
    return findings_of(text, found.faults) if found.faults else Document(found.value, data)
