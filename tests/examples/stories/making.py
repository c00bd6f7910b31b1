"""Documents of a story put together: revisions that follow one another, paths in equal steps, JSON that can be read."""

import json
from copy import deepcopy

from wellposed import digests
from wellposed.model import Prescription, Setup

WIDE = 112
HEAD = ("format", "version", "notation", "id", "revision", "replaces", "issued")
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


def read(path):
    """The document in a file."""
    return json.loads(path.read_text("utf-8"))


def digest(document):
    """The digest of a document given as JSON."""
    kind = {"wellposed/prescription": Prescription, "wellposed/setup": Setup}[document["format"]]
    return digests.digest(kind.model_validate_json(json.dumps(document)))


def revised(old, issued, **changes):
    """The next revision of a document, with members put in place of its own; None takes one out."""
    new = {**deepcopy(old), "revision": old["revision"] + 1, "replaces": digest(old), "issued": issued, **changes}
    return {name: new[name] for name in dict.fromkeys((*HEAD, *new)) if new.get(name) is not None}


def setup(order, laboratory, issued, number, **members):
    """The first revision of a setup for an order."""
    answers = {"id": order["id"], "revision": order["revision"], "sha256": digest(order)}
    head = {"format": "wellposed/setup", "version": "1.0", "notation": "ISO 3950", "id": number, "revision": 1}
    return {**head, "issued": issued, "answers": answers, "laboratory": {"id": laboratory}, **members}


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
        said.append({"aligner": number, "arch": arch, "movements": tables(at)})
    return said


def _there(values, number, count, after):
    share = max(0, number - after) / (count - after)
    return {tooth: round(value * share, 2) for tooth, value in values.items()}


def enamel(amounts):
    """Planned reductions of {contact: (amount, before which aligner)}."""
    return [
        {"contact": at, "amount": much, "unit": "mm", "before_aligner": when} for at, (much, when) in amounts.items()
    ]


def carried(*teeth, reason="movement", start=1):
    """Planned attachments."""
    return [{"tooth": tooth, "reason": reason, "from_aligner": start} for tooth in teeth]


def predicted(**values):
    """What the laboratory predicts, in mm: measures with _ for -."""
    return [{"measure": one.replace("_", "-"), "value": value, "unit": "mm"} for one, value in values.items()]


def said(done, **words):
    """Statements on clauses: those carried out, and those carried out otherwise."""
    changed = [{"clause": one, "standing": "changed", "words": why} for one, why in words.items()]
    return [{"clause": one, "standing": "done"} for one in done] + changed
