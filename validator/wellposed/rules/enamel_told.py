"""Enamel reduction told in words, and reduction that all room of an arch rests on."""

from __future__ import annotations

import re
from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.derive.space import Budget, budget
from wellposed.findings import Severity
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._room import REDUCTION, ids_of, needed
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import ARCHES

DONE = "achieved.reduction"
OPEN = "space.remainder-strong"
_ALL = 100
_SURFACE = re.compile(
    r"\b(?:per|each|every|a|both|one)\s+(?:tooth\s+|proximal\s+)?(?:surfaces?|sides?)\b", re.IGNORECASE
)
_ENAMEL = re.compile(
    r"\b(?:enamel|IPR|ARS|reduction|reduce|strip(?:ping)?|interproximal|slenderi[sz]\w*)\b", re.IGNORECASE
)


@rule(
    "reduction-told-per-surface",
    Severity.ASK,
    title="Words speak of enamel by the surface; the clauses count both teeth of a contact together.",
    says="The words here speak of enamel by the surface or side, which is half of what a contact is: {asked:clause}.",
    do="Say in the clause what goes at a contact, both teeth together, and leave the amount out of the words.",
    change="With words that name no surface or side, or no enamel, this no longer applies.",
)
def reduction_told_per_surface(chart: Chart) -> Iterator[Told]:
    """No note or other words speak of enamel by the surface or side where a clause allows its reduction.

    Amounts of the format are per contact. Whoever reads the one for the other takes twice the enamel, or half.

    Evidence: common experience, without a source. Only some common English words are known.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "in_all": 0.4, "unit": "mm"}],
             "notes": [{"text": "Enamel: discs only, polished afterwards."}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "in_all": 0.4, "unit": "mm"}],
            "notes": [{"text": "Enamel: 0.2 per surface."}]}
    """
    allowed = list(chart.allowed("enamel-reduction"))
    asked = [said(place.part) for place in allowed]
    for place in chart.whole.places if allowed else ():
        for member in ("text", "words"):
            words = place.said(member)
            if isinstance(words, str) and _SURFACE.search(words) and _ENAMEL.search(words):
                yield told(f"{place.pointer}/{member}", *(one.owner for one in allowed), asked=asked)


@rule(
    "reduction-falls-short",
    Severity.NOTE,
    title="All room of a crowded arch is to come from enamel reduction, of which less is usually done than planned.",
    says="Of the {need:mm} the {arch} arch needs, all is to come from enamel ({amount:mm}): {asked:clause}. In a study"
    " {share:percent} of what was planned was done.",
    do="Nothing, if what is taken is measured at the visit.",
    change="With another means of room in this arch, or less need of it, this no longer applies.",
    figures=(DONE, OPEN),
)
def reduction_falls_short(chart: Chart) -> Iterator[Told]:
    """Names an arch whose room may come from enamel reduction alone, where the usual shortfall would leave it crowded.

    Then no other means makes up for what was not taken, and the last aligners do not seat.

    Evidence: one study of removable aligners: 45 percent of the planned reduction was done in the upper and 37 in the
    lower arch, with a wide spread. How much must be lacking before it is said is common practice. Of a reduction that
    is ordered `reduction-partly-done` speaks.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 3.5, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 3.5, "unit": "mm"},
                       {"id": "a2", "use": "incisor-advance", "arch": "lower", "up_to": 1, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 3.5, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 3.5, "unit": "mm"}]}
    """
    for arch in ARCHES:
        room, key = budget(chart.mouth, arch), f"{DONE}.{arch}"
        need, places = needed(room), _enamel_alone(chart, room)
        planned = sum(line.amount or 0.0 for line in room.means)
        if need and places and above(need - planned * chart.limit(key) / _ALL, chart.limit(OPEN)):
            facts = {"arch": arch, "need": need, "amount": planned, "share": chart.limit(key)}
            asked = [said(at.part) for at in places]
            yield told(places[0].pointer, *ids_of(chart, room), asked=asked, **facts, figures=(key, OPEN))


def _enamel_alone(chart: Chart, room: Budget) -> list[Place]:
    """The allowances of enamel in an arch; none where one is an order, or another means makes room too, or may."""
    others = any(line.amount != 0 for line in room.means if line.what != REDUCTION)
    places = [at for line in room.means if line.what == REDUCTION for one in line.from_ if (at := chart.place(one))]
    return [] if others or any(at.said("at_least") for at in places) else places


RULES = (reduction_told_per_surface, reduction_falls_short)
