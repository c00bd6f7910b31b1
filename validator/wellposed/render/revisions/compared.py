"""Two prescriptions compared, as text: verdicts and conflicts first, then clause by clause, then facts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import wrap

from wellposed.findings import CAUTION, Severity
from wellposed.render.filled import joined
from wellposed.render.readback.terms import plain
from wellposed.render.review.laid import block, listed, section, wrapped
from wellposed.render.revisions.words import HEADINGS, clause_name, identity, lineage, member, part, turns
from wellposed.render.text import SCOPE, numbered
from wellposed.revisions.result import ClauseChange, Comparison, FactChange

__all__ = ["comparison_text", "headed"]

_TOLD_WHOLE = ("reversed", "dropped", "added", "tightened", "loosened", "changed")


def comparison_text(told: Comparison, width: int = 100) -> str:
    """All that a comparison says, ending in a line break; ``width`` is the longest line, in characters."""
    parts = [headed(told, width), *_weighed(told, width), *_clauses(told, width), _facts(told, width), _foot(width)]
    return "\n".join(one for one in parts if one) + "\n"


def headed(told: Comparison, width: int) -> str:
    """Which two, whether one follows the other, how many clauses became what, and both verdicts."""
    old, new = told.old, told.new
    counts = [f"{count} {change}" for change, count in told.counts().items() if count]
    lines = (
        f"{identity(old)} → {identity(new)}. {joined(counts).capitalize() or 'No clauses'}.",
        lineage(told.lineage, old, new),
        f"Check before: {told.weighed.before}. Check now: {told.weighed.after}.",
    )
    return "\n".join(one for line in lines for one in wrap(line, width)) + "\n"


def _weighed(told: Comparison, width: int) -> Iterator[str]:
    weighed = told.weighed
    if weighed.introduced:
        yield "Conflicts that are new\n"
        blocks = numbered(weighed.introduced, width, headings=dict.fromkeys(Severity, ""))
        yield from (one for one in blocks if one.strip())
    gone = [f"{joined(list(one.clauses))}: no longer in conflict." for one in weighed.settled]
    yield section("Conflicts that are settled", (line for one in gone for line in wrapped("", one, width)))
    same = [f"{joined(list(one.clauses))}: as before." for one in weighed.standing]
    yield section("Conflicts that were there before", (line for one in same for line in wrapped("", one, width)))


def _clauses(told: Comparison, width: int) -> Iterator[str]:
    for change in _TOLD_WHOLE:
        found = [one for one in told.clauses if one.change == change]
        yield section(HEADINGS[change], (line for one in found for line in _clause(one, width)))
    yield section("Saying the opposite", listed(_opposites(told), width))
    again = [(clause_name(one), part(one.item.part)) for one in told.of("reworded")]
    yield section(HEADINGS["reworded"], listed(again, width))
    same = " ".join(clause_name(one) for one in told.of("unchanged"))
    yield section(HEADINGS["unchanged"], wrapped("", same, width) if same else ())


def _clause(one: ClauseChange, width: int) -> Iterator[str]:
    yield from block(clause_name(one), list(_rows(one)), width)


def _rows(one: ClauseChange) -> Iterator[tuple[str, str]]:
    """What it was and is, or what it says where one of these is all there is; then what differs."""
    if one.change == "reversed" and one.before and one.after:
        yield "Before:", part(one.before.part)
        yield "Now:", part(one.after.part)
    else:
        yield f"{_label(one)}:", part(one.item.part)
        told = [member(differs, one) for differs in one.members]
        yield from [("Differs:", "; ".join(told))] if told else []
    if one.change == "changed" and turns(one):
        yield "So:", f"it {turns(one)} than before."
    if one.reused:
        yield "Beware:", "an id that named something else in the other revision."


def _label(one: ClauseChange) -> str:
    return plain(one.section).capitalize()


def _opposites(told: Comparison) -> Iterator[tuple[str, str]]:
    """Opposites that are not told as one clause turned round."""
    turned = {(one.before.id, one.after.id) for one in told.of("reversed") if one.before and one.after}
    for one in told.opposites:
        if (one.before, one.after) not in turned:
            yield one.after, f"says the opposite of what {one.before} said before."


def _facts(told: Comparison, width: int) -> str:
    return section("Facts", listed(map(_fact, told.facts), width))


def _fact(one: FactChange) -> tuple[str, str]:
    what = plain(one.what.replace("_", "-"))
    if one.before is None and one.after is None:
        return one.section, f"{what or 'the section'} {one.change}; not repeated here."
    before, after = (_value(said) for said in (one.before, one.after))
    return one.section, f"{what}: {before} → {after}"


def _value(said: object) -> str:
    if said is None:
        return "not there"
    told: Iterable[object] = said if isinstance(said, list) else (said,)
    return " ".join(plain(str(one)) for one in told if one) or "there"


def _foot(width: int) -> str:
    return "\n".join(line for text in (SCOPE, CAUTION) for line in wrap(text, width))
