"""How much enamel may be taken in all: at the contacts of one clause, in the front, the back, the whole of an arch."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.kinematics.limits import region
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._enamel import ARCH, PART, Sum, sums, taken, told_by_sum
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import ARCHES

ADVICE = "caution.reduction-per-contact"


@rule(
    "reduction-sum-beyond-contacts",
    Severity.CAUTION,
    title="The enamel that may be taken in all is more than its contacts bear by the lowest advice.",
    says="{asked:clause}: however it is shared, {amount:mm} at {count} contacts is above the {limit:mm} they bear.",
    do="Lessen the sum, name more contacts, or state an amount per contact.",
    change="At {limit:mm} in all or less, or with a stated amount per contact, this no longer applies.",
    figures=(ADVICE,),
)
def reduction_sum_beyond_contacts(chart: Chart) -> Iterator[Told]:
    """A sum stated without an amount per contact can be shared out within the lowest advice for each contact.

    Where it cannot, some contact loses more than is advised, and the laboratory is left to choose which.

    Evidence: sums of the figures per contact; sources and doubts are those of the single contact.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41", "41-31"], "in_all": 0.8,
                        "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41", "41-31"], "in_all": 1.2,
                       "unit": "mm"}]}
    """
    summed = told_by_sum(chart)
    for one in taken(chart):
        keys = [f"{ADVICE}.{region(name)}" for name in one.contacts]
        limit = sum(map(chart.limit, keys))
        if one.each is None and above(one.whole, limit) and one.place.owner not in summed:
            facts = {"asked": said(one.place.part), "amount": one.whole, "count": len(keys), "limit": limit}
            yield told(one.place.pointer, one.place.owner, **facts, figures=tuple(dict.fromkeys(keys)))


def _summed(chart: Chart, found: Sum) -> Told:
    facts = {"arch": found.arch, "part": found.part, "amount": found.amount, "limit": chart.limit(found.key)}
    asked = [said(one.place.part) for one in found.by]
    owners = [one.place.owner for one in found.by]
    return told(found.by[0].place.pointer, *owners, **facts, asked=asked, figures=(found.key,))


@rule(
    "reduction-in-part-beyond-advice",
    Severity.CAUTION,
    title="More enamel may be taken in the front or the back of an arch than is advised there.",
    says="In the {part} of the {arch} arch {amount:mm} of enamel may go in all, more than {limit:mm}: {asked:clause}.",
    do="Look at the other means of the arch, and confirm the sum or lessen it.",
    change="At {limit:mm} or less in this part of the arch it no longer applies.",
    figures=(PART,),
)
def reduction_in_part_beyond_advice(chart: Chart) -> Iterator[Told]:
    """The enamel that may go in one arch stays within the advised sum from canine to canine, and behind the canines.

    A large need of room is seldom met by enamel alone, and all contacts pay for it at once.

    Evidence: sums of per-surface advice, Tuverson for the front and Sheridan for the back, both recalled.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "per_contact": 0.8, "unit": "mm",
                        "contacts": ["16-15", "15-14", "24-25", "25-26"]}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "per_contact": 0.9, "unit": "mm",
                       "contacts": ["17-16", "16-15", "15-14", "14-13", "23-24", "24-25", "25-26", "26-27"]}]}
    """
    for arch in ARCHES:
        found = list(sums(chart, arch))
        if found and found[0].part:
            yield from (_summed(chart, one) for one in found)


@rule(
    "reduction-in-all-beyond-practice",
    Severity.ASK,
    title="More enamel may be taken in one arch than any well-known advice comes to.",
    says="In the {arch} arch {amount:mm} of enamel may go; advice adds up to {limit:mm} at the most: {asked:clause}.",
    do="Look at the other means of the arch; say that so much is meant, or lessen it.",
    change="At {limit:mm} or less in the arch it no longer applies.",
    figures=(ARCH,),
)
def reduction_in_all_beyond_practice(chart: Chart) -> Iterator[Told]:
    """The enamel that may go in one arch, all clauses together, stays within the most any well-known advice adds up to.

    So much room is otherwise made by an extraction; taken from enamel it leaves no contact untouched.

    Evidence: sums of the advice of Fillion for the upper and Sheridan for the lower arch, recalled.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 3, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "per_contact": 0.5, "unit": "mm",
                       "contacts": ["43-42", "42-41", "41-31", "31-32", "32-33", "44-43", "33-34"]},
                      {"id": "a2", "use": "enamel-reduction", "per_contact": 1, "unit": "mm",
                       "contacts": ["47-46", "46-45", "45-44", "34-35", "35-36", "36-37"]}]}
    """
    for arch in ARCHES:
        yield from (_summed(chart, one) for one in sums(chart, arch) if not one.part)


RULES = (reduction_sum_beyond_contacts, reduction_in_part_beyond_advice, reduction_in_all_beyond_practice)
