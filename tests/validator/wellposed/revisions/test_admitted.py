"""A clause called loosened admits every plan it admitted before; one called tightened none that it did not.

Held against the linear system of each whole prescription, in which the clause stands among others: along random
directions over all movements and reductions, no plan of the narrower order reaches further than the wider one lets.
"""

import json
from random import Random

import pytest
from tests.validator.wellposed.kinematics.generate import is_extraction, judged, prescription, read
from tests.validator.wellposed.kinematics.test_properties import loosenings

from wellposed.kinematics.case import Case, must
from wellposed.revisions.clauses import Matched

SEEDS = range(90)
DIRECTIONS = 6
TOLERANCE = 1e-6


def without(clause, member):
    """The clause without a bound; none where nothing would be left of it."""
    left = {name: value for name, value in clause.items() if name != member}
    return left if {"at_least", "at_most", "in_all", "per_contact"} & left.keys() else None


def rewrites(document):
    """Every clause that can be said with less in it, or more loosely: section, place, what stands there then."""
    for section in ("goals", "keep", "movements", "allow"):
        for number, clause in enumerate(document.get(section, ())):
            if "strength" in clause:
                yield section, number, {**clause, "strength": "prefer"}
            for member in ("at_least", "at_most", "in_all", "per_contact"):
                if member in clause and (less := without(clause, member)):
                    yield section, number, less
            for member in ("hold", "teeth", "contacts"):
                if len(clause.get(member, ())) > 1:
                    yield section, number, {**clause, member: clause[member][1:]}


def variants(seed):
    """The order of a seed and some rewritings of one clause of it."""
    document, random = prescription(seed), Random(f"admitted {seed}")
    found = []
    for clause, member, value in loosenings(json.loads(json.dumps(document)), random):
        changed = json.loads(json.dumps(document))
        for section in ("goals", "keep", "movements", "allow"):
            for one in changed.get(section, ()):
                if one["id"] == clause["id"]:
                    one[member] = value
        found.append(changed)
    for section, number, clause in rewrites(document):
        changed = json.loads(json.dumps(document))
        changed[section][number] = clause
        found.append(changed)
    return document, random.sample(found, min(3, len(found)))


def yielding(document):
    """Whether something in it yields to amounts that are stated: there more allowed can mean less."""
    allowed = document.get("allow", ())
    leaves = "to-be-extracted" in json.dumps(document["teeth"])
    return leaves or any(is_extraction(one) or one["use"] == "laboratory-choice" for one in allowed)


class System:
    """The linear system of one order, with its columns by name."""

    def __init__(self, document):
        self.case = Case(read(document))
        frame = self.case.quick.frame
        self.columns = dict(frame.columns) | {
            ("reduction", name): one.reduction for name, one in frame.contacts.items()
        }
        self.members = must(self.case.quick, limits=True)

    def furthest(self, direction):
        """The most of the direction at each end of the hinge that holds; None where nothing does."""
        terms = {self.columns[name]: factor for name, factor in direction.items()}
        variants = [variant for group in self.case.quick_groups() for variant in group]
        found = [one.model.extreme(self.members, terms, -1, one.setting) for one in variants]
        return max((one for one in found if one is not None), default=None)


def reaching_further(narrow, wide, random):
    """The directions in which the narrower system goes further than the wider one."""
    shared = sorted(narrow.columns.keys() & wide.columns.keys())
    for _ in range(DIRECTIONS):
        direction = {name: random.choice((-1, 1)) for name in random.sample(shared, 8)}
        inner, outer = narrow.furthest(direction), wide.furthest(direction)
        if inner is not None and (outer is None or inner > outer + TOLERANCE):
            yield direction, inner, outer


def told(document, changed):
    changes = {one.change for one in Matched(read(document), read(changed)).changes()} - {"unchanged"}
    return changes.pop() if len(changes) == 1 else None


@pytest.mark.slow
@pytest.mark.parametrize("chunk", range(0, len(SEEDS), 30))
def test_what_is_called_looser_admits_all_that_was_admitted(chunk):
    counts, faults = {"loosened": 0, "tightened": 0}, []
    for seed in SEEDS[chunk : chunk + 30]:
        if judged(seed).verdict != "possible" or yielding(prescription(seed)):
            continue
        document, found = variants(seed)
        for changed in found:
            change = told(document, changed)
            if change not in counts:
                continue
            counts[change] += 1
            systems = System(document), System(changed)
            narrow, wide = systems if change == "loosened" else systems[::-1]
            faults += [(seed, change, *one) for one in reaching_further(narrow, wide, Random(seed))]
    assert faults == []
    assert counts["loosened"] >= 8
    assert sum(counts.values()) >= 12


def test_the_comparison_of_systems_can_fail():
    """A wider order does reach further than a narrower one somewhere."""
    document = prescription(
        next(seed for seed in SEEDS if "allow" in prescription(seed) and judged(seed).verdict == "possible")
    )
    less = {**document, "allow": []}
    wide, narrow = System(document), System(less)
    assert list(reaching_further(wide, narrow, Random(1))) != []
