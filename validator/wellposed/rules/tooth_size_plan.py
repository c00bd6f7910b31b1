"""What an order does about teeth that are too wide for the others: reduces, adds, leaves room, or nothing."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.derive.tooth_size import FRONT, WHOLE
from wellposed.findings import Severity
from wellposed.model.clauses import Align, Close, CloseArch, Leave, Reach
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._enamel import FRONT as IN_FRONT
from wellposed.rules._enamel import named, share_of, taken
from wellposed.rules._sizes import FRONT_TEETH, SMALLER, STRICT, USUAL, Excess, excesses, front_excess, reached
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import ARCHES, SIDES

CLASS_I = "normal.relation.class-i"
OVERJET = ("normal.overjet.least", "normal.overjet.most")
BUILD_UP = ("build-up-before", "build-up-after")
MEANS = {FRONT: "tooth-size.anterior", WHOLE: "tooth-size.overall"}


def _mean(excess: Excess) -> tuple[str, ...]:
    """The key of the mean ratio an excess was worked out with."""
    return (MEANS[excess.teeth],) if excess.teeth else ()


@rule(
    "tooth-size-excess-not-answered",
    Severity.ASK,
    title="The front teeth do not fit in size, and the order neither reduces, nor builds up, nor leaves room.",
    says="The {arch} front teeth are {amount:mm} too wide for the others; Class I canines, an overjet of {overjet:mm}"
    " and closed spaces do not go together with that, and neither reduction nor build-up is planned.",
    do="Say where the difference goes: enamel, a build-up, room left, or canines or overjet off their usual place.",
    change="Reduction in the {arch} front, a build-up or room left in the other arch would settle it.",
    figures=(USUAL, CLASS_I, *OVERJET, *MEANS.values()),
)
def tooth_size_excess_not_answered(chart: Chart) -> Iterator[Told]:
    """An order that ends with Class I canines, a normal overjet and closed spaces answers an excess of the front teeth
    by reduction, build-up or room left.

    Otherwise the end cannot be reached: spaces reopen, the canines stay off, or the overjet does.

    Evidence: 2 mm is a convention from a population study, and 1.5 of a stricter school; the arithmetic is Bolton's.
    Looked at only where canines, overjet and the room of both arches are stated.

    Passes: {"findings": [{"id": "f1", "measure": "lower-tooth-size-excess", "value": 3, "unit": "mm"},
                {"id": "f2", "measure": "overjet", "value": 2.5, "unit": "mm"},
                {"id": "f3", "measure": "canine-relation-right", "value": 0, "unit": "mm"},
                {"id": "f4", "measure": "canine-relation-left", "value": 0, "unit": "mm"},
                {"id": "f5", "measure": "upper-crowding", "value": 0, "unit": "mm"},
                {"id": "f6", "measure": "lower-crowding", "value": 0, "unit": "mm"}],
             "process": [{"id": "q1", "step": "build-up-after", "teeth": ["12", "22"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-tooth-size-excess", "value": 3, "unit": "mm"},
               {"id": "f2", "measure": "overjet", "value": 2.5, "unit": "mm"},
               {"id": "f3", "measure": "canine-relation-right", "value": 0, "unit": "mm"},
               {"id": "f4", "measure": "canine-relation-left", "value": 0, "unit": "mm"},
               {"id": "f5", "measure": "upper-crowding", "value": 0, "unit": "mm"},
               {"id": "f6", "measure": "lower-crowding", "value": 0, "unit": "mm"}]}
    """
    excess, overjet = front_excess(chart), _end(chart, "overjet")
    if not excess or overjet is None or not reached(excess.amount, chart.limit(USUAL)):
        return
    low, high = map(chart.limit, OVERJET)
    ends = low <= overjet <= high and _canines_in_class_i(chart) and _filled(chart, excess.arch)
    if ends and not _answered(chart, excess.arch):
        ids = (*excess.ids, *chart.found("overjet", *(f"canine-relation-{side}" for side in SIDES)))
        facts = {"arch": excess.arch, "amount": excess.amount, "overjet": overjet}
        at = chart.place(excess.ids[0])
        yield told(at.pointer if at else "", *ids, **facts, figures=(USUAL, CLASS_I, *OVERJET, *_mean(excess)))


def _end(chart: Chart, measure: str) -> float | None:
    """Where a measure ends, mm: as it is, moved into the bounds of its goals; None where it is not stated."""
    value = chart.value(measure)
    for goal in chart.rx.goals or ():
        if isinstance(goal, Reach) and goal.measure == measure and value is not None:
            value = max(value, value if goal.at_least is None else goal.at_least)
            value = min(value, value if goal.at_most is None else goal.at_most)
    return value


def _canines_in_class_i(chart: Chart) -> bool:
    ends = [_end(chart, f"canine-relation-{side}") for side in SIDES]
    return all(end is not None and abs(end) <= chart.limit(CLASS_I) for end in ends)


def _filled(chart: Chart, arch: str) -> bool:
    """Whether both fronts end without spaces, and the arch of the wide teeth without crowding, as far as stated."""
    return all(map(chart.mouth.room_stated, ARCHES)) and all(
        not _left(chart, each)
        and (not chart.mouth.amount(f"{each}-spacing") or _closed(chart, each))
        and (each != arch or not chart.mouth.amount(f"{each}-crowding") or _aligned(chart, each))
        for each in ARCHES
    )


def _left(chart: Chart, arch: str) -> bool:
    leaves = [goal for goal in chart.rx.goals or () if isinstance(goal, Leave) and goal.amount > 0]
    return any(set(teeth_of(goal.leave)) & FRONT_TEETH[arch] for goal in leaves)


def _closed(chart: Chart, arch: str) -> bool:
    goals = chart.rx.goals or ()
    whole = any(isinstance(goal, CloseArch) and goal.close_arch == arch for goal in goals)
    named = {tooth for goal in goals if isinstance(goal, Close) for name in goal.close for tooth in teeth_of(name)}
    return whole or FRONT_TEETH[arch] <= named


def _aligned(chart: Chart, arch: str) -> bool:
    return any(FRONT_TEETH[arch] & set(goal.align) for goal in chart.rx.goals or () if isinstance(goal, Align))


def _answered(chart: Chart, arch: str) -> bool:
    """Whether the order reduces or extracts among the wide front teeth, or builds up among the others."""
    reduced = any(set(teeth_of(name)) & FRONT_TEETH[arch] for one in taken(chart) for name in one.contacts)
    steps = [place for place in chart.of("process") if place.said("step") in BUILD_UP]
    small = FRONT_TEETH[SMALLER[arch]]
    built = any(not place.said("teeth") or small & set(place.said("teeth")) for place in steps)
    return reduced or built or bool(set(chart.mouth.extracted) & (FRONT_TEETH["upper"] | FRONT_TEETH["lower"]))


@rule(
    "reduction-in-the-small-arch",
    Severity.CAUTION,
    title="More enamel may be taken among the relatively small front teeth than among the large ones.",
    says="{asked:clause}: the {larger} front teeth are {amount:mm} too wide for the {arch} ones, and most enamel is to"
    " go from the {arch} ones.",
    do="Look whether the arches were exchanged, or say why the difference is to grow.",
    change="As much reduction in the {larger} front, or an excess there below {limit:mm}, would settle it.",
    figures=(USUAL, *MEANS.values()),
)
def reduction_in_the_small_arch(chart: Chart) -> Iterator[Told]:
    """Where front teeth do not fit in size, no more enamel is to go in the arch of the small ones than in the other.

    It makes the difference larger, and overjet or spaces pay for it. It is what exchanging the arches looks like.

    Evidence: arithmetic, with the means of Bolton; 2 mm is a convention.

    Passes: {"findings": [{"id": "f1", "measure": "lower-tooth-size-excess", "value": 2.5, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-tooth-size-excess", "value": 2.5, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["11-21"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    excess = front_excess(chart)
    if not excess or not reached(excess.amount, chart.limit(USUAL)):
        return
    small = SMALLER[excess.arch]
    shares = {arch: [(one, share_of(one, arch, IN_FRONT)) for one in taken(chart)] for arch in ARCHES}
    here = [one for one, amount in shares[small] if amount > 0]
    if sum(amount for _, amount in shares[small]) > sum(amount for _, amount in shares[excess.arch]):
        facts = {"larger": excess.arch, "arch": small, "amount": excess.amount, "limit": chart.limit(USUAL)}
        asked, owners = [said(one.place.part) for one in here], [one.place.owner for one in here]
        yield told(here[0].place.pointer, *owners, *excess.ids, asked=asked, **facts, figures=(USUAL, *_mean(excess)))


@rule(
    "excess-supports-reduction",
    Severity.NOTE,
    title="A measured tooth-size excess supports the enamel reduction.",
    says="The {arch} teeth are {amount:mm} too wide for the others ({set}), which supports {asked:clause}; of the"
    " thresholds, the usual {usual:mm} and a stricter school's {strict:mm}, {reached}.",
    do="Nothing.",
    change="With an excess below {strict:mm} this would no longer be said.",
    figures=(USUAL, STRICT, *MEANS.values()),
)
def excess_supports_reduction(chart: Chart) -> Iterator[Told]:
    """Names a reduction that takes enamel in the arch whose teeth are measured as too wide, and by which threshold.

    Where schools disagree on when a discrepancy counts, both sides should see which one an order follows.

    Evidence: 2 mm is a convention from a population study and the default; 1.5 is that of a stricter school, recalled.

    Passes: {"findings": [{"id": "f1", "measure": "lower-tooth-size-excess", "value": 1, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-tooth-size-excess", "value": 1.6, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["41-31"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    for excess in excesses(chart):
        where = "" if excess.teeth == WHOLE else IN_FRONT
        here = [one for one in taken(chart) if share_of(one, excess.arch, where) > 0]
        if here and reached(excess.amount, chart.limit(STRICT)):
            usual, strict = chart.limit(USUAL), chart.limit(STRICT)
            both = "both are reached" if reached(excess.amount, usual) else "only the stricter is reached"
            facts = {"arch": excess.arch, "amount": excess.amount, "usual": usual, "strict": strict, "reached": both}
            over = f"over {excess.teeth} teeth" if excess.teeth else "as stated"
            asked, owners = [said(one.place.part) for one in here], [one.place.owner for one in here]
            figures = (USUAL, STRICT, *_mean(excess))
            yield told(here[0].place.pointer, *owners, *excess.ids, asked=asked, set=over, **facts, figures=figures)
            return


@rule(
    "build-up-and-reduction-at-one-tooth",
    Severity.ASK,
    title="One tooth is to be built up, and enamel is to be taken at it.",
    says="{teeth:teeth} is to be built up, and {asked:clause} takes enamel there, at {contacts:contacts}.",
    do="Say which surface loses and which gains, or take the tooth out of one of the two.",
    change="With the tooth in only one of the two clauses this no longer applies.",
)
def build_up_and_reduction_at_one_tooth(chart: Chart) -> Iterator[Told]:
    """No tooth is to be built up at which enamel is to be taken at a named contact.

    One makes it wider, the other narrower, and neither clause says which surface is meant.

    Evidence: none is needed. A tooth may lose on one side and gain on the other to bring it to its place; then the
    answer is short.

    Passes: {"process": [{"id": "q1", "step": "build-up-after", "teeth": ["12", "22"]}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["11-21"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"process": [{"id": "q1", "step": "build-up-after", "teeth": ["12", "22"]}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    steps = [place for place in chart.of("process") if place.said("step") in BUILD_UP and place.said("teeth")]
    for one in named(chart):
        built = [place for place in steps if any(_at(place, name) for name in one.contacts)]
        contacts = [name for name in one.contacts if any(_at(place, name) for place in built)]
        teeth = sorted({tooth for place in built for name in contacts for tooth in _at(place, name)})
        if contacts:
            owners, asked = (place.owner for place in built), said(one.place.part)
            yield told(one.place.pointer, one.place.owner, *owners, asked=asked, teeth=teeth, contacts=contacts)


def _at(place: Place, contact: str) -> set[str]:
    """The teeth of a contact that a step names."""
    return set(place.said("teeth")) & set(teeth_of(contact))


RULES = (
    *(tooth_size_excess_not_answered, reduction_in_the_small_arch, excess_supports_reduction),
    build_up_and_reduction_at_one_tooth,
)
