"""A page as a tagged PDF, through WeasyPrint, which is an extra."""

from __future__ import annotations

from hashlib import sha256
from typing import Any

__all__ = ["INSTALL", "PdfMissingError", "pdf"]

INSTALL = (
    "PDF needs the extra wellposed[pdf] (pip install 'wellposed[pdf]') and the Pango libraries; "
    "an .html page needs neither and prints alike"
)
_VARIANT = "pdf/ua-1"


class PdfMissingError(Exception):
    """WeasyPrint, or a library it needs, is not there."""


def pdf(html: str) -> bytes:
    """The page as PDF/UA-1: tagged, with its title and language. PdfMissingError where it cannot be made here."""
    try:
        from weasyprint import HTML  # noqa: PLC0415 - an extra, and slow to load
    except (ImportError, OSError) as error:  # OSError: Pango is not there
        raise PdfMissingError(INSTALL) from error
    identifier = sha256(html.encode()).digest()[:16].hex().encode()
    made: bytes = HTML(string=html, url_fetcher=_nothing).write_pdf(pdf_variant=_VARIANT, pdf_identifier=identifier)
    return made


def _nothing(url: str, *_: Any, **__: Any) -> Any:
    """Nothing is ever fetched for a page."""
    raise ValueError(f"a page fetches nothing ({len(url)} characters)")
