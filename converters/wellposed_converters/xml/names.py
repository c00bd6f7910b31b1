"""The names the XML form adds to those of the members, and how large it may be."""

from __future__ import annotations

from typing import Final

from wellposed.reading.limits import MOST_BYTES

NAMESPACE: Final = "urn:wellposed:1"
"""Of every element. It is a name and no more: nothing is looked up under it."""

ITEM: Final = "item"
"""One entry of a list."""
MEMBER: Final = "member"
"""One member of an object whose names are free, such as tooth numbers; its name is in ``KEY``."""
KEY: Final = "key"

MAP, ARRAY, STRING, NUMBER, BOOLEAN, NULL = "map", "array", "string", "number", "boolean", "null"
JSON: Final = (MAP, ARRAY, STRING, NUMBER, BOOLEAN, NULL)
"""Any JSON, as the XML representation of JSON of XPath and XQuery Functions and Operators 3.1 names it."""

WORDS: Final = (ITEM, MEMBER, KEY, *JSON)
"""All of them."""

MOST_XML_BYTES: Final = 10 * MOST_BYTES
"""No value of the JSON form grows more than tenfold: ``1,`` becomes ``<number>1</number>``."""
MOST_TAGS: Final = MOST_BYTES
"""Every tag stands for at least one byte of the JSON form."""
