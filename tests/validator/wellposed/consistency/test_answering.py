"""What every rule about a setup or a review owes: a declaration, a page whose fragments are true, a run that holds."""

import json
import random

import pytest
from pydantic import ValidationError
from tests.spec import made, mutants
from tests.validator.wellposed.consistency.answering import (
    SOUND_RECEIPTS,
    SOUND_REVIEWS,
    SOUND_SETUPS,
    receipt,
    receipt_document,
    review,
    review_document,
    setup,
    setup_document,
)
from tests.validator.wellposed.consistency.test_rules import resolves

from wellposed.check import check
from wellposed.consistency import (
    OWN_OF_RECEIPTS,
    OWN_OF_REVIEWS,
    OWN_OF_SETUPS,
    RECEIPT_RULES,
    REVIEW_RULES,
    RULE_FAILED,
    RULES,
    SETUP_RULES,
    faults,
    receipt_faults,
    review_faults,
    setup_faults,
)
from wellposed.consistency.receipts import WholeReceipt
from wellposed.consistency.whole_review import WholeReview
from wellposed.consistency.whole_setup import WholeSetup
from wellposed.findings import Severity
from wellposed.model import Receipt, Review, Setup
from wellposed.schema import document_schema

SEVERITIES = {
    "movement-stated-twice": "stop",
    "implausible-amount": "ask",
    "planned-at-extracted-tooth": "stop",
    "teeth-cannot-touch": "stop",
    "reduction-planned-twice": "stop",
    "attachment-planned-twice": "stop",
    "beyond-last-aligner": "stop",
    "moves-without-aligners": "ask",
    "stage-stated-twice": "stop",
    "stage-of-other-arch": "stop",
    "path-without-end": "stop",
    "path-misses-the-end": "stop",
    "path-not-whole": "note",
    "aligners-not-stated": "note",
    "nothing-planned": "note",
    "predicted-twice": "stop",
    "clause-answered-twice": "stop",
    "person-in-text": "caution",
    "answers-the-prescription": "stop",
    "clause-reviewed-twice": "stop",
    "approved-and-asked-for": "stop",
    "approved-though-not-met": "stop",
    "returned-without-reason": "ask",
    "accepted-though-met": "ask",
    "accepted-and-revised": "stop",
    "requested-and-revised": "stop",
    "accepted-though-stopped": "stop",
    "returned-without-finding": "ask",
    "received-after-receipt": "ask",
}
GRAVE = (Severity.STOP, Severity.ASK, Severity.CAUTION)
OWN = [(rule, setup, WholeSetup, setup_faults) for rule in OWN_OF_SETUPS]
OWN += [(rule, review, WholeReview, review_faults) for rule in OWN_OF_REVIEWS]
OWN += [(rule, receipt, WholeReceipt, receipt_faults) for rule in OWN_OF_RECEIPTS]
NAMES = [rule.id for rule, *_ in OWN]


def test_the_rules_and_their_weights():
    assert {rule.id: str(rule.severity) for rule, *_ in OWN} == SEVERITIES
    assert list(SEVERITIES) == NAMES


def test_what_is_shared_is_declared_once():
    shared = [rule.id for rule in (*SETUP_RULES, *REVIEW_RULES, *RECEIPT_RULES) if rule.id not in SEVERITIES]
    assert set(shared) <= {rule.id for rule in RULES}
    for rules in (SETUP_RULES, REVIEW_RULES, RECEIPT_RULES):
        assert len({rule.id for rule in rules}) == len(rules)


@pytest.mark.parametrize("declared", [rule for rule, *_ in OWN], ids=NAMES)
def test_a_rule_says_in_a_line_what_is_wrong_and_what_to_do(declared):
    lines = (declared.title, declared.do)
    assert [line for line in lines if not line.endswith(".") or "\n" in line or len(line) > 120] == []
    assert [words for words in (declared.what, declared.why) if not words.endswith(".") or "{" in words] == []


@pytest.mark.parametrize("declared, build, whole, run", OWN, ids=NAMES)
def test_a_page_has_one_fragment_that_passes_and_one_that_fails(declared, build, whole, run):
    passes, fails = build(**declared.passes), build(**declared.fails)
    assert list(declared.findings(whole(passes))) == []
    assert {finding.rule for finding in declared.findings(whole(fails))} == {declared.id}
    assert {finding.rule for finding in run(fails) if finding.severity in GRAVE} <= {declared.id}
    assert [finding for finding in run(passes) if finding.severity in GRAVE] == []


SOUND = {name: setup(**changes) for name, changes in SOUND_SETUPS.items()}
SOUND |= {name: review(**changes) for name, changes in SOUND_REVIEWS.items()}
SOUND |= {name: receipt(**changes) for name, changes in SOUND_RECEIPTS.items()}


@pytest.mark.parametrize("document", SOUND.values(), ids=SOUND)
def test_an_ordinary_document_is_neither_stopped_nor_asked_about(document):
    assert [finding for finding in faults(document) if finding.severity in GRAVE] == []


WHOLE = [setup_document(**changes) for changes in SOUND_SETUPS.values()]
WHOLE += [review_document(**changes) for changes in SOUND_REVIEWS.values()]
WHOLE += [receipt_document(**changes) for changes in SOUND_RECEIPTS.values()]


@pytest.mark.parametrize("document", WHOLE, ids=[*SOUND_SETUPS, *SOUND_REVIEWS, *SOUND_RECEIPTS])
def test_a_sound_one_is_not_judged_and_fit_to_send(document):
    report = check(json.dumps(document).encode())
    assert (report.verdict, report.fit_to_send) == ("not-judged", True)


def test_every_fault_of_a_setup_is_told_in_one_run():
    wrong = setup_document(
        revision=2,
        aligners={"upper": 3},
        extractions=["14", "14"],
        movements=[
            {"variable": "along", "unit": "deg", "values": {"14": 1}},
            {"variable": "out", "unit": "mm", "values": {"11": 70}},
        ],
        reductions=[{"contact": "11-41", "amount": 0.2, "unit": "mm", "before_aligner": 9}],
        predicted=[{"measure": "overjet", "value": 75, "unit": "mm", "pair": ["12", "22"]}],
    )
    report = check(json.dumps(wrong).encode())
    assert report.verdict == "refused"
    assert [(finding.rule, finding.pointer) for finding in report.findings] == [
        ("tooth-listed-twice", "/extractions/1"),
        ("unit-not-allowed", "/movements/0/unit"),
        ("planned-at-extracted-tooth", "/movements/0/values/14"),
        ("pair-not-one-of-each", "/predicted/0/pair"),
        ("beyond-last-aligner", "/reductions/0/before_aligner"),
        ("contact-across-arches", "/reductions/0/contact"),
        ("revision-chain", "/revision"),
        ("implausible-amount", "/movements/1/values/11"),
        ("implausible-value", "/predicted/0/value"),
    ]


# Documents nobody would write, yet of the right structure.


def faults_of_the_run(model, given):
    """What may not happen, whatever is in the document."""
    document = model.model_validate(given)
    before = document.model_dump()
    findings = list(faults(document))
    yield from (finding.facts["rule"] for finding in findings if finding.rule == RULE_FAILED)
    yield from (finding for finding in findings if not resolves(given, finding.pointer))
    yield from (finding for finding in findings if json.loads(json.dumps(dict(finding.facts))) != finding.facts)
    yield from ("changed",) if document.model_dump() != before else ()
    yield from ("other findings",) if list(faults(document)) != findings else ()


KINDS = {"setup": Setup, "review": Review, "receipt": Receipt}


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_breaks_on_documents_made_of_the_schema_at_random(kind):
    maker = made.Maker(document_schema(kind), random.Random(f"{kind} between"))
    found = [fault for _ in range(150) for fault in faults_of_the_run(KINDS[kind], maker.document())]
    assert found == []


def changed(model, document, seed):
    """A document after some blind changes, of those that leave its structure sound."""
    terms = ["upper", "mm", "deg", "11", "14", "13-15", "11-21", "met", "not-met", "approved"]
    mutator = mutants.Mutator(random.Random(seed), ["values", "arch", "aligner", "pair", "because"], terms)
    for _ in range(40):
        _, mutant = mutator.mutant(document)
        try:
            model.model_validate(mutant)
        except ValidationError:
            continue
        document = mutant
    return document


@pytest.mark.parametrize("document", WHOLE, ids=[*SOUND_SETUPS, *SOUND_REVIEWS, *SOUND_RECEIPTS])
def test_nothing_breaks_on_ordinary_documents_changed_blindly(document):
    model = KINDS[document["format"].removeprefix("wellposed/")]
    assert [fault for seed in range(8) for fault in faults_of_the_run(model, changed(model, document, seed))] == []


SECRET = "Zzyzx"


@pytest.mark.parametrize(
    "document",
    [
        setup_document(laboratory={"id": SECRET, "needed_by": "2026-02-30"}, notes=[{"text": f"Move 11, {SECRET}"}]),
        review_document(reviewer={"id": f"{SECRET} {SECRET}", "licence": ""}, notes=[{"text": f"Move 11 {SECRET}"}]),
        review_document(notes=[{"text": f"Please move 11, {SECRET}", "about": [SECRET]}]),
    ],
    ids=["a setup", "a reviewer of the wrong form", "a note about a clause that is not listed"],
)
def test_no_message_carries_a_value_of_a_private_section(document):
    report = check(json.dumps(document).encode())
    assert report.findings
    assert SECRET not in repr(report)
    assert "2026" not in repr(report)
