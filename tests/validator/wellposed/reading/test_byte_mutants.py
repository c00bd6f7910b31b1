"""Documents with bytes changed at random: each is refused, or read as what Python's own json makes of the same bytes.

WELLPOSED_BYTE_MUTANTS says how many are tried of each document.
"""

import json
import os
from pathlib import Path
from random import Random

import pytest

from wellposed.check import check, sound_document
from wellposed.report import Report

STORY = Path(__file__).parents[4] / "examples" / "stories" / "instruction-at-fault" / "case"
DOCUMENTS = {name: (STORY / f"{name}-1.json").read_bytes() for name in ("prescription", "setup", "review")}
COUNT = int(os.environ.get("WELLPOSED_BYTE_MUTANTS", "1000"))
TELLING = b'0123456789"{}[],:.-eE\\ \n\tnulltruefalse\x00\x7f\xc3\xa9\xed\xa0\x80\xff\xfe'


def mutants(data, seed):
    """The document with one to three places changed: a byte put in, left out, doubled, or another in its place."""
    random = Random(seed)
    for _ in range(COUNT):
        made = bytearray(data)
        for _ in range(random.choice((1, 1, 2, 3))):
            at = random.randrange(len(made))
            width = random.choice((0, 1, 1, random.randrange(40)))
            some = bytes(random.choices(TELLING, k=random.choice((0, 1, 1, 2))))
            made[at : at + width] = some + (bytes(made[at : at + width]) if random.random() < 0.1 else b"")
        yield bytes(made)


@pytest.mark.parametrize("name", DOCUMENTS)
def test_a_mutant_is_refused_or_read_as_what_it_says(name):
    told = {"read": 0, "refused": 0}
    for data in mutants(DOCUMENTS[name], name):
        found = sound_document(data)
        if isinstance(found, Report):
            told["refused"] += 1
            assert found.findings
            assert all(one.rule for one in found.findings)
        else:
            told["read"] += 1
            assert found.model_dump(mode="json", exclude_unset=True) == json.loads(data)
    assert min(told.values()) > COUNT / 100


@pytest.mark.parametrize("name", DOCUMENTS)
def test_the_check_of_a_mutant_ends_in_a_report(name):
    for number, data in enumerate(mutants(DOCUMENTS[name], f"{name} checked")):
        if number % 5 == 0:
            assert check(data).verdict
