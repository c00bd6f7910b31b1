import pytest

from wellposed_converters.text.grammar.parse import derivations

# Rows of terminals, and the heads of the statements of each grouping, worked out by hand.
ROWS = [
    ("MOTION PLACE", [["MOTION"]], "one statement"),
    ("VERB MEASURE COMMA VERB MEASURE", [["MEASURE", "MEASURE"]], "a verb begins its own statement"),
    ("MEANS PLACE AMOUNT BASIS COMMA NEG PLACE", [["MEANS", None]], "a rest without a head"),
    ("PLACE COLON MOTION AMOUNT", [[None, "MOTION"]], "a lead before a colon"),
    ("NEG MEANS OR MEANS PLACE", [["MEANS", "MEANS"]] * 3, "two scopes of the place, and of the negation"),
]


@pytest.mark.parametrize("row, heads, why", ROWS)
def test_all_groupings_are_found(row, heads, why):
    terminals = tuple(row.split())
    found = [
        [None if unit.head is None else terminals[unit.head] for unit in units] for units in derivations(terminals)
    ]
    assert found == heads, why


def test_a_row_that_is_no_statement_has_no_grouping():
    assert derivations(("COMMA", "COMMA")) == ()


def test_a_row_with_too_many_groupings_is_given_up_in_short_time():
    assert derivations(tuple(("NEG MEANS COMMA MEANS AND " * 8 + "MEANS").split())) is None
    assert derivations(("PLACE",) * 100) is None


def test_how_many_slots_stand_together_changes_no_grouping():
    one = derivations(("NEG", "MEANS", "OR", "MEANS", "PLACE"))
    two = derivations(("NEG", "MEANS", "OR", "MEANS", "PLACE", "AMOUNT", "BASIS"))
    assert [[(unit.head, unit.join, unit.form) for unit in units] for units in one] == [
        [(unit.head, unit.join, unit.form) for unit in units] for units in two
    ]
    assert two[0][1].slots[-3:] == (4, 5, 6)
