"""Landmark points of a whole mouth, made from widths and two arches; and the files they come in.

The teeth stand on the arch lines of the specification. Nothing here uses the code under test but the arch line itself.
"""

from itertools import pairwise
from math import radians

import numpy as np

from wellposed.kinematics.arch import arch_line
from wellposed.vocabulary.landmarks import landmarks_of

UPPER = ("17", "16", "15", "14", "13", "12", "11", "21", "22", "23", "24", "25", "26", "27")
LOWER = ("47", "46", "45", "44", "43", "42", "41", "31", "32", "33", "34", "35", "36", "37")
# Means of Nelson, Wheeler's Dental Anatomy, from central incisor to second molar.
WIDTHS = {"upper": (8.5, 6.5, 7.5, 7.0, 7.0, 10.0, 9.0), "lower": (5.0, 5.5, 7.0, 7.0, 7.0, 11.0, 10.5)}
DEPTHS = {"upper": 43.0, "lower": 41.0}
# How far outwards, and how far down from the edge or cusp, the other points of a tooth lie, mm.
CUSP_OUT = {1: 0.6, 2: 0.6, 3: 1.2, 4: 2.5, 5: 2.8, 6: 3.0, 7: 3.0}
CONTACT_DOWN, GUM_DOWN, ROOT_DOWN = 2.0, 9.0, 22.0
ROOT_IN = 6.0


def mouth(overjet=3.0, overbite=2.5, between=None, widths=None, spee=0.0, face=True):
    """Tooth to landmark to point (x, y, z), mm, for 28 teeth; and ``face`` if wanted.

    overjet, overbite  of the centrals' edges, mm
    between            contact as "13-12", in either arch, to its gap + or overlap -, mm
    widths             tooth to mesiodistal width, else the average
    spee               how far the lower premolars and first molars stand below the other lower teeth, mm
    """
    upper = _arch(UPPER, "upper", between or {}, widths or {})
    lower = _arch(LOWER, "lower", between or {}, widths or {})
    shift = _edge(upper, "11", "21") - _edge(lower, "41", "31")
    low = np.array([0.0, shift[1] - overjet, shift[2] + overbite])
    lower = {
        tooth: {name: at + low - _deep(tooth, spee) for name, at in points.items()} for tooth, points in lower.items()
    }
    return {**upper, **lower, **({"face": {"midline": np.array([0.0, 60.0, 20.0])}} if face else {})}


def _deep(tooth, spee):
    return np.array([0.0, 0.0, spee if tooth[1] in "456" else 0.0])


def _edge(teeth, *names):
    return np.mean([teeth[name]["edge"] for name in names], axis=0)


def _arch(row, arch, between, widths):
    sizes = tuple(widths.get(tooth, WIDTHS[arch][int(tooth[1]) - 1]) for tooth in row)
    gaps = tuple(between.get(f"{a}-{b}", 0.0) for a, b in pairwise(row))
    line = arch_line(sizes, gaps, DEPTHS[arch])
    up = 1.0 if arch == "upper" else -1.0  # towards the root
    return {
        tooth: _tooth(tooth, size, np.array([*point, 0.0]), facing, up)
        for tooth, size, point, facing in zip(row, sizes, line.points, line.facings, strict=True)
    }


def _tooth(tooth, size, middle, facing, up):
    out, left = np.array([facing.out_x, facing.out_y, 0.0]), np.array([facing.along_x, facing.along_y, 0.0])
    mesial = left if tooth[0] in "14" else -left
    root = np.array([0.0, 0.0, up])
    cusp = CUSP_OUT[int(tooth[1])]
    forward = 2.0 if tooth[1] in "67" else 0.0  # a molar's mesiobuccal cusp
    crown = middle + cusp * out + forward * mesial
    named = {
        "mesial-contact": middle + size / 2 * mesial + CONTACT_DOWN * root,
        "distal-contact": middle - size / 2 * mesial + CONTACT_DOWN * root,
        "edge": crown,
        "cusp": crown,
        "gum": crown + 1.0 * out + GUM_DOWN * root,
        "groove": middle + cusp * out - 0.5 * mesial + 1.0 * root,
        "root": crown + ROOT_DOWN * root - ROOT_IN * out,
    }
    return {name: named[name] for name in landmarks_of(tooth)}


def moved(teeth, tooth, turn=None, shift=(0.0, 0.0, 0.0)):
    """The same points with one tooth turned (a 3 x 3 matrix) about its own edge or cusp and shifted, mm."""
    points = teeth[tooth]
    pivot = points.get("edge", points.get("cusp"))
    turn = np.eye(3) if turn is None else turn
    return {**teeth, tooth: {name: turn @ (at - pivot) + pivot + np.array(shift) for name, at in points.items()}}


def upright_turn(axis, degrees):
    """A turn about an axis, by Rodrigues' formula."""
    x, y, z = np.array(axis, float) / np.linalg.norm(axis)
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    angle = radians(degrees)
    return np.eye(3) + np.sin(angle) * cross + (1 - np.cos(angle)) * cross @ cross


def table(before, after=None, decimals=4):
    """The bytes of a file, of one moment or of two."""
    head = ["tooth", "landmark", *(["moment"] if after is not None else []), "x", "y", "z"]
    lines = [",".join(head)]
    for moment, teeth in (("before", before), ("after", after or {})):
        for tooth, points in teeth.items():
            if tooth == "face" and moment == "after":
                continue
            when = "both" if tooth == "face" else moment
            for name, point in points.items():
                cells = [tooth, name, *([when] if after is not None else [])]
                lines.append(",".join([*cells, *(f"{value + 0.0:.{decimals}f}" for value in point)]))
    return ("\n".join(lines) + "\n").encode()
