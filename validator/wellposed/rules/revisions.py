"""One revision against those before it: the chain, what was dropped, what was turned round, what is asked again."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from wellposed.digests import digest
from wellposed.findings import Severity
from wellposed.model.moments import time_of
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart
from wellposed.rules.clauses_kept import dropped, mentioned, reversed_in, unmet_goals

_UNMET = "caution.revisions-unmet"


@rule(
    "other-patient",
    Severity.STOP,
    title="An earlier revision was for another patient.",
    says="Revision {revision} of this order has another reference for the patient.",
    do="Find out whose order this is before anything is made.",
    change="One reference in every revision would change it.",
)
def other_patient(chart: Chart) -> Iterator[Told]:
    """Every revision of an order has the same reference for the patient.

    Teeth would be moved by somebody else's order.

    Evidence: none is needed. The references are not repeated here.

    Passes: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
             "earlier": [{}]}
    Fails: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
            "patient": {"reference": "P-0002"}, "earlier": [{}]}
    """
    other = [rx.revision for rx in chart.earlier if rx.patient.reference != chart.rx.patient.reference]
    if other:
        yield told("/patient/reference", revision=other[-1])


@rule(
    "replaces-another-document",
    Severity.ASK,
    title="The order does not replace the revision before it.",
    says="The digest in `replaces` is not that of revision {revision} as it is at hand.",
    do="Find the revision that was meant, or correct `replaces`.",
    change="The digest of revision {revision} in its canonical form would change it.",
)
def replaces_another_document(chart: Chart) -> Iterator[Told]:
    """`replaces` is the digest of the revision before this one.

    If it is not, another order was sent in between, or the one at hand is not what was sent.

    Evidence: computed: SHA-256 of the canonical form by RFC 8785. It is looked at only if the revision just before is
    at hand.

    Passes: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
             "earlier": [{}]}
    Fails: {"revision": 2, "replaces": "0000000000000000000000000000000000000000000000000000000000000000",
            "earlier": [{}]}
    """
    before = next((rx for rx in reversed(chart.earlier) if rx.revision == chart.rx.revision - 1), None)
    if before and chart.rx.replaces and chart.rx.replaces != digest(before):
        yield told("/replaces", revision=before.revision)


@rule(
    "revision-out-of-order",
    Severity.ASK,
    title="The order is not later than the revisions before it.",
    says="{what} that of revision {revision}, which came before it.",
    do="Find out which of the two is to be made, and number the revisions in their order.",
    change="A higher number, issued later, would change it.",
)
def revision_out_of_order(chart: Chart) -> Iterator[Told]:
    """A later revision has a higher number, and was issued no earlier.

    Of two orders nobody could tell which holds.

    Evidence: none is needed. Moments are compared with their offsets.

    Passes: {"revision": 2, "issued": "2026-03-05T09:30:00+01:00",
             "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104", "earlier": [{}]}
    Fails: {"revision": 2, "issued": "2026-03-03T09:30:00+01:00",
            "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104", "earlier": [{}]}
    """
    last = max(chart.earlier, key=lambda rx: rx.revision, default=None)
    if last is None:
        return
    now, before = time_of(chart.rx.issued), time_of(last.issued)
    if chart.rx.revision <= last.revision:
        yield told("/revision", what="The number of this revision is not above", revision=last.revision)
    elif now and before and now < before:
        yield told("/issued", what="The moment of issue lies before", revision=last.revision)


@rule(
    "clause-dropped-since-last",
    Severity.CAUTION,
    title="Clauses of the last revision are gone, and nothing is said of them.",
    says="Revision {revision} also said: {dropped:clause}. Here nothing is said of that.",
    do="Say that it no longer holds, naming it in a note, or put it back.",
    change="The clause itself, or its id ({names:list}) in a note, would change it.",
)
def clause_dropped_since_last(chart: Chart) -> Iterator[Told]:
    """Every clause of the last revision is there again, changed or not, or its id stands in a note.

    A revision replaces the one before it whole. What is not said again no longer holds, and may have been forgotten.

    Evidence: none is needed. A clause is there again if its id is, or if another is about the same; one that was turned
    round is told by `instruction-reversed`, and a goal whose measure is reached by now is not missed.

    Passes: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
             "notes": [{"text": "The keep k1 no longer holds."}],
             "earlier": [{"keep": [{"id": "k1", "strength": "must", "hold": ["16", "26"]}]}]}
    Fails: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
            "earlier": [{"keep": [{"id": "k1", "strength": "must", "hold": ["16", "26"]}]}]}
    """
    if not chart.earlier:
        return
    last = Chart(chart.earlier[-1], chart.numbers)
    gone = [part for part in dropped(chart, last) if not mentioned(chart, part.id)]
    if gone:
        facts = {"dropped": [said(part) for part in gone], "names": [part.id for part in gone]}
        yield told("", revision=last.rx.revision, missing=("clauses of the last revision",), **facts)


@rule(
    "instruction-reversed",
    Severity.CAUTION,
    title="An instruction is the opposite of what the last revision said.",
    says="{asked:clause}; revision {revision} said: {before:clause}.",
    do="Say that it is meant, and look at what has been done on the earlier one.",
    change="If the earlier instruction was a slip, this no longer applies.",
)
def instruction_reversed(chart: Chart) -> Iterator[Told]:
    """No means that was excluded is allowed now, or the reverse; no tooth that had to carry an attachment must not, or
    the reverse; no measure that was to rise is to fall.

    What was begun on the earlier order is undone by the later one, and one of the two rested on a wrong view.

    Evidence: none is needed. Movements of teeth are told by `round-trip-since-last`, widths by a rule of their own. To
    rise or to fall is seen from what each revision measured.

    Passes: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
             "attachments": [{"id": "t1", "must": ["13", "23"]}],
             "earlier": [{"attachments": [{"id": "t1", "must": ["13"]}]}]}
    Fails: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
            "attachments": [{"id": "t1", "must_not": ["13"]}],
            "earlier": [{"attachments": [{"id": "t1", "must": ["13"]}]}]}
    """
    if chart.earlier:
        last = chart.earlier[-1]
        for place, before in reversed_in(chart, Chart(last, chart.numbers)):
            facts = {"asked": said(place.part), "before": said(before), "revision": last.revision}
            yield told(place.pointer, place.owner, **facts)


@rule(
    "asked-three-times",
    Severity.CAUTION,
    title="A goal has been asked for in several revisions and is still not met.",
    says="{asked:clause} was asked for in {times} revisions, this one counted, and is not met in any of them. "
    "From {least} on this is said.",
    do="Look at the diagnosis again: is this the right goal, and can these means reach it?",
    change="A measurement that meets the goal, or another goal in its place, would change it.",
    figures=(_UNMET,),
)
def asked_three_times(chart: Chart) -> Iterator[Told]:
    """No goal is asked for in several revisions while the measurements of each show it unmet.

    Where the same thing fails again, the plan is seldom at fault; more often the diagnosis is.

    Evidence: the number is common practice, without a study. What was measured is taken from each revision itself; a
    goal without a measurement is not counted.

    Passes: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
             "findings": [{"id": "f1", "measure": "overbite", "value": 5, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 3, "unit": "mm"}],
             "earlier": [
                 {"findings": [{"id": "f1", "measure": "overbite", "value": 6, "unit": "mm"}],
                  "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 3, "unit": "mm"}]}]}
    Fails: {"revision": 3, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
            "findings": [{"id": "f1", "measure": "overbite", "value": 5, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 3, "unit": "mm"}],
            "earlier": [
                {"findings": [{"id": "f1", "measure": "overbite", "value": 6, "unit": "mm"}],
                 "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 3, "unit": "mm"}]},
                {"revision": 2,
                 "findings": [{"id": "f1", "measure": "overbite", "value": 5.5, "unit": "mm"}],
                 "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 3, "unit": "mm"}]}]}
    """
    before = [{subject for subject, _ in unmet_goals(Chart(rx, chart.numbers))} for rx in chart.earlier]
    for subject, place in unmet_goals(chart):
        times = 1 + sum(subject in goals for goals in before)
        if times >= chart.limit(_UNMET):
            facts = {"asked": said(place.part), "times": times, "least": _least(chart), "figures": (_UNMET,)}
            yield told(place.pointer, place.owner, *(place.said("because") or ()), **facts)


def _least(chart: Chart) -> int:
    """The fewest revisions that are at least the limit."""
    return ceil(chart.limit(_UNMET))


RULES = (
    *(other_patient, replaces_another_document, revision_out_of_order),
    *(clause_dropped_since_last, instruction_reversed, asked_three_times),
)
