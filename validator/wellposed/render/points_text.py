"""What landmark points tell, as text: measures, single teeth, contacts, movements, what to look at again."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from textwrap import wrap

from wellposed import norms
from wellposed.findings import CAUTION
from wellposed.landmarks.result import Moved, PointsTaken, Taken
from wellposed.measure import PointMeasures
from wellposed.render.amounts import amount, number
from wellposed.render.measures import derived_lines
from wellposed.render.points_words import WHYS, doubt_text, lacks_text
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES

__all__ = ["beside_section", "points_text"]

_SIGNS = (
    "along: mesial +; out: labial or buccal +; vertical: extrusion +; torque: labial or buccal crown +; "
    "tip: mesial crown +; rotation: mesial surface towards the tongue +; all at the edge or cusp. residual: how well "
    "one rigid movement fits the points. off by: what 0.1 mm of error in all points makes of torque, tip and rotation."
)
_NONE = "-"
_PLACED = ("rotation", "displacement")
_MEASURED = {
    "tooth-width": "width",
    "crown-height": "crown height",
    "rotation": "rotation",
    "displacement": "off the line",
}


def points_text(measured: PointMeasures, name: str, width: int = 100) -> str:
    """All of it, ending in a line break.

    name   what the file is called
    width  longest line of prose, in characters; tables are as wide as they have to be
    """
    taken = measured.taken
    parts = [_head(taken, name, width), _measures(taken), _untold(taken, width), _doubts(taken, width)]
    parts += [_teeth(taken), _room(taken, width), _movements(taken, width)]
    parts += [_block("What follows from the widths before", derived_lines(measured.derived, width - 2))]
    parts += ["\n".join(wrap(CAUTION, width)) + "\n"]
    return "\n".join(part for part in parts if part)


def beside_section(taken: PointsTaken, moved: bool) -> Iterator[str]:
    """What a section for a document does not tell: what to look at again; of movements, the teeth that have none."""
    yield from (f"look at again: {doubt_text(one)}" for one in taken.doubts)
    if moved:
        yield from (f"{one.tooth}: not told, {WHYS[one.why]}" for one in taken.movements if one.why)


def _head(taken: PointsTaken, name: str, width: int) -> str:
    count = f"{taken.teeth} {'tooth' if taken.teeth == 1 else 'teeth'}"
    said = f"{name}  {count}, {' and '.join(taken.moments)}. Taken as bitten together, in the frame of the file."
    return "\n".join(wrap(said, width)) + "\n"


def _block(title: str, lines: Iterable[str]) -> str:
    told = list(lines)
    return "\n".join((title, *(f"  {line}".rstrip() for line in told))) + "\n" if told else ""


def _table(rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """Rows of cells in columns; the first to the left, the others to the right."""
    widest = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        cells = [f"{row[0]:<{widest[0]}}", *(f"{cell:>{w}}" for cell, w in zip(row[1:], widest[1:], strict=True))]
        yield "  ".join(cells).rstrip()


# measures of the mouth


def _measures(taken: PointsTaken) -> str:
    told = [one for one in taken.measures if any(value is not None for value in one.values)]
    changes = ["change"] if len(taken.moments) > 1 else []
    rows = [["", *taken.moments, *changes, ""]]
    rows += [[_named(one), *_values(one), _positive(one)] for one in told]
    return _block("Measures", _flush(rows)) if told else ""


def _flush(rows: list[list[str]]) -> Iterator[str]:
    """The last column, of words, to the left."""
    notes = [row[-1] for row in rows]
    for line, note in zip(_table([[*row[:-1]] for row in rows]), notes, strict=True):
        yield f"{line}  {note}"


def _positive(one: Taken) -> str:
    words = MEASURE_KINDS[one.measure].positive.partition(";")[0]
    return f"+ {words}" if words else ""


def _named(one: Taken) -> str:
    return MEASURE_KINDS[one.measure].words


def _values(one: Taken) -> Iterator[str]:
    for value in one.values:
        yield _NONE if value is None else amount(_plain(value), one.unit)
    if len(one.values) > 1:
        yield _NONE if one.change is None else _signed(one.change, one.unit)


def _plain(value: float) -> float:
    """As it will be shown, and never minus nothing."""
    return round(value, 2) + 0.0


def _signed(value: float, unit: str = "1") -> str:
    """With its sign; nought has none."""
    shown = amount(abs(value), unit)
    return shown if abs(value) < 0.005 else f"{'+' if value > 0 else '-'}{shown}"


def _untold(taken: PointsTaken, width: int) -> str:
    lines = []
    for one in taken.measures:
        for moment, lacks in zip(taken.moments, one.lacks, strict=True):
            when = f" {moment}" if len(taken.moments) > 1 else ""
            lines += [f"{_named(one)}, {one.unit}{when}: {lacks_text(lacks)}"] if lacks else []
    others = ", ".join(MEASURE_KINDS[name].words for name in taken.untouched)
    lines.append(f"For these no landmark is defined: {others}.")
    return _block("Cannot be told", (part for line in lines for part in wrap(line, width - 2, subsequent_indent="  ")))


def _doubts(taken: PointsTaken, width: int) -> str:
    told = (doubt_text(doubt) for doubt in taken.doubts)
    return _block("Look at again", (part for line in told for part in wrap(line, width - 2, subsequent_indent="  ")))


# single teeth, contacts, movements


def _teeth(taken: PointsTaken) -> str:
    """A row a tooth; what a movement does not change is told once."""
    columns = [
        (one, moment, values)
        for one in taken.of_teeth
        for moment, values in zip(taken.moments, one.values, strict=True)
        if values and (one.measure in _PLACED or moment == taken.moments[0])
    ]
    teeth = dict.fromkeys(tooth for _, _, values in columns for tooth in values)
    if not teeth:
        return ""
    measures = [_MEASURED[one.measure] for one, _, _ in columns]
    moments = [moment if one.measure in _PLACED else "" for one, moment, _ in columns]
    rows = [[t, *(number(_plain(values[t])) if t in values else _NONE for _, _, values in columns)] for t in teeth]
    return _block("Single teeth, mm and deg", _table([["", *measures], ["", *moments], *rows]))


def _room(taken: PointsTaken, width: int) -> str:
    names = list(dict.fromkeys(name for moment in taken.room.moments for name in moment))
    near = norms.value("space.touching")
    rows = [
        [n, *(_signed(m[n], "mm") if n in m else _NONE for m in taken.room.moments)]
        for n in names
        if any(abs(m.get(n, 0.0)) > near for m in taken.room.moments)
    ]
    rest = f"At all other contacts neighbours are within {number(near)} mm of touching."
    lines = [*(_table([["", *taken.moments], *rows]) if rows else ()), *wrap(rest, width - 2)]
    return _block("Room at the contacts: gap +, overlap -", lines if names else ())


def _movements(taken: PointsTaken, width: int) -> str:
    if not taken.movements:
        return ""
    still = [one.tooth for one in taken.movements if one.values and not _moves(one)]
    told = [one for one in taken.movements if _moves(one)]
    head = ["tooth", *(f"{name}, {VARIABLE_UNITS[name]}" for name in VARIABLES), "residual, mm", "off by, deg"]
    lines = [*wrap(_SIGNS, width - 2), *(_table([head, *(_moved(one) for one in told)]) if told else ())]
    lines += [f"{one.tooth}: not told, {WHYS[one.why]}" for one in taken.movements if one.why]
    lines += wrap(f"Not moved: {' '.join(still)}", width - 2) if still else []
    return _block("Movements", lines)


def _moves(one: Moved) -> bool:
    """Whether anything of it can be seen at two decimals."""
    return any(_plain(value) for value in one.values.values())


def _moved(one: Moved) -> list[str]:
    angles = "/".join(f"{one.spread[name]:.1f}" for name in ("torque", "tip", "rotation"))
    return [one.tooth, *(_signed(one.values[name]) for name in VARIABLES), f"{one.residual or 0.0:.3f}", angles]
