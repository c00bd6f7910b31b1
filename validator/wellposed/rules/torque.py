"""Torque as it is written: its reference, a change or an end, and whether it goes with the travel beside it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._inclining import PER_MM_MOST, per_mm
from wellposed.rules.chart import Chart, Move
from wellposed.vocabulary.teeth import ARCHES, arch_of, is_molar, is_primary, position

TORQUE = "normal.crown-torque"
FACTOR = "caution.angle-to-travel"
_KINDS = 2
_THIRD_MOLAR = 8

_TOOTH = r"(?:[1-4][1-8]|[5-8][1-5])"
_FILLER = (
    rf"(?:[\s,:=()+-]|\b(?:of|to|at|is|are|be|the|an?|and|for|should|about|value|target|end|upper|lower|front|on|all"
    rf"|incisors?|centrals?|laterals?|canines?|teeth|tooth|{_TOOTH}(?!\s*(?:°|deg)))\b){{0,24}}"
)
_ANGLE = rf"(?:\d{{1,3}}(?:\.\d+)?\s*(?:°|deg)|(?!{_TOOTH}\b)\d{{1,3}}(?:\.\d+)?\b(?!\s*(?:mm|%|stages?|aligners?)))"
_TORQUE = re.compile(
    rf"\b(?:torque|inclination)\b{_FILLER}(?<!\d){_ANGLE}|(?<!\d){_ANGLE}(?:rees)?\s*(?:of\s+)?(?:torque|inclination)\b",
    re.IGNORECASE,
)
_REFERENCE = re.compile(
    r"\b(?:palatal|palate|maxillary|mandibular|sella|nasion|s-?n|n-?[ab]|frankfort|occlusal|vertical|crown|root"
    r"|labial(?:ly)?|lingual(?:ly)?|buccal(?:ly)?|palatally|more|less|further|additional|extra|another|by|change"
    r"|increase[ds]?|decrease[ds]?|add|reduce)\b",
    re.IGNORECASE,
)


class Pair(NamedTuple):
    """Travel and torque ordered of one tooth, and what tipping turns it by with that travel, deg, least and most."""

    travel: Move
    torque: Move
    least: float
    most: float


@rule(
    "torque-without-reference",
    Severity.ASK,
    title="A torque is given as a number in words, without what it is measured to.",
    says="Words under {where}: an inclination is given as a number, and not to which plane, or as which change.",
    do="Say it as a clause: a change as a movement, an end as a goal on an angle to a named plane.",
    change="A goal or a movement in place of the words settles it.",
)
def torque_without_reference(chart: Chart) -> Iterator[Told]:
    """No words give a torque or an inclination as a number without its plane, or the sense of its change.

    A torque of 7, an inclination of 22 to a line of the face and one of 109 to the palate can be one and the same
    tooth. Words do not bind, and each reader takes the plane that is familiar.

    Evidence: the crown torque of upper incisors lies 16 degrees below their cephalometric inclination, published.

    Passes: {"problems": [{"id": "p1", "problem": "other", "words": "upper incisors at 100 to the palatal plane"}]}
    Fails: {"problems": [{"id": "p1", "problem": "other", "words": "torque of upper incisors 7 degrees"}]}
    """
    for place in chart.whole.places:
        for member in ("words", "text"):
            words = place.said(member)
            if isinstance(words, str) and _TORQUE.search(words) and not _REFERENCE.search(words):
                yield told(f"{place.pointer}/{member}", place.owner, where=place.section)


@rule(
    "torque-looks-like-an-end",
    Severity.ASK,
    title="Torque is ordered by amounts that are the usual ends, not changes.",
    says="{asked:clause}: a movement is a change, and these amounts are the design values of these crowns.",
    do="Say whether the teeth are to change by these amounts or to end at them.",
    change="Other amounts, or a goal on a cephalometric angle for an end, settle it.",
    figures=(TORQUE,),
)
def torque_looks_like_an_end(chart: Chart) -> Iterator[Told]:
    """No two kinds of teeth of an arch are torqued by just the crown torque of the common design values.

    A movement is a change from today. Seven degrees for the centrals and three for the laterals is where many want
    them to end; ordered as a change, the teeth overshoot by what they have already.

    Evidence: design values, recalled; one kind of tooth alone may meet its value by chance and is not spoken of.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal-root-torque",
                            "at_least": 7, "unit": "deg"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal-root-torque",
                           "at_least": 7, "unit": "deg"},
                          {"id": "m2", "strength": "must", "teeth": ["12", "22"], "motion": "palatal-root-torque",
                           "at_least": 3, "unit": "deg"}]}
    """
    for arch in ARCHES:
        alike = [m for m in chart.moved("torque") if arch_of(m.tooth) == arch and _is_design(chart, m)]
        if len({position(move.tooth) for move in alike}) >= _KINDS:
            places = tuple(dict.fromkeys(move.place for move in alike))
            asked = [said(place.part) for place in places]
            figures = tuple(dict.fromkeys(f"{TORQUE}.{move.tooth}" for move in alike))
            yield told(places[0].pointer, *(p.owner for p in places), asked=asked, figures=figures)


@rule(
    "angle-and-travel-differ",
    Severity.CAUTION,
    title="The torque and the travel ordered of one tooth do not go together as tipping.",
    says="{asked:clause}: a tooth that tips turns {least:deg} to {most:deg} with that travel.",
    do="Say whether root movement is meant, or which of the two amounts holds.",
    change="An angle within a factor of {factor} of that settles it, or a torque that is only bounded from above.",
    figures=(FACTOR, PER_MM_MOST),
)
def angle_and_travel_differ(chart: Chart) -> Iterator[Told]:
    """The torque and the travel in or out that are ordered of one tooth differ by no more than a factor of 2 from what
    tipping gives.

    One of two numbers that disagree is often a slip, and a laboratory that follows both moves the root far.

    Evidence: geometry of average teeth, between tipping about the apex and about the centre of resistance. Torque that
    is only bounded from above is taken as a wish for bodily movement. Molars are left out.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial", "at_least": 2,
                            "unit": "mm"},
                           {"id": "m2", "strength": "must", "teeth": ["11"], "motion": "labial-crown-torque",
                            "at_least": 6, "unit": "deg"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial", "at_least": 1,
                           "unit": "mm"},
                          {"id": "m2", "strength": "must", "teeth": ["11"], "motion": "labial-crown-torque",
                           "at_least": 12, "unit": "deg"}]}
    """
    told_of: set[tuple[str, str]] = set()
    for pair in _paired(chart):
        owners = (pair.travel.place.owner, pair.torque.place.owner)
        if owners not in told_of and _apart(chart, pair):
            told_of.add(owners)
            asked = [said(pair.travel.place.part), said(pair.torque.place.part)]
            facts = {
                "least": round(pair.least, 1),
                "most": round(pair.most, 1),
                "factor": chart.limit(FACTOR),
                "teeth": [pair.travel.tooth],
            }
            yield told(pair.torque.place.pointer, *owners, asked=asked, figures=(FACTOR, PER_MM_MOST), **facts)


def _is_design(chart: Chart, move: Move) -> bool:
    """Whether a torque is ordered as just the design value of its crown."""
    if is_primary(move.tooth) or not position(move.tooth) < _THIRD_MOLAR or len({move.least, move.most} - {None}) != 1:
        return False
    return move.reach > 0 and move.sign * move.reach == chart.limit(f"{TORQUE}.{move.tooth}")


def _paired(chart: Chart) -> Iterator[Pair]:
    """Teeth in front of the molars with both a torque and a travel in or out."""
    for torque in chart.moved("torque"):
        if is_primary(torque.tooth) or is_molar(torque.tooth) or not torque.sure:
            continue
        for travel in chart.moved("out", teeth=(torque.tooth,)):
            least, most = (per_mm(chart, travel.tooth) * travel.sure, chart.limit(PER_MM_MOST) * travel.reach)
            yield Pair(travel, torque, least, most)


def _apart(chart: Chart, pair: Pair) -> bool:
    """Whether the torque is beyond the factor from what tipping gives, or in the other sense."""
    if pair.torque.sign != pair.travel.sign:
        return pair.travel.sure > 0
    factor = chart.limit(FACTOR)
    return pair.torque.reach * factor < pair.least or pair.torque.sure > pair.most * factor


RULES = (torque_without_reference, torque_looks_like_an_end, angle_and_travel_differ)
