"""Front to back: molars that go back, third molars in their way, Class II and III and what could correct them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.kinematics.openings import molars
from wellposed.model.clauses import KeepMeasure
from wellposed.model.means import AnyMovement, ArchSlide
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import ARCHES, LOWER, SIDES, UPPER, arch_of, is_molar, position, side_of, tooth_at

PREDICTABLE = "caution.distal"
ACHIEVED = "achieved.molar-distal"
RELEVANT = "achieved.relevant-error.mm"
_FIRST, _THIRD = 6, 8


class Slide(NamedTuple):
    """Molars of one arch that a clause moves, or may move, along it: sign + mesially, amount in mm."""

    place: Place
    arch: str
    teeth: tuple[str, ...]
    sign: int
    amount: float


@rule(
    "relation-kept-molars-moved",
    Severity.CAUTION,
    title="Molars of one arch may be moved further than the molar relation that is kept lets them.",
    says="{asked:clause}: the {sides:list} molar relation is kept, and the opposing molars do not follow as far;"
    " {amount:mm} of it cannot be used.",
    do="Say which holds: the relation, or the movement of these molars.",
    change="A wider tolerance of the relation, or as much movement of the opposing molars, settles it.",
    figures=(RELEVANT,),
)
def relation_kept_molars_moved(chart: Chart) -> Iterator[Told]:
    """An allowance to move the molars of one arch goes no further than the kept molar relation and the opposing molars
    let it.

    The laboratory would find room in it that the relation takes back, or read it as a wish to give the relation up.

    Evidence: arithmetic; differences of half a millimetre are let pass. That an order breaks a kept relation is proven
    elsewhere.

    Passes: {"keep": [{"id": "k1", "strength": "must", "measure": "molar-relation-right", "within": 0.5, "unit": "mm"},
                      {"id": "k2", "strength": "must", "measure": "molar-relation-left", "within": 0.5, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "distal-movement", "arch": "upper", "up_to": 2, "unit": "mm"},
                       {"id": "a2", "use": "distal-movement", "arch": "lower", "up_to": 2, "unit": "mm"}]}
    Fails: {"keep": [{"id": "k1", "strength": "must", "measure": "molar-relation-right", "within": 0.5, "unit": "mm"},
                     {"id": "k2", "strength": "must", "measure": "molar-relation-left", "within": 0.5, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "distal-movement", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    """
    for slide in _slides(chart):
        sides = [side for side in SIDES if tooth_at(slide.arch, side, _FIRST) in slide.teeth]
        kept = {side: found for side in sides if (found := _relation_kept(chart, side))}
        if slide.place.section == "allow" and sides and len(kept) == len(sides):
            useless = min(slide.amount - _room(chart, slide, side, keep) for side, keep in kept.items())
            if round(useless, 2) > chart.limit(RELEVANT):
                ids = (slide.place.owner, *(keep.id for keep in kept.values()))
                facts = {"sides": sides, "amount": round(useless, 2), "figures": (RELEVANT,)}
                yield told(slide.place.pointer, *ids, asked=said(slide.place.part), **facts)


@rule(
    "distal-beyond-predictable",
    Severity.CAUTION,
    title="Molars are to go back further than aligners alone do it predictably.",
    says="{asked:clause}: beyond {limit:mm} in the {arch} arch little is known; of what was planned, upper molars"
    " reached {achieved:percent} on average, lower ones less.",
    do="Say by what means it is held, or what is accepted if it falls short.",
    change="An anchor in the bone in the order, or {limit:mm} or less, settles it.",
    figures=(PREDICTABLE, ACHIEVED),
)
def distal_beyond_predictable(chart: Chart) -> Iterator[Told]:
    """No molar is moved distally, or may be, beyond what aligners alone are known to do, unless an anchor in the bone
    is planned.

    What the molars do not reach is missing in front, and the front gives way instead.

    Evidence: studies of aligners cover up to about 3 mm in the upper jaw and disagree on what is reached, from a half
    to nearly nine tenths; of the lower jaw less is known.

    Passes: {"allow": [{"id": "a1", "use": "distal-movement", "arch": "upper", "up_to": 3, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "distal-movement", "arch": "lower", "up_to": 2.5, "unit": "mm"}]}
    """
    screws = any(place.said("auxiliary") == "bone-screw" for place in chart.allowed("auxiliary"))
    for arch in () if screws else ARCHES:
        key = f"{PREDICTABLE}.{arch}-molars"
        beyond = [s for s in _distal(chart) if s.arch == arch and s.amount > chart.limit(key)]
        if beyond:
            places = tuple(dict.fromkeys(slide.place for slide in beyond))
            facts = {"arch": arch, "limit": chart.limit(key), "achieved": chart.limit(ACHIEVED)}
            asked = [said(place.part) for place in places]
            owners = (place.owner for place in places)
            yield told(places[0].pointer, *owners, asked=asked, figures=(key, ACHIEVED), **facts)


@rule(
    "distal-with-third-molars",
    Severity.ASK,
    title="Molars are to go back, and third molars stand or lie behind them.",
    says="{asked:clause}: {teeth:teeth} is behind, and nothing is said of it.",
    do="Say whether the third molars go before, move along, or stay.",
    change="A clause or a step that names the third molar, or one that is not there, settles it.",
)
def distal_with_third_molars(chart: Chart) -> Iterator[Told]:
    """Where molars are moved distally, or may be, the third molar behind them, erupted or not, is spoken of:
    extracted, moved, held, excluded or named in a step.

    A third molar in the way stops the second, and the plan with it; one under the gum is easily overlooked.

    Evidence: common practice; how much a third molar hinders the movement is disputed.

    Passes: {"allow": [{"id": "a1", "use": "distal-movement", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    Fails: {"teeth": {"upper": ["18", "17", "16", "15", "14", "13", "12", "11", "21", "22", "23", "24", "25", "26"],
                      "lower": ["47", "46", "45", "44", "43", "42", "41", "31", "32", "33", "34", "35", "36"]},
            "allow": [{"id": "a1", "use": "distal-movement", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    """
    blocked: dict[str, Place] = {}
    for slide in _distal(chart):
        behind = (tooth_at(slide.arch, side_of(tooth), _THIRD) for tooth in slide.teeth)
        blocked |= {tooth: slide.place for tooth in behind if tooth in _unmentioned(chart)}
    if blocked:
        places = tuple(dict.fromkeys(blocked.values()))
        asked = [said(place.part) for place in places]
        yield told(places[0].pointer, *(place.owner for place in places), asked=asked, teeth=sorted(blocked))


# molars along the arch


def _slides(chart: Chart) -> Iterator[Slide]:
    """Every order and allowance that moves molars along their arch."""
    for place in chart.of("movements"):
        moves = [m for m in chart.moved("along") if m.place == place and is_molar(m.tooth)]
        for arch in ARCHES:
            teeth = tuple(move.tooth for move in moves if arch_of(move.tooth) == arch)
            if teeth:
                yield Slide(place, arch, teeth, moves[0].sign, max(move.reach for move in moves))
    for place in chart.of("allow"):
        yield from _allowed(chart, place)


def _allowed(chart: Chart, place: Place) -> Iterator[Slide]:
    part = place.part
    if isinstance(part, ArchSlide):
        teeth = tuple(t for t in part.teeth or molars(chart.mouth, part.arch, part.sides or SIDES) if is_molar(t))
        yield Slide(place, part.arch, teeth, 1 if part.use == "mesial-movement" else -1, part.up_to)
    elif isinstance(part, AnyMovement) and MOTIONS[part.motion].variable == "along":
        for arch in ARCHES:
            teeth = tuple(t for t in part.teeth if is_molar(t) and arch_of(t) == arch)
            yield Slide(place, arch, teeth, MOTIONS[part.motion].sign, part.up_to)


def _distal(chart: Chart) -> Iterator[Slide]:
    return (slide for slide in _slides(chart) if slide.sign < 0 and slide.teeth and slide.amount > 0)


def _unmentioned(chart: Chart) -> frozenset[str]:
    """Third molars that are there, stay, and are named in no clause and no step."""
    clauses = ("movements", "allow", "exclude", "keep", "process")
    named = {mention.name for mention in chart.whole.teeth if mention.place.section in clauses}
    thirds = {tooth for tooth in chart.whole.present if position(tooth) == _THIRD}
    return frozenset(thirds - named - chart.mouth.extracted.keys())


def _relation_kept(chart: Chart, side: str) -> KeepMeasure | None:
    """The keep of a side's molar relation, unless a change of it is expected."""
    measure = f"molar-relation-{side}"
    if any(place.said("measure") == measure for place in chart.of("expect", "goals")):
        return None
    kept = (place.part for place in chart.of("keep"))
    return next((k for k in kept if isinstance(k, KeepMeasure) and k.measure == measure), None)


def _room(chart: Chart, slide: Slide, side: str, keep: KeepMeasure) -> float:
    """How far the molars of a side may go: the tolerance, and as far as the opposing one may follow, mm."""
    opposing = tooth_at(LOWER if slide.arch == UPPER else UPPER, side, _FIRST)
    return keep.within + chart.reach(opposing, "along", slide.sign)


RULES = (relation_kept_molars_moved, distal_beyond_predictable, distal_with_third_molars)
