"""What each instruction does, in a few words, and which of these answer a diagnosis.

Used to put needless instructions under a diagnosis that the measurements do not support. An instruction that gives a
reason of its own is never sought here.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.consistency.whole import Place
from wellposed.model.base import Part
from wellposed.model.clauses import Movement
from wellposed.model.means import AnyMovement, VerticalMovement
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import arch_of, is_canine, is_incisor

_SENSES = {
    ("along", 1): "mesial",
    ("along", -1): "distal",
    ("out", 1): "outward",
    ("out", -1): "inward",
    ("vertical", 1): "extrusion",
    ("vertical", -1): "intrusion",
    ("torque", 1): "crown-out",
    ("torque", -1): "crown-in",
    ("rotation", 1): "rotation",
    ("rotation", -1): "rotation",
}

_OPENING = ("front intrusion", "back extrusion", "front outward", "front crown-out", "incisor-advance")
_CLOSING = ("front extrusion", "back intrusion", "front inward", "front crown-in", "incisor-retraction")
_ROOM = ("enamel-reduction", "widening", "incisor-advance", "distal-movement", "extraction", "outward", "back distal")
_BACKWARD = ("upper distal", "upper inward", "lower mesial", "class-ii-elastics", "extraction")
_FORWARD = ("lower distal", "lower inward", "upper mesial", "class-iii-elastics", "extraction")
_WIDER = ("widening", "back outward", "expansion-screw", "elastics")
_NARROWER = ("narrowing", "back inward", "elastics")

ANSWERS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "deep-bite": (*_OPENING, "overbite", "level", "curve-of-spee", "bite-plane"),
        "open-bite-anterior": (*_CLOSING, "overbite", "bite-block", "elastics"),
        "open-bite-posterior": ("back extrusion", "posterior-open-bite", "elastics"),
        "crowding": (*_ROOM, "crowding"),
        "spacing": ("close", "narrowing", "incisor-retraction", "mesial-movement", "inward", "spacing"),
        "class-ii": (*_BACKWARD, "upper distal-movement", "upper incisor-retraction", "relation", "overjet"),
        "class-iii": (*_FORWARD, "lower distal-movement", "lower incisor-retraction", "relation", "overjet"),
        "increased-overjet": (
            *("upper incisor-retraction", "upper inward", "upper crown-in", "lower incisor-advance"),
            *("lower outward", "class-ii-elastics", "overjet"),
        ),
        "reverse-overjet": (
            *("lower incisor-retraction", "lower inward", "lower crown-in", "upper incisor-advance"),
            *("upper outward", "class-iii-elastics", "overjet"),
        ),
        "crossbite-anterior": ("upper outward", "upper incisor-advance", "lower inward", "overjet", "bite-plane"),
        "crossbite-posterior": (*_WIDER, *_NARROWER, "width", "transverse-overlap"),
        "scissors-bite": (*_WIDER, *_NARROWER, "width", "transverse-overlap"),
        "midline-deviation": ("midline", "front mesial", "front distal", "enamel-reduction", "elastics"),
        "displaced-teeth": ("outward", "inward"),
        "rotated-teeth": ("rotation",),
        "deep-curve-of-spee": ("level", "curve-of-spee", "lower front intrusion", "lower back extrusion"),
        "narrow-arch": (*_WIDER, "width"),
        "protrusive-incisors": (
            "incisor-retraction",
            "front inward",
            "front crown-in",
            "enamel-reduction",
            "extraction",
        ),
        "retroclined-incisors": ("incisor-advance", "front outward", "front crown-out"),
        "excess-gingival-display": ("upper front intrusion", "gingival-display", "incisor-display"),
        "low-incisor-display": ("upper front extrusion", "incisor-display"),
        "tooth-size-discrepancy": ("enamel-reduction", "leave", "build-up"),
    }
)
"""By problem, what answers it. Words are matched singly: ``back distal`` needs both in what an instruction does."""

_MEASURES = (
    *("overbite", "overjet", "midline", "relation", "width", "transverse-overlap", "curve-of-spee", "crowding"),
    *("spacing", "gingival-display", "incisor-display"),
)
_FORMS = (("close", "close"), ("close_arch", "close"), ("leave", "leave"), ("level", "level"))


def answers(problem: str, place: Place) -> bool:
    """Whether an instruction does what would answer a problem, with one of its teeth at least."""
    return any(set(wanted.split()) <= done for wanted in ANSWERS.get(problem, ()) for done in deeds(place))


def deeds(place: Place) -> Iterator[frozenset[str]]:
    """What an instruction does, as sets of words: for a movement one a tooth, with its arch and where it stands."""
    part = place.part
    if isinstance(part, Movement | AnyMovement):
        sense = _SENSES.get(MOTIONS[part.motion], "")
        yield from (_tooth(tooth, sense) for tooth in part.teeth)
    elif isinstance(part, VerticalMovement):
        yield from (_tooth(tooth, part.use) for tooth in part.teeth)
    else:
        words = (place.said("use"), place.said("arch"), place.said("part"), place.said("auxiliary"), _step(part))
        forms = (word for member, word in _FORMS if place.said(member))
        measure = str(place.said("measure") or "")
        measures = (name for name in _MEASURES if name in measure)
        yield frozenset(str(word) for word in (*words, *forms, *measures) if word)


def _tooth(tooth: str, sense: str) -> frozenset[str]:
    where = "front" if is_incisor(tooth) or is_canine(tooth) else "back"
    return frozenset((arch_of(tooth), where, sense))


def _step(part: Part) -> str:
    return "build-up" if str(getattr(part, "step", "")).startswith("build-up") else ""
