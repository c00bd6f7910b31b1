"""How large a document and its parts may be."""

from __future__ import annotations

MOST_BYTES = 2_000_000
MOST_LEVELS = 64
"""Objects and lists inside one another, the outermost counted."""

LARGEST_WHOLE = 2**53 - 1
"""RFC 7493 section 2.2: beyond it, readers disagree about a number's value."""

LONGEST_NUMBER = 20
MOST_DECIMALS = 2
MOST_FAULTS = 1000
"""A document with more is not read on: one finding says so."""

LONGEST_NAME = 200
LONGEST_POINTER = 2000
