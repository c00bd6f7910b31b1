"""Strings that nobody would write are read without a fault, in bounded time, and with every character accounted for.

WELLPOSED_NOTES sets how many there are; one is found again by ``strange.strange(seed)``.
"""

import os
import time

import pytest
from tests.converters.wellposed_converters.text.strange import strange

from wellposed_converters.text.read import read_text

NOTES = int(os.environ.get("WELLPOSED_NOTES", "5000"))
SLICES = 20
SLOWEST = 2.0
"""Seconds of processor time for one string; the slowest of 100,000 took 0.2."""


def faults(text, reading):
    """What is wrong with a reading whatever the text says."""
    spanned = [*reading.clauses, *reading.questions]
    if len(reading.ledger.marks) != len(text) or reading.ledger.coverage() < 1:
        yield f"holes at {reading.ledger.holes()}"
    for one in spanned:
        if not one.spans or any(not 0 <= start < end <= len(text) for start, end in one.spans):
            yield f"spans {one.spans}"
    for question in reading.questions:
        if any(not 0 <= index < len(reading.clauses) for index in question.concerns):
            yield f"a question about clause {question.concerns} of {len(reading.clauses)}"
    for index, clause in enumerate(reading.clauses):
        if clause.pending and not any(asks(question, index, clause) for question in reading.questions):
            yield f"nobody asks for {clause.pending} of {clause}"


def asks(question, index, clause):
    """Whether a question points at a clause or lies over its words."""
    over = any(a < d and c < b for a, b in clause.spans for c, d in question.spans)
    return index in question.concerns or over


def fault(seed):
    """What is wrong with the reading of a string, or nothing."""
    text = strange(seed)
    start = time.process_time()
    try:
        reading = read_text(text)
    except Exception as raised:  # any exception is the fault looked for
        return text, [repr(raised)]
    took = time.process_time() - start
    found = list(faults(text, reading)) + ([f"{took:.1f} s"] if took > SLOWEST else [])
    return (text, found) if found else None


@pytest.mark.parametrize("part", range(SLICES))
def test_a_string_is_read_without_a_fault(part):
    found = {seed: what for seed in range(part, NOTES, SLICES) if (what := fault(seed))}
    assert found == {}


@pytest.mark.parametrize("text", ["", " ", "\n", ".", "?", "1", "a", "\u200b", "\ufffd", "|", "||\n||", "- ", "1. "])
def test_next_to_nothing(text):
    assert list(faults(text, read_text(text))) == []
