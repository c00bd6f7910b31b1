"""The whole mouth: illness and medicine that an order of tooth movement has to reckon with."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.rules._acts import is_done
from wellposed.rules._declare import Told, rule, told
from wellposed.rules.aids import orders
from wellposed.rules.chart import Chart

_POCKETS = ("mouth.pocket-depth.bleeding", "mouth.pocket-depth.any")


@rule(
    "active-periodontitis",
    Severity.STOP,
    title="Teeth are to be moved while periodontitis is active.",
    says="active periodontitis is stated, teeth are to be moved, and no periodontal treatment is stated to come first.",
    do="Have the disease treated, or refer; if treatment comes first, state it as a step before the movement.",
    change="Periodontitis stated as treated, or a step of periodontal treatment before a clause, would change it.",
    sources=("herrera-2022",),
)
def active_periodontitis(chart: Chart) -> Iterator[Told]:
    """No goal and no movement stands beside active periodontitis, unless periodontal treatment is stated to come first.

    Moving teeth in inflamed tissue speeds the loss of bone. Treated and kept healthy, such teeth can be moved.

    Evidence: guidelines agree on treating first. Where bone is lost the same force tips a tooth more.

    Passes: {"conditions": [{"condition": "treated-periodontitis"}],
             "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    Fails: {"conditions": [{"condition": "active-periodontitis"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    """
    treated = any(p.said("step") == "periodontal-treatment" and p.said("before") for p in chart.of("process"))
    if not treated:
        yield from _while_moving(chart, "active-periodontitis")


@rule(
    "treated-periodontitis-moved",
    Severity.NOTE,
    title="Teeth that have lost support are to be moved.",
    says="treated periodontitis is stated: the guideline moves teeth only where no pocket of {bleeding:mm} that bleeds "
    "and none of {any:mm} is left.",
    do="Look at the last charting, and say who keeps the gums healthy during treatment.",
    change="Nothing, if the charting is new and support is looked after.",
    figures=_POCKETS,
)
def treated_periodontitis_moved(chart: Chart) -> Iterator[Told]:
    """Where periodontitis was treated, both sides know that pockets are charted before teeth are moved.

    With less bone the centre of resistance lies deeper, so teeth tip more; if inflammation comes back, support is lost.

    Evidence: the depths are those of a European guideline, recalled and not read again.

    Passes: {"conditions": [{"condition": "treated-periodontitis"}]}
    Fails: {"conditions": [{"condition": "treated-periodontitis"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    """
    limits = {"bleeding": chart.limit(_POCKETS[0]), "any": chart.limit(_POCKETS[1])}
    yield from _while_moving(chart, "treated-periodontitis", figures=_POCKETS, **limits)


@rule(
    "antiresorptive-medication",
    Severity.STOP,
    title="Teeth are to be moved under medicine that slows the turnover of bone.",
    says="medicine that slows the turnover of bone is stated, teeth are to be moved, and nothing is said beside it.",
    do="Ask the physician who prescribes it, or refer; then say in words at the condition what was agreed.",
    change="Words at the condition on what was agreed with the physician would change it.",
)
def antiresorptive_medication(chart: Chart) -> Iterator[Told]:
    """No goal and no movement stands beside antiresorptive medicine about which nothing is said in words.

    Teeth move slowly or not at all under it, and an injury to the bone may not heal.

    Evidence: reports and reviews agree on the direction; which dose and duration matter is not settled.

    Passes: {"conditions": [{"condition": "antiresorptive-medication", "words": "agreed with the physician, low dose"}],
             "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    Fails: {"conditions": [{"condition": "antiresorptive-medication"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    """
    for place in chart.condition("antiresorptive-medication"):
        if not place.said("words") and any(orders(chart)):
            yield told(place.pointer)


@rule(
    "antiresorptive-medication-in-words",
    Severity.CAUTION,
    title="Teeth are to be moved under medicine that slows the turnover of bone; words are there, and are not checked.",
    says="medicine that slows the turnover of bone is stated with words beside it, which are not checked here.",
    do="Read in the words what was agreed with the physician, and ask where they do not say it.",
    change="Nothing in the order; the medicine remains to be reckoned with.",
)
def antiresorptive_medication_in_words(chart: Chart) -> Iterator[Told]:
    """Where antiresorptive medicine is stated with words, both sides are told that teeth are to be moved under it.

    Words cannot be weighed here. They may say that all is agreed, or the opposite.

    Evidence: as for `antiresorptive-medication`.

    Passes: {"conditions": [{"condition": "antiresorptive-medication", "words": "agreed with the physician"}]}
    Fails: {"conditions": [{"condition": "antiresorptive-medication", "words": "agreed with the physician"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    """
    for place in chart.condition("antiresorptive-medication"):
        if place.said("words") and any(orders(chart)):
            yield told(place.pointer)


@rule(
    "active-caries",
    Severity.CAUTION,
    title="Teeth are to be moved while decay is untreated.",
    says="untreated decay is stated and teeth are to be moved: a filling made after the scan changes the tooth that "
    "the aligners were made on.",
    do="Have the teeth treated first, and scan again, or say why it can wait.",
    change="A new scan stated as a step, or no untreated decay, would change it.",
)
def active_caries(chart: Chart) -> Iterator[Told]:
    """No goal and no movement stands beside active caries, unless a new scan is stated as a step.

    Aligners keep saliva off the teeth most of the day, and a tooth that is filled later no longer fits them.

    Evidence: common practice; textbooks agree that decay is treated first.

    Passes: {"conditions": [{"condition": "active-caries"}], "process": [{"id": "q1", "step": "new-scan"}],
             "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    Fails: {"conditions": [{"condition": "active-caries"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    """
    if not is_done(chart, "new-scan"):
        yield from _while_moving(chart, "active-caries")


@rule(
    "jaw-joint-disorder",
    Severity.CAUTION,
    title="Teeth are to be moved while a jaw joint hurts or does not move freely.",
    says="a disorder of the jaw joint is stated and teeth are to be moved: the bite that was recorded may not be the "
    "one the joint will settle in.",
    do="Say that the joint is quiet and in which bite the records were taken, or let it settle or refer first.",
    change="A joint that is quiet, and not stated as disordered, would change it.",
)
def jaw_joint_disorder(chart: Chart) -> Iterator[Told]:
    """No goal and no movement stands beside a disorder of the jaw joint.

    Pain or a locked joint changes how the jaw closes, and aligners between the teeth change it again.

    Evidence: textbooks advise settling pain first; that tooth movement causes or cures such disorders is not shown.

    Passes: {"conditions": [{"condition": "jaw-joint-disorder"}]}
    Fails: {"conditions": [{"condition": "jaw-joint-disorder"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}]}
    """
    yield from _while_moving(chart, "jaw-joint-disorder")


def _while_moving(chart: Chart, name: str, **facts: object) -> Iterator[Told]:
    """One finding of each statement of a condition, if a goal or movement binds teeth to move."""
    for place in chart.condition(name):
        if any(orders(chart)):
            yield told(place.pointer, **facts)


RULES = (
    *(active_periodontitis, treated_periodontitis_moved, antiresorptive_medication),
    *(antiresorptive_medication_in_words, active_caries, jaw_joint_disorder),
)
