"""What is asked of a read-back that was changed: the question by its name, where it stands, and in words."""

import json

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, document, found, must

from wellposed.check import prescription_of
from wellposed.render.readback import BRITISH, readback_text
from wellposed_converters.text.readback import is_read_back, read_back
from wellposed_converters.text.readback.drafted import in_words

WHOLE = document(
    treat={"arches": "both"},
    findings=[found("f1", "overbite", 4, method="at the front")],
    movements=[must("m1", teeth=["11", "21"], motion="intrusion", at_least=1, at_most=2, unit="mm", because=["f1"])],
    keep=[must("k1", measure="overjet", within=0.5, unit="mm")],
    allow=[allowed("a1", "incisor-advance", arch="upper", up_to=1, unit="mm")],
    staging=must("s1", most_aligners=20, wear_interval_days=7),
    notes=[{"text": "Likes to be called early."}],
)
TEXT = readback_text(prescription_of(json.dumps(WHOLE).encode()), BRITISH, width=2000)
END = "Decision support for licensed clinicians"
TOOTH = "intrude (into the bone) 11 (upper right central incisor)"
STEP = "s1    Must: wear each aligner for exactly 7 days."


def asked(old, new):
    """The questions of the text with one thing in it changed."""
    assert TEXT.count(old) >= 1
    return read_back(TEXT.replace(old, new, 1)).questions


def test_the_text_is_read_without_a_question():
    read = read_back(TEXT)
    assert read.questions == ()
    assert [read.entries[at].text[:20] for at in read.unsaid] == ["Not binding: a note "]
    sections = ("treat", "teeth", "findings", "movements", "keep", "allow", "staging")
    assert set(read.document) == {"id", "revision", *sections}


CHANGES = [
    ("revision 1", "revision one", ["readback-identity", "readback-stray"]),
    ("What is there", "Dear colleague,\n\nWhat is there", ["readback-stray"]),
    ("What must stay", "What must not stay", ["readback-heading-lacking", "readback-sentence"]),
    ("How it is made", "What must stay", ["readback-heading-twice"]),
    ("What was found", "What was found\n\nWhat is counted on, but not ordered", ["readback-heading-empty"]),
    (END, "PS: and close the spaces. " + END, ["readback-end"]),
    ("intrude", "push", ["readback-sentence"]),
    ("intrude (into", "extrude (into", ["readback-sentence"]),
    (TOOTH, TOOTH.replace("11", "12"), ["readback-tooth-words"]),
    ("overbite 4 mm", "overbite -4 mm", ["readback-sense"]),
    ("“at the front”", "“at the \N{REPLACEMENT CHARACTER} front”", ["readback-lost-signs"]),
    ("k1    Must", "      Must", ["readback-id-lacking"]),
    ("      Treat", "t1    Treat", ["readback-id-not-expected"]),
    (STEP, STEP + "\n" + STEP.replace("7", "14"), ["readback-twice"]),
    (STEP, STEP.replace("Must", "Preferably"), ["readback-staging"]),
    (STEP, STEP.replace("s1", "s2"), ["readback-staging"]),
    ("[f1]", "[f2]", ["readback-not-sound"]),
    ("at least 1 mm and at most 2 mm", "at least 3 mm and at most 2 mm", ["readback-not-sound"]),
    ("all alike by at most 1 mm", "each by at most 1 mm", ["readback-sentence"]),
    ("14 (upper right first premolar), ", "", ["readback-lacking", "readback-not-told-again"]),
    ("nor excluded: ", "nor excluded: intrusion (into the bone), ", ["readback-lacking", "readback-not-told-again"]),
]  # fmt: skip


@pytest.mark.parametrize("old, new, names", CHANGES)
def test_a_change_is_asked_about(old, new, names):
    questions = asked(old, new)
    assert sorted({one.asks for one in questions}) == sorted(names)
    assert all(in_words(one) for one in questions)


def test_the_question_stands_at_the_sentence():
    changed = TEXT.replace("intrude", "push", 1)
    (question,) = read_back(changed).questions
    ((start, end),) = question.spans
    assert changed[start:end].startswith("m1    Must: push (into the bone) 11 (")
    assert changed[start:end].endswith("(because of [f1]).")


def test_a_sentence_that_is_lost_leaves_its_trace_in_what_follows_from_silence():
    text = "\n".join("Nothing." if line.startswith("a1 ") else line for line in TEXT.splitlines())
    assert {one.asks for one in read_back(text).questions} >= {"readback-not-told-again"}


NOTES = [
    "Tooth numbers: ISO 3950 (FDI).\nAlign 13-23.",
    "FDI. Align 13-23.",
    "",
    "\n".join(TEXT.splitlines()[1:]),
    f"> {TEXT}",
]


@pytest.mark.parametrize("text", NOTES)
def test_a_note_is_no_read_back(text):
    assert not is_read_back(text)


def test_lines_may_be_wrapped_anywhere_and_end_in_any_way():
    wrapped = readback_text(prescription_of(json.dumps(WHOLE).encode()), BRITISH, width=40)
    for text in (wrapped, wrapped.replace("\n", "\r\n"), wrapped.replace("\n", "  \n")):
        assert read_back(text).questions == ()
        assert read_back(text).document == read_back(TEXT).document
