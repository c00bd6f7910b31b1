"""The declared reading of a table: what its columns are, in a TOML file of its own. Nothing has a default that changes
a meaning."""

from __future__ import annotations

from typing import Literal, get_args

from pydantic import BaseModel, ConfigDict

from wellposed.model.base import Stated, ToothNumber, Unit
from wellposed.vocabulary.measures import Measure
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.terms import AttachmentReason, AttachmentShape
from wellposed_converters.setups.directions import Direction

Notation = Literal["ISO 3950", "Universal", "Palmer", "quadrant letters", "Haderup"]
NOTATIONS: tuple[Notation, ...] = get_args(Notation)
Cells = dict[str, tuple[str, ...]]
Sided = Literal["left", "right", "class-ii", "class-iii"]


class Declared(BaseModel):
    """A part of a declared reading: strict, nothing unknown."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, allow_inf_nan=False, hide_input_in_errors=True)


class Table(Declared):
    """How the file is read, and what of it is left out."""

    layout: Literal["row-a-tooth", "row-a-movement"]
    header_row: int
    decimal: Literal["point", "comma"]
    delimiter: Stated[Literal[",", ";", "\t", "|"]] = None
    encoding: Stated[Literal["utf-8", "utf-16", "windows-1252", "iso-8859-1"]] = None
    ignore_columns: tuple[str, ...] = ()
    ignore_rows: tuple[int, ...] = ()
    ignore_rows_with: Stated[Cells] = None
    ignore_sheets: tuple[str, ...] = ()
    none: tuple[str, ...] = ()
    not_stated: tuple[str, ...] = ()
    hidden: Stated[Literal["read"]] = None
    comments: Stated[Literal["ignore"]] = None
    trim: Stated[Literal[True]] = None
    numbers_as_text: Stated[Literal[True]] = None
    round: Stated[Literal[2]] = None


class Tooth(Declared):
    """Which column names the tooth; ``confirmed`` teeth are right though the prescription does not list them."""

    column: str
    notation: Notation
    confirmed: tuple[ToothNumber, ...] = ()


class Amount(Declared):
    """The unit of the cells: ``unit``, or ``written_in`` another, times ``factor``."""

    unit: str
    written_in: Stated[str] = None
    factor: Stated[float] = None
    cell_unit: Stated[str] = None


class Movement(Amount):
    """One variable: its column, or its name in the column of movements; and which way a number points."""

    column: Stated[str] = None
    name: Stated[str] = None
    variable: Variable
    positive: Stated[Direction] = None
    directions: Stated[dict[str, Direction]] = None
    direction_at: Stated[Literal["before", "after", "in a column"]] = None
    direction_column: Stated[str] = None


class Rows(Declared):
    """The columns of a table with a row for each movement."""

    movement: str
    value: str
    direction: Stated[str] = None
    unit: Stated[str] = None
    unit_words: Stated[dict[str, Unit]] = None


class Own(Declared):
    """A part in a sheet of its own."""

    sheet: Stated[str] = None
    header_row: Stated[int] = None
    tooth: Stated[str] = None
    ignore_columns: tuple[str, ...] = ()


class Stages(Declared):
    """The path: which aligner a row stands for, and whether it counts from the start or from the row before."""

    column: str
    counts: Literal["from-start", "step"]
    final: Literal["last-stage", "own-rows"]
    final_text: Stated[str] = None
    steps_not_listed: Stated[Literal["unmoved"]] = None


class Aligners(Declared):
    """How many aligners there are: cells that say so, or the greatest number among the stages."""

    upper: Stated[str] = None
    lower: Stated[str] = None
    from_stages: Stated[Literal[True]] = None


class Reductions(Own, Amount):
    """Enamel: by tooth surface, or by contact."""

    mesial: Stated[str] = None
    distal: Stated[str] = None
    counts: Stated[Literal["surface", "contact"]] = None
    contact: Stated[str] = None
    separator: Stated[str] = None
    amount: Stated[str] = None
    before_aligner: Stated[str] = None
    not_listed: Stated[Literal["none"]] = None


class Carried(Declared):
    """What a cell text says of an attachment."""

    reason: Stated[AttachmentReason] = None
    shape: Stated[AttachmentShape] = None
    words: Stated[str] = None


class Attachments(Own):
    """Which cells say that a tooth carries one."""

    column: str
    carries: dict[str, Carried]
    from_aligner: Stated[str] = None
    not_listed: Stated[Literal["none"]] = None


class Extractions(Own):
    """Which cells say that a tooth is taken out."""

    column: str
    taken: tuple[str, ...]
    not_listed: Stated[Literal["none"]] = None


class Predicted(Amount):
    """A measure at the end, in one cell."""

    measure: Measure
    cell: str
    sheet: Stated[str] = None
    positive: Stated[Sided] = None


class Whole(Declared):
    """What is said of the setup as a whole."""

    unlisted: Stated[Literal["unmoved"]] = None


class Mapping(Declared):
    """The declared reading, whole."""

    table: Table
    tooth: Tooth
    movement: tuple[Movement, ...]
    rows: Stated[Rows] = None
    stages: Stated[Stages] = None
    aligners: Stated[Aligners] = None
    reductions: Stated[Reductions] = None
    attachments: Stated[Attachments] = None
    extractions: Stated[Extractions] = None
    predicted: tuple[Predicted, ...] = ()
    setup: Stated[Whole] = None


def sides_of(measure: str) -> tuple[Sided, ...]:
    """The two ways the sign of a measure may be written, that of the format first; none where there is one only."""
    if measure.endswith("-midline"):
        return "left", "right"
    return ("class-ii", "class-iii") if "-relation-" in measure else ()


def headers_of(mapping: Mapping) -> set[str]:
    """The headers that are read in the table of movements."""
    wanted = {mapping.tooth.column, *(mapping.table.ignore_rows_with or {})}
    for one in mapping.movement:
        wanted |= {name for name in (one.column, one.direction_column) if name is not None}
    if mapping.rows:
        rows = mapping.rows
        wanted |= {name for name in (rows.movement, rows.value, rows.direction, rows.unit) if name is not None}
    wanted |= {mapping.stages.column} if mapping.stages else set()
    for part in (mapping.reductions, mapping.attachments, mapping.extractions):
        wanted |= columns_of(part) if part and part.sheet is None else set()
    return wanted


def columns_of(part: Own) -> set[str]:
    """The headers a part needs."""
    names = ("tooth", "column", "from_aligner", "mesial", "distal", "contact", "amount", "before_aligner")
    return {name for key in names if (name := getattr(part, key, None)) is not None}
