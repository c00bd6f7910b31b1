"""The numbers are those of their sources, each has one, and none claims more than it knows."""

import math
import re
import tomllib
from itertools import pairwise
from pathlib import Path

import pytest

from wellposed import norms
from wellposed.norms import book
from wellposed.norms.entry import GRADES
from wellposed.review.rules import RULES as OF_SETUPS
from wellposed.rules import RULES, USUAL
from wellposed.vocabulary.measures import MEASURE_KINDS, SIZES, TOOTH_MEASURE_KINDS, allowed_units
from wellposed.vocabulary.teeth import PRIMARY_TEETH, TEETH

FOLDER = Path(__file__).parents[2] / "spec" / "norms"
README = (FOLDER / "README.md").read_text("utf-8")
ALL = {norm.key: norm for norm in norms.load()}

UPPER = ("11", "12", "13", "14", "15", "16", "17", "18")
LOWER = ("41", "42", "43", "44", "45", "46", "47", "48")
UPPER_PRIMARY = ("51", "52", "53", "54", "55")
LOWER_PRIMARY = ("81", "82", "83", "84", "85")
INCISORS = ("11", "12", "41", "42")

# Wheeler's Dental Anatomy, Physiology and Occlusion: mesiodistal widths; crown height and root length.
WIDTHS = {
    UPPER: (8.5, 6.5, 7.5, 7.0, 7.0, 10.0, 9.0, 8.5),
    LOWER: (5.0, 5.5, 7.0, 7.0, 7.0, 11.0, 10.5, 10.0),
    UPPER_PRIMARY: (6.5, 5.1, 7.0, 7.3, 8.2),
    LOWER_PRIMARY: (4.2, 4.1, 5.0, 7.7, 9.9),
}
CROWN_AND_ROOT = {
    "11": (10.5, 13.0),
    "12": (9.0, 13.0),
    "13": (10.0, 17.0),
    "14": (8.5, 14.0),
    "15": (8.5, 14.0),
    "16": (7.5, 12.5),
    "17": (7.0, 11.5),
    "41": (9.0, 12.5),
    "42": (9.5, 14.0),
    "43": (11.0, 16.0),
    "44": (8.5, 14.0),
    "45": (8.0, 14.5),
    "46": (7.5, 14.0),
    "47": (7.0, 13.0),
}

# key: value, as printed in the source its entry names
PUBLISHED = {
    "practice.reduction-per-contact.lower-incisors": 0.5,  # Sarig 2015: anterior
    "practice.reduction-per-contact.premolars": 1.0,  # Sarig 2015: posterior
    "practice.intrusion.upper-posterior": 3.29,  # Omidkhoda 2023: bone plates, pooled
    "practice.distal.upper-molars": 4.2,  # Angle Orthod 2020;90:362
    "practice.widening.upper": 5.0,  # Korean J Orthod 2025;55:85: planned, at most
    "practice.retraction.lower-incisors": 5.0,  # Halwai 2019
    "practice.midline": 4.0,  # Camci 2017
    "step.rotation.premolars": 1.2,  # Cortona 2020
    "caution.intrusion.upper-incisors": 1.88,  # Ng 2005: end of the range of all studies
    "caution.intrusion.lower-incisors": 2.84,  # Ng 2005
    "kinematics.room-per-tip": 0.012,  # Jain 2017
}

RECALLED = {
    "practice.reduction-per-contact.upper-front": 0.3 + 0.3,  # Fillion: incisors
    "practice.reduction-per-contact.canine-premolar": 0.3 + 0.6,  # Fillion: lower canine distal, premolar
    "practice.reduction-in-all.lower": 8 * 0.8 + 5 * 0.5,  # Sheridan 1985
    "practice.reduction-in-all.upper": 2 * (0.3 * 5 + 0.6 * 6),  # Fillion: 1 1 2 2 3 / 3 4 4 5 5 6
    "caution.reduction-in-all.back": 8 * 0.8,  # Sheridan 1985
    "caution.reduction-per-contact.lower-incisors": 2 * 0.2,  # Hudson 1956
}


@pytest.mark.parametrize("teeth,widths", WIDTHS.items(), ids=["upper", "lower", "upper primary", "lower primary"])
def test_widths_are_those_of_the_textbook(teeth, widths):
    assert tuple(norms.value(f"tooth-width.{tooth}") for tooth in teeth) == widths


def test_every_tooth_has_a_width():
    assert norms.family("tooth-width").keys() == set(TEETH)


def test_lengths_are_crown_and_root_of_the_textbook():
    expected = {tooth: crown + root for tooth, (crown, root) in CROWN_AND_ROOT.items()}
    assert {tooth: norms.value(f"tooth-length.{tooth}") for tooth in CROWN_AND_ROOT} == expected


def test_every_tooth_whose_root_is_limited_has_a_length():
    front = {f"{quadrant}{position}" for quadrant in "1234" for position in "123"}
    assert front <= norms.family("tooth-length").keys()
    assert not norms.family("tooth-length").keys() & set(PRIMARY_TEETH)


@pytest.mark.parametrize("arch,teeth", [("upper", UPPER[:7]), ("lower", LOWER[:7])])
def test_full_length_is_the_sum_of_fourteen_widths(arch, teeth):
    widths = norms.family("tooth-width")
    assert norms.value(f"arch.full-length.{arch}") == 2 * sum(widths[tooth] for tooth in teeth)


def test_the_curve_reaches_its_depth():
    assert norms.value("arch.curve-factor") == pytest.approx(4 ** norms.value("arch.curve-exponent"), abs=5e-5)


@pytest.mark.parametrize("key,value", (PUBLISHED | RECALLED).items())
def test_values_are_those_of_the_source(key, value):
    assert norms.value(key) == pytest.approx(value, abs=1e-9)


@pytest.mark.parametrize("key", PUBLISHED)
def test_what_was_read_says_so(key):
    assert ALL[key].sure == "published"


def test_out_per_torque_is_that_of_a_long_incisor_turned_about_its_apex():
    longest = max(norms.value(f"tooth-length.{tooth}") for tooth in INCISORS) + 2  # roots differ by 2 mm
    assert norms.value("kinematics.out-per-torque") == pytest.approx(math.radians(longest), abs=0.01)


def test_torque_per_advance_is_that_of_a_short_incisor_turned_about_its_centre_of_resistance():
    crowns_and_roots = [CROWN_AND_ROOT[tooth] for tooth in INCISORS]
    arms = [crown + 1.5 + 0.4 * (root - 1.5) for crown, root in crowns_and_roots]  # crest 1.5 mm down
    per_mm = [math.degrees(1 / arm) for arm in arms]
    assert (min(per_mm), max(per_mm)) == (pytest.approx(3.5, abs=0.1), pytest.approx(3.9, abs=0.1))
    assert norms.value("kinematics.torque-per-advance") == math.ceil(max(per_mm))


def test_the_least_hinge_is_no_more_than_was_measured():
    measured = 3.17 / (1.63 + 1.30)  # Weiland 1996: overbite over molar extrusion
    assert norms.value("kinematics.hinge.least") < measured < norms.value("kinematics.hinge.most")


def test_published_treatments_stay_within_practice():
    apex = -3.8 + math.radians(17) * norms.value("tooth-length.11")  # Varlik 2013: 3.8 mm back, 17 deg
    assert apex < norms.value("practice.apex-travel.incisors")
    assert norms.value("practice.intrusion.lower-incisors") == 2.6 + 1.4  # Varlik 2013: mean and SD
    assert norms.value("practice.intrusion.upper-incisors") >= 1.88 + 0.78  # Ng 2005, and screws
    assert norms.value("practice.extrusion") > 1.63  # Weiland 1996: upper molars


@pytest.mark.parametrize("key", [key for key in ALL if key.startswith("caution.")])
def test_a_caution_never_comes_after_the_limit(key):
    limit = ALL.get(key.replace("caution.", "practice.", 1))
    assert limit is None or ALL[key].value < limit.value


def test_every_contact_with_a_limit_has_a_caution():
    contacts = "reduction-per-contact"
    assert norms.family(f"practice.{contacts}").keys() == norms.family(f"caution.{contacts}").keys()


def test_every_source_is_resolved_and_every_reference_used():
    by_rules = {source for rule in (*RULES, *OF_SETUPS) for source in rule.sources}
    assert {source for norm in ALL.values() for source in norm.sources} | by_rules == book.references().keys()


def test_references_stand_in_order():
    names = list(tomllib.loads((FOLDER / "sources.toml").read_text("utf-8")))
    assert all(a < b for a, b in pairwise(names))


@pytest.mark.parametrize("key", ALL)
def test_a_norm_is_as_sure_as_it_says(key):
    norm = ALL[key]
    assert bool(norm.sources) == (norm.sure != "common practice")
    assert norm.note.startswith(GRADES) == (norm.sure == "from memory")


@pytest.mark.parametrize("key", ALL)
def test_a_key_is_plain_and_a_value_lies_in_its_range(key):
    norm = ALL[key]
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*(\.([a-z]+(-[a-z]+)*|\d\d))+", key)
    assert (norm.value if norm.low is None else norm.low) <= norm.value
    assert norm.value <= (norm.value if norm.high is None else norm.high)


@pytest.mark.parametrize("measure", MEASURE_KINDS | TOOTH_MEASURE_KINDS)
def test_every_measure_has_a_plausible_range_in_each_of_its_units(measure):
    for unit in allowed_units(measure):
        least, most = (ALL[f"plausible.{unit}.{measure}.{end}"] for end in ("least", "most"))
        assert least.value < most.value
        assert (least.unit, most.unit) == (unit, unit)


@pytest.mark.parametrize("measure", sorted(SIZES))
def test_a_size_is_never_plausibly_negative(measure):
    assert ALL[f"plausible.mm.{measure}.least"].value >= 0


def test_no_plausible_range_is_of_an_unknown_measure():
    measures = {key.split(".")[2] for key in ALL if key.startswith("plausible.")}
    assert measures == (MEASURE_KINDS | TOOTH_MEASURE_KINDS).keys()


@pytest.mark.parametrize("measure,severe", [("overjet", 15), ("overjet", 12), ("lower-midline", -4), ("overbite", 9)])
def test_severe_mouths_that_were_treated_are_plausible(measure, severe):
    within = (norms.value(f"plausible.mm.{measure}.{end}") for end in ("least", "most"))
    assert next(within) < severe < next(within)


def test_average_teeth_are_plausible():
    least, most = (norms.value(f"plausible.mm.tooth-width.{end}") for end in ("least", "most"))
    assert all(least < width < most for width in norms.family("tooth-width").values())


def test_the_readme_names_every_file():
    files = {path.name for path in FOLDER.glob("*.toml")}
    assert files == set(re.findall(r"^\| `([a-z-]+\.toml)`", README, re.M))


def test_the_examples_of_the_readme_hold():
    single, several, profile = re.findall(r"```toml\n(.*?)```", README, re.S)
    assert single in (FOLDER / "kinematics.toml").read_text("utf-8")
    for name, ends in tomllib.loads(several)["family"][0]["values"].items():
        assert ends == [ALL[f"plausible.mm.{name}.{end}"].value for end in ("least", "most")]
    assert len(norms.with_profile(profile.encode(), USUAL).changes) == 3
