"""Conversions between tooth numberings, against tables written by hand from the definitions of the numberings.

ISO 3950 counts from the midline in quadrants 1 upper right, 2 upper left, 3 lower left, 4 lower right (5 to 8 primary).
The Universal numbering runs 1 to 32 (A to T) from the upper right third molar (second primary molar) round the upper
arch and back along the lower arch. Palmer's corner is the midline and the occlusal plane; Haderup's sign stands on the
midline's side, + above and - below.
"""

from itertools import pairwise

import pytest

from wellposed_converters.text.places import notation

UNIVERSAL = {
    1: 18, 2: 17, 3: 16, 4: 15, 5: 14, 6: 13, 7: 12, 8: 11,
    9: 21, 10: 22, 11: 23, 12: 24, 13: 25, 14: 26, 15: 27, 16: 28,
    17: 38, 18: 37, 19: 36, 20: 35, 21: 34, 22: 33, 23: 32, 24: 31,
    25: 41, 26: 42, 27: 43, 28: 44, 29: 45, 30: 46, 31: 47, 32: 48,
}  # fmt: skip

LETTERS = {
    "A": 55, "B": 54, "C": 53, "D": 52, "E": 51, "F": 61, "G": 62, "H": 63, "I": 64, "J": 65,
    "K": 75, "L": 74, "M": 73, "N": 72, "O": 71, "P": 81, "Q": 82, "R": 83, "S": 84, "T": 85,
}  # fmt: skip

ALPHANUMERIC = {
    "UR1": 11, "UR2": 12, "UR3": 13, "UR4": 14, "UR5": 15, "UR6": 16, "UR7": 17, "UR8": 18,
    "UL1": 21, "UL2": 22, "UL3": 23, "UL4": 24, "UL5": 25, "UL6": 26, "UL7": 27, "UL8": 28,
    "LL1": 31, "LL2": 32, "LL3": 33, "LL4": 34, "LL5": 35, "LL6": 36, "LL7": 37, "LL8": 38,
    "LR1": 41, "LR2": 42, "LR3": 43, "LR4": 44, "LR5": 45, "LR6": 46, "LR7": 47, "LR8": 48,
    "URA": 51, "URB": 52, "URC": 53, "URD": 54, "URE": 55, "ULA": 61, "ULB": 62, "ULC": 63, "ULD": 64, "ULE": 65,
    "LLA": 71, "LLB": 72, "LLC": 73, "LLD": 74, "LLE": 75, "LRA": 81, "LRB": 82, "LRC": 83, "LRD": 84, "LRE": 85,
}  # fmt: skip

PALMER = {"UR": ("⏌", "┘"), "UL": ("⎿", "└"), "LR": ("⏋", "┐"), "LL": ("⎾", "┌")}
"""Unicode dentistry signs U+23CC, U+23BF, U+23CB, U+23BE, and the box-drawing signs that look like them."""

HADERUP = {
    "1+": 11, "2+": 12, "3+": 13, "4+": 14, "5+": 15, "6+": 16, "7+": 17, "8+": 18,
    "+1": 21, "+2": 22, "+3": 23, "+4": 24, "+5": 25, "+6": 26, "+7": 27, "+8": 28,
    "-1": 31, "-2": 32, "-3": 33, "-4": 34, "-5": 35, "-6": 36, "-7": 37, "-8": 38,
    "1-": 41, "2-": 42, "3-": 43, "4-": 44, "5-": 45, "6-": 46, "7-": 47, "8-": 48,
    "01+": 51, "02+": 52, "03+": 53, "04+": 54, "05+": 55, "+01": 61, "+02": 62, "+03": 63, "+04": 64, "+05": 65,
    "-01": 71, "-02": 72, "-03": 73, "-04": 74, "-05": 75, "01-": 81, "02-": 82, "03-": 83, "04-": 84, "05-": 85,
}  # fmt: skip

IN_BOTH = {
    11: 23, 12: 24, 13: 25, 14: 26, 15: 27, 16: 28, 17: 38, 18: 37, 21: 34, 22: 33, 23: 32, 24: 31,
    25: 41, 26: 42, 27: 43, 28: 44, 31: 47, 32: 48,
}  # fmt: skip
"""The numbers that exist in both ISO 3950 and the Universal numbering, with the tooth of the latter."""

PERMANENT = [*range(11, 19), *range(21, 29), *range(31, 39), *range(41, 49)]
PRIMARY = [*range(51, 56), *range(61, 66), *range(71, 76), *range(81, 86)]


def test_universal_numbers():
    assert {number: notation.from_universal(number) for number in range(-1, 100)} == {
        number: UNIVERSAL.get(number) for number in range(-1, 100)
    }


@pytest.mark.parametrize("letter", [*LETTERS, *(letter.lower() for letter in LETTERS)])
def test_universal_letters(letter):
    assert notation.from_universal_letter(letter) == LETTERS[letter.upper()]


@pytest.mark.parametrize("letter", ["U", "Z", "", "AB", "1"])
def test_no_such_universal_letter(letter):
    assert notation.from_universal_letter(letter) is None


def test_fdi_has_permanent_and_primary_teeth_only():
    assert [number for number in range(100) if notation.from_fdi(number)] == [*PERMANENT, *PRIMARY]


def test_alphanumeric():
    assert {name: notation.from_corner(name[:2], name[2:]) for name in ALPHANUMERIC} == ALPHANUMERIC


@pytest.mark.parametrize("name", ["9", "0", "F", "", "AB"])
def test_no_such_position(name):
    assert notation.from_corner("UR", name) is None


def test_palmer_signs():
    for name, tooth in ALPHANUMERIC.items():
        for sign in PALMER[name[:2]]:
            assert notation.from_palmer(sign, name[2:]) == tooth


def test_haderup():
    read = {}
    for form in HADERUP:
        first = form[0] in "+-"
        read[form] = notation.from_haderup(form.strip("+-"), form.strip("012345678"), sign_first=first)
    assert read == HADERUP


def test_the_eighteen_numbers_of_both_numberings_never_mean_the_same_tooth():
    both = {
        number: notation.from_universal(number)
        for number in range(100)
        if notation.from_fdi(number) and notation.from_universal(number)
    }
    assert both == IN_BOTH
    assert all(number != tooth for number, tooth in both.items())


@pytest.mark.parametrize(
    "first, second, teeth",
    [
        (13, 23, (13, 12, 11, 21, 22, 23)),
        (43, 33, (43, 42, 41, 31, 32, 33)),
        (33, 43, (43, 42, 41, 31, 32, 33)),
        (16, 14, (16, 15, 14)),
        (34, 37, (34, 35, 36, 37)),
        (53, 63, (53, 52, 51, 61, 62, 63)),
        (21, 21, (21,)),
        (13, 43, None),
        (13, 53, None),
    ],
)
def test_segment(first, second, teeth):
    assert notation.segment(first, second) == teeth


def test_neighbours_are_the_contacts_of_the_arches():
    upper = [18, 17, 16, 15, 14, 13, 12, 11, 21, 22, 23, 24, 25, 26, 27, 28]
    lower = [48, 47, 46, 45, 44, 43, 42, 41, 31, 32, 33, 34, 35, 36, 37, 38]
    contacts = {frozenset(pair) for arch in (upper, lower) for pair in pairwise(arch)}
    found = {frozenset((a, b)) for a in PERMANENT for b in PERMANENT if notation.neighbours(a, b)}
    assert found == contacts


@pytest.mark.parametrize(
    "tooth, surface, other",
    [
        (33, "mesial", 32),
        (33, "distal", 34),
        (11, "mesial", 21),
        (41, "mesial", 31),
        (18, "distal", None),
        (54, "mesial", 53),
    ],
)
def test_beside(tooth, surface, other):
    assert notation.beside(tooth, surface) == other


def test_mouth_order():
    """Upper right to upper left, then lower right to lower left; a tooth once."""
    assert notation.in_mouth_order([33, 23, 43, 13, 31, 41, 11, 21, 13]) == (13, 11, 21, 23, 43, 41, 31, 33)


@pytest.mark.parametrize(
    "tooth, arch, side", [(16, "upper", "right"), (65, "upper", "left"), (71, "lower", "left"), (48, "lower", "right")]
)
def test_arch_and_side(tooth, arch, side):
    assert (notation.arch_of(tooth), notation.side_of(tooth)) == (arch, side)
