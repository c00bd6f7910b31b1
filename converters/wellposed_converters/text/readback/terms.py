"""The words of a read-back and the terms they stand for: the tables it is written from, turned about."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from types import MappingProxyType
from typing import Any, Final, get_args

from wellposed.model.mouth import Treat
from wellposed.render.readback.making import REASONS, REST, RETAINERS, STAGED_LISTS
from wellposed.render.readback.means import TRAVEL, WIDTH
from wellposed.render.readback.mouth import PARTICULARS
from wellposed.render.readback.senses import BOTH_WAYS, ONE_WAY, motion_noun, moved
from wellposed.render.readback.spelling import BRITISH, spelt
from wellposed.render.readback.terms import MEANS, gloss, plain
from wellposed.render.readback.unbound import SECTIONS
from wellposed.render.readback.words import tooth
from wellposed.vocabulary import terms as vocabulary
from wellposed.vocabulary.measures import MEASURE_KINDS, TOOTH_MEASURE_KINDS
from wellposed.vocabulary.motions import MOTIONS, Motion
from wellposed.vocabulary.teeth import ARCHES, SIDES

NONE: Final = MappingProxyType(
    {**{words: name for name, (_, words) in SECTIONS.items()}, PARTICULARS: "particulars"}
    | {words: name for name, words in STAGED_LISTS.items()}
)
"""What can be stated as none, or be left out, in words."""


@cache
def terms() -> Mapping[str, Mapping[str, Any]]:
    """Name of a terminal to its words, in British usage, to the term of the format."""
    told = {name: _turned(table) for name, table in _tables().items()}
    before, after = zip(*_around().values(), strict=True)
    told |= {"BEFORE": {words: words for words in before}, "AFTER": {words: words for words in after if words}}
    return MappingProxyType(told | {"SECTION": {_british(words): name for words, name in NONE.items()}})


@cache
def motion_of(before: str, after: str) -> Motion | None:
    """The motion whose verb stands around the teeth in these words."""
    return next((motion for motion, around in _around().items() if around == (before, after)), None)


def _around() -> dict[Motion, tuple[str, str]]:
    parted = {motion: _british(moved(motion, ["11"])).partition(tooth("11")) for motion in MOTIONS}
    return {motion: (before, after) for motion, (before, _, after) in parted.items()}


def _tables() -> dict[str, dict[Any, str]]:
    """Name of a terminal to term to words."""
    some = {
        "SLIDE": ("distal-movement", "mesial-movement"),
        "UP_DOWN": ("intrusion", "extrusion"),
        "GAP": ("posterior-open-bite",),
        "CLASS_ELASTICS": ("class-ii-elastics", "class-iii-elastics"),
    }
    return {
        **{name: {means: MEANS[means] for means in listed} for name, listed in some.items()},
        **{name: {one: gloss(one) for one in get_args(listed)} for name, listed in _GLOSSED.items()},
        **{name: {one: f", {gloss(one)}" for one in get_args(listed)} for name, listed in _JOINED.items()},
        "IN_ARCH": {arch: f", {arch} arch" for arch in ARCHES},
        "ON_SIDE": {side: f", {side} side" for side in SIDES},
        **{name: {one: plain(one) for one in get_args(listed)} for name, listed in _PLAIN.items()},
        "GRADE": {grade: f"{plain(grade)} " for grade in get_args(vocabulary.Grade)},
        "MEANS": dict(MEANS),
        "MEASURE": {name: kind.words for name, kind in MEASURE_KINDS.items()},
        "TOOTH_MEASURE": {name: kind.words for name, kind in TOOTH_MEASURE_KINDS.items()},
        "MOTION": {motion: motion_noun(motion) for motion in MOTIONS},
        "VARIABLE": dict(BOTH_WAYS),
        "ONE_WAY": dict(ONE_WAY),
        "TRAVEL": dict(TRAVEL),
        "WIDTH": dict(WIDTH),
        "REST": dict(REST),
        "REASON": dict(REASONS),
        "RETAINER": dict(RETAINERS),
    }


_GLOSSED: Final[Mapping[str, Any]] = {
    "PROBLEM": vocabulary.Problem,
    "GROUND": vocabulary.Ground,
    "PATTERN": vocabulary.ElasticPattern,
    "AUXILIARY": vocabulary.Auxiliary,
    "PART": vocabulary.AppliancePart,
    "WEAR": vocabulary.Wear,
    "TRIMMING": vocabulary.Trimming,
    "STEP": vocabulary.Step,
}
_JOINED: Final[Mapping[str, Any]] = {"JAW": vocabulary.JawPosition, "SHAPE": vocabulary.AttachmentShape}
"""Terms that may follow teeth or contacts: with their comma, which else could be one of that list."""
_PLAIN: Final[Mapping[str, Any]] = {
    "STATE": vocabulary.ToothState,
    "CONDITION": vocabulary.Condition,
    "WANTED": get_args(Treat.model_fields["passive_appliance"].annotation)[0],
}


def _turned(table: Mapping[Any, str]) -> dict[str, Any]:
    turned = {_british(words): term for term, words in table.items()}
    if len(turned) < len(table):
        raise AssertionError("two terms are told in the same words")
    return turned


def _british(words: str) -> str:
    return spelt(words, BRITISH)


def alternatives(words: Iterable[str]) -> str:
    """The words as the alternatives of a terminal."""
    return " | ".join(f'"{one}"' for one in words)
