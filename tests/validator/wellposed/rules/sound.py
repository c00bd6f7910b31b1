"""Ordinary, sound prescriptions made at random: what a careful clinician sends on a usual day.

Each begins with a mouth that was measured, states what is wrong in it and why, asks for what the measurements call
for, and opens the means it needs in amounts that texts give as usual. Nothing here looks at a rule.
"""

import random

from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, allowed, document, found, must

FRONT = {"upper": ["13", "12", "11", "21", "22", "23"], "lower": ["43", "42", "41", "31", "32", "33"]}
INCISORS = {"upper": ["12", "11", "21", "22"], "lower": ["42", "41", "31", "32"]}
CONTACTS = {
    "upper": ["13-12", "12-11", "11-21", "21-22", "22-23"],
    "lower": ["43-42", "42-41", "41-31", "31-32", "32-33"],
}
PLACES = ("EU", "GB", "US-FL", "US-MD", "CA", "AU")


class Sound:
    """One prescription in the making: sections that grow, amounts from one random source."""

    def __init__(self, seed):
        self.rng = random.Random(seed)
        self.sections = {name: [] for name in ("findings", "problems", "goals", "keep", "movements", "allow")}
        self.more = {"attachments": [], "exclude": []}
        self.measured = {}
        self.age = self.rng.choice([13, 15, 16, 19, 23, 27, 31, 34, 38, 45, 52])

    def amount(self, low, high, step=0.1):
        """A round amount."""
        return round(round(self.rng.uniform(low, high) / step) * step, 2)

    def add(self, section, part, letter):
        part = {**part, "id": f"{letter}{len(self.sections[section]) + 1}"}
        self.sections[section].append(part)
        return part["id"]

    def find(self, measure, value, unit="mm", **said):
        """A finding, once each measure."""
        if measure not in self.measured:
            self.measured[measure] = self.add("findings", found("f", measure, value, unit, **said), "f")
        return self.measured[measure]

    def problem(self, term, *because, **said):
        return self.add("problems", {"problem": term, "because": list(because), **said}, "p")

    def goal(self, *because, **said):
        return self.add("goals", must("g", because=list(because), **said), "g")

    def keep(self, measure, within):
        return self.add("keep", must("k", measure=measure, within=within, unit="mm"), "k")

    def move(self, teeth, motion, least, most, because, unit="mm"):
        bounds = {"at_least": least, "at_most": most, "unit": unit, "because": [because]}
        return self.add("movements", must("m", teeth=teeth, motion=motion, **bounds), "m")

    def allow(self, use, because, **said):
        return self.add("allow", allowed("a", use, because=[because], unit="mm", **said), "a")

    def attach(self, teeth, reason="movement"):
        ident = f"t{len(self.more['attachments']) + 1}"
        self.more["attachments"].append({"id": ident, "must": teeth, "reason": reason})

    def reduce(self, arch, because, need):
        """Enamel reduction in front for a need in mm, shared by five contacts."""
        each = max(0.1, min(0.4, round(need / 5 + 0.05, 1)))
        self.allow("enamel-reduction", because, contacts=CONTACTS[arch], per_contact=each, in_all=round(5 * each, 1))

    def rest_of_the_mouth(self):
        """What is measured in every mouth, where the case has not said it already."""
        rng = self.rng
        self.find("overbite", self.amount(2, 3.5, 0.5))
        self.find("overjet", self.amount(2, 3.5, 0.5))
        self.find("lower-incisor-crown-height", self.amount(8.5, 10, 0.5))
        for side in ("right", "left"):
            self.find(f"molar-relation-{side}", rng.choice([0, 0, 0.5]))
            self.find(f"canine-relation-{side}", rng.choice([0, 0, 0.5]))
        for arch in ("upper", "lower"):
            self.find(f"{arch}-midline", rng.choice([0, 0, 0.5]))
            if f"{arch}-spacing" not in self.measured:
                self.find(f"{arch}-crowding", rng.choice([0, 0.5, 1]))
        if rng.random() < 0.5:
            self.find("interincisal-angle", rng.randint(126, 136), "deg")
            self.find("lower-incisor-to-mandibular-plane", rng.randint(88, 93), "deg")
        if rng.random() < 0.4:
            self.find("incisor-display-at-rest", {True: 3.5, False: 1.5}[self.age < 30])

    def document(self):
        """The whole prescription, with all that surrounds the clauses."""
        self.rest_of_the_mouth()
        growing = self.age < 16
        patient = {"reference": f"P-{self.rng.randrange(16**4):04X}", "age_years": self.age, "dentition": "permanent"}
        around = {
            "prescriber": {"id": "clinic-3/dr-1", "licence": "L-20417", "jurisdiction": self.rng.choice(PLACES)},
            "laboratory": {"id": "lab-9", "needed_by": "2026-04-20"},
            "patient": {
                **patient,
                "sex": self.rng.choice(["female", "male"]),
                "growth": "growing" if growing else "complete",
            },
            "treat": {"arches": "both"},
            "records": [
                {"kind": "intraoral-scan", "date": "2026-02-27"},
                {"kind": "intraoral-photograph", "date": "2026-02-27"},
                {"kind": "panoramic-radiograph", "date": "2026-02-20"},
            ],
            "process": [{"id": "q1", "step": "approval-before-making"}, {"id": "q2", "step": "consent-given"}],
            "retention": [
                {"id": "r1", "arch": "upper", "retainer": "removable"},
                {"id": "r2", "arch": "lower", "retainer": self.rng.choice(["bonded", "removable"])},
            ],
            "appliance": [{"id": "b1", "part": "material", "words": "as the laboratory's usual sheet"}],
        }
        rest = [{"id": "t9", "otherwise": "laboratory-decides"}]
        more = {"attachments": [*self.more["attachments"], *rest]}
        if self.more["exclude"]:
            more["exclude"] = self.more["exclude"]
        sections = {name: parts for name, parts in self.sections.items() if parts}
        return document(**{"teeth": {"upper": UPPER, "lower": LOWER}, **around, **sections, **more})

    # what a day brings

    def crowded(self, arch, low=1.0, high=3.0):
        """Crowding in front, room by reduction, sometimes with a little advance or widening."""
        need = self.amount(low, high, 0.5)
        because = self.problem("crowding", self.find(f"{arch}-crowding", need), arch=arch)
        self.goal(because, align=FRONT[arch])
        if need > 2 or self.rng.random() < 0.3:
            self.allow("incisor-advance", because, arch=arch, up_to=1)
            need -= 1
        if need > 1.5 and arch == "upper":
            self.allow("widening", because, arch=arch, up_to=2)
            need -= 1
        self.reduce(arch, because, max(need, 0.5))

    def crowded_both(self):
        """Crowding in both arches."""
        self.crowded("upper", 1, 2.5)
        self.crowded("lower", 1, 2.5)

    def crowded_lower(self):
        """Relapse of the lower front."""
        self.crowded("lower")
        self.keep("overbite", 0.5)

    def spaced(self):
        """Spaces of the upper front are closed by drawing the incisors back."""
        space = self.amount(1, 3, 0.5)
        because = self.problem("spacing", self.find("upper-spacing", space, contacts=CONTACTS["upper"]), arch="upper")
        self.find("overjet", self.amount(3, 4, 0.5))
        self.goal(because, close=CONTACTS["upper"])
        self.allow("incisor-retraction", because, arch="upper", up_to=2)
        self.allow("mesial-movement", because, arch="upper", up_to=1)

    def deep(self):
        """A deep bite lessened by intruding lower incisors and extruding premolars."""
        bite = self.amount(4.5, 6, 0.5)
        crown = self.find("lower-incisor-crown-height", 9)
        because = self.problem("deep-bite", self.find("overbite", bite), crown)
        self.find("curve-of-spee", self.amount(2.5, 3.5, 0.5))
        self.goal(because, measure="overbite", at_most=bite - 1.5, at_least=2, unit="mm")
        self.move(INCISORS["lower"], "intrusion", 0.5, 1.5, because)
        self.allow("extrusion", because, teeth=["34", "35", "44", "45"], up_to=1)
        self.allow("intrusion", because, teeth=["33", "43"], up_to=1)
        self.attach(["34", "35", "44", "45"])

    def half_class_two(self):
        """A mild Class II drawn back in the upper arch, with elastics."""
        off = self.amount(1, 2, 0.5)
        found_at = [self.find(f"{kind}-relation-{side}", off) for kind in ("molar", "canine") for side in SIDES]
        because = self.problem("class-ii", *found_at)
        self.find("overjet", self.amount(3.5, 5, 0.5))
        for side in SIDES:
            self.goal(because, measure=f"molar-relation-{side}", at_most=0.5, unit="mm")
        self.allow("distal-movement", because, arch="upper", up_to=2)
        self.allow("incisor-retraction", because, arch="upper", up_to=2)
        self.sections["allow"].append({"id": "a9", "use": "class-ii-elastics", "sides": SIDES, "because": [because]})
        self.attach(["13", "23", "16", "26"])

    def midline(self):
        """A lower midline a little off, corrected with enamel of the front."""
        off = self.rng.choice([-1, 1])
        because = self.problem("midline-deviation", self.find("lower-midline", off), arch="lower")
        self.goal(because, measure="lower-midline", at_least=-0.5, at_most=0.5, unit="mm")
        to, away = ("right", "left") if off > 0 else ("left", "right")
        self.allow("movement", because, teeth=SIDE_OF[away], motion="mesial", up_to=1.5)
        self.allow("movement", because, teeth=SIDE_OF[to], motion="distal", up_to=1.5)
        self.reduce("lower", because, 2)

    def crossbite(self):
        """A premolar and molar in crossbite of one side, the upper arch a little narrow."""
        side = self.rng.choice(SIDES)
        pair = {"right": ["15", "45"], "left": ["25", "35"]}[side]
        lap = self.find(f"transverse-overlap-{side}", -1, pair=pair)
        width = self.find("upper-inter-first-molar-width", self.amount(45, 47))
        because = self.problem("crossbite-posterior", lap, width, side=side)
        self.goal(because, measure=f"transverse-overlap-{side}", pair=pair, at_least=0, unit="mm")
        self.allow("widening", because, arch="upper", up_to=3)

    def turned(self):
        """Canines or premolars turned by a few degrees, with attachments on them."""
        tooth = self.rng.choice(["13", "23", "33", "43", "14", "24", "35", "45"])
        turn = self.rng.randint(8, 20)
        self.sections["findings"].append(
            {"id": "f99", "tooth_measure": "rotation", "values": {tooth: -turn}, "unit": "deg"}
        )
        because = self.problem("rotated-teeth", "f99", teeth=[tooth])
        motion = "mesiolingual-rotation"
        part = must("m", teeth=[tooth], motion=motion, at_least=turn - 3, at_most=turn, unit="deg", because=[because])
        self.add("movements", {**part, "overcorrection": {"value": 2, "unit": "deg"}}, "m")
        self.attach([tooth])

    def small_laterals(self):
        """Narrow upper laterals: the space is shared out for build-ups afterwards."""
        space = self.amount(1, 2, 0.5)
        finding = self.find("upper-spacing", space, contacts=["13-12", "22-23", "12-11", "21-22"])
        widths = {"12": 5.4, "22": 5.5, "11": 8.6, "21": 8.6, "13": 7.8, "23": 7.8}
        lower = {"31": 5.4, "41": 5.4, "32": 5.9, "42": 5.9, "33": 6.8, "43": 6.8}
        size = {"id": "f98", "tooth_measure": "tooth-width", "values": {**widths, **lower}, "unit": "mm"}
        self.sections["findings"].append(size)
        because = self.problem("tooth-size-discrepancy", "f98", finding)
        for contact in ("13-12", "22-23"):
            self.goal(because, leave=contact, amount=space / 2, unit="mm")
        self.goal(because, close=["12-11", "11-21", "21-22"])
        self.allow("movement", because, teeth=["12", "11", "21", "22"], motion="mesial", up_to=1.5)
        self.allow("movement", because, teeth=["12", "11", "21", "22"], motion="distal", up_to=1.5)

    def open_front(self):
        """A slight anterior open bite closed by upper incisors, with attachments, little shown at rest."""
        finding = self.find("overbite", self.amount(-1, -0.5, 0.5))
        self.find("incisor-display-at-rest", self.amount(0.5, 1.5, 0.5))
        because = self.problem("open-bite-anterior", finding)
        self.goal(because, measure="overbite", at_least=0.5, unit="mm")
        self.move(INCISORS["upper"], "extrusion", 0.8, 1.6, because)
        self.attach(INCISORS["upper"])

    def steep(self):
        """Upper incisors tipped back a little brought forward, the bite a little deep."""
        because = self.problem(
            "retroclined-incisors", self.find("upper-incisor-to-palatal-plane", self.rng.randint(97, 101), "deg")
        )
        self.move(["11", "21"], "labial-crown-torque", 3, 6, because, "deg")
        self.allow("incisor-advance", because, arch="upper", up_to=2)
        self.attach(["11", "21"])

    def one_tooth(self):
        """A lateral incisor behind the line."""
        tooth = self.rng.choice(["12", "22", "32", "42"])
        arch = "upper" if tooth in UPPER else "lower"
        out = self.amount(1, 2, 0.5)
        self.sections["findings"].append(
            {"id": "f97", "tooth_measure": "displacement", "values": {tooth: -out}, "unit": "mm"}
        )
        crowding = self.find(f"{arch}-crowding", self.amount(1, 1.5, 0.5))
        because = self.problem("displaced-teeth", "f97", crowding, teeth=[tooth])
        self.goal(because, align=FRONT[arch])
        motion = "labial"
        self.allow("movement", because, teeth=[tooth], motion=motion, up_to=out + 0.5)
        self.reduce(arch, because, 1.5)


SIDES = ["right", "left"]
SIDE_OF = {"right": ["41", "42", "43"], "left": ["31", "32", "33"]}
DAYS = (
    *(Sound.crowded_both, Sound.crowded_lower, Sound.spaced, Sound.deep, Sound.half_class_two, Sound.crossbite),
    *(Sound.turned, Sound.small_laterals, Sound.open_front, Sound.steep, Sound.one_tooth, Sound.midline),
)


def sound(seed):
    """The prescription of one seed: its kind in turn, its amounts at random."""
    made = Sound(seed)
    DAYS[seed % len(DAYS)](made)
    return made.document()
