"""Two prescriptions: which clause is which, facts, conflicts, lineage; and what must hold of any two."""

from collections import Counter
from random import Random

import pytest
from tests.validator.wellposed.consistency.ordinary import SOUND, allowed, document, found, must
from tests.validator.wellposed.kinematics.generate import prescription as generated
from tests.validator.wellposed.kinematics.generate import read
from tests.validator.wellposed.revisions.cases import digest, prescription
from tests.validator.wellposed.rules.sound import sound

from wellposed.model import Prescription
from wellposed.revisions.comparing import compared
from wellposed.revisions.result import CHANGES, MIRRORED, FactChange, Lineage, Opposite

SEEDS = range(24)


def made(document):
    return Prescription.model_validate(document)


def ids(change):
    return change.before and change.before.id, change.after and change.after.id


def became(old, new):
    """Ids before and after, and what became of each clause that is not unchanged."""
    changes = compared(prescription(**old), prescription(**new)).clauses
    return {ids(one): one.change for one in changes if one.change != "unchanged"}


# what must hold of any two


@pytest.mark.parametrize("seed", SEEDS)
def test_an_order_against_itself_is_unchanged(seed):
    for order in (made(sound(seed)), read(generated(seed)), made(document(**list(SOUND.values())[seed % len(SOUND)]))):
        found_of = compared(order, order)
        assert {one.change for one in found_of.clauses} <= {"unchanged"}
        assert (found_of.facts, found_of.opposites) == ((), ())
        assert found_of.weighed.introduced == found_of.weighed.settled == ()
        assert found_of.lineage == Lineage(
            same_id=True, next_one=False, replaces=None if order.revision == 1 else False, same=True
        )


def told(comparison, mirrored=False):
    """Every change as ids, word, asks and opens; turned round if so asked."""
    said = Counter()
    for one in comparison.clauses:
        words = (one.change, one.asks, one.opens)
        pair = ids(one)
        said[(pair[::-1], *(MIRRORED.get(w, w) for w in words)) if mirrored else (pair, *words)] += 1
    return said


@pytest.mark.parametrize("seed", SEEDS)
def test_the_other_way_round_is_the_mirror(seed):
    random = Random(seed)
    one, other = read(generated(seed)), read(generated(random.randrange(300)))
    there, back = compared(one, other), compared(other, one)
    assert told(back) == told(there, mirrored=True)
    assert {(o.after, o.before) for o in back.opposites} == {(o.before, o.after) for o in there.opposites}
    assert (back.weighed.before, back.weighed.after) == (there.weighed.after, there.weighed.before)
    assert {f.clauses for f in back.weighed.introduced} == {f.clauses for f in there.weighed.settled}


def shuffled(value, random):
    """The same with the lists whose order means nothing in another order."""
    plain = ("teeth", "align", "hold", "contacts", "close", "must", "because")
    if isinstance(value, dict):
        return {
            name: random.sample(inner, len(inner))
            if name in plain and isinstance(inner, list)
            else shuffled(inner, random)
            for name, inner in value.items()
        }
    return [shuffled(inner, random) for inner in value] if isinstance(value, list) else value


def renamed(value):
    """The same with every id another one."""
    if isinstance(value, dict):
        return {
            name: f"{inner}x"
            if name in ("id", "first", "then", "before") and isinstance(inner, str) and len(inner) < 6
            else [f"{one}x" for one in inner]
            if name in ("because", "about")
            else renamed(inner)
            for name, inner in value.items()
        }
    return [renamed(inner) for inner in value] if isinstance(value, list) else value


@pytest.mark.parametrize("seed", SEEDS)
def test_another_order_of_lists_and_other_names_change_nothing(seed):
    order = sound(seed)
    again = shuffled({**renamed(order), "id": order["id"]}, Random(seed))
    changes = compared(made(order), made(again)).clauses
    assert {one.change for one in changes} == {"reworded"}
    assert all(one.after.id == f"{one.before.id}x" for one in changes)


# which clause is which


KEEPS = [must("k1", hold=["16"]), must("k2", hold=["26"])]
ORDER = must("m1", teeth=["11", "21"], motion="intrusion", at_least=1, unit="mm")


@pytest.mark.parametrize(
    "old, new, expected",
    [
        ({"keep": KEEPS}, {"keep": KEEPS[::-1]}, {}),
        (
            {"keep": KEEPS},
            {"keep": [must("k2", hold=["16"]), must("k1", hold=["26"])]},
            {("k1", "k2"): "reworded", ("k2", "k1"): "reworded"},
        ),
        ({"keep": KEEPS}, {"keep": KEEPS[:1]}, {("k2", None): "dropped"}),
        ({"keep": KEEPS[:1]}, {"keep": KEEPS}, {(None, "k2"): "added"}),
        (
            {"goals": [must("g1", level="upper")]},
            {"goals": [must("g1", level="lower")]},
            {("g1", None): "dropped", (None, "g1"): "added"},
        ),
        (
            {"movements": [ORDER]},
            {"movements": [{**ORDER, "id": "m7", "motion": "extrusion"}]},
            {("m1", "m7"): "reversed"},
        ),
        (
            {"allow": [allowed("a1", "widening", arch="upper", up_to=2, unit="mm")]},
            {"exclude": [{"id": "x1", "means": "widening", "arch": "upper"}]},
            {("a1", "x1"): "reversed"},
        ),
        (
            {"attachments": [{"id": "t1", "must": ["13", "23"]}]},
            {"attachments": [{"id": "t1", "must": ["13"]}, {"id": "t2", "must_not": ["23"]}]},
            {("t1", "t1"): "loosened", (None, "t2"): "added"},
        ),
    ],
)
def test_which_clause_is_which(old, new, expected):
    assert became(old, new) == expected


def test_an_id_that_names_something_else_now_is_said():
    old, new = (prescription(goals=[must("g1", level=arch)]) for arch in ("upper", "lower"))
    assert {one.reused for one in compared(old, new).clauses} == {True}


def test_a_clause_that_says_the_opposite_of_another_is_told_beside_what_became_of_it():
    old = prescription(attachments=[{"id": "t1", "must": ["13", "23"]}], movements=[ORDER])
    new = prescription(
        attachments=[{"id": "t1", "must": ["13"]}, {"id": "t2", "must_not": ["23"]}], keep=[must("k1", hold=["11"])]
    )
    assert set(compared(old, new).opposites) == {Opposite("t1", "t2"), Opposite("m1", "k1")}


def test_reasons_are_compared_by_what_they_are_not_by_their_names():
    reasons = [found("f1", "overbite", 5), found("f2", "overjet", 5)]
    old = prescription(findings=reasons, goals=[must("g1", level="lower", because=["f1"])])
    same = [found("f9", "overbite", 5), found("f2", "overjet", 5)]
    other = [found("f2", "overbite", 5), found("f1", "overjet", 5)]
    new = prescription(findings=same, goals=[must("g1", level="lower", because=["f9"])])
    assert compared(old, new).clauses[-1].change == "reworded"
    new = prescription(findings=other, goals=[must("g1", level="lower", because=["f1"])])
    (change,) = [one for one in compared(old, new).clauses if one.section == "goals"]
    assert (change.change, [one.name for one in change.members]) == ("changed", ["because"])


def test_members_that_differ_are_told_as_they_stand():
    old, new = (prescription(movements=[{**ORDER, **more}]) for more in ({"at_most": 2}, {"teeth": ["21", "11", "12"]}))
    (change,) = compared(old, new).clauses
    assert [(one.name, one.before, one.after) for one in change.members] == [
        ("teeth", ["11", "21"], ["21", "11", "12"]),
        ("at_most", 2.0, None),
    ]


# facts


def test_facts_are_told_and_private_values_are_not():
    old = prescription(
        treat={"arches": "upper"},
        patient={"reference": "P-1", "age_years": 30},
        conditions=[{"condition": "thin-gingiva", "teeth": ["31"]}],
        notes=[{"text": "x"}],
    )
    new = prescription(
        treat={"arches": "both"},
        patient={"reference": "P-1", "age_years": 31},
        teeth={"upper": ["11"], "lower": ["41"], "particulars": [{"tooth": "11", "states": ["veneer"]}]},
        conditions=[],
        notes=[{"text": "y"}],
    )
    facts = compared(old, new).facts
    assert facts[:2] == (
        FactChange("treat", "arches", "changed", "upper", "both"),
        FactChange("patient", "age_years", "changed"),
    )
    assert FactChange("teeth", "12", "dropped", "upper", None) in facts
    assert FactChange("states", "11", "added", None, ["veneer"]) in facts
    assert FactChange("conditions", "thin-gingiva 31", "dropped", [""], None) in facts
    assert FactChange("notes", "", "changed") in facts
    assert {one.section for one in facts} == {"treat", "patient", "teeth", "states", "conditions", "notes"}


def test_words_said_of_a_tooth_are_told():
    teeth = {"upper": ["11"], "lower": ["41"]}
    old, new = (
        prescription(teeth={**teeth, "particulars": [{"tooth": "11", "states": ["crown"], "words": words}]})
        for words in ("chipped", "worn")
    )
    assert compared(old, new).facts == (FactChange("states", "11", "changed", ["crown", "chipped"], ["crown", "worn"]),)


@pytest.mark.parametrize("before, after, change", [(None, [], "added"), ([], None, "dropped")])
def test_none_and_not_stated_differ(before, after, change):
    old, new = (prescription(records=records) for records in (before, after))
    assert compared(old, new).facts == (FactChange("records", "", change),)


# both checked


def intruded(least, **more):
    """Intrusion against a kept overbite: by the arithmetic of the specification 0.5 mm is all there is."""
    order = must("m1", teeth=["12", "11", "21", "22"], motion="intrusion", at_least=least, unit="mm")
    kept = must("k1", measure="overbite", within=0.5, unit="mm")
    return {"findings": [found("f1", "overbite", 3)], "movements": [order], "keep": [kept], **more}


def test_a_conflict_that_came_in_is_told_and_one_that_is_settled():
    sound_one, bad = prescription(**intruded(0.5)), prescription(**intruded(1.8))
    there, back = compared(sound_one, bad).weighed, compared(bad, sound_one).weighed
    assert (there.before, there.after) == ("possible", "contradictory")
    assert [(one.rule, one.clauses) for one in there.introduced] == [("cannot-hold-together", ("k1", "m1"))]
    assert (there.settled, there.standing) == ((), ())
    assert [one.clauses for one in back.settled] == [("k1", "m1")]


def test_a_conflict_that_stays_is_neither_though_its_clauses_are_renamed():
    old = intruded(1.8)
    new = {**intruded(2), "keep": [{**old["keep"][0], "id": "k9"}]}
    weighed = compared(prescription(**old), prescription(**new)).weighed
    assert (weighed.introduced, weighed.settled) == ((), ())
    assert [one.clauses for one in weighed.standing] == [("k9", "m1")]


def test_an_id_used_for_another_clause_makes_no_old_conflict_of_a_new_one():
    old = intruded(1.8)
    out = must("m1", teeth=["11"], motion="labial", at_least=0.5, unit="mm")
    raised = must("m2", teeth=["16", "26", "36", "46"], motion="extrusion", at_least=1, unit="mm")
    weighed = compared(prescription(**old), prescription(**{**old, "movements": [out, raised]})).weighed
    assert [one.clauses for one in weighed.introduced] == [("k1", "m2")]
    assert [one.clauses for one in weighed.settled] == [("k1", "m1")]


# lineage


@pytest.mark.parametrize(
    "changes, expected",
    [
        ({"revision": 2, "replaces": digest(document())}, (True, True, True)),
        ({"revision": 2, "replaces": "00" * 32}, (True, True, False)),
        ({"revision": 3, "replaces": digest(document())}, (True, False, True)),
        ({"id": "HR-9"}, (False, False, None)),
        ({}, (True, False, None)),
    ],
)
def test_whether_it_is_the_next_revision_is_said(changes, expected):
    lineage = compared(prescription(), prescription(**changes)).lineage
    assert (lineage.same_id, lineage.next_one, lineage.replaces) == expected
    assert lineage.follows == (expected == (True, True, True))


def test_counts_are_those_of_the_clauses():
    comparison = compared(prescription(keep=KEEPS), prescription(keep=KEEPS[:1]))
    assert list(comparison.counts()) == list(CHANGES)
    assert {word: count for word, count in comparison.counts().items() if count} == {"dropped": 1, "unchanged": 1}
