"""What ties movements to one another, and what holds a tooth still."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed import norms
from wellposed.kinematics.frame import Frame
from wellposed.kinematics.opened import Opened
from wellposed.kinematics.openings import Sensed, incisors, sensed
from wellposed.kinematics.rows import Key, Kind, Terms
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import ARCHES


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


def in_proportion(frame: Frame, at: Sensed, column: int, per: float) -> Terms:
    """A sensed variable less its share of the tooth's travel: at most 0."""
    return {column: float(at.sign), frame.columns[at.tooth, "out"]: -per}


def tie_alike(frame: Frame, opened: Opened) -> None:
    """Incisors moved as a group move alike; not where anything names them singly."""
    apart = norms.value("kinematics.incisors-alike")
    for arch in ARCHES:
        teeth = [tooth for tooth in incisors(frame.mouth, arch) if tooth not in frame.mouth.locked]
        sources = [one for t in teeth for sign in (1, -1) for one in opened.sources(sensed(t, "out", sign))]
        if sources and all(one.alike for one in sources):
            for terms in alike(frame, teeth):
                frame.system.row(terms, -apart, apart)


def tie_to_travel(frame: Frame, opened: Opened) -> None:
    """What comes only with an incisor's travel comes in proportion to it, where the travel has one way to go."""
    for at, sources in opened.table.items():
        per = {one.per for one in sources}
        if 0.0 in per or len({factor > 0 for factor in per}) > 1:
            continue
        way = 1 if max(per) > 0 else -1
        column = frame.column(at.tooth, at.variable)
        if column is not None and not opened.sources(sensed(at.tooth, "out", -way)):
            terms = in_proportion(frame, at, column, max(per, key=abs))
            frame.system.row(terms, high=0.0)
