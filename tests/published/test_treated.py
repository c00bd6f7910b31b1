"""A treated case, written down with its means and what was counted on, is never called contradictory."""

import json

import pytest
from tests.published.cases import DONE, FURTHER, ROWS_TREATED, found, reach
from tests.published.planned import document
from tests.published.rows import ROWS, titled

from wellposed.check import check

# Rows that are no treatment.
NO_TREATMENT = {
    "C10": "contradicts itself on left and right: a measurement to be asked about, tested below",
    "K06": "casts of untreated arches",
    "K07": "a regression coefficient",
    "K38": "a typodont",
    "K39": "a typodont",
    "K47": "models",
}


def judged(prescription):
    return check(json.dumps(prescription).encode())


def told(report):
    """What stands behind a verdict, for the message of a failure."""
    return report.verdict, [(f.rule, f.clauses, list(f.facts.get("members", ()))) for f in report.findings]


@pytest.mark.parametrize("row_id", ROWS_TREATED, ids=titled)
def test_a_published_treatment_is_not_contradictory(row_id):
    report = judged(ROWS_TREATED[row_id].written())
    assert report.verdict in ROWS_TREATED[row_id].verdicts, told(report)


@pytest.mark.parametrize("name", FURTHER)
def test_a_usual_treatment_is_not_contradictory(name):
    report = judged(FURTHER[name].written())
    assert report.verdict in FURTHER[name].verdicts, told(report)


@pytest.mark.parametrize("name", [*ROWS_TREATED, *FURTHER])
def test_a_question_about_space_left_is_about_space(name):
    treated = ROWS_TREATED.get(name) or FURTHER[name]
    asked = [f for f in judged(treated.written()).findings if f.rule == "space-left-over"]
    assert [f.facts for f in asked if "space" not in [member["of"] for member in f.facts["members"]]] == []


CLASSES = {"class-ii-elastics", "class-iii-elastics"}
BESIDES = {
    "class-ii-elastics": {"sides": ["right", "left"]},
    "class-iii-elastics": {"sides": ["right", "left"]},
    "auxiliary": {"auxiliary": "bone-screw"},
    "widening": {"arch": "upper", "up_to": 0.5, "unit": "mm"},
}


def besides(written, use):
    """The same prescription with one more thing allowed."""
    return {**written, "allow": [*written.get("allow", ()), {"id": "more", "use": use} | BESIDES[use]]}


def unused():
    """Every published row that is possible as written, with every means it does not use."""
    for name, treated in ROWS_TREATED.items():
        used = {allowance["use"] for allowance in treated.written().get("allow", ())}
        free = [use for use in BESIDES if use not in used and not (use.startswith("class") and used & CLASSES)]
        yield from ((name, use) for use in free if "undecided" not in treated.verdicts)


@pytest.mark.parametrize("name, use", list(unused()))
def test_a_further_allowance_never_restricts(name, use):
    """What may hold still may hold when elastics, a screw or 0.5 mm of widening are allowed besides."""
    report = judged(besides(ROWS_TREATED[name].written(), use))
    assert report.verdict in DONE, told(report)


def test_elastics_besides_an_extraction_do_not_restrict():
    """8 mm of overjet by an extraction alone; elastics without an amount must not hold the incisors at their 2 mm."""
    found_ = [{"id": "overjet", "measure": "overjet", "value": 11, "unit": "mm"}]
    room = [{"id": f"{a}-room", "measure": f"{a}-crowding", "value": 0, "unit": "mm"} for a in ("upper", "lower")]
    extraction = [{"id": "extraction", "use": "extraction", "teeth": ["14", "24"]}]
    goal = {"id": "goal"} | reach("overjet", 2, 3)[1]
    alone = document(findings=[*found_, *room], goals=[goal], allow=extraction)
    assert judged(alone).verdict in DONE
    assert judged(besides(alone, "class-ii-elastics")).verdict in DONE


def test_every_row_is_written_or_said_to_be_no_treatment():
    assert sorted([*ROWS_TREATED, *NO_TREATMENT]) == sorted(ROWS)


def test_a_midline_measured_to_both_sides_is_asked_about():
    """C10: 4 mm to the right, and then to be moved to the right."""
    amount = ROWS["C10"]["change"]["midline_lower"]
    sections = [found("lower-midline", -amount)[1], found("lower-midline", amount)[1]]
    findings = [{"id": f"f{number}"} | finding for number, finding in enumerate(sections)]
    goal = {"id": "g"} | reach("lower-midline", -0.5, 0.5)[1]
    report = judged(document(findings=findings, goals=[goal]))
    assert "measured-twice" in [finding.rule for finding in report.findings]
    assert not report.fit_to_send


@pytest.mark.parametrize("row_id", ["K13", "K14b", "K16", "K19", "K20", "K23", "K29b"])
def test_the_same_goals_without_their_means_are_not_possible(row_id):
    """Silence is no movement: what was reached by treatment does not come about by itself."""
    written = ROWS_TREATED[row_id].written()
    assert judged({name: part for name, part in written.items() if name not in ("allow", "movements")}).verdict in (
        "incomplete",
        "contradictory",
    )
