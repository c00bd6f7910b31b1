"""A declared reading read: its TOML, its members, and whether they go together."""

from __future__ import annotations

import json
import re
import tomllib
from collections import Counter
from collections.abc import Iterator
from typing import Any, cast

from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.motions import VARIABLE_UNITS
from wellposed_converters.setups.directions import fits
from wellposed_converters.setups.faults import Fault, Place, RefusedError, UnreadableError
from wellposed_converters.setups.mapping import (
    Amount,
    Mapping,
    Movement,
    Own,
    Predicted,
    Reductions,
    Rows,
    columns_of,
    headers_of,
    sides_of,
)

_PAGE = "spec/setup-tables.md"


def mapping_of(data: bytes, name: str) -> Mapping:
    """The declared reading in a TOML file.

    Raises:
        UnreadableError: no TOML
        RefusedError: unknown members, values that are none of those declared here, or members that do not go together
    """
    try:
        said = tomllib.loads(data.decode("utf-8"))
    except (ValueError, RecursionError) as fault:  # of bytes, of TOML, of a number of too many digits
        do = "Mend it; a TOML file is UTF-8 text."
        raise UnreadableError(
            [Fault("setup-columns-unreadable", Place(name, _row(fault)), "what is no TOML", "TOML", do)]
        ) from fault
    made = _made(said, name)
    faults = tuple(Fault("setup-columns-amiss", Place(name), *words) for words in _amiss(made))
    if faults:
        raise RefusedError(faults)
    return made


def _row(fault: Exception) -> int:
    """The line a fault of TOML names, 0 for none."""
    found = re.search(r"\(at line ([0-9]+),", str(fault))
    return int(found[1]) if found else 0


def _made(said: dict[str, Any], name: str) -> Mapping:
    try:
        return Mapping.model_validate_json(json.dumps(said, default=str))
    except ValueError as fault:
        wrong = cast("Any", fault).errors(include_input=False, include_url=False, include_context=False)
        raise RefusedError(tuple(_shape(one, name) for one in wrong)) from fault


def _shape(wrong: dict[str, Any], name: str) -> Fault:
    at = ".".join(str(step + 1) if isinstance(step, int) else step for step in wrong["loc"])
    other = ("setup-columns-value", "a value that it cannot have", wrong["msg"].removeprefix("Input should be "))
    kinds = {
        "extra_forbidden": ("setup-columns-unknown", "a member that is not known", "one that the page names"),
        "missing": ("setup-columns-missing", "nothing", "a value"),
    }
    rule, found, expected = kinds.get(wrong["type"], other)
    return Fault(rule, Place(name, 0, "", at), found, expected, f"See the page {_PAGE}.")


Words = tuple[str, str, str]


def _amiss(made: Mapping) -> Iterator[Words]:
    """What does not go together: found, expected, what to do."""
    if not made.movement:
        yield "no [[movement]]", "one for each variable the table holds", "Declare them."
    long = made.table.layout == "row-a-movement"
    if long != (made.rows is not None):
        yield (
            "[rows] and `layout` that do not agree",
            "[rows] for `row-a-movement`, and only there",
            "Mend one of them.",
        )
    if made.table.header_row < 1:
        yield "`header_row` below 1", "the row of the headers, counted from 1", "Count it."
    both = set(made.table.none) & set(made.table.not_stated)
    if both:
        yield "a text under `none` and under `not_stated`", "each text once: they mean different things", "Choose."
    if made.rows and (made.rows.unit is None) != (made.rows.unit_words is None):
        yield "`unit` without `unit_words` in [rows], or the reverse", "both or none", "Declare the other."
    for number, one in enumerate(made.movement, start=1):
        yield from _movement(one, f"[[movement]] {number}", made.rows)
    yield from _doubled(made)
    yield from _extras(made)


def _doubled(made: Mapping) -> Iterator[Words]:
    """Headers and names that are declared to be two things."""
    said = [one.name if made.rows else one.column for one in made.movement]
    for name, count in Counter(name for name in said if name is not None).items():
        if count > 1:
            yield f'"{name}" in {count} [[movement]]', "each column or name to be one variable", "Leave the one it is."
    for name in sorted(headers_of(made) & {*made.table.ignore_columns}):
        do = "Take it out of one of them."
        yield f'"{name}" declared, and left out by `ignore_columns`', "each header to be read or left out", do


def _movement(one: Movement, named: str, rows: Rows | None) -> Iterator[Words]:
    if (one.name is None) == (rows is not None) or (one.column is None) == (rows is None):
        yield f"{named}", "`column` in `row-a-tooth`, `name` in `row-a-movement`", "Declare the one that fits."
    yield from _amount(one, named)
    if one.unit in ("mm", "deg") and one.unit != VARIABLE_UNITS[one.variable]:
        yield f"{named} in {one.unit}", f"`{one.variable}` in {VARIABLE_UNITS[one.variable]}", "Look at which it is."
    words = [one.positive] if one.positive else list((one.directions or {}).values())
    if (one.positive is None) == (one.directions is None):
        yield f"{named}: sign", "either `positive` or `directions`", "Say which way a positive number points."
    if any(not fits(word, one.variable) for word in words):
        yield f"{named}: a direction of another variable", f"a direction of `{one.variable}`", "Look at which it is."
    if (one.directions is None) != (one.direction_at is None):
        yield f"{named}: `directions` without `direction_at`, or the reverse", "both or none", "Declare the other."
    column = one.direction_column or (rows.direction if rows else None)
    if one.direction_at == "in a column" and column is None:
        yield f"{named}: no column of the direction", "`direction_column`, or `direction` in [rows]", "Declare it."
    if one.direction_column is not None and (rows is not None or one.direction_at != "in a column"):
        yield f"{named}: `direction_column`", "only in `row-a-tooth`, with `in a column`", "Take it out."


def _amount(one: Amount, named: str) -> Iterator[Words]:
    if one.unit not in ("mm", "deg"):
        do = "For another one declare what it is `written_in` and its `factor`."
        yield f"{named}: a unit that the format does not have", "mm or deg", do
    if (one.written_in is None) != (one.factor is None) or (one.factor is not None and one.factor <= 0):
        yield f"{named}: `written_in` and `factor`", "both, with a factor above 0, or none", "Declare both."


def _extras(made: Mapping) -> Iterator[Words]:
    if made.stages and (made.stages.final == "own-rows") != (made.stages.final_text is not None):
        yield "[stages]: `final_text`", "with `own-rows`, and only there", "Mend one of them."
    if made.stages and made.stages.counts == "step" and made.stages.final == "own-rows":
        yield "[stages]: steps with rows of the end", "the end as the sum of the steps", "Declare `last-stage`."
    if made.stages and made.stages.counts == "step" and made.table.round:
        yield (
            "[stages]: steps with `round`",
            "steps of at most two decimals",
            "Rounded steps do not add up: take it out.",
        )
    if made.aligners and made.aligners.from_stages and (not made.stages or made.aligners.upper or made.aligners.lower):
        yield "[aligners]: `from_stages`", "with [stages], and without cells", "Mend one of them."
    for name, part in (("attachments", made.attachments), ("extractions", made.extractions)):
        yield from _own(part, name, made)
    for number, one in enumerate(made.predicted, start=1):
        yield from _measure(one, f"[[predicted]] {number}")
    if made.reductions:
        yield from _reductions(made.reductions, made)


def _own(part: Own | None, name: str, made: Mapping) -> Iterator[Words]:
    if part is None:
        return
    if (part.sheet is None) != (part.header_row is None) or (part.tooth is not None and part.sheet is None):
        yield f"[{name}]: `sheet`, `header_row`, `tooth`", "all of them for a sheet of its own, or none", "Mend it."
    doubled = columns_of(part) & {*part.ignore_columns}
    if doubled:
        yield (
            f"[{name}]: a header declared, and left out by `ignore_columns`",
            "one of them",
            "Take it out of the other.",
        )
    if part.sheet is None and (made.stages or made.rows):
        yield f"[{name}] among rows that name a tooth several times", "a sheet of its own", "Declare the sheet."


def _reductions(one: Reductions, made: Mapping) -> Iterator[Words]:
    yield from _amount(one, "[reductions]")
    if one.unit == "deg":
        yield "[reductions] in deg", "mm", "Look at which it is."
    by_surface = (one.mesial, one.distal, one.counts)
    by_contact = (one.contact, one.separator, one.amount)
    if any(by_surface) == any(by_contact) or not (all(by_surface) or all(by_contact)):
        expected = "`mesial`, `distal` and `counts`, or `contact`, `separator` and `amount`"
        yield "[reductions]: columns", expected, "Declare one of the two, whole."
    if one.before_aligner and not one.contact:
        yield "[reductions]: `before_aligner`", "only by contact", "Take it out."
    if one.contact and (one.sheet is None or one.header_row is None or one.tooth is not None):
        yield "[reductions] by contact", "`sheet` and `header_row` of their own, no `tooth`", "Mend it."
    if one.mesial:
        yield from _own(one, "reductions", made)
        if one.sheet is not None and one.tooth is None:
            yield "[reductions] in a sheet of their own", "`tooth`, its column there", "Declare it."


def _measure(one: Predicted, named: str) -> Iterator[Words]:
    yield from _amount(one, named)
    unit = MEASURE_KINDS[one.measure].unit
    if one.unit in ("mm", "deg") and one.unit != unit:
        yield f"{named} in {one.unit}", f"`{one.measure}` in {unit}", "Look at which it is."
    wanted = sides_of(one.measure)
    if (one.positive in wanted) != bool(wanted) or (one.positive is not None and not wanted):
        expected = f"`positive`, one of {', '.join(wanted)}" if wanted else "no `positive`: this measure has one sign"
        yield f"{named}: `positive`", expected, "Mend it."
