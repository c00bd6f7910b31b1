"""What helps a tooth to move: attachments as ordered, buttons, screws, elastics; and what asks for such help."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from itertools import groupby
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.kinematics.openings import sensed
from wellposed.rules._declare import Told, said, told
from wellposed.rules.chart import Chart, Move
from wellposed.vocabulary.motions import VARIABLES, Variable
from wellposed.vocabulary.teeth import is_canine, is_premolar

WANTED = ("must", "prefer")
CARRYING = (*WANTED, "may", "laboratory-decides")
_LISTS = ("must", "must_not", "may", "prefer", "prefer_not")
_HOOKS = ("button-opening", "elastic-notch", "elastic")
_BITTEN_ON = ("bite-plane", "bite-block")
_SENSES = (1, -1)


class Stance(NamedTuple):
    """How a tooth stands to attachments: the member, or the term of ``otherwise``, that covers it ("": none)."""

    member: str
    place: Place | None


def stance(chart: Chart, tooth: str) -> Stance:
    """The list that names a tooth, else what holds for the teeth not named."""
    rest = Stance("", None)
    for place in chart.of("attachments"):
        member = next((name for name in _LISTS if tooth in (place.said(name) or ())), None)
        if member:
            return Stance(member, place)
        if place.said("otherwise"):
            rest = Stance(place.said("otherwise"), place)
    return rest


def attached(place: Place, *members: str) -> tuple[str, ...]:
    """The teeth an attachment clause names in these members."""
    return tuple(tooth for member in members for tooth in place.said(member) or ())


def helped(chart: Chart, tooth: str) -> bool:
    """Whether a button, screw or elastic acts on a tooth; an auxiliary that names no teeth may act on any."""
    holding = (p for p in chart.allowed("auxiliary", "elastics") if p.said("auxiliary") not in _BITTEN_ON)
    allowed = (p for p in holding if tooth in (p.said("teeth") or (tooth,)))
    built = (p for p in chart.of("appliance") if p.said("part") in _HOOKS)
    hooked = (tooth in (*(p.said("teeth") or ()), p.said("start"), p.said("end")) for p in built)
    return any(True for _ in allowed) or any(hooked)


def answered(chart: Chart, move: Move) -> bool:
    """Whether an order goes with what makes up for a shortfall: overcorrection, an attachment, another auxiliary."""
    overcorrected = move.place.said("overcorrection") is not None
    return overcorrected or stance(chart, move.tooth).member in CARRYING or helped(chart, move.tooth)


def refused(chart: Chart, move: Move) -> bool:
    """Whether an order asks for help and its tooth is refused an attachment: that is told of the attachment."""
    return bool(stance(chart, move.tooth).member) and unaided(chart, move) is not None


def unaided(chart: Chart, move: Move) -> str | None:
    """The norm that an order which must hold passes, where the tooth may carry no attachment and nothing else helps."""
    binding = move.place.said("strength") == "must"
    alone = stance(chart, move.tooth).member not in CARRYING and not helped(chart, move.tooth)
    return asks_for_help(chart, move) if binding and alone else None


def openers(chart: Chart, tooth: str, *variables: Variable) -> tuple[Place, ...]:
    """The clauses, keeps left out, that let a tooth move in these variables (in any, if none is named)."""
    places = (chart.place(owner) for owner in _owners(chart, tooth, *variables))
    return tuple(place for place in places if place and place.section != "keep")


def is_moved(chart: Chart, tooth: str) -> bool:
    """Whether anything but a keep lets a tooth move, be it only the state of a neighbour that goes."""
    places = [chart.place(owner) for owner in _owners(chart, tooth)]
    return any(place is None or place.section != "keep" for place in places)


def _owners(chart: Chart, tooth: str, *variables: Variable) -> Iterable[str]:
    """What opens these variables of a tooth: ids of clauses, and numbers of teeth whose state says that they go."""
    sources = (
        source.owner
        for variable in variables or VARIABLES
        for sign in _SENSES
        for source in chart.opened.sources(sensed(tooth, variable, sign))
        if source.amount > 0
    )
    return dict.fromkeys(sources)


def orders(chart: Chart, section: str = "") -> Iterator[Place]:
    """The clauses that bind teeth to move: goals and movements, or one section of them."""
    sections = (section,) if section else ("goals", "movements")
    return (place for place in chart.of(*sections) if place.said("id"))


def asks_for_help(chart: Chart, move: Move) -> str | None:
    """The norm whose amount an ordered movement passes, so that it asks for an attachment or another auxiliary."""
    key = _threshold(chart, move)
    return key if key and move.sure > chart.limit(key) else None


def _threshold(chart: Chart, move: Move) -> str | None:
    tooth, variable, sign = move.tooth, move.variable, move.sign
    if variable == "rotation":
        return turning(tooth)
    if variable == "vertical":
        return "auxiliary.extrusion.any" if sign > 0 else None
    if variable == "torque":
        return "auxiliary.torque" if "root" in str(move.place.said("motion")) else None
    if variable == "tip":
        return None if chart.reach(tooth, "along", sign) else "auxiliary.tip"
    leaning: Variable = "tip" if variable == "along" else "torque"
    return None if any(chart.reach(tooth, leaning, one) for one in _SENSES) else "auxiliary.bodily"


def turning(tooth: str) -> str | None:
    """The norm of turning a tooth that is round, so that an aligner slips on it; None of any other tooth."""
    if is_canine(tooth):
        return "auxiliary.rotation.canines"
    return "auxiliary.rotation.premolars" if is_premolar(tooth) else None


class Short(NamedTuple):
    """A movement clause, and those of its teeth that go beyond a limit with nothing to make up for a shortfall."""

    place: Place
    teeth: list[str]

    def told(self, *figures: str, **facts: object) -> Told:
        asked = {"asked": said(self.place.part), "teeth": self.teeth}
        return told(self.place.pointer, self.place.owner, figures=figures, **asked, **facts)


def short_of(
    chart: Chart, variable: Variable, sign: int, limit: str, among: Callable[[str], bool], most: float | None = None
) -> Iterator[Short]:
    """Clauses that order more of a movement than a limit (and, if given, no more than ``most``), by their teeth."""
    least = chart.limit(limit)
    moves = (move for move in chart.moved(variable, sign) if among(move.tooth) and least < move.sure)
    within = (move for move in moves if most is None or move.reach <= most)
    open_to_doubt = (move for move in within if not answered(chart, move) and not refused(chart, move))
    for place, group in groupby(open_to_doubt, lambda move: move.place):
        yield Short(place, [move.tooth for move in group])
