"""Two setups, or two reviews, compared, as text."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import wrap
from typing import Any

from wellposed.findings import CAUTION
from wellposed.model.envelope import Answers
from wellposed.render.amounts import amount, change, rounded, value
from wellposed.render.phrases import clause
from wellposed.render.readback.terms import plain
from wellposed.render.review.amounts import measure_name, travel
from wellposed.render.review.laid import listed, section
from wellposed.render.revisions.words import identity, lineage
from wellposed.render.words import VARIABLE_WORDS
from wellposed.revisions.plans import ROUNDING, Amount, Other, SetupComparison
from wellposed.revisions.reviews import ReviewComparison, Said
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.teeth import in_words

__all__ = ["reviews_text", "setups_text"]

_SCOPE = "What the setups state, one beside the other. Whether either does what was ordered is for a review to say."


def setups_text(told: SetupComparison, width: int = 100) -> str:
    """All that differs between two setups, ending in a line break."""
    moved = [one for one in told.movements if one.changed]
    rest = [one for one in told.amounts if one.changed]
    parts = [
        _head(told, width),
        _lines(_counted(told, len(moved)), width),
        section("Movements", listed(_by_tooth(moved), width)),
        section("Amounts", listed(map(_amount, rest), width)),
        section("The path", listed(_path(told), width)),
        section("Besides", listed(map(_other, told.others), width)),
        _lines((_SCOPE, CAUTION), width),
    ]
    return "\n".join(one for one in parts if one)


def _head(told: SetupComparison | ReviewComparison, width: int) -> str:
    answers = " → ".join(dict.fromkeys(map(_answered, told.answers)))
    lines = [f"{identity(told.old)} → {identity(told.new)}.", lineage(told.lineage, told.old, told.new)]
    return _lines([*lines, f"Answers {answers}."], width)


def _answered(one: Answers) -> str:
    return f"{one.id} revision {one.revision} ({one.sha256[:12]}…)"


def _lines(told: Iterable[str], width: int) -> str:
    return "\n".join(line for one in told for line in wrap(one, width)) + "\n"


def _counted(told: SetupComparison, moved: int) -> Iterator[str]:
    if not told.changed and not told.others and not any((told.path or {}).values()):
        yield f"Nothing differs by more than rounding ({ROUNDING} in the unit stated)."
        return
    yield f"{moved} of {len(told.movements)} movements differ by more than rounding ({ROUNDING} in the unit stated)."


def _by_tooth(moved: Iterable[Amount]) -> Iterator[tuple[str, str]]:
    """The movements of a tooth together, the tooth in words once."""
    teeth: dict[str, list[str]] = {}
    for one in moved:
        teeth.setdefault(one.where, []).append(_moved(one))
    for tooth, told in teeth.items():
        yield tooth, f"({in_words(tooth)}) {'; '.join(told)}"


def _moved(one: Amount) -> str:
    ends = f"{_travelled(one, one.before)} → {_travelled(one, one.after)}"
    if one.difference is None or not rounded(one.before or 0) or not rounded(one.after or 0):
        return ends
    return f"{ends} (difference: {travel(one.what, one.difference, one.unit)})"


def _travelled(one: Amount, moved: float | None) -> str:
    if moved is None:
        return f"{VARIABLE_WORDS[one.what]} not stated"
    return travel(one.what, moved, one.unit) if rounded(moved) else f"no {VARIABLE_WORDS[one.what]}"


def _amount(one: Amount) -> tuple[str, str]:
    before, after = (_stated(one, said) for said in (one.before, one.after))
    if one.what in MEASURE_KINDS:
        differs = f" ({change(one.what, one.difference, one.unit)})" if one.difference and one.unit != "percent" else ""
        return measure_name(one.what, one.where), f"{before} → {after}{differs}"
    return " ".join(filter(None, (plain(one.what), one.where))), f"{before} → {after}"


def _stated(one: Amount, said: float | None) -> str:
    if said is None:
        return "not stated"
    if one.what in MEASURE_KINDS and one.unit != "percent":
        return value(one.what, said, one.unit)
    return amount(said, one.unit) if one.unit else f"{said:g}"


def _path(told: SetupComparison) -> Iterator[tuple[str, str]]:
    for arch, aligners in (told.path or {}).items():
        if aligners:
            yield arch, f"teeth stand elsewhere after aligner {' '.join(map(str, aligners))}"


def _other(one: Other) -> tuple[str, str]:
    name = one.where if one.what == "stated" else " ".join(filter(None, (plain(one.what), one.where)))
    if one.before is None and one.after is None:
        return name, "differs; not repeated here."
    return name, f"{_thing(one.before, one)} → {_thing(one.after, one)}"


def _thing(said: Any, one: Other) -> str:
    if said is None:
        return "none" if one.what != "unlisted" else "not stated"
    if isinstance(said, dict):
        return ", ".join(f"{plain(name.replace('_', '-'))} {plain(str(now))}" for name, now in said.items()) or "there"
    if isinstance(said, bool):
        return "stated" if said else "not stated"
    return plain(str(said))


# reviews


def reviews_text(told: ReviewComparison, width: int = 100) -> str:
    """All that differs between two reviews, ending in a line break."""
    none = ("Nothing differs.",) if not told.differences else ()
    parts = [
        _head(told, width),
        _lines(none, width) if none else "",
        section("What differs", listed(map(_said, told.differences), width)),
        _lines((CAUTION,), width),
    ]
    return "\n".join(one for one in parts if one)


def _said(one: Said) -> tuple[str, str]:
    name = f"{one.what} {one.name}".strip()
    if one.before is None and one.after is None:
        return name, "differs; not repeated here."
    return name, f"{_asked(one.before)} → {_asked(one.after)}"


def _asked(said: Any) -> str:
    if said is None:
        return "none"
    if isinstance(said, dict):
        return clause(said)
    return "named" if said is True else plain(str(said))
