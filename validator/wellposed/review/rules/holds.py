"""Attachments in the plan: missing or late where a movement asks for one, placed where they do not hold."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.review.held import Facts, Held, grouped
from wellposed.review.rules.roots import Crown, crowns
from wellposed.review.travel import motion_of, place_after
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules.aids import CARRYING, WANTED, helped, stance, turning
from wellposed.vocabulary.motions import VARIABLE_UNITS, Motion, Variable
from wellposed.vocabulary.teeth import is_primary

_EXTRUSION, _BODILY = "auxiliary.extrusion.hard", "auxiliary.bodily"
_TURNED = {"torque": "auxiliary.torque", "tip": "auxiliary.tip"}
_FIGURES = ("auxiliary.rotation.canines", "auxiliary.rotation.premolars", _EXTRUSION, _BODILY, *_TURNED.values())
_NOT_ENAMEL = ("crown", "veneer", "large-filling")
_NO_CROWN = ("implant", "pontic", "unerupted")


class Need(NamedTuple):
    """A planned movement that asks for a hold: it passes the amount of a norm."""

    key: str
    tooth: str
    variable: Variable
    amount: float


def needs(held: Held) -> Iterator[Need]:
    """Movements that ask for an attachment or another auxiliary: round teeth turned, extrusion, roots, whole teeth."""
    for (tooth, variable), amount in held.moved.items():
        key = turning(tooth) if variable == "rotation" else None
        if variable == "vertical" and amount > 0:
            key = _EXTRUSION
        if key and above(abs(amount), held.limit(key)):
            yield Need(key, tooth, variable, amount)
    for crown in crowns(held):
        yield from _of_root(held, crown)


def _of_root(held: Held, crown: Crown) -> Iterator[Need]:
    """The root moved further than its crown, or along with it."""
    key = _TURNED[crown.turning]
    if moves_root(crown):
        if above(abs(crown.angle), held.limit(key)):
            yield Need(key, crown.tooth, crown.turning, crown.angle)
    elif above(min(abs(crown.travel), crown.apex), held.limit(_BODILY)):
        yield Need(_BODILY, crown.tooth, crown.variable, crown.travel)


def moves_root(crown: Crown) -> bool:
    """Whether it is rather the root that is moved than the crown."""
    return bool(crown.angle) and abs(crown.apex) > abs(crown.travel)


def unheld(held: Held) -> Iterator[Need]:
    """Those of teeth that carry none, though the setup says which do and the prescription does not refuse it."""
    carriers = held.plan.carriers
    loose = (need for need in needs(held) if carriers is not None and need.tooth not in carriers)
    asked = (need for need in loose if stance(held.chart, need.tooth).member in ("", *CARRYING))
    return (need for need in asked if not helped(held.chart, need.tooth))


@rule(
    "planned-movement-without-hold",
    Severity.CAUTION,
    title="The plan moves teeth further than they follow without a hold, and gives them none.",
    says="{teeth:teeth}: up to {amount:{unit}} ({motion:words}), and no attachment; above {limit:{unit}} one is asked"
    " for.",
    do="Ask for an attachment or another auxiliary there, or for less movement.",
    change="An attachment, a button or an elastic on {teeth:list}, or {limit:{unit}} or less, would change it.",
    figures=_FIGURES,
)
def planned_movement_without_hold(held: Held) -> Iterator[Told]:
    """Teeth that the plan turns though they are round, extrudes, or moves with their roots, carry an attachment or are
    held by another auxiliary, from the amounts in the norms on.

    An aligner slips on a round or tapering crown, and bends instead of moving a root.

    Evidence: no published threshold was found; the amounts are those of textbooks. Where the prescription refuses or
    advises against an attachment there, the check of the prescription speaks; where the setup says nothing of
    attachments, this does not.

    Passes: {"movements": [{"variable": "rotation", "unit": "deg", "values": {"13": 20}}],
             "attachments": [{"tooth": "13"}]}
    Fails: {"movements": [{"variable": "rotation", "unit": "deg", "values": {"13": 20}}],
            "attachments": [{"tooth": "11"}]}
    """
    for key, found in grouped((need.key, need) for need in unheld(held)).items():
        worst = max(found, key=lambda need: abs(need.amount))
        facts: Facts = {"teeth": list(dict.fromkeys(need.tooth for need in found)), "amount": abs(worst.amount)}
        facts |= {"motion": motions(found), "limit": held.limit(key)}
        pointer = held.at(found[0].variable, facts["teeth"])
        yield told(pointer, **facts, unit=VARIABLE_UNITS[worst.variable], figures=(key,))


def motions(found: list[Need]) -> list[Motion]:
    """The trade's names of all that is moved."""
    return list(dict.fromkeys(motion_of(need.tooth, need.variable, need.amount) for need in found))


class _Late(NamedTuple):
    """A need of which ``gone``, mm or deg, is done before its tooth carries an attachment from aligner ``first`` on."""

    need: Need
    gone: float
    first: int


@rule(
    "attachment-planned-after-movement",
    Severity.CAUTION,
    title="Attachments come after the movement that asks for them.",
    says="{teeth:teeth}: up to {gone:{unit}} ({motion:words}) before there is an attachment, on {tooth} from aligner"
    " {first} on; above {limit:{unit}} one is asked for.",
    do="Ask for the attachment before the movement, or for the movement after it.",
    change="An attachment by the time {limit:{unit}} are done would change it.",
    figures=_FIGURES,
)
def attachment_planned_after_movement(held: Held) -> Iterator[Told]:
    """A tooth that asks for a hold, and gets one, carries it before it has gone further than it follows without.

    Bonded later, the attachment no longer fits where the tooth has come to, or holds what is already done.

    Evidence: the amounts are those of movement without a hold. Teeth whose place along the path, or whose aligner of
    the attachment, is not told are not looked at.

    Passes: {"movements": [{"variable": "vertical", "unit": "mm", "values": {"13": 1.5}}], "aligners": {"upper": 15},
             "attachments": [{"tooth": "13", "from_aligner": 3}],
             "stages": [{"aligner": 10, "arch": "upper",
                         "movements": [{"variable": "vertical", "unit": "mm", "values": {"13": 1}}]}]}
    Fails: {"movements": [{"variable": "vertical", "unit": "mm", "values": {"13": 1.5}}], "aligners": {"upper": 15},
            "attachments": [{"tooth": "13", "from_aligner": 11}],
            "stages": [{"aligner": 10, "arch": "upper",
                        "movements": [{"variable": "vertical", "unit": "mm", "values": {"13": 1}}]}]}
    """
    for key, found in grouped((late.need.key, late) for late in _late(held)).items():
        need, gone, first = max(found, key=lambda late: late.gone)
        facts: Facts = {"tooth": need.tooth, "motion": motions([n for n, *_ in found]), "gone": gone, "first": first}
        facts |= {"unit": VARIABLE_UNITS[need.variable], "limit": held.limit(key)}
        teeth = list(dict.fromkeys(late.need.tooth for late in found))
        yield told(_attached_at(held, need.tooth), teeth=teeth, figures=(key,), **facts)


def _late(held: Held) -> Iterator[_Late]:
    for need in needs(held):
        way, first = held.ways.get((need.tooth, need.variable)), _first(held, need.tooth)
        gone = abs(place_after(way, first - 1)) if way and first else 0.0
        if first and above(gone, held.limit(need.key)) and not helped(held.chart, need.tooth):
            yield _Late(need, gone, first)


def _first(held: Held, tooth: str) -> int | None:
    """The aligner from which on a tooth carries an attachment; None where it carries none, or one at no time stated."""
    times = [one.from_aligner for one in held.setup.attachments or () if one.tooth == tooth]
    stated = [time for time in times if time is not None]
    return min(stated) if stated and len(stated) == len(times) else None


def _attached_at(held: Held, tooth: str) -> str:
    number = next(at for at, one in enumerate(held.setup.attachments or ()) if one.tooth == tooth)
    return f"/attachments/{number}/from_aligner"


@rule(
    "attachment-planned-on-doubtful-surface",
    Severity.CAUTION,
    title="The plan places attachments where they hold less surely.",
    says="The plan places attachments on {teeth:teeth}; by the prescription: {states:words}.",
    do="Ask for another tooth, or say how the surface is prepared.",
    change="Sound enamel of a permanent, erupted tooth would change it.",
)
def attachment_planned_on_doubtful_surface(held: Held) -> Iterator[Told]:
    """No attachment is planned on a crown, a veneer, a large filling, a partly erupted or, to move it, a primary tooth,
    unless the prescription asks for it by name.

    Resin on ceramic or metal needs a preparation of its own and comes off sooner; a tooth that erupts or is shed does
    not keep the shape the aligner was made on.

    Evidence: textbooks on bonding agree; no figure is used.

    Passes: {"attachments": [{"tooth": "15"}]}
    Fails: {"prescription": {"teeth": {"upper": ["16", "15", "14"], "lower": [],
                                       "particulars": [{"tooth": "15", "states": ["crown"]}]}},
            "attachments": [{"tooth": "15"}]}
    """
    states = {tooth: held.chart.state(tooth, *_NOT_ENAMEL, "partly-erupted") for tooth in _own(held)}
    primary = {tooth: "primary" for tooth in _own(held) if is_primary(tooth) and not _only_retained(held, tooth)}
    yield from _placed(held, {tooth: state for tooth, state in (states | primary).items() if state})


@rule(
    "attachment-planned-where-none-holds",
    Severity.ASK,
    title="The plan places attachments where there is no tooth to carry one.",
    says="The plan places attachments on {teeth:teeth}; by the prescription: {states:words}.",
    do="Ask which tooth is meant, or correct its state in the prescription.",
    change="A tooth that is in the mouth and can be moved would change it.",
)
def attachment_planned_where_none_holds(held: Held) -> Iterator[Told]:
    """No attachment is planned on a tooth that is not in the mouth, has not erupted, or is an implant or a pontic; for
    retention alone one may be wanted on a false tooth.

    Either the number is a slip, or the tooth is: in both cases an attachment is missing where it was meant.

    Evidence: none is needed. Teeth the setup itself takes out are looked at with its other parts.

    Passes: {"attachments": [{"tooth": "17"}]}
    Fails: {"attachments": [{"tooth": "18"}]}
    """
    listed = {*held.chart.rx.teeth.upper, *held.chart.rx.teeth.lower}
    states = {tooth: None if tooth in listed else "not-listed-as-present" for tooth in _own(held)}
    acting = [tooth for tooth in _own(held) if not _only_retained(held, tooth)]
    states |= {tooth: state for tooth in acting if (state := held.chart.state(tooth, *_NO_CROWN))}
    yield from _placed(held, {tooth: state for tooth, state in states.items() if state})


def _own(held: Held) -> list[str]:
    """The teeth on which the laboratory places an attachment that the prescription does not ask for by name."""
    taken = set(held.setup.extractions or ())
    carriers = dict.fromkeys(one.tooth for one in held.setup.attachments or ())
    return [tooth for tooth in carriers if tooth not in taken and stance(held.chart, tooth).member not in WANTED]


def _only_retained(held: Held, tooth: str) -> bool:
    return all(one.reason == "retention" for one in held.setup.attachments or () if one.tooth == tooth)


def _placed(held: Held, states: dict[str, str]) -> Iterator[Told]:
    if states:
        teeth = [one.tooth for one in held.setup.attachments or ()]
        pointer = f"/attachments/{min(teeth.index(tooth) for tooth in states)}"
        yield told(pointer, teeth=list(states), states=list(dict.fromkeys(states.values())))


RULES = (
    *(planned_movement_without_hold, attachment_planned_after_movement),
    *(attachment_planned_on_doubtful_surface, attachment_planned_where_none_holds),
)
