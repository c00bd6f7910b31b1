"""Enamel reduction, how much: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules import enamel, enamel_sums

RULES = (*enamel.RULES, *enamel_sums.RULES)
LOWER_FRONT = ["43-42", "42-41", "41-31", "31-32", "32-33"]
UPPER_BACK = ["17-16", "16-15", "15-14", "14-13", "23-24", "24-25", "25-26", "26-27"]
LOWER_BACK = ["47-46", "46-45", "45-44", "34-35", "35-36", "36-37"]
FIRST, SECOND = ("/allow/0",), ("/allow/1",)


def reduced(contacts, **amounts):
    """One allowance of enamel reduction."""
    return {"allow": [allowed("a1", "enamel-reduction", contacts=contacts, unit="mm", **amounts)]}


def whole_lower(each):
    """Seven contacts in front at 0.5 mm, six behind at ``each``."""
    front = allowed("a1", "enamel-reduction", contacts=[*LOWER_FRONT, "44-43", "33-34"], per_contact=0.5, unit="mm")
    return {"allow": [front, allowed("a2", "enamel-reduction", contacts=LOWER_BACK, per_contact=each, unit="mm")]}


ADVICE, PRACTICE = "reduction-per-contact-beyond-advice", "reduction-per-contact-beyond-practice"
SUM, PART, ALL = "reduction-sum-beyond-contacts", "reduction-in-part-beyond-advice", "reduction-in-all-beyond-practice"
ADDS = "reduction-total-does-not-add-up"

CASES = (
    # Hudson 1956 and Fillion 1992: 0.2 a surface of a lower incisor, 0.4 a contact; Sarig 2015: 0.5 at most.
    Case(ADVICE, "lower incisors below", reduced(["41-31"], per_contact=0.39)),
    Case(ADVICE, "lower incisors at", reduced(["41-31"], per_contact=0.4)),
    Case(ADVICE, "lower incisors above", reduced(["41-31"], per_contact=0.41), FIRST),
    Case(ADVICE, "written from the patient's left", reduced(["31-41"], per_contact=0.41), FIRST),
    Case(ADVICE, "a clause with five contacts is told once", reduced(LOWER_FRONT, per_contact=0.5), FIRST),
    Case(ADVICE, "a small sum holds the amount per contact down", reduced(["41-31"], per_contact=0.5, in_all=0.3)),
    Case(ADVICE, "only a sum is stated", reduced(["41-31"], in_all=0.5)),
    Case(ADVICE, "above practice the other rule speaks", reduced(["41-31"], per_contact=0.6)),
    # Sarig 2015: 0.5 in front, the upper front and 43-42.
    Case(ADVICE, "the upper front at", reduced(["13-12", "12-11", "11-21"], per_contact=0.5)),
    Case(ADVICE, "the upper front above", reduced(["12-11"], per_contact=0.51), FIRST),
    Case(ADVICE, "lateral and canine at", reduced(["43-42", "32-33"], per_contact=0.5)),
    Case(ADVICE, "lateral and canine above", reduced(["32-33"], per_contact=0.51), FIRST),
    # Sheridan 1985: 0.8 behind.
    Case(ADVICE, "premolars at", reduced(["14-15", "15-16"], per_contact=0.8)),
    Case(ADVICE, "premolars above", reduced(["15-16"], per_contact=0.81), FIRST),
    # Sarig 2015: 0.5 in front and 1.0 behind; Fillion 1992: 0.3 a surface of the upper front, 0.9 at 3-4.
    Case(PRACTICE, "lower incisors at", reduced(["41-31"], per_contact=0.5)),
    Case(PRACTICE, "lower incisors above", reduced(["41-31"], per_contact=0.51), FIRST),
    Case(PRACTICE, "the upper front at", reduced(["12-11"], per_contact=0.6)),
    Case(PRACTICE, "the upper front above", reduced(["12-11"], per_contact=0.61), FIRST),
    Case(PRACTICE, "canine and premolar at", reduced(["13-14"], per_contact=0.9)),
    Case(PRACTICE, "canine and premolar above", reduced(["13-14"], per_contact=0.91), FIRST),
    Case(PRACTICE, "premolar and molar at", reduced(["35-36"], per_contact=1.0)),
    Case(PRACTICE, "premolar and molar above", reduced(["35-36"], per_contact=1.01), FIRST),
    # By hand: 0.4 at each of two contacts is 0.8.
    Case(SUM, "two contacts below", reduced(["42-41", "41-31"], in_all=0.79)),
    Case(SUM, "two contacts at", reduced(["42-41", "41-31"], in_all=0.8)),
    Case(SUM, "two contacts above", reduced(["42-41", "41-31"], in_all=0.81), FIRST),
    Case(SUM, "an amount per contact is stated", reduced(["42-41", "41-31"], in_all=0.9, per_contact=0.45)),
    # By hand, 46 to 36: 3 x 0.4 + 2 x 0.5 + 2 x 0.6 + 2 x 0.8 + 2 x 0.8 = 6.6.
    Case(SUM, "an arch at", {"allow": [allowed("a1", "enamel-reduction", arch="lower", in_all=6.6, unit="mm")]}),
    Case(
        SUM,
        "an arch above",
        {"allow": [allowed("a1", "enamel-reduction", arch="lower", in_all=6.61, unit="mm")]},
        FIRST,
    ),
    # Sheridan 1985: 8 contacts of 0.8 behind the canines, 6.4.
    Case(PART, "behind the canines at", reduced(UPPER_BACK, per_contact=0.8)),
    Case(PART, "behind the canines above", reduced(UPPER_BACK, per_contact=0.81), FIRST),
    Case(PART, "the same shared by two arches", reduced([*UPPER_BACK[:4], *LOWER_BACK[:4]], per_contact=0.9)),
    Case(PART, "a smaller sum binds", reduced(UPPER_BACK, per_contact=0.9, in_all=6.4)),
    # Tuverson 1980: 4.0 from canine to canine.
    Case(PART, "in front at", reduced(LOWER_FRONT, in_all=4)),
    Case(PART, "in front above", reduced(LOWER_FRONT, in_all=4.01), FIRST),
    # Sheridan 1985: 8 x 0.8 + 5 x 0.5 = 8.9; here 7 x 0.5 + 6 x 0.9 = 8.9.
    Case(ALL, "the lower arch at", whole_lower(0.9)),
    Case(ALL, "the lower arch above", whole_lower(0.91), FIRST),
    Case(PART, "of the whole arch the other rule speaks", whole_lower(1.0)),
    # Fillion 1992: 10.2 in the upper arch.
    Case(ALL, "as much in the upper arch", reduced(UPPER_BACK, in_all=10.2)),
    Case(ALL, "more in the upper arch", reduced(UPPER_BACK, in_all=10.21), FIRST),
    Case(ADDS, "the sum of the contacts", reduced(["42-41", "41-31", "31-32"], per_contact=0.3, in_all=0.9)),
    Case(ADDS, "less than the contacts", reduced(["42-41", "41-31"], per_contact=0.3, in_all=0.5)),
    Case(ADDS, "a hundredth more", reduced(["42-41", "41-31"], per_contact=0.3, in_all=0.61), FIRST),
    Case(ADDS, "only a sum", reduced(["42-41", "41-31"], in_all=0.8)),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


@pytest.mark.parametrize("case", **table(*(case for case in CASES if case.pointers)))
def test_one_amount_is_told_by_one_rule(case):
    assert [rule.id for rule in RULES if pointers(case._replace(rule=rule.id), RULES)] == [case.rule]
