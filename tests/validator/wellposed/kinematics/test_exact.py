"""Every conflict and every way out, checked by a second solver in exact arithmetic.

WELLPOSED_EXACT sets how many prescriptions are made.
"""

import os
from collections import Counter

import pytest
from tests.validator.wellposed.kinematics import exact
from tests.validator.wellposed.kinematics.claims import CLOSE, NEAR, asked, can_hold, claims_of, fault_of, limits_in
from tests.validator.wellposed.kinematics.generate import (
    VERDICTS,
    check,
    chunks,
    judged,
    must,
    prescription,
    reported,
    written,
)

from wellposed.kinematics.rows import Bound, Kind, Setting, System

COUNT = max(500, int(os.environ.get("WELLPOSED_EXACT", "500")))
CHUNK = 25
CHUNKS = chunks(COUNT, CHUNK)
LEAST_SHARE = 0.05
CONFLICTS = {"cannot-hold-together", "means-not-said", "too-close-to-tell", "beyond-practice"}
SECTIONS = ("goals", "keep", "movements", "allow", "exclude", "expect", "staging")
FORMS = {
    *("align", "level", "close", "close_arch", "leave", "measure", "variable", "motion", "hold", "pair"),
    *("enamel-reduction", "incisor-advance", "incisor-retraction", "widening", "narrowing"),
    *("distal-movement", "mesial-movement", "intrusion", "extrusion", "movement", "posterior-open-bite"),
    *("extraction", "class-ii-elastics", "class-iii-elastics", "laboratory-choice"),
    *("prefer", "must", "means", "ground", "largest_steps", "error", "contacts", "upper-arch-depth"),
    *("displacement", "tooth-width", "percent", "implant", "ankylosed", "pontic", "unerupted"),
    "to-be-extracted",
}


def words(value):
    """Every member name and string of a document."""
    if isinstance(value, dict):
        yield from value
        value = list(value.values())
    if isinstance(value, list):
        for inner in value:
            yield from words(inner)
    elif isinstance(value, str):
        yield value


def seeds_of(chunk):
    return range(chunk, min(chunk + CHUNK, COUNT))


# conflicts


def conflicts_of(judgement):
    yield from judgement.conflicts
    yield from (conflict for _, conflict in judgement.preferences)
    yield from (conflict for _, conflict in judgement.space_left)


def test_the_mix_is_no_sham():
    counts = Counter(judged(seed).verdict for seed in range(COUNT))
    assert set(counts) == set(VERDICTS)
    assert min(counts.values()) >= LEAST_SHARE * COUNT, counts
    found = [judged(seed) for seed in range(COUNT)]
    assert sum(len(judgement.conflicts) for judgement in found) >= 0.3 * COUNT
    assert sum(len(judgement.conflicts) > 1 for judgement in found) >= 0.02 * COUNT
    assert sum(bool(judgement.depends_on) for judgement in found) >= 0.02 * COUNT
    said = {word for seed in range(COUNT) for word in words(prescription(seed))}
    assert FORMS - said == set()
    assert set(SECTIONS) - said == set()


@pytest.mark.slow
@pytest.mark.parametrize("chunk", CHUNKS)
def test_every_document_is_sound(chunk):
    reports = {seed: reported(seed) for seed in seeds_of(chunk)}
    refused = {seed: report for seed, report in reports.items() if report.verdict not in VERDICTS}
    assert refused == {}


@pytest.mark.slow
@pytest.mark.parametrize("chunk", CHUNKS)
def test_every_conflict_is_one_and_irreducible(chunk):
    faults = {}
    for seed in seeds_of(chunk):
        if any(True for _ in conflicts_of(judged(seed))):
            claims = claims_of(seed)
            for number, conflict in enumerate(conflicts_of(claims.judgement)):
                fault = fault_of(claims.groups(conflict), conflict.members)
                if fault:
                    faults[seed, number] = (claims.judgement.verdict, fault)
    assert faults == {}


@pytest.mark.slow
@pytest.mark.parametrize("chunk", CHUNKS)
def test_every_verdict_is_what_the_whole_allows(chunk):
    faults = {}
    for seed in seeds_of(chunk):
        claims = claims_of(seed)
        fault = "".join(verdict_faults(claims))
        if fault:
            faults[seed] = (claims.judgement.verdict, fault)
    assert faults == {}


def verdict_faults(claims):
    """What the judgement says of the whole and is not so."""
    judgement, whole = claims.judgement, claims.case.full
    within, beyond = must(whole, limits=True), must(whole, limits=False)
    stated = all(can_hold(group, within, NEAR) for group in claims.ends)
    if not judgement.conflicts and judgement.shortfall == 0 and not stated:
        yield "no conflict told, but it cannot hold"
    if judgement.conflicts or judgement.shortfall:
        closely = all(can_hold(group, within, 0) for group in claims.ends)
        yield "it can hold as it stands" if closely else ""
    if any(limits_in(conflict) for conflict in judgement.conflicts):
        passing = all(can_hold(group, beyond, NEAR) for group in claims.ends)
        yield "" if passing else "not even beyond practice"
    proven = {key for conflict in judgement.conflicts if conflict.proven for key in asked(conflict)}
    rest = [key for key in beyond if key not in proven]
    if judgement.depends_on:
        yield "" if can_hold(claims.proof, rest, NEAR) else "it depends on nothing"
    if judgement.verdict == "contradictory":
        yield "it can hold after all" if can_hold(claims.proof, beyond, CLOSE) else ""


@pytest.mark.slow
@pytest.mark.parametrize("chunk", CHUNKS)
def test_every_way_out_leads_out_and_no_less_does(chunk):
    faults = {}
    for seed in seeds_of(chunk):
        if judged(seed).conflicts:
            claims = claims_of(seed)
            for number, conflict in enumerate(claims.judgement.conflicts):
                rest = claims.field_of(conflict)
                for way in conflict.ways_out:
                    fault = way_fault(claims.ends, rest, way)
                    if fault:
                        faults[seed, number, way.repair.what, way.repair.member] = (fault, way.amount)
    assert faults == {}


def way_fault(ends, rest, way):
    enough = {"strain": way.repair.strain, "amount": way.amount * (1 + 1e-7) + 1e-9}
    if not all(can_hold(group, rest, NEAR, **enough) for group in ends):
        return "does not lead out"
    if way.repair.what == "give-up":
        return ""
    if way.amount > way.repair.strain.most + 1e-9:
        return "more than there is"
    less = {"strain": way.repair.strain, "amount": 0.99 * way.amount}
    return "less would do" if all(can_hold(group, rest, CLOSE, **less) for group in ends) else ""


# the ways out as changes to the document


def patched(document, patch):
    """The document with RFC 6902 operations done; it is changed in place."""
    for operation in patch:
        *steps, last = operation["path"].split("/")[1:]
        place = document
        for step in steps:
            place = place[int(step) if isinstance(place, list) else step]
        if operation["op"] == "remove":
            del place[int(last) if isinstance(place, list) else last]
        elif isinstance(place, list) and operation["op"] == "add":
            place.insert(len(place) if last == "-" else int(last), operation["value"])
        else:
            place[int(last) if isinstance(place, list) else last] = operation["value"]
    return document


def named(finding):
    """What a conflict is about: its clauses, and what of them is asked."""
    asked_for = [(fact["clause"], fact["part"]) for fact in finding.facts["members"] if "part" in fact]
    return finding.clauses, frozenset(asked_for)


def usual(finding):
    """Whether a practice limit has a part in the conflict."""
    return any(fact["role"] == "usual" for fact in finding.facts["members"])


def conflicts_told(report):
    return [finding for finding in report.findings if finding.rule in CONFLICTS]


def patches_of(seed):
    """(finding, way) of every way out that can be written into the document."""
    for finding in conflicts_told(reported(seed)):
        for way in finding.facts["ways_out"]:
            if way.get("patch"):
                yield finding, way


def still_told(seed, finding, way):
    """Whether the patched document still has that conflict; with practice limits only where the way out says so."""
    report = check(written(patched(prescription(seed), way["patch"])))
    assert report.verdict in VERDICTS, report
    left = [other for other in conflicts_told(report) if not (way["beyond_practice"] and usual(other))]
    return named(finding) in map(named, left)


@pytest.mark.slow
@pytest.mark.parametrize("chunk", CHUNKS)
def test_a_way_out_written_into_the_document_ends_the_conflict(chunk):
    faults = [
        (seed, finding.rule, finding.clauses, way["what"], way.get("use"), way["amount"])
        for seed in seeds_of(chunk)
        if judged(seed).conflicts
        for finding, way in patches_of(seed)
        if still_told(seed, finding, way)
    ]
    assert faults == []


@pytest.mark.slow
def test_there_are_enough_of_them():
    whats = Counter(
        way.get("use") or way["what"] for seed in range(500) if judged(seed).conflicts for _, way in patches_of(seed)
    )
    assert whats.total() >= 100
    assert len(whats) >= 10, whats


# the check itself, checked


def stated_conflict():
    """A conflict of five members and more, with its variants."""
    for seed in range(COUNT):
        if any(len(conflict.members) >= 4 for conflict in judged(seed).conflicts):
            claims = claims_of(seed)
            yield from ((claims, conflict) for conflict in claims.judgement.conflicts if len(conflict.members) >= 4)


def first(iterable, count):
    return [item for item, _ in zip(iterable, range(count), strict=False)]


CANARIES = 5


def test_a_conflict_with_a_member_too_many_is_found_out():
    tried = 0
    for claims, conflict in first(stated_conflict(), CANARIES):
        spare = [key for key in must(claims.case.full, limits=False) if key not in conflict.members]
        for key in spare[:2]:
            assert fault_of(claims.groups(conflict), [*conflict.members, key]) != ""
            tried += 1
    assert tried == 2 * CANARIES


def test_a_conflict_with_a_member_too_few_is_found_out():
    tried = 0
    for claims, conflict in first(stated_conflict(), CANARIES):
        for key in conflict.members:
            rest = [other for other in conflict.members if other != key]
            assert "can hold" in fault_of(claims.groups(conflict), rest)
            tried += 1
    assert tried >= 4 * CANARIES


def test_a_way_out_too_short_and_one_too_long_are_found_out():
    class Way:
        def __init__(self, way, factor):
            self.repair, self.amount = way.repair, way.amount * factor

    tried = 0
    for claims, conflict in first(stated_conflict(), CANARIES):
        rest = claims.field_of(conflict)
        for way in (way for way in conflict.ways_out if way.repair.what in ("raise-ceiling", "allow")):
            assert way_fault(claims.ends, rest, Way(way, 0.98)) == "does not lead out"
            assert way_fault(claims.ends, rest, Way(way, 1.05)) == "less would do"
            tried += 1
    assert tried >= CANARIES


@pytest.mark.parametrize(
    "low, high, slack, answer",
    [
        (0.3, 0.1 + 0.2, 0, True),
        (0.1 + 0.2, 0.3, 0, False),
        (0.1 + 0.2, 0.3, CLOSE, True),
        (0.3 + 1e-6, 0.3, CLOSE, False),
    ],
)
def test_the_second_solver_counts_exactly(low, high, slack, answer):
    system = exact_system(low, high)
    assert exact.holds(system, ["floor", "ceiling"], "plain", slack) is answer
    assert exact.holds(system, ["floor"], "plain")
    assert exact.holds(system, ["floor", "ceiling"], "free")


def exact_system(low, high):
    """Two columns, their sum bounded by two members; one of the settings frees the sum."""
    system = System()
    both = {system.column(0.0): 1.0, system.column(0.0): 1.0}
    row = system.row(both)
    for key, side, value in (("floor", -1, low), ("ceiling", 1, high)):
        system.member(key, Kind.DEMAND).bounds.append(Bound(True, row, side, value))
    system.settings = {"plain": (), "free": (Setting(True, row, -float("inf"), float("inf")),)}
    return system
