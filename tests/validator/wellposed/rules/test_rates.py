"""Ordinary, sound prescriptions are let through: a tool that always warns is a tool nobody reads."""

from collections import Counter
from statistics import median

from tests.validator.wellposed.rules.rates import REASONS, cautions, rates, reports
from tests.validator.wellposed.rules.sound import DAYS

from wellposed.findings import Severity
from wellposed.rules import USUAL

OFTEN = 0.2


def test_they_can_be_met_within_practice_limits():
    assert Counter(report.verdict for report in reports()) == {"possible": len(reports())}


def test_none_is_stopped():
    stopping = {f.rule for report in reports() for f in report.findings if f.severity == Severity.STOP}
    assert stopping == set()


def test_at_the_median_there_is_no_more_than_one_caution():
    assert median(cautions()) <= 1
    for day in range(len(DAYS)):
        assert median(cautions()[day :: len(DAYS)]) <= 1, DAYS[day].__name__


def test_no_rule_that_weighs_more_than_a_note_speaks_of_more_than_a_fifth():
    often = {rule: rate for rule, rate in rates().items() if rate > OFTEN and USUAL[rule] != Severity.NOTE}
    assert often == {}


def test_of_every_rule_that_speaks_it_is_said_why():
    assert {rule for rule, rate in rates().items() if rate} == set(REASONS)
