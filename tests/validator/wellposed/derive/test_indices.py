"""Published cut-offs: each grade at its boundary, as printed."""

import pytest

from wellposed import norms
from wellposed.derive.indices import GROWING, SCALES, grade, keys

# Brook and Shaw 1989, dental health component.
IOTN = [
    ("iotn-overjet-lips-competent", {0: 1, 3.5: 1, 3.51: "2a", 3.6: "2a", 6.0: "2a", 6.1: "4a", 9.0: "4a", 9.1: "5a"}),
    ("iotn-overjet-lips-incompetent", {3.5: 1, 3.6: "3a", 6.0: "3a", 6.1: "4a", 9.0: "4a", 9.1: "5a"}),
    ("iotn-reverse-overjet", {0: 1, 0.1: "2b", 1.0: "2b", 1.1: "3b", 3.5: "3b", 3.6: "4b"}),
    ("iotn-reverse-overjet-with-trouble", {0: 1, 1.0: "2b", 1.1: "4m", 3.5: "4m", 3.6: "5m"}),
    ("iotn-overbite", {3.4: 1, 3.49: 1, 3.5: "2f", 8.0: "2f"}),
    ("iotn-open-bite", {1.0: 1, 1.1: "2e", 2.0: "2e", 2.1: "3e", 4.0: "3e", 4.1: "4e"}),
    ("iotn-contact-displacement", {0.9: 1, 1.1: "2d", 2.0: "2d", 2.1: "3d", 4.0: "3d", 4.1: "4d"}),
    ("iotn-crossbite-shift", {0: 1, 0.5: "2c", 1.0: "2c", 1.1: "3c", 2.0: "3c", 2.1: "4c"}),
]
# Richmond et al. 1992.
PAR = [
    ("par-contact-displacement", {0: 0, 1.0: 0, 1.1: 1, 2.0: 1, 2.1: 2, 4.0: 2, 4.1: 3, 8.0: 3, 8.1: 4}),
    ("par-overjet", {0: 0, 3.0: 0, 3.1: 1, 5.0: 1, 5.1: 2, 7.0: 2, 7.1: 3, 9.0: 3, 9.1: 4}),
    ("par-overbite", {3 / 9: 0, 3.1 / 9: 1, 6 / 9: 1, 6.1 / 9: 2, 8.9 / 9: 2, 9 / 9: 3, 1.2: 3}),
    ("par-open-bite", {0: 0, 0.5: 1, 1.0: 1, 1.1: 2, 2.0: 2, 2.1: 3, 3.0: 3, 4.0: 4}),
    ("par-centreline", {0: 0, 0.25: 0, 0.26: 1, 0.5: 1, 0.51: 2}),
]
# American Board of Orthodontics, Discrepancy Index.
ABO = [
    ("abo-overjet", {0: 1, 1.0: 0, 3.0: 0, 3.1: 2, 5.0: 2, 5.1: 3, 7.0: 3, 7.1: 4, 9.0: 4, 9.1: 5}),
    ("abo-overbite", {0: 0, 3.0: 0, 3.1: 2, 5.0: 2, 5.1: 3, 7.0: 3, 7.1: "not-scored"}),
    ("abo-crowding", {0.9: 0, 1.0: 1, 3.0: 1, 3.1: 2, 5.0: 2, 5.1: 4, 7.0: 4, 7.1: 7}),
    ("abo-midline", {2.9: 0, 3.0: 2, 5.0: 2}),
    ("abo-lower-incisor", {98: 0, 99: 1, 99.9: 1, 100: 2, 103: 5}),
    ("abo-mandibular-plane-high", {37: 0, 38: 2, 39: 4, 40: 6}),
    ("abo-mandibular-plane-low", {27: 0, 26: 1, 25: 2, 23: 4}),
    ("abo-anb-high", {5.9: 0, 6: 4, 7: 5}),
    ("abo-anb-low", {-1.9: 0, -2: 4, -4: 6}),
]
OTHERS = [
    # Little 1975: 0 perfect, 1 to 3 minimal, 4 to 6 moderate, 7 to 9 severe, 10 very severe.
    (
        "irregularity",
        {0: "perfect", 1: "minimal", 3: "minimal", 4: "moderate", 6: "moderate", 7: "severe", 9: "severe"}
        | {10: "very-severe"},
    ),
    # Mitchell 2006: under 4 mild, 4 to 8 moderate, over 8 severe.
    ("crowding", {0: "mild", 3.9: "mild", 4: "moderate", 8: "moderate", 8.1: "severe"}),
]
TABLE = [(scale, amount, told) for scale, rows in IOTN + PAR + ABO + OTHERS for amount, told in rows.items()]


@pytest.mark.parametrize("scale,amount,told", TABLE)
def test_a_grade_is_the_published_one(scale, amount, told):
    assert grade(scale, amount) == told


def test_every_scale_is_tried_above():
    assert {scale for scale, *_ in TABLE} == {*SCALES, *GROWING}


@pytest.mark.parametrize("scale", [*SCALES, *GROWING])
def test_a_scale_names_the_norms_it_uses(scale):
    assert all(norms.norm(key).sources for key in keys(scale))


def test_arithmetic_does_not_tip_a_boundary():
    assert grade("iotn-overjet-lips-competent", 1.2 + 2.3) == grade("iotn-overjet-lips-competent", 3.5) == 1
    assert grade("abo-crowding", 0.1 + 0.2 + 2.7) == 1  # 3.0000000000000004 in binary


def test_a_size_is_never_negative():
    with pytest.raises(ValueError, match="size"):
        grade("iotn-open-bite", -2.0)


def test_an_unknown_scale_is_none():
    with pytest.raises(KeyError):
        grade("overjet", 2.0)
