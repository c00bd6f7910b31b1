"""Attachments: refused where a movement needs one, asked for where none holds, or where nothing needs one."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.aids import WANTED, Stance, attached, stance, unaided
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import is_primary

_NEEDS = ("auxiliary.rotation", "auxiliary.extrusion.any", "auxiliary.torque", "auxiliary.tip", "auxiliary.bodily")
_NOT_ENAMEL = ("crown", "veneer", "large-filling")
_FALSE_TEETH = ("pontic", "implant")
_REFUSED, _UNWISHED = ("must_not", "none"), ("prefer_not",)


@rule(
    "attachment-refused-but-needed",
    Severity.ASK,
    title="No attachment may be placed where an ordered movement needs one.",
    says="{refused:clause}, but {asked:clause}: aligners seldom move {teeth:list} so far without a hold.",
    do="Decide between the movement and the tooth without an attachment, or name another auxiliary.",
    change="An attachment, a button or an elastic on {teeth:list}, or a movement below the amount, would change it.",
    figures=_NEEDS,
)
def attachment_refused_but_needed(chart: Chart) -> Iterator[Told]:
    """No tooth is refused an attachment whose ordered movement asks for one: rotation of a canine or premolar,
    extrusion, movement of the root, or of crown and root together, beyond the amount given in the norms.

    An aligner slips on a round or tapering crown, and bends instead of moving a root. Without a hold the movement
    fails, and which of the two orders gives way would be left to the laboratory.

    Evidence: no published threshold was found. The amounts are those of textbooks; the review of Rossini et al.
    (2015) and pooled cohorts agree on which movements are weak. Simulations agree that a hold helps a rotation.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["13"], "motion": "mesiolingual-rotation",
                            "at_least": 20, "unit": "deg"}],
             "attachments": [{"id": "t1", "must_not": ["11", "21"]}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["13"], "motion": "mesiolingual-rotation",
                           "at_least": 20, "unit": "deg", "overcorrection": {"value": 5, "unit": "deg"}}],
            "attachments": [{"id": "t1", "must_not": ["13"]}]}
    """
    for place in chart.of("attachments"):
        yield from _without_help(chart, place, _REFUSED)


@rule(
    "wish-against-needed-attachment",
    Severity.NOTE,
    title="A wish for no attachment stands against a movement that needs one.",
    says="{refused:clause}, a wish only; {asked:clause} asks for one on {teeth:list}, so one may be placed there.",
    do="Leave it so, or say whether the movement or the wish goes first.",
    change="A movement below the amount, or another auxiliary there, would change it.",
    figures=_NEEDS,
)
def wish_against_needed_attachment(chart: Chart) -> Iterator[Told]:
    """No attachment is wished away from a tooth whose ordered movement asks for one.

    A wish yields to what must be, so the patient may see an attachment where none was wished for.

    Evidence: as for `attachment-refused-but-needed`: the amounts are those of textbooks.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["13"], "motion": "mesiolingual-rotation",
                            "at_least": 20, "unit": "deg"}],
             "attachments": [{"id": "t1", "prefer_not": ["11", "21"]}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["13"], "motion": "mesiolingual-rotation",
                           "at_least": 20, "unit": "deg", "overcorrection": {"value": 5, "unit": "deg"}}],
            "attachments": [{"id": "t1", "prefer_not": ["13"]}]}
    """
    for place in chart.of("attachments"):
        yield from _without_help(chart, place, _UNWISHED)


def _without_help(chart: Chart, place: Place, members: tuple[str, ...]) -> Iterator[Told]:
    """One finding of an attachment clause: the orders whose teeth it leaves without the help they ask for."""
    here = [move for move in chart.moves if stance(chart, move.tooth) in {Stance(name, place) for name in members}]
    needs = {move: key for move in here if (key := unaided(chart, move))}
    if needs:
        places = list(dict.fromkeys(move.place for move in needs))
        asked = [said(one.part) for one in places]
        facts = {
            "teeth": list(dict.fromkeys(move.tooth for move in needs)),
            "figures": tuple(dict.fromkeys(needs.values())),
        }
        yield told(
            place.pointer, place.owner, *(one.owner for one in places), refused=said(place.part), asked=asked, **facts
        )


@rule(
    "attachment-on-restored-tooth",
    Severity.CAUTION,
    title="An attachment is asked for on a surface that is not enamel.",
    says="{asked:clause}, but on {teeth:list} the surface may not be enamel ({states:words}): resin holds there less "
    "surely, and may mark it when it comes off.",
    do="Say that the tooth is meant and how the surface is prepared, or name another tooth.",
    change="Sound enamel where the attachment goes, or another tooth, would change it.",
)
def attachment_on_restored_tooth(chart: Chart) -> Iterator[Told]:
    """No attachment must be placed, or is wished for, on a crown, a veneer, a large filling, or a false tooth.

    Resin on ceramic or metal needs a preparation of its own, comes off sooner, and may spoil the glaze.

    Evidence: textbooks on bonding agree; how much sooner depends on material and preparation, and no figure is used.

    Passes: {"attachments": [{"id": "t1", "must": ["15"], "reason": "retention"}]}
    Fails: {"teeth": {"upper": ["16", "15", "14"], "lower": [], "particulars": [{"tooth": "15", "states": ["crown"]}]},
            "attachments": [{"id": "t1", "must": ["15"], "reason": "retention"}]}
    """
    for place in chart.of("attachments"):
        held = place.said("reason") == "retention"
        states = (*_NOT_ENAMEL, *_FALSE_TEETH) if held else _NOT_ENAMEL
        fixed = () if held else chart.mouth.locked
        stated = {tooth: chart.state(tooth, *states) for tooth in attached(place, *WANTED) if tooth not in fixed}
        yield from _on(place, {tooth: state for tooth, state in stated.items() if state})


@rule(
    "attachment-on-changing-tooth",
    Severity.CAUTION,
    title="An attachment is asked for on a tooth that will be shed or is still erupting.",
    says="{asked:clause}, but {teeth:list} will not stay as scanned ({states:words}) while the aligners are worn.",
    do="Say that it is meant, or name a tooth that stays as it is.",
    change="A permanent tooth fully in the mouth would change it; on a primary tooth retention as the reason would.",
)
def attachment_on_changing_tooth(chart: Chart) -> Iterator[Told]:
    """No attachment must be placed, or is wished for, on a partly erupted tooth, nor to move a primary one.

    An erupting crown grows out of the shape the aligner was made on; a primary tooth loosens with its attachment.
    For retention alone a firm primary molar is often used, and nothing is said of that.

    Evidence: common practice; no study of it was found.

    Passes: {"teeth": {"upper": ["16", "55", "14"], "lower": []},
             "attachments": [{"id": "t1", "must": ["55"], "reason": "retention"}]}
    Fails: {"teeth": {"upper": ["17", "16", "15"], "lower": [],
                      "particulars": [{"tooth": "17", "states": ["partly-erupted"]}]},
            "attachments": [{"id": "t1", "must": ["17"], "reason": "retention"}]}
    """
    for place in chart.of("attachments"):
        primary = (
            {} if place.said("reason") == "retention" else dict.fromkeys(filter(is_primary, _teeth(place)), "primary")
        )
        erupting = {tooth: state for tooth in _teeth(place) if (state := chart.state(tooth, "partly-erupted"))}
        yield from _on(place, primary | erupting)


@rule(
    "attachment-on-unerupted-tooth",
    Severity.ASK,
    title="An attachment is asked for on a tooth that has not erupted.",
    says="{asked:clause}, but stated of {teeth:list} is {states:words}: there is no crown to place it on.",
    do="Correct the tooth or its state, or say when the attachment is to be placed.",
    change="A tooth that is in the mouth would change it.",
)
def attachment_on_unerupted_tooth(chart: Chart) -> Iterator[Told]:
    """No attachment is asked for, wished for or allowed on a tooth that is stated as unerupted.

    Either the tooth or its state is a slip; if neither is, the laboratory cannot know when to make it.

    Evidence: none is needed.

    Passes: {"teeth": {"upper": ["16", "15"], "lower": [], "particulars": [{"tooth": "17", "states": ["unerupted"]}]},
             "attachments": [{"id": "t1", "must_not": ["17"]}]}
    Fails: {"teeth": {"upper": ["16", "15"], "lower": [], "particulars": [{"tooth": "17", "states": ["unerupted"]}]},
            "attachments": [{"id": "t1", "must": ["17"]}]}
    """
    for place in chart.of("attachments"):
        named = attached(place, *WANTED, "may")
        yield from _on(place, {tooth: state for tooth in named if (state := chart.state(tooth, "unerupted"))})


def _teeth(place: Place) -> tuple[str, ...]:
    return attached(place, *WANTED)


def _on(place: Place, stated: dict[str, str]) -> Iterator[Told]:
    """One finding of an attachment clause: the teeth that are not ordinary, and why."""
    if stated:
        states = list(dict.fromkeys(stated.values()))
        yield told(place.pointer, place.owner, asked=said(place.part), teeth=list(stated), states=states)


RULES = (
    *(attachment_refused_but_needed, wish_against_needed_attachment, attachment_on_restored_tooth),
    *(attachment_on_changing_tooth, attachment_on_unerupted_tooth),
)
