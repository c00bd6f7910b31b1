"""Measures of a mouth: what a finding can record, and a goal or a keep can speak about."""

from __future__ import annotations

from typing import Final, Literal, NamedTuple, get_args

from wellposed.vocabulary.units import DEG, MM, PERCENT

Measure = Literal[
    "overbite",
    "overjet",
    "upper-midline",
    "lower-midline",
    "molar-relation-right",
    "molar-relation-left",
    "canine-relation-right",
    "canine-relation-left",
    "upper-inter-canine-width",
    "upper-inter-first-premolar-width",
    "upper-inter-second-premolar-width",
    "upper-inter-first-molar-width",
    "upper-inter-second-molar-width",
    "lower-inter-canine-width",
    "lower-inter-first-premolar-width",
    "lower-inter-second-premolar-width",
    "lower-inter-first-molar-width",
    "lower-inter-second-molar-width",
    "transverse-overlap-right",
    "transverse-overlap-left",
    "interincisal-angle",
    "upper-incisor-to-palatal-plane",
    "upper-incisor-to-sella-nasion",
    "lower-incisor-to-mandibular-plane",
    "incisor-display-at-rest",
    "gingival-display-on-smiling",
    "curve-of-spee",
    "upper-crowding",
    "lower-crowding",
    "upper-spacing",
    "lower-spacing",
    "posterior-open-bite",
    "upper-arch-depth",
    "lower-arch-depth",
    "upper-irregularity",
    "lower-irregularity",
    "lower-incisor-crown-height",
    "mandibular-plane-angle",
    "palatal-to-mandibular-plane",
    "sella-nasion-to-mandibular-plane",
    "anb-angle",
    "sna-angle",
    "snb-angle",
    "overall-tooth-size-ratio",
    "anterior-tooth-size-ratio",
    "upper-tooth-size-excess",
    "lower-tooth-size-excess",
]
ToothMeasure = Literal["tooth-width", "crown-height", "rotation", "displacement"]

MEASURES: Final[tuple[Measure, ...]] = get_args(Measure)
TOOTH_MEASURES: Final[tuple[ToothMeasure, ...]] = get_args(ToothMeasure)


class MeasureKind(NamedTuple):
    """What a measure is.

    words     name in plain words
    unit      unit it is defined in
    positive  what a positive value means; "" where the measure is a size
    moves     whether planned tooth movement changes it in the kinematic model
    also      another unit it may be given in
    """

    words: str
    unit: str
    positive: str = ""
    moves: bool = True
    also: str = ""


def _width(arch: str, tooth: str) -> MeasureKind:
    return MeasureKind(f"{arch} width between the {tooth}s", MM)


_KINDS: dict[str, MeasureKind] = {
    "overbite": MeasureKind("overbite", MM, "upper incisors overlap the lower; negative is an open bite", also=PERCENT),
    "overjet": MeasureKind("overjet", MM, "upper incisors in front of the lower"),
    "upper-midline": MeasureKind("upper midline", MM, "to the patient's left of the facial midline"),
    "lower-midline": MeasureKind("lower midline", MM, "to the patient's left of the facial midline"),
    "interincisal-angle": MeasureKind("interincisal angle", DEG),
    "upper-incisor-to-palatal-plane": MeasureKind("upper incisor to palatal plane", DEG),
    "upper-incisor-to-sella-nasion": MeasureKind("upper incisor to sella-nasion", DEG),
    "lower-incisor-to-mandibular-plane": MeasureKind("lower incisor to mandibular plane", DEG),
    "incisor-display-at-rest": MeasureKind("upper incisor shown at rest", MM),
    "gingival-display-on-smiling": MeasureKind("gum shown on smiling", MM, "gum is seen; negative hides the tooth"),
    "curve-of-spee": MeasureKind("depth of the lower curve of Spee", MM),
    "posterior-open-bite": MeasureKind("posterior open bite", MM),
    "lower-incisor-crown-height": MeasureKind("crown height of the most overlapped lower incisor", MM, moves=False),
    "mandibular-plane-angle": MeasureKind("Frankfort to mandibular plane", DEG, moves=False),
    "palatal-to-mandibular-plane": MeasureKind("palatal to mandibular plane", DEG, moves=False),
    "sella-nasion-to-mandibular-plane": MeasureKind("sella-nasion to mandibular plane", DEG, moves=False),
    "anb-angle": MeasureKind("ANB", DEG, moves=False),
    "sna-angle": MeasureKind("SNA", DEG, moves=False),
    "snb-angle": MeasureKind("SNB", DEG, moves=False),
    "overall-tooth-size-ratio": MeasureKind("overall tooth-size ratio (12 teeth)", PERCENT, moves=False),
    "anterior-tooth-size-ratio": MeasureKind("anterior tooth-size ratio (6 teeth)", PERCENT, moves=False),
}
_NUMBERED = {
    "inter-canine-width": "canine",
    "inter-first-premolar-width": "first premolar",
    "inter-second-premolar-width": "second premolar",
    "inter-first-molar-width": "first molar",
    "inter-second-molar-width": "second molar",
}
for _arch in ("upper", "lower"):
    for _name, _tooth in _NUMBERED.items():
        _KINDS[f"{_arch}-{_name}"] = _width(_arch, _tooth)
    _KINDS[f"{_arch}-crowding"] = MeasureKind(f"{_arch} crowding", MM)
    _KINDS[f"{_arch}-spacing"] = MeasureKind(f"{_arch} spacing", MM)
    _KINDS[f"{_arch}-arch-depth"] = MeasureKind(f"{_arch} arch depth, incisors to second molars", MM, moves=False)
    _KINDS[f"{_arch}-irregularity"] = MeasureKind(f"{_arch} front contact displacements, summed", MM, moves=False)
    _KINDS[f"{_arch}-tooth-size-excess"] = MeasureKind(f"{_arch} tooth-size excess", MM, moves=False)
for _side in ("right", "left"):
    _KINDS[f"molar-relation-{_side}"] = MeasureKind(f"{_side} molar relation", MM, "towards Class II; 0 is Class I")
    _KINDS[f"canine-relation-{_side}"] = MeasureKind(f"{_side} canine relation", MM, "towards Class II; 0 is Class I")
    _KINDS[f"transverse-overlap-{_side}"] = MeasureKind(
        f"{_side} transverse overlap", MM, "upper tooth buccal of the lower; negative is a crossbite"
    )

MEASURE_KINDS: Final[dict[str, MeasureKind]] = {name: _KINDS[name] for name in MEASURES}
TOOTH_MEASURE_KINDS: Final[dict[str, MeasureKind]] = {
    "tooth-width": MeasureKind("mesiodistal width", MM, moves=False),
    "crown-height": MeasureKind("clinical crown height", MM, moves=False),
    "rotation": MeasureKind("rotation", DEG, "mesial surface towards the tongue"),
    "displacement": MeasureKind("displacement from the arch line", MM, "labial or buccal"),
}

SIZES: Final = frozenset(
    name for name, kind in MEASURE_KINDS.items() if name.endswith(("crowding", "spacing", "width", "depth", "height"))
) | {"posterior-open-bite", "curve-of-spee"}
"""Measures that cannot be negative."""


def allowed_units(measure: str) -> tuple[str, ...]:
    """The units a measure may be given in."""
    kind = MEASURE_KINDS.get(measure) or TOOTH_MEASURE_KINDS[measure]
    return (kind.unit, kind.also) if kind.also else (kind.unit,)
