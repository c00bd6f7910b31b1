"""Teeth and mouth: each rule alone, where it speaks, where it must not, and what makes it silent."""

import pytest
from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, allowed, must, present
from tests.validator.wellposed.rules.charts import Case, found, pointers, table

from wellposed.rules import mouth, mouth_allergy, mouth_roots, mouth_teeth

RULES = (*mouth.RULES, *mouth_allergy.RULES, *mouth_teeth.RULES, *mouth_roots.RULES)
STATED, ATTACHED, MOVED, AIMED = ("/conditions/0",), ("/attachments/0",), ("/movements/0",), ("/goals/0",)
ALIGN = [must("g1", align=["12", "11", "21"])]
LOWER_FRONT = ["43", "42", "41", "31", "32", "33"]


def ill(name, words=None, **sections):
    """A condition of the mouth, with or without words, beside other sections."""
    return {"conditions": [{"condition": name, **({"words": words} if words else {})}], **sections}


def moved(teeth, motion, amount=1, unit="mm"):
    return [must("m1", teeth=teeth, motion=motion, at_least=amount, unit=unit)]


def state(tooth, *states, words=None, **sections):
    """One tooth that is not ordinary, beside other sections."""
    entry = {"tooth": tooth, "states": list(states), **({"words": words} if words else {})}
    return {"teeth": {**present(), "particulars": [entry]}, **sections}


def step(name, **said):
    return [{"id": "q1", "step": name, **said}]


def kept(dentition, *teeth, **sections):
    """Primary teeth in the lower arch, their successors left out of the lists."""
    lower = [tooth for tooth in LOWER if tooth not in ("45", "35")]
    patient = {"reference": "P-7F3A", "dentition": dentition}
    return {"teeth": {"upper": UPPER, "lower": [*lower, *teeth]}, "patient": patient, **sections}


def growing(*particulars, growth="growing", **sections):
    """A patient with teeth that are still to come."""
    upper = [tooth for tooth in UPPER if tooth not in ("17", "27")]
    return {
        "patient": {"reference": "P-7F3A", "growth": growth},
        "teeth": present(*particulars, upper=upper),
        **sections,
    }


MISSING = [{"id": "p1", "problem": "missing-teeth", "teeth": ["45"]}]
OUT = [allowed("a1", "extraction", teeth=["14"])]
SCREW = [allowed("a1", "auxiliary", auxiliary="bone-screw")]
BUTTON = allowed("a1", "auxiliary", auxiliary="bonded-button", teeth=["13"])
ELASTICS = [allowed("a1", "class-ii-elastics", sides=["right"])]
CROSS = [allowed("a1", "elastics", pattern="cross", teeth=["16", "46"])]
BONDED = [{"id": "r1", "arch": "lower", "retainer": "bonded"}]
DECIDES = [{"id": "t1", "otherwise": "laboratory-decides"}]
SPLINT = present(("41", "splinted"), ("31", "splinted"))

CONDITIONS = (
    Case("active-periodontitis", "teeth are aligned", ill("active-periodontitis", goals=ALIGN), STATED),
    Case("active-periodontitis", "nothing is moved", ill("active-periodontitis")),
    Case("active-periodontitis", "it was treated", ill("treated-periodontitis", goals=ALIGN)),
    Case(
        "active-periodontitis",
        "treatment comes first",
        ill("active-periodontitis", goals=ALIGN, process=step("periodontal-treatment", before="g1")),
    ),
    Case(
        "active-periodontitis",
        "treatment at a time not said",
        ill("active-periodontitis", goals=ALIGN, process=step("periodontal-treatment")),
        STATED,
    ),
    Case("treated-periodontitis-moved", "teeth are aligned", ill("treated-periodontitis", goals=ALIGN), STATED),
    Case("treated-periodontitis-moved", "nothing is moved", ill("treated-periodontitis")),
    Case("treated-periodontitis-moved", "still active", ill("active-periodontitis", goals=ALIGN)),
    Case("antiresorptive-medication", "nothing beside it", ill("antiresorptive-medication", goals=ALIGN), STATED),
    Case(
        "antiresorptive-medication", "words", ill("antiresorptive-medication", "agreed with her physician", goals=ALIGN)
    ),
    Case("antiresorptive-medication", "nothing is moved", ill("antiresorptive-medication")),
    Case(
        "antiresorptive-medication-in-words", "words", ill("antiresorptive-medication", "agreed", goals=ALIGN), STATED
    ),
    Case("antiresorptive-medication-in-words", "no words", ill("antiresorptive-medication", goals=ALIGN)),
    Case("active-caries", "teeth are aligned", ill("active-caries", goals=ALIGN), STATED),
    Case("active-caries", "a new scan follows", ill("active-caries", goals=ALIGN, process=step("new-scan"))),
    Case("active-caries", "nothing is moved", ill("active-caries")),
    Case(
        "jaw-joint-disorder", "a tooth is moved", ill("jaw-joint-disorder", movements=moved(["11"], "labial")), STATED
    ),
    Case("jaw-joint-disorder", "grinding is not it", ill("clenching-or-grinding", goals=ALIGN)),
    Case("bleeding-disorder-and-operation", "an extraction", ill("bleeding-disorder", allow=OUT), STATED),
    Case("bleeding-disorder-and-operation", "an exposure", ill("bleeding-disorder", process=step("exposure")), STATED),
    Case("bleeding-disorder-and-operation", "a bone screw", ill("bleeding-disorder", allow=SCREW), STATED),
    Case("bleeding-disorder-and-operation", "a button", ill("bleeding-disorder", allow=[BUTTON])),
    Case("nickel-allergy-and-metal", "a button", ill("allergy-nickel", allow=[BUTTON]), STATED),
    Case("nickel-allergy-and-metal", "of gold", ill("allergy-nickel", allow=[{**BUTTON, "words": "gold"}])),
    Case("nickel-allergy-and-metal", "elastics on hooks", ill("allergy-nickel", allow=CROSS), STATED),
    Case("nickel-allergy-and-metal", "a bonded wire", ill("allergy-nickel", retention=BONDED), STATED),
    Case("nickel-allergy-and-metal", "a bone screw is of titanium", ill("allergy-nickel", allow=SCREW)),
    Case("nickel-allergy-and-metal", "attachments are of resin", ill("allergy-nickel", attachments=DECIDES)),
    Case("acrylate-allergy-and-resin", "the laboratory's choice", ill("allergy-acrylate", attachments=DECIDES), STATED),
    Case(
        "acrylate-allergy-and-resin",
        "none is placed",
        ill("allergy-acrylate", attachments=[{"id": "t1", "otherwise": "none"}, {"id": "t2", "must_not": ["11"]}]),
    ),
    Case("acrylate-allergy-and-resin", "a bonded retainer", ill("allergy-acrylate", retention=BONDED), STATED),
    Case("acrylate-allergy-and-resin", "nickel is not it", ill("allergy-nickel", attachments=DECIDES)),
    Case("latex-allergy-and-elastics", "Class II elastics", ill("allergy-latex", allow=ELASTICS), STATED),
    Case("latex-allergy-and-elastics", "cross elastics", ill("allergy-latex", allow=CROSS), STATED),
    Case(
        "latex-allergy-and-elastics",
        "without latex",
        ill("allergy-latex", allow=ELASTICS, appliance=[{"id": "b1", "part": "elastic", "words": "without latex"}]),
    ),
    Case(
        "latex-allergy-and-elastics",
        "elastics of which nothing is said",
        ill("allergy-latex", appliance=[{"id": "b1", "part": "elastic", "start": "13", "end": "46"}]),
        STATED,
    ),
    Case("latex-allergy-and-elastics", "no elastics", ill("allergy-latex", goals=ALIGN)),
)

FIXED, LAST, APART = "attachment-on-fixed-tooth", "primary-tooth-without-successor", "splinted-teeth-moved-apart"
SHORT, HURT, LOOSE = "moving-short-root", "moving-injured-tooth", "moving-mobile-tooth"
HALF, COMING = "moving-partly-erupted-tooth", "second-molars-unerupted-while-growing"
BUCCAL = moved(["85"], "buccal")
TEETH = (
    Case(FIXED, "an implant", state("15", "implant", attachments=[{"id": "t1", "must": ["15"]}]), ATTACHED),
    Case(
        FIXED,
        "an ankylosed tooth, wished",
        state("15", "ankylosed", attachments=[{"id": "t1", "prefer": ["15"]}]),
        ATTACHED,
    ),
    Case(FIXED, "refused", state("15", "implant", attachments=[{"id": "t1", "must_not": ["15"]}])),
    Case(
        FIXED, "it holds", state("15", "ankylosed", attachments=[{"id": "t1", "must": ["15"], "reason": "retention"}])
    ),
    Case(FIXED, "a crown can move", state("15", "crown", attachments=[{"id": "t1", "must": ["15"]}])),
    Case(
        FIXED,
        "the abutment of a bridge",
        {
            "teeth": present(("15", "pontic"), ("16", "bridge-abutment"), ("14", "bridge-abutment")),
            "attachments": [{"id": "t1", "must": ["14", "13"]}],
        },
        ATTACHED,
    ),
    Case(LAST, "moved, in a permanent dentition", kept("permanent", "85", movements=BUCCAL), MOVED),
    Case(LAST, "moved, in a mixed dentition", kept("mixed", "85", movements=BUCCAL)),
    Case(LAST, "stated as missing", kept("mixed", "85", movements=BUCCAL, problems=MISSING), MOVED),
    Case(LAST, "the mirror is missing", kept("mixed", "75", movements=moved(["75"], "buccal"), problems=MISSING)),
    Case(LAST, "aligned by name", kept("permanent", "85", goals=[must("g1", align=["46", "85", "44"])]), AIMED),
    Case(LAST, "left alone", kept("permanent", "85", goals=ALIGN)),
    Case(LAST, "held", kept("permanent", "85", keep=[must("k1", hold=["85"])])),
    Case(APART, "one of two", {"teeth": SPLINT, "movements": moved(["41"], "labial")}, MOVED),
    Case(APART, "both alike", {"teeth": SPLINT, "movements": moved(["41", "31"], "labial")}),
    Case(APART, "both intruded", {"teeth": SPLINT, "movements": moved(["42", "41", "31"], "intrusion")}),
    Case(
        APART,
        "both turned",
        {"teeth": SPLINT, "movements": moved(["41", "31"], "mesiolingual-rotation", 5, "deg")},
        MOVED,
    ),
    Case(
        APART,
        "both mesial, so towards each other",
        {"teeth": SPLINT, "movements": moved(["41", "31"], "mesial")},
        MOVED,
    ),
    Case(APART, "aligned", {"teeth": SPLINT, "goals": [must("g1", align=LOWER_FRONT)]}, AIMED),
    Case(
        APART,
        "the bond is opened",
        {
            "teeth": SPLINT,
            "goals": [must("g1", align=LOWER_FRONT)],
            "process": step("other", teeth=["41", "31"], words="the wire is taken off first"),
        },
    ),
    Case(APART, "other teeth", {"teeth": SPLINT, "movements": moved(["43"], "labial")}),
    Case(APART, "one alone, its neighbour not said", state("41", "splinted", movements=moved(["41"], "labial")), MOVED),
    Case(SHORT, "intruded", state("11", "short-root", movements=moved(["11"], "intrusion", 0.5)), MOVED),
    Case(
        SHORT,
        "by an advance of the arch",
        state("11", "short-root", allow=[allowed("a1", "incisor-advance", arch="upper", up_to=1, unit="mm")]),
        ("/allow/0",),
    ),
    Case(SHORT, "aligned only", state("11", "short-root", goals=ALIGN)),
    Case(SHORT, "turned only", state("11", "short-root", movements=moved(["11"], "mesiolingual-rotation", 5, "deg"))),
    Case(SHORT, "its neighbour", state("11", "short-root", movements=moved(["12"], "intrusion", 0.5))),
    Case(HURT, "aligned", state("11", "injured", goals=ALIGN), AIMED),
    Case(HURT, "described", state("11", "injured", words="loosened three years ago, healed", goals=ALIGN)),
    Case(HURT, "left alone", state("31", "injured", goals=ALIGN)),
    Case(LOOSE, "aligned", state("11", "mobile", goals=ALIGN), AIMED),
    Case(LOOSE, "described", state("11", "mobile", words="bites edge to edge", goals=ALIGN)),
    Case(
        HALF, "moved", state("13", "partly-erupted", movements=moved(["13"], "mesiolingual-rotation", 5, "deg")), MOVED
    ),
    Case(HALF, "aligned only", state("13", "partly-erupted", goals=[must("g1", align=["13", "12"])])),
    Case(
        HALF,
        "a new scan follows",
        state("13", "partly-erupted", movements=moved(["13"], "labial"), process=step("new-scan")),
    ),
    Case(COMING, "unerupted", growing(("17", "unerupted"), ("27", "unerupted")), ("/teeth/particulars",)),
    Case(COMING, "growth complete", growing(("17", "unerupted"), growth="complete")),
    Case(COMING, "growth not known", growing(("17", "unerupted"), growth="unknown")),
    Case(COMING, "not listed, and not said to be coming", growing()),
    Case(COMING, "a third molar", growing(("18", "unerupted"))),
    Case(COMING, "an arch that is not treated", growing(("17", "unerupted"), treat={"arches": "lower"})),
    Case(COMING, "a new scan follows", growing(("17", "unerupted"), process=step("new-scan"))),
)


CASES = (*CONDITIONS, *TEETH)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


def test_only_what_must_not_go_on_stops_an_order():
    assert [rule.id for rule in RULES if rule.severity.value == "stop"] == [
        "active-periodontitis",
        "antiresorptive-medication",
    ]


def test_several_teeth_of_one_kind_make_one_finding():
    teeth = present(("11", "short-root"), ("21", "short-root"))
    (told,) = found(Case(SHORT, "", {"teeth": teeth, "movements": moved(["11", "21"], "intrusion")}), RULES)
    assert (told.facts["teeth"], told.clauses) == (["11", "21"], ("m1",))


# Levander and Malmgren 1988: image after 6 to 12 months. Kindelan et al. 2008: wait 3 months, and up to 12.
@pytest.mark.parametrize(
    "rule, kind, months", [(SHORT, "short-root", (6, 12)), (HURT, "injured", (3, 12))], ids=["image", "wait"]
)
def test_times_are_those_of_the_literature(rule, kind, months):
    (told,) = found(Case(rule, "", state("11", kind, movements=moved(["11"], "intrusion"))), RULES)
    assert (told.facts["first"], told.facts["last"]) == months


# Herrera et al. 2022: no pocket of 5 mm that bleeds, none of 6 mm.
def test_pockets_are_those_of_the_guideline():
    (told,) = found(Case("treated-periodontitis-moved", "", ill("treated-periodontitis", goals=ALIGN)), RULES)
    assert (told.facts["bleeding"], told.facts["any"]) == (5, 6)
