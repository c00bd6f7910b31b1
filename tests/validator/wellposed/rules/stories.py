"""Orders that rest on a diagnosis the measurements do not support, in ten settings, every one invented.

Each says which statement is doubted, which instructions rest on it alone, and which have a reason of their own. Written
from the measurements, before the rules were run on them.
"""

from typing import NamedTuple

from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, allowed, document, found, must

LOWER_FRONT = ["43-42", "42-41", "41-31", "31-32", "32-33"]
UPPER_FRONT = ["13-12", "12-11", "11-21", "21-22", "22-23"]
AROUND = {
    "treat": {"arches": "both"},
    "records": [{"kind": "intraoral-scan", "date": "2026-02-02"}, {"kind": "panoramic-radiograph"}],
    "process": [{"id": "q1", "step": "approval-before-making"}, {"id": "q2", "step": "consent-given"}],
    "retention": [
        {"id": "r1", "arch": "upper", "retainer": "removable"},
        {"id": "r2", "arch": "lower", "retainer": "bonded"},
    ],
}


class Story(NamedTuple):
    """A setting; the rule that leads; what it doubts; what rests on that alone; what does not; the order."""

    setting: str
    leader: str
    doubts: str
    resting: tuple
    apart: tuple
    order: dict


def patient(age, sex, growth="complete"):
    """Whom it is for, as far as the rules need it."""
    return {"reference": "P-0001", "age_years": age, "sex": sex, "growth": growth, "dentition": "permanent"}


def problem(name, term, *because, **said):
    """A diagnosis."""
    return {"id": name, "problem": term, **said, **({"because": list(because)} if because else {})}


def moved(name, teeth, motion, least, *because, unit="mm", **said):
    """A movement that must be made."""
    more = {"because": list(because)} if because else {}
    return must(name, teeth=teeth, motion=motion, at_least=least, unit=unit, **more, **said)


def teeth_of(measure, name, **values):
    """A measure of single teeth: ``_11=8.5``."""
    return {
        "id": name,
        "tooth_measure": measure,
        "values": {tooth[1:]: value for tooth, value in values.items()},
        "unit": "mm",
    }


def order(**sections):
    """The whole document."""
    return document(**{"teeth": {"upper": UPPER, "lower": LOWER}, **AROUND, **sections})


LONG_CROWNS = Story(
    "a woman of 34 whose long upper crowns look like a deep bite",
    "deep-bite-not-supported",
    "p1",
    ("m1", "a1", "b1", "t1"),
    ("g1", "a2"),
    order(
        patient=patient(34, "female"),
        findings=[
            found("f1", "overbite", 2.5),
            found("f2", "lower-incisor-crown-height", 9),
            teeth_of("crown-height", "f3", _11=12.1, _21=12),
            teeth_of("tooth-width", "f4", _11=8.4, _21=8.5),
            found("f5", "lower-crowding", 2),
        ],
        problems=[problem("p1", "deep-bite"), problem("p2", "crowding", "f5", arch="lower")],
        goals=[must("g1", align=["43", "42", "41", "31", "32", "33"], because=["p2"])],
        movements=[moved("m1", ["12", "11", "21", "22"], "intrusion", 1.2)],
        allow=[
            allowed("a1", "extrusion", teeth=["34", "35", "44", "45"], up_to=1.5, unit="mm"),
            allowed(
                "a2", "enamel-reduction", contacts=LOWER_FRONT, per_contact=0.4, in_all=2, unit="mm", because=["p2"]
            ),
        ],
        appliance=[{"id": "b1", "part": "bite-plane", "teeth": ["11", "21"]}],
        attachments=[{"id": "t1", "must": ["12", "22"], "reason": "movement"}],
    ),
)
LIP_STILL_GROWS = Story(
    "a boy of 14 whose gum shows a little, as it does at that age",
    "gum-display-not-supported",
    "p1",
    ("m1", "t1"),
    ("g1", "a1"),
    order(
        patient=patient(14, "male", "growing"),
        findings=[
            found("f1", "gingival-display-on-smiling", 1.5),
            found("f2", "incisor-display-at-rest", 3.5),
            found("f3", "overbite", 3),
            found("f4", "upper-spacing", 2, contacts=UPPER_FRONT),
        ],
        problems=[
            problem("p1", "excess-gingival-display", "f1"),
            problem("p2", "spacing", "f4", arch="upper"),
        ],
        goals=[must("g1", close=UPPER_FRONT, because=["p2"])],
        movements=[moved("m1", ["12", "11", "21", "22"], "intrusion", 1, "p1")],
        allow=[
            allowed("a1", "incisor-retraction", arch="upper", up_to=2, unit="mm", because=["p2"]),
            allowed("a2", "intrusion", teeth=["13", "23", "14", "24", "15", "25"], up_to=1, unit="mm", because=["p1"]),
        ],
        attachments=[{"id": "t1", "must": ["11", "21"], "reason": "movement"}],
    ),
)
OVERSTATED_CROWDING = Story(
    "a man of 27 whose one and a half millimetres of crowding are called severe",
    "crowding-grade-differs",
    "p1",
    ("a1", "a2", "a3"),
    ("k1",),
    order(
        patient=patient(27, "male"),
        findings=[found("f1", "upper-crowding", 1.5), found("f2", "overbite", 3), found("f3", "overjet", 2.5)],
        problems=[problem("p1", "crowding", "f1", arch="upper", grade="severe")],
        goals=[must("g1", align=["13", "12", "11", "21", "22", "23"], because=["p1"])],
        keep=[must("k1", measure="overbite", within=1, unit="mm")],
        allow=[
            allowed(
                "a1", "enamel-reduction", contacts=UPPER_FRONT, per_contact=0.5, in_all=2.5, unit="mm", because=["p1"]
            ),
            allowed("a2", "widening", arch="upper", up_to=4, unit="mm", because=["p1"]),
            allowed("a3", "incisor-advance", arch="upper", up_to=3, unit="mm", because=["p1"]),
        ],
    ),
)
NO_CLASS_TWO = Story(
    "a woman of 45 with Class I molars and canines, called Class II on the right",
    "class-not-supported",
    "p1",
    ("m1", "a1", "t1"),
    ("g1", "a2"),
    order(
        patient=patient(45, "female"),
        findings=[
            found("f1", "molar-relation-right", 0),
            found("f2", "canine-relation-right", 0.5),
            found("f3", "molar-relation-left", 0),
            found("f4", "canine-relation-left", 0),
            found("f5", "upper-crowding", 1),
            found("f6", "overbite", 3),
        ],
        problems=[problem("p1", "class-ii", side="right"), problem("p2", "displaced-teeth", "f5", teeth=["12"])],
        goals=[must("g1", align=["13", "12", "11"], because=["p2"])],
        movements=[moved("m1", ["16", "17"], "distal", 1.5, "p1")],
        allow=[
            allowed("a1", "class-ii-elastics", sides=["right"], because=["p1"]),
            allowed("a2", "movement", teeth=["12"], motion="labial", up_to=1, unit="mm", because=["p2"]),
        ],
        attachments=[{"id": "t1", "must": ["16", "17"], "reason": "movement"}],
    ),
)
NO_CROSSBITE = Story(
    "a girl of 13 whose narrow-looking upper arch overlaps the lower as it should",
    "crossbite-not-supported",
    "p1",
    ("a1", "a2", "m1"),
    ("g1", "a3"),
    order(
        patient=patient(13, "female", "growing"),
        findings=[
            found("f1", "transverse-overlap-right", 2, pair=["16", "46"]),
            found("f2", "transverse-overlap-left", 1.5, pair=["26", "36"]),
            found("f3", "upper-spacing", 1.5, contacts=["11-21"]),
            found("f4", "overbite", 2.5),
        ],
        problems=[
            problem("p1", "crossbite-posterior", "f1", "f2"),
            problem("p2", "spacing", "f3", arch="upper"),
        ],
        goals=[must("g1", close=["11-21"], because=["p2"])],
        movements=[moved("m1", ["16", "26"], "buccal", 1.5, "p1")],
        allow=[
            allowed("a1", "widening", arch="upper", teeth=["14", "15", "24", "25"], up_to=3, unit="mm", because=["p1"]),
            allowed("a2", "elastics", pattern="cross", teeth=["16", "46"], because=["p1"]),
            allowed("a3", "movement", teeth=["11", "21"], motion="mesial", up_to=1, unit="mm", because=["p2"]),
        ],
    ),
)
BITE_NOT_OPEN = Story(
    "a man of 52 whose front teeth overlap by a millimetre and a half, called open",
    "open-bite-not-supported",
    "p1",
    ("m1", "m2", "t1"),
    ("g1", "a1"),
    order(
        patient=patient(52, "male"),
        findings=[
            found("f1", "overbite", 1.5),
            found("f2", "overjet", 2.5),
            found("f3", "lower-crowding", 1.5),
        ],
        problems=[problem("p1", "open-bite-anterior"), problem("p2", "crowding", "f3", arch="lower")],
        goals=[must("g1", align=["43", "42", "41", "31", "32", "33"], because=["f3"])],
        movements=[
            moved("m1", ["12", "11", "21", "22"], "extrusion", 0.8),
            moved("m2", ["16", "26", "17", "27"], "intrusion", 0.5),
        ],
        allow=[
            allowed("a1", "enamel-reduction", contacts=LOWER_FRONT, per_contact=0.3, in_all=1.5, unit="mm"),
            allowed("a2", "intrusion", teeth=["14", "15", "24", "25"], up_to=0.5, unit="mm"),
        ],
        attachments=[{"id": "t1", "must": ["12", "11", "21", "22"], "reason": "movement"}],
    ),
)
STRAIGHT_MIDLINES = Story(
    "a woman of 22 whose lower midline is a third of a millimetre off",
    "midline-not-supported",
    "p1",
    ("a1", "a2"),
    ("g1", "a3"),
    order(
        patient=patient(22, "female"),
        findings=[
            found("f1", "lower-midline", 0.3),
            found("f2", "upper-midline", 0),
            found("f3", "upper-crowding", 2),
            found("f4", "overbite", 3),
        ],
        problems=[
            problem("p1", "midline-deviation", "f1", arch="lower"),
            problem("p2", "crowding", "f3", arch="upper"),
        ],
        goals=[must("g1", align=["13", "12", "11", "21", "22", "23"], because=["p2"])],
        allow=[
            allowed(
                "a1",
                "enamel-reduction",
                contacts=["43-42", "42-41"],
                per_contact=0.4,
                in_all=0.8,
                unit="mm",
                because=["p1"],
            ),
            allowed("a2", "movement", teeth=["41", "31"], motion="distal", up_to=1, unit="mm", because=["p1"]),
            allowed(
                "a3", "enamel-reduction", contacts=UPPER_FRONT, per_contact=0.4, in_all=2, unit="mm", because=["p2"]
            ),
        ],
    ),
)
# Nelson's mean widths (Wheeler's Dental Anatomy), which balance: overall 91.4 %, anterior 77.8 %.
HALVES = ((10, 7, 7, 7.5, 6.5, 8.5), (11, 7, 7, 7, 5.5, 5))
MEAN_WIDTHS = {
    tooth: width
    for arch, half in zip((UPPER, LOWER), HALVES, strict=True)
    for tooth, width in zip(arch[1:-1], (*half, *reversed(half)), strict=True)
}
TEETH_THAT_FIT = Story(
    "a man of 30 whose tooth sizes agree, with reduction ordered for a discrepancy",
    "tooth-size-problem-not-supported",
    "p1",
    ("a1",),
    ("g1", "a2"),
    order(
        patient=patient(30, "male"),
        findings=[
            {"id": "f1", "tooth_measure": "tooth-width", "values": MEAN_WIDTHS, "unit": "mm"},
            found("f2", "upper-spacing", 2, contacts=UPPER_FRONT),
            found("f3", "overjet", 3.5),
            found("f4", "overbite", 3),
        ],
        problems=[problem("p1", "tooth-size-discrepancy", "f1"), problem("p2", "spacing", "f2", arch="upper")],
        goals=[must("g1", close=UPPER_FRONT, because=["p2"])],
        allow=[
            allowed(
                "a1", "enamel-reduction", contacts=LOWER_FRONT, per_contact=0.4, in_all=2, unit="mm", because=["p1"]
            ),
            allowed("a2", "incisor-retraction", arch="upper", up_to=2, unit="mm", because=["p2"]),
        ],
    ),
)
UPRIGHT_ENOUGH = Story(
    "a woman of 40 whose incisors stand as the averages do, called protrusive",
    "incisor-inclination-not-supported",
    "p1",
    ("m1", "a1", "a2"),
    ("m2", "t1"),
    order(
        patient=patient(40, "female"),
        findings=[
            found("f1", "upper-incisor-to-palatal-plane", 109, "deg"),
            found("f2", "lower-incisor-to-mandibular-plane", 92, "deg"),
            found("f3", "interincisal-angle", 132, "deg"),
            found("f4", "overjet", 3),
            found("f5", "overbite", 2.5),
            {"id": "f6", "tooth_measure": "rotation", "values": {"33": -18}, "unit": "deg"},
        ],
        problems=[
            problem("p1", "protrusive-incisors", "f1", arch="upper"),
            problem("p2", "rotated-teeth", "f6", teeth=["33"]),
        ],
        movements=[
            moved("m1", ["12", "11", "21", "22"], "palatal-crown-torque", 4, "p1", unit="deg"),
            moved("m2", ["33"], "mesiolingual-rotation", 15, "p2", unit="deg"),
        ],
        allow=[
            allowed("a1", "incisor-retraction", arch="upper", up_to=2, unit="mm", because=["p1"]),
            allowed(
                "a2", "enamel-reduction", contacts=UPPER_FRONT, per_contact=0.3, in_all=1.5, unit="mm", because=["p1"]
            ),
        ],
        attachments=[{"id": "t1", "must": ["33"], "reason": "movement"}],
    ),
)
FLAT_ENOUGH = Story(
    "a youth of 17 whose curve of Spee is no deeper than a good occlusion's",
    "curve-not-supported",
    "p1",
    ("g1", "m1"),
    ("g2", "a1"),
    order(
        patient=patient(17, "male"),
        findings=[
            found("f1", "curve-of-spee", 1.2),
            found("f2", "overbite", 3),
            found("f3", "upper-spacing", 1, contacts=["11-21"]),
        ],
        problems=[problem("p1", "deep-curve-of-spee", "f1"), problem("p2", "spacing", "f3", arch="upper")],
        goals=[must("g1", level="lower", because=["p1"]), must("g2", close=["11-21"], because=["p2"])],
        movements=[moved("m1", ["42", "41", "31", "32"], "intrusion", 0.8, "p1")],
        allow=[allowed("a1", "movement", teeth=["11", "21"], motion="mesial", up_to=1, unit="mm", because=["p2"])],
    ),
)

STORIES = (
    *(LONG_CROWNS, LIP_STILL_GROWS, OVERSTATED_CROWDING, NO_CLASS_TWO, NO_CROSSBITE),
    *(BITE_NOT_OPEN, STRAIGHT_MIDLINES, TEETH_THAT_FIT, UPRIGHT_ENOUGH, FLAT_ENOUGH),
)
