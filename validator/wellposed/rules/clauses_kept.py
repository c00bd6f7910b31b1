"""Clauses of one revision found again in another: dropped, turned round, or asked for and not met."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Any

from wellposed.consistency.whole import Place
from wellposed.model.base import Part
from wellposed.model.clauses import Align, Close, CloseArch, Movement, Reach
from wellposed.model.making import Attachment
from wellposed.model.means import EnamelReduction, Exclusion, Means
from wellposed.rules.chart import Chart
from wellposed.rules.free_text import texts
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import arch_of

_SECTIONS = ("goals", "keep", "movements", "allow", "exclude", "attachments", "appliance")
_BESIDE = {
    *(
        "id",
        "strength",
        "because",
        "words",
        "at_least",
        "at_most",
        "within",
        "up_to",
        "per_contact",
        "in_all",
        "amount",
    ),
    *("unit", "overcorrection", "value", "values", "error", "method", "date", "grade"),
    *("reason", "shape", "wear", "trimming", "size", "retainer", "otherwise", "before"),
}
_CONTACTS = ("contacts", "close")
_AGAINST = {"must": "must_not", "must_not": "must"}
Subject = tuple[str, ...]


def dropped(chart: Chart, last: Chart) -> list[Any]:
    """The clauses of an earlier revision that are not there again, changed or not, nor turned round, nor reached."""
    now = [part for section in _SECTIONS for part in getattr(chart.rx, section) or ()]
    ids, subjects = {part.id for part in now}, [subject(part) for part in now]
    turned = {getattr(part, "id", "") for _, part in reversed_in(chart, last)}
    before = (part for section in _SECTIONS for part in getattr(last.rx, section) or ())
    gone = (part for part in before if part.id not in ids | turned and subject(part) not in subjects)
    return [part for part in gone if not _reached(chart, part)]


def subject(part: Part) -> dict[str, Any]:
    """What a part is about, without its name, its reasons and its amounts; of a movement without its sense."""
    about = plain(part, _BESIDE)
    if isinstance(part, Movement):
        about["motion"] = MOTIONS[part.motion].variable
    return about


def plain(part: Part, beside: Iterable[str] = ()) -> dict[str, Any]:
    """What a part says as JSON values, members of ``beside`` left out; lists whose order means nothing in one order."""
    said = part.model_dump(exclude_none=True, exclude=set(beside), mode="json")
    told: dict[str, Any] = {
        name: [normal(one) for one in value] if name in _CONTACTS else value for name, value in said.items()
    }
    if "leave" in told:
        told["leave"] = normal(told["leave"])
    return {name: sorted(value, key=str) if isinstance(value, list) else value for name, value in told.items()}


def _reached(chart: Chart, part: Part) -> bool:
    return isinstance(part, Reach) and _way_to(chart, part) == 0


def mentioned(chart: Chart, name: str) -> bool:
    """Whether a text for people names an id."""
    wanted = re.compile(rf"(?<![\w.-]){re.escape(name)}(?![\w-])")
    return any(wanted.search(one.text) for one in texts(chart))


def _way_to(chart: Chart, goal: Reach) -> int | None:
    """Whether a measure must rise (1) or fall (-1) to meet a goal, or need not (0); None if it was not measured."""
    now, scale = chart.mouth.baseline(goal.measure, goal.pair), chart.mouth.scale(goal.measure, goal.unit)
    if now is None or scale is None:
        return None
    if goal.at_least is not None and now < goal.at_least * scale:
        return 1
    return -1 if goal.at_most is not None and now > goal.at_most * scale else 0


# turned round


def reversed_in(chart: Chart, last: Chart) -> Iterator[tuple[Place, Part]]:
    """Each clause that says the opposite of one of the last revision, with that one; each clause once."""
    for place in chart.of("goals", "allow", "exclude", "attachments"):
        before = (one.part for one in last.of(place.section, *_opposite_sections(place)))
        opposite = next((part for part in before if opposed(chart, place.part, last, part)), None)
        if opposite is not None:
            yield place, opposite


def _opposite_sections(place: Place) -> tuple[str, ...]:
    return {"allow": ("exclude",), "exclude": ("allow",)}.get(place.section, ())


def opposed(chart: Chart, part: Part, last: Chart, before: Part) -> bool:
    """Whether a part says the opposite of one of another revision: attachments, measures, means against exclusions."""
    if isinstance(part, Attachment) and isinstance(before, Attachment):
        return any(_both(part, member, before, other) for member, other in _AGAINST.items())
    if isinstance(part, Reach) and isinstance(before, Reach):
        same = (part.measure, part.pair) == (before.measure, before.pair) and not part.measure.endswith("-width")
        return same and (_way_to(chart, part) or 0) * (_way_to(last, before) or 0) < 0
    if isinstance(part, Means) and isinstance(before, Exclusion):
        return _forbidden(chart, part, before)
    return isinstance(part, Exclusion) and isinstance(before, Means) and _forbidden(last, before, part)


def _both(part: Part, member: str, before: Part, other: str) -> bool:
    return bool({*(getattr(part, member, None) or ())} & {*(getattr(before, other, None) or ())})


def _forbidden(chart: Chart, means: Means, excluded: Exclusion) -> bool:
    """Whether an exclusion forbids an allowance: the same means, at a tooth or in an arch of both."""
    if getattr(means, "use", None) != excluded.means:
        return False
    teeth = _teeth(chart, means)
    arches = {arch_of(tooth) for tooth in teeth} | {getattr(means, "arch", None)} - {None}
    in_arch = excluded.arch is None or not arches or excluded.arch in arches
    return in_arch and (excluded.teeth is None or not teeth or bool(teeth & set(excluded.teeth)))


def _teeth(chart: Chart, means: Means) -> set[str]:
    if isinstance(means, EnamelReduction):
        return {tooth for contact in chart.whole.reduced(means) for tooth in teeth_of(contact)}
    return set(getattr(means, "teeth", None) or ())


# asked for and not met


def unmet_goals(chart: Chart) -> Iterator[tuple[Subject, Place]]:
    """Each goal that the measurements show to be open, with what it is about."""
    for place in chart.of("goals"):
        part = place.part
        if isinstance(part, Reach) and _way_to(chart, part):
            yield (part.measure, *sorted(part.pair or ())), place
        elif isinstance(part, Align | Close | CloseArch):
            what = "crowding" if isinstance(part, Align) else "spacing"
            still = tuple(f"{arch}-{what}" for arch in _arches(part) if chart.value(f"{arch}-{what}"))
            if still:
                yield still, place


def _arches(goal: Align | Close | CloseArch) -> list[str]:
    if isinstance(goal, CloseArch):
        return [goal.close_arch]
    teeth = goal.align if isinstance(goal, Align) else [tooth for contact in goal.close for tooth in teeth_of(contact)]
    return sorted({arch_of(tooth) for tooth in teeth})
