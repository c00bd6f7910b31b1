"""A plain table of tooth widths is read strictly, and each fault has its line and column."""

import pytest

from wellposed.reading.widths import read_widths

HEAD = "tooth,width\n"

SOUND = [
    ("one tooth", HEAD + "11,8.5\n", {"11": 8.5}),
    ("no line break at the end", HEAD + "11,8.5", {"11": 8.5}),
    ("line breaks of two characters", "tooth,width\r\n11,8.5\r\n21,8.45\r\n", {"11": 8.5, "21": 8.45}),
    ("whole millimetres", HEAD + "46,11\n", {"46": 11.0}),
    ("a primary tooth", HEAD + "55,8.2\n", {"55": 8.2}),
    ("the ends of what teeth have", HEAD + "11,3\n12,14\n", {"11": 3.0, "12": 14.0}),
]


@pytest.mark.parametrize("sentence,text,widths", SOUND)
def test_a_sound_table(sentence, text, widths):
    assert (sentence, read_widths(text.encode())) == (sentence, widths)


FAULTY = [
    ("nothing", "", ["1:1 wrong-header"]),
    ("no header", "11,8.5\n", ["1:1 wrong-header"]),
    ("another header", "Tooth,Width\n11,8.5\n", ["1:1 wrong-header"]),
    ("a space in the header", "tooth, width\n11,8.5\n", ["1:1 wrong-header"]),
    ("a semicolon between", "tooth;width\n11;8.5\n", ["1:1 wrong-header"]),
    ("a header alone", HEAD, ["2:1 no-rows"]),
    ("a mark before the text", "\ufefftooth,width\n11,8.5\n", ["1:1 byte-order-mark"]),
    ("a decimal comma", HEAD + "11,8,5\n", ["2:1 wrong-number-of-cells"]),
    ("an empty line", HEAD + "\n11,8.5\n", ["2:1 wrong-number-of-cells"]),
    ("two empty lines at the end", HEAD + "11,8.5\n\n", ["3:1 wrong-number-of-cells"]),
    ("a third cell", HEAD + "11,8.5,x\n", ["2:1 wrong-number-of-cells"]),
    ("no such tooth", HEAD + "19,8.5\n", ["2:1 unknown-tooth"]),
    ("another notation", HEAD + "UR1,8.5\n", ["2:1 unknown-tooth"]),
    ("quotation marks", HEAD + '"11",8.5\n', ["2:1 unknown-tooth"]),
    ("a space before the tooth", HEAD + " 11,8.5\n", ["2:1 unknown-tooth"]),
    ("a tooth twice", HEAD + "11,8.5\n12,6.5\n11,8.5\n", ["4:1 tooth-twice"]),
    ("a space before the number", HEAD + "11, 8.5\n", ["2:4 not-a-number"]),
    ("a unit", HEAD + "11,8.5mm\n", ["2:4 not-a-number"]),
    ("a sign", HEAD + "11,+8.5\n", ["2:4 not-a-number"]),
    ("an exponent", HEAD + "11,8e0\n", ["2:4 not-a-number"]),
    ("three decimals", HEAD + "11,8.512\n", ["2:4 not-a-number"]),
    ("no digit before the point", HEAD + "11,.5\n", ["2:4 not-a-number"]),
    ("a digit of another script", HEAD + "11,\u0668.5\n", ["2:4 not-a-number"]),
    ("not a number", HEAD + "11,NaN\n", ["2:4 not-a-number"]),
    ("nothing measured", HEAD + "11,\n", ["2:4 not-a-number"]),
    ("too narrow for a tooth", HEAD + "11,2.99\n", ["2:4 outside-range"]),
    ("too wide: the point is lost", HEAD + "11,85\n", ["2:4 outside-range"]),
    ("a line break of the wrong kind", "tooth,width\r11,8.5\r", ["1:1 wrong-header"]),
    (
        "every fault at once",
        HEAD + "19,x\n11,8.5\n11,99\n",
        ["2:1 unknown-tooth", "2:4 not-a-number", "4:1 tooth-twice", "4:4 outside-range"],
    ),
    ("a table longer than every tooth", HEAD + "11,8.5\n" * 600, ["1:1 too-large"]),
]


@pytest.mark.parametrize("sentence,text,told", FAULTY)
def test_each_fault_is_named_with_its_place(sentence, text, told):
    faults = read_widths(text.encode())
    assert (sentence, [f"{fault.line}:{fault.column} {fault.reason}" for fault in faults]) == (sentence, told)


def test_bytes_that_are_no_text():
    (fault,) = read_widths(HEAD.encode() + b"11,\xff\n")
    assert (fault.line, fault.column, fault.reason) == (2, 4, "not-utf-8")


def test_no_fault_repeats_what_a_cell_holds():
    faults = read_widths((HEAD + "Smith,8.5\n11,Jones\n").encode())
    assert [dict(fault.facts) for fault in faults] == [{}, {"expected": 2}]
