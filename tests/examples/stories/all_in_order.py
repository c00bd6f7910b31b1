"""Points, a note, an order, a laboratory's table, a setup as ordered."""

from itertools import pairwise

import numpy as np
from tests.validator.wellposed.landmarks.made import mouth, moved, table

FRONT = ("13", "12", "11", "21", "22", "23")
OVERLAP = 0.24  # mm at each contact of the upper front, as the teeth were made
PALATAL = 2.0  # mm that 12 stands inside the line, as the teeth were made
ALIGNERS = 10
OUT = {"12": 1.8}
ALONG = {"12": -0.02, "11": -0.04, "21": 0.06, "22": 0.04, "23": 0.02}
TURN = {"12": -3, "22": 2}
ENAMEL = {"13-12": 0.3, "12-11": 0.3, "11-21": 0.3, "21-22": 0.26, "22-23": 0.26}


def points():
    """A mouth measured on a scan: 12 stands inside the line, the upper front is a little crowded."""
    teeth = mouth(overjet=2.5, overbite=2.0, between={f"{a}-{b}": -OVERLAP for a, b in pairwise(FRONT)})
    outwards = (teeth["12"]["gum"] - teeth["12"]["edge"]) * (1, 1, 0)
    teeth = moved(teeth, "12", shift=-PALATAL * outwards)
    chance = np.random.default_rng(20)
    off = {name: {at: point + chance.normal(0, 0.02, 3) for at, point in one.items()} for name, one in teeth.items()}
    return table({**off, "face": teeth["face"]}, decimals=2)


def movements():
    """The table a laboratory exports: a row a tooth and aligner, decimal commas, words for which way."""
    rows = ["Tooth;After aligner;Labial/palatal mm;Mesial/distal mm;Turn"]
    for number in range(1, ALIGNERS + 1):
        rows += [_row(tooth, number) for tooth in FRONT[1:]]
    return "\n".join(rows) + "\n"


def _row(tooth, number):
    share = number / ALIGNERS
    late = max(0, number - 4) / (ALIGNERS - 4)
    out, along, turn = (OUT.get(tooth, 0) * share, ALONG.get(tooth, 0) * share, TURN.get(tooth, 0) * late)
    return ";".join((tooth, str(number), _shown(out), _shown(along), _turned(turn)))


def _shown(value):
    return f"{value:.2f}".replace(".", ",") if value else "-"


def _turned(value):
    return f"{abs(value):.2f} {'in' if value > 0 else 'out'}".replace(".", ",") if value else "-"


def enamel():
    """The laboratory's list of enamel."""
    rows = [f"{at.replace('-', '/')};{amount:.2f};1".replace(".", ",") for at, amount in ENAMEL.items()]
    return "\n".join(["Between;mm;Before aligner", *rows]) + "\n"


def attachments():
    """Its list of attachments."""
    return "Tooth;Carries\n12;upright\n"


def written(_folder):
    """The files of this story that are points or tables: name to text."""
    return {
        "landmarks.csv": points().decode(),
        "movements.csv": movements(),
        "enamel.csv": enamel(),
        "attachments.csv": attachments(),
    }
