"""Enamel reduction beside restored teeth: what the one surface of enamel there may have to give."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule
from wellposed.rules._enamel import REPLACED, Taken, at_contacts, flat, named, part_of, stated, states_of
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import teeth_of

RESTORED = ("crown", "veneer", "bridge-abutment", "large-filling")
SURFACE = "caution.reduction-per-surface"


def _beside_restored(chart: Chart, one: Taken) -> dict[str, list[str]]:
    """Contacts with a restored tooth, none replaced, and the teeth there that have their own surface."""
    found = stated(chart, one, *RESTORED)
    replaced = stated(chart, one, *REPLACED)
    return {name: [t for t in teeth_of(name) if t not in found[name]] for name in found if name not in replaced}


def _heavy(chart: Chart, one: Taken, own: dict[str, list[str]]) -> dict[str, str]:
    """Contacts at which one surface alone would lose more than is advised, and the key of the advice."""
    keys = {name: f"{SURFACE}.{part_of(*teeth)}" for name, teeth in own.items() if len(teeth) == 1}
    return {name: key for name, key in keys.items() if above(one.share, chart.limit(key))}


@rule(
    "reduction-on-one-surface",
    Severity.CAUTION,
    title="Beside a restored tooth one surface alone would give more enamel than is advised.",
    says="{asked:clause}: at {contacts:contacts} one tooth is restored ({states:words}), and {amount:mm} would come"
    " from {teeth:teeth}; {limit:mm} a surface is advised.",
    do="Say how much may come from the restoration, or lessen the amount there.",
    change="At {limit:mm} or less, or taken from the restoration too, this no longer applies.",
    figures=(SURFACE,),
)
def reduction_on_one_surface(chart: Chart) -> Iterator[Told]:
    """Beside a crown, a veneer or a large filling no more is taken than one surface of enamel may lose.

    Amounts count both teeth of a contact; where one is porcelain or filling, the other may have to give it all.

    Evidence: advice per surface of Tuverson, Fillion and Sheridan, recalled. One tomogram study would ask from 0.2 on.

    Passes: {"teeth": {"upper": ["12", "11", "21"], "lower": ["31", "41"],
                       "particulars": [{"tooth": "11", "states": ["veneer"]}]},
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"teeth": {"upper": ["12", "11", "21"], "lower": ["31", "41"],
                      "particulars": [{"tooth": "11", "states": ["veneer"]}]},
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "per_contact": 0.5,
                       "unit": "mm"}]}
    """
    for one in named(chart):
        own = _beside_restored(chart, one)
        if keys := _heavy(chart, one, own):
            limits = sorted({chart.limit(key) for key in keys.values()})
            teeth = flat({name: own[name] for name in keys})
            states = states_of(chart, (t for name in keys for t in teeth_of(name)), RESTORED)
            facts = {"teeth": teeth, "states": states, "amount": one.share, "limit": limits}
            yield at_contacts(one, keys, **facts, figures=tuple(dict.fromkeys(keys.values())))


@rule(
    "reduction-at-a-restoration",
    Severity.NOTE,
    title="Enamel is to be taken at a restored tooth.",
    says="{asked:clause}: restored is {teeth:teeth} ({states:words}), so that what is taken may not be enamel.",
    do="Nothing, if the amount may come from the other tooth or from the restoration.",
    change="Without {contacts:contacts}, or with the state of the tooth corrected, this no longer applies.",
)
def reduction_at_a_restoration(chart: Chart) -> Iterator[Told]:
    """Names contacts with a crown, a veneer, a bridge's abutment or a large filling, at which enamel is to be taken.

    Porcelain and filling are polished in another way, and whoever reduces should know it before the visit.

    Evidence: common practice, without a source.

    Passes: {"teeth": {"upper": ["13", "12", "11", "21"], "lower": ["31", "41"],
                       "particulars": [{"tooth": "13", "states": ["crown"]}]},
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "per_contact": 0.2,
                        "unit": "mm"}]}
    Fails: {"teeth": {"upper": ["13", "12", "11", "21"], "lower": ["31", "41"],
                      "particulars": [{"tooth": "13", "states": ["crown"]}]},
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["13-12"], "per_contact": 0.2,
                       "unit": "mm"}]}
    """
    for one in named(chart):
        own = _beside_restored(chart, one)
        light = [name for name in own if name not in _heavy(chart, one, own)]
        if light:
            teeth = [t for t in flat(stated(chart, one, *RESTORED)) if any(t in teeth_of(name) for name in light)]
            yield at_contacts(one, light, teeth=teeth, states=states_of(chart, teeth, RESTORED))


RULES = (reduction_on_one_surface, reduction_at_a_restoration)
