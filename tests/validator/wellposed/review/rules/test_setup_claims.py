"""What the setup predicts beside what its movements give."""

import pytest
from tests.validator.wellposed.review.rules.held import Case, found, pointers, table

DIFFERS = "prediction-differs"


def predicted(measure, value, computed, unit="mm"):
    """A prediction, and what the movements give."""
    return {"predicted": [{"measure": measure, "value": value, "unit": unit}], "computed": {measure: computed}}


CASES = (
    # Tolerances of the review: 0.2 mm and 2 deg.
    Case(DIFFERS, "the same", predicted("overbite", 2.5, 2.5)),
    Case(DIFFERS, "as far off as let pass", predicted("overbite", 2.5, 2.7)),
    Case(DIFFERS, "further off", predicted("overbite", 2.5, 2.71), ("/predicted/0",)),
    Case(DIFFERS, "the sign turned round", predicted("lower-midline", 1, -1), ("/predicted/0",)),
    Case(DIFFERS, "an angle, as far off as let pass", predicted("interincisal-angle", 130, 132, "deg")),
    Case(DIFFERS, "an angle further off", predicted("interincisal-angle", 130, 132.1, "deg"), ("/predicted/0",)),
    Case(DIFFERS, "within what the hinge leaves open", predicted("overbite", 3, [2, 3.5])),
    Case(DIFFERS, "outside of it", predicted("overbite", 4, [2, 3.5]), ("/predicted/0",)),
    Case(DIFFERS, "nothing predicted", {"computed": {"overbite": 2}}),
    Case(DIFFERS, "nothing to compare with", {"predicted": [{"measure": "overbite", "value": 2, "unit": "mm"}]}),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_it_speaks_where_it_should_and_nowhere_else(case):
    assert pointers(case) == case.pointers


def test_both_numbers_are_told():
    told = [finding.facts for case in CASES for finding in found(case)]
    assert [(one["claimed"], one["given"]) for one in told] == [
        (2.5, "2.71 mm"),
        (1, "-1.0 mm"),
        (130, "132.1°"),
        (4, "2.0 mm to 3.5 mm"),
    ]
