"""When enamel is to be taken: in a mouth not ready for it, before a contact is in reach, or not for the first time."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.derive import irregularity
from wellposed.findings import Severity
from wellposed.kinematics.limits import region
from wellposed.kinematics.mouth import Mouth
from wellposed.model.clauses import Align
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._enamel import Taken, arch_of_contact, at_contacts, taken
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import ARCHES

REACH = "caution.reduction-reach"
ADVICE = "caution.reduction-per-contact"
_REDUCED_FIRST = ("before", "not-before-done")


# a mouth not ready for it


def _on_condition(chart: Chart, condition: str) -> Iterator[Told]:
    """Reductions in a mouth, or at teeth, with a condition; all in one."""
    teeth = _concerned(chart, condition)
    if teeth is None:
        return
    found = [one for one in taken(chart) if not teeth or any(teeth & set(teeth_of(name)) for name in one.contacts)]
    if found:
        where = sorted(teeth & {tooth for one in found for name in one.contacts for tooth in teeth_of(name)})
        at = f"at {', '.join(where)}" if where else "in this mouth"
        facts = {"asked": [said(one.place.part) for one in found], "condition": condition, "at": at}
        yield told(found[0].place.pointer, *(one.place.owner for one in found), **facts)


def _concerned(chart: Chart, condition: str) -> set[str] | None:
    """The teeth with a condition; none named: the whole mouth; None: it is not stated."""
    stated = list(chart.condition(condition))
    if not stated:
        return None
    return set() if any(not place.said("teeth") for place in stated) else {t for p in stated for t in p.said("teeth")}


@rule(
    "reduction-with-caries",
    Severity.ASK,
    title="Enamel is to be taken where active caries is stated.",
    says="Active caries is stated {at}, and enamel is to be taken there: {asked:clause}.",
    do="Say that the caries is treated first, or put the reduction off.",
    change="With the caries treated and its condition taken out, this no longer applies.",
    sources=("pinheiro-2002",),
)
def reduction_with_caries(chart: Chart) -> Iterator[Told]:
    """No enamel is to be taken in a mouth, or at teeth, with active caries.

    The roughened surface is the weaker one while decay goes on.

    Evidence: active caries and poor hygiene stand in a published list of contraindications; the list is recalled. Over
    four to six years reduced surfaces of clean mouths decayed no more than others (Zachrisson et al. 2011).

    Passes: {"conditions": [{"condition": "active-caries", "teeth": ["46"]}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"conditions": [{"condition": "active-caries"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    yield from _on_condition(chart, "active-caries")


@rule(
    "reduction-with-hypersensitivity",
    Severity.CAUTION,
    title="Enamel is to be taken where teeth are stated to be hypersensitive.",
    says="Hypersensitive teeth are stated {at}, and enamel is to be taken there: {asked:clause}.",
    do="Say that it is meant, or name contacts away from these teeth.",
    change="Without the condition, or at contacts of other teeth, this no longer applies.",
    sources=("pinheiro-2002",),
)
def reduction_with_hypersensitivity(chart: Chart) -> Iterator[Told]:
    """No enamel is to be taken at teeth stated to hurt at cold or touch.

    Less enamel lets more through to a tooth that hurts already.

    Evidence: stands in a published list of contraindications; the list is recalled. In one group of 43 none had become
    sensitive after reduction (Zachrisson et al. 2011).

    Passes: {"conditions": [{"condition": "hypersensitive-enamel", "teeth": ["16", "26"]}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"conditions": [{"condition": "hypersensitive-enamel", "teeth": ["31"]}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    yield from _on_condition(chart, "hypersensitive-enamel")


# a contact not in reach


@rule(
    "reduction-before-reach",
    Severity.CAUTION,
    title="Enamel is to be taken before the teeth are aligned, at contacts that are far out of line.",
    says="{asked:clause}: at {contacts:contacts} the teeth are {amount:mm} out of line or overlapped, and alignment"
    " does not come first.",
    do="Let the alignment begin before the reduction, or say that these contacts are in reach now.",
    change="With alignment begun first, or contacts no more than {limit:mm} out of line, this no longer applies.",
    figures=(REACH,),
)
def reduction_before_reach(chart: Chart) -> Iterator[Told]:
    """Enamel is ordered at contacts that are in line, or after they have been aligned.

    Where teeth overlap, no strip or disc passes between the surfaces that are to meet; another surface is cut.

    Evidence: unaligned contacts stand in a published list of contraindications, which is recalled; the amount is common
    practice, without a source. It is seen only where all six front teeth are measured, or crowding names its contacts.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm", "contacts": ["42-41"]}],
             "goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31", "32"]}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41"], "per_contact": 0.4,
                        "at_least": 0.3, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 2.5, "unit": "mm", "contacts": ["42-41"]}],
            "goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31", "32"]}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41"], "per_contact": 0.4,
                       "at_least": 0.3, "unit": "mm"}]}
    """
    measured = (one for arch in ARCHES for one in out_of_line(chart, arch))
    off = {name: amount for name, amount in measured if above(amount, chart.limit(REACH))}
    for one in taken(chart):
        contacts = [name for name in one.contacts if name in off and _aligned(chart, name)]
        if contacts and _first(chart, one):
            facts = {"amount": max(off[name] for name in contacts), "limit": chart.limit(REACH)}
            yield at_contacts(one, contacts, **facts, figures=(REACH,))


def out_of_line(chart: Chart, arch: str) -> Iterator[tuple[str, float]]:
    """Contacts of an arch with how far their points stand apart, or overlap, mm, where that is known of the contact."""
    for contact in irregularity.of_prescription(chart.rx, arch):
        if isinstance(contact, irregularity.Contact):
            yield contact.name, contact.displacement
    finding = chart.mouth.finding(f"{arch}-crowding")
    if finding and finding.contacts:
        yield from ((one.name, -one.before) for one in chart.mouth.rows[arch].contacts if one.before < 0)


def _aligned(chart: Chart, contact: str) -> bool:
    """Whether both teeth of a contact are to be aligned."""
    return any(set(teeth_of(contact)) <= set(goal.align) for goal in chart.rx.goals or () if isinstance(goal, Align))


def _first(chart: Chart, one: Taken) -> bool:
    """Whether a reduction is put before alignment, or ordered with nothing said of when."""
    orders = [order for order in _orders(chart) if one.place.owner in (order.said("first"), order.said("then"))]
    if not orders:
        return bool(one.place.said("at_least"))
    aligning = {goal.id for goal in chart.rx.goals or () if isinstance(goal, Align)}
    return any(o.said("then") in aligning and o.said("relation") in _REDUCED_FIRST for o in orders)


def _orders(chart: Chart) -> Iterator[Place]:
    return (place for place in chart.of("staging") if place.said("relation"))


# not for the first time


class _Before(NamedTuple):
    """What an earlier revision allowed at a contact, mm, and the number of that revision."""

    revision: int
    amount: float


@rule(
    "reduction-repeated",
    Severity.CAUTION,
    title="Enamel is to be taken again at contacts where earlier revisions allowed it.",
    says="{asked:clause}: with what revision {revisions} allowed, {amount:mm} would be gone at {contacts:contacts};"
    " {limit:mm} is advised.",
    do="Look up what was taken then, and state what may still go.",
    change="If no enamel was taken there before, or no more than {limit:mm} comes to be gone, this no longer applies.",
    figures=(ADVICE,),
)
def reduction_repeated(chart: Chart) -> Iterator[Told]:
    """Enamel taken under earlier revisions and enamel to be taken now stay together within the lowest advice for the
    contact.

    What was taken before is not seen in a new scan; each course alone looks moderate.

    Evidence: the figures per contact, mostly recalled. What was allowed need not have been taken. An earlier revision
    counts as a course of treatment of its own only where the crowding or spacing of the arch was measured anew since.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 2, "unit": "mm"}], "revision": 2,
             "replaces": "abababababababababababababababababababababababababababababababab",
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                        "unit": "mm"}],
             "earlier": [{"findings": [{"id": "f1", "measure": "lower-crowding", "value": 2, "unit": "mm"}],
                          "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                                     "unit": "mm"}]}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 0.5, "unit": "mm"}], "revision": 2,
            "replaces": "abababababababababababababababababababababababababababababababab",
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                       "unit": "mm"}],
            "earlier": [{"findings": [{"id": "f1", "measure": "lower-crowding", "value": 2, "unit": "mm"}],
                         "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                                    "unit": "mm"}]}]}
    """
    before = _before(chart)
    for one in taken(chart):
        total = {name: one.share + sum(b.amount for b in before[name]) for name in one.contacts if name in before}
        keys = {name: f"{ADVICE}.{region(name)}" for name in total}
        again = [name for name in total if above(total[name], chart.limit(keys[name]))]
        if again:
            revisions = sorted({b.revision for name in again for b in before[name]})
            limits = sorted({chart.limit(keys[name]) for name in again})
            facts = {"revisions": revisions, "amount": max(total[name] for name in again), "limit": limits}
            yield at_contacts(one, again, **facts, figures=tuple(dict.fromkeys(keys[name] for name in again)))


def _before(chart: Chart) -> dict[str, list[_Before]]:
    """By contact, what each earlier course of treatment allowed there: of several revisions of one course, the last."""
    found: dict[str, list[_Before]] = {}
    for earlier, after in pairwise((*chart.earlier, chart.rx)):
        for one in taken(Chart(earlier, chart.numbers)):
            for name in one.contacts:
                if _measured_anew(Mouth(earlier), Mouth(after), arch_of_contact(name)):
                    found.setdefault(name, []).append(_Before(earlier.revision, one.share))
    return found


def _measured_anew(before: Mouth, now: Mouth, arch: str) -> bool:
    """Whether the arch's crowding or spacing is stated in both, and differs."""
    pairs = ((m.baseline(f"{arch}-{what}") for m in (before, now)) for what in ("crowding", "spacing"))
    return any(old is not None and new is not None and old != new for old, new in pairs)


RULES = (reduction_with_caries, reduction_with_hypersensitivity, reduction_before_reach, reduction_repeated)
