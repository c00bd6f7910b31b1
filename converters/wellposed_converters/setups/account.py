"""What became of every cell, and what stands against a table, in words and as data. No cell's own text is repeated."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from decimal import Decimal
from textwrap import wrap
from typing import Any

from wellposed.vocabulary.contacts import contact_in_words
from wellposed.vocabulary.motions import VARIABLE_UNITS
from wellposed.vocabulary.teeth import in_words
from wellposed_converters.setups.faults import Fault, Place
from wellposed_converters.setups.mapping import Mapping
from wellposed_converters.setups.reading import Reading

_WIDTH = 100
_AS_IT_STANDS = "as it stands"


def fault_line(fault: Fault) -> str:
    """One fault or question in a line."""
    what = "asks" if fault.asks else "stops"
    return f"{what}  {where(fault.place)}: {fault.found}; expected {fault.expected}. {fault.do} [{fault.rule}]"


def where(place: Place) -> str:
    """A place as the table's user counts."""
    at = [place.sheet] if place.sheet else []
    at += [f"row {place.row}"] if place.row else []
    at += [f"column {place.column}"] if place.column else []
    named = f" ({place.header})" if place.header else ""
    return (", ".join(at) or "the table") + named


def fault_data(fault: Fault) -> dict[str, Any]:
    """The same as JSON types."""
    place = fault.place
    said = {"sheet": place.sheet, "row": place.row, "column": place.column, "header": place.header}
    words = {"found": fault.found, "expected": fault.expected, "do": fault.do}
    return {"rule": fault.rule, "weight": "ask" if fault.asks else "stop", **said, **words}


def rows(said: Reading) -> list[dict[str, Any]]:
    """What was read, a row each: where, of what, what it became, and how."""
    found = [
        _row(one.place, one.tooth, one.variable, _plain(one.value), VARIABLE_UNITS[one.variable], one.said)
        | ({"aligner": one.stage} if one.stage else {})
        for one in (*said.final, *(one for one in said.stages if one not in said.final))
    ]
    found += [
        _row(one.place, one.contact, "reduction", _plain(one.amount), "mm", one.said) for one in said.reductions or ()
    ]
    found += [_row(one.place, one.tooth, "attachment", "", "", ()) for one in said.attachments or ()]
    found += [
        _row(one.place, "", one.asked.measure, _plain(one.number.value), one.asked.unit, one.number.said)
        for one in said.predicted or ()
    ]
    return found


def _row(place: Place, of: str, what: str, value: str, unit: str, said: Iterable[str]) -> dict[str, Any]:
    at = {"sheet": place.sheet, "row": place.row, "column": place.column, "header": place.header}
    return {**at, "of": of, "what": what, "value": value, "unit": unit, "how": list(said)}


def left_out(mapping: Mapping) -> list[str]:
    """What of the table is left out because that is declared."""
    left = [*(f'column "{name}"' for name in mapping.table.ignore_columns)]
    left += [f"row {number}" for number in mapping.table.ignore_rows]
    left += [f'sheet "{name}"' for name in mapping.table.ignore_sheets]
    texts = mapping.table.ignore_rows_with or {}
    return [*left, *(f'rows with {" or ".join(map(repr, said))} under "{name}"' for name, said in texts.items())]


def unsaid(said: Reading) -> list[str]:
    """Cells that say nothing because their text is declared to, by address."""
    return [f"{place.column}{place.row}" for place in said.unsaid]


def lines(said: Reading, mapping: Mapping, *, every_cell: bool = False) -> list[str]:
    """The account in words: the file, what was left out, then what was read: column by column, or cell by cell."""
    head = [f"The file: {one}." for one in said.said]
    left, silent, found = left_out(mapping), unsaid(said), rows(said)
    head += [f"Left out, as declared: {', '.join(left)}."] if left else []
    head += [f"Not stated, as declared: {', '.join(silent)}."] if silent else []
    head += [f"Taken out: {', '.join(said.extractions) or 'no tooth'}."] if said.extractions is not None else []
    head += [f"Aligners: {', '.join(f'{arch} {n}' for arch, n in said.aligners.items())}."] if said.aligners else []
    if every_cell:
        return [*head, f"{len(found)} cells read:", *(f"  {_line(row)}" for row in found)]
    return [*head, f"{len(found)} cells read, told by column (with --all, each):", *_by_column(found)]


def _by_column(found: Iterable[dict[str, Any]]) -> list[str]:
    """What each column was read as, with how many of its cells in which way."""
    columns: dict[tuple[str, str], list[str]] = {}
    for row in found:
        place = where(Place(row["sheet"], 0, row["column"], row["header"]))
        columns.setdefault((place, row["what"]), []).append("; ".join(row["how"]))
    told = (f"  {place}: {len(ways)} read as {what}{_ways(ways)}" for (place, what), ways in columns.items())
    return [line for one in told for line in wrap(one, _WIDTH, subsequent_indent="    ")]


def _ways(ways: list[str]) -> str:
    if not any(ways):
        return ""
    return f" ({', '.join(f'{count}: {way or _AS_IT_STANDS}' for way, count in Counter(ways).items())})"


def _plain(value: Decimal) -> str:
    return f"{value.normalize() + 0:f}"


def _line(row: dict[str, Any]) -> str:
    place = where(Place(row["sheet"], row["row"], row["column"], row["header"]))
    how = f" ({'; '.join(row['how'])})" if row["how"] else ""
    after = f" after aligner {row['aligner']}" if "aligner" in row else ""
    amount = f" {row['value']} {row['unit']}" if row["value"] else ""
    return f"{place}: {_of(row['of'])}{row['what']}{amount}{after}{how}"


def _of(name: str) -> str:
    if not name:
        return ""
    return f"{contact_in_words(name)}, " if "-" in name else f"{name} ({in_words(name)}), "
