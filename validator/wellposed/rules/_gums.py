"""What is stated of the gums at the lower incisors, told beside what moves them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from wellposed.rules._declare import Told, said, told
from wellposed.rules._inclining import teeth_in
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import LOWER

THIN, RECESSION = "thin-gingiva", "gingival-recession"
_UNSTATED, _SOUND = "not-stated", "not-stated-to-be-thin-or-receded"


def described(chart: Chart) -> list[str]:
    """The conditions of the gums at the lower incisors, in words with hyphens; never empty."""
    if chart.rx.conditions is None:
        return [_UNSTATED]
    teeth = set(teeth_in(chart, LOWER))
    places = chart.condition(THIN, RECESSION)
    here = [p.said("condition") for p in places if p.said("teeth") is None or teeth & set(p.said("teeth"))]
    return list(dict.fromkeys(here)) or [_SOUND]


def sound(chart: Chart) -> bool:
    """Whether the conditions are stated, and neither thin gums nor recession at the lower incisors is among them."""
    return described(chart) == [_SOUND]


def about(chart: Chart, clauses: Iterable[str], *ids: str, **facts: Any) -> Told:
    """A finding on these clauses, at the first of them, with what is stated of the gums."""
    places = [place for name in clauses if (place := chart.place(name))]
    gums = described(chart)
    missing = ("thickness-of-the-gums",) if _UNSTATED in gums else ()
    asked = [said(place.part) for place in places]
    owners = (place.owner for place in places)
    return told(places[0].pointer, *ids, *owners, asked=asked, gums=gums, missing=missing, **facts)
