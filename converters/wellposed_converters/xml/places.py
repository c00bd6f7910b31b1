"""Where the nodes of a tree stand in its text. The parser tells lines only, and those by its own count."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import chain
from typing import Any, Final

from wellposed.reading.positions import Lines, Place
from wellposed_converters.xml.parsing import Parsed

_MARKUP: Final = re.compile(r"<!\[CDATA\[.*?\]\]>|<!--.*?-->|<\?.*?\?>|<[^/!?]", re.DOTALL)
"""In well-formed text without a document type, all that is written with a less-than sign but end tags."""
_NO_NODE: Final = re.compile(r"<!\[CDATA\[|<\?xml[ \t\r\n]")


def places(of: Parsed, wanted: Iterable[Any]) -> dict[Any, Place]:
    """Line and column of these nodes; the n-th node of the tree is the n-th piece of markup."""
    left = set(wanted)
    found: dict[Any, Place] = {}
    lines = Lines(of.text)
    for node, offset in zip(nodes(of.root), _offsets(of.text), strict=False):
        if not left:
            break
        if node in left:
            left.remove(node)
            found[node] = lines.place(offset)
    return found


def nodes(root: Any) -> Iterator[Any]:
    """Every element, comment and processing instruction of the document, in order."""
    before = reversed(list(root.itersiblings(preceding=True)))
    return chain(before, root.iter(), root.itersiblings())


def _offsets(text: str) -> Iterator[int]:
    return (one.start() for one in _MARKUP.finditer(text) if not _NO_NODE.match(text, one.start()))
