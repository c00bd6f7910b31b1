"""How much enamel may be taken at one contact, and whether the amounts of a clause agree."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.kinematics.limits import region
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._enamel import Taken, taken, told_by_sum
from wellposed.rules.chart import Chart

ADVICE = "caution.reduction-per-contact"
PRACTICE = "practice.reduction-per-contact"


class _Beyond(NamedTuple):
    """Contacts at which more may go than a ceiling, and the keys of the ceilings passed."""

    contacts: list[str]
    keys: tuple[str, ...]


def _beyond(chart: Chart, one: Taken, head: str) -> _Beyond:
    keys = {name: f"{head}.{region(name)}" for name in one.contacts}
    passed = [name for name, key in keys.items() if one.each is not None and above(one.each, chart.limit(key))]
    return _Beyond(passed, tuple(dict.fromkeys(keys[name] for name in passed)))


def _told(chart: Chart, one: Taken, beyond: _Beyond) -> Told:
    limits = sorted({chart.limit(key) for key in beyond.keys})
    facts = {"asked": said(one.place.part), "contacts": beyond.contacts, "amount": one.each, "limit": limits}
    return told(one.place.pointer, one.place.owner, **facts, figures=beyond.keys)


@rule(
    "reduction-per-contact-beyond-advice",
    Severity.CAUTION,
    title="More enamel may be taken at a contact than the lowest well-known advice there.",
    says="{asked:clause}: {amount:mm} at {contacts:contacts} is above {limit:mm}, the lowest well-known advice there.",
    do="Look at the enamel of these teeth, and confirm the amount or lessen it.",
    change="At {limit:mm} a contact or less, both teeth together, this no longer applies.",
    figures=(ADVICE,),
)
def reduction_per_contact_beyond_advice(chart: Chart) -> Iterator[Told]:
    """No more enamel may go at one contact than the lowest of the well-known advices for its region, both teeth
    together.

    Enamel at a contact is thin, thinnest at the lower incisors, and what is taken does not come back.

    Evidence: per-surface advice of Hudson, Tuverson and Fillion is recalled, 0.5 in front was read in Sarig et al.
    2015; schools differ by half as much again, and one tomogram study would stop at 0.2 a surface. The lowest
    well-known figure is the default.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41", "41-31", "31-32"],
                        "per_contact": 0.4, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41", "41-31", "31-32"],
                       "per_contact": 0.5, "unit": "mm"}]}
    """
    summed = told_by_sum(chart)
    for one in taken(chart):
        beyond = _beyond(chart, one, ADVICE)
        if beyond.contacts and not _beyond(chart, one, PRACTICE).contacts and one.place.owner not in summed:
            yield _told(chart, one, beyond)


@rule(
    "reduction-per-contact-beyond-practice",
    Severity.ASK,
    title="More enamel may be taken at a contact than any well-known advice allows.",
    says="{asked:clause}: {amount:mm} at {contacts:contacts} is above {limit:mm}, the most that is advised there.",
    do="Say that it is meant, and on what measured thickness it rests; or lessen it.",
    change="At {limit:mm} a contact or less, both teeth together, this no longer applies.",
    figures=(PRACTICE,),
)
def reduction_per_contact_beyond_practice(chart: Chart) -> Iterator[Told]:
    """No more enamel may go at one contact than the highest of the well-known advices for its region.

    It comes to more than half the enamel of an ordinary surface, or reaches dentine where the surface is thin.

    Evidence: half the enamel is a rule of Sheridan, recalled; thickness per surface, 0.63 mm at incisors to 1.48 at
    first molars, was read in Sarig et al. 2015. Some guides are recalled to allow 0.75 at the upper front.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["14-15"], "per_contact": 0.8,
                        "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "per_contact": 0.8,
                       "unit": "mm"}]}
    """
    for one in taken(chart):
        beyond = _beyond(chart, one, PRACTICE)
        if beyond.contacts:
            yield _told(chart, one, beyond)


@rule(
    "reduction-total-does-not-add-up",
    Severity.CAUTION,
    title="The enamel to be taken in all is more than its contacts add up to.",
    says="{asked:clause}: {count} contacts come to {amount:mm}, the clause says {total:mm} in all.",
    do="Say which holds, and whether the amount was meant for a contact or for one surface of it.",
    change="With a sum of {amount:mm} or less, or a larger amount per contact, this no longer applies.",
)
def reduction_total_does_not_add_up(chart: Chart) -> Iterator[Told]:
    """The sum a reduction may come to is not more than its amount per contact times its contacts.

    The smaller of the two binds, so that part of the sum can never be taken. A sum twice as large is often an amount
    per surface that was written down per contact.

    Evidence: arithmetic; that writers mix surface and contact is common experience without a source.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41", "41-31"], "per_contact": 0.3,
                        "in_all": 0.6, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41", "41-31"], "per_contact": 0.3,
                       "in_all": 1.2, "unit": "mm"}]}
    """
    for one in taken(chart):
        total = one.place.said("in_all")
        if one.each is not None and total is not None and above(total, one.whole):
            facts = {"count": len(one.contacts), "amount": one.whole, "total": total}
            yield told(one.place.pointer, one.place.owner, asked=said(one.place.part), **facts)


RULES = (
    *(reduction_per_contact_beyond_advice, reduction_per_contact_beyond_practice),
    reduction_total_does_not_add_up,
)
