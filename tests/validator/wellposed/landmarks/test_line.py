"""The arch line is found again from teeth on it, and tells where a point stands."""

from math import cos, sin

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.interpolate import CubicSpline  # a second library for the same curve
from tests.validator.wellposed.landmarks.made import LOWER, UPPER, mouth

from wellposed.landmarks.line import Line, fitted
from wellposed.landmarks.vectors import arrays

LINE = Line(x=2.0, y=-5.0, turned=0.1, width=60.0, depth=42.0)


def published(x):
    """Braun et al. 1998, as printed: y = 3.0314 D [(1/2 + x/W)(1/2 - x/W)]^0.8."""
    return 3.0314 * 42 * ((0.5 + x / 60) * (0.5 - x / 60)) ** 0.8


def in_frame(x, y):
    return np.array([x * cos(0.1) - y * sin(0.1) + 2, x * sin(0.1) + y * cos(0.1) - 5, 0.0])


@pytest.mark.parametrize("x", [-29, -20, -8, 0, 5, 17, 28])
def test_a_point_of_the_published_curve_is_on_the_line(x):
    assert LINE.stand(in_frame(x, published(x))).off == pytest.approx(0, abs=0.001)  # 3.0314 is rounded


@pytest.mark.parametrize("x", [-25, -8, 11, 25])
def test_the_way_along_the_line_is_its_length(x):
    """The length by scipy's quadrature of the printed formula, its slope by differences."""
    slope = lambda t: (published(t + 1e-6) - published(t - 1e-6)) / 2e-6  # noqa: E731
    length = quad(lambda t: (1 + slope(t) ** 2) ** 0.5, 0, x)[0]
    assert LINE.stand(in_frame(x, published(x))).along == pytest.approx(length, abs=1e-3)


@pytest.mark.parametrize("along,off", [(-48, 0), (-30, 2.5), (-11, -1), (0, 0), (0.001, 3), (17, 1.7), (45, -2)])
def test_there_and_back(along, off):
    stand = LINE.stand(np.array([*LINE.spot(along, off), 7.0]))
    assert (stand.along, stand.off) == pytest.approx((along, off), abs=1e-9)
    assert np.dot(stand.leftward, stand.out) == pytest.approx(0, abs=1e-12)


def test_beyond_its_end_the_line_goes_on_straight():
    """At the right end the curve of an unturned line runs straight back: 4 mm behind it is 4 mm along."""
    line = Line(0.0, 0.0, 0.0, 60.0, 42.0)
    end, behind = (line.stand(np.array([-30.0, y, 0.0])) for y in (0.0, -4.0))
    assert (end.along - behind.along, behind.off) == pytest.approx((4, 0), abs=0.01)


def test_travel_is_that_of_the_parallel_through_the_point():
    """3 mm outside the line from its middle to where it has turned by t: longer by 3 t; here against a spline."""
    spots = np.array([LINE.spot(along, 3.0) for along in np.linspace(0, 20, 400)])
    reached = np.concatenate(([0], np.cumsum(np.linalg.norm(np.diff(spots, axis=0), axis=1))))
    first, last = (LINE.stand(np.array([*spots[i], 0.0])) for i in (0, -1))
    assert first.travel(last) == pytest.approx(reached[-1], abs=1e-3)
    assert CubicSpline(reached, spots)(reached[-1]) == pytest.approx(spots[-1])
    assert last.travel(first) == pytest.approx(-first.travel(last), abs=1e-12)


def middles(teeth, row):
    points = arrays({tooth: teeth[tooth] for tooth in row})
    return {tooth: (at["mesial-contact"] + at["distal-contact"]) / 2 for tooth, at in points.items()}


@pytest.mark.parametrize("row,depth", [(UPPER, 43), (LOWER, 41)])
def test_a_whole_arch_gives_its_line_back(row, depth):
    line = fitted(middles(mouth(), row))
    assert (line.depth, line.turned) == pytest.approx((depth, 0), abs=1e-6)


def test_a_tooth_off_the_line_hardly_bends_it():
    """A canine 3 mm outside an otherwise even arch is found 3 mm outside, to half a millimetre."""
    at = middles(mouth(), UPPER)
    line = fitted(at | {"13": at["13"] + [-2.3, 1.9, 0]})
    off = {tooth: line.stand(point).off for tooth, point in (at | {"13": at["13"] + [-2.3, 1.9, 0]}).items()}
    assert off["13"] == pytest.approx(3, abs=0.5)
    assert max(abs(value) for tooth, value in off.items() if tooth != "13") < 0.15


@pytest.mark.parametrize(
    "sentence,row,found",
    [
        ("canine to canine", UPPER[4:10], False),
        ("premolar to premolar", UPPER[3:11], True),
        ("five teeth", [UPPER[i] for i in (0, 3, 6, 10, 13)], False),
        ("six teeth, of which none is an incisor", [UPPER[i] for i in (0, 1, 2, 11, 12, 13)], False),
        ("one side only", UPPER[:7], False),
        ("none", (), False),
    ],
)
def test_too_few_teeth_determine_no_line(sentence, row, found):
    assert (sentence, fitted(middles(mouth(), row)) is not None) == (sentence, found)


def test_it_faces_as_it_is_turned():
    assert LINE.stand(in_frame(0, 42.0)).leftward == pytest.approx((cos(0.1), sin(0.1)), abs=1e-6)
