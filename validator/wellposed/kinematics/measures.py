"""Measures as sums of columns: what planned movement does to each."""

from __future__ import annotations

from typing import NamedTuple

from wellposed.kinematics.directions import ahead, buccal, mesial, outward, sideways
from wellposed.kinematics.frame import Frame
from wellposed.kinematics.rows import Terms, mean, plus, times
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import LOWER, SIDES, UPPER, arch_of, position, tooth_at

WIDTH_TEETH = {
    "inter-canine-width": 3,
    "inter-first-premolar-width": 4,
    "inter-second-premolar-width": 5,
    "inter-first-molar-width": 6,
    "inter-second-molar-width": 7,
}
_SIDED = ("molar-relation", "canine-relation", "transverse-overlap")

Pair = tuple[str, ...]
ROOM = ("crowding", "spacing")


class MeasureRow(NamedTuple):
    """A measure as terms: its change, or with ``absolute`` its final value."""

    terms: Terms
    absolute: bool = False


def measure_row(frame: Frame, name: str, pair: Pair | None = None) -> MeasureRow | None:
    """A measure as terms; None if the teeth it is taken at are not there, or teeth do not change it."""
    terms = _terms(frame, name, pair)
    if terms is None:
        return None
    expected = () if pair else frame.expected.get(name, ())
    absolute = name.endswith(ROOM) or name == "posterior-open-bite"
    return MeasureRow(plus(terms, dict.fromkeys(expected, 1.0)), absolute)


def _terms(frame: Frame, name: str, pair: Pair | None) -> Terms | None:
    arch, _, what = name.partition("-")
    if what in ("crowding", "spacing"):
        return _sum(frame, arch, "overlap" if what == "crowding" else "gap")
    if what in WIDTH_TEETH:
        teeth = frame.present(*(tooth_at(arch, side, WIDTH_TEETH[what]) for side in SIDES))
        return plus(*(outward(frame, t) for t in teeth)) if len(teeth) == 2 else None
    if name.startswith(_SIDED):
        return _of_side(frame, name, pair)
    if name in ("upper-midline", "lower-midline"):
        teeth = centrals(frame, arch)
        return mean([sideways(frame, t) for t in teeth]) if len(teeth) == 2 else None
    if name == "posterior-open-bite":
        gaps = list(frame.hinge.gaps.values())
        return mean([{gap: 1.0} for gap in gaps]) if gaps else None
    return _curve(frame) if name == "curve-of-spee" else _front(frame, name, pair)


def centrals(frame: Frame, arch: str) -> list[str]:
    """The central incisors standing in an arch."""
    return frame.present(*(tooth_at(arch, side, 1) for side in SIDES))


def _sum(frame: Frame, arch: str, part: str) -> Terms | None:
    columns = [getattr(frame.contacts[contact.name], part) for contact in frame.mouth.rows[arch].contacts]
    return dict.fromkeys(columns, 1.0) if columns else None


def net(frame: Frame, name: str, kept: bool) -> Terms:
    """What a floor on crowding or spacing counts, so that no contact overlaps and gapes at once.

    Crowding: overlap less gap where teeth overlap at the start. Spacing: the gap where they do not; where they do,
    what is opened beyond the overlap, which a spacing that is ``kept`` has no part in.
    """
    arch, _, what = name.partition("-")
    total: dict[int, float] = {}
    for contact in frame.mouth.rows[arch].contacts:
        columns, overlapped = frame.contacts[contact.name], contact.before < 0
        if what == "crowding" and overlapped:
            total |= {columns.overlap: 1.0, columns.gap: -1.0}
        elif what == "spacing" and not (overlapped and kept):
            total |= {columns.gap: 1.0} | ({columns.overlap: -1.0} if overlapped else {})
    return total


def _of_side(frame: Frame, name: str, pair: Pair | None) -> Terms | None:
    """Upper against lower on one side: molars (or the named pair), or canines for the canine relation."""
    what, _, side = name.rpartition("-")
    number = 3 if what == "canine-relation" else 6
    upper, lower = sorted(pair or (tooth_at(UPPER, side, number), tooth_at(LOWER, side, number)), key=_upper_first)
    if len(frame.present(upper, lower)) < 2:
        return None
    if what == "transverse-overlap":
        named = pair is not None
        return plus(buccal(frame, upper, named), times(-1.0, buccal(frame, lower, named)))
    return plus(mesial(frame, upper), times(-1.0, mesial(frame, lower)))


def _upper_first(tooth: str) -> bool:
    return arch_of(tooth) == LOWER


def _front(frame: Frame, name: str, pair: Pair | None) -> Terms | None:
    upper, lower = _fronts(frame, pair)
    if name in ("overbite", "overjet", "interincisal-angle"):
        return _both_fronts(frame, name, (upper, lower), pair is not None) if upper and lower else None
    if name.startswith(("upper-incisor-to", "lower-incisor-to")):
        return _mean(frame, upper if name.startswith(UPPER) else lower, "torque")
    if name in ("incisor-display-at-rest", "gingival-display-on-smiling"):
        return _mean(frame, upper, "vertical")
    return None


def _fronts(frame: Frame, pair: Pair | None) -> tuple[list[str], list[str]]:
    if pair is None:
        return centrals(frame, UPPER), centrals(frame, LOWER)
    named = frame.present(*pair)
    return [t for t in named if arch_of(t) == UPPER], [t for t in named if arch_of(t) == LOWER]


def _both_fronts(frame: Frame, name: str, fronts: tuple[list[str], list[str]], named: bool) -> Terms | None:
    if name == "overjet":
        upper, lower = (mean([ahead(frame, tooth, named) for tooth in teeth]) for teeth in fronts)
        return plus(upper, times(-1.0, lower))
    variable: Variable = "vertical" if name == "overbite" else "torque"
    parts = [_mean(frame, teeth, variable) for teeth in fronts]
    if parts[0] is None or parts[1] is None:
        return None
    together = plus(parts[0], parts[1])
    return plus(together, {frame.hinge.closing: 1.0}) if name == "overbite" else times(-1.0, together)


def _mean(frame: Frame, teeth: list[str], variable: Variable) -> Terms | None:
    if variable == "vertical":
        return mean([frame.height(tooth) for tooth in teeth]) if teeth else None
    columns = [column for tooth in teeth if (column := frame.column(tooth, variable)) is not None]
    return mean([{column: 1.0} for column in columns]) if columns else None


def _curve(frame: Frame) -> Terms | None:
    """Half the incisors and half the second molars less the premolars, lower arch."""
    line = frame.mouth.rows[LOWER].teeth
    groups = [[t for t in line if position(t) in numbers] for numbers in ((1, 2), (7,), (4, 5))]
    heights = [_mean(frame, teeth, "vertical") for teeth in groups]
    if heights[0] is None or heights[1] is None or heights[2] is None:
        return None
    return plus(times(0.5, heights[0]), times(0.5, heights[1]), times(-1.0, heights[2]))
