"""Prescriptions and setups that answer them, made at random; and solved ones: plans the solver gives to sound orders.

What a setup predicts is worked out by the sums of spec/semantics.md, not by the program.
"""

import random

from tests.validator.wellposed.consistency.ordinary import allowed, document, found, must
from tests.validator.wellposed.review.rules.held import UNITS, setup
from tests.validator.wellposed.rules.sound import sound

from wellposed.kinematics.case import Case
from wellposed.kinematics.case import must as members_that_count
from wellposed.model import Prescription
from wellposed.vocabulary.teeth import mirrored

FRONT = ["12", "11", "21", "22"]
ORDERS = [
    ("intrusion", "vertical", -1, FRONT, (0.6, 2)),
    ("extrusion", "vertical", 1, ["34", "35", "44", "45"], (0.4, 1.5)),
    ("distal", "along", -1, ["17", "16", "15", "25", "26", "27"], (0.6, 2)),
    ("mesial", "along", 1, ["37", "36", "46", "47"], (0.5, 1.5)),
    ("buccal", "out", 1, ["14", "15", "16", "24", "25", "26"], (0.5, 2)),
    ("lingual", "out", -1, ["32", "31", "41", "42"], (0.5, 1.5)),
    ("labial-crown-torque", "torque", 1, FRONT, (3, 10)),
    ("lingual-crown-torque", "torque", -1, ["32", "31", "41", "42"], (3, 8)),
    ("mesial-crown-tip", "tip", 1, ["13", "23", "33", "43"], (2, 8)),
    ("distolingual-rotation", "rotation", -1, ["14", "15", "24", "25"], (4, 15)),
]
DISPLAY, ANGLE = "incisor-display-at-rest", "interincisal-angle"


class Planned:
    """A prescription, and the values of a setup that does what it asks: ``values`` is (tooth, variable) to amount."""

    def __init__(self, seed):
        self.rng = rng = random.Random(seed)
        self.values, self.ordered, self.sections = {}, {}, {"movements": [], "allow": [], "findings": []}
        chosen = rng.sample(ORDERS, rng.randint(1, 4))
        for number, order in enumerate(chosen, 1):
            self._order(number, *order)
        self._settling({order[1] for order in chosen})
        self.sections["findings"] = [found("f1", DISPLAY, 3), found("f2", ANGLE, 130, "deg")]
        self.rx = Prescription.model_validate(document(**{k: v for k, v in self.sections.items() if v}))

    def _order(self, number, motion, variable, sign, teeth, span):
        low, high = span
        amount = self.rng.uniform(low, high)
        unit = UNITS[variable]
        if self.rng.random() < 0.6:
            bounds = {"at_least": round(amount * 0.7, 1), "at_most": round(amount * 1.4, 1), "unit": unit}
            self.sections["movements"].append(must(f"m{number}", teeth=teeth, motion=motion, **bounds))
        else:
            self.sections["allow"].append(
                allowed(f"a{number}", "movement", teeth=teeth, motion=motion, up_to=round(amount * 1.4, 1), unit=unit)
            )
        for tooth in teeth:
            self.values[tooth, variable] = sign * round(amount * self.rng.uniform(0.8, 1.2), 2)
            self.ordered[tooth, variable] = sign

    def _settling(self, variables):
        """Small movements of other teeth, either way, as programs leave them."""
        for tooth in self.rng.sample(["13", "23", "33", "43", "37", "47", "14", "24"], 4):
            for variable in ("along", "out", "tip", "rotation"):
                if (tooth, variable) not in self.values and self.rng.random() < 0.5 and variable not in variables:
                    self.values[tooth, variable] = round(self.rng.uniform(-0.1, 0.1), 2)

    def predicted(self, values):
        """The display falls as the upper centrals intrude; the angle as the centrals' crowns come out."""

        def mean(variable, *teeth):
            return sum(values.get((tooth, variable), 0.0) for tooth in teeth) / 2

        rise = mean("vertical", "11", "21")
        opened = -mean("torque", "11", "21") - mean("torque", "31", "41")
        return {DISPLAY: round(3 + rise, 2), ANGLE: round(130 + opened, 2)}


def as_setup(values, predicted=None):
    """A setup of these values; nothing else moves."""
    tables = [
        {"variable": v, "unit": UNITS[v], "values": {t: x for (t, name), x in values.items() if name == v}}
        for v in UNITS
        if any(name == v for _, name in values)
    ]
    units = {DISPLAY: "mm", ANGLE: "deg"}
    claims = [{"measure": m, "value": x, "unit": units[m]} for m, x in (predicted or {}).items()]
    return setup(movements=tables, unlisted="unmoved", **({"predicted": claims} if claims else {}))


def turned(values, variable, teeth):
    """The signs of one variable of these teeth turned."""
    return {at: -x if at[1] == variable and at[0] in teeth else x for at, x in values.items()}


def symmetric(seed):
    """A movement along the arch, alike on both sides, that nothing orders: five to seven pairs."""
    rng = random.Random(seed)
    arch = rng.choice([1, 4])
    places = rng.sample(range(1, 8), rng.randint(5, 7))
    variable, sign = rng.choice(["along", "tip", "rotation", "torque"]), rng.choice([1, -1])
    size = 1 if variable == "along" else 8
    right = {f"{arch}{n}": round(sign * size * rng.uniform(0.4, 1.5), 2) for n in places}
    left = {mirrored(tooth): round(value * rng.uniform(0.95, 1.05), 2) for tooth, value in right.items()}
    return variable, {(tooth, variable): value for tooth, value in (right | left).items()}


def solved(seed):
    """A sound order of one seed, and a plan the solver gives to it; None if there is none."""
    rx = Prescription.model_validate(sound(seed))
    case = Case(rx)
    model, frame = case.quick_model, case.quick.frame
    active = members_that_count(case.quick, limits=True)
    setting = frame.hinge.stated[0][0]
    if not model.holds(active, setting):
        return None
    columns = model._solver.getSolution().col_value
    values = {at: round(columns[column], 2) + 0.0 for at, column in frame.columns.items()}
    return rx, {at: value for at, value in values.items() if value}
