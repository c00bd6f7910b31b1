"""How one invented writer writes: tooth numbering, number forms, units, signs. Nothing here knows the reader.

Teeth are ISO 3950 numbers; the other numberings are converted by their own definitions (free text, 2.1 and 2.2).
"""

import re

UPPER = [18, 17, 16, 15, 14, 13, 12, 11, 21, 22, 23, 24, 25, 26, 27, 28]
LOWER = [48, 47, 46, 45, 44, 43, 42, 41, 31, 32, 33, 34, 35, 36, 37, 38]
ROW = UPPER + LOWER
# 1 to 16 from the upper right round to the upper left, 17 to 32 from the lower left back to the lower right.
UNIVERSAL = {tooth: number for number, tooth in enumerate(UPPER + LOWER[::-1], start=1)}
QUADRANT = {1: "UR", 2: "UL", 3: "LL", 4: "LR"}
CORNER = {1: "{}⏌", 2: "⎿{}", 3: "⎾{}", 4: "{}⏋"}
BOX = {1: "{}┘", 2: "└{}", 3: "┌{}", 4: "{}┐"}
STATED = {
    "FDI": ["FDI", "FDI numbering", "FDI numbers", "Numbering FDI", "Tooth numbers FDI", "FDI notation"],
    "dotted": ["FDI with dot"],
    "Universal": ["Universal numbering", "Universal numbers", "Universal", "Universal notation"],
    "alphanumeric": [],
    "Palmer": ["Palmer", "Palmer notation"],
}
GROUPS = {
    "centrals": ("1", ["central incisors", "centrals", "1s"]),
    "laterals": ("2", ["lateral incisors", "laterals", "2s"]),
    "incisors": ("12", ["incisors", "2-2"]),
    "canines": ("3", ["canines", "cuspids", "3s"]),
    "anteriors": ("123", ["3-3", "canine to canine", "anteriors", "anterior teeth"]),
    "first premolars": ("4", ["first premolars", "4s", "first bicuspids"]),
    "second premolars": ("5", ["second premolars", "5s"]),
    "premolars": ("45", ["premolars", "bicuspids"]),
    "first molars": ("6", ["first molars", "6s"]),
    "second molars": ("7", ["second molars", "7s"]),
    "four to four": ("1234", ["4-4"]),
    "five to five": ("12345", ["5-5"]),
}
NAMES = {
    1: "central incisor", 2: "lateral incisor", 3: "canine", 4: "first premolar",
    5: "second premolar", 6: "first molar", 7: "second molar",
}  # fmt: skip
SIDES = {1: "upper right", 2: "upper left", 3: "lower left", 4: "lower right"}
LISTS = [", ", " ", " and ", " & "]


class Pen:
    """One writer. ``words`` is for tooth words in place of numbers; the habits stay the same through a text."""

    def __init__(self, random, system):
        self.random, self.system = random, system
        self.hash = "#" if system == "Universal" and random.random() < 0.6 else ""
        self.corner = random.choice([CORNER, BOX])
        self.comma = random.random() < 0.2
        self.dash = random.choice(["-", "-", "-", "–"])
        self.between = random.choice(LISTS[:2] if self.comma else LISTS)
        self.gap = random.choice([" ", " ", ""])
        self.units = {"mm": random.choice(["mm", "mm", "mm", "millimetres", "millimeters"]),
                      "deg": random.choice(["°", "°", " deg", " degrees"])}  # fmt: skip

    def say(self, *wordings, **values):
        """One of the wordings, its ``[a|b]`` chosen and its ``{names}`` filled in."""
        text = self.random.choice(wordings)
        while "[" in text:
            text = re.sub(r"\[([^][]*)\]", lambda found: self.random.choice(found[1].split("|")), text, count=1)
        return re.sub(r" +", " ", text.format(**values)).strip()

    def tooth(self, tooth):
        """A tooth in this writer's numbering."""
        quadrant, position = divmod(tooth, 10)
        match self.system:
            case "FDI":
                return str(tooth)
            case "dotted":
                return f"{quadrant}.{position}"
            case "Universal":
                return f"{self.hash}{UNIVERSAL[tooth]}"
            case "alphanumeric":
                return f"{QUADRANT[quadrant]}{position}"
        return self.corner[quadrant].format(position)

    def listed(self, teeth):
        """Teeth one by one, in the order of the mouth or as they come."""
        teeth = list(teeth)
        if self.random.random() < 0.3:
            self.random.shuffle(teeth)
        words = [self.tooth(tooth) for tooth in teeth]
        if len(words) < 3 or self.between in LISTS[2:]:
            return self.between.join(words) if len(words) != 2 else self.random.choice(LISTS[1:]).join(words)
        return f"{self.between.join(words[:-1])}{self.random.choice([self.between, ' and '])}{words[-1]}"

    def run(self, first, last):
        """From a tooth to its opposite or another of the same arch."""
        if self.system == "Palmer":
            row = UPPER if first in UPPER else LOWER
            teeth = row[row.index(first) : row.index(last) + 1]
            return " ".join(self._touching([tooth for tooth in teeth if tooth // 10 == q]) for q in self._halves(teeth))
        if self.system == "Universal":
            return f"{self.hash}{UNIVERSAL[first]}{self.dash}{UNIVERSAL[last]}"
        return f"{self.tooth(first)}{self.dash}{self.tooth(last)}"

    @staticmethod
    def _halves(teeth):
        return list(dict.fromkeys(tooth // 10 for tooth in teeth))

    def _touching(self, teeth):
        return self.corner[teeth[0] // 10].format("".join(str(tooth % 10) for tooth in teeth))

    def teeth(self, among=None, most=4):
        """Teeth and their words: single ones, a run across the midline, or a group word."""
        draw = self.random.random()
        if among is None and draw < 0.25:
            return self.across()
        if among is None and draw < 0.45:
            return self.group()
        chosen = self.random.sample(among or [tooth for tooth in ROW if tooth % 10 < 8], self.random.randint(1, most))
        if len(chosen) == 1 and draw > 0.85:
            return chosen, f"{self.random.choice(['', 'the '])}{SIDES[chosen[0] // 10]} {NAMES[chosen[0] % 10]}"
        chosen.sort(key=ROW.index)
        return chosen, self.listed(chosen)

    def across(self, most=5, arch=None):
        """A run of teeth that is the same on both sides of an arch."""
        row = {"upper": UPPER, "lower": LOWER}[arch or self.random.choice(["upper", "lower"])]
        reach = self.random.randint(2, most)
        teeth = row[8 - reach : 8 + reach]
        return teeth, self.run(teeth[0], teeth[-1])

    def group(self, names=tuple(GROUPS), arch=None):
        """A group of teeth of one arch in words."""
        arch = arch or self.random.choice(["upper", "lower"])
        positions, forms = GROUPS[self.random.choice(list(names))]
        teeth = [tooth for tooth in (UPPER if arch == "upper" else LOWER) if str(tooth % 10) in positions]
        return teeth, f"{arch} {self.random.choice(forms)}"

    def contact(self):
        """Two neighbours and the words for the contact between them."""
        row = self.random.choice([UPPER, LOWER])
        at = self.random.randint(2, 12)
        pair = (row[at], row[at + 1])
        one, other = map(self.tooth, pair)
        apart = [f"between {one} and {other}"]
        return pair, self.random.choice(
            apart if self.system == "Palmer" else [*apart, f"{one}/{other}", f"{one}/{other}"]
        )

    def number(self, value):
        """A number in this writer's form."""
        return f"{value:g}".replace(".", ",") if self.comma else f"{value:g}"

    def amount(self, values, unit):
        """A value, a range or an approximate value with its unit: the words and the members of the clause."""
        low = self.random.choice(values)
        high = self.random.choice([value for value in values if value > low] or [low])
        draw = self.random.random()
        if draw < 0.12 and high > low:
            words = self.say("{a}{dash}{b}", "{a} to {b}", "between {a} and {b}",
                             a=self.number(low), b=self.number(high), dash=self.dash)  # fmt: skip
            return self.with_unit(words, unit), {"min": low, "max": high, "unit": unit}
        about = self.random.choice(["about ", "approx. ", "approximately ", "~"]) if draw > 0.9 else ""
        said = {"min": low, "max": low, "unit": unit} | ({"approx": True} if about else {})
        return about + self.with_unit(self.number(low), unit), said

    def most(self, values, unit):
        """An upper bound: the words and the members."""
        value = self.random.choice(values)
        words = self.random.choice(["max", "maximum", "up to", "no more than", "not more than", "at most", "≤", "<"])
        said = {"max": value, "unit": unit} | ({"max_open": True} if words == "<" else {})
        return f"{words} {self.with_unit(self.number(value), unit)}", said

    def with_unit(self, number, unit):
        """A number and its unit."""
        form = self.units[unit]
        return f"{number}{' ' if len(form) > 3 and form[0] != ' ' else self.gap if unit == 'mm' else ''}{form}"
