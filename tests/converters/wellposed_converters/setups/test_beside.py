"""What a table says beside the movements: a path, enamel, attachments, extractions, aligners, predicted measures."""

import pytest
from tests.converters.wellposed_converters.setups.tables import RX, changed, csv_faults, xlsx, xlsx_faults
from tests.converters.wellposed_converters.setups.test_faults import told

from wellposed_converters.setups.csv_file import csv_book
from wellposed_converters.setups.declared import mapping_of
from wellposed_converters.setups.reading import read_table
from wellposed_converters.setups.workbook import workbook

COLUMNS = """
[table]
layout = "row-a-tooth"
header_row = 1
decimal = "point"
delimiter = ","
none = ["-"]
not_stated = ["?"]
[tooth]
column = "T"
notation = "ISO 3950"
[[movement]]
column = "V"
variable = "vertical"
unit = "mm"
positive = "extrusion"
"""
SURFACES = """
[reductions]
mesial = "M"
distal = "D"
counts = "surface"
unit = "mm"
not_listed = "none"
"""
ONE_EACH = SURFACES.replace('"surface"', '"contact"')


def read(text, columns):
    """A table of separated values, read."""
    return read_table(csv_book(text.encode(), "t.csv", None, ","), None, mapping_of(columns.encode(), "c"), RX)


def faults(text, columns):
    return told(csv_faults(text.replace(",", ";"), columns.replace('delimiter = ","', 'delimiter = ";"')))


def enamel(text, columns):
    """Contact to mm."""
    return {one.contact: float(one.amount) for one in read(text, COLUMNS + columns).reductions}


# By hand: at a contact the distal surface of one tooth meets the mesial of the next, at the midline two mesial ones.
BY_SURFACE = [
    ("12,-,0.1,0.2\n11,-,0.1,0.15\n21,-,0.25,-\n", {"12-11": 0.25, "11-21": 0.35, "13-12": 0.2}),
    ("31,-,0.1,-\n41,-,0.1,0.2\n42,-,0.1,-\n", {"42-41": 0.3, "41-31": 0.2}),
    ("16,-,0.1,0\n15,-,0,0.2\n", {"16-15": 0.3}),
    ("11,-,-,-\n", {}),
]


@pytest.mark.parametrize("rows, expected", BY_SURFACE)
def test_two_surfaces_make_a_contact(rows, expected):
    assert enamel("T,V,M,D\n" + rows, SURFACES) == pytest.approx(expected)


def test_an_amount_by_contact_is_said_of_both_teeth_alike():
    assert enamel("T,V,M,D\n11,-,0.3,0\n21,-,0.3,0\n", ONE_EACH) == {"11-21": 0.3}
    assert faults("T,V,M,D\n11,-,0.3,0\n21,-,0.2,0\n", COLUMNS + ONE_EACH) == [("contact-not-clear", 2, "C")]


ENAMEL_FAULTS = [
    ("17,-,0,0.2", [("contact", 2, "D")]),
    ("11,-,-0.2,0", [("negative", 2, "C")]),
    ("11,-,?,0", [("contact-not-told", 2, "C")]),
    ("11,-,,0", [("not-a-number", 2, "C")]),
    ("11,-,0.125,0", [("decimals", 2, "C")]),
    (
        "11,-,0.2,0\n11,-,0.2,0",
        [("contact-not-clear", 2, "C"), ("contact-not-clear", 2, "D"), ("movement-twice", 3, "B")],
    ),
]


@pytest.mark.parametrize("rows, expected", ENAMEL_FAULTS)
def test_enamel_that_is_not_clear(rows, expected):
    assert faults(f"T,V,M,D\n{rows}\n", COLUMNS + SURFACES) == expected


def test_a_contact_of_which_nothing_is_said_is_told_unless_that_means_none():
    """Fourteen teeth an arch make 26 contacts. One tooth tells half of two of them."""
    found = faults("T,V,M,D\n11,-,0.2,0\n", COLUMNS + changed(SURFACES, ('not_listed = "none"\n', "")))
    assert found == [("contact-not-told", 0, "")] * 24 + [("contact-not-clear", 2, "C"), ("contact-not-clear", 2, "D")]


CONTACTS = """
[reductions]
sheet = "Enamel"
header_row = 1
contact = "Where"
separator = "/"
amount = "How much"
before_aligner = "Before"
unit = "mm"
not_listed = "none"
"""
MOVES = ("Moves", [["T", "V"], [11, -0.5]])
HEAD = ["Where", "How much", "Before"]


def test_a_table_of_contacts():
    data = xlsx(MOVES, ("Enamel", [HEAD, ["31/41", 0.2, 1], ["41/42", 0.25, "?"], ["42/43", "-", "?"]]))
    mapping = mapping_of((COLUMNS + CONTACTS).encode(), "c")
    said = read_table(workbook(data, "t"), None, mapping, RX).reductions
    assert [(one.contact, float(one.amount), one.before) for one in said] == [("42-41", 0.25, None), ("41-31", 0.2, 1)]


CONTACT_FAULTS = [
    (["31/33", 0.2, 1], ("contact", 2, "A")),
    (["31/11", 0.2, 1], ("contact", 2, "A")),
    (["31", 0.2, 1], ("not-a-tooth", 2, "A")),
    (["31/41/42", 0.2, 1], ("not-a-tooth", 2, "A")),
    (["31-41", 0.2, 1], ("not-a-tooth", 2, "A")),
    (["31/99", 0.2, 1], ("not-a-tooth", 2, "A")),
    (["31/41", -0.2, 1], ("negative", 2, "B")),
    (["31/41", "0.2", 1], ("not-a-number", 2, "B")),
    (["31/41", 0.2, 1.5], ("not-whole", 2, "C")),
    (["31/41", 0.2, 0], ("not-whole", 2, "C")),
    (["31/41", 0.2, "first"], ("not-whole", 2, "C")),
]


@pytest.mark.parametrize("row, expected", CONTACT_FAULTS)
def test_a_contact_that_is_not_clear(row, expected):
    assert told(xlsx_faults(xlsx(MOVES, ("Enamel", [HEAD, row])), COLUMNS + CONTACTS)) == [expected]


def test_a_contact_twice_is_told_where_nothing_parts_the_two():
    columns = changed(COLUMNS + CONTACTS, ('before_aligner = "Before"\n', ""))
    data = xlsx(MOVES, ("Enamel", [["Where", "How much"], ["31/41", 0.2], ["41/31", 0.1]]))
    assert told(xlsx_faults(data, columns)) == [("contact-twice", 3, "A")]


OUT = """
[extractions]
column = "X"
taken = ["x"]
not_listed = "none"
"""


def test_a_tooth_taken_out_brings_its_neighbours_together():
    said = read("T,V,M,D,X\n13,-,0,0.2,-\n14,?,-,-,x\n15,-,0.1,0,-\n", COLUMNS + SURFACES + OUT)
    assert said.extractions == ("14",)
    assert {one.contact: float(one.amount) for one in said.reductions} == pytest.approx({"15-13": 0.3})


CARRIED = """
[attachments]
column = "A"
carries = { "RV" = { shape = "rectangular-vertical", reason = "movement" }, "y" = {} }
from_aligner = "from"
not_listed = "none"
"""


def test_attachments_are_what_their_texts_are_declared_to_be():
    said = read("T,V,A,from\n11,-,RV,3\n12,-,y,?\n13,-,-,?\n", COLUMNS + CARRIED).attachments
    assert [(one.tooth, one.carried.shape, one.begins) for one in said] == [
        ("11", "rectangular-vertical", 3),
        ("12", None, None),
    ]
    assert faults("T,V,A,from\n11,-,rv,3\n", COLUMNS + CARRIED) == [("text-unknown", 2, "C")]
    assert faults("T,V,A,from\n11,-,,3\n", COLUMNS + CARRIED) == [("text-unknown", 2, "C")]
    all_told = changed(CARRIED, ('not_listed = "none"\n', ""))
    assert faults("T,V,A,from\n11,-,y,3\n", COLUMNS + all_told) == [("tooth-not-told", 0, "")]


PATH = """
[stages]
column = "S"
counts = "from-start"
final = "last-stage"
[aligners]
from_stages = true
"""
STEPS = changed(PATH, ("from-start", "step"))
ENDS = changed(PATH, ('"last-stage"', '"own-rows"\nfinal_text = "end"'))


def path(text, columns):
    """Where it ends, and the stages in order."""
    said = read(text, COLUMNS + columns)
    stages = {(one.tooth, one.stage): float(one.value) for one in said.stages}
    return {one.tooth: float(one.value) for one in said.final}, stages, said.aligners


def test_a_path_from_the_start_and_one_step_by_step():
    from_start = path("T,S,V\n11,1,0.2\n11,2,0.5\n41,1,0.1\n", PATH)
    assert from_start == path("T,S,V\n11,1,0.2\n11,2,0.3\n41,1,0.1\n", STEPS)
    assert from_start == (
        {"11": 0.5, "41": 0.1},
        {("11", 1): 0.2, ("11", 2): 0.5, ("41", 1): 0.1},
        {"upper": 2, "lower": 1},
    )
    ended, stages, _ = path("T,S,V\n11,1,0.2\n11,end,0.5\n", ENDS)
    assert (ended, stages) == ({"11": 0.5}, {("11", 1): 0.2})


def unmoved(columns):
    """The reading, in which a step that is not listed is none."""
    return changed(columns, ("[aligners]", 'steps_not_listed = "unmoved"\n[aligners]'))


PATH_FAULTS = [
    ("11,1,0.2\n11,2,0.3\n12,1,0.1", PATH, [("step-missing", 4, "C")]),
    ("11,1,0.2\n11,2,0.3\n12,1,0.1", STEPS, [("step-missing", 4, "C")]),
    ("11,1,0.2\n11,1,0.3", PATH, [("movement-twice", 3, "C")]),
    ("11,first,0.2", PATH, [("not-whole", 2, "B")]),
    ("11,1.5,0.2", PATH, [("not-whole", 2, "B")]),
    ("11,0,0.2", PATH, [("not-whole", 2, "B")]),
    ("11,end,0.2", PATH, [("not-whole", 2, "B")]),
    ("11,1,0.2", ENDS, [("empty", 0, "")]),
    ("11,1,0.2\n11,2,0.3\n11,4,0.1", STEPS, [("step-missing", 0, "")]),
    ("11,2,0.2\n11,3,0.3", STEPS, [("step-missing", 0, "")]),
    ("11,1,0.2\n11,2,?\n11,3,0.1", STEPS, [("step-missing", 3, "C")]),
    ("11,1,0.2\n11,2,?\n11,3,0.1", unmoved(STEPS), [("step-missing", 3, "C")]),
    ("11,1,0.2\n11,2,?", PATH, [("step-missing", 3, "C")]),
    ("11,1,0.2\n11,2,?\n12,3,0.1", unmoved(PATH), [("step-missing", 3, "C")]),
    ("11,1,0.2\n11,2,?\n11,3,0.4", PATH, []),
    ("11,1,0.2\n11,4,0.3", unmoved(STEPS), []),
    ("11,1,?\n12,1,0.1", STEPS, []),
]


@pytest.mark.parametrize("rows, columns, expected", PATH_FAULTS)
def test_a_path_that_is_not_clear(rows, columns, expected):
    assert faults(f"T,S,V\n{rows}\n", COLUMNS + columns) == expected


def test_an_arch_without_stages_is_not_said_to_get_no_aligners():
    """None and not stated are two things; the stages of the other arch may stand in another table."""
    assert path("T,S,V\n11,1,0.2\n11,2,0.5\n", PATH)[2] == {"upper": 2}


CELLS = """
[aligners]
upper = "B1"
lower = "B2"
[[predicted]]
measure = "upper-midline"
unit = "mm"
cell = "B3"
positive = "right"
[[predicted]]
measure = "molar-relation-left"
unit = "mm"
cell = "B4"
positive = "class-iii"
[[predicted]]
measure = "overbite"
unit = "mm"
cell = "B5"
"""
BELOW = changed(COLUMNS, ("header_row = 1", "header_row = 6\nignore_rows = [1, 2, 3, 4, 5]")) + CELLS
ABOVE = "Upper,18\nLower,0\nMidline,0.5\nMolars,1.5\nOverbite,2\nT,V\n11,-0.5\n"


HIDDEN = [
    lambda book: setattr(book["Sum"].row_dimensions[3], "hidden", True),
    lambda book: setattr(book["Sum"].column_dimensions["B"], "hidden", True),
]


@pytest.mark.parametrize("change", HIDDEN)
def test_a_cell_of_its_own_that_is_hidden_is_told(change):
    one = '[[predicted]]\nmeasure = "overbite"\nunit = "mm"\ncell = "B3"\nsheet = "Sum"\n'
    data = xlsx(("Moves", [["T", "V"], [11, -0.5]]), ("Sum", [[], [], ["Overbite", 2.5]]), change=change)
    columns = COLUMNS.replace('delimiter = ","\n', "") + one
    assert told(xlsx_faults(data, columns)) == [("hidden", 3, "B")]
    assert xlsx_faults(data, changed(columns, ("[table]", '[table]\nhidden = "read"'))) == []


def test_numbers_in_cells_of_their_own():
    """A midline 0.5 mm to the right is -0.5 to the left; 1.5 mm towards Class III is -1.5 towards Class II."""
    said = read(ABOVE, BELOW)
    assert said.aligners == {"upper": 18, "lower": 0}
    told_ = [(one.asked.measure, float(one.number.value)) for one in said.predicted]
    assert told_ == [("upper-midline", -0.5), ("molar-relation-left", -1.5), ("overbite", 2.0)]


CELL_FAULTS = [
    (("Upper,18", "Upper,many"), ("not-whole", 1, "B")),
    (("Upper,18", "Upper,201"), ("not-whole", 1, "B")),
    (("Overbite,2", "Overbite,2 mm"), ("not-a-number", 5, "B")),
    (("Overbite,2", "Overbite,"), ("not-a-number", 5, "B")),
]


@pytest.mark.parametrize("change, expected", CELL_FAULTS)
def test_a_number_in_a_cell_of_its_own_that_is_not_clear(change, expected):
    assert faults(changed(ABOVE, change), BELOW) == [expected]


READINGS = [
    PATH.replace("from_stages = true", 'from_stages = true\nupper = "B1"'),
    ENDS.replace('final_text = "end"\n', ""),
    STEPS.replace('"last-stage"', '"own-rows"\nfinal_text = "end"'),
    PATH + SURFACES,
    SURFACES.replace('counts = "surface"\n', ""),
    SURFACES.replace('unit = "mm"', 'unit = "deg"'),
    SURFACES + 'contact = "C"\n',
    CONTACTS.replace('sheet = "Enamel"\n', ""),
    CELLS.replace('positive = "right"\n', ""),
    CELLS.replace('positive = "right"', 'positive = "class-ii"'),
    CELLS.replace('cell = "B5"', 'cell = "B5"\npositive = "left"'),
    CELLS.replace('cell = "B5"', 'cell = "B5"').replace(
        'measure = "overbite"\nunit = "mm"', 'measure = "overbite"\nunit = "deg"'
    ),
    CELLS.replace('"overbite"', '"over-bite"'),
    CARRIED.replace("rectangular-vertical", "round"),
    '[[movement]]\ncolumn = "V"\nvariable = "out"\nunit = "mm"\npositive = "labial"\n',
]


@pytest.mark.parametrize("part", READINGS)
def test_a_reading_that_is_not_clear(part):
    found = faults("T,V\n11,-0.5\n", COLUMNS + part)
    assert found
    assert all(rule.startswith("columns-") for rule, _, _ in found)
