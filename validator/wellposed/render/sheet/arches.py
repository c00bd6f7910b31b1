"""What the drawings of a prescription and of a setup share: the row, where teeth stand today, what is not drawn."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.kinematics.arch import ArchLine, arch_line
from wellposed.kinematics.mouth import ArchRow, Mouth
from wellposed.render.readback.words import amount
from wellposed.render.sheet.said import Stands
from wellposed.render.sheet.words import SENSES
from wellposed.vocabulary.teeth import RIGHT, arch_of, is_primary, side_of, tooth_at

__all__ = ["line_of", "mesial", "notes_of", "states_of", "today_of"]

_UNMARKED = ("to-be-extracted", "unerupted")
_NUMBERS = range(1, 8)
_LEAST_STEP = 0.45


def mesial(tooth: str) -> int:
    """1 where mesial is towards the patient's left, as on the right side; -1 on the left."""
    return 1 if side_of(tooth) == RIGHT else -1


def today_of(mouth: Mouth, tooth: str) -> Stands:
    """Where a tooth stands beside the line and how it is turned, as measured; in line where nothing is."""
    out = mouth.tooth_values("displacement").get(tooth, 0.0)
    return Stands(0.0, out, mouth.tooth_values("rotation").get(tooth, 0.0) * mesial(tooth))


def line_of(row: ArchRow) -> ArchLine:
    """The line as measured; where the overlaps are so large that teeth would lie on one another, without them."""
    narrow = [min(a, b) for a, b in zip(row.widths, row.widths[1:], strict=False)]
    if all(-gap <= _LEAST_STEP * size for gap, size in zip(row.between, narrow, strict=True)):
        return row.line(0.0)
    between = tuple(max(gap, -_LEAST_STEP * size) for gap, size in zip(row.between, narrow, strict=True))
    return arch_line(row.widths, between, row.depth(0.0))


def states_of(mouth: Mouth, tooth: str) -> Iterator[str]:
    """What is not ordinary about a tooth: its states in one phrase, then how it stands today if not in line."""
    states = [state.replace("-", " ") for state in mouth.states.get(tooth, ()) if state not in _UNMARKED]
    if states:
        yield ", ".join(states)
    for measure, variable, words, unit in _OUT_OF_LINE:
        size = mouth.tooth_values(measure).get(tooth, 0.0)
        if size:
            yield words.format(amount(abs(size), unit), SENSES[variable, 1 if size > 0 else -1].replace(" side", ""))


_OUT_OF_LINE = (("displacement", "out", "stands {} {}", "mm"), ("rotation", "rotation", "turned {}, {}", "deg"))


def notes_of(mouth: Mouth, arch: str) -> Iterator[str]:
    """What is measured of the arch, and what is not drawn."""
    row, treat = mouth.rows[arch], mouth.prescription.treat
    if treat is not None and treat.arches not in (arch, "both"):
        yield "not treated: nothing moves"
    for what in ("crowding", "spacing"):
        stated = mouth.baseline(f"{arch}-{what}")
        if stated:
            yield f"{what} {amount(stated, 'mm')}"
    if line_of(row) != row.line(0.0):
        yield "overlaps not to scale"
    missing = [tooth for tooth in _usual(arch) if tooth not in _listed(mouth, arch) and not _deciduous(mouth, tooth)]
    if missing and row.initial:
        yield f"not there: {' '.join(missing)}"
    waiting = [tooth for tooth, states in mouth.states.items() if "unerupted" in states and arch_of(tooth) == arch]
    if waiting:
        yield f"not erupted: {' '.join(waiting)}"


def _usual(arch: str) -> list[str]:
    """Central incisor to second molar of both sides, from the patient's right."""
    right = [tooth_at(arch, "right", place) for place in reversed(_NUMBERS)]
    return right + [tooth_at(arch, "left", place) for place in _NUMBERS]


def _listed(mouth: Mouth, arch: str) -> tuple[str, ...]:
    teeth = mouth.prescription.teeth
    return teeth.upper if arch == "upper" else teeth.lower


def _deciduous(mouth: Mouth, tooth: str) -> bool:
    """Whether the primary tooth before this one is still there."""
    before = f"{int(tooth[0]) + 4}{tooth[1]}"
    return any(one == before and is_primary(one) for one in _listed(mouth, arch_of(tooth)))
