"""What ties movements to one another, and what holds a tooth still."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.frame import Frame
from wellposed.kinematics.opened import Opened, Source
from wellposed.kinematics.openings import Opening, Sensed, incisors, sensed
from wellposed.kinematics.rows import Key, Kind, Terms
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import ARCHES


class Tie(NamedTuple):
    """Terms that stay at or below 0 while this sense of the movement behind them is silent."""

    silent: Sensed
    terms: Terms


def hold_still(frame: Frame, key: Key, kind: Kind, tooth: str) -> None:
    """A tooth that neither moves nor is reduced."""
    for (name, _), column in frame.columns.items():
        if name == tooth:
            frame.system.bind_column(key, kind, column, 0.0, 0.0)
    if tooth in frame.travels:
        frame.system.bind_column(key, kind, frame.travels[tooth], 0.0, 0.0)
    for contact, columns in frame.contacts.items():
        if tooth in teeth_of(contact):
            frame.system.bind_column(key, kind, columns.reduction, high=0.0)


def alike(frame: Frame, teeth: list[str]) -> Iterator[Terms]:
    """The difference in ``out`` of every two of these teeth."""
    for number, first in enumerate(teeth):
        for second in teeth[number + 1 :]:
            yield {frame.columns[first, "out"]: 1.0, frame.columns[second, "out"]: -1.0}


def in_proportion(frame: Frame, one: Opening | Source, at: Sensed) -> Terms | None:
    """A sensed variable less its share of the movement that brings it, at most 0; None where either has no column."""
    column, cause = frame.column(at.tooth, at.variable), frame.column(at.tooth, one.by)
    return None if column is None or cause is None else {column: float(at.sign), cause: -one.per}


def other_way(one: Opening | Source, at: Sensed) -> Sensed:
    """The sense of the movement behind it that does not bring it."""
    return sensed(at.tooth, one.by, -1 if one.per > 0 else 1)


def tie_alike(frame: Frame, opened: Opened) -> None:
    """Incisors moved as a group move alike; not where anything names them singly."""
    apart = norms.value("kinematics.incisors-alike")
    for arch in ARCHES:
        teeth = [tooth for tooth in incisors(frame.mouth, arch) if tooth not in frame.mouth.locked]
        sources = [one for t in teeth for sign in (1, -1) for one in opened.sources(sensed(t, "out", sign))]
        if sources and all(one.alike for one in sources):
            for terms in alike(frame, teeth):
                frame.system.row(terms, -apart, apart)


def ties(frame: Frame, opened: Opened) -> Iterator[Tie]:
    """What comes only with another movement comes in proportion to it, where that has one way to go."""
    yield from _to_cause(frame, opened)
    yield from _swings(frame, opened)


def _to_cause(frame: Frame, opened: Opened) -> Iterator[Tie]:
    for at, sources in opened.table.items():
        if all(one.per for one in sources) and len({(one.by, one.per > 0) for one in sources}) == 1:
            most = max(sources, key=_share)
            terms = in_proportion(frame, most, at)
            other = other_way(most, at)
            if terms is not None and not opened.sources(other):
                yield Tie(other, terms)


def _share(one: Source) -> float:
    return abs(one.per)


def _swings(frame: Frame, opened: Opened) -> Iterator[Tie]:
    """A molar moved sideways one way slides no further than that brings."""
    for tooth, (swing, rate) in frame.swings.items():
        for sign in (1, -1):
            other = sensed(tooth, "out", -sign)
            if opened.sources(sensed(tooth, "out", sign)) and not opened.sources(other):
                yield Tie(other, {swing: -float(sign), frame.columns[tooth, "out"]: -sign * rate})
