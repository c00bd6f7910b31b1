"""Requests: the clause said again where it is not met, and nothing else; the silence said where it was broken."""

import json
from functools import cache
from random import Random

import pytest
from tests.validator.wellposed.render.review.made import (
    REVIEWS,
    line,
    order,
    part,
    review,
    unmet,
)
from tests.validator.wellposed.review.points import feasible
from tests.validator.wellposed.review.test_points import disturbed

from wellposed.model import Setup
from wellposed.review import review as held_against
from wellposed.review.requests import asked_again, requests, revised_first, unopened
from wellposed.review.result import Unasked
from wellposed.vocabulary.motions import MOTIONS, VARIABLES

SHAPE = "rectangular-vertical"
FRONT = ["42", "41", "31", "32"]
MORE = {
    "goals": [
        {"id": "g1", "strength": "must", "close": ["12-11", "11-21"]},
        {"id": "g2", "strength": "must", "close_arch": "lower"},
        {"id": "g3", "strength": "must", "leave": "23-24", "amount": 2, "unit": "mm"},
    ],
    "keep": [
        {"id": "k1", "strength": "must", "variable": "torque", "teeth": ["13", "23"], "within": 3, "unit": "deg"},
        {"id": "k2", "strength": "must", "motion": "extrusion", "teeth": ["16", "26"], "within": 0.2, "unit": "mm"},
    ],
    "allow": [
        {"id": "a1", "use": "enamel-reduction", "arch": "upper", "in_all": 2, "unit": "mm"},
        {"id": "a2", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"},
        {"id": "a3", "use": "distal-movement", "arch": "upper", "sides": ["right"], "up_to": 1, "unit": "mm"},
        {"id": "a4", "use": "class-ii-elastics", "sides": ["left"], "up_to": 1, "unit": "mm"},
        {"id": "a5", "use": "movement", "teeth": ["33", "43"], "motion": "intrusion", "up_to": 1, "unit": "mm"},
        {"id": "a6", "use": "incisor-retraction", "arch": "upper", "up_to": 1, "unit": "mm"},
    ],
    "exclude": [{"id": "x1", "means": "enamel-reduction", "arch": "lower"}],
    "attachments": [
        {"id": "t1", "must": ["14", "24"], "reason": "movement", "shape": SHAPE},
        {"id": "t2", "otherwise": "none"},
    ],
    "staging": {
        "id": "s1",
        "strength": "must",
        "largest_steps": [
            {"variable": "vertical", "amount": 0.2, "unit": "mm"},
            {"variable": "vertical", "amount": 0.1, "unit": "mm", "teeth": FRONT},
            {"variable": "out", "amount": 0.25, "unit": "mm"},
        ],
        "most_aligners": 20,
        "wear_interval_days": 14,
    },
}


def asked(told, prescription, **more):
    return requests(told, prescription, **more).model_dump(mode="json", exclude_unset=True)


def off(what, where, unit="mm", asked_=(None, 1.0), delivered=1.5, by=0.5):
    return part(what, where, unit, asked_, delivered, off=by, met=False)


def must(number, **said):
    return {"id": f"r{number}", "strength": "must", **said}


def use(number, because, means, **said):
    """A request that repeats an allowance, in mm."""
    reason = {} if because is None else {"because": [because]}
    return {"id": f"r{number}", "use": means, "unit": "mm", **reason, **said}


@pytest.mark.parametrize(
    "sentence, clause, parts, expected",
    [
        (
            "contacts still open",
            "g1",
            [off("gap", "12-11")],
            {"goals": [must(2, because=["g1"], close=["12-11"])]},
        ),
        (
            "an arch is closed as a whole",
            "g2",
            [off("gap", ""), off("gap", "42-41")],
            {"goals": [must(2, because=["g2"], close_arch="lower")]},
        ),
        (
            "a space of its amount",
            "g3",
            [off("gap", "23-24")],
            {"goals": [must(2, because=["g3"], leave="23-24", amount=2.0, unit="mm")]},
        ),
        (
            "one of two teeth kept",
            "k1",
            [off("torque", "23", "deg")],
            {"keep": [must(2, because=["k1"], variable="torque", teeth=["23"], within=3.0, unit="deg")]},
        ),
        (
            "a motion kept",
            "k2",
            [off("vertical", "16")],
            {"keep": [must(2, because=["k2"], motion="extrusion", teeth=["16"], within=0.2, unit="mm")]},
        ),
        (
            "an allowance of an arch, passed at a contact",
            "a1",
            [off("reduction", "12-11")],
            {
                "allow": [
                    use(
                        2,
                        "a1",
                        "enamel-reduction",
                        contacts=["12-11"],
                        in_all=2.0,
                        unit="mm",
                    )
                ]
            },
        ),
        (
            "an allowance passed in all",
            "a1",
            [off("reduction-in-all", "")],
            {
                "allow": [
                    use(
                        2,
                        "a1",
                        "enamel-reduction",
                        arch="upper",
                        in_all=2.0,
                        unit="mm",
                    )
                ]
            },
        ),
        (
            "a pair too wide",
            "a2",
            [off("width", "14/24")],
            {
                "allow": [
                    use(
                        2,
                        "a2",
                        "widening",
                        arch="upper",
                        teeth=["14", "24"],
                        up_to=2.0,
                        unit="mm",
                    )
                ]
            },
        ),
        (
            "a molar too far back",
            "a3",
            [off("along", "17")],
            {
                "allow": [
                    use(
                        2,
                        "a3",
                        "distal-movement",
                        arch="upper",
                        teeth=["17"],
                        up_to=1.0,
                        unit="mm",
                    )
                ]
            },
        ),
        (
            "elastics are of a side, not of teeth",
            "a4",
            [off("along", "25")],
            {
                "allow": [
                    use(
                        2,
                        "a4",
                        "class-ii-elastics",
                        sides=["left"],
                        up_to=1.0,
                        unit="mm",
                    )
                ]
            },
        ),
        (
            "one of two teeth allowed to move",
            "a5",
            [off("vertical", "43")],
            {
                "allow": [
                    use(
                        2,
                        "a5",
                        "movement",
                        teeth=["43"],
                        motion="intrusion",
                        up_to=1.0,
                        unit="mm",
                    )
                ]
            },
        ),
        (
            "incisors that were to go alike are named together",
            "a6",
            [off("alike", "11/12")],
            {
                "allow": [
                    use(
                        2,
                        "a6",
                        "incisor-retraction",
                        arch="upper",
                        up_to=1.0,
                        unit="mm",
                    )
                ]
            },
        ),
        (
            "enamel taken where it was excluded",
            "x1",
            [off("reduction", "42-41")],
            {"exclude": [{"id": "r2", "means": "enamel-reduction", "teeth": ["42", "41"], "because": ["x1"]}]},
        ),
        (
            "an attachment that is missing",
            "t1",
            [off("attachment", "24", "1")],
            {
                "attachments": [
                    {
                        "id": "r2",
                        "because": ["t1"],
                        "must": ["24"],
                        "reason": "movement",
                        "shape": "rectangular-vertical",
                    }
                ]
            },
        ),
        (
            "none elsewhere, said of the teeth that carry one",
            "t2",
            [off("attachment", "15", "1"), off("attachment", "25", "1")],
            {"attachments": [{"id": "r2", "because": ["t2"], "must_not": ["15", "25"]}]},
        ),
        (
            "of a staging what is not met",
            "s1",
            [off("step", "vertical 42"), off("aligners", "upper", "1")],
            {
                "staging": must(
                    2,
                    largest_steps=[{"variable": "vertical", "amount": 0.1, "unit": "mm", "teeth": FRONT}],
                    most_aligners=20,
                )
            },
        ),
        (
            "a step of a tooth no other entry names",
            "s1",
            [off("step", "vertical 13")],
            {"staging": must(2, largest_steps=[{"variable": "vertical", "amount": 0.2, "unit": "mm"}])},
        ),
    ],
)
def test_a_clause_is_said_again_where_it_is_not_met(sentence, clause, parts, expected):
    prescription = order(**MORE, movements=[])
    outcome = "beyond" if clause[0] == "a" else "not-met"
    told = review(prescription, **{clause: unmet(*parts, outcome=outcome)})
    assert (sentence, asked(told, prescription)) == (sentence, expected)


@pytest.mark.parametrize(
    "sentence, moved, expected",
    [
        (
            "teeth nothing opened, alike together",
            [Unasked("out", "13", "mm", 0.6, 0.0, 0.1), Unasked("out", "23", "mm", -0.4, 0.0, 0.1)],
            {"keep": [must(2, variable="out", teeth=["13", "23"], within=0.0, unit="mm")]},
        ),
        (
            "one way where the other is open",
            [Unasked("vertical", "41", "mm", 0.5, 0.0, 0.1)],
            {"keep": [must(2, motion="extrusion", teeth=["41"], within=0.0, unit="mm")]},
        ),
        (
            "no further than it is opened, to hundredths and never more",
            [Unasked("along", "33", "mm", -1.3, 0.456, 0.1, "g1")],
            {"keep": [must(2, motion="distal", teeth=["33"], within=0.45, unit="mm")]},
        ),
        (
            "enamel nothing opened",
            [Unasked("reduction", "12-11", "mm", 0.3, 0.0, 0.1)],
            {"allow": [use(2, None, "enamel-reduction", contacts=["12-11"], per_contact=0.0)]},
        ),
        (
            "the gap at the back",
            [Unasked("posterior-open-bite", "", "mm", 0.8, 0.0, 0.1)],
            {"keep": [must(2, measure="posterior-open-bite", within=0.0, unit="mm")]},
        ),
        (
            "what the order needs is not asked back",
            [Unasked("out", "13", "mm", 0.6, 0.0, 0.1, doing="prescription")],
            {},
        ),
    ],
)
def test_what_moved_unasked_is_asked_to_stay(sentence, moved, expected):
    assert (sentence, asked(review(order(), unasked=moved), order())) == (sentence, expected)


def test_what_an_allowance_brings_with_it_is_asked_to_stay_beside_it():
    moved = [Unasked("torque", "42", "deg", 9.0, 4.0, 1.0, "a2")]
    passed = part("torque", "42", "deg", (None, 4.0), 9.0, off=5.0, tolerance=1.0, met=False)
    told = review(order(), unasked=moved, a2=unmet(passed, outcome="beyond"))
    assert asked(told, order()) == {
        "keep": [must(2, motion="labial-crown-torque", teeth=["42"], within=4.0, unit="deg")],
        "allow": [use(3, "a2", "incisor-advance", arch="lower", up_to=1.0)],
    }


def test_what_an_unmet_clause_tells_is_not_asked_twice():
    moved = part("along", "16", "mm", (0.0, 0.0), -0.5, off=-0.5, met=False)
    told = review(order(), unasked=[Unasked("along", "16", "mm", -0.5, 0.0, 0.1)], k3=unmet(moved))
    assert asked(told, order()) == {"keep": [must(2, because=["k3"], hold=["16"])]}
    assert unopened(told) == ()


FAR = part("overbite", "", "mm", (2.0, 3.0), 3.3, off=0.3, met=False, before=4.5)
LEFT = part("lower-midline", "", "mm", (-0.3, 0.3), -1.0, off=-0.7, met=False, before=-1.0)


@pytest.mark.parametrize(
    "sentence, told, more, expected",
    [
        ("another setup can", {"g2": unmet(FAR)}, {}, ["g2"]),
        ("it may be that it can", {"g2": unmet(FAR, doing="either")}, {}, ["g2"]),
        ("none can", {"g2": unmet(FAR, doing="prescription")}, {}, []),
        ("a wish", {"g3": unmet(LEFT)}, {}, []),
        ("a wish, if so said", {"g3": unmet(LEFT)}, {"also_preferred": True}, ["g3"]),
        ("accepted as it is", {"g2": unmet(FAR)}, {"accepted": ["g2"]}, []),
        ("what no clause can ask", {"v1": unmet(doing="setup")}, {}, []),
    ],
)
def test_whether_a_clause_is_asked_again(sentence, told, more, expected):
    found = asked(review(order(), **told), order(), **more)
    because = [name for section in found.values() for one in section for name in one.get("because", ())]
    assert (sentence, because) == (sentence, expected)


def test_what_no_setup_can_meet_is_revised_first():
    told = review(order(), g2=unmet(FAR, doing="prescription"), g3=unmet(LEFT, doing="prescription"))
    assert revised_first(told) == ("g2",)


@pytest.mark.parametrize("name", REVIEWS)
def test_new_ids_are_not_those_of_the_prescription(name):
    reviewed, prescription, _ = REVIEWS[name]
    found = json.dumps(asked(reviewed, prescription))
    assert '"id": "r1"' not in found


def test_a_measure_that_changes_asks_nothing_by_itself():
    assert asked(review(order(), measures=[line("overbite", 4.5, 9.0)]), order()) == {}


# a setup corrected as the requests say

CASES = 100


@cache
def cases():
    """Feasible cases, each with a setup that meets it and the same moved off it at three teeth."""
    random, found = Random(2026), []
    for seed in range(900):
        if len(found) < CASES and feasible(seed):
            case, good = feasible(seed)
            spoilt = good
            for _ in range(3):
                spoilt, _tooth = disturbed(case, spoilt, random)
            found.append((seed, case.prescription, good, spoilt))
    return found


def named(found, rx):
    """What the requests speak of: (tooth, variable), contacts; None where they speak of a measure or a whole arch."""
    line = [tooth for row in (rx.teeth.upper, rx.teeth.lower) for tooth in row]
    moves = set()
    for clause in (*(found.keep or ()), *(found.movements or ()), *(found.exclude or ()), *(found.allow or ())):
        teeth = getattr(clause, "teeth", None) or getattr(clause, "hold", None)
        if getattr(clause, "use", "") == "enamel-reduction" and clause.contacts:
            moves |= {("reduction", contact) for contact in clause.contacts}
        elif teeth is None:
            return None
        else:
            moves |= {(tooth, variable) for tooth in teeth for variable in spoken(clause)}
    return None if found.goals else {(tooth, variable) for tooth, variable in moves if tooth in (*line, "reduction")}


def spoken(clause):
    """The variables a clause is about."""
    if hasattr(clause, "motion"):
        return (MOTIONS[clause.motion].variable,)
    if hasattr(clause, "variable"):
        return (clause.variable,)
    by_use = {"widening": ("out",), "narrowing": ("out",), "intrusion": ("vertical",), "extrusion": ("vertical",)}
    by_use |= {"incisor-advance": ("out",), "incisor-retraction": ("out",)}
    return by_use.get(getattr(clause, "use", ""), VARIABLES)


def corrected(spoilt, good, spoken_of):
    """The spoilt setup with all that the requests speak of as the good one has it, and nothing else."""
    document, model = (one.model_dump(mode="json", exclude_unset=True) for one in (spoilt, good))
    for table, right in zip(document["movements"], model["movements"], strict=True):
        for tooth in table["values"]:
            if spoken_of is None or (tooth, table["variable"]) in spoken_of:
                table["values"][tooth] = right["values"][tooth]
    return Setup.model_validate(document)


@pytest.mark.slow
def test_a_setup_corrected_as_the_requests_say_is_met():
    strict = 0
    for seed, rx, good, spoilt in cases():
        told = held_against(rx, spoilt)
        found = requests(told, rx)
        wanted = {one.id for one in asked_again(told)}
        because = [name for clause in clauses_of(found) for name in getattr(clause, "because", None) or ()]
        assert (seed, sorted(because)) == (seed, sorted(wanted - staged(rx)))
        spoken_of = named(found, rx)
        strict += bool(wanted) and spoken_of is not None
        after = held_against(rx, corrected(spoilt, good, spoken_of))
        assert (seed, [one.id for one in asked_again(after)]) == (seed, [])
        assert (seed, [one for one in unopened(after) if one.doing != "prescription"]) == (seed, [])
    assert strict >= CASES // 10


def clauses_of(found):
    sections = ("goals", "keep", "movements", "allow", "exclude", "attachments")
    return [clause for section in sections for clause in getattr(found, section) or ()]


def staged(rx):
    """A staging gives no reasons: its request is the one staging there is."""
    return {rx.staging.id} if rx.staging else set()


@pytest.mark.slow
def test_every_request_is_met_by_a_good_setup_and_not_by_the_one_it_criticises():
    for seed, rx, good, spoilt in cases():
        found = requests(held_against(rx, spoilt), rx)
        sections = {name: getattr(found, name) or () for name in ("goals", "keep", "movements", "exclude")}
        asked_for = rx.model_copy(update=sections)
        ids = {clause.id for name in sections for clause in sections[name]}
        for plan, outcome in ((good, "met"), (spoilt, "not-met")):
            told = held_against(asked_for, plan)
            assert (seed, {one.outcome for one in told.clauses if one.id in ids} - {outcome}) == (seed, set())
