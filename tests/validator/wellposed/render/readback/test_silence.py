"""What was not mentioned: worked out by hand from the table of what is opened in the specification."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, document, found, must, present

from wellposed.check import prescription_of
from wellposed.render.json_report import dumped
from wellposed.render.readback import sentences
from wellposed.vocabulary.teeth import in_words

FRONT = ("13", "12", "11", "21", "22", "23")
SIX = {"teeth": present(upper=FRONT, lower=[])}
ANGLES = "no torque (crown inwards or outwards), no tip (crown mesial or distal), no rotation (either way)"
ALONG = "no movement along the arch (mesial or distal)"
ACROSS = "no movement in or out (towards the tongue or away from it)"
HEIGHT = "no movement up or down (into or out of the bone)"


def read(**sections):
    return sentences(prescription_of(dumped(document(**sections)).encode()))


def kept(**sections):
    return [one.text for one in read(**sections) if (one.heading, one.pointer) == ("kept", "")]


def named(*teeth):
    words = [f"{tooth} ({in_words(tooth)})" for tooth in teeth]
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else words[0]


def of_teeth(**sections):
    return [text for text in kept(**SIX, **sections) if text.startswith("Kept: ") and "; no " in text]


TEETH = [
    ("nothing is said at all", {}, [f"Kept: {named(*FRONT)}; no movement at all."]),
    (
        "align opens turning, tipping and sliding",
        {"goals": [must("g1", align=list(FRONT))]},
        [f"Kept: {named(*FRONT)}; {ACROSS}, {HEIGHT}, no torque (crown inwards or outwards)."],
    ),
    (
        "a movement opens its one sense",
        {"movements": [must("m1", teeth=["12", "22"], motion="intrusion", at_most=1, unit="mm")]},
        [
            f"Kept: {named('13', '11', '21', '23')}; no movement at all.",
            f"Kept: {named('12', '22')}; {ALONG}, {ACROSS}, no extrusion (out of the bone), {ANGLES}.",
        ],
    ),
    (
        "what is on hold is kept by that",
        {"keep": [must("k1", hold=["13", "23"])]},
        [f"Kept: {named('12', '11', '21', '22')}; no movement at all."],
    ),
    (
        "what is excluded is mentioned",
        {"exclude": [{"id": "x1", "means": "intrusion", "teeth": list(FRONT)}]},
        [f"Kept: {named(*FRONT)}; {ALONG}, {ACROSS}, no extrusion (out of the bone), {ANGLES}."],
    ),
    ("an arch that is not treated is kept by that", {"treat": {"arches": "lower"}}, []),
    ("the laboratory may choose all of it", {"allow": [allowed("a1", "laboratory-choice")]}, []),
    (
        "a displaced tooth that is aligned comes to the line",
        {
            "findings": [{"id": "f1", "tooth_measure": "displacement", "values": {"12": 2}, "unit": "mm"}],
            "goals": [must("g1", align=["12"])],
        },
        [
            f"Kept: {named('13', '11', '21', '22', '23')}; no movement at all.",
            (
                f"Kept: {named('12')}; {ACROSS} but to come to the arch line, {HEIGHT},"
                " no torque (crown inwards or outwards)."
            ),
        ],
    ),
]


@pytest.mark.parametrize("sentence, sections, expected", TEETH)
def test_teeth_that_nothing_speaks_of(sentence, sections, expected):
    assert (sentence, of_teeth(**sections)) == (sentence, expected)


def test_a_tooth_that_cannot_move_is_kept_by_its_state():
    teeth = present(("13", "implant"), upper=FRONT, lower=[])
    assert f"Kept: {named(*FRONT[1:])}; no movement at all." in kept(teeth=teeth)


ENAMEL = [
    ("none is named", {}, "Kept: all enamel of the upper arch; none is taken off at any contact."),
    (
        "others are named",
        {"allow": [allowed("a1", "enamel-reduction", contacts=["13-12", "12-11", "11-21"], in_all=1, unit="mm")]},
        (
            "Kept: the enamel at 21/22 (upper left central incisor and upper left lateral incisor) and"
            " 22/23 (upper left lateral incisor and upper left canine); none is taken off there."
        ),
    ),
    ("it is excluded", {"exclude": [{"id": "x1", "means": "enamel-reduction", "arch": "upper"}]}, None),
    (
        "the whole arch is named",
        {"allow": [allowed("a1", "enamel-reduction", arch="upper", in_all=1, unit="mm")]},
        None,
    ),
]


@pytest.mark.parametrize("sentence, sections, expected", ENAMEL)
def test_enamel_that_nothing_speaks_of(sentence, sections, expected):
    told = [text for text in kept(**SIX, **sections) if "enamel of" in text or "the enamel at" in text]
    assert (sentence, told) == (sentence, [expected] if expected else [])


GAP = "Kept: the contact of the back teeth; no gap opens there, and none that is there grows."
BACK = [
    ("nothing is said", {}, True),
    ("it may open", {"allow": [allowed("a1", "posterior-open-bite", up_to=1, unit="mm")]}, False),
    ("it is excluded", {"exclude": [{"id": "x1", "means": "posterior-open-bite"}]}, False),
    ("it is kept", {"keep": [must("k1", measure="posterior-open-bite", within=0, unit="mm")]}, False),
    ("premolars that erupt act as stops", {"goals": [must("g1", level="lower")]}, False),
    ("no first molars meet", SIX, False),
]


@pytest.mark.parametrize("sentence, sections, silent", BACK)
def test_the_contact_of_the_back_teeth(sentence, sections, silent):
    assert (sentence, GAP in kept(**sections)) == (sentence, silent)


MEANS = [
    (
        "nothing is said",
        {},
        {"enamel reduction", "extraction", "intrusion", "widening", "other elastics", "auxiliaries"},
        set(),
    ),
    (
        "an order makes use of it",
        {"movements": [must("m1", teeth=["13"], motion="intrusion", at_most=1, unit="mm")]},
        {"extrusion"},
        {"intrusion"},
    ),
    ("it is allowed somewhere", {"allow": [allowed("a1", "extraction", teeth=["41"])]}, {"widening"}, {"extraction"}),
    ("the tooth goes by its state", {"teeth": present(("41", "to-be-extracted"))}, {"widening"}, {"extraction"}),
    ("it is excluded", {"exclude": [{"id": "x1", "means": "widening"}]}, {"narrowing"}, {"widening"}),
    (
        "an elastic is built",
        {"appliance": [{"id": "b1", "part": "elastic", "start": "13", "end": "46"}]},
        {"auxiliaries"},
        {"Class II elastics", "other elastics"},
    ),
]


@pytest.mark.parametrize("sentence, sections, unused, mentioned", MEANS)
def test_means_neither_allowed_nor_excluded(sentence, sections, unused, mentioned):
    (told,) = [text for text in kept(**sections) if text.startswith("Not used")]
    assert (sentence, {words for words in unused | mentioned if words in told}) == (sentence, unused)


def measures(start, **sections):
    told = [one.text for one in read(**sections) if one.text.startswith(start)]
    words = told[0].partition(": ")[2].rstrip(".").replace(" and ", ", ") if told else ""
    return set(words.split(", "))


STAY, FOLLOW = "Kept, as nothing that moves them", "Free to follow"


def test_measures_that_no_goal_and_no_keep_holds():
    intruding = {"movements": [must("m1", teeth=["11", "21"], motion="intrusion", at_most=1, unit="mm")]}
    assert measures(FOLLOW, **intruding) == {"overbite", "upper incisor shown at rest", "gum shown on smiling"}
    assert {"overjet", "interincisal angle", "upper spacing"} <= measures(STAY, **intruding)


def test_a_measure_that_is_mentioned_is_in_neither_list():
    sections = {
        "findings": [found("f1", "overjet", 3)],
        "goals": [must("g1", measure="overjet", at_most=3, unit="mm")],
        "keep": [must("k1", measure="overbite", within=1, unit="mm")],
    }
    assert {"overjet", "overbite"} & (measures(STAY, **sections) | measures(FOLLOW, **sections)) == set()


def test_enamel_taken_off_makes_room_of_its_arch_only():
    reducing = {"allow": [allowed("a1", "enamel-reduction", contacts=["11-21"], in_all=0.3, unit="mm")]}
    assert {"upper crowding", "upper spacing"} <= measures(FOLLOW, **reducing)
    assert {"lower crowding", "lower spacing"} <= measures(STAY, **reducing)


def test_what_only_teeth_on_hold_could_change_stays():
    sections = {
        "allow": [allowed("a1", "incisor-advance", arch="lower", up_to=1, unit="mm")],
        "keep": [must("k1", hold=["42", "41", "31", "32"])],
    }
    assert "overjet" in measures(STAY, **sections)
    assert "overjet" in measures(FOLLOW, allow=sections["allow"])


def test_a_measure_whose_teeth_are_not_there_is_not_spoken_of():
    assert "overjet" not in measures(STAY, **SIX)
    assert "upper incisor shown at rest" in measures(STAY, **SIX)
