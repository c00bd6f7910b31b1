"""Prescriptions made at random: plausible in their parts, arbitrary as a whole, sound in their structure.

Everything of the format that the arithmetic reads occurs. The same seed makes the same document.
"""

import json
from functools import cache
from itertools import pairwise
from random import Random

import pytest

from wellposed.check import check as check
from wellposed.kinematics.verdict import Case as Case
from wellposed.kinematics.verdict import judge
from wellposed.kinematics.verdict import must as must
from wellposed.model import Prescription

VERDICTS = ("possible", "beyond-practice", "incomplete", "undecided", "contradictory")
RANKS = {verdict: rank for rank, verdict in enumerate(VERDICTS)}
QUADRANTS = {"upper": ("1", "2"), "lower": ("4", "3")}
SIDES = ("right", "left")
INWARDS = {"upper": "palatal", "lower": "lingual"}
SHARES = (0, 0.3, 0.5, 0.9, 1, 1, 1.1, 1.4, 2)  # of what is needed, what is allowed
HEAD = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "prescriber": {"id": "clinic-17/dr-2"},
    "laboratory": {"id": "lab-4"},
    "patient": {"reference": "P-7F3A", "age_years": 24, "growth": "complete", "dentition": "permanent"},
}


def read(document):
    """The document as its model."""
    return Prescription.model_validate_json(json.dumps(document))


def written(document):
    """The document as bytes."""
    return json.dumps(document).encode()


@cache
def prescription_text(seed):
    """The document of a seed as text, for a fresh copy each time."""
    return json.dumps(Maker(Random(f"prescription {seed}")).document(f"R-{seed}"))


def prescription(seed):
    """The document of a seed."""
    return json.loads(prescription_text(seed))


@cache
def judged(seed):
    """The judgement on the document of a seed."""
    return judge(read(prescription(seed)))


GROUP = 50


def chunks(count, size):
    """The first seeds of chunks. Whatever looks at the same seeds goes to one worker, which judges them once."""
    groups = {first: pytest.mark.xdist_group(f"seeds-{first // GROUP}") for first in range(0, count, size)}
    return [pytest.param(first, marks=group) for first, group in groups.items()]


@cache
def reported(seed):
    """The report on the document of a seed."""
    return check(written(prescription(seed)))


def judgement_of(document):
    """The judgement on a document."""
    return judge(read(document))


def position(tooth):
    return int(tooth[1])


def arch_of(tooth):
    return "upper" if tooth[0] in "12" else "lower"


def side_of(tooth):
    return "right" if tooth[0] in "14" else "left"


def along(arch, teeth):
    """The teeth of an arch from the patient's right to left."""
    right = QUADRANTS[arch][0]
    return sorted(teeth, key=lambda tooth: -position(tooth) if tooth[0] == right else position(tooth))


def is_extraction(clause):
    return clause["use"] == "extraction"


class Maker:
    """Makes one document; every part reads what the parts before it have put down."""

    def __init__(self, random):
        self.random = random
        self.sections = {name: [] for name in ("findings", "goals", "keep", "movements", "allow", "exclude", "expect")}
        self.taken = set()  # contacts and pairs an allowance speaks of already
        self.measured = {}
        self.numbers = {}

    @classmethod
    def going_on(cls, document, random):
        """A maker that adds to a document: it knows the teeth, and what allowances speak of already."""
        maker = cls(random)
        maker.lines = {arch: along(arch, document["teeth"][arch]) for arch in QUADRANTS}
        particulars = document["teeth"].get("particulars", [])
        maker.states = {entry["tooth"]: entry["states"][0] for entry in particulars}
        gone = [tooth for tooth, state in maker.states.items() if state in ("unerupted", "to-be-extracted")]
        taken_out = [clause["teeth"] for clause in document.get("allow", ()) if is_extraction(clause)]
        maker.gone = {*gone, *(tooth for teeth in taken_out for tooth in teeth)}
        for clause in document.get("allow", ()):
            maker.note(clause)
        maker.numbers = dict.fromkeys("fgkmaxe", 100)
        return maker

    def note(self, clause):
        """Take down which contacts and pairs an allowance speaks of."""
        if clause["use"] == "enamel-reduction":
            named = clause.get("contacts") or self.contacts(clause["arch"], 1, 6)
            self.taken |= {frozenset(contact.split("-")) for contact in named}
        if clause["use"] in ("widening", "narrowing"):
            teeth = clause.get("teeth") or self.line(clause["arch"], 3, 7)
            self.taken |= {(clause["arch"], position(tooth)) for tooth in teeth}

    def another_allowance(self):
        """One allowance more, or none where nothing fits."""
        arch, need = self.pick(*QUADRANTS), self.amount(0.2, 4)
        teeth = self.some(self.free(arch))
        makers = (
            lambda: self.reduction(arch, need),
            lambda: self.travel(arch, self.pick("incisor-advance", "incisor-retraction"), need),
            lambda: self.width_change(arch, self.pick("widening", "narrowing"), need),
            lambda: self.slide(arch, self.pick("distal-movement", "mesial-movement"), need),
            lambda: self.vertical(self.pick("intrusion", "extrusion"), teeth, need),
            lambda: self.any_movement(*self.motion(teeth), need),
            lambda: self.any_movement("labial-crown-torque", self.free(arch, 1, 2), 3 * need, "deg"),
            lambda: self.elastics(self.pick("class-ii-elastics", "class-iii-elastics")),
            lambda: self.allow("posterior-open-bite", up_to=self.amount(0.2, 1.5), unit="mm"),
            lambda: self.choice(arch),
        )
        self.pick(*makers)()
        return self.sections["allow"]

    # small choices

    def chance(self, share):
        return self.random.random() < share

    def amount(self, low, high):
        """Between the two, with no more decimals than the format has."""
        return round(self.random.uniform(low, high), self.random.choice((1, 1, 2)))

    def share_of(self, need):
        return min(12.0, round(self.random.choice(SHARES) * need, 2))

    def pick(self, *choices):
        return self.random.choice(choices)

    def some(self, items, least=1):
        """Some of the items, in their order."""
        items = list(items)
        count = self.random.randint(min(least, len(items)), len(items))
        chosen = set(self.random.sample(range(len(items)), count))
        return [item for number, item in enumerate(items) if number in chosen]

    def strength(self):
        return "prefer" if self.chance(0.15) else "must"

    def identifier(self, letter):
        self.numbers[letter] = self.numbers.get(letter, 0) + 1
        return f"{letter}{self.numbers[letter]}"

    def say(self, section, letter, strong=True, **members):
        clause = {"id": self.identifier(letter)}
        if strong:
            clause["strength"] = self.strength()
        clause |= {name: value for name, value in members.items() if value is not None}
        self.sections[section].append(clause)

    # the mouth

    def teeth(self):
        self.lines, self.states, self.gone = {}, {}, set()
        last = self.pick(7, 7, 7, 8, 6)
        for arch, quadrants in QUADRANTS.items():
            end = self.pick(4, 5) if self.chance(0.06) else last
            line = along(arch, [f"{q}{n}" for q in quadrants for n in range(1, end + 1)])
            if self.chance(0.2):
                missing = self.random.sample(line[1:-1], self.pick(1, 1, 2))
                line = [tooth for tooth in line if tooth not in missing]
            self.lines[arch] = line
        if self.chance(0.15):
            self.peculiar()

    def peculiar(self):
        """One tooth, or a bridge, that is not ordinary."""
        line = self.lines[self.pick(*QUADRANTS)]
        at = self.random.randrange(1, len(line) - 1)
        state = self.pick("implant", "ankylosed", "pontic", "unerupted", "to-be-extracted", "crown")
        if state == "unerupted":
            at = self.pick(0, len(line) - 1)
            self.gone.add(line[at])
        if state == "pontic":
            self.states |= {line[at - 1]: "bridge-abutment", line[at + 1]: "bridge-abutment"}
        if state == "to-be-extracted":
            self.gone.add(line[at])
        self.states[line[at]] = state

    def locked(self, tooth):
        return self.states.get(tooth) in ("implant", "ankylosed", "pontic", "bridge-abutment")

    def line(self, arch, first=1, last=8):
        """The teeth that stand in an arch and stay, of these positions."""
        return [t for t in self.lines[arch] if t not in self.gone and first <= position(t) <= last]

    def free(self, arch, first=1, last=8):
        """The same without those that cannot be moved, but for one time in seven."""
        line = self.line(arch, first, last)
        return line if self.chance(0.15) else [tooth for tooth in line if not self.locked(tooth)]

    def contacts(self, arch, first=1, last=8):
        line = self.line(arch)
        named = [pair for pair in pairwise(line) if all(first <= position(tooth) <= last for tooth in pair)]
        return [f"{b}-{a}" if self.chance(0.3) else f"{a}-{b}" for a, b in named]

    # what was measured

    def measure(self, measure, low, high, unit="mm", stated=0.92, **more):
        """A finding, mostly; the value is known to the later parts either way."""
        value = self.amount(low, high)
        self.measured[measure] = value
        if self.chance(stated):
            error = self.amount(0.1, 0.6) if self.chance(0.15) else None
            if unit == "deg" and error is not None:
                error = self.amount(1, 4)
            self.say("findings", "f", False, measure=measure, value=value, unit=unit, error=error, **more)
        return value

    def room_findings(self):
        for arch in QUADRANTS:
            kind = self.pick("crowding", "crowding", "spacing", "none", "both")
            if kind in ("crowding", "both"):
                self.measure(f"{arch}-crowding", 0.5, 6, stated=0.97)
            elif kind == "none":
                self.measured[f"{arch}-crowding"] = 0
                self.say("findings", "f", False, measure=f"{arch}-crowding", value=0, unit="mm")
            if kind in ("spacing", "both"):
                named = self.some(self.contacts(arch, 3, 6) if kind == "both" else self.contacts(arch, 1, 6))
                unnamed = self.chance(0.2 if kind == "both" else 0.6)
                named = None if unnamed or not named else named
                self.measure(f"{arch}-spacing", 0.5, 5, stated=0.97, contacts=named)

    def tooth_findings(self):
        if self.chance(0.12):
            teeth = self.some(self.line(self.pick(*QUADRANTS)), 2)
            widths = {tooth: self.amount(5.2, 6) + 0.4 * position(tooth) for tooth in teeth}
            values = {tooth: round(width, 2) for tooth, width in widths.items()}
            self.say("findings", "f", False, tooth_measure="tooth-width", values=values, unit="mm")
        if self.chance(0.15):
            arch = self.pick(*QUADRANTS)
            teeth = [t for t in self.line(arch, 1, 4) if not self.locked(t)]
            values = {t: self.pick(1, -1) * self.amount(0.3, 2) for t in self.some(teeth)[:2]}
            if values:
                self.say("findings", "f", False, tooth_measure="displacement", values=values, unit="mm")
        for arch in QUADRANTS:
            if self.chance(0.2) and len(self.lines[arch]) == 14:
                self.measure(f"{arch}-arch-depth", 38, 45, stated=1)

    def findings(self):
        self.measure("overbite", -2, 6)
        self.measure("overjet", 0, 7)
        for arch in QUADRANTS:
            self.measure(f"{arch}-midline", -2, 2, stated=0.6)
            self.measure(f"{arch}-inter-canine-width", 25, 36, stated=0.7)
            self.measure(f"{arch}-inter-first-molar-width", 40, 54, stated=0.7)
        for side in SIDES:
            self.measure(f"molar-relation-{side}", -2, 4, stated=0.7)
            self.measure(f"canine-relation-{side}", -2, 4, stated=0.5)
            self.measure(f"transverse-overlap-{side}", -3, 3, stated=0.5)
        self.measure("interincisal-angle", 115, 145, "deg", stated=0.5)
        self.measure("upper-incisor-to-palatal-plane", 100, 120, "deg", stated=0.5)
        self.measure("lower-incisor-to-mandibular-plane", 85, 102, "deg", stated=0.5)
        self.measure("incisor-display-at-rest", 0, 5, stated=0.4)
        self.measure("curve-of-spee", 0.5, 4, stated=0.5)
        self.measure("lower-incisor-crown-height", 7.5, 10, stated=0.4)

    # allowances

    def allow(self, use, **members):
        self.say("allow", "a", False, use=use, **members)

    def reduction(self, arch, need):
        named = [c for c in self.contacts(arch, 1, 6) if frozenset(c.split("-")) not in self.taken]
        if self.chance(0.3) and len(named) == len(self.contacts(arch, 1, 6)):
            where = {"arch": arch}
            chosen = named
        else:
            chosen = self.some(named, 2)
            where = {"contacts": chosen}
        if not chosen:
            return
        self.taken |= {frozenset(contact.split("-")) for contact in chosen}
        amounts = {}
        if self.chance(0.7):
            amounts["in_all"] = self.share_of(need)
        if self.chance(0.4) or not amounts:
            amounts["per_contact"] = self.amount(0.1, 0.6)
        if self.chance(0.1):
            most = min(amounts.values())
            amounts["at_least"] = round(most * self.pick(0.5, 1), 2)
        self.allow("enamel-reduction", **where, **amounts, unit="mm")

    def travel(self, arch, use, need):
        teeth = self.some(self.free(arch, 1, 2)) if self.chance(0.2) else None
        if teeth == []:
            return
        self.allow(use, arch=arch, teeth=teeth, up_to=self.share_of(need), unit="mm")

    def width_change(self, arch, use, need):
        teeth = self.free(arch, *self.pick((4, 7), (3, 5), (3, 3))) if self.chance(0.5) else None
        pairs = {(arch, position(t)) for t in (self.line(arch, 3, 7) if teeth is None else teeth)}
        if not pairs or pairs & self.taken:
            return
        self.taken |= pairs
        self.allow(use, arch=arch, teeth=teeth, up_to=self.share_of(need), unit="mm")

    def slide(self, arch, use, need):
        sides = self.pick(None, None, ["right"], ["left"], ["right", "left"])
        teeth = self.some(self.free(arch, 3, 7)) if sides is None and self.chance(0.3) else None
        if teeth == []:
            return
        self.allow(use, arch=arch, sides=sides, teeth=teeth, up_to=self.share_of(need), unit="mm")

    def vertical(self, use, teeth, need):
        if teeth:
            self.allow(use, teeth=teeth, up_to=self.share_of(need), unit="mm")

    def any_movement(self, motion, teeth, need, unit="mm"):
        if teeth:
            self.allow("movement", teeth=teeth, motion=motion, up_to=self.share_of(need), unit=unit)

    def choice(self, arch):
        variables = self.some(("along", "out", "vertical", "torque", "tip", "rotation"))
        teeth = self.some(self.free(arch)) if self.chance(0.3) else None
        self.allow(
            "laboratory-choice",
            variables=variables if self.chance(0.7) else None,
            teeth=teeth or None,
            arch=None if teeth else arch,
        )

    def elastics(self, kind):
        sides = self.pick(["right"], ["left"], ["right", "left"], ["left", "right"])
        stated = self.chance(0.5)
        amounts = {"up_to": self.amount(0.5, 4), "unit": "mm"} if stated else {}
        self.allow(kind, sides=sides, **amounts)

    def room_means(self, arch, need):
        """Means that make room, or take it up, worth about ``need`` mm."""
        kinds = ("reduction", "advance", "widening", "distal", "movement", "choice", "none")
        for kind in self.random.sample(kinds, self.pick(0, 0, 1, 1, 2, 3)):
            if kind == "reduction":
                self.reduction(arch, need)
            elif kind == "advance":
                self.travel(arch, "incisor-advance", need / 1.5)
            elif kind == "widening":
                self.width_change(arch, "widening", need * 1.3)
            elif kind == "distal":
                self.slide(arch, "distal-movement", need / 2)
            elif kind == "movement":
                self.any_movement(*self.motion(self.free(arch)), need)
            elif kind == "choice" and self.chance(0.4):
                self.choice(arch)

    def motion(self, teeth):
        """A motion in mm and the teeth it suits."""
        arch = arch_of(teeth[0])
        motion = self.pick("mesial", "distal", "labial", "buccal", INWARDS[arch], "intrusion", "extrusion")
        if motion == "labial":
            teeth = [tooth for tooth in teeth if position(tooth) <= 3]
        if motion == "buccal":
            teeth = [tooth for tooth in teeth if position(tooth) > 3]
        return motion, self.some(teeth)

    # what is asked, theme by theme

    def bounds(self, start, change, spread):
        """A goal's bounds about the start plus a change; one of them may be left out."""
        middle = start + change
        bounds = {"at_least": round(middle - spread, 2), "at_most": round(middle + spread, 2)}
        if self.chance(0.5):
            del bounds[self.pick("at_least", "at_most")]
        return bounds

    def reach(self, measure, change, spread=0.3, unit="mm", size=False, **more):
        bounds = self.bounds(self.measured.get(measure, 0), change, spread)
        if size:
            bounds = {name: max(0, value) for name, value in bounds.items()}
        self.say("goals", "g", measure=measure, **bounds, unit=unit, **more)

    def align(self):
        arch = self.pick(*QUADRANTS)
        teeth = self.line(arch, 1, self.pick(2, 3, 3, 5, 7))
        if len(teeth) >= 2:
            extra = {"value": self.amount(1, 10), "unit": "percent"} if self.chance(0.1) else None
            self.say("goals", "g", align=teeth, overcorrection=extra)
            self.room_means(arch, self.measured.get(f"{arch}-crowding", 1) or 1)

    def close(self):
        arch = self.pick(*QUADRANTS)
        contacts = self.some(self.contacts(arch))
        if self.chance(0.5):
            self.say("goals", "g", close_arch=arch)
        elif contacts:
            self.say("goals", "g", close=contacts)
        need = self.measured.get(f"{arch}-spacing", 0.5)
        for kind in self.some(("retraction", "narrowing", "mesial", "none"), 0):
            if kind == "retraction":
                self.travel(arch, "incisor-retraction", need / 1.5)
            elif kind == "narrowing":
                self.width_change(arch, "narrowing", need * 1.3)
            elif kind == "mesial":
                self.slide(arch, "mesial-movement", need / 2)

    def leave(self):
        arch = self.pick(*QUADRANTS)
        contacts = self.contacts(arch)
        if contacts:
            self.say("goals", "g", leave=self.pick(*contacts), amount=self.amount(0, 4), unit="mm")
            if self.chance(0.6):
                self.slide(arch, self.pick("distal-movement", "mesial-movement"), 1.5)
            if self.chance(0.6):
                self.travel(arch, self.pick("incisor-advance", "incisor-retraction"), 1.5)

    def bite(self):
        change = self.amount(-3, 3)
        if self.chance(0.6):
            self.reach("overbite", change, self.amount(0.1, 1))
        for _ in range(self.pick(0, 1, 2)):
            arch = self.pick(*QUADRANTS)
            positions = ((1, 2), (1, 3)) if self.chance(0.6) else ((6, 7), (4, 7), (6, 6))
            teeth = self.free(arch, *self.pick(*positions))
            use = self.pick("intrusion", "extrusion")
            if self.chance(0.5):
                self.vertical(use, teeth, abs(change) + 0.2)
            else:
                self.order(use, teeth, abs(change) + 0.2)
        if self.chance(0.2):
            self.allow("posterior-open-bite", up_to=self.amount(0.2, 1.5), unit="mm")
        if self.chance(0.5):
            self.keep_measure("overbite", self.amount(0, 1))

    def order(self, motion, teeth, need, unit="mm"):
        if not teeth:
            return
        low = round(need * self.pick(0.5, 0.8, 1), 2)
        high = round(low + self.amount(0, 1.5) * (4 if unit == "deg" else 1), 2)
        bounds = {"at_least": low, "at_most": high}
        if self.chance(0.4):
            del bounds[self.pick("at_least", "at_most")]
        self.say("movements", "m", teeth=teeth, motion=motion, **bounds, unit=unit)

    def sagittal(self):
        kind = self.pick("relation", "overjet", "canines")
        change = self.amount(-3, 1)
        if kind == "overjet":
            self.reach("overjet", change)
        else:
            what = "molar-relation" if kind == "relation" else "canine-relation"
            for side in self.some(SIDES):
                self.reach(f"{what}-{side}", change)
        for means in self.some(("elastics", "distal", "retraction", "advance"), 0):
            if means == "elastics":
                self.elastics(self.pick("class-ii-elastics", "class-ii-elastics", "class-iii-elastics"))
            elif means == "distal":
                self.slide(self.pick(*QUADRANTS), self.pick("distal-movement", "mesial-movement"), abs(change) + 0.1)
            elif means == "retraction":
                self.travel("upper", "incisor-retraction", abs(change) + 0.1)
            elif means == "advance":
                self.travel("lower", "incisor-advance", abs(change) + 0.1)

    def transverse(self):
        arch = self.pick(*QUADRANTS)
        change = self.amount(-1, 4)
        kind = self.pick("canine", "first-molar", "overlap")
        if kind == "overlap":
            side = self.pick(*SIDES)
            upper, lower = ("1", "4") if side == "right" else ("2", "3")
            number = self.pick(4, 5, 6)
            pair = [f"{upper}{number}", f"{lower}{number}"] if self.chance(0.4) else None
            if pair and all(tooth in self.line(arch_of(tooth)) for tooth in pair):
                value = self.amount(-3, 3)
                measure = f"transverse-overlap-{side}"
                self.say("findings", "f", False, measure=measure, value=value, unit="mm", pair=pair)
                self.say("goals", "g", measure=measure, pair=pair, at_least=round(value + change, 2), unit="mm")
            else:
                self.reach(f"transverse-overlap-{side}", change)
        else:
            self.reach(f"{arch}-inter-{kind}-width", change, size=True)
        if self.chance(0.7):
            self.width_change(arch, "widening" if change > 0 else "narrowing", abs(change) + 0.1)

    def inclination(self):
        arch = self.pick(*QUADRANTS)
        plane = {"upper": "upper-incisor-to-palatal-plane", "lower": "lower-incisor-to-mandibular-plane"}[arch]
        change = self.amount(-8, 8)
        if self.chance(0.7):
            self.reach(self.pick("interincisal-angle", plane), change, self.amount(0.5, 3), "deg")
        inwards = INWARDS[arch]
        motions = (f"{inwards}-crown-torque", f"{inwards}-root-torque", "labial-root-torque")
        motion = self.pick("labial-crown-torque", *motions)
        teeth = self.free(arch, 1, 2)
        if self.chance(0.4):
            self.any_movement(motion, teeth, abs(change) + 1, "deg")
        elif self.chance(0.6):
            self.order(motion, teeth, abs(change) + 1, "deg")
        if self.chance(0.4):
            self.travel(arch, self.pick("incisor-advance", "incisor-retraction"), 1.5)

    def midline(self):
        arch = self.pick(*QUADRANTS)
        self.reach(f"{arch}-midline", self.amount(-2, 2), self.amount(0.1, 0.5))
        if self.chance(0.6):
            motions = self.pick((("1", "mesial"), ("0", "distal")), (("1", "distal"), ("0", "mesial")))
            amount = self.amount(0.5, 2)
            for side, motion in motions:
                quadrant = QUADRANTS[arch][int(side)]
                teeth = [tooth for tooth in self.free(arch, 1, self.pick(1, 2, 3)) if tooth[0] == quadrant]
                self.any_movement(motion, teeth, amount)

    def single(self):
        """An order for a few teeth."""
        teeth = self.free(self.pick(*QUADRANTS))
        kind = self.pick("mm", "mm", "turn", "tip")
        if kind == "mm":
            self.order(*self.motion(teeth), self.amount(0.2, 3))
        else:
            motion = {
                "turn": self.pick("mesiolingual-rotation", "distolingual-rotation"),
                "tip": self.pick("mesial-crown-tip", "distal-crown-tip"),
            }[kind]
            self.order(motion, self.some(teeth)[:3], self.amount(2, 20), "deg")

    def much(self):
        """An order, or a goal with its means, near or past what is usual."""
        arch = self.pick(*QUADRANTS)
        kind = self.pick("intrusion", "width", "advance", "reduction", "turn")
        pairs = {(arch, number) for number in range(3, 8)}
        if kind == "intrusion":
            self.order("intrusion", self.free(arch, 1, 2), self.amount(2.5, 6))
        elif kind == "width" and not pairs & self.taken:
            change = self.amount(1.5, 7)
            self.reach(f"{arch}-inter-{self.pick('canine', 'first-molar')}-width", change)
            self.allow("widening", arch=arch, up_to=round(change + self.amount(0, 2), 2), unit="mm")
            self.taken |= pairs
        elif kind in ("advance", "width"):
            self.order("labial", self.free(arch, 1, 2), self.amount(3, 6))
        elif kind == "turn":
            self.order("mesiolingual-rotation", self.some(self.free(arch))[:2], self.amount(30, 70), "deg")
        else:
            contact = self.pick(*self.contacts(arch, 1, 3))
            if frozenset(contact.split("-")) in self.taken:
                return
            self.taken.add(frozenset(contact.split("-")))
            most = self.amount(0.4, 1.2)
            self.allow("enamel-reduction", contacts=[contact], per_contact=most, at_least=most, unit="mm")

    def levelling(self):
        self.say("goals", "g", level=self.pick("lower", "lower", "upper"))
        if self.chance(0.6):
            self.reach("curve-of-spee", -self.amount(0.2, 2), size=True)

    def crowds(self):
        """A goal or a keep on what is left of crowding or spacing."""
        arch, what = self.pick(*QUADRANTS), self.pick("crowding", "spacing")
        now = self.measured.get(f"{arch}-{what}", 0)
        if self.chance(0.6):
            most = round(now * self.pick(0, 0.5, 0.8), 2)
            self.say("goals", "g", measure=f"{arch}-{what}", at_most=most, unit="mm")
        else:
            self.keep_measure(f"{arch}-{what}", self.amount(0, 1))
        self.room_means(arch, now or 1)

    def extraction(self):
        arch = self.pick(*QUADRANTS)
        kind = self.pick("premolars", "premolars", "incisor", "molar")
        wanted = {"premolars": self.pick((4, 4), (5, 5)), "incisor": (1, 2), "molar": (6, 6)}[kind]
        teeth = [tooth for tooth in self.line(arch, *wanted) if not self.locked(tooth)]
        if kind != "premolars":
            teeth = teeth[:1]
        if teeth and not any(arch_of(tooth) == arch for tooth in self.gone):
            self.gone |= set(teeth)
            self.allow("extraction", teeth=teeth)

    # what must stay, what must not be used, what is counted on

    def keep_measure(self, measure, within, unit="mm"):
        self.say("keep", "k", measure=measure, within=within, unit=unit)

    def keeps(self):
        kind = self.pick("measure", "measure", "variable", "motion", "hold")
        arch = self.pick(*QUADRANTS)
        if kind == "measure":
            mm = ("overjet", "upper-midline", f"{arch}-inter-canine-width", "molar-relation-left", "overbite")
            if self.chance(0.8):
                self.keep_measure(self.pick(*mm), self.amount(0, 1))
            else:
                self.keep_measure("interincisal-angle", self.amount(0, 5), "deg")
        elif kind == "variable":
            variable = self.pick("along", "out", "vertical", "torque", "rotation")
            degrees = variable in ("torque", "rotation")
            within, unit = (self.amount(0, 5), "deg") if degrees else (self.amount(0, 1), "mm")
            teeth = self.some(self.line(arch))[:4]
            self.say("keep", "k", variable=variable, teeth=teeth, within=within, unit=unit)
        elif kind == "motion":
            motion, teeth = self.motion(self.line(arch))
            if teeth:
                self.say("keep", "k", motion=motion, teeth=teeth[:4], within=self.amount(0, 1), unit="mm")
        else:
            self.say("keep", "k", hold=self.some(self.line(arch))[:3])

    def exclusions(self):
        means = self.pick(
            *("enamel-reduction", "incisor-advance", "widening", "distal-movement", "intrusion"),
            *("extrusion", "posterior-open-bite", "incisor-retraction"),
        )
        used = {clause["use"] for clause in self.sections["allow"]}
        if means not in used:
            arch = self.pick(None, "upper", "lower") if means != "posterior-open-bite" else None
            self.say("exclude", "x", False, means=means, arch=arch)

    def expectation(self):
        measure, unit = self.pick(
            *(("overbite", "mm"), ("overjet", "mm"), ("molar-relation-right", "mm"), ("lower-crowding", "mm")),
            *(("upper-spacing", "mm"), ("upper-inter-first-molar-width", "mm"), ("interincisal-angle", "deg")),
        )
        low = -self.amount(0.1, 1.5) if self.chance(0.8) else 0
        high = 0 if low and self.chance(0.6) else self.amount(0.1, 1)
        if measure.endswith(("crowding", "spacing")):
            high, low = (0, low or -0.5) if measure.endswith("crowding") else (max(high, 0.2), 0)
        ground = "leeway-space" if measure.endswith(("crowding", "spacing")) else "growth"
        self.say("expect", "e", False, measure=measure, at_least=low, at_most=high, unit=unit, ground=ground)

    def staging(self):
        steps = [{"variable": v, "amount": 0.25, "unit": "mm"} for v in self.some(("along", "out", "vertical"))]
        if self.chance(0.5):
            steps.append({"variable": "rotation", "amount": 2, "unit": "deg"})
        if self.chance(0.2):
            teeth = self.some(self.line("upper"))[:3]
            steps.append({"variable": "torque", "amount": 1.5, "unit": "deg", "teeth": teeth})
        most = self.pick(2, 4, 6, 8, 12, 20, 30)
        return {"id": "s1", "strength": self.strength(), "largest_steps": steps, "most_aligners": most}

    # all together

    def document(self, name):
        self.teeth()
        self.room_findings()
        self.tooth_findings()
        self.findings()
        if self.chance(0.12):
            self.extraction()
        themes = (
            *(self.align, self.align, self.align, self.close, self.bite, self.bite, self.sagittal),
            *(self.transverse, self.inclination, self.midline, self.single, self.levelling, self.leave),
            *(self.crowds, self.much, self.much, self.much),
        )
        for theme in self.random.sample(themes, self.pick(1, 1, 1, 2, 2, 3)):
            theme()
        for part, share in ((self.keeps, 0.35), (self.exclusions, 0.12), (self.expectation, 0.12)):
            if self.chance(share):
                part()
        teeth = {arch: list(line) for arch, line in self.lines.items()}
        if self.states:
            teeth["particulars"] = [{"tooth": tooth, "states": [state]} for tooth, state in self.states.items()]
        document = {**HEAD, "id": name, "teeth": teeth}
        if self.chance(0.3):
            document["treat"] = {"arches": "both"}
        document |= {section: clauses for section, clauses in self.sections.items() if clauses}
        if self.chance(0.12):
            document["staging"] = self.staging()
        return document
