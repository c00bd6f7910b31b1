"""The 78 phrases that are vague or dangerous: none of them becomes a firm clause without a question.

``types`` are the questions that ask what the phrase leaves open; that it was not understood is always a safe answer.
``firm`` are kind and mode of what the words say for certain, by a reading rule, beside what they leave open.
"""

import pytest

from wellposed_converters.text.read import read_text

NOTHING_SAID = {"note", "notation"}

# number, phrase, types of the questions, what may stand firm
PHRASES = [
    (1, "Fix the bite", {"vague", "meaning"}, set()),
    (2, "Reduce gummy smile", {"vague"}, set()),
    (3, "Expand as needed", {"missing_amount", "condition", "teeth"}, set()),
    (4, "Ideal alignment", {"vague"}, set()),
    (5, "IPR as required", {"missing_amount", "condition", "teeth"}, set()),
    (6, "Keep canines", {"meaning", "teeth"}, set()),
    (7, "No movement on 6s", {"meaning", "teeth"}, {("movement", "forbid")}),
    (8, "Correct midline 1 mm left", {"reference"}, set()),
    (9, "Open bite 2 mm", {"finding_or_request", "meaning"}, set()),
    (10, "13", {"notation", "teeth", "meaning", "vague"}, set()),
    (11, "Close the bite", {"meaning", "vague"}, set()),
    (12, "Deep bite, please help", {"vague", "missing_amount"}, {("overbite", "state")}),
    (13, "Leave space for lateral", {"teeth", "missing_amount"}, set()),
    (14, "Retract uppers", {"teeth", "missing_amount"}, set()),
    (15, "Upright incisors", {"teeth", "meaning", "missing_amount"}, set()),
    (16, "Correct the torque on 12", {"notation", "missing_amount", "vague"}, set()),
    (17, "Bring 13 down", {"notation", "missing_amount", "meaning"}, set()),
    (18, "Push 22 out", {"notation", "missing_amount", "meaning"}, set()),
    (19, "Class I please", {"finding_or_request", "meaning", "vague"}, set()),
    (20, "Improve overjet", {"vague", "missing_amount"}, set()),
    (21, "Normal overbite", {"vague", "missing_amount"}, set()),
    (22, "Slight proclination is fine", {"vague", "missing_amount", "teeth"}, set()),
    (23, "Minimal IPR", {"vague", "missing_amount"}, set()),
    (24, "IPR 0.5", {"reference", "teeth"}, set()),
    (25, "IPR 3-3 0.3", {"reference", "teeth"}, set()),
    (26, "IPR mesial 33", {"reference", "missing_amount", "teeth"}, set()),
    (27, "Strip 31", {"meaning"}, set()),
    (28, "Attachments where possible", {"condition", "teeth"}, set()),
    (29, "No attachments on front teeth", {"teeth"}, set()),
    (30, "Attachments not visible", {"condition", "teeth", "vague"}, set()),
    (31, "Remove 14", {"meaning"}, set()),
    (32, "Extract as necessary", {"condition", "teeth"}, set()),
    (33, "ext 4s", {"meaning"}, set()),
    (34, "Rotate 12", {"notation", "missing_amount"}, set()),
    (35, "Derotate canines", {"teeth"}, set()),
    (36, "Rot 15", {"teeth", "meaning", "notation"}, set()),
    (37, "20 degrees on 13", {"meaning", "notation", "missing_amount"}, set()),
    (38, "Half a tooth to the right", {"reference", "finding_or_request", "meaning"}, set()),
    (39, "Distalise 2 mm", {"teeth"}, set()),
    (40, "Max anchorage", {"meaning", "missing_amount"}, set()),
    (41, "Hold molars", {"meaning"}, set()),
    (42, "Accept crossbite 16", {"meaning", "notation", "teeth"}, {("crossbite", "keep")}),
    (43, "Crossbite 15 correct", {"teeth", "notation", "meaning"}, set()),
    (44, "Buccal crossbite", {"meaning"}, set()),
    (45, "Level the lower arch", {"vague", "missing_amount"}, set()),
    (46, "Even up the front teeth", {"vague", "teeth"}, set()),
    (47, "Same as last time", {"external_reference"}, set()),
    (48, "As per photo / as discussed", {"external_reference"}, set()),
    (49, "Other side the same", {"external_reference", "reference"}, set()),
    (50, "Whatever you think best", {"vague"}, set()),
    (51, "Not too fast", {"vague"}, set()),
    (52, "As few trays as possible", {"vague", "condition"}, set()),
    (53, "Social six", {"teeth", "vague"}, set()),
    (54, "Upper only", {"scope", "meaning"}, {("scope", "do")}),
    (55, "Don't touch 26", {"meaning", "notation"}, set()),
    (56, "Watch 36", {"vague", "meaning"}, set()),
    (57, "Consider IPR", {"meaning"}, set()),
    (58, "Could you avoid extractions?", {"meaning"}, set()),
    (59, "No problem with IPR", {"missing_amount"}, set()),
    (60, "No expansion, proclination ok", {"missing_amount", "scope", "teeth"}, {("archwidth", "forbid")}),
    (61, "Only IPR 3-3", {"scope", "teeth", "reference", "missing_amount"}, set()),
    (62, "All except 3s", {"scope", "teeth", "meaning"}, set()),
    (63, "Torque +5", {"meaning", "teeth", "missing_amount"}, set()),
    (64, "OJ -2", {"meaning", "finding_or_request"}, set()),
    (65, "↓OB", {"finding_or_request", "missing_amount"}, set()),
    (66, "OB 10", {"missing_unit", "finding_or_request"}, set()),
    (67, "CL 2 mm L", {"finding_or_request", "reference", "meaning"}, set()),
    (68, "LRT lower incisors", {"meaning", "missing_amount"}, set()),
    (69, "ML rotation", {"meaning"}, set()),
    (70, "Bond retainer after", {"teeth", "vague"}, set()),
    (71, "3-3", {"teeth", "vague"}, set()),
    (72, "U/L", {"meaning", "vague", "teeth"}, set()),
    (73, "Finish in ICP", {"vague", "meaning"}, set()),
    (74, "Match to smile design", {"external_reference", "vague"}, set()),
    (75, "Round trip is ok", {"vague", "missing_amount"}, set()),
    (76, "Bolton looks off", {"vague"}, {("crowding", "state")}),
    (77, "Patient has bruxism", {"vague"}, {("patient", "state")}),
    (78, "Ok", {"vague", "meaning"}, {("note", "state")}),
]

SAFE = {"not_understood"}
FIRM_IS_ENOUGH = {7, 42, 54, 76, 77, 78}
"""Phrases whose only reading stands by a rule, and what they leave open is not the reader's to ask."""


def test_the_table_has_every_phrase_once():
    assert [row[0] for row in PHRASES] == list(range(1, 79))


@pytest.mark.parametrize("number, phrase, types", [row[:3] for row in PHRASES])
def test_a_dangerous_phrase_is_asked_about(number, phrase, types):
    reading = read_text(phrase)
    asked = {question.type for question in reading.questions}
    stands = number in FIRM_IS_ENOUGH and bool(reading.clauses)
    assert asked & (types | SAFE) or stands, reading


@pytest.mark.parametrize("phrase, firm", [row[1::2] for row in PHRASES])
def test_no_clause_of_a_dangerous_phrase_is_firm_beyond_what_a_rule_says(phrase, firm):
    reading = read_text(phrase)
    concerned = {index for question in reading.questions for index in question.concerns}
    loose = {
        (clause.kind, clause.mode)
        for index, clause in enumerate(reading.clauses)
        if index not in concerned and clause.kind not in NOTHING_SAID
    }
    assert loose <= firm, reading
