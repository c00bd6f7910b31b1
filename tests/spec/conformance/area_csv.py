"""The area ``csv``: rows of the tables of the tests; expectations are theirs, lines counted in the text."""

from tests.converters.wellposed_converters.tables.grids import ORDER, csv_of
from tests.converters.wellposed_converters.tables.test_faults import TYPED, changed
from tests.converters.wellposed_converters.tables.test_separated import ALL_ALIKE, DATA, MALFORMED
from tests.spec.conformance.canonical_bytes import digest
from tests.spec.conformance.laying import Area, Row, expecting, finding

PAGES = ("tables.md#separated-values", "tables.md#cells")
CELL = {"wrong-form", "not-one-of", "out-of-range", "wrong-kind"}
"""Rules that speak at the very member that the cell holds."""
TWICE = {"the version as a spreadsheet leaves it", "an apostrophe that marks nothing"}
"""The same cells are among those typed."""


def pointer(where, header):
    """Where a cell stands in the document; None for cells that hold several values."""
    section, _, entry = where.partition(" ")
    if header in ("upper", "lower", "contacts", "align", "section") or "/" in section or section == "extensions":
        return None
    return f"/{header}" if section == "document" else f"/{section}/" + (f"{int(entry) - 1}/" if entry else "") + header


def typed():
    """One row of each rule and header."""
    seen = set()
    for where, header, value, rule in TYPED:
        if (rule, header) in seen:
            continue
        seen.add((rule, header))
        cells, line, _ = changed(where, header, value)
        at = pointer(where, header) if rule in CELL else None
        one = finding(rule, pointer=at, line=1 if rule == "table-header-unknown" else line)
        shown = "empty" if value == "" else repr(value)
        sentence = f"Refused in a cell: {rule}, {where} {header} {shown}"
        yield Row(sentence, PAGES[1], csv_of(cells), expecting("reject", one))


def rows():
    same = expecting("accept", digest=digest(ORDER))
    for sentence, data in ALL_ALIKE:
        yield Row(f"A table read as the same document: {sentence}", PAGES[0], data, same)
    mark = finding("table-byte-order-mark", "note", line=1)
    marked = same | {"findings": [mark]}
    yield Row("A byte order mark is left out and said", PAGES[0], b"\xef\xbb\xbf" + DATA, marked)
    for sentence, data, rule, line, _ in MALFORMED:
        if sentence not in TWICE:
            one = finding(rule, line=line) if line else finding(rule, pointer="")
            refused = expecting("reject", one, match="at-least")
            yield Row(f"Refused in separated values: {sentence}", PAGES[0], data, refused)
    yield from typed()


AREA = Area("csv", "read", "text/csv", "input.csv", tuple(rows()))
