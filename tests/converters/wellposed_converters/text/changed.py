"""Notes of the corpus, changed in a known way, with what is then expected.

A change is a list of ``(start, end, new words)``; the spans of the expected clauses move with it. Nothing here knows
the reader.
"""

import json
import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from tests.converters.wellposed_converters.text.varied_pen import CORNER, QUADRANT, ROW, UNIVERSAL

CORPUS = Path(__file__).parent / "corpus"
PERMANENT = set(ROW)
PRIMARY = {quadrant * 10 + position for quadrant in (5, 6, 7, 8) for position in range(1, 6)}
TOOTH = {number: tooth for tooth, number in UNIVERSAL.items()}
QUADRANTS = {name: quadrant for quadrant, name in QUADRANT.items()}
WRITTEN = re.compile(
    r"(?P<words>\b(?P<quadrant>U[RL]|L[RL])(?P<position>[1-8])\b)"
    r"|(?P<right>(?<!\d)(?P<last>[1-8])(?P<corner>[⏌⏋]))|(?P<left>(?P<sign>[⎿⎾])(?P<first>[1-8])(?!\d))"
    r"|(?P<dotted>(?<![\d.,])[1-4]\.[1-8](?![\d.,]*\d)(?!\s*(?:mm|°|deg|%)))"
    r"|(?P<number>(?P<hash>#?)(?<![\d.,+])\d{1,2}(?![\d.,]*\d)(?!\s*(?:mm|°|deg|%|steps|days|aligners)))"
)
LEFT_SIGNS = {"⎿": 2, "⎾": 3}
RIGHT_SIGNS = {"⏌": 1, "⏋": 4}


@dataclass(frozen=True)
class Sample:
    """A note with its expected clauses and questions."""

    name: str
    text: str
    expected: list
    ask: list
    notation: str
    hard: bool


@cache
def samples():
    """The samples and the ordinary notes."""
    lines = [
        line for name in ("samples", "ordinary") for line in (CORPUS / f"{name}.jsonl").read_text("utf-8").splitlines()
    ]
    return [
        Sample(one["id"], one["text"], one["expected"], one["ask"], one["notation"], one["hard"])
        for one in map(json.loads, lines)
    ]


def changed(sample, edits):
    """The sample with each ``(start, end, words)`` put in; spans go along."""
    edits = sorted(edits)
    text, done = [], 0
    for start, end, words in edits:
        text += [sample.text[done:start], words]
        done = end

    def moved(at, closing):
        by = sum(len(words) - (end - start) for start, end, words in edits if end <= at and (closing or start < at))
        inside = next(((s, e, w) for s, e, w in edits if s < at < e), None)
        return by + at if inside is None else by + inside[0] + (len(inside[2]) if closing else 0)

    def shift(records):
        return [one | {"spans": [[moved(a, False), moved(b, True)] for a, b in one["spans"]]} for one in records]

    return Sample(sample.name, "".join(text) + sample.text[done:], shift(sample.expected), shift(sample.ask),
                  sample.notation, sample.hard)  # fmt: skip


def teeth_of(record):
    """Every tooth a record names."""
    pairs = [*record.get("contacts", ()), *record.get("links", ())]
    return {*record.get("teeth", ()), *(tooth for pair in pairs for tooth in pair)}


def has_primary(record):
    """Whether a record names a primary tooth."""
    return bool(teeth_of(record) & PRIMARY)


def written_teeth(sample):
    """Where teeth are written singly: ``(start, end, tooth)``; a number is one when a clause over it has that tooth."""
    for found in WRITTEN.finditer(sample.text):
        tooth = _tooth(found, sample.notation)
        over = [one for one in sample.expected if any(a <= found.start() and found.end() <= b for a, b in one["spans"])]
        if tooth in PERMANENT | PRIMARY and any(tooth in teeth_of(one) for one in over):
            yield found.start(), found.end(), tooth


def _tooth(found, notation):
    if found["words"]:
        return QUADRANTS[found["quadrant"]] * 10 + int(found["position"])
    if found["right"]:
        return RIGHT_SIGNS[found["corner"]] * 10 + int(found["last"])
    if found["left"]:
        return LEFT_SIGNS[found["sign"]] * 10 + int(found["first"])
    if found["dotted"]:
        return int(found["dotted"].replace(".", ""))
    number = int(found["number"].lstrip("#"))
    return TOOTH.get(number) if notation.startswith("Universal") else number


def write(tooth, system):
    """A tooth in a numbering."""
    quadrant, position = divmod(tooth, 10)
    match system:
        case "FDI":
            return str(tooth)
        case "Universal":
            return f"#{UNIVERSAL[tooth]}"
        case "alphanumeric":
            return f"{QUADRANT[quadrant]}{position}"
    return CORNER[quadrant].format(position)


def stated(sample, words, of):
    """The sample with a numbering stated in its first line, or in place of the one it states."""
    there = [one for one in sample.expected if one["kind"] == "notation"]
    if there:
        (start, end), *_ = there[0]["spans"]
        made = changed(sample, [(start, end, words)])
        return _with(made, [one | {"of": of} if one["kind"] == "notation" else one for one in made.expected])
    made = changed(sample, [(0, 0, f"{words}\n")])
    return _with(made, [{"kind": "notation", "mode": "state", "of": of, "spans": [[0, len(words)]]}, *made.expected],
                 shift=1)  # fmt: skip


def _with(sample, expected, shift=0):
    ask = [one | {"for": [index + shift for index in one.get("for", ())]} for one in sample.ask]
    return Sample(sample.name, sample.text, expected, ask, sample.notation, sample.hard)


def renamed(sample, tooth, words):
    """The expected records with each tooth, and each word for a side or an arch, put through the maps."""
    order = {one: index for index, one in enumerate(ROW)}

    def pair(of):
        return sorted(map(tooth, of), key=order.get)

    def record(one):
        one = dict(one)
        for name in ("contacts", "links"):
            if name in one:
                one[name] = [pair(of) for of in one[name]]
        if "teeth" in one:
            one["teeth"] = [tooth(of) for of in one["teeth"]]
        return one | {name: words.get(one[name], one[name]) for name in ("side", "dir", "arch") if name in one}

    return _with(sample, [record(one) for one in sample.expected])
