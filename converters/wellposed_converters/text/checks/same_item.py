"""One thing forbidden and asked for: forbidden against wanted, limited or permitted; only here and also there."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wellposed_converters.text.checks.data import data
from wellposed_converters.text.checks.order import ACTED, ALLOWED, CONFIRM, STOP, WANTED, Numbered, Order, ask
from wellposed_converters.text.checks.reach import is_everywhere, is_named, is_open, overlap, reach, same_sort
from wellposed_converters.text.checks.timing import is_timing
from wellposed_converters.text.clause import Clause, Question

TOGETHER: Final = "as_one_block"
"""A limit on how teeth move, which holds for teeth that do not move as well."""
SORTS: Final = {"limit": "forbid-and-limited", "permit": "forbid-and-permitted"}


def forbidden(order: Order) -> Iterator[Question]:
    """Forbidden and asked for: "No IPR." with "IPR 31/41 0.2 mm."; also against a limit and against a permission."""
    for no in order.of(None, ("forbid",)):
        if no.clause.condition is None and no.clause.kind != "scope":
            against = [yes for yes in order.of((no.clause.kind,), ACTED) if _denied(no.clause, yes.clause)]
            yield from _by_sort(no, against)


def _denied(no: Clause, yes: Clause) -> bool:
    """Whether the prohibition meets the order; one whose place is still open may be an exception to anything."""
    if is_open(no) or yes.of == TOGETHER or not same_sort(no, yes):
        return False
    return overlap(no, yes) and not _is_exception(no, yes)


def _is_exception(no: Clause, yes: Clause) -> bool:
    """A prohibition inside a wider permission, or inside an order for a whole arch, is an exception to it."""
    inside = not is_open(yes) and reach(no) < reach(yes)
    return inside and (yes.mode in ALLOWED or not is_named(yes))


def _by_sort(no: Numbered, against: list[Numbered]) -> Iterator[Question]:
    wanted = "extraction-and-none" if no.clause.kind == "extraction" else "forbid-and-asked"
    for asks in dict.fromkeys(SORTS.get(yes.clause.mode, wanted) for yes in against):
        about = [yes for yes in against if SORTS.get(yes.clause.mode, wanted) == asks]
        yield ask(asks, STOP, [no, *about])


def conditional(order: Order) -> Iterator[Question]:
    """Under a condition and without one: "IPR only if needed" with "IPR 0.2 at all lower contacts"."""
    for under in order.of(None, {*ACTED, "forbid"}):
        if under.clause.condition is None or is_timing(under.clause):
            continue
        about = [plain for plain in order.of((under.clause.kind,), WANTED) if _plain(under.clause, plain.clause)]
        if about:
            yield ask("condition-and-plain", CONFIRM, [under, *about], condition=under.clause.condition)


def _plain(under: Clause, plain: Clause) -> bool:
    return plain.condition is None and same_sort(under, plain) and overlap(under, plain)


def restricted(order: Order) -> Iterator[Question]:
    """Only here, and more elsewhere: "Align lower 3-3 only. Derotate 35."""
    for only in order.of(None, ACTED):
        if only.clause.only and only.clause.kind != "scope" and not is_open(only.clause):
            family = data()["family"].get(only.clause.kind, (only.clause.kind,))
            others = [more for more in order.of(family, ACTED) if more.at != only.at]
            about = [more for more in others if _wider(only.clause, more.clause)]
            if about:
                yield ask("only-and-wider", STOP, [only, *about])


def _wider(only: Clause, more: Clause) -> bool:
    same = only.kind != more.kind or same_sort(only, more)
    placed = not is_everywhere(only) and not is_open(more)
    return same and placed and not reach(more) <= reach(only)
