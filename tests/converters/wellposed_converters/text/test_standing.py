import pytest

from wellposed_converters.text.read import read_text
from wellposed_converters.text.standing import GAP, with_standing

# The note, the standing instructions, the clauses with their mark, the types of the questions; by hand.
CASES = [
    ("Keep overjet.", "Keep overbite.", [("overjet", False), ("overbite", True)], [], "another thing is added"),
    ("Keep overjet.", "Keep overjet.", [("overjet", False)], [], "the same is said once"),
    ("Reduce overjet to 2 mm.", "Keep overjet.", [("overjet", False), ("overjet", True)], ["contradiction"],
     "never over"),
    ("FDI. Att 14.", "FDI. Att 34.", [("attachment", False), ("attachment", True)], [], "other teeth"),
    ("FDI. Att 14 15.", "FDI. Att 15 16.", [("attachment", False), ("attachment", True)], ["contradiction"],
     "teeth in both"),
    ("Keep overjet.", "OB 2 mm.", [("overjet", False)], ["finding_or_request"], "what is open there is asked"),
]  # fmt: skip


@pytest.mark.parametrize("note, standing, clauses, asked, why", CASES)
def test_standing_instructions_stand_beside_the_note(note, standing, clauses, asked, why):
    both = with_standing(read_text(note), read_text(standing))
    told = [(one.kind, "standing" in one.rules) for one in both.clauses if one.kind != "notation"]
    assert told == clauses, why
    assert [question.type for question in both.questions] == asked, why


def test_every_offset_is_one_of_both_texts_together():
    note, standing = "Keep overjet.", "Keep overbite."
    both = with_standing(read_text(note), read_text(standing))
    assert both.text == note + GAP + standing
    assert [both.text[slice(*one.spans[0])] for one in both.clauses] == ["Keep overjet", "Keep overbite"]
    assert both.ledger.holes() == ()
