"""The published schemas of what ``wellposed convert --report`` and ``wellposed formats --format json`` write."""

from __future__ import annotations

from wellposed.model import DOCUMENTS
from wellposed.render.schema_parts import NAME, TEXT, Schema, closing, listed, named, one_of, or_null, ref

__all__ = ["conversion_schema", "formats_schema"]

_FORM: Schema = {**NAME, "description": "name of a form, as `wellposed formats` lists it"}


def _losses() -> Schema:
    pointer = {"type": "string", "description": "RFC 6901 in the document, or the place in the other form"}
    detail = {"type": "string", "description": "names or limits, never content; empty where there is none"}
    return listed(named(pointer=pointer, what=NAME, detail=detail, message=TEXT))


def conversion_schema() -> Schema:
    """What stood against a conversion, what could not be carried, and whether anything was written."""
    document = named(
        format=or_null(TEXT),
        id=or_null(TEXT),
        revision=or_null({"type": "integer", "minimum": 1}),
        findings=listed(ref("Finding")),
        losses=_losses(),
    )
    return named(
        file={**TEXT, "description": "base name of the file"},
        **{"from": _FORM, "to": _FORM},
        written={"type": "boolean"},
        documents=listed(document),
        losses={**_losses(), "description": "of writing; those of reading stand with their document"},
        **closing("conversion"),
    )


def formats_schema() -> Schema:
    """The forms a document can be carried in."""
    form = named(
        name=_FORM,
        words=TEXT,
        suffixes=listed({"type": "string", "pattern": "^[.]"}),
        read={"type": "boolean"},
        written={"type": "boolean"},
        many={"type": "boolean", "description": "whether one file can carry several documents"},
        kinds=listed(one_of(list(DOCUMENTS))),
        rules={"type": "object", "additionalProperties": TEXT, "description": "its own rules, and when each speaks"},
    )
    ending = closing("formats")
    del ending["caution"]
    return named(formats=listed(form), **ending)
