"""Where places stand, what belongs to them, and what is no place. Expected readings are worked by hand."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellposed_converters.text.places import Numbering, find_places, inner_contacts, notation, resolve, with_arch

STATED = Numbering("FDI", stated=True)
UPPER_3 = (13, 12, 11, 21, 22, 23)
LOWER_3 = (43, 42, 41, 31, 32, 33)


def quotes(text, **options):
    return [text[place.start : place.end] for place in find_places(text, **options)]


def only(text):
    (place,) = find_places(text)
    return place


def meant(text, numbering=STATED):
    (meaning,) = resolve(only(text), numbering)
    return meaning


WHOLE = [
    "U/L 3-3",
    "upper and lower 3-3",
    "lower 6s or 7s",
    "33 & 43",
    "14, 24 and 34",
    "14-16 and 24-26",
    "premolars and canines",
    "all premolars except 15",
    "2|2",
    "3⏌ and ⎿3",
    "UR3 and UL3",
    "between 11 and 21",
    "upper right lateral incisor",
    "lower arch",
    "lower left quadrant",
    "12 11 21 22",
    "6⏌ ⎿6 6⏋ ⎾6",
    "U 5-5 and L 4-4",
    "upper 4|4 and lower 4|4",
    "from the mesial of 34 to the mesial of 44",
    "second premolar to second premolar",
    "#3, #14, #19, #30",
    "13/12, 12/11 and 11/21",
    "3-3 in the lower arch",
    "3-3 but not on 11",
    "first premolars in all quadrants",
    "upper canines (13 23)",
    "13 (upper right canine)",
    "lower 31 41",
    "canines on the right",
    "upper, lower",
    "tooth 13",
    "both arches",
    "321⏌ ⎿123",
]


@pytest.mark.parametrize("text", WHOLE)
def test_a_place_goes_as_far_as_it_can(text):
    assert quotes(text) == [text]


@pytest.mark.parametrize(
    "text, expected",
    [
        ("Intrude 31 41 1 mm, derot 33 & 43", ["31 41", "33 & 43"]),
        (
            "Align U/L 3-3. Keep OB + OJ. No IPR upper. IPR lower 3-3 max 0.3 per contact.",
            ["U/L 3-3", "upper", "lower 3-3"],
        ),
        ("Intrude 11, 21 by 0,5 mm", ["11, 21"]),
        ("Expand upper arch 1,5 mm per side at 14-16 and 24-26", ["upper arch", "14-16 and 24-26"]),
        ("IPR L 2-2 0.2/contact", ["L 2-2"]),
        ("LR1 extrude 0.5 mm", ["LR1"]),
        ("Attachments 5, 12, 21, 28. Crowns on 14 and 19", ["5, 12, 21, 28", "14 and 19"]),
        ("No IPR upper 3-3, lower 3-3 max 0.3", ["upper 3-3", "lower 3-3"]),
        ("No movement of 17 27, 16 26 if possible", ["17 27", "16 26"]),
        ("36, 2 attachments", ["36"]),
        ("33 and 2 premolars", ["33", "2 premolars"]),
        ("Lock 36\n12: derotate", ["36", "12"]),
        ("Tooth by tooth\n12: derotate", ["12"]),
        ("Upper\n3-3", ["Upper", "3-3"]),
        ("3-3 upper and lower midline ok", ["3-3 upper", "lower"]),
        ("derotate 33 20 degrees", ["33"]),
        ("derotate 33 20", ["33", "20"]),
        ("exp U 1.5 mm R side only", ["U", "R side"]),
    ],
)
def test_amounts_and_other_statements_stay_outside(text, expected):
    assert quotes(text) == expected


NO_PLACES = [
    "by 12 degrees",
    "12 steps",
    "8 steps max",
    "3 mm",
    "14 days",
    "2-3 mm",
    "10 to 12 degrees",
    "13 or 14 steps",
    "between 2 and 3 mm",
    "Bolton 6",
    "Bolton 3-3",
    "0.2",
    "0,5",
    ".3",
    "1.5",
    "1,2",
    "stage 13",
    "stages 11-13",
    "step 4",
    "max 12",
    "up to 12",
    "at least 11",
    "12/11/2024",
    "11.12.2024",
    "10:30",
    "A-102",
    "B12",
    "Class II/1",
    "12 attachments",
    "one or two",
    "I would like it as is, us too",
    "As on a photo",
    "Canine guidance must be kept",
    "molar relationship",
    "lateral open bite",
    "posterior crossbite",
    "1 mm to the left",
    "lower the bite",
    "50 %",
    "2x4 mm",
    "3rd aligner",
]


@pytest.mark.parametrize("text", NO_PLACES)
def test_no_place(text):
    assert quotes(text) == []


ASKED = [
    ("3 3", "teeth", "lost-signs"),
    ("3 and 3", "teeth", "lost-signs"),
    ("3? and ?3", "notation", "lost-signs"),
    ("3\ufffd", "notation", "lost-signs"),
    ("1121", "teeth", "glued"),
    ("UL 3-3", "teeth", "ul-mirror"),
    ("upper left 3-3", "teeth", "mirror-in-quadrant"),
    ("front teeth", "teeth", "front-teeth"),
    ("lower front", "teeth", "front-teeth"),
    ("upper labial segment", "teeth", "labial-segment"),
    ("buccal segments", "teeth", "buccal-segment"),
    ("13 to 46", "teeth", "crosses-arches"),
    ("UR3 to LR6", "teeth", "crosses-arches"),
    ("39", "implausible", "impossible-number"),
    ("11, 21, 39", "implausible", "impossible-number"),
    ("2 premolars", "teeth", "counted-teeth"),
    ("three upper incisors", "teeth", "counted-teeth"),
    ("upper 3 incisors", "teeth", "counted-teeth"),
    ("34, 44 and #19", "notation", "mixed-numbering"),
    ("upper left canine (13)", "teeth", "words-against-number"),
    ("lower 13 12", "teeth", "words-against-number"),
    ("lower anteriors except 15", "teeth", "exception-outside"),
    ("between 13 and 15", "teeth", "between-no-neighbours"),
    ("upper lateral", "teeth", "one-of-several"),
    ("upper right premolar", "teeth", "one-of-several"),
    ("the other three incisors", "reference", "other-teeth"),
    ("UL", "meaning", "quadrant-alone"),
    ("L", "meaning", "letter-l"),
    ("either side", "teeth", "either-side"),
    ("UR V", "teeth", "roman"),
    ("4x4", "teeth", "span"),
    ("U3-4", "teeth", "side-unsaid"),
    ("upper 3", "teeth", "bare-position"),
    ("12/11/21", "teeth", "date-or-contacts"),
    ("1/2", "meaning", "fraction-or-contact"),
    ("3/16", "meaning", "fraction-or-contact"),
    ("⏌3", "notation", "palmer-variant"),
    ("6⏀", "notation", "palmer-variant"),
    ("[6", "notation", "typed-palmer"),
    ("12|21", "notation", "cross"),
    ("UR3 and 4", "teeth", "quadrant-of-the-next"),
    ("UR654", "teeth", "glued"),
    ("3-3 except the canines", "teeth", "exception-outside"),
    ("URA", "meaning", "appliance-or-tooth"),
]


@pytest.mark.parametrize("text, asks, why", ASKED)
def test_asked_whatever_the_numbering(text, asks, why):
    place = only(text)
    assert (place.asks, place.why) == (asks, why)


TEETH = [
    ("upper right lateral incisor", (12,)),
    ("right upper lateral incisor", (12,)),
    ("mandibular left first premolar", (34,)),
    ("UR canine", (13,)),
    ("lower left second primary molar", (75,)),
    ("upper left E", (65,)),
    ("upper Es", (55, 65)),
    ("upper left 6", (26,)),
    ("UR 5", (15,)),
    ("UR3,4", (14, 13)),
    ("lower right 4-7", (47, 46, 45, 44)),
    ("mand 3-3", LOWER_3),
    ("social six, upper and lower", (*UPPER_3, *LOWER_3)),
    ("3-3 (lower)", LOWER_3),
    ("lower incisor inclination", (42, 41, 31, 32)),
    ("each upper canine", (13, 23)),
    ("upper molars", (17, 16, 26, 27)),
    ("upper right first and second premolars", (15, 14)),
    ("upper right and left canines", (13, 23)),
    ("upper right central and lateral incisors", (12, 11)),
    ("6s and 7s upper", (17, 16, 26, 27)),
    ("6s and 7s upper, 4s lower", (17, 16, 26, 27, 44, 34)),
    ("lower 6s, upper 7s and 8s", (18, 17, 27, 28, 46, 36)),
    ("lower 5-5 except canines", (45, 44, 42, 41, 31, 32, 34, 35)),
    ("max 6s", (16, 26)),
    ("lower four incisors", (42, 41, 31, 32)),
    ("4 lower incisors", (42, 41, 31, 32)),
    ("lower posteriors", (47, 46, 45, 44, 34, 35, 36, 37)),
    ("lower wisdom teeth", (48, 38)),
    ("upper six-year molars", (16, 26)),
    ("upper 1st premolars", (14, 24)),
    ("lower left quadrant", (31, 32, 33, 34, 35, 36, 37, 38)),
    ("upper incisors and canines", UPPER_3),
    ("upper canines on the left", (23,)),
    ("21⏊12", (12, 11, 21, 22)),
    ("321⏉123", LOWER_3),
    ("E⏌", (55,)),
    ("12-22 and 32-42", (12, 11, 21, 22, 42, 41, 31, 32)),
    ("upper 3-3 except 11 21", (13, 12, 22, 23)),
    ("13~23", UPPER_3),
    ("upper canine to canine", UPPER_3),
    ("upper right canine (13)", (13,)),
    ("upper first premolar to first premolar", (14, *UPPER_3, 24)),
]


@pytest.mark.parametrize("text, teeth", TEETH)
def test_teeth(text, teeth):
    assert meant(text).teeth == teeth
    assert not meant(text).needs


CONTACTS = [
    ("32/31/41", ((41, 31), (31, 32))),
    ("UR3/UR2", ((13, 12),)),
    ("UR3/2", ((13, 12),)),
    ("between UR1 and UL1", ((11, 21),)),
    ("between ⎾1 and ⎾2", ((31, 32),)),
    ("between the upper centrals", ((11, 21),)),
    ("between 31/41", ((41, 31),)),
    ("each side of 12", ((13, 12), (12, 11))),
    ("mesial of 34 to mesial of 44", ((44, 43), (43, 42), (42, 41), (41, 31), (31, 32), (32, 33), (33, 34))),
    ("distal of 33 to distal of 31", ((41, 31), (31, 32), (32, 33), (33, 34))[1:]),
    ("distal of 33 to mesial of 31", ((41, 31), (31, 32), (32, 33), (33, 34))),
    ("distal of 12 and 22", ((13, 12), (22, 23))),
    ("13/12, 12/11", ((13, 12), (12, 11))),
    ("lower 3-3 except 31/41", ((43, 42), (42, 41), (31, 32), (32, 33))),
]


@pytest.mark.parametrize("text, contacts", CONTACTS)
def test_contacts(text, contacts):
    assert meant(text).contacts == contacts


INNER = [
    ("lower 3-3", tuple(pairwise(LOWER_3))),
    ("33-43", tuple(pairwise(LOWER_3))),
    ("U/L 3-3", (*pairwise(UPPER_3), *pairwise(LOWER_3))),
    ("lower canine to canine", tuple(pairwise(LOWER_3))),
    ("14-16 and 24-26", ((16, 15), (15, 14), (24, 25), (25, 26))),
    ("upper 3-3 except 11", ((13, 12), (21, 22), (22, 23))),
    ("31-41", ((41, 31),)),
    ("32 31", ()),
    ("lower incisors", ()),
]


@pytest.mark.parametrize("text, contacts", INNER)
def test_contacts_inside_a_range(text, contacts):
    """A range means the contacts inside it; a list or a group word names teeth only."""
    assert inner_contacts(meant(text)) == contacts


@pytest.mark.parametrize(
    "text, arch, teeth, needs",
    [
        ("3-3", "lower", LOWER_3, ()),
        ("3-3", "both", (*UPPER_3, *LOWER_3), ()),
        ("21|12", "upper", (12, 11, 21, 22), ()),
        ("6s", "lower", (46, 36), ()),
        ("6s and lower 7s", "upper", (16, 26, 47, 37), ()),
        ("laterals", "upper", (12, 22), ()),
        ("all premolars except 15", "upper", (14, 24, 25), ()),
        ("3-3 but not 11", "upper", (13, 12, 21, 22, 23), ()),
        ("3-3 but not 11", "lower", LOWER_3, ("teeth",)),
        ("8", "upper", (), ("side",)),
        ("upper 6s", "lower", (16, 26), ()),
    ],
)
def test_an_arch_from_elsewhere_completes_a_position(text, arch, teeth, needs):
    completed = with_arch(meant(text), arch)
    assert (completed.teeth, completed.needs) == (teeth, needs)


@pytest.mark.parametrize(
    "text, needed",
    [("3-3", ()), ("laterals", ()), ("6s", (16, 26, 46, 36)), ("premolars", (15, 14, 24, 25, 45, 44, 34, 35))],
)
def test_what_stands_where_no_arch_is_said(text, needed):
    """Premolars and molars stand for all; ranges and front teeth wait for their arch."""
    assert meant(text).needs == ("arch",)
    assert meant(text).teeth == needed


@pytest.mark.parametrize(
    "text, arch, side",
    [
        ("upper arch", "upper", None),
        ("U/L", "both", None),
        ("both arches", "both", None),
        ("U", "upper", None),
        ("all teeth", "both", None),
        ("upper, lower", "both", None),
        ("each quadrant", "both", None),
        ("right side", None, "right"),
        ("on the left", None, "left"),
        ("bilaterally", None, "both"),
    ],
)
def test_an_arch_or_a_side_alone(text, arch, side):
    found = meant(text)
    assert (found.arch, found.side, found.teeth) == (arch, side, ())


@pytest.mark.parametrize(
    "text, bare", [("13", True), ("tooth 13", False), ("#13", False), ("on 13", False), ("13 12", False)]
)
def test_a_number_by_itself_is_marked(text, bare):
    assert only(text).bare_number is bare


@pytest.mark.parametrize("text, loose", [("12 15", True), ("12, 15", False), ("12 and 15", False), ("#12 #15", False)])
def test_a_last_number_after_mere_space_is_marked(text, loose):
    assert only(text).loose_tail is loose


@pytest.mark.parametrize(
    "text, choice",
    [("14 or 24", True), ("6s or 7s", True), ("14 and 24", False), ("14, 24 or 34", True), ("13", False)],
)
def test_a_choice_is_marked(text, choice):
    """Under a negation all of them, under an order one of them: not for the place to say."""
    assert only(text).alternatives is choice


@pytest.mark.parametrize(
    "text, links",
    [
        ("13 to 46", ((13, 46),)),
        ("46 to 13", ((46, 13),)),
        ("13-46 and 23-36", ((13, 46), (23, 36))),
        ("UR3-LR6, UL3-LL6", ((13, 46), (23, 36))),
    ],
)
def test_a_range_from_arch_to_arch_keeps_its_ends(text, links):
    (meaning,) = resolve(only(text), STATED)
    assert (meaning.links, meaning.needs) == (links, ("link",))


@pytest.mark.parametrize(
    "text, inferred", [("U6", ("teeth",)), ("U1", ()), ("lower molars", ("teeth",)), ("6s", ("teeth",))]
)
def test_conventions_are_shown(text, inferred):
    assert meant(text).inferred == inferred


PERMANENT = [quadrant * 10 + position for quadrant in (1, 2, 3, 4) for position in range(1, 9)]
FROM_UNIVERSAL = {notation.from_universal(number): number for number in range(1, 33)}


@pytest.mark.parametrize("tooth", PERMANENT)
def test_the_numbering_of_a_text_changes_no_tooth(tooth):
    """Written in another stated numbering, in letters or in words, it is the same tooth."""
    corner = {1: "UR", 2: "UL", 3: "LL", 4: "LR"}[tooth // 10]
    words = {"UR": "upper right", "UL": "upper left", "LL": "lower left", "LR": "lower right"}[corner]
    universal = Numbering("Universal", stated=True)
    assert meant(f"tooth {tooth}").teeth == (tooth,)
    assert meant(f"#{FROM_UNIVERSAL[tooth]}", universal).teeth == (tooth,)
    assert meant(f"{corner}{tooth % 10}").teeth == (tooth,)
    assert meant(f"{words} {tooth % 10}").teeth == (tooth,)


MIRROR = str.maketrans("1234", "2143")


@pytest.mark.parametrize(
    "text", ["upper right canine", "upper right 3", "right upper first molar", "lower right quadrant"]
)
def test_left_and_right_swap_the_side(text):
    other = meant(text.replace("right", "left")).teeth
    mirrored = {int(str(tooth)[0].translate(MIRROR) + str(tooth)[1]) for tooth in meant(text).teeth}
    assert set(other) == mirrored


@pytest.mark.parametrize("text", [text for text in WHOLE if text.isascii()])
def test_case_does_not_matter(text):
    assert only(text.upper()).meanings == only(text).meanings


def test_offsets_are_those_of_the_text():
    text = "é  Lock 36;\tIPR\u00a033–43 0,2 mm"
    assert quotes(text) == ["36", "33–43"]
    assert quotes(text, start=12) == ["33–43"]


SCRAPS = st.sampled_from(
    [
        "3",
        "13",
        "23",
        "6",
        "s",
        "U",
        "L",
        "UL",
        "UR",
        "/",
        "-",
        ",",
        ".",
        "and",
        "or",
        "to",
        "upper",
        "lower",
        "right",
        "left",
        "canines",
        "premolars",
        "3-3",
        "#8",
        "#",
        "⏌",
        "⎿",
        "|",
        "+",
        "between",
        "of",
        "mesial",
        "mm",
        "1.1",
        "0.2",
        "except",
        "but",
        "not",
        "(",
        ")",
        ":",
        "E",
        "Es",
        "all",
        "both",
        "arches",
        "each",
        "side",
        "tooth",
        "six",
        "4",
        "x",
        "?",
        "21",
        "1121",
        "in",
        "the",
        "on",
        "quadrant",
        "first",
        "max",
    ]
)


@given(st.lists(st.tuples(SCRAPS, st.sampled_from(["", " ", " ", "\n"])), max_size=10), st.booleans())
def test_whatever_is_written_every_place_means_something_or_is_asked(scraps, dotted):
    text = "".join(scrap + space for scrap, space in scraps)
    places = find_places(text, dotted=dotted)
    assert all(first.end <= second.start for first, second in pairwise(places))
    for place in places:
        assert place.meanings or place.asks
        assert bool(place.asks) == bool(place.why)
        for meaning in place.meanings:
            assert all(notation.neighbours(*pair) for pair in (*meaning.contacts, *inner_contacts(meaning)))
            assert all(notation.from_fdi(tooth) for tooth in meaning.named())
