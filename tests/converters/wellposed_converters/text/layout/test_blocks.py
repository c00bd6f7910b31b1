import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellposed_converters.text.layout import lay_out

SAMPLES = {
    sample["id"]: sample
    for sample in map(
        json.loads, (Path(__file__).parents[1] / "corpus" / "samples.jsonl").read_text("utf-8").splitlines()
    )
}


def at(text, span):
    return span and text[span[0] : span[1]]


def said(text, sort="segment"):
    return [text[block.start : block.end] for block in lay_out(text) if block.sort == sort]


def notes(text):
    read = ("segment", "row", "numbering", "quoted")
    return [(block.of, text[block.start : block.end]) for block in lay_out(text) if block.sort not in read]


def sections(text):
    return [(text[block.start : block.end], block.section) for block in lay_out(text) if block.sort == "segment"]


def covered(text):
    seen = "".join(text[block.start : block.end] for block in lay_out(text))
    ordered = [edge for block in lay_out(text) for edge in (block.start, block.end)]
    return "".join(seen.split()) == "".join(text.split()) and ordered == sorted(ordered)


WORDS = (
    "Lower:",
    "no",
    "3-3",
    "0.3",
    "mm.",
    "\n",
    "\n\n",
    "|",
    "\t",
    "....",
    "1.",
    "2.",
    "a)",
    "-",
    ">",
    ";",
    "(",
    ")",
    "Dx:",
)
WORDS += (
    "Thanks",
    "Hi team,",
    "Dr Sample",
    "Findings",
    "Attachments",
    "Subject:",
    "\r\n",
    "•",
    "?",
    "max.",
    "PS",
    "-----",
)


@given(st.text(max_size=80))
def test_every_character_of_any_text_is_in_one_block(text):
    assert covered(text)


@given(st.lists(st.sampled_from(WORDS), max_size=25), st.sampled_from((" ", "")))
def test_every_character_of_a_jumbled_note_is_in_one_block(words, between):
    assert covered(between.join(words))


@pytest.mark.parametrize("name", SAMPLES)
def test_every_character_of_a_sample_is_in_one_block(name):
    assert covered(SAMPLES[name]["text"])


@pytest.mark.parametrize("name", SAMPLES)
def test_the_notes_of_a_sample_are_those_that_are_expected(name):
    text = SAMPLES[name]["text"]
    expected = [clause for clause in SAMPLES[name]["expected"] if clause["kind"] == "note"]
    assert [note for note in notes(text) if note[0]] == [(clause["of"], clause["quote"]) for clause in expected]


@pytest.mark.parametrize("name", SAMPLES)
def test_no_clause_of_a_sample_begins_in_one_segment_and_ends_in_another(name):
    text = SAMPLES[name]["text"]
    edges = [block.start for block in lay_out(text) if block.sort in ("segment", "row")]
    keyed = {block.key[0] for block in lay_out(text) if block.key}
    for clause in SAMPLES[name]["expected"]:
        start, end = clause["spans"][-1]
        inside = [edge for edge in edges if start < edge < end]
        assert clause["kind"] == "note" or inside == [] or start in keyed


def test_an_empty_text_has_no_blocks():
    assert lay_out("") == lay_out(" \n\t\n") == ()


@pytest.mark.parametrize(
    "text, keys",
    [
        ("Lower: derotate 33", ["Lower:"]),
        ("Overbite: keep", ["Overbite:"]),
        ("12: derotate", ["12:"]),
        ("UR3 and UL3: rotate 10°. LL2 in line.", ["UR3 and UL3:", None]),
        ("Attachments: on 12; optional on 13. Keep OB.", ["Attachments:", "Attachments:", None]),
        ("75 and 85 are ankylosed: no movement", [None]),
        ("Keep the lower incisors within the envelope: no proclination", [None]),
        ("ratio 1:1 here", [None]),
        ("Attachments\nNone on 12.\nUpper: 13", ["Attachments", "Upper:"]),
        ("IPR as follows:\nupper none\nlower 3-3", [None, "IPR as follows:", "IPR as follows:"]),
    ],
)
def test_a_key_governs_its_sentence_and_a_heading_what_is_below(text, keys):
    assert [at(text, block.key) for block in lay_out(text) if block.sort == "segment"] == keys


def test_a_key_of_an_earlier_sentence_is_told_apart_from_one_that_governs():
    blocks = lay_out("Upper: align 3-3. No IPR.\nKeep OB.")
    assert [(block.key, block.earlier) for block in blocks] == [((0, 6), None), (None, (0, 6)), (None, None)]


def test_a_prefix_opens_a_section_until_the_next_or_a_blank_line():
    text = "Dx: Cl II/1, OJ 7\nOB 50 %\nPlan: OJ 3\n\nOB 3"
    assert sections(text) == [("Cl II/1, OJ 7", "findings"), ("OB 50 %", "findings"), ("OJ 3", "plan"), ("OB 3", None)]


@pytest.mark.parametrize("heading", ["Findings", "FINDINGS", "Findings:", "# Findings", "**Findings**", "1. Findings"])
def test_a_heading_line_opens_a_section(heading):
    text = f"{heading}\nOJ 7.\n{'2. ' if heading[0] == '1' else ''}Plan\nOJ 3."
    assert sections(text) == [("OJ 7.", "findings"), ("OJ 3.", "plan")]


def test_a_section_ends_at_the_first_blank_line_after_what_is_said_in_it():
    assert sections("Findings\n\nOJ 7\n\nOJ 3") == [("OJ 7", "findings"), ("OJ 3", None)]


def test_a_blank_line_between_items_of_a_list_ends_nothing():
    assert sections("Plan\n- OJ 3\n\n- OB 2\n\nOJ 4") == [("OJ 3", "plan"), ("OB 2", "plan"), ("OJ 4", None)]


def test_a_heading_of_an_arch_stays_in_its_section():
    assert sections("Findings\nUpper\nOJ 7") == [("OJ 7", "findings")]


def test_subject_words_alone_are_read_when_nothing_is_below_them():
    assert said("IPR\nAttachments\nElastics") == ["IPR", "Attachments", "Elastics"]


def test_space_or_a_start_named_before_a_colon_is_no_section():
    assert said("Space: close all") == ["Space: close all"]
    assert said("Start: attachments from stage 3") == ["Start: attachments from stage 3"]


@pytest.mark.parametrize(
    "text, expected",
    [
        ("Hi team,\nno IPR", [("greeting", "Hi team,")]),
        ("Dear Dr Smith, no IPR", [("greeting", "Dear Dr Smith,")]),
        ("Hi Upper, no IPR", []),
        ("Hi,\nnew case attached. No IPR", [("greeting_and_admin", "Hi,\nnew case attached.")]),
        ("Subject: new case A-102\n\nHi,\n\nNo IPR", [("subject_and_greeting", "Subject: new case A-102\n\nHi,")]),
        ("Subject: no IPR please", [("subject", "Subject:")]),
        ("Patient: A-102\nDOB: 01/02/2010\nNo IPR", [("admin", "Patient: A-102\nDOB: 01/02/2010")]),
        ("Patient: Severe Bruxism", []),
        ("Patient 13-23", []),
        ("Attachments: scan.stl, photo 1.jpg", [("admin", "Attachments: scan.stl, photo 1.jpg")]),
        ("No IPR. Thanks!\nSam", [("signature", "Thanks!\nSam")]),
        ("No IPR\n\nThanks, Dr Sample", [("signature", "Thanks, Dr Sample")]),
        ("Best\nDr Sample\nIPR 0.2 mm", [("signature", "Best\nDr Sample")]),
        ("Thanks\nBond Retainers\nKeep Canines", [("closing", "Thanks")]),
        ("Thanks\n13 23 33 43", [("closing", "Thanks")]),
        ("Thanks\n12 do not close", [("closing", "Thanks")]),
        (
            "Best wishes\nTel: 01234 567890\nwww.example.org",
            [("signature", "Best wishes\nTel: 01234 567890\nwww.example.org")],
        ),
        ("BR 33-43", []),
    ],
)
def test_only_what_closed_patterns_cover_is_no_instruction(text, expected):
    assert notes(text) == expected


def test_a_postscript_is_read():
    assert said("Best\nDr Sample\n\nPS reduce OJ") == ["PS reduce OJ"]


def test_lines_of_an_earlier_message_are_set_apart_together():
    text = "No IPR\n\nOn Monday, Lab wrote:\n> Extract 14?\n> 13 extrude\n\nKeep OB"
    assert said(text, "quoted") == ["On Monday, Lab wrote:\n> Extract 14?\n> 13 extrude"]
    assert said(text) == ["No IPR", "Keep OB"]


def test_all_below_a_dividing_line_is_an_earlier_message():
    assert said("No IPR\n-----Original Message-----\nExtract 14", "quoted") == [
        "-----Original Message-----\nExtract 14"
    ]


def test_a_lone_comparison_is_read():
    assert said("> 2 mm overjet") == ["> 2 mm overjet"]


def test_a_row_knows_the_head_of_each_column():
    text = SAMPLES["FT-057"]["text"]
    row = next(block for block in lay_out(text) if block.sort == "row")
    cells = [(text[c.start : c.end], text[c.column_start : c.column_end]) for c in row.cells]
    expected = [("13", "tooth"), ("rotate mesial-in", "movement"), ("10°", "amount"), ("yes", "attachment")]
    assert cells == expected
