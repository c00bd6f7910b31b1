"""Crowns tipped over roots that stay, and incisors that end proclined or upright: below, at and above."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, must
from tests.validator.wellposed.consistency.ordinary import found as finding
from tests.validator.wellposed.review.rules.held import Case, found, moved, pointers, table

TIPPED, WIDENED = "crown-moved-without-root", "widened-by-tipping"
ASK, FAR, TORQUED = "plan-proclines-lower-incisors", "plan-proclines-lower-incisors-far", "lower-incisors-torqued-far"
UPRIGHT = "plan-leaves-upper-incisors-upright"
BOTH = ("/movements/0",)
SOUND_GUMS, THIN = {"conditions": []}, {"conditions": [{"condition": "thin-gingiva"}]}


def tipped(tooth, travel, angle, variable="out", turning="torque"):
    return {"movements": moved(**{variable: {tooth: travel}, turning: {tooth: angle}})}


def ends(present, torque, **order):
    """Both lower centrals torqued from a measured inclination."""
    angle = finding("f1", "lower-incisor-to-mandibular-plane", present, "deg")
    return {"prescription": {"findings": [angle], **order}, "movements": moved(torque=(torque, "41", "31"))}


def uprighted(present, torque, plane="palatal-plane"):
    """Both upper centrals torqued from a measured inclination."""
    angle = finding("f1", f"upper-incisor-to-{plane}", present, "deg")
    return {"prescription": {"findings": [angle]}, "movements": moved(torque=(torque, "11", "21"))}


def at(tooth):
    return (f"/movements/0/values/{tooth}",)


def opened(use="movement", section="allow", **said):
    """A prescription with one clause that opens something of 11."""
    bounds = {"allow": allowed("a1", use, unit="deg", **said), "movements": must("m1", unit="deg", **said)}
    return {"prescription": {section: [bounds[section]]}}


ADVANCE = allowed("a1", "incisor-advance", arch="upper", up_to=2, unit="mm")
RETRACTION = allowed("a1", "incisor-retraction", arch="upper", up_to=2, unit="mm")
CASES = (
    # Texts ask for help from 1 mm of crown and root together and 5 deg of root; 11 is 23.5 mm long (Nelson), so that
    # its root's end goes 0.4102 mm for a degree: with 2 mm of travel it stays behind from 4.88 deg on.
    Case(TIPPED, "1 mm", tipped("11", 1, 6)),
    Case(TIPPED, "a little more", tipped("11", 1.01, 6), at("11")),
    Case(TIPPED, "5 deg", tipped("11", 2, 5)),
    Case(TIPPED, "a little more than 5 deg", tipped("11", 2, 5.01), at("11")),
    Case(TIPPED, "drawn back", tipped("11", -2, -5.01), at("11")),
    # 3 mm less 0.4102 mm for a degree: 0.11 mm are left at 7.05 deg, 0.09 at 7.1.
    Case(TIPPED, "the root comes along a little", tipped("11", 3, 7.05)),
    Case(TIPPED, "by no more than the tolerance", tipped("11", 3, 7.1), at("11")),
    Case(TIPPED, "torqued against the travel", tipped("11", 3, -8)),
    Case(TIPPED, "without any torque", {"movements": moved(out={"11": 3})}),
    # 13 is 27 mm long: 0.4712 mm for a degree, 4.24 deg for 2 mm.
    Case(TIPPED, "a canine tipped back along the arch", tipped("13", -2, -6, "along", "tip"), at("13")),
    Case(TIPPED, "a canine upright along the arch", tipped("13", -2, -3, "along", "tip")),
    Case(TIPPED, "a molar drawn in", tipped("16", -2, -6), at("16")),
    Case(TIPPED, "a molar outward is told elsewhere", tipped("16", 2, 9)),
    Case(TIPPED, "a third molar has no length", tipped("18", 2, 9)),
    Case(TIPPED, "four incisors are one finding", {"movements": moved(out=(-3, "12", "11", "21", "22"),
         torque=(-9, "12", "11", "21", "22"))}, BOTH),
    # What the prescription names is asked for; the tolerance of the review for angles is 1 deg. An advance comes with
    # up to 4 deg of torque for each mm (semantics).
    Case(TIPPED, "torque ordered", {**tipped("11", 2, 8), **opened(section="movements", teeth=["11"],
         motion="labial-crown-torque", at_least=6, at_most=8)}),
    Case(TIPPED, "torque ordered, and as much as the tolerance more", {**tipped("11", 2, 9), **opened(
         section="movements", teeth=["11"], motion="labial-crown-torque", at_least=6, at_most=8)}),
    Case(TIPPED, "torque ordered, and more", {**tipped("11", 2, 9.01), **opened(section="movements", teeth=["11"],
         motion="labial-crown-torque", at_least=6, at_most=8)}, at("11")),
    Case(TIPPED, "torque allowed", {**tipped("11", 2, 8), **opened(teeth=["11"], motion="lingual-root-torque",
         up_to=8)}),
    Case(TIPPED, "torque of another tooth allowed", {**tipped("11", 2, 8), **opened(teeth=["12"],
         motion="labial-crown-torque", up_to=8)}, at("11")),
    Case(TIPPED, "torque allowed the other way", {**tipped("11", 2, 8), **opened(teeth=["11"],
         motion="labial-root-torque", up_to=8)}, at("11")),
    Case(TIPPED, "an advance tips incisors", {**tipped("11", 2, 8), "prescription": {"allow": [ADVANCE]}}),
    Case(TIPPED, "an advance does not tip them so far", {**tipped("11", 2, 9.01), "prescription": {"allow": [ADVANCE]}},
         at("11")),
    Case(TIPPED, "nor where less of it is used: 1.5 mm, 6 deg", {**tipped("11", 1.5, 7.01), "prescription": {
         "allow": [ADVANCE]}}, at("11")),
    Case(TIPPED, "where less of it is used, within its share", {**tipped("11", 1.5, 6.9), "prescription": {
         "allow": [ADVANCE]}}),
    Case(TIPPED, "a retraction says nothing of torque", {**tipped("11", -2, -8), "prescription": {
         "allow": [RETRACTION]}}, at("11")),
    Case(TIPPED, "left to the laboratory", {**tipped("11", 2, 8), "prescription": {"allow": [
         {"id": "a1", "use": "laboratory-choice", "teeth": ["11"]}]}}, at("11")),
    # 16 is 20 mm long: 0.3491 mm for a degree, 5.73 deg for 2 mm.
    Case(WIDENED, "the root stays", tipped("16", 2, 5.8), at("16")),
    Case(WIDENED, "the root comes along", tipped("16", 2, 5.4)),
    Case(WIDENED, "5 deg", tipped("36", 1.5, 5)),
    Case(WIDENED, "a little more than 5 deg", tipped("36", 1.5, 5.01), at("36")),
    Case(WIDENED, "1 mm", tipped("15", 1, 9)),
    Case(WIDENED, "a little more than 1 mm", tipped("15", 1.01, 9), at("15")),
    Case(WIDENED, "the root torqued outward", tipped("16", 2, -3)),
    Case(WIDENED, "torque allowed by name", {**tipped("16", 2, 8), **opened(teeth=["16"],
         motion="buccal-crown-torque", up_to=8)}),
    Case(WIDENED, "a canine is told elsewhere", tipped("13", 2, 9)),
    # Yared et al. 2006: 95 over thin gums; a published index scores from 99; common practice: 105.
    Case(ASK, "95", ends(90, 5)),
    Case(ASK, "a little more, gums not described", ends(90, 5.01), BOTH),
    Case(ASK, "a little more, gums thin", ends(90, 5.01, **THIN), BOTH),
    Case(ASK, "a little more, gums sound", ends(90, 5.01, **SOUND_GUMS)),
    Case(ASK, "below 99, gums sound", ends(90, 8.99, **SOUND_GUMS)),
    Case(ASK, "99, gums sound", ends(90, 9, **SOUND_GUMS), BOTH),
    Case(ASK, "105", ends(100, 5, **SOUND_GUMS), BOTH),
    Case(ASK, "more is told elsewhere", ends(100, 5.01)),
    Case(ASK, "drawn back", ends(110, -5)),
    Case(ASK, "not measured", {"movements": moved(torque=(9, "41", "31"))}),
    Case(ASK, "one central alone counts half: 94.99", {**ends(90, 1), "movements": moved(torque={"41": 9.98})}),
    Case(ASK, "one central alone counts half: 95.01", {**ends(90, 1),
         "movements": moved(torque={"41": 10.02})}, at("41")),
    Case(FAR, "105", ends(100, 5)),
    Case(FAR, "a little more", ends(100, 5.01), BOTH),
    Case(FAR, "drawn back from further", ends(110, -2)),
    # Artun and Krogstad 1987: 10 deg.
    # Eastman's 109 to the palatal plane less its spread of 6; Riedel's 103 to sella and nasion less 6.
    Case(UPRIGHT, "103", uprighted(109, -6)),
    Case(UPRIGHT, "a little less", uprighted(109, -6.01), BOTH),
    Case(UPRIGHT, "upright, and more so", uprighted(100, -1), BOTH),
    Case(UPRIGHT, "upright, and better", uprighted(95, 5)),
    Case(UPRIGHT, "97 to sella and nasion", uprighted(103, -6, "sella-nasion")),
    Case(UPRIGHT, "a little less", uprighted(103, -6.01, "sella-nasion"), BOTH),
    Case(UPRIGHT, "not measured", {"movements": moved(torque=(-14, "11", "21"))}),
    Case(TORQUED, "10 deg", {"movements": moved(torque=(10, "41", "31"))}),
    Case(TORQUED, "a little more", {"movements": moved(torque=(10.01, "41", "31"))}, BOTH),
    Case(TORQUED, "a lateral alone", {"movements": moved(torque={"32": 10.01})}, at("32")),
    Case(TORQUED, "drawn back", {"movements": moved(torque=(-12, "41", "31"))}),
    Case(TORQUED, "upper incisors", {"movements": moved(torque=(12, "11", "21"))}),
)  # fmt: skip


@pytest.mark.parametrize("case", **table(*CASES))
def test_it_speaks_where_it_should_and_nowhere_else(case):
    assert pointers(case) == case.pointers


def test_the_way_of_the_root_is_that_of_a_tooth_of_average_length():
    (told,) = found(Case(TIPPED, "", tipped("11", -3, -10)))
    assert (told.facts["motion"], told.facts["travel"], told.facts["angle"]) == ("palatal", 3, 10)
    assert told.facts["apex"] == pytest.approx(10 * 0.41015 - 3, abs=1e-3)
