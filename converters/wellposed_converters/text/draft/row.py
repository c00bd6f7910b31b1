"""Which arches are treated, and how the movement is cut into aligners."""

from __future__ import annotations

from typing import Final

from wellposed.vocabulary.teeth import arch_of
from wellposed_converters.text.clause import Clause
from wellposed_converters.text.draft.data import data
from wellposed_converters.text.draft.measured import ARCHES
from wellposed_converters.text.draft.part import Facts, NotCarried, Part, decimal, plain

DAYS: Final = {"day": 1, "week": 7}


def scope(facts: Facts) -> tuple[Part, ...]:
    """All that is said of the arches to be treated, as one answer."""
    clauses = [one for _, one in facts.order.of(("scope",), ("do", "forbid"))]
    wanted = {arch for one in clauses if one.mode == "do" for arch in _named(one)}
    barred = {arch for one in clauses if one.mode == "forbid" for arch in _named(one)}
    narrow = [set(_named(one)) for one in clauses if one.only]
    teeth, only = facts.take("teeth"), facts.take("only")
    facts.take("arch")
    if facts.mode != "do" and (only or teeth or facts.mode != "forbid"):
        raise NotCarried("more-than-the-format-says")
    if facts.clause.condition or (teeth and not only):
        raise NotCarried("more-than-the-format-says")
    if wanted & barred or len(barred) == len(ARCHES) or any(wanted - one for one in narrow):
        raise NotCarried("said-otherwise")
    part = _treated(wanted, barred, bool(narrow))
    return (part.assuming("teeth", "silence-is-no-change") if teeth else part,)


def _named(clause: Clause) -> list[str]:
    if clause.teeth:
        return list(dict.fromkeys(arch_of(str(tooth)) for tooth in clause.teeth))
    return list(ARCHES) if clause.arch == "both" else [clause.arch] if clause.arch else []


def _treated(wanted: set[str], barred: set[str], only: bool) -> Part:
    if wanted == set(ARCHES):
        return Part("treat", {"arches": "both"})
    if not wanted:
        (rest,) = set(ARCHES) - barred if len(barred) == 1 else ("",)
        if not rest:
            raise NotCarried("which-arch")
        return Part("treat", {"arches": rest}).assuming("arches", "the-other-arch")
    if only or barred:
        return Part("treat", {"arches": next(iter(wanted))})
    return Part("treat", {}, ("arches",))


def staging(facts: Facts) -> tuple[Part, ...]:
    """At most so many aligners, each so many days, each so far."""
    makers = {"steps": _count, "change_interval": _interval, "movement_per_step": _step}
    of = facts.take("of")
    if of not in makers or facts.mode not in ("do", "limit", "prefer"):
        raise NotCarried("no-such-clause")
    low, high = decimal(facts.take("minimum")), decimal(facts.take("maximum"))
    if facts.take("approx"):
        raise NotCarried("about")
    value = makers[of](facts, plain(low) if low is not None else None, plain(high) if high is not None else None)
    part = Part("staging", {"strength": facts.strength, **value})
    return (part.assuming(next(iter(value)), "bound-included") if facts.take("max_open") else part,)


def _count(facts: Facts, low: float | None, high: float | None) -> dict[str, object]:
    facts.take("measure")
    facts.take("unit")
    if low is not None or high is None:
        raise NotCarried("exactly-or-at-most")
    return {"most_aligners": high}


def _interval(facts: Facts, low: float | None, high: float | None) -> dict[str, object]:
    facts.take("measure")
    days = DAYS.get(facts.take("unit") or "")
    if days is None or low is None or low != high:
        raise NotCarried("not-one-value")
    return {"wear_interval_days": low * days}


def _step(facts: Facts, low: float | None, high: float | None) -> dict[str, object]:
    """So much of every movement that is counted in this unit."""
    facts.take("measure")
    variables = data()["step"].get(facts.clause.unit or "")
    teeth = facts.teeth()
    if variables is None or high is None or low is not None:
        raise NotCarried("unit-unknown" if variables is None else "exactly-or-at-most")
    unit = facts.take("unit")
    step = {"amount": high, "unit": unit} | ({"teeth": teeth} if teeth else {})
    return {"largest_steps": [{"variable": name, **step} for name in variables]}
