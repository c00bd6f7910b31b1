"""What people wrote in the stories of ``examples/stories``: setups, revised orders, landmark points, a laboratory's table.

``python -m tests.examples.made_stories`` writes them; ``regenerate.py`` then writes what the program says of them.
"""

import json
from copy import deepcopy

import numpy as np
from tests.validator.wellposed.landmarks.made import mouth, moved, table

from wellposed.digests import digest

WIDE = 112
ENVELOPE = {"format": "wellposed/setup", "version": "1.0", "notation": "ISO 3950"}
UNITS = {"along": "mm", "out": "mm", "vertical": "mm", "torque": "deg", "tip": "deg", "rotation": "deg"}


def text(value, indent=""):
    """JSON in which what fits on a line stands on one."""
    flat = json.dumps(value, ensure_ascii=False)
    if len(indent + flat) <= WIDE or not isinstance(value, dict | list) or not value:
        return flat
    inner = indent + "  "
    if isinstance(value, dict):
        parts = [f"{json.dumps(name)}: {text(part, inner)}" for name, part in value.items()]
        return "{\n" + ",\n".join(inner + part for part in parts) + f"\n{indent}}}"
    return "[\n" + ",\n".join(inner + text(part, inner) for part in value) + f"\n{indent}]"


def write(path, document):
    """A document as a file."""
    path.write_text(text(document) + "\n", "utf-8", newline="")


def read(path):
    """A document of a file."""
    return json.loads(path.read_text("utf-8"))


def answered(document):
    """What an answer names of the document it is about."""
    return {"id": document["id"], "revision": document["revision"], "sha256": digest(document)}


def revised(old, issued, **changes):
    """The next revision of a document, with members put in place of its own; None takes one out."""
    new = {**deepcopy(old), "revision": old["revision"] + 1, "replaces": digest(old), "issued": issued, **changes}
    order = [name for name in (*list(old)[: list(old).index("issued")], "replaces", *list(old), *changes) if name in new]
    return {name: new[name] for name in dict.fromkeys(order) if new[name] is not None}


def tables(ends):
    """Movement tables of {variable: {tooth: value}}."""
    return [{"variable": one, "unit": UNITS[one], "values": values} for one, values in ends.items()]


def stages(ends, arch, count, late=()):
    """The way there in equal steps over so many aligners; the variables in ``late`` begin after a third of them.

    Two decimals, counted from the start; the last stage is where the teeth are to stand.
    """
    said = []
    for number in range(1, count + 1):
        at = {one: _there(values, number, count, count // 3 if one in late else 0) for one, values in ends.items()}
        said.append({"aligner": number, "arch": arch, "movements": tables({k: v for k, v in at.items() if v})})
    return said


def _there(values, number, count, after):
    share = max(0, number - after) / (count - after)
    return {tooth: round(value * share, 2) for tooth, value in values.items()} if share else {}


def enamel(amounts):
    """Planned reductions of {contact: (amount, before which aligner)}."""
    return [{"contact": at, "amount": much, "unit": "mm", "before_aligner": when} for at, (much, when) in amounts.items()]
