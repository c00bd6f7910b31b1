"""The XML form, as ``wellposed.formats`` finds it."""

from __future__ import annotations

from typing import Final

from wellposed.formats import Form
from wellposed_converters.xml.faults import RULES
from wellposed_converters.xml.reading import read
from wellposed_converters.xml.writing import write

FORM: Final = Form(
    "xml", "the same content as XML 1.0, in the namespace urn:wellposed:1", (".xml",), read, write, rules=RULES
)
