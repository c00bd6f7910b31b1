"""Bytes to a tree, with every door shut: the one place where XML is parsed."""

from __future__ import annotations

import re
from typing import Any, Final, NamedTuple

from lxml import etree

from wellposed.findings import Finding
from wellposed.reading.limits import MOST_LEVELS
from wellposed.reading.positions import Lines
from wellposed_converters.xml.faults import stop
from wellposed_converters.xml.names import MOST_TAGS, MOST_XML_BYTES

SPACE: Final = " \t\r\n"
UTF_8: Final = "UTF-8 without a byte order mark"
_OTHER_MARKS: Final = (
    (b"\xff\xfe", "a mark of UTF-16 or UTF-32"),
    (b"\xfe\xff", "a mark of UTF-16"),
    (b"\x00\x00\xfe\xff", "a mark of UTF-32"),
)
_DECLARATION: Final = re.compile(rf"<\?xml[{SPACE}](.*?)\?>", re.DOTALL)
_VERSION: Final = re.compile(r"""version\s*=\s*(["'])1\.0\1""", re.ASCII)
_ENCODING: Final = re.compile(r"""encoding\s*=\s*["']([^"']*)["']""", re.ASCII)
_BEFORE_ROOT: Final = re.compile(rf"(?:[{SPACE}]++|<\?.*?\?>|<!--.*?-->)*+", re.DOTALL)
_WELL_FORMED: Final = "well-formed XML 1.0"
_LONGEST_TEXT: Final = 10_000_000
"""The parser's own limit for one text."""


class Parsed(NamedTuple):
    """The text, and the outermost element."""

    text: str
    root: Any


def parser() -> Any:
    """A parser that resolves, loads, fetches and repairs nothing, for one use.

    UTF-8 whatever the bytes look like; the limits of libxml2 stay: 256 levels, 10,000,000 bytes a text.
    """
    return etree.XMLParser(
        encoding="UTF-8",
        attribute_defaults=False,
        collect_ids=False,
        dtd_validation=False,
        huge_tree=False,
        load_dtd=False,
        no_network=True,
        ns_clean=False,
        recover=False,
        remove_blank_text=False,
        remove_comments=False,
        remove_pis=False,
        resolve_entities=False,
        schema=None,
        strip_cdata=True,
    )


def parsed(data: bytes) -> Parsed | tuple[Finding, ...]:
    """The tree, or what is wrong with the text."""
    if len(data) > MOST_XML_BYTES:
        return (stop("document-too-large", expected=f"at most {MOST_XML_BYTES} bytes"),)
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        return (_not_utf_8(data, error.start),)
    if not text.strip(SPACE):
        return (stop("document-empty", expected="an XML document").at(1, 1),)
    return _barred(text) or _tree(text, data)


def _not_utf_8(data: bytes, offset: int) -> Finding:
    found = next((words for start, words in _OTHER_MARKS if data.startswith(start)), "a byte out of place")
    return _at(data[:offset].decode(), offset, "not-utf-8", expected=UTF_8, byte=offset, found=found)


def _at(text: str, offset: int, rule: str, **facts: Any) -> Finding:
    place = Lines(text).place(min(offset, len(text)))
    return stop(rule, **facts).at(place.line, place.column)


def _barred(text: str) -> tuple[Finding, ...]:
    """What keeps the text from the parser."""
    if text.count("<") > MOST_TAGS:
        return (stop("document-too-large", expected=f"at most {MOST_TAGS} tags"),)
    declared = _DECLARATION.match(text)
    if declared and not _VERSION.search(declared[1]):
        return (_at(text, 0, "not-xml", expected=_WELL_FORMED, found="a declaration of another version"),)
    encoding = _ENCODING.search(declared[1]) if declared else None
    if encoding and encoding[1].upper() != "UTF-8":
        return (_at(text, 0, "not-utf-8", expected=UTF_8, found="a declaration of another encoding"),)
    begins = _BEFORE_ROOT.match(text)
    at = begins.end() if begins else 0
    return (_document_type(text, at),) if text.startswith("<!", at) and not text.startswith("<!--", at) else ()


def _document_type(text: str, at: int) -> Finding:
    return _at(text, at, "document-type", expected="none; nothing is declared in a document")


def _tree(text: str, data: bytes) -> Parsed | tuple[Finding, ...]:
    try:
        root = etree.fromstring(data, parser())
    except etree.XMLSyntaxError as error:
        return (_refused(text, error.code, *error.position),)
    finally:
        etree.clear_error_log()  # it would keep names out of the document
    if root.getroottree().docinfo.doctype:
        return (_document_type(text, 0),)
    return Parsed(text, root)


def _refused(text: str, code: int, line: int, column: int) -> Finding:
    if code == etree.ErrorTypes.ERR_RESOURCE_LIMIT:
        finding = _beyond(text)
    else:
        finding = stop("not-xml", expected=_WELL_FORMED, found=_FOUND.get(code, "what XML does not have there"))
    return finding.at(max(line, 1), max(column, 1))


def _beyond(text: str) -> Finding:
    if max(map(len, text.split("<"))) >= _LONGEST_TEXT:
        return stop("document-too-large", expected=f"at most {_LONGEST_TEXT} bytes in one text")
    return stop("nesting-too-deep", expected=f"at most {MOST_LEVELS} levels of objects and lists")


_FOUND: Final = {
    etree.ErrorTypes.ERR_TAG_NAME_MISMATCH: "an end tag of another element",
    etree.ErrorTypes.ERR_TAG_NOT_FINISHED: "the end of the document",
    etree.ErrorTypes.ERR_DOCUMENT_END: "something behind the outermost element",
    etree.ErrorTypes.ERR_DOCUMENT_EMPTY: "no element",
    etree.ErrorTypes.ERR_UNDECLARED_ENTITY: "an entity; XML itself has five: amp, lt, gt, quot, apos",
    etree.ErrorTypes.ERR_ENTITYREF_SEMICOL_MISSING: "an ampersand that begins no character",
    etree.ErrorTypes.ERR_NAME_REQUIRED: "a less-than sign or an ampersand by itself",
    etree.ErrorTypes.ERR_ATTRIBUTE_REDEFINED: "an attribute for the second time",
    etree.ErrorTypes.ERR_INVALID_CHAR: "a character XML does not have",
    etree.ErrorTypes.NS_ERR_UNDEFINED_NAMESPACE: "a prefix that is not declared",
}
