"""The sixty decisions about tooth expressions, each in a text of stated FDI, of stated Universal, and undecided.

The expected readings are worked by hand from the definitions of the numberings (ISO 3950; Universal 1 to 32; Palmer;
Haderup): what both numberings have is asked about in an undecided text, what one alone has is settled by it.
"""

import pytest

from wellposed_converters.text.places import Numbering, find_places, resolve, settle

ASK = "ask"
NONE = "no place"

FDI, UNIVERSAL, OPEN = "FDI", "Universal", None
UPPER_3 = (13, 12, 11, 21, 22, 23)
LOWER_3 = (43, 42, 41, 31, 32, 33)


def reading(text, system, *, dotted=False):
    """What is taken for certain: teeth, else contacts, else an arch; or that it is asked, or that there is no place."""
    places = find_places(text, dotted=dotted)
    if not places:
        return NONE
    (place,) = places
    numbering = Numbering(system, stated=True) if system else settle(text, places)
    meanings = resolve(place, numbering)
    if place.asks or len(meanings) != 1:
        return ASK
    (meaning,) = meanings
    if set(meaning.needs) - {"arch"} or (meaning.needs and not meaning.teeth):
        return ASK
    return meaning.teeth or meaning.contacts or meaning.arch


def same(row, text, expected):
    return [(row, text, system, expected) for system in (FDI, UNIVERSAL, OPEN)]


def rows(row, text, in_fdi, in_universal, undecided):
    return [(row, text, FDI, in_fdi), (row, text, UNIVERSAL, in_universal), (row, text, OPEN, undecided)]


DECISIONS = [
    *rows(1, "13", (13,), (25,), ASK),
    *rows(2, "#13", ASK, (25,), ASK),
    *rows(2, "#13 #14", ASK, (25, 26), (25, 26)),
    *rows(3, "33, 47", (47, 33), ASK, (47, 33)),
    *rows(4, "19", ASK, (36,), (36,)),
    *rows(4, "20", ASK, (35,), (35,)),
    *rows(4, "29", ASK, (45,), (45,)),
    *rows(4, "30", ASK, (46,), (46,)),
    *rows(5, "9", ASK, (21,), (21,)),
    *rows(5, "10", ASK, (22,), (22,)),
    *same(5, "10 mm", NONE),
    *rows(6, "8", ASK, (11,), ASK),
    *[case for number in ("49", "39", "40", "50", "00") for case in same(7, number, ASK)],
    *[
        case
        for tooth in (51, 52, 53, 54, 55, 61, 62, 63, 64, 65, 71, 72, 73, 74, 75, 81, 82)
        for case in rows(8, str(tooth), (tooth,), ASK, (tooth,))
    ],
    *[case for tooth in (83, 84, 85) for case in rows(9, str(tooth), (tooth,), ASK, (tooth,))],
    *rows(10, "13-23", UPPER_3, ASK, UPPER_3),
    *rows(10, "12 to 22", (12, 11, 21, 22), ASK, (12, 11, 21, 22)),
    *rows(11, "11-13", (13, 12, 11), (23, 24, 25), ASK),
    *rows(12, "13-11", (13, 12, 11), (23, 24, 25), ASK),
    *rows(13, "6-11", ASK, UPPER_3, UPPER_3),
    *rows(13, "7-10", ASK, (12, 11, 21, 22), (12, 11, 21, 22)),
    *rows(13, "5-12", ASK, (14, *UPPER_3, 24), (14, *UPPER_3, 24)),
    *rows(14, "22-27", (22, 23, 24, 25, 26, 27), LOWER_3, ASK),
    *rows(14, "23-26", (23, 24, 25, 26), (42, 41, 31, 32), ASK),
    *rows(14, "24-25", (24, 25), (41, 31), ASK),
    *rows(14, "21-28", (21, 22, 23, 24, 25, 26, 27, 28), (44, *LOWER_3, 34), ASK),
    *same(15, "13-43", ASK),
    *rows(16, "11 21", (11, 21), (23, 34), ASK),
    *rows(16, "centrals 11 21", (11, 21), ASK, (11, 21)),
    *rows(17, "11,21", (11, 21), (23, 34), ASK),
    *same(18, "1121", ASK),
    *rows(19, "1.1/2.1", ((11, 21),), ASK, ASK),
    *same(19, "1.1 mm", NONE),
    *rows(20, "1-6", ASK, (18, 17, 16, 15, 14, 13), ASK),
    *same(20, "1-6 mm", NONE),
    *same(21, "3-3", ASK),
    *same(21, "5-5", ASK),
    *same(22, "U3-3", UPPER_3),
    *same(22, "L3-3", LOWER_3),
    *same(22, "upper 3-3", UPPER_3),
    *same(23, "U/L 3-3", (*UPPER_3, *LOWER_3)),
    *same(23, "U+L 3-3", (*UPPER_3, *LOWER_3)),
    *same(24, "UL 3-3", ASK),
    *same(25, "UL 1-3", (21, 22, 23)),
    *same(25, "UL1-3", (21, 22, 23)),
    *same(26, "UR3-UL3", UPPER_3),
    *same(27, "UR3-LR3", ASK),
    *same(28, "UL 1 mm", ASK),
    *same(29, "U1", (11, 21)),
    *same(29, "U1s", (11, 21)),
    *same(29, "upper 1s", (11, 21)),
    *same(29, "U1-SN 105°", ASK),
    *same(30, "U6", (16, 26)),
    *same(31, "5s", (15, 25, 45, 35)),
    *same(31, "4s", (14, 24, 44, 34)),
    *same(31, "lower 4s", (44, 34)),
    *same(32, "6s", (16, 26, 46, 36)),
    *same(33, "lower anteriors", LOWER_3),
    *same(33, "canine to canine", ASK),
    *same(33, "lower canine to canine", LOWER_3),
    *same(34, "laterals", ASK),
    *same(34, "upper laterals", (12, 22)),
    *same(35, "all premolars", (15, 14, 24, 25, 45, 44, 34, 35)),
    *same(36, "6⏌", (16,)),
    *same(36, "6┘", (16,)),
    *same(37, "upper 21|12", (12, 11, 21, 22)),
    *same(38, "21|12", ASK),
    *same(39, "/6", ASK),
    *same(39, "6/", ASK),
    *[case for form in ("2+", "+2", "2-", "-2") for case in same(40, form, ASK)],
    (40, "2+", "Haderup", (12,)),
    (40, "+2", "Haderup", (22,)),
    (40, "2-", "Haderup", (42,)),
    (40, "-2", "Haderup", (32,)),
    *same(41, "4+4", ASK),
    (41, "4+4", "Haderup", (14, *UPPER_3, 24)),
    *same(42, "URE, ULD", (55, 64)),
    *same(43, "Es", (55, 65, 85, 75)),
    *same(43, "E", NONE),
    *rows(43, "#E", ASK, (51,), (51,)),
    *same(44, "UR V", ASK),
    *same(44, "upper left IV", ASK),
    *rows(45, "#A", ASK, (55,), (55,)),
    *rows(45, "#T", ASK, (85,), (85,)),
    *rows(46, "32/31", ((31, 32),), ((48, 47),), ASK),
    *rows(47, "13/43", (13, 43), ASK, (13, 43)),
    *rows(47, "15/45", (15, 45), ASK, (15, 45)),
    *rows(48, "between 11 and 21", ((11, 21),), ASK, ((11, 21),)),
    *rows(49, "mesial of 33", (33,), ASK, (33,)),
    *rows(49, "m33", (33,), ASK, (33,)),
    *rows(49, "33m", (33,), ASK, (33,)),
    *[case for form in ("33d", "33D", "D33") for case in rows(50, form, (33,), ASK, (33,))],
    *same(51, "3/4 contact", ASK),
    *same(51, "2-3 contact", ASK),
    *rows(52, "each side of 12", ((13, 12), (12, 11)), ((23, 24), (24, 25)), ASK),
    *rows(53, "12 15°", (12,), (24,), ASK),
    *same(55, "3 3", ASK),
    *same(55, "3 and 3", ASK),
    *same(56, "13 steps", NONE),
    *same(56, "13 weeks", NONE),
    *same(57, "the lateral incisor that sticks out", ASK),
    *same(58, "the same teeth", ASK),
    *same(58, "it", NONE),
    *same(59, "opposing tooth", ASK),
    *same(59, "adjacent teeth", ASK),
    *same(60, "13 in place of 12", ASK),
]


@pytest.mark.parametrize(
    "text, system, expected", [pytest.param(*case, id=f"{row}: {case[0]} in {case[1]}") for row, *case in DECISIONS]
)
def test_decision(text, system, expected):
    assert reading(text, system) == expected


def test_every_decision_has_a_row():
    """54 is a lone number that only its verb can settle: below."""
    assert {row for row, *_ in DECISIONS} == set(range(1, 61)) - {54}


@pytest.mark.parametrize("system, meant", [(FDI, 15), (UNIVERSAL, 27)])
def test_a_number_after_a_verb_is_left_to_the_verb(system, meant):
    (place,) = find_places("rot 15")
    assert place.bare_number
    assert [one.teeth for one in resolve(place, Numbering(system, stated=True))] == [(meant,)]


@pytest.mark.parametrize(
    "text, teeth",
    [("Intrude 1.1 1.1 mm", (11,)), ("1.1 and 2.1 by 1.1 mm", (11, 21)), ("1.5-1.6 by 1.5 mm", (16, 15))],
)
def test_a_stated_dot_makes_a_tooth_where_no_unit_follows(text, teeth):
    assert reading(text, FDI, dotted=True) == teeth


SURFACES = {"mesial of 33": (32, 33), "m33": (32, 33), "33m": (32, 33), "33d": (33, 34), "D33": (33, 34)}


@pytest.mark.parametrize("text, contact", SURFACES.items())
def test_a_surface_knows_its_contact(text, contact):
    (place,) = find_places(text)
    assert [one.contacts for one in place.meanings] == [(contact,)]


MIRRORED_UNIVERSAL = [(a, 17 - a) for a in range(1, 9)] + [(a, 49 - a) for a in range(17, 25)]
"""Universal ranges across the midline add up to 17 above and 49 below."""


@pytest.mark.parametrize("first, last", MIRRORED_UNIVERSAL)
def test_universal_ranges_across_the_midline(first, last):
    teeth = reading(f"#{first}-{last}", UNIVERSAL)
    assert len(teeth) == last - first + 1
    assert {tooth % 10 for tooth in teeth} == set(range(1, (last - first + 1) // 2 + 1))
