"""What every clinical rule owes: a page, figures that are declared, cases of its own, a run that never breaks."""

import json
import random
from importlib import import_module
from pathlib import Path
from string import Formatter

import pytest
from pydantic import ValidationError
from tests.spec import made, mutants
from tests.validator.wellposed.consistency.ordinary import document, prescription
from tests.validator.wellposed.consistency.test_rules import resolves
from tests.validator.wellposed.rules.charts import chart, found, pointers
from tests.validator.wellposed.rules.sound import DAYS, sound

from wellposed.consistency import RULE_FAILED, consistency
from wellposed.consistency.whole import Whole
from wellposed.findings import GROUNDS, Severity
from wellposed.model import PRIVATE, Prescription
from wellposed.norms import load
from wellposed.render.clinical import clinical_lines, would_change
from wellposed.render.filled import filled
from wellposed.rules import RULES, TOPICS, Chart, clinical
from wellposed.rules.causes import sorted_out
from wellposed.schema import document_schema

HERE = Path(__file__).parent
OWN = {"test_rules", "test_stories", "test_rates", "test_causes", "test_answers", "test_work_orders"}
MODULES = [f"tests.validator.wellposed.rules.{path.stem}" for path in sorted(HERE.glob("test_*.py"))]
CASES = tuple(
    case
    for module in MODULES
    if module.rpartition(".")[2] not in OWN
    for case in getattr(import_module(module), "CASES", ())
)
NAMES = [rule.id for rule in RULES]
PRESENT = {norm.key for norm in load()}
every_rule = pytest.mark.parametrize("declared", RULES, ids=NAMES)


def cases_of(declared):
    return [case for case in CASES if case.rule == declared.id]


def members(declared):
    return declared.passes, declared.fails


def test_there_are_rules_enough_in_every_topic():
    assert len(RULES) >= 80
    assert [topic for topic, rules in TOPICS.items() if not rules] == []


def test_every_case_is_about_a_rule_there_is():
    assert {case.rule for case in CASES} == set(NAMES)


@every_rule
def test_a_rule_says_in_a_line_what_is_so_and_what_to_do(declared):
    lines = (declared.title, declared.do)
    assert [line for line in lines if not line.endswith((".", "?")) or "\n" in line or len(line) > 120] == []


@every_rule
def test_a_page_says_what_is_looked_at_why_and_how_far_the_evidence_goes(declared):
    said = (declared.what, declared.why, declared.evidence)
    assert [words for words in said if not words.endswith(".") or "{" in words] == []


@every_rule
def test_what_it_says_and_what_would_change_it_are_sentences(declared):
    said = (declared.says, declared.change)
    assert [words for words in said if not words.endswith((".", "?"))] == []
    assert all(list(Formatter().parse(words)) for words in said)


@every_rule
def test_a_page_has_members_that_pass_and_members_that_fail(declared):
    passes, fails = members(declared)
    assert list(declared.findings(chart(**passes))) == []
    assert {finding.rule for finding in declared.findings(chart(**fails))} == {declared.id}


@every_rule
def test_the_failing_members_are_a_sound_document(declared):
    fails = {name: value for name, value in declared.fails.items() if name != "earlier"}
    assert [finding.rule for finding in consistency(prescription(**fails)) if finding.severity == "stop"] == []


@every_rule
def test_a_rule_has_cases_that_pass_and_that_fail_and_its_boundary(declared):
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
    assert [key for key in told if not _under(key, declared.figures)] == []
    assert [key for key in declared.figures if not any(_under(norm, [key]) for norm in PRESENT)] == []


def _under(key, heads):
    right = {"2": "1", "3": "4"}
    keys = {
        key,
        ".".join(right.get(part[0], part[0]) + part[1:] if part.isdecimal() else part for part in key.split(".")),
    }
    return any(one == head or one.startswith(f"{head}.") for one in keys for head in heads)


@every_rule
def test_what_it_finds_can_be_said(declared):
    for case in cases_of(declared):
        for finding in found(case):
            told = [*clinical_lines(finding), would_change(finding)]
            assert [line for line in told if not line or "None" in line or "{" in line] == []
            assert (
                filled(declared.says, finding.facts)[0].isupper() or filled(declared.says, finding.facts)[0].isdigit()
            )


@every_rule
def test_its_facts_are_json_and_its_clauses_are_there(declared):
    for case in cases_of(declared):
        asked = chart(**case.members)
        ids = {place.owner for place in asked.whole.places}
        for finding in found(case):
            assert json.loads(json.dumps(dict(finding.facts))) == finding.facts
            assert set(finding.clauses) <= ids


@every_rule
def test_it_rests_on_something(declared):
    for case in cases_of(declared):
        asked = chart(**case.members)
        for finding in sorted_out(asked, found(case)):
            assert finding.rests_on or finding.pointer
            assert {kind for kind, _ in finding.rests_on} <= set(GROUNDS)


# Documents nobody would write, yet of the right structure.

SCHEMA = document_schema("prescription")
TERMS = sorted({what.partition(" = ")[2] for what in made.possible(SCHEMA) if " = " in what})
SECRET = "Zzyzx"


def faults_of_the_run(given_document):
    """What may not happen, whatever is in a document without a consistency stop."""
    model = Prescription.model_validate(given_document)
    if any(finding.severity == Severity.STOP for finding in consistency(model)):
        return
    before = model.model_dump()
    findings = list(clinical(Chart(model)))
    yield from (finding.facts["rule"] for finding in findings if finding.rule == RULE_FAILED)
    yield from (finding for finding in findings if not resolves(given_document, finding.pointer))
    yield from (finding for finding in findings if not set(finding.clauses) <= set(Whole(model).ids))
    yield from (line for f in findings if f.rule != RULE_FAILED for line in clinical_lines(f) if "None" in line)
    yield from ("changed",) if model.model_dump() != before else ()
    yield from ("other findings",) if list(clinical(Chart(model))) != findings else ()


@pytest.mark.parametrize("seed", range(24))
def test_nothing_breaks_on_sound_prescriptions_changed_blindly(seed):
    mutator = mutants.Mutator(random.Random(seed), ["teeth", "contacts", "arch", "pair", "because"], TERMS)
    kept = sound(seed)
    for _ in range(25):
        _, mutant = mutator.mutant(kept)
        try:
            Prescription.model_validate(mutant)
        except ValidationError:
            continue
        if any(finding.severity == Severity.STOP for finding in consistency(Prescription.model_validate(mutant))):
            continue
        kept = mutant
    assert list(faults_of_the_run(kept)) == []


@pytest.mark.parametrize("seed", range(len(DAYS)))
def test_the_order_in_which_parts_stand_changes_nothing_that_is_said(seed):
    order = sound(seed)
    turned = {n: list(reversed(v)) if n in ("findings", "movements", "problems") else v for n, v in order.items()}
    told = [
        {(f.rule, f.severity) for f in clinical(Chart(Prescription.model_validate(one)))} for one in (order, turned)
    ]
    assert told[0] == told[1]


def test_no_finding_carries_a_value_of_a_private_section():
    private = {
        "patient": {"reference": SECRET, "age_years": 77.25, "growth": "complete"},
        "prescriber": {"id": SECRET, "licence": SECRET, "jurisdiction": "EU"},
        "laboratory": {"id": SECRET, "needed_by": "2026-02-27"},
        "records": [{"kind": "other", "name": f"{SECRET} Mr Smith 12.03.1980", "date": "2026-02-25"}],
        "notes": [{"text": f"{SECRET} Dr Jones, +44 20 7946 0958, a.b@example.org, 14 and 24"}],
    }
    findings = list(clinical(chart(**{**document(), **private})))
    told = repr(findings)
    assert [
        word for word in (SECRET, "77.25", "2026-02", "Smith", "Jones", "7946", "example.org") if word in told
    ] == []
    assert {f"/{section}" for section in private} == set(PRIVATE)
