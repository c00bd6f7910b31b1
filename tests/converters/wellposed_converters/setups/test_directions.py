"""Which way a number points, held to a frame written out by hand (``frame``)."""

import pytest
from tests.converters.wellposed_converters.setups.frame import shown

from wellposed.vocabulary.motions import MOTIONS
from wellposed_converters.setups.directions import BY_PLACE, fits, sign_of

TEETH = ["11", "12", "13", "14", "16", "21", "23", "27", "31", "33", "36", "41", "43", "48", "51", "63", "75", "84"]
VARIABLES = ("along", "out", "vertical", "torque", "tip", "rotation")


@pytest.mark.parametrize("direction", BY_PLACE)
@pytest.mark.parametrize("tooth", TEETH)
def test_what_is_said_by_place_is_as_the_frame_has_it(direction, tooth):
    meant = [variable for variable in VARIABLES if fits(direction, variable)]
    assert meant
    for variable in meant:
        assert sign_of(direction, variable, tooth) == shown(direction, variable, tooth)
    for variable in set(VARIABLES) - set(meant):
        assert sign_of(direction, variable, tooth) is None


def test_words_of_the_trade_are_the_formats_own():
    for motion, sense in MOTIONS.items():
        assert sign_of(motion, sense.variable, "16") == sense.sign
        assert sign_of(motion, "vertical" if sense.variable != "vertical" else "out", "16") is None


# Worked by hand, the patient facing up the page. 11 stands right of the midline, so its mesial surface points west and
# its tongue side south: west to south is counterclockwise from above, clockwise from below, where it bites. 46 stands
# in the east: mesial north, tongue west, counterclockwise from above, where it bites.
BY_HAND = [
    ("clockwise-from-above", "rotation", "11", -1),
    ("clockwise-on-the-biting-surface", "rotation", "11", 1),
    ("clockwise-on-the-biting-surface", "rotation", "21", -1),
    ("clockwise-on-the-biting-surface", "rotation", "46", -1),
    ("clockwise-on-the-biting-surface", "rotation", "36", 1),
    ("clockwise-from-outside", "tip", "11", -1),
    ("clockwise-from-outside", "tip", "46", 1),
    ("left", "along", "16", 1),
    ("left", "along", "26", -1),
    ("left", "out", "26", 1),
    ("left", "out", "46", -1),
    ("left", "out", "11", None),
    ("forward", "out", "41", 1),
    ("forward", "out", "36", None),
    ("forward", "along", "26", 1),
    ("forward", "along", "11", None),
    ("up", "vertical", "11", -1),
    ("up", "vertical", "31", 1),
]


@pytest.mark.parametrize("direction, variable, tooth, sign", BY_HAND)
def test_by_hand(direction, variable, tooth, sign):
    assert sign_of(direction, variable, tooth) == sign
