"""Every text for people in an order, with its place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.rules.chart import Chart

_MEMBERS = ("words", "method", "text")


class Text(NamedTuple):
    """A text for people; ``place``: the part it belongs to, None for the name of a record."""

    pointer: str
    text: str
    place: Place | None

    @property
    def owner(self) -> str:
        """The id of the clause it belongs to, "" if none."""
        return self.place.owner if self.place else ""


def texts(chart: Chart) -> Iterator[Text]:
    """Words, methods, notes and names of records. Extensions are not read."""
    for place in chart.whole.places:
        for member in _MEMBERS:
            said = place.said(member)
            if isinstance(said, str):
                yield Text(f"{place.pointer}/{member}", said, place)
    yield from names(chart)


def names(chart: Chart) -> Iterator[Text]:
    """The names of records."""
    for number, record in enumerate(chart.rx.records or ()):
        if record.name is not None:
            yield Text(f"/records/{number}/name", record.name, None)
