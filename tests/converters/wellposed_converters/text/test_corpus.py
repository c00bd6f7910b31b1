"""Whole notes against their expected readings: no silent error, every character accounted for, few needless questions.

`samples.jsonl` were written with the reading rules; `ordinary` and `adversarial` by others who never saw the reader.
`held-*.jsonl` were held back until the reader was made; of them only what must never happen is asserted. `incidents`
are the silent errors that were found by machine, each with what is right: they stay.
"""

import json
from functools import cache
from pathlib import Path

import pytest

from wellposed_converters.text.clause import record
from wellposed_converters.text.read import read_text
from wellposed_converters.text.score import question_record, read_samples, report

CORPUS = Path(__file__).parent / "corpus"
FILES = sorted(path.stem for path in CORPUS.glob("*.jsonl"))
SEEN = [name for name in FILES if not name.startswith("held-")]


def reading(text):
    read = read_text(text)
    return [record(clause, text) for clause in read.clauses], [question_record(question) for question in read.questions]


@cache
def scored(name):
    return report(read_samples((CORPUS / f"{name}.jsonl").read_text("utf-8")), reading)


@pytest.mark.parametrize("name", FILES)
def test_nothing_is_wrong_without_a_question(name):
    assert [one["id"] for one in scored(name)["samples"] if one["silent"]] == []


@pytest.mark.parametrize("name", FILES)
def test_every_character_is_accounted_for(name):
    assert scored(name)["coverage"] == 1


def test_the_samples_are_read_as_far_as_was_aimed_for():
    total = scored("samples")["total"]
    assert total["right"] >= 0.95 * total["expected"]
    assert total["questions right"] + total["questions covered"] >= 0.9 * total["questions"]


@pytest.mark.parametrize("name", FILES)
def test_a_reading_is_the_same_every_time(name):
    first = json.loads((CORPUS / f"{name}.jsonl").read_text("utf-8").splitlines()[0])["text"]
    assert read_text(first) == read_text(first)
