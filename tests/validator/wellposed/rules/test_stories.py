"""Where the diagnosis is the trouble the report leads with it, and what rests on it stands under it."""

import json

import pytest
from tests.validator.wellposed.rules.stories import STORIES

from wellposed.check import check
from wellposed.findings import Severity
from wellposed.render.text import text

ORDERS = [story.order for story in STORIES]
NAMES = [story.setting for story in STORIES]
stories = pytest.mark.parametrize("story", STORIES, ids=NAMES)


def report(story):
    return check(json.dumps(story.order).encode())


def leader(story):
    return next(one for one in report(story).findings if one.facts.get("doubts") == story.doubts and not one.under)


@stories
def test_the_report_leads_with_the_diagnosis(story):
    first = report(story).findings[0]
    assert (first.rule, first.facts["doubts"]) == (story.leader, story.doubts)


@stories
def test_what_rests_on_it_alone_is_named_with_it_and_nothing_else_is(story):
    resting = {one["clause"] for one in leader(story).facts["instructions"]}
    assert set(story.resting) <= resting
    assert resting & set(story.apart) == set()


@stories
def test_what_is_said_of_needless_instructions_goes_under_it(story):
    rest = [one for one in report(story).findings if not one.under and one != leader(story)]
    needless = {one["clause"] for one in leader(story).facts["instructions"]}
    grave = (Severity.STOP, Severity.ASK, Severity.CAUTION)
    beside = [one.rule for one in rest if one.severity in grave and set(one.clauses) <= needless and one.clauses]
    assert beside == []


@stories
def test_it_says_what_the_measurements_say_and_what_would_change_it(story):
    told = " ".join(text(report(story), "order").split())
    assert told.index("Look at the diagnosis first") < told.index("No other reason is stated for:")
    assert "Would change it:" in told
    assert "No other reason is stated for:" in told


@stories
def test_the_report_fits_a_page(story):
    assert text(report(story), "order").count("\n") <= 66
