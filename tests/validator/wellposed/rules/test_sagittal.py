"""Front to back: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, allowed, found, must, present
from tests.validator.wellposed.rules.charts import Case, pointers, table
from tests.validator.wellposed.rules.charts import found as findings_of

from wellposed.rules import midlines, sagittal, sagittal_class, sagittal_front

RULES = (*sagittal.RULES, *sagittal_class.RULES, *sagittal_front.RULES, *midlines.RULES)

BOTH = ["right", "left"]
FIRST, ALLOW, GOAL, PROBLEM = ("/movements/0",), ("/allow/0",), ("/goals/0",), ("/problems/0",)


def slid(amount, arch="upper", use="distal-movement", name="a1", **said):
    """An allowance of molars along the arch."""
    return allowed(name, use, arch=arch, up_to=amount, unit="mm", **said)


def moved(name, motion, teeth, **bounds):
    """An order in mm."""
    return must(name, teeth=list(teeth), motion=motion, unit="mm", **bounds)


def kept(measure, within=0.5, name="k1"):
    """A keep in mm."""
    return must(name, measure=measure, within=within, unit="mm")


def goal(measure, name="g1", strength="must", **bounds):
    """A goal in mm."""
    return {"id": name, "strength": strength, "measure": measure, "unit": "mm", **bounds}


def problem(term, **said):
    """A problem alone."""
    return {"problems": [{"id": "p1", "problem": term, **said}]}


RELATIONS = [kept("molar-relation-right", name="k1"), kept("molar-relation-left", name="k2")]

# Arithmetic: the amount less the tolerance less what the opposing molars may follow; half a millimetre is let pass (the
# linear error that Al-Nadawi et al. 2021 count as relevant).
USELESS = "relation-kept-molars-moved"
KEPT = (
    Case(USELESS, "within the tolerance and half a millimetre", {"keep": RELATIONS, "allow": [slid(1)]}),
    Case(USELESS, "just beyond", {"keep": RELATIONS, "allow": [slid(1.01)]}, ALLOW),
    Case(USELESS, "the opposing molars follow", {"keep": RELATIONS, "allow": [slid(3), slid(3, "lower", name="a2")]}),
    Case(
        USELESS,
        "they follow the other way",
        {"keep": RELATIONS, "allow": [slid(3), slid(3, "lower", "mesial-movement", "a2")]},
        ("/allow/0", "/allow/1"),
    ),
    Case(USELESS, "one side kept, both moved", {"keep": RELATIONS[:1], "allow": [slid(3)]}),
    Case(USELESS, "one side kept and moved", {"keep": RELATIONS[:1], "allow": [slid(3, sides=["right"])]}, ALLOW),
    Case(USELESS, "the other side moved", {"keep": RELATIONS[:1], "allow": [slid(3, sides=["left"])]}),
    Case(USELESS, "second molars alone", {"keep": RELATIONS, "allow": [slid(3, teeth=["17", "27"])]}),
    Case(USELESS, "nothing kept", {"allow": [slid(3)]}),
    Case(
        USELESS,
        "an order is for the arithmetic",
        {"keep": RELATIONS, "movements": [moved("m1", "distal", ["16"], at_least=3)]},
    ),
    Case(
        USELESS,
        "the relation is expected to change",
        {
            "keep": RELATIONS,
            "allow": [slid(3)],
            "expect": [
                {
                    "id": f"e{n}",
                    "measure": f"molar-relation-{side}",
                    "at_least": -3,
                    "at_most": 0,
                    "unit": "mm",
                    "ground": "growth",
                }
                for n, side in enumerate(BOTH)
            ],
        },
    ),
)

# Common practice: 3 mm of upper, 2 mm of lower molars; aligner studies cover 0.45 to 3.2 (review of 2025).
FAR, BEHIND = "distal-beyond-predictable", "distal-with-third-molars"
SCREW = allowed("a9", "auxiliary", auxiliary="bone-screw")
WITH_18 = present(upper=["18", *UPPER])
HIDDEN = present(("18", "unerupted"))
BACK = (
    Case(FAR, "upper, at the limit", {"allow": [slid(3)]}),
    Case(FAR, "upper, just above", {"allow": [slid(3.01)]}, ALLOW),
    Case(FAR, "lower, at the limit", {"allow": [slid(2, "lower")]}),
    Case(FAR, "lower, just above", {"allow": [slid(2.01, "lower")]}, ALLOW),
    Case(FAR, "ordered", {"movements": [moved("m1", "distal", ["36"], at_least=1, at_most=2.5)]}, FIRST),
    Case(FAR, "mesially", {"allow": [slid(4, use="mesial-movement")]}),
    Case(FAR, "a canine", {"movements": [moved("m1", "distal", ["13"], at_least=5)]}),
    Case(FAR, "with an anchor in the bone", {"allow": [slid(4), SCREW]}),
    Case(FAR, "both arches", {"allow": [slid(4), slid(3, "lower", name="a2")]}, ("/allow/0", "/allow/1")),
    Case(BEHIND, "none there", {"allow": [slid(2)]}),
    Case(BEHIND, "there", {"teeth": WITH_18, "allow": [slid(2)]}, ALLOW),
    Case(BEHIND, "unerupted", {"teeth": HIDDEN, "allow": [slid(2)]}, ALLOW),
    Case(BEHIND, "on the other side", {"teeth": WITH_18, "allow": [slid(2, sides=["left"])]}),
    Case(BEHIND, "in the other arch", {"teeth": WITH_18, "allow": [slid(2, "lower")]}),
    Case(BEHIND, "nothing of it allowed", {"teeth": WITH_18, "allow": [slid(0)]}),
    Case(
        BEHIND,
        "to be extracted",
        {"teeth": present(("18", "to-be-extracted"), upper=["18", *UPPER]), "allow": [slid(2)]},
    ),
    Case(
        BEHIND,
        "its extraction allowed",
        {"teeth": WITH_18, "allow": [slid(2), allowed("a2", "extraction", teeth=["18"])]},
    ),
    Case(
        BEHIND,
        "its extraction a step",
        {"teeth": WITH_18, "allow": [slid(2)], "process": [{"id": "q1", "step": "extraction", "teeth": ["18"]}]},
    ),
    Case(BEHIND, "held", {"teeth": WITH_18, "allow": [slid(2)], "keep": [must("k1", hold=["18"])]}),
    Case(
        BEHIND,
        "with an attachment only",
        {"teeth": WITH_18, "allow": [slid(2)], "attachments": [{"id": "t1", "may": ["18"]}]},
        ALLOW,
    ),
    Case(BEHIND, "mesially", {"teeth": WITH_18, "allow": [slid(2, use="mesial-movement")]}),
)

# The format: silence means no change.
WISH = {"goals": [goal("molar-relation-right", strength="prefer", at_most=0)]}
CITED = {"goals": [must("g1", align=["12", "11", "21", "22"], because=["p1"])]}
ELASTICS = allowed("a1", "class-ii-elastics", sides=BOTH)
LACKING, LEFT = "class-without-means", "class-left-as-it-is"
MEANS = (
    Case(LACKING, "wished for", {**problem("class-ii"), **WISH}, GOAL),
    Case(LACKING, "answered by a clause that cannot", {**problem("class-iii"), **CITED}, GOAL),
    Case(LACKING, "no one means to correct it", problem("class-ii")),
    Case(LACKING, "Class I", {**problem("class-i"), **WISH}),
    Case(LACKING, "elastics", {**problem("class-ii"), **WISH, "allow": [ELASTICS]}),
    Case(LACKING, "upper distal movement", {**problem("class-ii"), **WISH, "allow": [slid(2)]}),
    Case(LACKING, "lower distal movement", {**problem("class-ii"), **WISH, "allow": [slid(2, "lower")]}, GOAL),
    Case(LACKING, "lower distal movement, Class III", {**problem("class-iii"), **WISH, "allow": [slid(2, "lower")]}),
    Case(
        LACKING,
        "lower mesial movement",
        {**problem("class-ii"), **WISH, "allow": [slid(2, "lower", "mesial-movement")]},
    ),
    Case(
        LACKING,
        "the wrong side",
        {**problem("class-ii", side="right"), **WISH, "allow": [slid(2, sides=["left"])]},
        GOAL,
    ),
    Case(LACKING, "the wish on the other side", {**problem("class-ii", side="left"), **WISH}),
    Case(LACKING, "extraction", {**problem("class-ii"), **WISH, "allow": [allowed("a1", "extraction", teeth=["14"])]}),
    Case(LACKING, "surgery", {**problem("class-ii"), **WISH, "process": [{"id": "q1", "step": "surgery"}]}),
    Case(
        LACKING,
        "widening alone",
        {**problem("class-ii"), **WISH, "allow": [allowed("a1", "widening", arch="upper", up_to=2, unit="mm")]},
        GOAL,
    ),
    Case(LACKING, "kept after all", {**problem("class-ii"), **WISH, "keep": RELATIONS}),
    Case(
        LACKING,
        "weighed by the arithmetic",
        {
            **problem("class-ii"),
            "findings": [found("f1", "molar-relation-right", 3)],
            "goals": [goal("molar-relation-right", at_most=0)],
        },
    ),
    Case(LEFT, "nothing answers it", problem("class-ii"), PROBLEM),
    Case(LEFT, "kept", {**problem("class-ii"), "keep": RELATIONS}),
    Case(LEFT, "with means", {**problem("class-ii"), "allow": [ELASTICS]}),
    Case(LEFT, "wished for", {**problem("class-ii"), **WISH}),
    Case(LEFT, "a deep bite", problem("deep-bite")),
)

# High: 30 to the Frankfort plane (texts), 38 to sella-nasion (American Board index), above 31 to the palatal (Eastman).
LONG, WRONG = "elastics-with-high-angle", "elastics-against-the-class"
PALATAL, SELLA, FRANKFORT = (
    "palatal-to-mandibular-plane",
    "sella-nasion-to-mandibular-plane",
    "mandibular-plane-angle",
)


def long_face(measure, value, **members):
    """Class II elastics with this angle."""
    return {"findings": [found("f1", measure, value, "deg")], "allow": [ELASTICS], **members}


def related(value, use="class-ii-elastics", sides=("right",), measure="molar-relation-right", **members):
    """Elastics with this relation measured."""
    return {"findings": [found("f1", measure, value)], "allow": [allowed("a1", use, sides=list(sides))], **members}


# Class I to 1.75 mm either way: half of half a unit of 3.5.
PULL = (
    Case(LONG, "Frankfort, just below", long_face(FRANKFORT, 29.99)),
    Case(LONG, "Frankfort, at the limit", long_face(FRANKFORT, 30), ALLOW),
    Case(LONG, "sella-nasion, just below", long_face(SELLA, 37.99)),
    Case(LONG, "sella-nasion, at the limit", long_face(SELLA, 38), ALLOW),
    Case(LONG, "palatal, at the limit", long_face(PALATAL, 31)),
    Case(LONG, "palatal, just above", long_face(PALATAL, 31.01), ALLOW),
    Case(LONG, "not measured", {"allow": [ELASTICS]}),
    Case(LONG, "no elastics", long_face(FRANKFORT, 35, allow=[slid(1)])),
    Case(LONG, "Class III elastics", long_face(FRANKFORT, 35, allow=[ELASTICS | {"use": "class-iii-elastics"}]), ALLOW),
    Case(
        LONG,
        "molars intruded",
        long_face(FRANKFORT, 35, allow=[ELASTICS, allowed("a2", "intrusion", teeth=["16", "26"], up_to=1, unit="mm")]),
    ),
    Case(LONG, "blocked", long_face(FRANKFORT, 35, appliance=[{"id": "b1", "part": "bite-block"}])),
    Case(WRONG, "Class III, at the tolerance", related(-1.75)),
    Case(WRONG, "Class III, just beyond", related(-1.76), ALLOW),
    Case(WRONG, "Class II", related(4)),
    Case(WRONG, "Class III elastics in Class II", related(1.76, "class-iii-elastics"), ALLOW),
    Case(WRONG, "the canines, left", related(-3, sides=("left",), measure="canine-relation-left"), ALLOW),
    Case(WRONG, "the other side", related(-3, sides=("left",))),
    Case(WRONG, "by the problem", {**problem("class-iii"), "allow": [ELASTICS]}, ALLOW),
    Case(
        WRONG,
        "the problem of the other side",
        {**problem("class-iii", side="left"), "allow": [allowed("a1", "class-ii-elastics", sides=["right"])]},
    ),
    Case(WRONG, "measured against the problem", related(0, **problem("class-iii"))),
)


def centred(measure, value, allow=(), **members):
    """A midline to be brought to the face from this value."""
    goals = [goal(measure, at_least=0, at_most=0)]
    return {"findings": [found("f1", measure, value)], "goals": goals, "allow": list(allow), **members}


def reduced(*contacts):
    """Enamel reduction at contacts."""
    return allowed("a1", "enamel-reduction", contacts=list(contacts), per_contact=0.3, unit="mm")


ASIDE, HALVES = "midline-without-asymmetric-means", "midline-halves-do-not-add-up"
U, L = "upper-midline", "lower-midline"


def halves(upper, lower, **members):
    """Ends asked of both midlines."""
    goals = [goal(U, "g1", at_least=upper[0], at_most=upper[1]), goal(L, "g2", at_least=lower[0], at_most=lower[1])]
    return {"goals": goals, **members}


# More than 2 mm: common practice, beside the 2 mm that half of laypeople score lower (Johnston et al. 1999).
MIDDLE = (
    Case(ASIDE, "at the limit", centred(U, 2)),
    Case(ASIDE, "just beyond", centred(U, 2.01), GOAL),
    Case(ASIDE, "to the other side", centred(L, -2.01), GOAL),
    Case(ASIDE, "kept", {"findings": [found("f1", U, 3)], "keep": [kept(U)]}),
    Case(ASIDE, "a bound that needs little", {"findings": [found("f1", U, 3)], "goals": [goal(U, at_most=1)]}),
    Case(ASIDE, "reduction alike", centred(U, 3, [reduced("13-12", "22-23")]), GOAL),
    Case(ASIDE, "reduction on one side", centred(U, 3, [reduced("13-12", "12-11")])),
    Case(ASIDE, "reduction on one side of the other arch", centred(U, 3, [reduced("43-42", "42-41")]), GOAL),
    Case(ASIDE, "distal movement alike", centred(U, 3, [slid(2)]), GOAL),
    Case(ASIDE, "distal movement of one side", centred(U, 3, [slid(2, sides=["left"])])),
    Case(ASIDE, "four premolars", centred(U, 3, [allowed("a1", "extraction", teeth=["14", "24", "34", "44"])]), GOAL),
    Case(ASIDE, "one premolar", centred(U, 3, [allowed("a1", "extraction", teeth=["24"])])),
    Case(ASIDE, "one lower premolar", centred(U, 3, [allowed("a1", "extraction", teeth=["34"])]), GOAL),
    Case(
        ASIDE,
        "elastics across the front",
        centred(U, 3, [allowed("a1", "elastics", pattern="anterior-diagonal", teeth=["13", "33"])]),
    ),
    Case(ASIDE, "elastics of one side", centred(U, 3, [allowed("a1", "class-ii-elastics", sides=["left"])])),
    Case(ASIDE, "left to the laboratory", centred(U, 3, [allowed("a1", "laboratory-choice", variables=["along"])])),
    Case(
        ASIDE,
        "a space on one side",
        centred(U, 3) | {"findings": [found("f1", U, 3), found("f2", "upper-spacing", 3, contacts=["22-23"])]},
    ),
    Case(ASIDE, "a lateral missing", centred(U, 3, teeth=present(upper=[t for t in UPPER if t != "22"]))),
    Case(HALVES, "they meet", halves((0, 0.5), (0.5, 1))),
    Case(HALVES, "half a millimetre apart", halves((0, 0), (0.5, 1))),
    Case(HALVES, "just more", halves((0, 0), (0.51, 1)), GOAL),
    Case(HALVES, "to the other side", halves((1, 2), (-1, 0)), GOAL),
    Case(HALVES, "one half alone", {"goals": [goal(U, at_least=2, at_most=3)]}),
    Case(
        HALVES, "three lower incisors", halves((0, 0), (1.5, 2), teeth=present(lower=[t for t in LOWER if t != "41"]))
    ),
    Case(HALVES, "a wish", {"goals": [goal(U, "g1", "prefer", at_most=0), goal(L, "g2", at_least=2)]}, GOAL),
)

EDGES, CANINES, CROWDED = (
    "edges-ahead-of-the-cingulum",
    "class-i-canines-with-a-tooth-missing",
    "large-crowding-without-extraction",
)


def edges(jet, lap=1.0, relation="canine-relation-right", end=(-1, 1)):
    """Overjet up to an amount and overbite from one, with a relation."""
    return {
        "goals": [
            goal("overjet", "g1", at_most=jet),
            goal("overbite", "g2", at_least=lap),
            goal(relation, "g3", at_least=end[0], at_most=end[1]),
        ]
    }


def canines(side="right", low=-1.0, high=1.0, molars=False, **members):
    """Canines of a side asked between these ends, and molars in Class I if so said."""
    goals = [goal(f"canine-relation-{side}", "g1", at_least=low, at_most=high)]
    goals += [goal(f"molar-relation-{side}", "g2", at_least=-1, at_most=1)] if molars else []
    return {"goals": [*goals, *members.pop("more", ())], **members}


def out(*teeth):
    """Extraction."""
    return [allowed("a1", "extraction", teeth=list(teeth))]


def crowded(amount, arch="lower", **members):
    """Crowding, and the lower front to be aligned."""
    goals = [must("g1", align=["33", "32", "31", "41", "42", "43"])]
    return {"findings": [found("f1", f"{arch}-crowding", amount)], "goals": goals, **members}


NO_12 = present(upper=[t for t in UPPER if t != "12"])
SPACE = {"findings": [found("f1", "upper-spacing", 6, contacts=["13-11"])]}

# Ideal overjet from 1 mm (survey of the United States, in Proffit, recalled). 10 mm of crowding: the same textbook.
FRONT = (
    Case(EDGES, "at the least overjet", edges(1)),
    Case(EDGES, "just below", edges(0.99), GOAL),
    Case(EDGES, "edge to edge", edges(0, 0)),
    Case(EDGES, "no Class I asked", edges(0, end=(-4, -2))),
    Case(
        EDGES,
        "the overjet kept",
        {
            **problem("class-i"),
            "findings": [found("f1", "overjet", 0)],
            "goals": [goal("overbite", at_least=2)],
            "keep": [kept("overjet")],
        },
        ("/keep/0",),
    ),
    Case(EDGES, "molars in Class I", edges(0.5, relation="molar-relation-left"), GOAL),
    Case(CANINES, "all teeth there", canines()),
    Case(CANINES, "the lateral is extracted", canines(allow=out("12")), GOAL),
    Case(CANINES, "that of the other side", canines(allow=out("22"))),
    Case(CANINES, "another relation is asked", canines(low=5, high=7, allow=out("12"))),
    Case(CANINES, "Class I to half of half a unit", canines(low=-2, high=1.75, allow=out("12")), GOAL),
    Case(CANINES, "so wide that no class is asked", canines(low=-2, high=1.76, allow=out("12"))),
    Case(CANINES, "its space left", canines(allow=out("12"), more=[must("g9", leave="13-11", amount=6.5, unit="mm")])),
    Case(CANINES, "missing, no space", canines(teeth=NO_12), GOAL),
    Case(CANINES, "missing, a space there", canines(teeth=NO_12, **SPACE)),
    Case(
        CANINES, "missing, the space closed", canines(teeth=NO_12, **SPACE, more=[must("g9", close_arch="upper")]), GOAL
    ),
    Case(CANINES, "unerupted", canines(teeth=present(("12", "unerupted"), upper=[t for t in UPPER if t != "12"]))),
    Case(CANINES, "upper premolars out", canines(allow=out("14", "24"))),
    Case(CANINES, "and the molars in Class I too", canines(molars=True, allow=out("14", "24")), GOAL),
    Case(CANINES, "left", canines("left", molars=True, allow=out("14", "24")), GOAL),
    Case(CANINES, "premolars out in both arches", canines(molars=True, allow=out("14", "24", "34", "44"))),
    Case(CANINES, "a lower incisor out", canines(molars=True, allow=out("41"))),
    Case(CROWDED, "just below", crowded(9.99)),
    Case(CROWDED, "at the limit", crowded(10), GOAL),
    Case(CROWDED, "just above", crowded(10.01), GOAL),
    Case(CROWDED, "in the arch that is not aligned", crowded(12, "upper")),
    Case(CROWDED, "with an extraction", crowded(12, allow=out("34", "44"))),
    Case(CROWDED, "with an extraction in the other arch", crowded(12, allow=out("14", "24")), GOAL),
    Case(
        CROWDED,
        "leeway is counted on",
        crowded(
            10,
            expect=[
                {
                    "id": "e1",
                    "measure": "lower-crowding",
                    "at_least": -4,
                    "at_most": -2,
                    "unit": "mm",
                    "ground": "leeway-space",
                }
            ],
        ),
    ),
)

CASES = (*KEPT, *BACK, *MEANS, *PULL, *MIDDLE, *FRONT)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


def test_every_rule_has_a_case_that_passes_and_one_that_fails():
    assert {(rule.id, fails) for rule in RULES for fails in (False, True)} == {
        (c.rule, bool(c.pointers)) for c in CASES
    }


@pytest.mark.parametrize(
    "case, name, value",
    [
        # 3 allowed, 0.5 of tolerance, 1 that the lower molars may follow.
        (Case(USELESS, "", {"keep": RELATIONS, "allow": [slid(3), slid(1, "lower", name="a2")]}), "amount", 1.5),
        (Case(HALVES, "", halves((0, 0.5), (2, 2.5))), "apart", 1.5),
        (Case(ASIDE, "", centred(L, -3)), "shift", 3),
        (Case(BEHIND, "", {"teeth": WITH_18, "allow": [slid(2)]}), "teeth", ["18"]),
    ],
    ids=["useless", "apart", "shift", "third molar"],
)
def test_what_is_told(case, name, value):
    (finding,) = findings_of(case, RULES)
    assert finding.facts[name] == value
