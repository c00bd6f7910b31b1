"""Derived measurements as text: a table, under each line what it comes from, then the caution."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from textwrap import wrap
from typing import Any

from wellposed import norms
from wellposed.derive.table import Derived
from wellposed.findings import CAUTION
from wellposed.measure import Measures
from wellposed.reading.table import TableFault
from wellposed.render.amounts import amount, number
from wellposed.render.measures_words import FAULTS, LINES, REASONS, name_of
from wellposed.render.points_words import POINT_FAULTS

__all__ = ["derived_lines", "faults_text", "measures_text"]

_INDENT = "    "


def measures_text(measures: Measures, name: str, width: int = 100) -> str:
    """All of them, ending in a line break.

    name   what the document is called where it has no id of its own
    width  longest line, in characters
    """
    title = measures.id if measures.id is not None else name
    blocks = [f"{title}  {_counted(len(measures.derived))}\n"]
    blocks += ["\n".join(lines) + "\n" for lines in _blocks(measures.derived, width)]
    return "\n".join((*blocks, "\n".join(wrap(CAUTION, width)))) + "\n"


def derived_lines(derived: Sequence[Derived], width: int = 100) -> Iterator[str]:
    """Each of them with what stands under it, line by line."""
    for lines in _blocks(derived, width):
        yield from lines


def _blocks(derived: Sequence[Derived], width: int) -> Iterator[list[str]]:
    rows = [(name_of(one.name), _value(one), _usual(one)) for one in derived]
    widest = [max((len(row[column]) for row in rows), default=0) for column in (0, 1)]
    for row, one in zip(rows, derived, strict=True):
        yield list(_block(row, widest, one, width))


def _counted(count: int) -> str:
    if not count:
        return "Nothing can be derived from what is measured."
    return f"{count} derived measurement{'' if count == 1 else 's'}."


def _block(row: tuple[str, str, str], widest: list[int], one: Derived, width: int) -> Iterator[str]:
    name, value, usual = row
    head = f"{name:<{widest[0]}}  {value:<{widest[1]}}  {usual}".rstrip()
    yield from _wrapped(head, width)
    for line in (*_details(one), _origin(one)):
        if line:
            yield from _wrapped(_INDENT + line, width)


def _wrapped(line: str, width: int) -> list[str]:
    if len(line) <= width:
        return [line]
    return wrap(line, width, subsequent_indent=_INDENT * 2, break_long_words=False, break_on_hyphens=False)


# the head of a measurement


def _value(one: Derived) -> str:
    """The value, else the range, the grade, or that there is none."""
    if one.refused:
        return "not derived"
    if "grade" in one.facts and one.value is None:
        return f"grade {one.facts['grade']}"
    if one.value is not None:
        return _amount(one.value, one.unit)
    return _range(one.low, one.high, one.unit)


def _amount(value: float, unit: str) -> str:
    return number(value) if unit == "1" else amount(value, unit)


def _range(low: float | None, high: float | None, unit: str) -> str:
    if low is not None and high is not None:
        return f"{number(low)} to {_amount(high, unit)}"
    if low is not None:
        return f"at least {_amount(low, unit)}"
    return "no bound" if high is None else f"at most {_amount(high, unit)}"


def _usual(one: Derived) -> str:
    return f"usual {number(one.usual[0])} to {_amount(one.usual[1], one.unit)}" if one.usual else ""


# what stands under it


def _details(one: Derived) -> Iterator[str]:
    if one.refused:
        yield REASONS[one.refused]
    for fact, told in _TOLD:
        if fact in one.facts:
            yield from told(one.facts[fact], one)
    if one.value is not None and one.low is not None and one.high is not None and one.low != one.high:
        yield f"between {_range(one.low, one.high, one.unit)}".replace(" to ", " and ", 1)


def _teeth(value: Any, one: Derived) -> Iterator[str]:
    del one
    yield ", ".join(f"{entry['tooth']} ({entry['reason'].replace('-', ' ')})" for entry in value)


def _lines(value: Iterable[Mapping[str, Any]], one: Derived, role: str) -> Iterator[str]:
    for line in value:
        told = "not stated" if line["amount"] is None else _amount(line["amount"], one.unit)
        span = "" if line["low"] == line["high"] else f", {_span(line)} {_range(line['low'], line['high'], one.unit)}"
        optional = ", up to" if line["least"] == 0 and line["amount"] else ""
        assumed = f", average width of {' '.join(line['assumed'])}" if line.get("assumed") else ""
        side = f", {_amount(line['one_side'], one.unit)} on one side" if line.get("one_side") is not None else ""
        from_ = f" ({' '.join(line['from'])})" if line["from"] else ""
        yield f"{role} {LINES[line['what']]}{optional} {told}{span}{assumed}{side}{from_}"


def _span(line: Mapping[str, Any]) -> str:
    """What stands between the ends of a line's range: a measuring error, or the coefficients of different schools."""
    return "measured to" if line["what"] in ("crowding", "spacing") else "published"


def _excess(value: bool, one: Derived) -> Iterator[str]:
    del one
    if value:
        yield "counts clinically"


_TOLD: tuple[tuple[str, Callable[[Any, Derived], Iterator[str]]], ...] = (
    ("teeth", _teeth),
    ("spreads", lambda value, one: iter([f"{number(value)} standard deviations from the mean"])),
    ("counts_clinically", _excess),
    ("needs", lambda value, one: _lines(value, one, "needs")),
    ("means", lambda value, one: _lines(value, one, "gives")),
    ("gap", lambda value, one: iter([f"{number(value)}° from a whole turn"])),
    ("present", lambda value, one: iter([f"at present {_amount(value, one.unit)}"])),
    ("measured", lambda value, one: iter([f"measured {_amount(value, one.unit)}"])),
    ("amount", lambda value, one: iter([f"of {_amount(value, one.unit)}"])),
    ("contacts", lambda value, one: iter([", ".join(f"{name} {number(apart)}" for name, apart in value.items())])),
    ("long", lambda value, one: iter(["counts as long"] if value else [])),
    ("short", lambda value, one: iter(["counts as short"] if value else [])),
)


def _origin(one: Derived) -> str:
    """Findings and clauses it comes from; sources of the norms, and how sure they are."""
    from_ = f"from {' '.join(one.from_)}" if one.from_ else ""
    found = [norms.norm(key) for key in one.keys]
    sources = dict.fromkeys((", ".join(norm.sources), norm.sure) for norm in found)
    told = [f"{names} ({sure})" if names else sure for names, sure in sources]
    return "; ".join(part for part in (from_, *told) if part)


# a table that cannot be used


_FAULTS = {**FAULTS, **POINT_FAULTS}


def faults_text(faults: Iterable[TableFault], name: str) -> str:
    """A line for each fault, ending in a line break."""
    return "".join(
        f"wellposed: {name}: line {fault.line}, column {fault.column}: {_FAULTS[fault.reason].format(**fault.facts)}\n"
        for fault in faults
    )
