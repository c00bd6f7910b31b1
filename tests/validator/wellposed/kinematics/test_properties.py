"""What must follow when a prescription changes: asked for more, allowed more, mirrored, shuffled, only preferred."""

import json
import re
from itertools import pairwise
from random import Random

import pytest
from tests.validator.wellposed.kinematics.claims import claims_of, fault_of
from tests.validator.wellposed.kinematics.generate import (
    HEAD,
    QUADRANTS,
    RANKS,
    VERDICTS,
    Maker,
    along,
    arch_of,
    check,
    chunks,
    is_extraction,
    judged,
    judgement_of,
    prescription,
    written,
)

SEEDS = 300
CHUNK = 50
CHUNKS = chunks(SEEDS, CHUNK)
TRIES = 4
ORDERED = ("goals", "keep", "movements")
TOOTH = re.compile(r"[1-4][1-8]")
CONTACT = re.compile(r"[1-4][1-8]-[1-4][1-8]")
pytestmark = pytest.mark.slow


def seeds_of(chunk, *verdicts):
    return [seed for seed in range(chunk, chunk + CHUNK) if not verdicts or judged(seed).verdict in verdicts]


def tried(seeds, change):
    """(seed, what was changed, its judgement) of a change tried several times on each; none where it does not fit."""
    for seed in seeds:
        for number in range(TRIES):
            document = prescription(seed)
            what = change(document, Random(f"{change.__name__} {seed} {number}"))
            if what:
                yield seed, what, judgement_of(document)


def faults_of(cases, verdicts):
    """The cases with one of these verdicts, and how many cases there were."""
    cases = list(cases)
    return [(seed, what, found.verdict) for seed, what, found in cases if found.verdict in verdicts], len(cases)


def rounded(value):
    return round(value, 2)


# asked for more, or less


def narrowed(bounds, by):
    """Changes that narrow a clause's bounds, each as member and value; none that would cross them."""
    low, high = bounds.get("at_least"), bounds.get("at_most")
    room = by if low is None or high is None else min(by, rounded((high - low) / 2))
    if low is not None:
        yield "at_least", rounded(low + room)
    if high is not None and (bounds.get("measure") or high >= room):
        yield "at_most", rounded(high - room)


def tightenings(document, random):
    """Every clause with a bound, and the change that tightens it."""
    by = random.choice((0.05, 0.3, 1))
    for section in ORDERED:
        for clause in document.get(section, ()):
            yield from ((clause, member, value) for member, value in narrowed(clause, by))
            if "within" in clause:
                yield clause, "within", rounded(clause["within"] / 2)
    for clause in document.get("allow", ()):
        if "up_to" in clause:
            yield clause, "up_to", rounded(clause["up_to"] / 2)


WIDER = {"at_least": -1, "at_most": 1, "within": 1, "up_to": 1, "in_all": 1, "per_contact": 1}


def loosenings(document, random):
    """Every clause with a bound, and the change that loosens it; what a reduction orders is left alone."""
    by = random.choice((0.05, 0.3, 1))
    for clause in (c for section in (*ORDERED, "allow") for c in document.get(section, ())):
        least = -400 if "measure" in clause else 0
        for member in WIDER.keys() & clause.keys() - ({"at_least"} if "use" in clause else set()):
            yield clause, member, rounded(max(least, clause[member] + WIDER[member] * by))


def changed(document, changes, random):
    """The document with one of the changes made, and what it was; None if there are none."""
    found = sorted(changes(document, random), key=lambda found: (found[0]["id"], found[1]))
    if not found:
        return None
    clause, member, value = random.choice(found)
    clause[member] = value
    return clause["id"], member, value


def with_a_keep(document, random):
    maker = Maker.going_on(document, random)
    measures = ("overbite", "overjet", "upper-midline", "lower-inter-canine-width", "molar-relation-left")
    kept = {"measure": random.choice(measures), "within": maker.amount(0, 1), "unit": "mm"}
    document.setdefault("keep", []).append({"id": "kept", "strength": "must", **kept})
    return kept


def tightened(document, random):
    return changed(document, tightenings, random)


def loosened(document, random):
    return changed(document, loosenings, random)


def with_more_allowed(document, random):
    """Another allowance; none where an amount would bind what an extraction or delegation has opened."""
    given = document.get("allow", ())
    if any(is_extraction(clause) or clause["use"] == "laboratory-choice" for clause in given):
        return None
    if "to-be-extracted" in json.dumps(document["teeth"]):
        return None
    more = Maker.going_on(document, random).another_allowance()
    document["allow"] = [*given, *more]
    return more


def with_an_extraction(document, random):
    """A premolar taken out that no clause names."""
    clauses = json.dumps({name: part for name, part in document.items() if name != "teeth"})
    free = [t for t in Maker.going_on(document, random).line("upper", 4, 5) if f'"{t}' not in clauses]
    if not free:
        return None
    more = {"id": "out", "use": "extraction", "teeth": [random.choice(free)]}
    document["allow"] = [*document.get("allow", ()), more]
    return more


@pytest.mark.parametrize("change", [with_a_keep, tightened], ids=lambda change: change.__name__)
@pytest.mark.parametrize("chunk", CHUNKS)
def test_asking_for_more_never_makes_it_possible(chunk, change):
    faults, count = faults_of(tried(seeds_of(chunk, "contradictory"), change), ("possible", "beyond-practice"))
    assert faults == []
    assert count >= TRIES


@pytest.mark.parametrize("change", [loosened, with_more_allowed], ids=lambda change: change.__name__)
@pytest.mark.parametrize("chunk", CHUNKS)
def test_what_is_possible_stays_so_when_more_is_allowed(chunk, change):
    others = set(VERDICTS) - {"possible"}
    faults, count = faults_of(tried(seeds_of(chunk, "possible")[:12], change), others)
    assert faults == []
    assert count >= 5 * TRIES


def test_the_changes_tell():
    """What may not happen one way does happen the other way round."""
    narrower, _ = faults_of(tried(seeds_of(0, "possible"), tightened), set(VERDICTS) - {"possible"})
    wider, _ = faults_of(tried(seeds_of(0, "contradictory"), loosened), ("possible",))
    more, _ = faults_of(tried(seeds_of(0, "contradictory", "incomplete"), with_more_allowed), ("possible",))
    assert min(len(narrower), len(wider), len(more)) >= 1


@pytest.mark.parametrize("chunk", CHUNKS)
def test_an_extraction_leaves_what_was_possible_undecided_at_worst(chunk):
    cases = tried(seeds_of(chunk, "possible")[:8], with_an_extraction)
    faults, count = faults_of(cases, ("contradictory", "incomplete"))
    assert faults == []
    assert count >= 3 * TRIES


def only_preferred(document):
    """Per clause that must hold, the document with that clause only preferred."""
    clauses = [c for section in ORDERED for c in document.get(section, ())]
    clauses += [document["staging"]] if "staging" in document else []
    for clause in clauses:
        if clause["strength"] == "must":
            clause["strength"] = "prefer"
            yield clause["id"], json.loads(json.dumps(document))
            clause["strength"] = "must"


@pytest.mark.parametrize("chunk", CHUNKS)
def test_preferring_what_must_be_never_makes_it_worse(chunk):
    cases = [
        (seed, clause, judgement_of(document).verdict)
        for seed in seeds_of(chunk)
        for clause, document in only_preferred(prescription(seed))
    ]
    assert [case for case in cases if RANKS[case[2]] > RANKS[judged(case[0]).verdict]] == []
    assert len(cases) >= CHUNK


def test_a_goal_without_means_does_not_hide_what_cannot_be_told():
    """One goal without means, and one that only the measuring error decides: without the first it must not be worse."""
    lines = [["13", "12", "11", "21", "22", "23"], ["43", "42", "41", "31", "32", "33"]]
    both = plain(
        findings=[
            {"id": "f1", "measure": "upper-crowding", "value": 3, "unit": "mm"},
            {"id": "f2", "measure": "lower-crowding", "value": 1, "unit": "mm"},
        ],
        goals=[{"id": f"g{n}", "strength": "must", "align": line} for n, line in enumerate(lines, 1)],
        allow=[{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 0.6, "unit": "mm"}],
    )
    before = judgement_of(both)
    both["goals"][0]["strength"] = "prefer"
    after = judgement_of(both)
    assert after.verdict == "undecided"
    assert RANKS[after.verdict] <= RANKS[before.verdict]


def test_an_open_question_about_means_says_what_it_turns_on():
    """1.2 mm of crowding, measured to 1.5 mm, and no means for it: there may be nothing to find room for."""
    finding = {"id": "f1", "measure": "upper-crowding", "value": 1.2, "error": 1.5, "unit": "mm"}
    goal = {"id": "g1", "strength": "must", "align": ["13", "12", "11", "21", "22", "23"]}
    document = plain(findings=[finding], goals=[goal])
    asked = [finding for finding in check(json.dumps(document).encode()).findings if finding.rule == "means-not-said"]
    assert [finding.facts["depends_on"] for finding in asked] == [["upper-crowding"]]


def test_means_allowed_one_way_do_not_hide_the_other():
    """Spaces close backwards; advance alone is allowed, and brings its torque and its sinking edges with it."""
    document = plain(
        findings=[{"id": "f1", "measure": "upper-spacing", "value": 3, "unit": "mm"}],
        goals=[{"id": "g1", "strength": "must", "close_arch": "upper"}],
        allow=[{"id": "a1", "use": "incisor-advance", "arch": "upper", "up_to": 2, "unit": "mm"}],
    )
    uses = {way.repair.use for conflict in judgement_of(document).conflicts for way in conflict.ways_out}
    assert {"incisor-retraction", "narrowing", "mesial-movement"} <= uses


# mirrored

OTHER = str.maketrans("1234", "2143")
SIDE = {"right": "left", "left": "right"}
SIGNED = ("upper-midline", "lower-midline")


def mirrored_name(text):
    """A tooth, a contact, a side, or a name that ends in one."""
    if TOOTH.fullmatch(text):
        return text[0].translate(OTHER) + text[1]
    if CONTACT.fullmatch(text):
        return "-".join(along(arch_of(text), map(mirrored_name, text.split("-"))))
    head, joint, end = text.rpartition("-")
    if end in SIDE:
        return f"{head}{joint}{SIDE[end]}"
    head, joint, end = text.rpartition(" ")
    return f"{head} {mirrored_name(end)}" if joint and (TOOTH.fullmatch(end) or CONTACT.fullmatch(end)) else text


def mirrored(value):
    """A document, or a part of one, seen in a mirror."""
    if isinstance(value, dict):
        found = {mirrored_name(name): mirrored(inner) for name, inner in value.items()}
        return turned(found) if found.get("measure") in SIGNED and "within" not in found else found
    if isinstance(value, (list, tuple)):
        return type(value)(mirrored(inner) for inner in value)
    return mirrored_name(value) if isinstance(value, str) else value


def turned(clause):
    """A clause on a midline: left is positive."""
    signed = {"value": "value", "at_least": "at_most", "at_most": "at_least"}
    ends = {signed[name]: -clause[name] for name in signed if name in clause}
    return {name: inner for name, inner in clause.items() if name not in signed} | ends


def on_midlines(document):
    return {c["id"] for c in document.get("goals", ()) if c.get("measure") in SIGNED}


def mirrored_key(key, turning):
    """A member as the mirrored document has it: on a midline, floor and ceiling change places."""
    if key[0] == "clause" and key[1] in turning:
        return (*key[:2], {"floor": "ceiling", "ceiling": "floor"}[key[2]])
    return tuple(mirrored_name(part) if isinstance(part, str) else part for part in key)


def amounts_of(conflict, name):
    """Per way out its amount, the members named by ``name``."""
    ways = conflict.ways_out
    return sorted((str(name(way.repair.member)), way.repair.use, way.amount) for way in ways)


def conflict_faults(seed, there):
    """Where conflicts differ in the mirror: in what is asked, in the amounts, or in being one at all.

    Where several conflicts are equally small, the mirror may show another: then it must be one here too.
    """
    turning = on_midlines(mirrored(prescription(seed)))
    known = {frozenset(conflict.members): conflict for conflict in judged(seed).conflicts}
    claims = claims_of(seed)

    def name(key):
        return mirrored_key(key, turning)

    seen = [frozenset(map(name, conflict.members)) for conflict in there.conflicts]
    if len(known) != len(seen):
        yield f"{len(known)} conflicts, mirrored {len(seen)}"
    for members, conflict in zip(seen, there.conflicts, strict=True):
        here = known.get(members)
        if here is None and fault_of(claims.groups_like(conflict), list(members)):
            yield f"{set(members)} is no conflict here"
        if here is not None and not close(amounts_of(here, str), amounts_of(conflict, lambda key: str(name(key)))):
            yield "amounts"


def ranges_of(judgement, document, mirror=False):
    turning = {c["id"] for s in ("goals", "keep") for c in document.get(s, ()) if c.get("measure") in SIGNED}
    for found in judgement.forced:
        ends = (found.least, found.most)
        swap = mirror and found.clause_id in turning
        what = mirrored_name(found.what) if mirror else found.what
        yield found.clause_id, what, *((-ends[1], -ends[0]) if swap else ends)


def close(first, second):
    """Equal, numbers within a millionth."""
    if isinstance(first, float) or isinstance(second, float):
        return first == second or abs(first - second) <= 1e-6
    if isinstance(first, dict):
        return first.keys() == second.keys() and all(close(first[name], second[name]) for name in first)
    if isinstance(first, (list, tuple)):
        return len(first) == len(second) and all(map(close, first, second))
    return first == second


def mirror_faults(seed):
    """Where the answer to the mirrored document is not the mirrored answer."""
    document, here = prescription(seed), judged(seed)
    there = judgement_of(mirrored(prescription(seed)))
    if here.verdict != there.verdict:
        yield f"{here.verdict}, mirrored {there.verdict}"
    if not close(here.shortfall, there.shortfall):
        yield "shortfall"
    if {mirrored_name(name) for name in here.depends_on} != set(there.depends_on):
        yield f"{here.depends_on}, mirrored {there.depends_on}"
    if not close(list(ranges_of(here, document, mirror=True)), list(ranges_of(there, mirrored(document)))):
        yield "ranges"
    yield from conflict_faults(seed, there)


@pytest.mark.parametrize("chunk", CHUNKS)
def test_the_mirrored_prescription_has_the_mirrored_answer(chunk):
    faults = {seed: found for seed in seeds_of(chunk) if (found := list(mirror_faults(seed)))}
    assert faults == {}


def test_the_mirror_is_one():
    documents = [prescription(seed) for seed in range(CHUNK)]
    assert all(mirrored(mirrored(document)) != mirrored(document) for document in documents)
    assert [unordered(mirrored(mirrored(document))) for document in documents] == [
        unordered(document) for document in documents
    ]


# shuffled


def names_in(value):
    return isinstance(value, list) and all(isinstance(inner, str) for inner in value)


def normal(text):
    """A contact written one way, and teeth in a row sorted."""
    if CONTACT.fullmatch(text):
        return "-".join(along(arch_of(text), text.split("-")))
    words = text.split(" ")
    return " ".join(sorted(words)) if all(map(TOOTH.fullmatch, words)) else text


def unordered(value):
    """The value with every list of names sorted, and every contact written one way."""
    if isinstance(value, dict):
        return {name: unordered(inner) for name, inner in sorted(value.items())}
    if names_in(value):
        return sorted(map(normal, value))
    if isinstance(value, (list, tuple)):
        return [unordered(inner) for inner in value]
    return normal(value) if isinstance(value, str) else value


def shuffled(value, random):
    """The value with every list of names, and the members of every object, in another order; contacts turned."""
    if isinstance(value, dict):
        names = list(value)
        random.shuffle(names)
        return {name: shuffled(value[name], random) for name in names}
    if names_in(value):
        turned_round = [shuffled(inner, random) for inner in value]
        random.shuffle(turned_round)
        return turned_round
    if isinstance(value, list):
        return [shuffled(inner, random) for inner in value]
    if isinstance(value, str) and CONTACT.fullmatch(value):
        return random.choice((value, "-".join(reversed(value.split("-")))))
    return value


def pointed(document, pointer):
    """A pointer with a place in a list of names given as the name."""
    place, steps = document, pointer.split("/")[1:]
    for number, step in enumerate(steps):
        if names_in(place):
            return "/".join([*steps[:number], normal(place[int(step)])])
        place = place[int(step) if isinstance(place, list) else step]
    return "/".join(steps)


def told(document):
    """The findings without places in the text and without the order of names, sorted."""
    report = check(written(document))
    facts = [
        [f.rule, f.severity, pointed(document, f.pointer), f.clauses, unordered(dict(f.facts))] for f in report.findings
    ]
    return [report.verdict, *sorted(json.loads(json.dumps(facts, default=dict)), key=steady)]


def steady(finding):
    """A finding as text, numbers rounded."""
    return re.sub(r"[0-9]+[.][0-9]{4,}", lambda number: f"{float(number[0]):.6f}", json.dumps(finding))


@pytest.mark.parametrize("chunk", CHUNKS)
def test_the_order_of_teeth_changes_nothing(chunk):
    faults, seeds = [], seeds_of(chunk)
    for seed in seeds:
        document = prescription(seed)
        other = shuffled(document, Random(f"shuffled {seed}"))
        assert json.dumps(other) != json.dumps(document)
        if not close(told(other), told(document)):
            faults.append(seed)
    assert faults == []


# tenths that are not what they seem

TENTHS = [(0.1, 0.2), (0.1, 0.7), (0.7, 0.1), (0.29, 0.57), (1.1, 2.2), (0.03, 0.06), (0.35, 0.35)]
SUMS = TENTHS + [(a / 100, b / 100) for a, b in pairwise(range(1, 240, 7))]
USUAL = 0.6  # enamel at one contact, mm


def plain(**sections):
    teeth = {arch: along(arch, [q + str(n) for q in qs for n in range(1, 8)]) for arch, qs in QUADRANTS.items()}
    return {**HEAD, "id": "R-1", "teeth": teeth, **sections}


def reduced(first, second, crowding, goal):
    """Crowding between three teeth, and reduction at their two contacts."""
    where = ["12-11", "11-21"]
    found = {"measure": "upper-crowding", "value": crowding, "error": 0, "contacts": where}
    return plain(
        findings=[{"id": "f1", "unit": "mm", **found}],
        goals=[{"id": "g1", "strength": "must", **goal}],
        allow=[
            {"id": f"a{n}", "use": "enamel-reduction", "contacts": [c], "per_contact": most, "unit": "mm"}
            for n, (c, most) in enumerate(zip(where, (first, second), strict=True), 1)
        ],
    )


GOALS = [{"align": ["12", "11", "21"]}, {"measure": "upper-crowding", "at_most": 0, "unit": "mm"}]


@pytest.mark.parametrize("goal", GOALS, ids=["align", "crowding"])
def test_a_sum_of_decimals_is_their_sum(goal):
    faults = []
    for first, second in (pair for pair in SUMS if max(pair) <= USUAL):
        fits = judgement_of(reduced(first, second, rounded(first + second), goal))
        short = judgement_of(reduced(first, second, rounded(first + second + 0.01), goal))
        if (fits.verdict, fits.shortfall) != ("possible", 0):
            faults.append((first, second, "does not fit", fits.verdict, fits.shortfall))
        if short.verdict == "possible" and not short.shortfall > 0.009:
            faults.append((first, second, "a hundredth short is not seen"))
    assert faults == []


def opened(first, second, goal):
    """An overbite to be deepened by extrusion alone."""
    return plain(
        findings=[{"id": "f1", "measure": "overbite", "value": first, "unit": "mm"}],
        goals=[{"id": "g1", "strength": "must", "measure": "overbite", "at_least": goal, "unit": "mm"}],
        allow=[{"id": "a1", "use": "extrusion", "teeth": ["11", "21"], "up_to": second, "unit": "mm"}],
    )


def test_a_baseline_and_an_allowance_are_their_sum():
    inexact = [pair for pair in SUMS if sum(pair) != rounded(sum(pair))]
    assert len(inexact) >= 10
    for first, second in SUMS:
        total = rounded(first + second)
        assert judgement_of(opened(first, second, total)).verdict in ("possible", "beyond-practice")
        assert judgement_of(opened(first, second, rounded(total + 0.01))).verdict == "contradictory"
