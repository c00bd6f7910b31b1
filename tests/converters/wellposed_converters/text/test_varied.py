"""Notes put together by machine from clauses known beforehand: whatever is not read right is asked.

2,000 notes in slices, which a distributed run spreads; each note has its own seed, so that one is found again by
``varied.note(seed)``.
"""

from itertools import chain

import pytest
from tests.converters.wellposed_converters.text.varied import note

from wellposed_converters.text.clause import record
from wellposed_converters.text.read import read_text
from wellposed_converters.text.score import question_record
from wellposed_converters.text.scoring import score

NOTES = 2000
SLICE = 100
READ_RIGHT = 0.9
"""Of the clauses of a slice; measured 0.906 to 0.964. A floor, so that asking about everything is no way to pass."""


def compared(written):
    """How the reading of a note agrees with its clauses, and whether every character is accounted for."""
    reading = read_text(written.text)
    made = [record(clause, written.text) for clause in reading.clauses]
    put = [question_record(question) for question in reading.questions]
    headed = [one for one in made if one["kind"] == "note" and tuple(one["spans"][0]) in written.headings]
    return score([*written.expected, *headed], [], made, put), reading.ledger.coverage()


@pytest.mark.parametrize("first", range(0, NOTES, SLICE))
def test_a_clause_is_read_right_or_asked_about(first):
    notes = {seed: note(seed) for seed in range(first, first + SLICE)}
    found = {seed: compared(written) for seed, written in notes.items()}
    silent = {seed: (notes[seed].text, one.silent) for seed, (one, _) in found.items() if one.silent}
    assert silent == {}
    assert {seed for seed, (_, coverage) in found.items() if coverage < 1} == set()
    right = sum(g < len(notes[seed].expected) for seed, (one, _) in found.items() for g, _ in one.right)
    assert right >= READ_RIGHT * sum(len(written.expected) for written in notes.values())


def test_the_notes_are_varied():
    """The writer of the notes does not say the same thing all the time, nor always in the same way."""
    notes = [note(seed) for seed in range(200)]
    kinds = {(one["kind"], one["mode"]) for one in chain.from_iterable(written.expected for written in notes)}
    assert len(kinds) >= 35
    assert len({written.layout for written in notes}) == 7
    assert sum(written.slip is not None for written in notes) >= 40
    assert len({written.text for written in notes}) == 200


def test_a_note_is_the_same_every_time():
    assert note(7) == note(7)
