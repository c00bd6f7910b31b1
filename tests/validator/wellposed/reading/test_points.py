"""A plain table of landmark points is read strictly, and each fault has its line and column."""

import pytest

from wellposed.reading.axes import header_read
from wellposed.reading.points import read_points

HEAD = "tooth,landmark,x,y,z\n"
TWO = "tooth,landmark,moment,x,y,z\n"
ROW = "11,edge,4,40,0\n"
EDGE = {"before": {"11": {"edge": (4, 40, 0)}}}

SOUND = [
    ("one point", HEAD + ROW, EDGE, None),
    ("line breaks of two characters", HEAD.replace("\n", "\r\n") + ROW, EDGE, None),
    ("six decimals, no line break", HEAD + "11,edge,4.000000,40,-0", EDGE, None),
    ("the facial midline", HEAD + ROW + "face,midline,0.5,60,20\n", EDGE, (0.5, 60, 20)),
    (
        "two moments",
        TWO + "11,edge,before,4,40,0\n11,edge,after,4,39,0\n",
        EDGE | {"after": {"11": {"edge": (4, 39, 0)}}},
        None,
    ),
    (
        "a point that stays",
        TWO + "11,edge,both,4,40,0\nface,midline,both,0,1,2\n",
        EDGE | {"after": EDGE["before"]},
        (0, 1, 2),
    ),
    ("coordinates the other way round", "tooth,landmark,right,back,down\n11,edge,-4,-40,0\n", EDGE, None),
    ("coordinates in another order", "tooth,landmark,up,left,back\n11,edge,0,4,-40\n", EDGE, None),
]


@pytest.mark.parametrize("sentence,text,teeth,midline", SOUND)
def test_a_sound_table(sentence, text, teeth, midline):
    points = read_points(text.encode())
    assert (sentence, dict(points.teeth), points.midline) == (sentence, teeth, midline)


FAULTY = [
    ("nothing", "", ["1:1 wrong-header"]),
    ("no header", ROW, ["1:1 wrong-header"]),
    ("a capital in the header", "Tooth,landmark,x,y,z\n" + ROW, ["1:1 wrong-header"]),
    ("a semicolon between", HEAD.replace(",", ";") + ROW, ["1:1 wrong-header"]),
    ("both sides named", "tooth,landmark,left,right,up\n" + ROW, ["1:1 wrong-header"]),
    ("letters in another order", "tooth,landmark,y,x,z\n" + ROW, ["1:1 wrong-header"]),
    ("letters and ways mixed", "tooth,landmark,x,back,up\n" + ROW, ["1:1 wrong-header"]),
    ("the moment at the end", "tooth,landmark,x,y,z,moment\n", ["1:1 wrong-header"]),
    ("a mark before the text", "\ufeff" + HEAD + ROW, ["1:1 byte-order-mark"]),
    ("a header alone", HEAD, ["2:1 no-rows"]),
    ("the face alone", HEAD + "face,midline,0,1,2\n", ["2:1 no-rows"]),
    ("an empty line", HEAD + ROW + "\n", ["3:1 wrong-number-of-cells"]),
    ("decimal commas", HEAD + "11,edge,4,0,40,0,0,0\n", ["2:1 wrong-number-of-cells"]),
    ("no such tooth", HEAD + "19,edge,4,40,0\n", ["2:1 unknown-tooth"]),
    ("another notation", HEAD + "UR1,edge,4,40,0\n", ["2:1 unknown-tooth"]),
    ("no such landmark", HEAD + "11,apex,4,40,0\n", ["2:4 unknown-landmark"]),
    ("a cusp of an incisor", HEAD + "11,cusp,4,40,0\n", ["2:4 landmark-not-of-this-tooth"]),
    ("an edge of a molar", HEAD + "16,edge,4,40,0\n", ["2:4 landmark-not-of-this-tooth"]),
    ("a groove of an upper molar", HEAD + "16,groove,4,40,0\n", ["2:4 landmark-not-of-this-tooth"]),
    ("an edge of the face", HEAD + ROW + "face,edge,4,40,0\n", ["3:6 landmark-not-of-this-tooth"]),
    ("a midline of a tooth", HEAD + "11,midline,4,40,0\n", ["2:4 landmark-not-of-this-tooth"]),
    ("a unit", HEAD + "11,edge,4mm,40,0\n", ["2:9 not-a-coordinate"]),
    ("a plus sign", HEAD + "11,edge,4,+40,0\n", ["2:11 not-a-coordinate"]),
    ("a space", HEAD + "11,edge,4,40, 0\n", ["2:14 not-a-coordinate"]),
    ("an exponent", HEAD + "11,edge,4e1,40,0\n", ["2:9 not-a-coordinate"]),
    ("seven decimals", HEAD + "11,edge,4.1234567,40,0\n", ["2:9 not-a-coordinate"]),
    ("a coordinate left out", HEAD + "11,edge,,40,0\n", ["2:9 not-a-coordinate"]),
    ("not a number", HEAD + "11,edge,nan,40,0\n", ["2:9 not-a-coordinate"]),
    ("micrometres", HEAD + "11,edge,4000,40,0\n", ["2:9 not-a-coordinate"]),
    ("a point twice", HEAD + ROW + "11,edge,4,41,0\n", ["3:1 point-twice"]),
    ("a point before, and both", TWO + "11,edge,both,4,40,0\n11,edge,after,4,41,0\n", ["3:1 point-twice"]),
    ("two landmarks in one place", HEAD + ROW + "11,gum,4,40,0\n", ["3:8 two-landmarks-in-one-place"]),
    ("no such moment", TWO + "11,edge,later,4,40,0\n", ["2:9 unknown-moment"]),
    ("the moment left out", TWO + "11,edge,,4,40,0\n", ["2:9 unknown-moment"]),
    ("a face that moves", TWO + "11,edge,both,4,40,0\nface,midline,before,0,1,2\n", ["3:14 face-has-no-moment"]),
    ("nothing after", TWO + "11,edge,before,4,40,0\n", ["1:16 moment-missing"]),
    ("nothing before", TWO + "11,edge,after,4,40,0\n", ["1:16 moment-missing"]),
    (
        "every fault at once",
        HEAD + "19,edge,x,40,0\n11,tip,4,40,zero\n11\n11,edge,4,40,0\n11,edge,5,40,0\n",
        [
            "2:1 unknown-tooth",
            "2:9 not-a-coordinate",
            "3:4 unknown-landmark",
            "3:13 not-a-coordinate",
            "4:1 wrong-number-of-cells",
            "6:1 point-twice",
        ],
    ),
    ("a table longer than every point", HEAD + ROW * 20_000, ["1:1 too-large"]),
]  # fmt: skip


@pytest.mark.parametrize("sentence,text,told", FAULTY)
def test_each_fault_is_named_with_its_place(sentence, text, told):
    faults = read_points(text.encode())
    assert (sentence, [f"{fault.line}:{fault.column} {fault.reason}" for fault in faults]) == (sentence, told)


def test_bytes_that_are_no_text():
    (fault,) = read_points(HEAD.encode() + b"11,\xff\n")
    assert (fault.line, fault.column, fault.reason) == (2, 4, "not-utf-8")


def test_no_fault_repeats_what_a_cell_holds():
    faults = read_points((HEAD + "Smith,edge,1,2,3\n11,Jones,1,2,3\n11,edge,Brown,2,3\n").encode())
    assert not {"Smith", "Jones", "Brown"} & {str(value) for fault in faults for value in fault.facts.values()}


@pytest.mark.parametrize(
    "line,axis,told",
    [
        ("tooth,landmark,x,y,z", "forward", ("y", 18)),
        ("tooth,landmark,moment,x,y,z", "left", ("x", 23)),
        ("tooth,landmark,up,right,back", "left", ("right", 19)),
    ],
)
def test_a_coordinate_is_found_in_the_header(line, axis, told):
    name, column = header_read(line).column(axis)
    assert (name, column) == told
    assert line[column - 1 :].startswith(name)
