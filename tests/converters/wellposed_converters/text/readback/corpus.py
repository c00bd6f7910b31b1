"""The prescriptions that are read back and read again, and what of a document its read-back says."""

import json
import re
from functools import cache
from pathlib import Path

from tests.converters.wellposed_converters.text.readback.prescriptions import prescription
from tests.validator.wellposed.kinematics.generate import prescription as reckoned
from tests.validator.wellposed.rules.sound import sound as ordinary

from wellposed.check import prescription_of
from wellposed.render.readback import readback_text
from wellposed.vocabulary.contacts import normal
from wellposed_converters.text.readback import read_back

ROOT = Path(__file__).parents[5]
FILES = [*ROOT.glob("examples/*/prescription.json"), *ROOT.glob("spec/conformance/cases/*/*/input.json")]
UNSAID = {
    *("format", "version", "notation", "replaces", "issued", "extensions"),
    *("patient", "prescriber", "laboratory", "records", "notes"),
}
"""The members of a document that its read-back does not say, or of which it says only that they are there."""
ANY_ORDER = {"states", "pair", "sides"}
CONTACTS = {"contacts", "close"}
TEETH = {"teeth", "align", "hold", "upper", "lower", "must", "must_not", "may", "prefer", "prefer_not"}


@cache
def corpus():
    """Name to sound prescription: examples, conformance kit, three generators."""
    files = {path.parent.name: prescription_of(path.read_bytes()) for path in sorted(FILES)}
    made = {f"ordinary-{seed}": prescription_of(json.dumps(ordinary(seed)).encode()) for seed in range(60)}
    made |= {f"reckoned-{seed}": prescription_of(json.dumps(reckoned(seed)).encode()) for seed in range(60)}
    made |= {f"any-{seed}": prescription(seed) for seed in range(300)}
    return {name: rx for name, rx in {**files, **made}.items() if rx is not None}


def said(rx):
    """What the read-back of a prescription says of it, in the order that means something."""
    return plain(
        {name: value for name, value in json.loads(rx.model_dump_json(exclude_none=True)).items() if name not in UNSAID}
    )


def plain(value, name=""):
    """A document without what means nothing: the order of teeth and of ends, white space and signs of quotations."""
    if isinstance(value, dict):
        return {key: plain(inner, key) for key, inner in value.items()}
    if isinstance(value, list):
        return _ordered([plain(inner) for inner in value], name)
    if name == "leave":
        return normal(value)
    return quotable(value) if name in ("words", "method") else value


def _ordered(listed, name):
    if name == "particulars":
        return sorted(listed, key=lambda one: one["tooth"])
    if name in CONTACTS:
        return sorted(map(normal, listed))
    return sorted(listed) if name in ANY_ORDER | TEETH and all(isinstance(one, str) for one in listed) else listed


def quotable(words):
    """The prescriber's words as a line of text can hold them."""
    return re.sub(r"[“”]", '"', " ".join(words.split()))


@cache
def told(name, usage="british", width=100):
    """The read-back of a prescription of the corpus."""
    return readback_text(corpus()[name], usage, width)


def read(text):
    """What is read, and what is asked."""
    found = read_back(text)
    return plain(found.document), found.questions


def named(text):
    """The notes and extensions a read-back names."""
    found = read_back(text)
    return sorted(found.entries[at].text for at in found.unsaid)
