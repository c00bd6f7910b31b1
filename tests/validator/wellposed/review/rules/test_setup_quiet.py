"""How often the rules about a setup speak of plausible ones: seldom, each time with a reason."""

from collections import Counter
from functools import cache
from statistics import median

from tests.validator.wellposed.review.made import plausible
from tests.validator.wellposed.review.points import feasible
from tests.validator.wellposed.rules.sound import DAYS

from wellposed.findings import Severity
from wellposed.model import Prescription
from wellposed.model.setup import Setup
from wellposed.review.held import Held
from wellposed.review.matter import Matter
from wellposed.review.rules import setup_findings

NUMBER = 10 * len(DAYS)
REASONS = {
    "planned-movement-partly-reached": "lower incisors are intruded in a deep bite by more than groups reached",
}
"""Why a rule speaks of a setup that is plausible."""
OF_ROOM = ("setup-leaves-space", "teeth-pushed-together")
"""These plans meet their clauses one by one and do not balance room; of room, points of the linear system are asked."""


@cache
def spoken():
    """What is found in each."""
    made = (
        (Prescription.model_validate(order), Setup.model_validate(planned))
        for order, planned in map(plausible, range(NUMBER))
    )
    found = (setup_findings(Held(Matter(order, planned))) for order, planned in made)
    return tuple(tuple(one for one in findings if one.rule not in OF_ROOM) for findings in found)


def test_most_plausible_setups_are_passed_without_more_than_a_note():
    assert median(sum(one.severity != Severity.NOTE for one in findings) for findings in spoken()) == 0


def test_whatever_speaks_of_a_plausible_setup_has_its_reason_and_seldom_speaks():
    told = Counter(rule for findings in spoken() for rule in {one.rule for one in findings})
    assert told.keys() == REASONS.keys()
    assert {rule: count for rule, count in told.items() if count > NUMBER / len(DAYS)} == {}


def test_no_plan_that_balances_room_pushes_teeth_together():
    """Points of the linear system, found by scipy's solver: no overlap grows in them but where teeth are aligned."""
    made = [found for seed in range(60) if (found := feasible(seed))]
    told = [setup_findings(Held(Matter(case.prescription, setup))) for case, setup in made]
    assert len(made) > 25
    assert [one for findings in told for one in findings if one.rule == "teeth-pushed-together"] == []
