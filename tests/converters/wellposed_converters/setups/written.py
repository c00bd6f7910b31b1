"""Setups made at random, and written as tables under readings made at random. Nothing here asks the reader."""

import csv
import io
import random
from decimal import Decimal

from tests.converters.wellposed_converters.setups.frame import shown
from tests.converters.wellposed_converters.setups.tables import xlsx
from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER

UNITS = {"along": "mm", "out": "mm", "vertical": "mm", "torque": "deg", "tip": "deg", "rotation": "deg"}
# The two senses of each variable in words of the trade, the positive one first (spec/semantics.md, Variables).
WORDS = {
    "along": ("mesial", "distal"),
    "out": ("buccal", "lingual"),
    "vertical": ("extrusion", "intrusion"),
    "torque": ("buccal-crown-torque", "lingual-crown-torque"),
    "tip": ("mesial-crown-tip", "distal-crown-tip"),
    "rotation": ("mesiolingual-rotation", "distolingual-rotation"),
}
PLACES = {
    "along": (("left", "right"), ("forward", "backward")),
    "out": (("left", "right"), ("forward", "backward")),
    "vertical": (("up", "down"),),
    "torque": (("crown-left", "crown-right"), ("crown-forward", "crown-backward")),
    "tip": (
        ("crown-left", "crown-right"),
        ("crown-forward", "crown-backward"),
        ("clockwise-from-outside", "counterclockwise-from-outside"),
    ),
    "rotation": (
        ("clockwise-from-above", "counterclockwise-from-above"),
        ("clockwise-on-the-biting-surface", "counterclockwise-on-the-biting-surface"),
    ),
}
_ROUND = {"1": range(8, 0, -1), "2": range(9, 17), "3": range(24, 16, -1), "4": range(25, 33)}
NAMES = {
    "ISO 3950": lambda t: t,
    "Universal": lambda t: str(_ROUND[t[0]][int(t[1]) - 1]),
    "Palmer": lambda t: {"1": "{}\u23cc", "2": "\u23bf{}", "3": "\u23be{}", "4": "{}\u23cb"}[t[0]].format(t[1]),
    "quadrant letters": lambda t: {"1": "UR", "2": "UL", "3": "LL", "4": "LR"}[t[0]] + t[1],
    "Haderup": lambda t: {"1": "{}+", "2": "+{}", "3": "-{}", "4": "{}-"}[t[0]].format(t[1]),
}


def setup_of(rng, paths=True):
    """A setup as data: final movements, and for some a path, enamel, attachments, extractions, predictions."""
    teeth = rng.sample(UPPER + LOWER, rng.randint(3, 28))
    variables = rng.sample(list(UNITS), rng.randint(1, 6))
    final = {
        (t, v): Decimal(rng.randint(-400, 400)) / 100 * (1 if UNITS[v] == "mm" else 5)
        for t in teeth
        for v in variables
        if rng.random() < 0.9
    }
    final = {at: value if rng.random() < 0.85 else Decimal(0) for at, value in final.items()} or {
        (teeth[0], variables[0]): Decimal("0.5")
    }
    made = {"final": final, "stages": {}, "unlisted": rng.random() < 0.5}
    if paths and rng.random() < 0.4:
        count = rng.randint(2, 5)
        for (t, v), value in final.items():
            steps = [value * n / count for n in range(1, count)]
            made["stages"] |= {(t, v, n): s.quantize(Decimal("0.01")) for n, s in enumerate(steps, 1)}
            made["stages"][t, v, count] = value
    return made


def text(value, decimal):
    return f"{value:f}".replace(".", "," if decimal == "comma" else ".")


class Table:
    """One setup under one reading: rows, and the reading as TOML."""

    def __init__(self, made, seed):
        self.rng, self.made = random.Random(seed), made
        rng = self.rng
        self.book = rng.random() < 0.5
        self.decimal = rng.choice(["point", "comma"])
        self.notation = rng.choice(list(NAMES))
        self.long = rng.random() < 0.4
        self.none, self.silent = rng.choice(["-", "none", "0"]), rng.choice(["", "n/a", "?"])
        self.lines = [
            "[table]",
            f'layout = "{"row-a-movement" if self.long else "row-a-tooth"}"',
            f'decimal = "{self.decimal}"',
            f'none = ["{self.none}"]' if self.none != "0" else "none = []",
            f'not_stated = ["{self.silent}"]',
        ]
        self.teeth = list(dict.fromkeys(t for t, _ in made["final"]))
        self.variables = [v for v in UNITS if any(name == v for _, name in made["final"])]
        self.ways = {v: self._way(v) for v in self.variables}
        self.head, self.rows = self._stack()
        self._dress()
        self._declare()

    def _way(self, variable):
        """How a variable is written: pair of directions, as sign or as words, unit."""
        pairs = [WORDS[variable], *PLACES[variable]]
        held = [t for t, v in self.made["final"] if v == variable]
        fit = [p for p in pairs if p == WORDS[variable] or all(shown(p[0], variable, t) for t in held)]
        pair = list(self.rng.choice(fit))
        self.rng.shuffle(pair)
        micro = UNITS[variable] == "mm" and self.rng.random() < 0.2
        worded = self.rng.choice([None, None, "after", "before", "in a column"])
        suffix = self.rng.random() < 0.15 and worded is None
        return {"pair": tuple(pair), "micro": micro, "worded": worded, "suffix": suffix, "letters": ("P", "Q")}

    def _positive(self, variable, tooth):
        """+1 where the first direction of the pair is the format's positive sense for this tooth."""
        first = self.ways[variable]["pair"][0]
        if first in WORDS[variable]:
            return 1 if first == WORDS[variable][0] else -1
        return shown(first, variable, tooth)

    def cell(self, tooth, variable, value):
        """What stands in the cell, and in that of its direction."""
        way = self.ways[variable]
        if value is None:
            return self.silent, ""
        if value == 0 and self.none != "0":
            return self.none, ""
        signed = value * self._positive(variable, tooth) * (1000 if way["micro"] else 1)
        if way["worded"] is None:
            return self._number(signed, "mm" if way["suffix"] else None), ""
        letter = way["letters"][0 if signed >= 0 else 1]
        number = text(abs(signed), self.decimal)
        if way["worded"] == "in a column":
            return self._number(abs(signed), None), letter
        gap = self.rng.choice(["", " "])
        return (f"{number}{gap}{letter}" if way["worded"] == "after" else f"{letter}{gap}{number}"), ""

    def _number(self, value, suffix):
        if suffix:
            return f"{text(value, self.decimal)} {suffix}"
        return float(value) if self.book else text(value, self.decimal)

    def _stack(self):
        """Headers and rows, before anything is laid around them."""
        self.path, steps = self.rng.choice(["last-stage", "own-rows", "step"]), self.made["stages"]
        self.at = [None]
        if steps:
            count = max(n for *_, n in steps)
            self.at = [*range(1, count + 1), *(["end"] if self.path == "own-rows" else [])]
        build = self._long_rows if self.long else self._wide_rows
        return build()

    def _value(self, tooth, variable, at):
        final, steps = self.made["final"].get((tooth, variable)), self.made["stages"]
        if final is None or at in (None, "end"):
            return final
        here = steps[tooth, variable, at]
        return here - steps.get((tooth, variable, at - 1), 0) if self.path == "step" else here

    def _first(self, tooth, at):
        name = NAMES[self.notation](tooth)
        number = self.book and self.notation in ("ISO 3950", "Universal")
        return [int(name) if number else name, *([] if at is None else [at])]

    def _wide_rows(self):
        columned = [v for v in self.variables if self.ways[v]["worded"] == "in a column"]
        head = ["Tooth", *(["Aligner"] if self.made["stages"] else [])]
        for v in self.variables:
            head += [f"{v} amount", *([f"{v} way"] if v in columned else [])]
        rows = []
        for at in self.at:
            for t in self.teeth:
                row = self._first(t, at)
                for v in self.variables:
                    cell, way = self.cell(t, v, self._value(t, v, at))
                    row += [cell, *([way] if v in columned else [])]
                rows.append(row)
        return head, rows

    def _long_rows(self):
        head = ["Tooth", *(["Aligner"] if self.made["stages"] else []), "What", "Amount", "Way"]
        rows = [
            [*self._first(t, at), f"the {v}", *self.cell(t, v, self._value(t, v, at))]
            for at in self.at
            for t, v in self.made["final"]
        ]
        self.rng.shuffle(rows)
        return head, rows

    def _dress(self):
        """Columns and rows that are left out, as declared."""
        rng, at = self.rng, self.rng.randint(1, len(self.head))
        self.ignored = rng.random() < 0.5
        if self.ignored:
            self.head.insert(at, "Remark")
            self.rows = [[*row[:at], rng.choice(["", "x", "check"]), *row[at:]] for row in self.rows]
        above = [[f"Export {n}", *[""] * (len(self.head) - 1)] for n in range(rng.randint(0, 2))]
        self.header_row = len(above) + 1
        total = [["Total", *[""] * (len(self.head) - 1)]] if rng.random() < 0.5 else []
        self.lines.append(f"header_row = {self.header_row}")
        self.lines.append(f"ignore_rows = {[n + 1 for n in range(len(above))]}")
        if total:
            self.lines.append('ignore_rows_with = { Tooth = ["Total"] }')
        if self.ignored:
            self.lines.append('ignore_columns = ["Remark"]')
        self.all = [*above, self.head, *self.rows, *total]

    def _declare(self):
        tail = ["[tooth]", 'column = "Tooth"', f'notation = "{self.notation}"']
        if self.long:
            tail += ["[rows]", 'movement = "What"', 'value = "Amount"', 'direction = "Way"']
        for v in self.variables:
            tail += self._movement(v)
        if self.made["stages"]:
            final = "own-rows" if self.path == "own-rows" else "last-stage"
            tail += ["[stages]", 'column = "Aligner"', f'final = "{final}"']
            tail.append(f'counts = "{"step" if self.path == "step" else "from-start"}"')
            tail += ['final_text = "end"'] if self.path == "own-rows" else []
            tail += ["[aligners]", "from_stages = true"]
        if self.made["unlisted"]:
            tail += ["[setup]", 'unlisted = "unmoved"']
        self.tail = tail

    def _movement(self, v):
        way = self.ways[v]
        told = ["[[movement]]", f'variable = "{v}"', f'unit = "{UNITS[v]}"']
        told.append(f'name = "the {v}"' if self.long else f'column = "{v} amount"')
        if way["micro"]:
            told += ['written_in = "micrometre"', "factor = 0.001"]
        if way["suffix"]:
            told.append('cell_unit = "mm"')
        if way["worded"] is None:
            return [*told, f'positive = "{way["pair"][0]}"']
        first, second = way["letters"]
        told.append(f'directions = {{ {first} = "{way["pair"][0]}", {second} = "{way["pair"][1]}" }}')
        told.append(f'direction_at = "{way["worded"]}"')
        if way["worded"] == "in a column" and not self.long:
            told.append(f'direction_column = "{v} way"')
        return told

    def turn(self, variable):
        """Declare a variable the other way round than it is written."""
        self.ways[variable]["pair"] = self.ways[variable]["pair"][::-1]
        self._declare()

    def columns(self):
        """The reading as TOML."""
        return "\n".join([*self.lines, *self.tail]) + "\n"

    def data(self):
        """The table as a file: bytes, and its ending."""
        if self.book:
            return xlsx(("Moves", self.all)), ".xlsx"
        delimiter, encoding = self.rng.choice([",", ";", "\t", "|"]), self.rng.choice(["utf-8", "utf-8-sig", "utf-16"])
        if self.notation != "Palmer":
            encoding = self.rng.choice([encoding, "windows-1252"])
        shown = {"\t": "\\t"}.get(delimiter, delimiter)
        self.lines.append(f'delimiter = "{shown}"')
        if encoding not in ("utf-8", "utf-8-sig"):
            self.lines.append(f'encoding = "{encoding}"')
        stream = io.StringIO()
        csv.writer(stream, delimiter=delimiter, lineterminator=self.rng.choice(["\n", "\r\n"])).writerows(self.all)
        return stream.getvalue().encode(encoding), ".csv"
