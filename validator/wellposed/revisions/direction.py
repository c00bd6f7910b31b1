"""Whether a clause became tighter or looser: what it asks, what it opens, how strongly it is meant."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping
from math import inf
from typing import Any, NamedTuple

from wellposed.kinematics.mouth import Mouth
from wellposed.model.making import Staging
from wellposed.model.prescription import Prescription
from wellposed.revisions.admits import Admits, Span, admits
from wellposed.revisions.meaning import GONE, Names
from wellposed.revisions.result import MIRRORED, Change, Turn

_EVERYTHING: Span = (-inf, inf)
_STRENGTHS = {"prefer": 0, "prefer_not": 0, "must": 1, "must_not": 1}


class Direction(NamedTuple):
    """What became of a clause; ``empty``: no plan shows it, so nothing can be said of tighter or looser."""

    change: Change
    asks: Turn
    opens: Turn
    empty: bool = False


def direction(before: Any, after: Any, revisions: Iterable[Prescription], names: Names) -> Direction:
    """The direction in which a clause changed; where the mouths of the two revisions disagree it is ``changed``."""
    old = _renamed(before, names)
    found = [_in_mouth(old, after, Mouth(prescription)) for prescription in revisions]
    return found[0] if all(one == found[0] for one in found) else _either(found)


def _in_mouth(before: Any, after: Any, mouth: Mouth) -> Direction:
    old, new = admits(before, mouth), admits(after, mouth)
    asks, opens = _asks_turn(old, new), _opens_turn(old, new)
    strength = _strength_turn(before, after)
    turns = {asks, MIRRORED.get(opens, opens), strength} - {"same"}
    change: Change = "unchanged"
    if turns:
        change = "tightened" if turns == {"more"} else "loosened" if turns == {"less"} else "changed"
    asked = strength if asks == "same" else asks if strength in ("same", asks) else "both"
    return Direction(change, asked, opens, not any((*old, *new)))


def _either(found: list[Direction]) -> Direction:
    asks, opens = {one.asks for one in found}, {one.opens for one in found}
    return Direction(
        "changed",
        asks.pop() if len(asks) == 1 else "both",
        opens.pop() if len(opens) == 1 else "both",
    )


def _asks_turn(old: Admits, new: Admits) -> Turn:
    """More: every plan that meets the new one meets the old one."""
    return _turn(_within(new.asks, old.asks), _within(old.asks, new.asks))


def _within(inner: Mapping[Hashable, Span], outer: Mapping[Hashable, Span]) -> bool:
    spans = ((inner.get(key, _EVERYTHING), span) for key, span in outer.items())
    return all(low >= least and high <= most for (low, high), (least, most) in spans)


def _opens_turn(old: Admits, new: Admits) -> Turn:
    """More: all that the old one opens the new one opens, as far."""
    return _turn(_covers(new.opens, old.opens), _covers(old.opens, new.opens))


def _covers(larger: Mapping[Hashable, float], smaller: Mapping[Hashable, float]) -> bool:
    return all(larger.get(key, -inf) >= amount for key, amount in smaller.items())


def _turn(more: bool, less: bool) -> Turn:
    if more and less:
        return "same"
    return "more" if more else "less" if less else "both"


def _strength_turn(before: Any, after: Any) -> Turn:
    """Whether it binds more strongly; same where one of the two has no strength."""
    old, new = strength_of(before), strength_of(after)
    if old is None or new is None or old == new:
        return "same"
    return "more" if new > old else "less"


def strength_of(part: Any) -> int | None:
    """1 for what must be, 0 for what is wished for; of attachments the member that names the teeth says it."""
    said = getattr(part, "strength", None) or next((one for one in _STRENGTHS if getattr(part, one, None)), None)
    return None if said is None else _STRENGTHS[said]


def _renamed(part: Any, names: Names) -> Any:
    """A staging with the names of the other document; anything else as it is."""
    if not isinstance(part, Staging) or not part.order:
        return part
    called = {name: names.get(name, GONE + name) for one in part.order for name in (one.first, one.then)}
    order = tuple(one.model_copy(update={"first": called[one.first], "then": called[one.then]}) for one in part.order)
    return part.model_copy(update={"order": order})
