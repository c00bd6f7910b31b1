"""What a setup plans for single teeth and contacts: once, of teeth that are there, within what mouths allow."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed import norms
from wellposed.consistency.whole import Mention, existing
from wellposed.consistency.whole_setup import What, WholeSetup
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.setup import PlannedReduction
from wellposed.vocabulary.contacts import normal, same_arch, teeth_of
from wellposed.vocabulary.motions import VARIABLE_UNITS
from wellposed.vocabulary.teeth import TEETH, arch_of, place
from wellposed.vocabulary.units import MM


@rule(
    "movement-stated-twice",
    Severity.STOP,
    title="One movement of a tooth is stated twice.",
    do="State each variable of a tooth once, or write the tooth or variable that was meant.",
)
def movement_stated_twice(whole: WholeSetup) -> Iterator[Told]:
    """A variable of a tooth stands once among the movements, and once in a stage.

    Of two values nobody can tell which holds; of two that are the same, one was probably meant for another tooth.

    Passes: {"movements": [{"variable": "along", "unit": "mm", "values": {"11": 0.5}},
                           {"variable": "out", "unit": "mm", "values": {"11": 0.5}}]}
    Fails: {"movements": [{"variable": "along", "unit": "mm", "values": {"11": 0.5, "12": 1}},
                          {"variable": "along", "unit": "mm", "values": {"11": 0.7}}]}
    """
    seen: dict[tuple[str, What], str] = {}
    for one in whole.moved("movements", "stages"):
        tables = one.pointer.rsplit("/", 3)[0]
        first = seen.setdefault((tables, one.what), one.pointer)
        if first != one.pointer:
            yield told(one.pointer, tooth=one.what[0], name=one.what[1], first=first)


@rule(
    "implausible-amount",
    Severity.ASK,
    title="An amount is larger than plans have.",
    do="Look at the number, its unit and its sign again; if it is right, say so with the setup.",
)
def implausible_amount(whole: WholeSetup) -> Iterator[Told]:
    """A movement, either way, and the enamel taken off at a contact are not beyond the largest that are planned.

    The amounts are wide, no advice, and no limit of practice: beyond them a number is most often a slip of the
    keyboard or of the unit. Of a movement that is too large on the way as well, the first place is named.

    Passes: {"movements": [{"variable": "along", "unit": "mm", "values": {"16": -3.5}}]}
    Fails: {"movements": [{"variable": "along", "unit": "mm", "values": {"16": -35}}]}
    """
    seen: set[What] = set()
    for one in whole.moved("movements", "stages"):
        variable, most = one.what[1], norms.value(f"setup.largest.{one.what[1]}")
        if abs(one.value) > most and one.unit == VARIABLE_UNITS[variable] and one.what not in seen:
            seen.add(one.what)
            yield told(one.pointer, tooth=one.what[0], name=variable, value=one.value, expected=_within(most, one.unit))
    most = norms.value("setup.largest.reduction")
    for at, one_off in enumerate(whole.document.reductions or ()):
        if one_off.unit == MM and one_off.amount > most:
            facts = {"contact": one_off.contact, "value": one_off.amount, "expected": _within(most, MM)}
            yield told(f"/reductions/{at}/amount", **facts)


def _within(most: float, unit: str) -> str:
    return f"at most {most:g} {unit}"


@rule(
    "planned-at-extracted-tooth",
    Severity.STOP,
    title="Something is planned for a tooth that is taken out.",
    do="Take the tooth out of the plan, or out of the extractions.",
)
def planned_at_extracted_tooth(whole: WholeSetup) -> Iterator[Told]:
    """A tooth among the extractions has no movement, reduction, attachment or prediction, not even one of 0.

    One of the two is a slip. Across its place the contact is that of the two teeth that meet there afterwards.

    Passes: {"extractions": ["14"], "movements": [{"variable": "along", "unit": "mm", "values": {"13": -3}}]}
    Fails: {"extractions": ["14"], "movements": [{"variable": "along", "unit": "mm", "values": {"14": -3}}]}
    """
    for tooth in whole.teeth:
        if tooth.name in whole.gone and tooth.member != "extractions":
            yield told(tooth.pointer, tooth=tooth.name, first=whole.gone[tooth.name])
    for contact in whole.contacts:
        for name in existing(contact):
            if name in whole.gone:
                yield told(contact.pointer, tooth=name, contact=contact.name, first=whole.gone[name])


@rule(
    "teeth-cannot-touch",
    Severity.STOP,
    title="A contact joins two teeth that cannot touch.",
    do="Name two teeth that stand beside each other when the enamel is taken off.",
)
def teeth_cannot_touch(whole: WholeSetup) -> Iterator[Told]:
    """The teeth of a contact are two, and no tooth that the setup speaks of and leaves in place is between them.

    `13-15` is right where 14 is missing or taken out, and a fault where 14 is planned for as well. Which teeth are
    there is not in a setup: against the prescription more can be seen.

    Passes: {"extractions": ["14"], "reductions": [{"contact": "13-15", "amount": 0.2, "unit": "mm"}]}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"14": 0.5}}],
            "reductions": [{"contact": "13-15", "amount": 0.2, "unit": "mm"}]}
    """
    for contact in whole.contacts:
        one, other = teeth_of(contact.name)
        between = _between(whole, contact)
        if one == other or between:
            yield told(contact.pointer, contact=contact.name, teeth=between)


def _between(whole: WholeSetup, contact: Mention) -> list[str]:
    """The teeth that stand between those of a contact; teeth of one place, such as 13 and 53, are not told apart."""
    if len(existing(contact)) == 1 or not same_arch(contact.name):
        return []
    low, high = sorted(place(tooth) for tooth in teeth_of(contact.name))
    row = [tooth for tooth in TEETH if tooth in whole.standing and arch_of(tooth) == arch_of(contact.name)]
    return [tooth for tooth in row if low < place(tooth) < high]


@rule(
    "reduction-planned-twice",
    Severity.STOP,
    title="Enamel is taken off twice at one contact, and not at two times.",
    do="State one amount, or before which aligner each of them is taken off.",
)
def reduction_planned_twice(whole: WholeSetup) -> Iterator[Told]:
    """A contact has one reduction, or several, each before an aligner of its own.

    Enamel does not grow back: whether two amounts add up or one replaces the other must not be guessed.

    Passes: {"reductions": [{"contact": "31-41", "amount": 0.2, "unit": "mm", "before_aligner": 3},
                            {"contact": "41-31", "amount": 0.2, "unit": "mm", "before_aligner": 9}]}
    Fails: {"reductions": [{"contact": "31-41", "amount": 0.2, "unit": "mm", "before_aligner": 3},
                           {"contact": "41-31", "amount": 0.2, "unit": "mm"}]}
    """
    earlier: dict[str, list[tuple[str, PlannedReduction]]] = {}
    for at, one in enumerate(whole.document.reductions or ()):
        before = earlier.setdefault(normal(one.contact), [])
        first = next((pointer for pointer, other in before if _one_time(one, other)), None)
        if first is not None:
            yield told(f"/reductions/{at}", contact=one.contact, first=first)
        before.append((f"/reductions/{at}", one))


def _one_time(one: PlannedReduction, other: PlannedReduction) -> bool:
    """Whether two reductions may be one and the same: before one aligner, or one of them at no time stated."""
    return None in (one.before_aligner, other.before_aligner) or one.before_aligner == other.before_aligner


@rule(
    "attachment-planned-twice",
    Severity.STOP,
    title="One attachment is planned twice.",
    do="Leave one of the two, or state the reason, the aligner or in words how they differ.",
)
def attachment_planned_twice(whole: WholeSetup) -> Iterator[Told]:
    """Two attachments of a tooth from one aligner on differ in their reason or in words.

    A tooth may carry two; without a word of difference the second was probably meant for another tooth.

    Passes: {"attachments": [{"tooth": "13", "reason": "movement"}, {"tooth": "13", "reason": "retention"}]}
    Fails: {"attachments": [{"tooth": "13", "shape": "ellipsoid-vertical"}, {"tooth": "13"}]}
    """
    seen: dict[tuple[object, ...], str] = {}
    for at, one in enumerate(whole.document.attachments or ()):
        first = seen.setdefault((one.tooth, one.from_aligner, one.reason, one.words), f"/attachments/{at}")
        if first != f"/attachments/{at}":
            yield told(f"/attachments/{at}", tooth=one.tooth, first=first)


RULES = (
    *(movement_stated_twice, implausible_amount, planned_at_extracted_tooth),
    *(teeth_cannot_touch, reduction_planned_twice, attachment_planned_twice),
)
