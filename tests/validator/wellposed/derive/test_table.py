"""The list of all that can be derived: what is in it, from what, and what was refused."""

import json

import pytest
from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, allowed, found, prescription

from wellposed import norms
from wellposed.derive.table import derived, derived_from_widths

WHEELER = dict(
    zip(
        [*UPPER[1:-1], *LOWER[1:-1]],
        (10, 7, 7, 7.5, 6.5, 8.5, 8.5, 6.5, 7.5, 7, 7, 10, 11, 7, 7, 7, 5.5, 5, 5, 5.5, 7, 7, 7, 11),
        strict=True,
    )
)  # means of Nelson, Wheeler's Dental Anatomy


def of_teeth(name, measure, values, unit="mm"):
    return {"id": name, "tooth_measure": measure, "values": values, "unit": unit}


def table(*findings, **sections):
    return {one.name: one for one in derived(prescription(findings=list(findings), **sections))}


def test_nothing_measured_nothing_derived():
    assert derived(prescription()) == ()


def test_tooth_sizes_with_their_norms_and_findings():
    told = table(of_teeth("f1", "tooth-width", WHEELER))
    overall, excess = told["overall-tooth-size-ratio"], told["anterior-lower-tooth-size-excess"]
    assert (round(overall.value, 2), overall.unit, overall.from_) == (91.40, "percent", ("f1",))
    assert overall.usual == pytest.approx((87.48, 95.12))
    assert (round(excess.value, 2), excess.unit, excess.facts["counts_clinically"]) == (0.26, "mm", False)


@pytest.mark.parametrize("wider,counts", [(1.73, False), (1.74, True), (1.75, True)])
def test_an_excess_counts_from_two_millimetres(wider, counts):
    """Lower six of 35 with 1.74 more are 2.0 above 0.772 x 45: Othman and Harradine 2007."""
    told = table(of_teeth("f1", "tooth-width", WHEELER | {"43": 7 + wider}))
    assert told["anterior-lower-tooth-size-excess"].facts["counts_clinically"] is counts


def test_a_refusal_says_which_teeth_and_why():
    told = table(of_teeth("f1", "tooth-width", {**WHEELER, "16": 0}))["overall-tooth-size-ratio"]
    assert (told.value, told.refused) == (None, "teeth-not-fit")
    assert told.facts["teeth"] == [{"tooth": "16", "reason": "width-not-positive"}]


def test_overbite_in_the_other_unit():
    crown = found("f2", "lower-incisor-crown-height", 9)
    told = table(found("f1", "overbite", 3), crown)["overbite"]
    assert (round(told.value), told.unit, told.from_, told.usual) == (33, "percent", ("f1", "f2"), (5, 25))
    told = table(found("f1", "overbite", 50, "percent"), crown)["overbite"]
    assert (told.value, told.unit, told.usual) == (4.5, "mm", (2, 4))
    assert table(found("f1", "overbite", 3))["overbite"].refused == "no-crown-height"


def test_grades_name_their_amount():
    told = table(found("f1", "overjet", 6.1), found("f2", "overbite", -2.5))
    assert told["iotn-overjet-lips-competent"].facts == {"amount": 6.1, "grade": "4a"}
    assert told["iotn-open-bite"].facts == {"amount": 2.5, "grade": "3e"}
    assert not {"iotn-overbite", "par-overbite", "iotn-reverse-overjet"} & told.keys()


def test_a_reverse_overjet_has_its_own_scale():
    told = table(found("f1", "overjet", -1.5))
    assert told["iotn-reverse-overjet"].facts == {"amount": 1.5, "grade": "3b"}
    assert not {"par-overjet", "iotn-overjet-lips-competent"} & told.keys()


def test_midlines_against_each_other():
    widths = of_teeth("f3", "tooth-width", {"31": 5.0, "42": 6.0})
    told = table(found("f1", "upper-midline", 1), found("f2", "lower-midline", -2), widths)
    assert told["abo-midline"].facts == {"amount": 3, "grade": 2}
    assert told["par-centreline"].facts == {"amount": 0.6, "grade": 2}  # of the narrowest, 5 mm


def test_what_is_usual_for_the_patient():
    patient = {"reference": "P-7F3A", "age_years": 45, "sex": "male"}
    told = table(found("f1", "incisor-display-at-rest", 3), patient=patient)["usual-incisor-display-at-rest"]
    assert (told.low, told.high) == pytest.approx((-0.55, 2.45))  # Vig and Brundo 1978: 0.95
    assert told.facts["measured"] == 3
    assert "usual-incisor-display-at-rest" not in table(found("f1", "incisor-display-at-rest", 3))


def test_a_budget_that_is_not_all_stated():
    told = table(found("f1", "lower-crowding", 3), allow=[allowed("a1", "enamel-reduction", arch="lower", unit="mm")])
    budget = told["lower-space-budget"]
    assert (budget.value, budget.refused, budget.facts["unknown"]) == (None, "amount-not-stated", ["enamel-reduction"])
    assert "upper-space-budget" not in told


def test_widths_alone():
    told = {one.name: one.value for one in derived_from_widths(WHEELER)}
    assert (round(told["overall-tooth-size-ratio"], 2), round(told["anterior-tooth-size-ratio"], 2)) == (91.40, 77.78)


EVERYTHING = [
    of_teeth("w", "tooth-width", WHEELER),
    of_teeth("h", "crown-height", {"11": 10.0, "31": 9.0}),
    of_teeth("d", "displacement", dict.fromkeys(WHEELER, 0.0) | {"41": 1.5}),
    of_teeth("r", "rotation", dict.fromkeys(WHEELER, 0.0), "deg"),
    found("o", "overbite", 3),
    found("j", "overjet", 4),
    found("c", "lower-crowding", 3),
    found("i", "interincisal-angle", 131, "deg"),
    found("p", "upper-incisor-to-palatal-plane", 109, "deg"),
    found("l", "lower-incisor-to-mandibular-plane", 93, "deg"),
]


def test_everything_names_known_norms_and_is_plain_data():
    told = derived(prescription(findings=EVERYTHING))
    assert {"lower-irregularity", "palatal-to-mandibular-plane", "crown-width-to-height-11"} <= {
        one.name for one in told
    }
    assert [norms.norm(key).key for one in told for key in one.keys]
    assert len({one.name for one in told}) == len(told)
    plain = [dict(one.facts) for one in told]
    assert json.loads(json.dumps(plain, allow_nan=False)) == plain


def test_irregularity_is_graded_in_the_lower_arch_alone():
    told = table(*EVERYTHING)
    assert (told["lower-irregularity"].value, told["lower-irregularity"].facts["grade"]) == (
        3,
        "minimal",
    )  # Little 1975
    assert told["upper-irregularity"].value == 0
    assert "grade" not in told["upper-irregularity"].facts


def test_an_arch_without_crowding_has_no_grade_of_it():
    assert "lower-crowding" not in table(found("f1", "lower-crowding", 0))
    assert table(found("f1", "lower-crowding", 0.1))["lower-crowding"].facts["grade"] == "mild"  # Mitchell 2006
