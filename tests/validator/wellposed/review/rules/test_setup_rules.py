"""What every rule about a setup owes: a page, figures that are declared, cases of its own, a run that never breaks."""

import json
import random
from importlib import import_module
from pathlib import Path
from string import Formatter

import pytest
from pydantic import ValidationError
from tests.validator.wellposed.consistency.test_rules import resolves
from tests.validator.wellposed.review.made import plausible
from tests.validator.wellposed.review.rules.held import BASE, found, held, pointers, setup

from wellposed.findings import Severity
from wellposed.model import Prescription
from wellposed.model.setup import Setup
from wellposed.norms import load, with_profile
from wellposed.render.clinical import clinical_lines, would_change
from wellposed.render.filled import filled
from wellposed.review.held import Held
from wellposed.review.matter import Matter
from wellposed.review.rules import RULES, TOPICS, USUAL, setup_findings
from wellposed.rules import USUAL as OF_ORDERS

HERE = Path(__file__).parent
WITH_CASES = (
    "test_setup_answers",
    "test_setup_staging",
    "test_setup_amounts",
    "test_setup_roots",
    "test_setup_holds",
    "test_setup_claims",
)
MODULES = [import_module(f"tests.validator.wellposed.review.rules.{name}") for name in WITH_CASES]
CASES = tuple(case for module in MODULES for case in module.CASES)
PRESENT = {norm.key for norm in load()}
every_rule = pytest.mark.parametrize("declared", RULES, ids=[rule.id for rule in RULES])


def cases_of(declared):
    return [case for case in CASES if case.rule == declared.id]


def test_every_topic_has_rules_and_no_rule_shares_its_name_with_one_of_prescriptions():
    assert [topic for topic, rules in TOPICS.items() if not rules] == []
    assert USUAL.keys() & OF_ORDERS.keys() == set()
    assert len(USUAL) == len(RULES)


def test_every_case_is_about_a_rule_there_is():
    assert {case.rule for case in CASES} == {rule.id for rule in RULES}


@every_rule
def test_it_says_in_sentences_what_is_so_what_to_do_and_what_would_change_it(declared):
    lines = (declared.title, declared.do)
    assert [line for line in lines if not line.endswith((".", "?")) or "\n" in line or len(line) > 120] == []
    said = (declared.what, declared.why, declared.evidence, declared.says, declared.change)
    assert [words for words in said if not words.endswith((".", "?"))] == []
    assert all(list(Formatter().parse(words)) for words in (declared.says, declared.change))


@every_rule
def test_its_page_has_members_that_pass_and_members_that_fail(declared):
    assert list(declared.findings(held(**declared.passes))) == []
    assert [finding.rule for finding in declared.findings(held(**declared.fails))] == [declared.id]


@every_rule
def test_it_has_cases_that_pass_and_that_fail_and_its_boundary(declared):
    fires = [bool(case.pointers) for case in cases_of(declared)]
    assert {True, False} <= set(fires)
    assert len(fires) >= (3 if declared.figures else 2)


@every_rule
def test_removed_it_is_missed(declared):
    rest = tuple(rule for rule in RULES if rule is not declared)
    assert [case for case in cases_of(declared) if pointers(case, rest) != case.pointers] != []


@every_rule
def test_its_figures_are_declared_and_are_there(declared):
    told = {one["key"] for case in cases_of(declared) for f in found(case) for one in f.facts["figures"]}
    assert [
        key for key in told if not any(key == head or key.startswith(f"{head}.") for head in declared.figures)
    ] == []
    assert [h for h in declared.figures if not any(k == h or k.startswith(f"{h}.") for k in PRESENT)] == []


@every_rule
def test_what_it_finds_can_be_said_is_json_and_points_into_the_setup(declared):
    for case in cases_of(declared):
        whole = json.loads(json.dumps({**BASE, **{n: v for n, v in case.members.items() if n in Setup.model_fields}}))
        for finding in found(case):
            told = [*clinical_lines(finding), would_change(finding)]
            assert [line for line in told if not line or "None" in line or "{" in line] == []
            first = filled(declared.says, finding.facts)[0]
            assert first.isupper() or first.isdigit()
            assert json.loads(json.dumps(dict(finding.facts))) == finding.facts
            assert resolves(whole, finding.pointer)


# the whole run


def changed_blindly(seed):
    """A plausible setup with numbers and teeth changed at random, as long as it is a setup."""
    rng = random.Random(seed)
    order, made = plausible(seed)
    for _ in range(60):
        copy = json.loads(json.dumps(made))
        spots = list(_spots(copy))
        holder, name = rng.choice(spots)
        holder[name] = rng.choice([0, -5, 7.5, 30, 100, "18", "13", "upper", "unmoved", "41-31"])
        try:
            setup(**copy)
        except ValidationError:
            continue
        made = copy
    return Prescription.model_validate(order), setup(**made)


def _spots(part):
    items = part.items() if isinstance(part, dict) else enumerate(part)
    for name, value in list(items):
        if isinstance(value, dict | list):
            yield from _spots(value)
        else:
            yield part, name


@pytest.mark.parametrize("seed", range(24))
def test_nothing_breaks_on_setups_changed_blindly_and_it_is_said_in_one_order(seed):
    order, made = changed_blindly(seed)
    findings = setup_findings(Held(Matter(order, made)))
    assert [finding for finding in findings if finding.rule not in USUAL] == []
    assert [line for finding in findings for line in clinical_lines(finding) if "None" in line or "{" in line] == []
    document = made.model_dump(mode="json", exclude_none=True)
    assert [finding for finding in findings if not resolves(document, finding.pointer)] == []
    assert setup_findings(Held(Matter(order, made))) == findings
    assert [one.severity.rank for one in findings] == sorted(one.severity.rank for one in findings)


def test_a_practice_profile_weighs_a_rule_and_its_usual_weight_is_told():
    profile = b'name = "Harbour Road"\n[limits]\n"step.linear" = 0.5\n[severities]\n"round-trip-planned" = "ask"\n'
    numbers = with_profile(profile, USUAL)
    fails = {rule.id: rule.fails for rule in RULES}
    assert setup_findings(held(numbers, **fails["aligner-step-beyond-usual"], unlisted="unmoved")) == ()
    (turned,) = setup_findings(held(numbers, **fails["round-trip-planned"], unlisted="unmoved"))
    assert (turned.severity, turned.facts["usual_severity"]) == (Severity.ASK, "caution")
