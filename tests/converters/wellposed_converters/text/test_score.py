import json
from pathlib import Path

import pytest

from wellposed_converters.text.clause import Question
from wellposed_converters.text.score import SampleError, coverage, main, question_record, read_samples

PATH = Path(__file__).parent / "corpus" / "samples.jsonl"
TEXT = PATH.read_text("utf-8")
BY_TEXT = {sample["text"]: sample for sample in map(json.loads, TEXT.splitlines())}
SAMPLE = '{"id": "a", "text": "No IPR", "expected": [], "ask": []}'


def perfect(text):
    return BY_TEXT[text]["expected"], BY_TEXT[text]["ask"]


def silent(text):
    return perfect(text)[0], []


def test_the_samples_are_read_whole():
    samples = read_samples(TEXT)
    assert len(samples) == len(TEXT.splitlines())
    assert all(one["text"][a:b] in one["text"] for one in samples for c in one["expected"] for a, b in c["spans"])


def test_a_perfect_reading_ends_with_nought(capsys):
    assert main([str(PATH)], perfect) == 0
    out = capsys.readouterr().out
    assert "SILENT ERRORS" in out
    assert "missing, silently" in out


def test_the_numbers_come_as_json_and_add_up(capsys):
    assert main([str(PATH), "--json"], perfect) == 0
    told = json.loads(capsys.readouterr().out)
    total, expected = told["total"], sum(len(sample["expected"]) for sample in BY_TEXT.values())
    assert (total["expected"], total["right"], total["silent"]) == (expected, expected, 0)
    assert total["questions"] == total["questions right"] == sum(len(sample["ask"]) for sample in BY_TEXT.values())
    assert told["coverage"] == 1
    assert sum(row["right"] for row in told["kinds"].values()) == expected


def test_any_silent_error_ends_with_one(capsys):
    assert main([str(PATH), "--sample", "FT-044"], silent) == 1
    out = capsys.readouterr().out
    assert "FT-044 swallowed" in out
    assert "FT-001" not in out


def test_one_sample_is_chosen_by_its_id(capsys):
    assert main([str(PATH), "--sample", "FT-001", "--json"], perfect) == 0
    assert [one["id"] for one in json.loads(capsys.readouterr().out)["samples"]] == ["FT-001"]
    assert main([str(PATH), "--sample", "FT-999"], perfect) == 2


@pytest.mark.parametrize(
    "line, said",
    [
        ("{", "line 2: not JSON"),
        ("[]", "line 2: not an object"),
        (SAMPLE.replace('"id": "a"', '"id": 1'), "line 2: 'id'"),
        (SAMPLE.replace('"ask": []', '"asks": []'), "line 2: 'ask'"),
        (SAMPLE.replace('"expected": []', '"expected": [{"kind": "ipr"}]'), "line 2: each entry"),
        (SAMPLE.replace('"ask": []', '"ask": [{"type": "vague", "spans": [[0, 99]]}]'), r"line 2: \[0, 99\]"),
    ],
)
def test_a_line_that_cannot_be_used_is_named(line, said):
    with pytest.raises(SampleError, match=said):
        read_samples(f"{SAMPLE}\n{line}\n")


def test_samples_that_cannot_be_used_end_with_two(tmp_path, capsys):
    path = tmp_path / "bad.jsonl"
    path.write_text("{", "utf-8")
    assert main([str(path)], perfect) == 2
    assert "line 1" in capsys.readouterr().err


@pytest.mark.parametrize(
    "text, spans, expected",
    [
        ("1. No IPR and OB.", [[3, 9]], 5 / 7),
        ("1. No IPR, please", [[3, 9]], 1.0),
        ("No IPR", [], 0.0),
        ("...", [], 1.0),
        ("10°", [[0, 2]], 2 / 3),
    ],
)
def test_coverage_is_the_share_of_what_says_something(text, spans, expected):
    assert coverage(text, [{"kind": "ipr", "spans": spans}] if spans else [], []) == pytest.approx(expected)


def test_a_question_is_compared_by_type_spans_and_what_it_concerns():
    asked = Question("vague", "vague-word", ((0, 3),), concerns=(1,))
    assert question_record(asked) == {"type": "vague", "for": [1], "spans": [[0, 3]]}
