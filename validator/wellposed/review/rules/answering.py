"""Whether the setup answers this prescription, takes out the teeth it should, and leaves room as it was."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from wellposed.digests import digest
from wellposed.findings import Severity
from wellposed.kinematics.mouth import Contact
from wellposed.kinematics.room import left_open
from wellposed.model.clauses import Close, CloseArch
from wellposed.model.means import Extraction
from wellposed.review.held import Facts, Held
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.teeth import ARCHES


@rule(
    "setup-answers-another",
    Severity.STOP,
    title="The setup answers another prescription, or another revision of it.",
    says="The setup answers revision {revision} of {id}; at hand is revision {own_revision} of {own_id}.",
    do="Take the prescription that the setup answers, or ask for a setup that answers this one.",
    change="The same id and revision would change it.",
)
def setup_answers_another(held: Held) -> Iterator[Told]:
    """The setup names the id and the revision of the prescription it is held against.

    What was changed from one revision to the next would look like the laboratory's mistake, or hide one.

    Evidence: none is needed.

    Passes: {}
    Fails: {"answers": {"id": "HR-2031", "revision": 2,
                        "sha256": "0000000000000000000000000000000000000000000000000000000000000000"}}
    """
    answers, own = held.setup.answers, held.matter.prescription
    if not _named(held):
        facts = {"id": answers.id, "revision": answers.revision, "own_id": own.id, "own_revision": own.revision}
        yield told("/answers", **facts)


def _named(held: Held) -> bool:
    answers, own = held.setup.answers, held.matter.prescription
    return (answers.id, answers.revision) == (own.id, own.revision)


@rule(
    "setup-answers-other-content",
    Severity.STOP,
    title="The prescription at hand is not the one that the setup answers.",
    says="The setup answers revision {revision} of {id} with another content: its digest begins {digest}, that of the "
    "prescription at hand {own_digest}.",
    do="Find out which of the two was sent; one id and revision must have one content.",
    change="The same content would change it: the digest is that of the canonical form (RFC 8785).",
)
def setup_answers_other_content(held: Held) -> Iterator[Told]:
    """The digest in the setup is that of the prescription at hand.

    Otherwise one of the two was changed after it was sent, and what is compared was never agreed.

    Evidence: none is needed.

    Passes: {}
    Fails: {"answers": {"id": "HR-2031", "revision": 1,
                        "sha256": "0000000000000000000000000000000000000000000000000000000000000000"}}
    """
    answers, own = held.setup.answers, digest(held.matter.prescription)
    if _named(held) and answers.sha256 != own:
        yield told(
            "/answers/sha256",
            id=answers.id,
            revision=answers.revision,
            digest=answers.sha256[:_SHOWN],
            own_digest=own[:_SHOWN],
        )


_SHOWN = 12


@rule(
    "extraction-not-ordered",
    Severity.STOP,
    title="The setup takes out teeth that no clause takes out.",
    says="The setup takes out {teeth:teeth}; no clause of the prescription does.",
    do="Ask for a setup that keeps them, or order the extraction.",
    change="An extraction of {teeth:list} in the prescription would change it.",
)
def extraction_not_ordered(held: Held) -> Iterator[Told]:
    """Every tooth the setup takes out is one that the prescription allows, or states, to be taken out.

    It cannot be undone, and nobody may decide it but the prescriber.

    Evidence: none is needed.

    Passes: {"extractions": []}
    Fails: {"extractions": ["14"]}
    """
    ordered = held.matter.ordered.mouth.extracted
    more = [tooth for tooth in held.setup.extractions or () if tooth not in ordered]
    if more:
        yield told("/extractions", teeth=more)


@rule(
    "extraction-not-used",
    Severity.ASK,
    title="The setup does not take out teeth that the prescription takes out.",
    says="The prescription takes out {teeth:teeth}; {how}.",
    do="Ask whether these teeth stay; the room of this arch is not told, or told with them in it.",
    change="A statement of the setup that they are taken out would change it.",
)
def extraction_not_used(held: Held) -> Iterator[Told]:
    """Every tooth that the prescription takes out is taken out by the setup, and the setup says so.

    A plan that does without is welcome, but it is another plan than was ordered.

    Evidence: none is needed.

    Passes: {"prescription": {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}]}, "extractions": ["14"]}
    Fails: {"prescription": {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}]}, "extractions": []}
    """
    ordered, taken = held.matter.ordered.mouth.extracted, held.setup.extractions
    kept = [tooth for tooth in ordered if taken is None or tooth not in taken]
    if kept:
        how = "the setup does not say whether they leave" if taken is None else "the setup keeps them"
        clauses = [one.id for one in held.matter.prescription.allow or () if isinstance(one, Extraction)]
        yield told("" if taken is None else "/extractions", *clauses, teeth=kept, how=how)


_SPACE = ("kinematics.space-left-over",)
_TOGETHER = ("review.within-mm", *_SPACE)
_WORTH_NAMING = 0.05
"""A contact is named if it has more than so much of it, mm: the rounding of tenths. All of them are counted."""


@rule(
    "setup-leaves-space",
    Severity.ASK,
    title="The plan opens new space that no goal closes or leaves.",
    says="The plan leaves {more:mm} of new space in the {arch} arch, at {contacts:contacts}; no goal speaks of it.",
    do="Ask for a plan that closes it, or say that it is to be left.",
    change="No more than {most:mm} of new space, or a goal that leaves it, would change it.",
    figures=_SPACE,
)
def setup_leaves_space(held: Held) -> Iterator[Told]:
    """In an arch that no goal closes, the gaps that no goal speaks of do not grow by more than a little.

    Space that nobody asked for traps food and is seen; it is a mistake more often than a wish.

    Evidence: the amount is a convention of the check of prescriptions.

    Passes: {"movements": [{"variable": "along", "unit": "mm", "values": {"13": -0.4}}], "unlisted": "unmoved",
             "reductions": [], "prescription": {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 0,
                                                               "unit": "mm"}]}}
    Fails: {"movements": [{"variable": "along", "unit": "mm", "values": {"13": -0.9}}], "unlisted": "unmoved",
            "reductions": [], "prescription": {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 0,
                                                              "unit": "mm"}]}}
    """
    most = held.limit(*_SPACE)
    for arch in _told_arches(held):
        grown = _grown(held, _unspoken(held, arch), 1)
        more = sum(grown.values())
        if above(more, most) and not _closes(held, arch):
            contacts = _worth_naming(grown)
            yield told("/movements", more=more, arch=arch, contacts=contacts, most=most, figures=_SPACE)


@rule(
    "teeth-pushed-together",
    Severity.ASK,
    title="The plan pushes teeth over each other that no goal brings into line.",
    says="The plan leaves {more:mm} more overlap in the {arch} arch than there was, at {contacts:contacts}, where"
    " nothing is aligned.",
    do="Ask for a plan that leaves these contacts as they are.",
    change="No more than {most:mm} of new overlap at any of them, and {whole:mm} in all, would change it.",
    figures=_TOGETHER,
)
def teeth_pushed_together(held: Held) -> Iterator[Told]:
    """At contacts that no goal aligns, neighbours do not come to overlap more than they do, but for rounding.

    Movements that each look right can add up to two teeth in one place, or push the crowding to where nobody looks.

    Evidence: arithmetic on the movements. At one contact the tolerance of the review is let pass, over an arch as much
    as of new space: numbers in tenths of a millimetre come to no more.

    Passes: {"movements": [{"variable": "along", "unit": "mm", "values": {"14": 0.1}}], "unlisted": "unmoved",
             "reductions": [], "prescription": {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 0,
                                                               "unit": "mm"}]}}
    Fails: {"movements": [{"variable": "along", "unit": "mm", "values": {"14": 0.6}}], "unlisted": "unmoved",
            "reductions": [], "prescription": {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 0,
                                                              "unit": "mm"}]}}
    """
    aligned = {name for names in held.matter.translation.frame.aligned_contacts.values() for name in names}
    most, whole = map(held.limit, _TOGETHER)
    for arch in _told_arches(held):
        grown = _grown(held, [c for c in held.mouth.rows[arch].contacts if c.name not in aligned], -1)
        more = sum(grown.values())
        if above(max(grown.values(), default=0.0), most) or above(more, whole):
            facts: Facts = {"arch": arch, "contacts": _worth_naming(grown), "most": most, "whole": whole}
            yield told("/movements", more=more, figures=_TOGETHER, **facts)


def _told_arches(held: Held) -> Iterator[str]:
    """Arches whose room was measured and is told by the setup."""
    for arch in ARCHES:
        names = [contact.name for contact in held.mouth.rows[arch].contacts]
        if held.mouth.room_known(arch) and all(held.matter.ended.rooms[name] is not None for name in names):
            yield arch


def _grown(held: Held, contacts: Iterable[Contact], sign: int) -> dict[str, float]:
    """How much the gap (+) or the overlap (-) has grown at each contact where it has, mm."""
    grown = {}
    for contact in contacts:
        before = 0.0 if contact.taken else max(0.0, sign * contact.before)
        more = max(0.0, sign * (held.matter.ended.rooms[contact.name] or 0.0)) - before
        if more > 0:
            grown[contact.name] = more
    return grown


def _worth_naming(grown: dict[str, float]) -> list[str]:
    """The contacts at which it is more than rounding; all of them where it is no more at any."""
    return [name for name, more in grown.items() if more > _WORTH_NAMING] or list(grown)


def _unspoken(held: Held, arch: str) -> list[Contact]:
    goals: tuple[Any, ...] = held.matter.prescription.goals or ()
    spoken = {normal(name) for goal in goals if isinstance(goal, Close) for name in goal.close}
    spoken |= left_open(held.matter.prescription)
    return [one for one in held.mouth.rows[arch].contacts if one.name not in spoken]


def _closes(held: Held, arch: str) -> bool:
    goals = held.matter.prescription.goals or ()
    return any(isinstance(goal, CloseArch) and goal.close_arch == arch for goal in goals)


RULES = (
    *(setup_answers_another, setup_answers_other_content),
    *(extraction_not_ordered, extraction_not_used),
    *(setup_leaves_space, teeth_pushed_together),
)
