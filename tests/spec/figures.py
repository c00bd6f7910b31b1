"""The check values of the specification, worked out by the model: room a movement makes, and whole answers."""

import json
from functools import cache
from itertools import pairwise

from tests.spec.prose import base

from wellposed import norms
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.verdict import judge
from wellposed.model import Prescription
from wellposed.vocabulary.teeth import ARCHES, RIGHT, SIDES, arch_of, position, side_of, tooth_at

ROUND = 1e-9


def read(**sections):
    return Prescription.model_validate_json(json.dumps(base() | sections))


@cache
def row(arch):
    """An arch of the base document."""
    return Mouth(read()).rows[arch]


@cache
def faces(arch, offset=0.0):
    """How each tooth of an arch faces, at an assumed depth."""
    return dict(zip(row(arch).initial, row(arch).line(offset).facings, strict=True))


def room_of(arch, travels, offset=0.0):
    """Room all contacts of an arch gain where each tooth travels (out, along), mm; ``along`` mesial +."""
    teeth, line, total = row(arch).initial, row(arch).line(offset), 0.0
    for place, pair in enumerate(pairwise(teeth)):
        loses, gains = line.chord(place, place + 1)
        (out_1, slide_1), (out_2, slide_2) = (
            (out, along if side_of(tooth) == RIGHT else -along) for tooth in pair for out, along in [travels(tooth)]
        )
        total += slide_2 - slide_1 + gains * out_2 - loses * out_1
    return total


def outward(*numbers):
    """These teeth 1 mm ``out``."""
    return lambda _: lambda tooth: (1.0 if position(tooth) in numbers else 0.0, 0.0)


def straight(numbers, x, y):
    """These teeth of both sides 1 mm away from the middle (x) or forward (y)."""

    def of(offset):
        def travel(tooth):
            if position(tooth) not in numbers:
                return 0.0, 0.0
            face = faces(arch_of(tooth), offset)[tooth]
            away = -x if side_of(tooth) == RIGHT else x
            slide = face.along_x * away + face.along_y * y
            return face.out_x * away + face.out_y * y, slide if side_of(tooth) == RIGHT else -slide

        return travel

    return of


SITES = {
    "four incisors 1 mm `out`": outward(1, 2),
    "canine to canine 1 mm straight forward": straight((1, 2, 3), 0.0, 1.0),
    "canines to second molars 1 mm straight sideways, each side": straight((3, 4, 5, 6, 7), 1.0, 0.0),
    "canines 1 mm `out`, each side": outward(3),
    "canines to second molars 1 mm `out`, each side": outward(3, 4, 5, 6, 7),
    "first premolars to second molars 1 mm `out`, each side": outward(4, 5, 6, 7),
    "first molars alone 1 mm `out`, each side": outward(6),
}


def room():
    """Room per movement, at the assumed depth and at both ends of its uncertainty."""
    error = norms.value("arch.depth-error")
    lines = ["| movement | upper | lower |\n", "|---|---|---|\n"]
    for words, site in SITES.items():
        cells = []
        for arch in ARCHES:
            middle, *ends = (room_of(arch, site(offset), offset) for offset in (0.0, -error, error))
            cells.append(f"{middle:.2f} ({min(ends):.2f} to {max(ends):.2f})")
        lines.append(f"| {words} | {' | '.join(cells)} |\n")
    canines = [faces(arch)[tooth_at(arch, RIGHT, 3)] for arch in ARCHES]
    cells = [f"{abs(face.out_x):.2f}, {abs(face.along_x):.2f}" for face in canines]
    lines.append(f"| the canine's own `out` and `along`, sideways part | {' | '.join(cells)} |\n")
    return "".join(lines)


# whole answers

LOWER_FRONT = ["43", "42", "41", "31", "32", "33"]
UPPER_INCISORS = ["12", "11", "21", "22"]
ALIGN = {"id": "g1", "strength": "must"}
OVERBITE = {"id": "k1", "strength": "must", "measure": "overbite", "within": 0.5, "unit": "mm"}


def found(*values):
    return [{"id": f"f{n}", "measure": m, "value": v, "unit": "mm"} for n, (m, v) in enumerate(values, 1)]


def moved(number, teeth, motion, low, high):
    bounds = {"at_least": low, "at_most": high, "unit": "mm"}
    return {"id": f"m{number}", "strength": "must", "teeth": teeth, "motion": motion, **bounds}


def used(number, use, up_to, **more):
    return {"id": f"a{number}", "use": use, "up_to": up_to, "unit": "mm", **more}


def whole_arch(arch):
    return base()["teeth"][arch]


CASES = {
    "crowding 2 in both arches, both to be aligned, nothing else said": {
        "findings": found(("upper-crowding", 2), ("lower-crowding", 2)),
        "goals": [ALIGN | {"align": whole_arch("upper")}, ALIGN | {"id": "g2", "align": whole_arch("lower")}],
    },
    "12 to 22 intruded 1.8 to 2.2, overbite kept within 0.5": {
        "movements": [moved(1, UPPER_INCISORS, "intrusion", 1.8, 2.2)],
        "keep": [OVERBITE],
    },
    "16 17 26 27 intruded 1.5, overbite kept within 0.5": {
        "movements": [moved(1, ["16", "17", "26", "27"], "intrusion", 1.5, 1.5)],
        "keep": [OVERBITE],
    },
    "upper spacing 2, the arch to be closed, nothing else said": {
        "findings": found(("upper-spacing", 2)),
        "goals": [ALIGN | {"close_arch": "upper"}],
    },
    "lower crowding 3, front to be aligned, advance of 1": {
        "findings": found(("lower-crowding", 3)),
        "goals": [ALIGN | {"align": LOWER_FRONT}],
        "allow": [used(1, "incisor-advance", 1, arch="lower")],
    },
    "lower crowding 3, front to be aligned, widening of 3": {
        "findings": found(("lower-crowding", 3)),
        "goals": [ALIGN | {"align": LOWER_FRONT}],
        "allow": [used(1, "widening", 3, arch="lower")],
    },
    "lower crowding 4, 45 to 35 to be aligned, molars distal by 1.5": {
        "findings": found(("lower-crowding", 4)),
        "goals": [ALIGN | {"align": ["45", "44", *LOWER_FRONT, "34", "35"]}],
        "allow": [used(1, "distal-movement", 1.5, arch="lower")],
    },
    "41 extracted, lower crowding 6.5, front to be aligned": {
        "findings": found(("lower-crowding", 6.5)),
        "goals": [ALIGN | {"align": [tooth for tooth in LOWER_FRONT if tooth != "41"]}],
        "allow": [{"id": "a1", "use": "extraction", "teeth": ["41"]}],
    },
    "overbite 3 kept within 0.5; 12 to 22 intruded 2 to 2.5; first molars extruded 1 to 1.5": {
        "findings": found(("overbite", 3)),
        "movements": [
            moved(1, UPPER_INCISORS, "intrusion", 2, 2.5),
            moved(2, ["16", "26", "36", "46"], "extrusion", 1, 1.5),
        ],
        "keep": [OVERBITE],
    },
    "overbite 0 to become 1.3 to 1.7; 16 17 26 27 intruded 0.99 to 1.01": {
        "findings": found(("overbite", 0)),
        "goals": [ALIGN | {"measure": "overbite", "at_least": 1.3, "at_most": 1.7, "unit": "mm"}],
        "movements": [moved(1, ["16", "17", "26", "27"], "intrusion", 0.99, 1.01)],
    },
    "upper spacing 4 all closed, and incisors ordered 2 forward": {
        "findings": found(("upper-spacing", 4)),
        "goals": [ALIGN | {"close_arch": "upper"}],
        "movements": [moved(1, UPPER_INCISORS, "labial", 2, 2)],
    },
    "upper crowding 3 aligned with advance of 2; lower crowding 3 left alone": {
        "findings": found(("upper-crowding", 3), ("lower-crowding", 3)),
        "goals": [ALIGN | {"align": ["13", "12", "11", "21", "22", "23"]}],
        "allow": [used(1, "incisor-advance", 2, arch="upper")],
    },
    "both sides 3 towards Class II to become 0.5 at most, overjet 7 to become 3; molars distal and incisors back": {
        "findings": found(("molar-relation-right", 3), ("molar-relation-left", 3), ("overjet", 7)),
        "goals": [
            *(
                ALIGN | {"id": f"g-{side}", "measure": f"molar-relation-{side}", "at_most": 0.5, "unit": "mm"}
                for side in SIDES
            ),
            ALIGN | {"measure": "overjet", "at_least": 2.5, "at_most": 3.5, "unit": "mm"},
        ],
        "allow": [used(1, "distal-movement", 3, arch="upper"), used(2, "incisor-retraction", 4.5, arch="upper")],
    },
    "four first premolars out, crowding 5 and 6, all closed, molars mesial by 2.5, inter-canine widths kept within 1": {
        "findings": found(("upper-crowding", 5), ("lower-crowding", 6)),
        "goals": [ALIGN | {"id": f"g-{arch}", "close_arch": arch} for arch in ARCHES],
        "keep": [
            OVERBITE | {"id": f"k-{arch}", "measure": f"{arch}-inter-canine-width", "within": 1} for arch in ARCHES
        ],
        "allow": [
            {"id": "a1", "use": "extraction", "teeth": ["14", "24", "34", "44"]},
            *(used(n, "mesial-movement", 2.5, arch=arch) for n, arch in enumerate(ARCHES, 2)),
        ],
    },
}


def answers():
    """Verdict and ways out of every case."""
    lines = ["| prescription | verdict | ways out, mm |\n", "|---|---|---|\n"]
    for words, sections in CASES.items():
        told = judge(read(**sections))
        ways = " // ".join("; ".join(map(_way, conflict.ways_out)) for conflict in told.conflicts)
        lines.append(f"| {words} | `{told.verdict}` | {ways} |\n")
    return "".join(lines)


def _way(way):
    facts = dict(way.repair.facts)
    named = way.repair.use or str(facts.get("clause", ""))
    where = str(facts.get("arch", "")) if way.repair.use else ""
    which = _group(facts["teeth"]) if way.repair.use in ("intrusion", "extrusion") else ""
    words = " ".join(word for word in (way.repair.what, named, where, which) if word)
    span = f" ({_shown(way.low)} to {_shown(way.high)})" if way.high - way.low > ROUND + 0.005 else ""
    return f"{words} {_shown(way.amount)}{span}"


def _group(teeth):
    places = {position(tooth) for tooth in teeth}
    return "incisors" if places <= {1, 2} else "canines" if places == {3} else "back teeth"


def _shown(value):
    return f"{value:.2f}" if value < 1e6 else "any"
