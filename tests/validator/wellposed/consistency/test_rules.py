"""What every rule owes: a declaration, a page whose fragments are true, a run that never breaks."""

import json
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError
from tests.spec import made, mutants
from tests.validator.wellposed.consistency.ordinary import SOUND, document, prescription

from wellposed.consistency import RULE_FAILED, RULES, consistency
from wellposed.consistency.whole import Whole
from wellposed.declare import rule, told
from wellposed.findings import Finding, Severity
from wellposed.model import PRIVATE, Prescription
from wellposed.reading.pointer import below, holds, steps
from wellposed.schema import document_schema

SEVERITIES = {
    "revision-chain": "stop",
    "no-such-date": "stop",
    "unknown-critical-extension": "stop",
    "reserved-extension": "stop",
    "extension-kept": "note",
    "duplicate-id": "stop",
    "unknown-reference": "stop",
    "term-listed-twice": "stop",
    "tooth-not-present": "stop",
    "tooth-listed-twice": "stop",
    "tooth-in-wrong-arch": "stop",
    "particulars-twice": "stop",
    "tooth-leaves": "stop",
    "aligned-tooth-leaves": "note",
    "tooth-not-in-line": "ask",
    "tooth-not-meant": "stop",
    "transposed-teeth": "ask",
    "arch-mismatch": "stop",
    "side-mismatch": "stop",
    "arch-not-treated": "stop",
    "pair-not-meant": "stop",
    "pair-not-one-of-each": "stop",
    "no-such-tooth": "stop",
    "contact-across-arches": "stop",
    "not-neighbours": "stop",
    "contact-listed-twice": "stop",
    "reduction-place": "stop",
    "unit-not-allowed": "stop",
    "unit-missing": "stop",
    "amount-missing": "stop",
    "bounds-missing": "stop",
    "bounds-crossed": "stop",
    "negative-size": "stop",
    "implausible-value": "ask",
    "measured-twice": "ask",
    "measured-in-two-jaw-positions": "ask",
    "measure-teeth-do-not-change": "ask",
    "reduction-said-twice": "stop",
    "width-said-twice": "stop",
    "excluded-and-allowed": "stop",
    "derotation-room": "stop",
    "ground-not-said": "ask",
    "attachments-disagree": "stop",
    "otherwise-said-twice": "stop",
    "order-cycle": "stop",
    "treat-not-stated": "note",
    "nothing-asked": "note",
    "answers-nothing": "note",
    "note-may-instruct": "caution",
}
NAMES = [rule.id for rule in RULES]


def fragments(declared):
    """The base with the members the page says pass, and with those it says fail."""
    return prescription(**declared.passes), prescription(**declared.fails)


def test_the_rules_and_their_weights():
    assert {rule.id: str(rule.severity) for rule in RULES} == SEVERITIES
    assert list(SEVERITIES) == NAMES


@pytest.mark.parametrize("declared", RULES, ids=NAMES)
def test_a_rule_says_in_a_line_what_is_wrong_and_what_to_do(declared):
    lines = (declared.title, declared.do)
    assert [line for line in lines if not line.endswith(".") or "\n" in line or len(line) > 120] == []


@pytest.mark.parametrize("declared", RULES, ids=NAMES)
def test_a_page_says_what_is_looked_at_and_why(declared):
    said = (declared.what, declared.why)
    assert [words for words in said if not words.endswith(".") or "{" in words] == []


@pytest.mark.parametrize("declared", RULES, ids=NAMES)
def test_a_page_has_one_fragment_that_passes_and_one_that_fails(declared):
    passes, fails = fragments(declared)
    assert list(declared.findings(Whole(passes))) == []
    assert {finding.rule for finding in declared.findings(Whole(fails))} == {declared.id}


@pytest.mark.parametrize("declared", RULES, ids=NAMES)
def test_the_failing_fragment_of_a_page_has_no_other_grave_fault(declared):
    _, fails = fragments(declared)
    grave = {finding.rule for finding in consistency(fails) if finding.severity in (Severity.STOP, Severity.ASK)}
    assert grave <= {declared.id}


@pytest.mark.parametrize("changes", SOUND.values(), ids=SOUND)
def test_an_ordinary_prescription_is_neither_stopped_nor_asked_about(changes):
    grave = (Severity.STOP, Severity.ASK, Severity.CAUTION)
    assert [finding for finding in consistency(prescription(**changes)) if finding.severity in grave] == []


@rule("breaks", Severity.ASK, title="It breaks.", do="Mend it.")
def breaks(whole):
    """A rule that finds one thing and breaks on the next."""
    yield told("/teeth", "k1", "", "k1", tooth="11", contact=None)
    raise KeyError(whole)


def test_a_rule_that_breaks_says_so_after_what_it_found():
    expected = [
        Finding("breaks", Severity.ASK, "/teeth", {"tooth": "11"}, ("k1",)),
        Finding(RULE_FAILED, Severity.STOP, "", {"rule": "breaks"}),
    ]
    assert list(breaks.findings(Whole(prescription()))) == expected


def test_the_rules_after_one_that_breaks_go_on(monkeypatch):
    monkeypatch.setattr("wellposed.consistency.RULES", (breaks, *RULES))
    rules = [finding.rule for finding in consistency(prescription())]
    assert rules == ["breaks", RULE_FAILED, "treat-not-stated", "nothing-asked"]


# Documents nobody would write, yet of the right structure.

SCHEMA = document_schema("prescription")
TERMS = sorted({what.partition(" = ")[2] for what in made.possible(SCHEMA) if " = " in what})
SECRET = "Zzyzx"


def resolves(value, pointer):
    """Whether the pointer leads somewhere in the document."""
    for step in steps(pointer):
        if not holds(value, step):
            return False
        value = below(value, step)
    return True


def faults_of_the_run(given_document):
    """What may not happen, whatever is in the document."""
    model = Prescription.model_validate(given_document)
    before = model.model_dump()
    findings = list(consistency(model))
    ids = {**Whole(model).ids}
    yield from (finding.facts["rule"] for finding in findings if finding.rule == RULE_FAILED)
    yield from (finding for finding in findings if not resolves(given_document, finding.pointer))
    yield from (finding for finding in findings if not set(finding.clauses) <= set(ids))
    yield from (finding for finding in findings if json.loads(json.dumps(dict(finding.facts))) != finding.facts)
    yield from ("changed",) if model.model_dump() != before else ()
    yield from ("other findings",) if list(consistency(model)) != findings else ()


@given(st.integers(0, 10**6))
def test_nothing_breaks_on_documents_made_of_the_schema_at_random(seed):
    maker = made.Maker(SCHEMA, random.Random(seed))
    assert list(faults_of_the_run(maker.document())) == []


def changed(changes, seed, times):
    """An ordinary prescription after some blind changes, of those that leave its structure sound."""
    mutator = mutants.Mutator(random.Random(seed), ["teeth", "contacts", "arch", "pair", "because"], TERMS)
    kept = document(**changes)
    for _ in range(times):
        _, mutant = mutator.mutant(kept)
        try:
            Prescription.model_validate(mutant)
        except ValidationError:
            continue
        kept = mutant
    return kept


@pytest.mark.parametrize("changes", SOUND.values(), ids=SOUND)
def test_nothing_breaks_on_ordinary_prescriptions_changed_blindly(changes):
    assert [fault for seed in range(12) for fault in faults_of_the_run(changed(changes, seed, 40))] == []


def test_no_message_carries_a_value_of_a_private_section():
    private = {
        "patient": {"reference": SECRET},
        "prescriber": {"id": SECRET},
        "laboratory": {"id": SECRET, "needed_by": "2026-02-30"},
        "records": [{"kind": "other", "name": SECRET, "date": "2026-02-31"}],
        "notes": [{"text": f"Please move 11, {SECRET}", "about": [SECRET]}],
    }
    findings = list(consistency(prescription(**private)))
    assert {finding.pointer.split("/")[1] for finding in findings if finding.pointer} == {
        "laboratory",
        "records",
        "notes",
    }
    assert [finding for finding in findings if SECRET in repr(finding) or "2026" in repr(finding)] == []
    assert {f"/{section}" for section in private} == set(PRIVATE)
