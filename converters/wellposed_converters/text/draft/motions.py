"""What teeth do: align, level, rotate, tip, torque, incline, intrude, extrude, move."""

from __future__ import annotations

from typing import Final

from wellposed.vocabulary.motions import Motion, unit_of
from wellposed.vocabulary.teeth import arch_of, is_incisor, position
from wellposed_converters.text.checks.data import data as checks
from wellposed_converters.text.draft.bites import arches, told
from wellposed_converters.text.draft.data import data, motion
from wellposed_converters.text.draft.off_line import turned
from wellposed_converters.text.draft.part import Amount, Facts, NotCarried, Part, plain
from wellposed_converters.text.draft.staying import forbidden, kept

MEANS: Final = "means"
OPPOSITE: Final = {"inwards": "outwards", "outwards": "inwards"}
CENTRALS: Final = 1
WAYS_ALONE: Final = ("mesial", "distal", "labial", "buccal", "lingual", "palatal")
CEPHALOMETRIC: Final = 2


def align(facts: Facts) -> tuple[Part, ...]:
    """Into line; of a whole arch, the teeth that are present."""
    if facts.mode not in ("do", "prefer"):
        raise NotCarried("force-does-not-fit")
    teeth = facts.teeth()
    if teeth:
        return (Part("goals", {"strength": facts.strength, "align": teeth}),)
    return tuple(
        Part("goals", {"strength": facts.strength}, fill=("align", arch)).assuming("align", "all-teeth-present")
        for arch in arches(facts)
    )


def level(facts: Facts) -> tuple[Part, ...]:
    """An arch is levelled; edges, margins and ridges are not said in the format."""
    if facts.mode == "state":
        return told(facts)
    if facts.mode not in ("do", "prefer") or facts.clause.of or facts.clause.teeth:
        raise NotCarried("no-such-clause")
    return tuple(Part("goals", {"strength": facts.strength, "level": arch}) for arch in arches(facts))


def rotate(facts: Facts) -> tuple[Part, ...]:
    """A turn has two senses with many names. Derotated without an amount is into line."""
    way = facts.clause.dir
    if facts.mode == "state":
        return turned(facts)
    if way == "derotate" and facts.clause.measure is None and facts.mode in ("do", "prefer"):
        facts.take("dir")
        part = Part("goals", {"strength": facts.strength, "align": facts.teeth()})
        return (part.assuming("align", "derotated-is-in-line"),)
    return move(facts, _sense(facts, way))


def _sense(facts: Facts, way: str | None) -> str | None:
    """``inwards`` when the mesial surface goes towards the tongue; derotation goes against the finding."""
    turns: dict[str, str] = checks()["turn"]
    if way != "derotate":
        return turns.get(way or "")
    found = {
        turns.get(one.dir or "") for _, one in facts.order.of(("rotate",), ("state",)) if _covers(one.teeth, facts)
    }
    if len(found) != 1:
        raise NotCarried("which-way")
    sense = found.pop()
    return OPPOSITE.get(sense or "")


def _covers(teeth: tuple[int, ...], facts: Facts) -> bool:
    return bool(set(teeth) & set(facts.clause.teeth))


def tip(facts: Facts) -> tuple[Part, ...]:
    """Crown or root must be named; upright says neither the way nor how far."""
    if facts.clause.dir in ("upright", "root_upright"):
        raise NotCarried("how-far-upright")
    if facts.clause.dir in WAYS_ALONE:
        raise NotCarried("crown-or-root")
    return move(facts, facts.clause.dir)


def incline(facts: Facts) -> tuple[Part, ...]:
    """Procline and retrocline turn the crown; to an angle to a plane it is a goal on that angle."""
    if facts.clause.measure == "target" and facts.mode in ("do", "prefer", "limit"):
        return (_to_plane(facts),)
    return move(facts, facts.clause.dir)


def _to_plane(facts: Facts) -> Part:
    amount = facts.amount("target")
    plane = data()["plane"].get(facts.take("ref") or "")
    teeth = facts.teeth()
    facts.take("dir")
    if plane is None or amount is None or amount.unit != "deg" or facts.clause.dir is not None:
        raise NotCarried("no-such-clause")
    if amount.about:
        raise NotCarried("about")
    if {arch_of(tooth) for tooth in teeth} != {plane[0]} or not all(map(is_incisor, teeth)):
        raise NotCarried("which-teeth")
    if sum(position(tooth) == CENTRALS for tooth in teeth) != CEPHALOMETRIC:
        raise NotCarried("which-teeth")
    bounds = {"at_least": amount.low, "at_most": amount.high}
    said = {name: plain(bound) for name, bound in bounds.items() if bound is not None}
    return Part("goals", {"strength": facts.strength, "measure": plane[1], **said, "unit": "deg"})


def retract(facts: Facts) -> tuple[Part, ...]:
    """Moved, in one of six ways; retracted, incisors go inwards and other teeth distally."""
    if facts.clause.dir != "retract":
        return move(facts, facts.clause.dir)
    front = {is_incisor(str(tooth)) for tooth in facts.clause.teeth}
    if len(front) != 1:
        raise NotCarried("which-way")
    way = "lingual" if front.pop() else "distal"
    return tuple(part.assuming("motion", "retracted") for part in move(facts, way))


def move(facts: Facts, way: str | None) -> tuple[Part, ...]:
    """A motion of teeth: ordered, a means, limited, permitted, forbidden or kept."""
    facts.take("dir")
    of = facts.take("of")
    if facts.mode == "keep":
        return kept(facts, of)
    name = motion(facts.kind, way)
    if facts.mode == "forbid":
        return forbidden(facts, name, of)
    if name is None or of not in (None, MEANS):
        raise NotCarried("which-way" if name is None else "more-than-the-format-says")
    teeth = facts.teeth()
    if not teeth:
        raise NotCarried("which-teeth")
    amount = _fitting(facts, name)
    if bounded_means(of, amount) or facts.mode in ("permit", "limit"):
        return allowed(facts, name, teeth, amount)
    if facts.mode not in ("do", "prefer"):
        raise NotCarried("force-does-not-fit")
    return (ordered(facts, name, teeth, amount),)


def bounded_means(of: str | None, amount: Amount | None) -> bool:
    """Whether it is the way to another clause's end, and no amount of it is ordered."""
    return of == MEANS and (amount is None or amount.low is None)


def _fitting(facts: Facts, name: Motion) -> Amount | None:
    amount = facts.amount("change")
    if amount is not None and amount.unit != unit_of(name):
        raise NotCarried("which-unit-of-movement")
    if amount is not None and amount.about:
        raise NotCarried("about")
    return amount


def ordered(facts: Facts, name: Motion, teeth: list[str], amount: Amount | None) -> Part:
    """An order: between the bounds said; without an amount both bounds are open."""
    value = {"strength": facts.strength, "teeth": teeth, "motion": name, "unit": unit_of(name)}
    if amount is None:
        return Part("movements", value, ("at_least", "at_most"))
    bounds = {"at_least": amount.low, "at_most": amount.high}
    part = Part("movements", value | {key: plain(bound) for key, bound in bounds.items() if bound is not None})
    return part.assuming("at_most", "bound-included") if amount.below else part


def allowed(facts: Facts, name: Motion, teeth: list[str], amount: Amount | None) -> tuple[Part, ...]:
    """A permission; of a limit also the bound, which no other clause may pass."""
    if amount is not None and amount.low is not None:
        raise NotCarried("not-one-value")
    unit = unit_of(name)
    use = {"use": name} if name in ("intrusion", "extrusion") else {"use": "movement", "motion": name}
    value = {**use, "teeth": teeth, "unit": unit}
    if amount is None or amount.high is None:
        return (Part("allow", value, ("up_to",)),)
    part = Part("allow", {**value, "up_to": plain(amount.high)})
    part = part.assuming("up_to", "bound-included") if amount.below else part
    if facts.mode != "limit":
        return (part,)
    return part, Part(
        "keep", {"strength": "must", "motion": name, "teeth": teeth, "within": plain(amount.high), "unit": unit}
    )


def overcorrected(facts: Facts) -> tuple[Part, ...]:
    """How much further a goal or a movement of these teeth goes; it is joined to that clause."""
    amount = facts.amount("change")
    facts.take("of")
    teeth = facts.teeth()
    if facts.mode != "do" or amount is None or amount.exact is None or not teeth:
        raise NotCarried("no-amount" if amount is None else "not-one-value")
    quantity = {"value": plain(amount.exact), "unit": amount.unit}
    return (Part("overcorrection", {"teeth": teeth, "quantity": quantity, "of": facts.clause.of}),)
