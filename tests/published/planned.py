"""A mouth whose every movement is fixed, so that the model's own rows say what follows from it."""

from wellposed.kinematics.frame import Frame, Play
from wellposed.kinematics.measures import measure_row
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.rows import Kind, plus
from wellposed.kinematics.solve import Model
from wellposed.model import Prescription
from wellposed.vocabulary.teeth import RIGHT, position, side_of

UPPER = [f"{quadrant}{number}" for quadrant in "12" for number in range(1, 8)]
LOWER = [f"{quadrant}{number}" for quadrant in "43" for number in range(1, 8)]
LEAST, MOST = "least", "most"


def document(**sections):
    """A prescription of a full mouth without third molars; sections replace or add to its members."""
    bare = {
        "format": "wellposed/prescription",
        "version": "1.0",
        "notation": "ISO 3950",
        "id": "published",
        "revision": 1,
        "issued": "2026-01-05T09:00:00Z",
        "prescriber": {"id": "prescriber-1"},
        "laboratory": {"id": "laboratory-1"},
        "patient": {"reference": "patient-1"},
        "treat": {"arches": "both"},
        "teeth": {"upper": UPPER, "lower": LOWER},
    }
    return bare | sections


def teeth(arch, *numbers):
    """Teeth of both sides of an arch by their positions."""
    return [tooth for tooth in (UPPER if arch == "upper" else LOWER) if position(tooth) in numbers]


def moved(variable, named, amount):
    """One variable of these teeth, in its own positive sense."""
    return lambda frame: {frame.columns[tooth, variable]: amount for tooth in named}


def forward(named, amount):
    """These teeth straight forward, mm."""
    return lambda frame: _straight(frame, dict.fromkeys(named, (0.0, amount)))


def edges(arch, amount):
    """The four incisors ``out`` alike, so that the overjet counts this much forward for the arch."""

    def movement(frame):
        terms = measure_row(frame, "overjet").terms
        counted = abs(sum(terms[frame.columns[tooth, "out"]] for tooth in teeth(arch, 1)))
        return {frame.columns[tooth, "out"]: amount / counted for tooth in teeth(arch, 1, 2)}

    return movement


def apart(named, width):
    """These teeth straight sideways, so that each pair ends this much wider, mm."""
    away = {tooth: -width / 2 if side_of(tooth) == RIGHT else width / 2 for tooth in named}
    return lambda frame: _straight(frame, {tooth: (x, 0.0) for tooth, x in away.items()})


def _straight(frame, travels):
    """A travel in x and y, taken apart into ``out`` and ``along``."""
    values = {}
    for tooth, (x, y) in travels.items():
        face = frame.facing[tooth]
        slide = face.along_x * x + face.along_y * y
        values[frame.columns[tooth, "out"]] = face.out_x * x + face.out_y * y
        values[frame.columns[tooth, "along"]] = slide if side_of(tooth) == RIGHT else -slide
    return values


class Planned:
    """The model with these movements and no others: no reduction, no posterior gap, every error 0.

    offset   added to the assumed arch depth, mm
    taken    teeth extracted
    """

    def __init__(self, *movements, offset=0.0, taken=(), findings=()):
        mouth = Mouth(Prescription.model_validate(_sound(taken, findings)))
        turns = {(tooth, v) for tooth in UPPER + LOWER for v in ("torque", "tip") if tooth not in taken}
        self.frame = Frame(mouth, extra=turns, play=Play(), uneven=False, offset=offset)
        self._fix(plus(*(movement(self.frame) for movement in movements)))
        self.frame.finish()
        self.model = Model(self.frame.system)

    def _fix(self, values):
        still = [contact.reduction for contact in self.frame.contacts.values()]
        still += [*self.frame.columns.values(), *self.frame.hinge.gaps.values()]
        for column in still:
            value = values.get(column, 0.0)
            self.frame.system.bind_column("planned", Kind.FIXED, column, value, value)

    def change(self, measure, hinge=LEAST):
        """Change of a measure, at an end of the hinge."""
        return self._value(measure_row(self.frame, measure).terms, hinge)

    def room(self, *contacts):
        """Room gained at these contacts, all together, mm: gap less overlap, after less before."""
        rows = [row for row in self.frame.mouth.rows.values() if row.contact(contacts[0])]
        before = sum(rows[0].contact(name).before for name in contacts)
        columns = [self.frame.contacts[rows[0].contact(name).name] for name in contacts]
        return self._value(plus(*({c.gap: 1.0, c.overlap: -1.0} for c in columns)), LEAST) - before

    def arch_room(self, arch, last=7):
        """Room gained between the teeth at ``last`` of both sides, all contacts together, mm."""
        contacts = self.frame.mouth.rows[arch].contacts
        return self.room(*(c.name for c in contacts if max(position(c.first), position(c.second)) <= last))

    def _value(self, terms, setting):
        ends = [self.model.extreme(("planned",), terms, sense, setting) for sense in (1, -1)]
        assert abs(ends[0] - ends[1]) < 1e-6, "not fixed by the movements"
        return ends[0]


def _sound(taken, findings):
    crowding = [
        {"id": f"crowding-{arch}", "measure": f"{arch}-crowding", "value": 0, "unit": "mm"}
        for arch in ("upper", "lower")
    ]
    allow = [{"id": "extraction", "use": "extraction", "teeth": list(taken)}] if taken else []
    goals = [{"id": "align", "strength": "must", "align": UPPER + LOWER}]
    return document(findings=[*crowding, *findings], goals=goals, allow=allow)
