"""In which direction a tooth's travel counts: forwards, mesially, sideways, outwards."""

from __future__ import annotations

from wellposed.kinematics.frame import Frame
from wellposed.kinematics.rows import Terms, plus, times
from wellposed.vocabulary.teeth import position

_LEVEL = 1e-6


def ahead(frame: Frame, tooth: str, pair: bool = False) -> Terms:
    """Travel of an incisor's edge forwards, as the overjet is taken: ``out`` of a central counts whole.

    So does straight forward: the slide along the arch makes it up. At a named pair the way to the line counts too.
    """
    face = frame.facing[tooth]
    if position(tooth) > 1:
        return plus(_outwards(frame, tooth, face.out_y, pair), times(face.along_y, frame.slide(tooth)))
    return plus(_outwards(frame, tooth, 1.0, pair), times(rest(face.out_y, face.along_y), frame.slide(tooth)))


def mesial(frame: Frame, tooth: str) -> Terms:
    """Travel of a tooth towards mesial, as the relation of opposing teeth is taken: ``along`` counts whole."""
    face = frame.facing[tooth]
    return plus(frame.along(tooth), {frame.columns[tooth, "out"]: rest(abs(face.along_y), face.out_y)})


def sideways(frame: Frame, tooth: str) -> Terms:
    """Travel of a central incisor to the patient's left, as a midline is taken: the slide counts whole."""
    face = frame.facing[tooth]
    return plus({frame.columns[tooth, "out"]: rest(face.along_x, face.out_x)}, frame.slide(tooth))


def buccal(frame: Frame, tooth: str, pair: bool = False) -> Terms:
    """Travel of a tooth outwards; at a named pair with its way to the line."""
    return _outwards(frame, tooth, 1.0, pair)


def outward(frame: Frame, tooth: str) -> Terms:
    """What a tooth adds to the width of its pair: its ``out`` and its distal travel."""
    face = frame.facing[tooth]
    return plus({frame.columns[tooth, "out"]: abs(face.out_x)}, times(-abs(face.along_x), frame.along(tooth)))


def _outwards(frame: Frame, tooth: str, factor: float, pair: bool) -> Terms:
    columns = [frame.columns[tooth, "out"]]
    if pair and tooth in frame.travels:
        columns.append(frame.travels[tooth])
    return dict.fromkeys(columns, factor)


def rest(first: float, second: float) -> float:
    """The factor of the second part of a straight movement if the first counts whole, so that together they make 1."""
    return (1.0 - first) / second if abs(second) > _LEVEL else 0.0
