"""Prescriptions made at random over every class of the format and every member, sound in their structure only.

What a rule between the parts stops is taken out again, so that what is left can be read back. The same seed makes the
same document. What is clinically in it means nothing.
"""

import json
import random
from functools import cache
from itertools import pairwise
from typing import get_args

from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, document

from wellposed.check import sound
from wellposed.model import Prescription
from wellposed.vocabulary import terms
from wellposed.vocabulary.measures import MEASURE_KINDS, MEASURES, SIZES, TOOTH_MEASURES, allowed_units
from wellposed.vocabulary.motions import MOTIONS, VARIABLE_UNITS, VARIABLES, unit_of

ROWS = {"upper": UPPER, "lower": LOWER}
PRIMARY = {"1": "5", "2": "6", "3": "7", "4": "8"}
MIXED = {
    arch: [f"{row[0][0]}8", *(PRIMARY[t[0]] + t[1] if t[1] in "12345" else t for t in row), f"{row[-1][0]}8"]
    for arch, row in ROWS.items()
}
"""Primary teeth before the molars; third molars at the ends."""
TOOTH_UNITS = {"rotation": "deg"}
WORDS = (
    "as before",
    "„soft” diet? 2.5 mm.",
    "see [f1]. Must: nothing",
    "two (because of [p1])",
    "the midline, outwards",
)
GOALS = ("align", "level", "close", "close_arch", "leave", "measure")
KEEPS = ("measure", "variable", "motion", "hold")
MISSING = ("14", "35")


class Maker:
    """One prescription in the making."""

    def __init__(self, seed):
        self.rng = random.Random(f"read back {seed}")
        self.seed = seed
        rows = MIXED if seed % 6 == 0 else ROWS
        self.rows = {arch: [t for t in row if t not in MISSING or self.maybe(0.7)] for arch, row in rows.items()}

    # pieces

    def maybe(self, share=0.5):
        return self.rng.random() < share

    def one(self, listed):
        return self.rng.choice(list(listed))

    def term(self, name):
        return self.one(get_args(getattr(terms, name)))

    def amount(self, low=0, high=5):
        """A value with at most two decimals."""
        return round(self.rng.uniform(low, high), self.rng.choice([0, 1, 2]))

    def arch(self):
        return self.one(ROWS)

    def teeth(self, arch=None, most=4):
        row = self.rows[arch or self.arch()]
        return self.rng.sample(row, self.rng.randint(1, most))

    def anywhere(self):
        return self.rng.sample([*self.rows["upper"], *self.rows["lower"]], self.rng.randint(1, 5))

    def contacts(self, arch=None):
        row = list(pairwise(self.rows[arch or self.arch()]))
        chosen = self.rng.sample(row, self.rng.randint(1, 3))
        return ["-".join(pair if self.maybe() else pair[::-1]) for pair in chosen]

    def some(self, **members):
        """Each member or not."""
        return {name: make() for name, make in members.items() if self.maybe()}

    def words(self):
        return self.one(WORDS)

    def date(self):
        return f"2026-0{self.rng.randint(1, 3)}-1{self.rng.randint(0, 9)}"

    def because(self):
        return self.rng.sample(["f1", "f2", "p1", "p2"], self.rng.randint(1, 3))

    def bounds(self, low, high):
        least, most = sorted((self.amount(low, high), self.amount(low, high)))
        form = self.rng.randrange(4)
        return (
            {"at_least": least},
            {"at_most": most},
            {"at_least": least, "at_most": most},
            {"at_least": most, "at_most": most},
        )[form]

    def measure(self):
        name = self.one(MEASURES)
        pair = {}
        if name in ("overbite", "overjet", "posterior-open-bite") or name.startswith("transverse"):
            side = "right" if "right" in name or (("left" not in name) and self.maybe()) else "left"
            ends = {"right": ("1", "4"), "left": ("2", "3")}[side]
            place = self.one("12") if name.startswith("over") else self.one("467")
            pair = {"pair": [end + place for end in ends][:: self.one((1, -1))]} if self.maybe(0.6) else {}
        return name, self.one(allowed_units(name)), pair

    def value(self, measure):
        return self.amount(0 if measure in SIZES or MEASURE_KINDS[measure].unit != "mm" else -4, 4)

    def strength(self):
        return {"strength": self.term("Strength")}

    # sections

    def finding(self):
        if self.maybe(0.3):
            name = self.one(TOOTH_MEASURES)
            values = {
                tooth: self.amount(4 if "width" in name or "height" in name else -9, 9) for tooth in self.anywhere()
            }
            part = {"tooth_measure": name, "values": values, "unit": TOOTH_UNITS.get(name, "mm")}
        else:
            name, unit, pair = self.measure()
            part = {"measure": name, "value": self.value(name), "unit": unit, **pair}
            part |= self.some(contacts=self.contacts, jaw_position=lambda: self.term("JawPosition"))
        return part | self.some(error=self.amount, method=self.words, date=self.date)

    def problem(self):
        more = self.some(
            arch=self.arch, side=lambda: self.term("Side"), grade=lambda: self.term("Grade"), teeth=self.anywhere,
            words=self.words, because=lambda: self.rng.sample(["f1", "f2"], self.rng.randint(1, 2)),
        )  # fmt: skip
        return {"problem": self.term("Problem"), **more}

    def goal(self):
        form = self.one(GOALS)
        part = {
            "align": lambda: {"align": self.anywhere(), **self.beyond()},
            "level": lambda: {"level": self.arch()},
            "close": lambda: {"close": self.contacts()},
            "close_arch": lambda: {"close_arch": self.arch()},
            "leave": lambda: {"leave": self.contacts()[0], "amount": self.amount(), "unit": "mm"},
            "measure": self.reach,
        }[form]()
        return self.strength() | part | self.some(because=self.because)

    def reach(self):
        name, unit, pair = self.measure()
        return {"measure": name, **pair, **self.bounds(0 if name in SIZES else -4, 4), "unit": unit}

    def beyond(self, unit="mm"):
        return self.some(overcorrection=lambda: {"value": self.amount(), "unit": self.one([unit, "percent"])})

    def keep(self):
        form = self.one(KEEPS)
        name, unit, pair = self.measure()
        variable, motion = self.one(VARIABLES), self.one(MOTIONS)
        within = {"within": self.amount()}
        part = {
            "measure": {"measure": name, **pair, **within, "unit": unit},
            "variable": {"variable": variable, "teeth": self.anywhere(), **within, "unit": VARIABLE_UNITS[variable]},
            "motion": {"motion": motion, "teeth": self.teeth(), **within, "unit": unit_of(motion)},
            "hold": {"hold": self.anywhere()},
        }[form]
        return self.strength() | part | self.some(because=self.because)

    def movement(self):
        motion = self.one(MOTIONS)
        unit = unit_of(motion)
        part = {"teeth": self.teeth(), "motion": motion, **self.bounds(0, 5), "unit": unit, **self.beyond(unit)}
        return self.strength() | part | self.some(because=self.because)

    def allowance(self):
        arch, motion = self.arch(), self.one(MOTIONS)
        up_to = {"up_to": self.amount(), "unit": "mm"}
        turned = {"up_to": self.amount(), "unit": unit_of(motion)}
        teeth = lambda: self.teeth(arch)  # noqa: E731  # the arch of this clause
        sided = [t for t in self.rows[arch] if t[1] in "34567"]
        part = self.one(
            [
                lambda: {"use": "enamel-reduction", **self.where(arch), **self.enamel(), "unit": "mm"},
                lambda: (
                    {"use": self.one(["incisor-advance", "incisor-retraction"]), "arch": arch, **up_to}
                    | self.some(teeth=lambda: [t for t in self.rows[arch] if t[1] in "12"][: self.rng.randint(1, 4)])
                ),
                lambda: (
                    {"use": self.one(["widening", "narrowing"]), "arch": arch, **up_to}
                    | self.some(teeth=lambda: self.rng.sample(sided, 3))
                ),
                lambda: (
                    {"use": self.one(["distal-movement", "mesial-movement"]), "arch": arch, **up_to}
                    | self.some(teeth=teeth)
                    | self.some(sides=self.sides)
                ),
                lambda: {"use": self.one(["intrusion", "extrusion"]), "teeth": teeth(), **up_to},
                lambda: {"use": "movement", "teeth": teeth(), "motion": motion, **turned},
                lambda: {"use": "posterior-open-bite", **up_to},
                lambda: {"use": "extraction", "teeth": self.teeth(arch, 2)},
                lambda: (
                    {"use": self.one(["class-ii-elastics", "class-iii-elastics"]), "sides": self.sides()}
                    | (up_to if self.maybe() else {})
                ),
                lambda: {"use": "elastics", "pattern": self.term("ElasticPattern"), "teeth": self.anywhere()},
                lambda: (
                    {"use": "auxiliary", "auxiliary": self.term("Auxiliary")}
                    | self.some(teeth=self.anywhere, words=self.words)
                ),
                lambda: (
                    {"use": "laboratory-choice"}
                    | self.some(
                        arch=lambda: arch,
                        teeth=teeth,
                        variables=lambda: self.rng.sample(VARIABLES, self.rng.randint(1, 6)),
                    )
                ),
            ]
        )()
        return part | self.some(because=self.because)

    def where(self, arch):
        return {"arch": arch} if self.maybe() else {"contacts": self.contacts(arch)}

    def enamel(self):
        return self.one([{"per_contact": 0.3}, {"in_all": 1}, {"per_contact": 0.25, "in_all": 0.5}]) | self.some(
            at_least=lambda: self.one([0, 0.2])
        )

    def sides(self):
        return self.rng.sample(["right", "left"], self.rng.randint(1, 2))

    def exclusion(self):
        arch = self.arch()
        more = self.some(arch=lambda: arch, teeth=lambda: self.teeth(arch), because=self.because)
        return {"means": self.term("Means"), **more}

    def expectation(self):
        if self.maybe(0.1):
            room = {"measure": "upper-crowding", "at_least": -0.5, "at_most": 0, "unit": "mm", "ground": "derotation"}
            return {**room, "contacts": ["16-15"]}
        name, unit, _ = self.measure()
        least, most = sorted((self.amount(-3, 3), self.amount(-3, 3)))
        more = self.some(contacts=self.contacts, tooth=lambda: self.one(["16", "26"]), words=self.words)
        return {
            "measure": name,
            "at_least": least,
            "at_most": most,
            "unit": unit,
            "ground": self.term("Ground"),
            **more,
        }

    def attachment(self):
        why = self.some(
            reason=lambda: self.term("AttachmentReason"), shape=lambda: self.term("AttachmentShape"),
            words=self.words, because=self.because,
        )  # fmt: skip
        kind = self.one(["must", "must_not", "may", "prefer", "prefer_not", "otherwise"])
        return {kind: self.term("AttachmentOtherwise") if kind == "otherwise" else self.anywhere(), **why}

    def staging(self):
        steps = [{"variable": v, "amount": 0.25, "unit": VARIABLE_UNITS[v]} for v in self.rng.sample(VARIABLES, 2)]
        steps = [step | self.some(teeth=self.anywhere) for step in steps]
        first, then = self.rng.sample(["g1", "g2", "g3", "m1"], 2)
        order = [
            {"id": "o1", "first": first, "relation": self.term("Relation"), "then": then, **self.some(words=self.words)}
        ]
        return {"id": "s-1", **self.strength()} | self.some(
            largest_steps=lambda: self.one([steps, steps, []]), wear_interval_days=lambda: self.one([1, 7, 14]),
            most_aligners=lambda: self.rng.randint(1, 60), order=lambda: self.one([order, order, []]),
        )  # fmt: skip

    def appliance(self):
        size = {"size": self.amount(), "unit": "mm"} if self.maybe(0.3) else {}
        ends = self.some(start=lambda: self.one(["13", "23"]), end=lambda: self.one(["43", "33"]))
        more = self.some(
            arch=self.arch, teeth=self.anywhere, wear=lambda: self.term("Wear"),
            trimming=lambda: self.term("Trimming"), words=self.words,
        )  # fmt: skip
        return {"part": self.term("AppliancePart"), **more, **ends, **size}

    def process(self):
        more = self.some(teeth=self.anywhere, date=self.date, before=lambda: self.one(["g1", "m1"]), words=self.words)
        return {"step": self.term("Step"), **more}

    def retention(self):
        arch = self.arch()
        more = self.some(teeth=lambda: self.teeth(arch), words=self.words)
        return {"arch": arch, "retainer": self.term("Retainer"), **more}

    def treated(self):
        more = self.some(passive_appliance=lambda: self.one(["wanted", "not-wanted"]))
        return {"arches": self.one(["both", "both", "upper", "lower"]), **more}

    def condition(self):
        return {"condition": self.term("Condition"), **self.some(teeth=self.anywhere, words=self.words)}

    def states(self):
        tooth = self.one([t for row in self.rows.values() for t in row])
        known = get_args(terms.ToothState)
        return {"tooth": tooth, "states": self.rng.sample(known, self.rng.randint(1, 3)), **self.some(words=self.words)}

    def note(self):
        return {"text": "A remark.", **self.some(about=lambda: self.rng.sample(["g1", "p1", "f1"], 2))}

    # the whole

    def list_of(self, make, letter, most=4):
        parts = [make() for _ in range(self.rng.randint(0, most))]
        return [{"id": f"{letter}{number}", **part} if letter else part for number, part in enumerate(parts, start=1)]

    def document(self):
        """A prescription that may break rules between its parts."""
        teeth = dict(self.rows) | self.some(particulars=lambda: self.list_of(self.states, "", 3))
        findings = [
            {"id": name, "measure": m, "value": 1, "unit": "mm"} for name, m in (("f1", "overjet"), ("f2", "overbite"))
        ]
        findings += self.list_of(self.finding, "found.", 3)
        problems = [{"id": name, "problem": self.term("Problem")} for name in ("p1", "p2")] + self.list_of(
            self.problem, "P", 3
        )
        goals = [{"id": f"g{n}", "strength": "must", "level": arch} for n, arch in ((1, "upper"), (2, "lower"))]
        sections = {
            "treat": self.treated,
            "conditions": lambda: self.list_of(self.condition, ""),
            "keep": lambda: self.list_of(self.keep, "k"),
            "movements": lambda: self.list_of(self.movement, "m"),
            "allow": lambda: self.list_of(self.allowance, "a-long-name-", 6),
            "exclude": lambda: self.list_of(self.exclusion, "x"),
            "expect": lambda: self.list_of(self.expectation, "e", 3),
            "attachments": lambda: self.list_of(self.attachment, "t", 3),
            "staging": self.staging,
            "appliance": lambda: self.list_of(self.appliance, "b"),
            "process": lambda: self.list_of(self.process, "v"),
            "retention": lambda: self.list_of(self.retention, "r"),
            "notes": lambda: self.list_of(self.note, "", 2),
            "extensions": lambda: {"org.example.case-2": {"critical": False, "content": [1]}},
        }  # fmt: skip
        made = {name: make() for name, make in sections.items() if self.maybe(0.75)}
        chosen = goals + self.list_of(self.goal, "g3.")
        grounds = {"findings": findings, "problems": problems} if self.maybe(0.9) else {}
        return document(id=f"R-{self.seed}", teeth=teeth, goals=chosen if self.maybe(0.95) else [], **grounds, **made)


def without(whole, pointer):
    """The document without the part a pointer leads to, or leads into."""
    steps = pointer.split("/")[1:]
    here, depth = whole, 0
    while depth < len(steps) - 1 and not (isinstance(here, list)):
        inner = here[steps[depth]]
        if not isinstance(inner, (list, dict)):
            break
        here, depth = inner, depth + 1
    if isinstance(here, list):
        here[int(steps[depth])] = None
    else:
        del here[steps[depth]]


def _compact(value):
    if isinstance(value, dict):
        return {name: _compact(inner) for name, inner in value.items()}
    return [_compact(inner) for inner in value if inner is not None] if isinstance(value, list) else value


@cache
def prescription(seed):
    """The sound prescription of a seed: what a rule stops is taken out, as often as it takes."""
    whole = Maker(seed).document()
    while not isinstance(made := sound(json.dumps(whole).encode()), Prescription):
        for pointer in dict.fromkeys(one.pointer for one in made.findings):
            try:
                without(whole, pointer)
            except (KeyError, TypeError, IndexError):
                continue
        whole = _compact(whole)
    return made
