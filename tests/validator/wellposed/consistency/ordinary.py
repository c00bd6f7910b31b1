"""Ordinary prescriptions, in which nothing is wrong: a base to change, and some whole ones."""

from wellposed.consistency.whole import Whole
from wellposed.model import Prescription

UPPER = ["17", "16", "15", "14", "13", "12", "11", "21", "22", "23", "24", "25", "26", "27"]
LOWER = ["47", "46", "45", "44", "43", "42", "41", "31", "32", "33", "34", "35", "36", "37"]
BASE = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "HR-2031",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "prescriber": {"id": "clinic-17/dr-2"},
    "laboratory": {"id": "lab-4"},
    "patient": {"reference": "P-7F3A"},
    "teeth": {"upper": UPPER, "lower": LOWER},
}


def document(**changes):
    """The base with sections put in; None takes one out."""
    return {name: value for name, value in {**BASE, **changes}.items() if value is not None}


def prescription(**changes):
    """The base as its model."""
    return Prescription.model_validate(document(**changes))


def must(name, **said):
    """A clause that must hold."""
    return {"id": name, "strength": "must", **said}


def allowed(name, use, **said):
    """An allowance."""
    return {"id": name, "use": use, **said}


def found(name, measure, value, unit="mm", **said):
    """A finding."""
    return {"id": name, "measure": measure, "value": value, "unit": unit, **said}


def expected(name, measure, at_least, at_most=0, **said):
    """An expectation."""
    return {"id": name, "measure": measure, "at_least": at_least, "at_most": at_most, "unit": "mm", **said}


def present(*states, upper=UPPER, lower=LOWER):
    """The teeth, and (tooth, state …) for those that are not ordinary."""
    particulars = [{"tooth": tooth, "states": list(said)} for tooth, *said in states]
    return {"upper": list(upper), "lower": list(lower), "particulars": particulars}


CROWDED_FRONT = {
    "treat": {"arches": "both"},
    "findings": [found("f1", "overbite", 2.5), found("f2", "lower-crowding", 2.0)],
    "problems": [{"id": "p1", "problem": "crowding", "arch": "lower", "because": ["f2"]}],
    "goals": [must("g1", align=["33", "32", "31", "41", "42", "43"], because=["f2"])],
    "keep": [must("k1", measure="overbite", within=0.5, unit="mm")],
    "allow": [
        allowed(
            "a1",
            "enamel-reduction",
            contacts=["33-32", "32-31", "31-41", "41-42", "42-43"],
            per_contact=0.4,
            in_all=2.0,
            at_least=0.0,
            unit="mm",
        )
    ],
    "attachments": [{"id": "t1", "must_not": ["11", "21"]}, {"id": "t2", "otherwise": "laboratory-decides"}],
    "notes": [{"text": "Prefers visits in the morning.", "about": ["g1"]}],
}
FOUR_PREMOLARS = {
    "treat": {"arches": "both"},
    "teeth": present(("14", "to-be-extracted"), ("24", "root-filled"), ("18", "unerupted"), upper=["18", *UPPER]),
    "findings": [
        found("f1", "upper-crowding", 5, contacts=["13-12", "14-13"]),
        found("f2", "lower-crowding", 6),
        {"id": "f3", "tooth_measure": "tooth-width", "unit": "mm", "values": {"14": 7, "11": 8.5}},
        found("f4", "overbite", 40, "percent"),
        found("f5", "overbite", 3.5),
    ],
    "goals": [
        must("g1", close=["13-15", "25-23", "45-43", "33-35"]),
        must("g2", measure="overjet", pair=["11", "41"], at_least=2, at_most=3, unit="mm"),
    ],
    "keep": [must("k1", measure="upper-inter-canine-width", within=1, unit="mm")],
    "allow": [
        allowed("a1", "extraction", teeth=["14", "24", "34", "44"]),
        allowed("a2", "mesial-movement", arch="upper", up_to=2.5, unit="mm"),
        allowed("a3", "class-ii-elastics", sides=["right", "left"]),
        allowed("a4", "movement", teeth=["13", "23"], motion="distal-crown-tip", up_to=5, unit="deg"),
    ],
    "process": [{"id": "q1", "step": "extraction", "teeth": ["14", "24"], "date": "2026-04-01", "before": "g1"}],
    "attachments": [{"id": "t1", "must": ["13", "23"]}, {"id": "t2", "must_not": ["14", "24"]}],
}
ONE_ARCH_WITH_A_GAP = {
    "treat": {"arches": "upper", "passive_appliance": "wanted"},
    "teeth": present(("11", "veneer"), ("26", "implant"), upper=[tooth for tooth in UPPER if tooth != "12"]),
    "conditions": [{"condition": "thin-gingiva", "teeth": ["31", "41"]}],
    "findings": [
        found("f1", "upper-spacing", 7, contacts=["13-11"]),
        found("f2", "overjet", 1, jaw_position="intercuspal"),
        found("f3", "overjet", 3, jaw_position="retruded-contact"),
        found("f4", "transverse-overlap-left", -1, pair=["24", "34"]),
        found("f5", "transverse-overlap-left", 2, pair=["26", "36"]),
    ],
    "problems": [{"id": "p1", "problem": "missing-teeth", "teeth": ["12"]}],
    "goals": [must("g1", leave="11-13", amount=6.5, unit="mm"), must("g2", close_arch="upper")],
    "keep": [must("k1", hold=["26", "36"]), must("k2", variable="torque", teeth=["11"], within=2, unit="deg")],
    "allow": [
        allowed("a1", "widening", arch="upper", up_to=2, unit="mm"),
        allowed("a2", "elastics", pattern="cross", teeth=["24", "34"]),
    ],
    "exclude": [{"id": "x1", "means": "widening", "teeth": ["17", "27"]}, {"id": "x2", "means": "enamel-reduction"}],
    "appliance": [{"id": "b1", "part": "pontic", "teeth": ["12"]}, {"id": "b2", "part": "elastic", "start": "24"}],
    "retention": [{"id": "r1", "arch": "upper", "retainer": "bonded", "teeth": ["13", "11", "21"]}],
    "process": [{"id": "q1", "step": "surgery", "teeth": ["12"]}],
}
MANY_STAGES = {
    "revision": 3,
    "replaces": "ab" * 32,
    "treat": {"arches": "both"},
    "laboratory": {"id": "lab-4", "needed_by": "2028-02-29"},
    "movements": [
        must("m1", teeth=["16", "26"], motion="distal", at_least=1, at_most=2, unit="mm", because=["p1"]),
        must("m2", teeth=["13"], motion="mesiolingual-rotation", at_least=10, unit="deg", because=["p1"]),
        must("m3", teeth=["11"], motion="palatal-root-torque", at_most=5, unit="deg", because=["p1"]),
    ],
    "problems": [{"id": "p1", "problem": "class-ii", "side": "right", "teeth": ["16"]}],
    "expect": [
        expected("e1", "upper-crowding", -4, ground="derotation", contacts=["15-16", "25-26"]),
        expected("e2", "overjet", -2, ground="other", words="an earlier course of growth records"),
    ],
    "staging": must(
        "s1",
        largest_steps=[{"variable": "rotation", "amount": 2, "unit": "deg"}],
        order=[
            {"id": "o1", "first": "m1", "relation": "before", "then": "m2"},
            {"id": "o2", "first": "m2", "relation": "not-before-done", "then": "m3"},
            {"id": "o3", "first": "m3", "relation": "together-with", "then": "m1"},
        ],
    ),
    "extensions": {"org.example.case": {"critical": False, "content": None}},
}
BARE = {}

SOUND = {
    "crowded lower front": CROWDED_FRONT,
    "four premolars out": FOUR_PREMOLARS,
    "one arch, a lateral missing": ONE_ARCH_WITH_A_GAP,
    "a third revision in many stages": MANY_STAGES,
    "nothing but the teeth": BARE,
}


ALONE = 2  # a sentence and one value


def rows(*table):
    """A table for parametrize whose rows begin with a sentence."""
    values = [row[1] if len(row) == ALONE else row[1:] for row in table]
    return {"argvalues": values, "ids": [row[0] for row in table]}


def told_by(declared, **changes):
    """What one rule says of a changed base: pointer, clauses, facts."""
    whole = Whole(prescription(**changes))
    return [(finding.pointer, finding.clauses, dict(finding.facts)) for finding in declared.findings(whole)]
