"""A setup that is a point of the linear system meets every clause; moved off it, it fails what it should, no more.

The point is found by scipy's solver, and what a disturbed point breaks is read off the rows of the linear system: the
review uses neither.
"""

from math import inf
from random import Random
from types import SimpleNamespace

import pytest
from tests.validator.wellposed.review.points import exact_room, feasible

from wellposed.kinematics.case import must
from wellposed.review import engine, matter, review
from wellposed.review.matter import Matter
from wellposed.review.sums import Sums
from wellposed.vocabulary.motions import VARIABLE_UNITS
from wellposed.vocabulary.teeth import position

SEEDS, PARTS, FEASIBLE = 900, 9, 500
BY = {"mm": 1.0, "deg": 9.0}
BENT = 0.2  # mm of room that the exact geometry sees otherwise than the sums
ROOM = ("gap", "overlap", "upper-crowding", "lower-crowding", "upper-spacing", "lower-spacing")
NEAR = {"mm": (0.02, 0.35), "deg": (0.5, 1.5)}  # between these a broken bound may or may not be told


@pytest.fixture(autouse=True)
def clauses_alone(monkeypatch):
    """Outcomes and what moved unasked are looked at here: not whose doing they are, no measures, no rules."""
    for name in ("measure_lines", "setup_findings", "questions"):
        monkeypatch.setattr(engine, name, lambda *_: ())
    for name in ("with_doing", "broken_by"):
        monkeypatch.setattr(engine, name, lambda judgement, reach, one: one)
    monkeypatch.setattr(matter, "judged", lambda _: SimpleNamespace(verdict="not looked at"))
    monkeypatch.setattr(matter, "Case", once(matter.Case))


def once(made):
    """The same, made once for the same arguments; these are kept, so that no other can take the place of one."""
    kept = {}

    def found(*given, **named):
        key = (*map(id, given), *named.items())
        if key not in kept:
            kept[key] = made(*given, **named), given
        return kept[key][0]

    return found


def seeds(part):
    return range(part * SEEDS // PARTS, (part + 1) * SEEDS // PARTS)


def failing(told):
    return {one.id for one in told.clauses if one.outcome in ("not-met", "beyond")}


def toothless(one):
    """Whether the teeth it is about are not there."""
    return all(part.why == "teeth-missing" for part in one.parts)


def seen_otherwise(part, bent):
    """What no member of the system says, or only with a change counted on, or otherwise where the line bends much."""
    if bent and part.what in ROOM:
        return True
    return part.what in ("alike", "displacement-left", "rotation-left") or part.why == "expected"


def staged(case):
    """A setup without a path or aligners says nothing of steps."""
    return {case.prescription.staging.id} if case.prescription.staging else set()


def uncheckable(case):
    """Clauses the check itself cannot weigh, and those no sum is behind."""
    return {lack.clause_id for lack in case.full.unmet} | {
        goal.id for goal in case.prescription.goals or () if hasattr(goal, "level")
    }


@pytest.mark.parametrize("part", range(PARTS))
def test_a_setup_at_a_point_of_the_system_meets_every_clause(part):
    for seed in seeds(part):
        if feasible(seed):
            case, setup = feasible(seed)
            told = review(case.prescription, setup)
            wished = {one.id for one in told.clauses if one.strength == "prefer"}
            assert (seed, failing(told) - wished, told.unasked) == (seed, set(), ())
            open_ones = {one.id for one in told.clauses if one.outcome == "cannot-be-told" and not toothless(one)}
            assert (seed, open_ones - uncheckable(case) - staged(case) - wished) == (seed, set())


def test_they_are_enough():
    assert sum(feasible(seed) is not None for seed in range(SEEDS)) >= FEASIBLE


def broken(case, setup):
    """Per member how far the linear system says it is broken, mm or deg: (clause id or None for a silence) to most."""
    frame, system = case.full.frame, case.full.system
    values = Sums(Matter(case.prescription, setup)).columns
    units = {column: VARIABLE_UNITS[variable] for (_, variable), column in frame.columns.items()}
    found = {}
    for key in must(case.full, limits=False):
        for bound in system.members[key].bounds:
            terms = system.row_terms[bound.at] if bound.is_row else {bound.at: 1.0}
            value = sum(factor * values.get(column, 0.0) for column, factor in terms.items())
            unit = "deg" if any(units.get(column) == "deg" for column in terms) else "mm"
            name = key[1] if key[0] == "clause" else None
            over = bound.side * (value - bound.value)
            most = found.get(name, (-inf, unit))
            found[name] = max(most, (over, unit))
    return found


def disturbed(case, setup, random):
    """The setup with one movement changed by more than any tolerance; no height of a back tooth, which turns the jaw.

    Every other one is a movement that a clause, not only silence, has a say in.
    """
    frame, document = case.full.frame, setup.model_dump(exclude_unset=True, mode="json")
    asked = {
        column
        for key, member in case.full.system.members.items()
        if key[0] == "clause"
        for bound in member.bounds
        for column in (case.full.system.row_terms[bound.at] if bound.is_row else (bound.at,))
    }
    at = [
        (number, tooth)
        for number, table in enumerate(setup.movements)
        for tooth in table.values
        if (table.variable != "vertical" or position(tooth) <= 3) and (tooth, table.variable) in frame.columns
    ]
    spoken = [one for one in at if frame.column(one[1], setup.movements[one[0]].variable) in asked]
    number, tooth = random.choice(spoken if spoken and random.random() < 0.5 else at)
    table = document["movements"][number]
    table["values"][tooth] = round(table["values"][tooth] + random.choice((-1, 1)) * BY[table["unit"]], 2)
    return type(setup).model_validate(document), tooth


def held_to(case, changed):
    """Where the review and the linear system disagree: (clause id or None, how far broken); and how many are told."""
    told = review(case.prescription, changed)
    names = failing(told) | {one.owner for one in told.unasked}
    wished = {one.id for one in told.clauses if one.strength == "prefer"}
    bent = max(map(abs, exact_room(case, changed).values()), default=0.0) > BENT
    apart = {one.id for one in told.clauses if any(seen_otherwise(part, bent) for part in one.parts)}
    wrong, count = [], 0
    for name, (over, unit) in broken(case, changed).items():
        low, high = NEAR[unit]
        failed = bool(told.unasked) if name is None else name in names
        if name in wished | apart | uncheckable(case) | staged(case):
            continue
        if over > high:
            count += 1
            wrong += [] if failed else [(name, over)]
        elif over < low and name is not None:
            wrong += [(name, over)] if failed else []
    return wrong, count


@pytest.mark.parametrize("part", range(PARTS))
def test_one_movement_off_breaks_what_involves_it_and_nothing_else(part):
    random, told = Random(part), 0
    for seed in seeds(part):
        if feasible(seed):
            case, setup = feasible(seed)
            for _ in range(3):
                changed, tooth = disturbed(case, setup, random)
                wrong, count = held_to(case, changed)
                assert (seed, tooth, wrong) == (seed, tooth, [])
                told += count
    assert told > 100
