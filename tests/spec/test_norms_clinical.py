"""What is usual, what is reached, what asks for help and for waiting: as printed in the sources."""

import math
import re
from pathlib import Path
from typing import get_args

import pytest
from tests.spec.printed import CROWNS, ONE_SPREAD, READ, RECALLED, WIDTHS

from wellposed import norms
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.terms import Sex

ALL = {norm.key: norm for norm in norms.load()}
OURS = ("normal", "achieved", "auxiliary", "mouth")
README = (Path(__file__).parents[2] / "spec" / "norms" / "README.md").read_text("utf-8")


def ends(head):
    return norms.value(f"{head}.least"), norms.value(f"{head}.most")


@pytest.mark.parametrize("key,value", READ.items())
def test_values_are_those_that_were_read(key, value):
    assert (norms.value(key), ALL[key].sure) == (pytest.approx(value, abs=1e-9), "published")


@pytest.mark.parametrize("key,value,grade", [(key, *told) for key, told in RECALLED.items()])
def test_values_are_those_recalled_with_their_grade(key, value, grade):
    assert (norms.value(key), ALL[key].sure) == (value, "from memory")
    assert ALL[key].note.startswith(f"Grade {grade}. ")


@pytest.mark.parametrize("head,teeth,values", [(*crown, values) for crown, values in CROWNS.items()])
def test_crown_tip_and_torque_are_those_of_the_samples(head, teeth, values):
    assert tuple(norms.value(f"normal.{head}.{tooth}") for tooth in teeth) == values


def test_crown_tip_and_torque_are_no_cephalometric_angles():
    """Andrews' torque of 7 plus the 16.2 of Knosel 2007 is near Steiner's 22 to N-A."""
    torque = norms.value("normal.crown-torque.11") + norms.value("normal.torque-below-inclination")
    assert torque == pytest.approx(norms.value("normal.steiner.upper-incisor-to-na"), abs=1.5)
    assert "not cephalometric" in ALL["normal.crown-torque.11"].note


def test_steiner_closes_to_a_straight_angle():
    incisors = norms.family("normal.steiner").values()
    assert sum(incisors) + norms.value("normal.anb-angle.steiner") + norms.value("normal.interincisal.steiner") == 180


@pytest.mark.parametrize("interincisal,older,total", [("eastman", "", 364), ("eastman-older", "-older", 360)])
def test_only_the_older_eastman_means_close_to_a_full_turn(interincisal, older, total):
    incisors = ("upper-incisor-to-palatal-plane", "lower-incisor-to-mandibular-plane")
    angles = [norms.value(f"normal.{name}.eastman{older}") for name in incisors]
    planes = norms.value("normal.palatal-to-mandibular-plane.eastman")
    assert sum(angles) + planes + norms.value(f"normal.interincisal.{interincisal}") == total


@pytest.mark.parametrize("head,mean,spread", [(head, *told) for head, told in ONE_SPREAD.items()])
def test_a_usual_angle_lies_one_spread_about_its_mean(head, mean, spread):
    assert ends(head) == (mean - spread, mean + spread)


@pytest.mark.parametrize("school", ["steiner", "downs", "ricketts", "eastman", "eastman-older"])
def test_the_usual_interincisal_angle_holds_the_mean_of_every_school(school):
    least, most = ends("normal.interincisal")
    assert least <= norms.value(f"normal.interincisal.{school}") <= most


def test_riedel_printed_two_means():
    assert ends("normal.upper-incisor-to-sella-nasion") == (103 - 6, 104 + 6)


@pytest.mark.parametrize(
    "measure,sex,told", [(m, sex, told) for m, sexes in WIDTHS.items() for sex, told in sexes.items()]
)
def test_usual_widths_lie_one_spread_beyond_the_means(measure, sex, told):
    least, most, spread = told
    assert ends(f"normal.{measure}.{sex}-mean") == (least, most)
    assert ends(f"normal.{measure}.{sex}") == (least - spread, most + spread)


def test_mens_lip_line_lies_lower_than_womens():
    head, lower = "normal.gingival-display-on-smiling", 1.5  # Peck 1992
    assert ends(f"{head}.male") == tuple(end - lower for end in ends(f"{head}.female"))


def test_sexes_are_those_of_the_format():
    words = {part for key in ALL for part in key.split(".") if re.fullmatch(r"(fe)?male|(wo)?men|girls|boys", part)}
    assert words == set(get_args(Sex))


def test_display_is_known_for_every_age():
    bands = norms.family("normal.display-from-age")
    assert bands.keys() == norms.family("normal.incisor-display-at-rest.by-age").keys()
    assert list(bands.values()) == [0, 30, 40, 50, 60]  # Vig and Brundo 1978


def test_display_falls_with_age_and_below_the_low_mark_at_forty():
    means = list(norms.family("normal.incisor-display-at-rest.by-age").values())
    assert means == sorted(means, reverse=True)
    falls = norms.value("normal.age.display-falls")
    bands = norms.family("normal.display-from-age")
    below = [age for band, age in bands.items() if norms.value(f"normal.incisor-display-at-rest.by-age.{band}") < 1]
    assert (min(below), norms.value("normal.incisor-display-at-rest.low")) == (falls, 1)


def test_studies_of_display_differ_by_less_than_what_is_called_usual():
    head = "normal.incisor-display-at-rest"
    sexes = norms.family(f"{head}.by-sex")
    apart = [abs(norms.value(f"{head}.da-motta.{sex}.youngest") - mean) for sex, mean in sexes.items()]
    assert max(apart) <= norms.value(f"{head}.either-side")


def test_a_class_i_relation_is_nearer_to_class_i_than_to_half_a_unit():
    full, half, one = (norms.value(f"normal.relation.{name}") for name in ("full-unit", "half-unit", "class-i"))
    premolar = norms.value("tooth-width.14")  # Wheeler: 7.0
    assert (full, half, one) == (premolar, premolar / 2, premolar / 4)


def test_shares_reached_are_those_of_the_amounts():
    done = {"first": 1.25 / 2.17, "second": 1.41 / 2.66}  # Prog Orthod 2023
    assert {molar: norms.value(f"achieved.molar-distal.{molar}") for molar in done} == {
        molar: round(100 * share) for molar, share in done.items()
    }
    assert norms.value("achieved.large-step") == pytest.approx(100 * 1.11 / 2.0, abs=0.6)  # PMC3424837


@pytest.mark.parametrize("key", [key for key in ALL if key.startswith("achieved.") and ALL[key].unit == "percent"])
def test_a_share_reached_is_a_share(key):
    assert 0 < ALL[key].value < 100


def test_what_reviews_call_poorly_reached_lies_below_the_mark():
    poor = norms.value("achieved.poor")
    named = ("extrusion.incisors", "rotation.upper-canine", "rotation.lower-canine", "transverse")
    assert all(norms.value(f"achieved.{name}") < poor for name in named)
    assert all(norms.value(f"achieved.{name}") > poor for name in ("tip.all", "torque.all", "molar-mesial", "all"))


@pytest.mark.parametrize(
    "key,low,high",
    [
        ("achieved.rotation.upper-canine", 27.2, 69.5),  # Koletsi 2021
        ("achieved.rotation.lower-incisors", 58.9, 82.5),
        ("normal.interincisal.downs", 130, 150.5),  # Downs 1948
        ("normal.lower-incisor-to-mandibular-plane.downs", 90 - 8.5, 90 + 5),
        ("normal.lower-incisor-to-mandibular-plane.tweed", 85, 95),  # Tweed 1954
        ("normal.sna-angle.downs", 78, 84),
        ("normal.snb-angle.downs", 75, 81),
        ("auxiliary.rotation.canines", 10, 15),  # texts
        ("auxiliary.widening-per-side", 2, 3),
        ("caution.overbite-change", 3, 4),
        ("step.per-month", 0.5, 1.5),  # Proffit
    ],
)
def test_ranges_are_those_printed(key, low, high):
    assert (ALL[key].low, ALL[key].high) == (low, high)


@pytest.mark.parametrize(
    "key,spread",
    [
        ("normal.interincisal.downs", 5.8),
        ("normal.interincisal.eastman", 10),
        ("normal.midline.beyer", 1.5),
        ("normal.torque-below-inclination", 5.3),
        ("achieved.molar-distal", 9.1),
        ("achieved.reduction-short.upper", 0.67),
        ("achieved.reduction-short.lower", 0.84),
    ],
)
def test_spreads_are_those_printed(key, spread):
    assert ALL[key].spread == spread


def test_tipping_a_molar_so_far_asks_for_root_control():
    """2 mm is 9 deg and 3 mm 14 deg of a first molar about its centre of resistance, 12 to 13 mm up."""
    per_side = ALL["auxiliary.widening-per-side"]
    degrees = [math.degrees(per_side.low / 12.5), math.degrees(per_side.high / 12.5)]
    assert degrees == [pytest.approx(9, abs=0.5), pytest.approx(14, abs=0.5)]


def test_inclination_of_the_lower_incisor_is_asked_about_in_three_steps():
    steps = list(norms.family("caution.lower-incisor-to-mandibular-plane").values())
    assert steps == [95, 99, 105]


@pytest.mark.parametrize(
    "key,index",
    [
        ("caution.lower-incisor-to-mandibular-plane.warn", "abo-lower-incisor"),
        ("normal.sella-nasion-to-mandibular-plane.least", "abo-mandibular-plane-low"),
        ("normal.sella-nasion-to-mandibular-plane.most", "abo-mandibular-plane-high"),
    ],
)
def test_a_scoring_line_is_that_of_its_index(key, index):
    lines = [norm.value for norm in ALL.values() if norm.key.startswith(f"index.{index}")]
    assert norms.value(key) in lines


@pytest.mark.parametrize("key", [key for key in ALL if key.startswith(OURS)])
def test_a_norm_that_a_note_names_is_there(key):
    named = re.findall(r"\b(?:normal|achieved|auxiliary|mouth|caution|practice)(?:\.[a-z-]+[a-z])+", ALL[key].note)
    assert all(name in ALL or any(other.startswith(f"{name}.") for other in ALL) for name in named)


SCHOOL_NAMES = {
    "normal.interincisal.least": (
        "steiner",
        "downs",
        "ricketts",
        "eastman",
        "black-american",
        "southern-chinese",
        "japanese",
    ),
    "normal.overbite.least": ("us-survey", "lay"),
    "normal.overbite-percent.least": ("adults", "ghafari", "uk"),
    "normal.lower-incisor-to-mandibular-plane.least": (
        "eastman",
        "tweed",
        "downs",
        "black-american",
        "southern-chinese",
    ),
    "normal.sna-angle.least": ("steiner", "downs"),
    "normal.gingival-display-on-smiling.excess": ("peck", "kokich-orthodontists", "kokich-laypeople", "mahn"),
    "normal.midline": ("beyer", "parrini", "kokich"),
    "normal.overjet.least": ("us-survey",),
    "achieved.rotation.all": ("review",),
    "achieved.molar-distal": ("rossini", "first", "second"),
    "achieved.transverse": ("mixed-dentition",),
}


@pytest.mark.parametrize("default,schools", SCHOOL_NAMES.items())
def test_a_default_names_every_school_and_says_why(default, schools):
    head = default.removesuffix(".least").removesuffix(".all")
    assert all(f"{head}.{school}" in ALL[default].note for school in schools)
    assert "default" in ALL[default].note


def test_the_angles_are_measures_of_the_format():
    of_schools = {
        key.split(".")[1]
        for key in ALL
        if key.startswith("normal.") and key.endswith((".eastman", ".tweed", ".riedel"))
    }
    assert of_schools - {"interincisal", "lower-face-height"} <= MEASURE_KINDS.keys()


@pytest.mark.parametrize(
    "least,most",
    [
        ("auxiliary.extrusion.any", "auxiliary.extrusion.hard"),
        ("auxiliary.extrusion.hard", "practice.extrusion"),
        ("auxiliary.rotation.canines", "practice.rotation"),
        ("auxiliary.rotation.premolars", "practice.rotation"),
        ("auxiliary.tip", "practice.tip"),
        ("auxiliary.torque", "practice.torque.canines"),
        ("mouth.pocket-depth.bleeding", "mouth.pocket-depth.any"),
        ("mouth.wait.minor-injury", "mouth.wait.severe-injury.least"),
        ("step.wear-hours.least", "step.wear-hours.most"),
        ("caution.reduction-per-surface.strictest", "caution.reduction-per-surface.front"),
        ("caution.reduction-per-surface.back", "practice.reduction-per-surface.any"),
    ],
)
def test_help_is_asked_for_before_the_limit(least, most):
    assert norms.value(least) < norms.value(most)


def test_what_a_profile_may_change_is_what_the_readme_says():
    section = README.partition("## Practice profiles")[2].partition("```")[0]
    for head in re.findall(r"`([a-z-]+)\.`", section):
        key = next(key for key in ALL if key.startswith(f"{head}."))
        assert norms.with_profile(f'name = "A"\n[limits]\n"{key}" = 1\n'.encode()).value(key) == 1
    assert len(re.findall(r"`[a-z-]+\.`", section)) == 10
