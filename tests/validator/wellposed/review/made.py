"""Plausible setups: what a careful laboratory plans for an ordinary, sound prescription. Nothing here looks at a rule.

Orders are met at the middle of their bounds, and of allowances a third to nine tenths is used. The path is straight,
positions are given in hundredths, and there are a few aligners more than the usual steps take. Enamel goes first.
"""

import random
from itertools import pairwise
from math import ceil

from tests.validator.wellposed.review.rules.held import BASE, UNITS
from tests.validator.wellposed.rules.sound import FRONT, sound

from wellposed.digests import digest
from wellposed.model import Prescription
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import arch_of, position

STEPS = {"along": 0.25, "out": 0.25, "vertical": 0.2, "torque": 1, "tip": 2, "rotation": 1.2}
"""Texts: 0.2 to 0.25 mm, 0.1 to 0.2 mm up or down, 1 deg of torque, 1 to 2 of tip, 1.2 of rotation (round teeth)."""
TIPPING = 2.4
"""Torque that goes with a mm in or out at the most, deg: an incisor tipped about its apex (clinical texts)."""
INCISORS, SIDE, BACK = (1, 2), (3, 4, 5, 6, 7), (6, 7)


class Planned:
    """A setup in the making."""

    def __init__(self, seed):
        self.rng = random.Random(seed)
        self.order = sound(seed)
        self.movements, self.reductions = {}, {}
        self.used, self.tipped = self.rng.uniform(0.33, 0.9), self.rng.uniform(0, TIPPING)

    def teeth(self, arch, numbers):
        """The teeth of an arch with these numbers."""
        return [tooth for tooth in self.order["teeth"][arch] if position(tooth) in numbers]

    def move(self, teeth, variable, amount):
        """Each of these teeth, unless it goes the other way already."""
        for tooth in teeth:
            before = self.movements.get((tooth, variable), 0.0)
            if before * amount >= 0:
                self.movements[tooth, variable] = round(max(before, amount, key=abs), 2)

    def orders(self):
        """Movements at the middle of their bounds."""
        for order in self.order.get("movements", ()):
            variable, sign = MOTIONS[order["motion"]]
            amount = (order["at_least"] + order["at_most"]) / 2
            more = order.get("overcorrection", {}).get("value", 0)
            self.move(order["teeth"], variable, sign * (amount + more))

    def goals(self):
        """Teeth that are to be in line turn and tip a little, and those off the line come to it."""
        for goal in self.order.get("goals", ()):
            for tooth in goal.get("align", ()):
                self.move([tooth], "rotation", self.rng.uniform(-9, 9))
                self.move([tooth], "tip", self.rng.uniform(-2, 2))
        for one in self.order["findings"]:
            for tooth, off in one.get("values", {}).items() if one.get("tooth_measure") == "displacement" else ():
                self.move([tooth], "out", -off)

    def allowances(self):
        """Each by its share."""
        for item in self.order.get("allow", ()):
            part = item.get("up_to", 0) * self.used
            getattr(self, item["use"].replace("-", "_"), self.nothing)(item, part)

    def nothing(self, item, part):
        """What moves no teeth by itself here, such as elastics."""

    def incisor_advance(self, item, part, sign=1):
        teeth = self.teeth(item["arch"], INCISORS)
        self.move(teeth, "out", sign * part)
        self.move(teeth, "torque", sign * self.tipped * part)

    def incisor_retraction(self, item, part):
        self.incisor_advance(item, part, -1)

    def widening(self, item, part):
        self.move(self.teeth(item["arch"], SIDE), "out", part / 2)

    def distal_movement(self, item, part):
        self.move(self.teeth(item["arch"], SIDE), "along", -part)

    def mesial_movement(self, item, part):
        self.move(self.teeth(item["arch"], BACK), "along", part)

    def intrusion(self, item, part):
        self.move(item["teeth"], "vertical", -part)

    def extrusion(self, item, part):
        self.move(item["teeth"], "vertical", part)

    def movement(self, item, part):
        variable, sign = MOTIONS[item["motion"]]
        self.move(item["teeth"], variable, sign * part)

    def enamel_reduction(self, item, part):  # noqa: ARG002 - called as the others
        self.reductions |= dict.fromkeys(item["contacts"], round(self.used * item["per_contact"], 2))

    def path(self):
        """Aligners and the places after each."""
        aligners, stages = {}, []
        for arch in ("upper", "lower"):
            mine = {at: amount for at, amount in self.movements.items() if arch_of(at[0]) == arch}
            least = max((ceil(abs(amount) / STEPS[at[1]] - 1e-9) for at, amount in mine.items()), default=0)
            aligners[arch] = least + self.rng.randint(2, 6) if least else 0
            count = aligners[arch]
            for number in range(1, count + 1):
                at_stage = {at: round(amount * number / count, 2) for at, amount in mine.items()}
                stages.append({"aligner": number, "arch": arch, "movements": tables(at_stage)})
        return aligners, stages

    def attachments(self):
        """On canines and premolars that move, on teeth that are extruded or go far, and where the order wants them."""
        wanted = [tooth for one in self.order["attachments"] for tooth in one.get("must", ())]
        round_ones = [tooth for tooth, _ in self.movements if position(tooth) in (3, 4, 5)]
        far = [
            tooth
            for (tooth, variable), amount in self.movements.items()
            if (variable == "vertical" and amount > 0) or (variable in ("along", "out") and abs(amount) > 0.8)
        ]
        return [{"tooth": tooth, "reason": "movement"} for tooth in dict.fromkeys((*wanted, *round_ones, *far))]

    def document(self):
        """The whole setup."""
        self.orders()
        self.goals()
        self.allowances()
        aligners, stages = self.path()
        when = {arch_of(tooth): self.rng.randint(1, 2) for tooth in ("11", "31")}
        reductions = [
            {"contact": name, "amount": mm, "unit": "mm", "before_aligner": when[arch_of(name[:2])]}
            for name, mm in self.reductions.items()
        ]
        order = Prescription.model_validate(self.order)
        answers = {"id": order.id, "revision": order.revision, "sha256": digest(order)}
        return {
            **BASE,
            "answers": answers,
            "aligners": aligners,
            "wear_interval_days": self.rng.choice([7, 10, 14]),
            "movements": tables(self.movements),
            "unlisted": "unmoved",
            "reductions": reductions,
            "attachments": self.attachments(),
            "stages": stages,
        }


def tables(movements):
    """Movements by variable, as a setup writes them."""
    found = {}
    for (tooth, variable), amount in movements.items():
        found.setdefault(variable, {})[tooth] = amount
    return [{"variable": name, "unit": UNITS[name], "values": values} for name, values in found.items()]


def plausible(seed):
    """The prescription of a seed, and a setup for it."""
    planned = Planned(seed)
    return planned.order, planned.document()


def large(aligners=40):
    """A setup of twenty-eight teeth that all move in all six ways, with a path of so many aligners for each arch."""
    order, _ = plausible(0)
    rng = random.Random(1)
    teeth = [*order["teeth"]["upper"], *order["teeth"]["lower"]]
    size = {"along": 1, "out": 1, "vertical": 1, "torque": 4, "tip": 4, "rotation": 8}
    movements = {(tooth, name): round(rng.uniform(-far, far), 2) for tooth in teeth for name, far in size.items()}
    stages = [
        {
            "aligner": number,
            "arch": arch,
            "movements": tables(
                {at: round(mm * number / aligners, 2) for at, mm in movements.items() if arch_of(at[0]) == arch}
            ),
        }
        for arch in ("upper", "lower")
        for number in range(1, aligners + 1)
    ]
    contacts = [f"{a}-{b}" for arch in FRONT.values() for a, b in pairwise(arch)]
    return order, {
        **BASE,
        "aligners": {"upper": aligners, "lower": aligners},
        "movements": tables(movements),
        "reductions": [{"contact": name, "amount": 0.3, "unit": "mm", "before_aligner": 9} for name in contacts],
        "attachments": [{"tooth": tooth} for tooth in teeth if position(tooth) in SIDE],
        "stages": stages,
    }
