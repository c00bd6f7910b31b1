"""Clauses about measures: to be reached, or kept."""

from __future__ import annotations

from math import inf

from wellposed.kinematics.keys import clause
from wellposed.kinematics.ledger import Ledger
from wellposed.kinematics.measures import ROOM, MeasureRow, Pair, measure_row, net
from wellposed.kinematics.rows import Terms, plus
from wellposed.model.clauses import KeepMeasure, Reach

_CROWN = "lower-incisor-crown-height"


def reach(ledger: Ledger, goal: Reach) -> None:
    """at_least <= baseline + change <= at_most."""
    row, baseline = _start(ledger, goal.measure, goal.pair)
    scale = ledger.mouth.scale(goal.measure, goal.unit)
    if row is None or baseline is None or scale is None:
        ledger.lacks(goal.id, "" if row is None else _CROWN if scale is None else goal.measure)
        return
    terms = _with_error(ledger, row, goal)
    if goal.at_least is not None:
        floor = net(ledger.frame, goal.measure, kept=False) if goal.measure.endswith(ROOM) else terms
        ledger.demand(clause(goal.id, "floor"), floor, low=goal.at_least * scale - baseline)
    if goal.at_most is not None:
        ledger.demand(clause(goal.id, "ceiling"), terms, high=goal.at_most * scale - baseline)


def keep(ledger: Ledger, kept: KeepMeasure) -> None:
    """|change| <= within."""
    row, scale = measure_row(ledger.frame, kept.measure, kept.pair), ledger.mouth.scale(kept.measure, kept.unit)
    if row is None or scale is None:
        ledger.lacks(kept.id, "" if row is None else _CROWN)
        return
    terms, middle = _about(ledger, kept, row) if row.absolute else (row.terms, 0.0)
    if middle is None:
        ledger.lacks(kept.id, kept.measure)
        return
    within, key = kept.within * scale, clause(kept.id, "keep")
    if not kept.measure.endswith(ROOM):
        ledger.keep(key, terms, middle - within, middle + within)
        return
    error = {column: factor for column, factor in terms.items() if column not in row.terms}
    ledger.keep(key, terms, -inf, middle + within)
    ledger.keep(key, plus(net(ledger.frame, kept.measure, kept=True), error), middle - within, inf)


def _start(ledger: Ledger, measure: str, pair: Pair | None) -> tuple[MeasureRow | None, float | None]:
    """Terms of a measure and its baseline; 0 for one that stands for its final value."""
    row = measure_row(ledger.frame, measure, pair)
    if row is not None and row.absolute:
        return row, 0.0 if _known(ledger, measure) else None
    return row, ledger.mouth.baseline(measure, pair)


def _known(ledger: Ledger, measure: str) -> bool:
    """Whether a measure that stands for its final value has a start."""
    if measure == "posterior-open-bite":
        return ledger.mouth.baseline(measure) is not None
    return ledger.mouth.room_known(measure.partition("-")[0])


def _with_error(ledger: Ledger, row: MeasureRow, goal: Reach) -> Terms:
    error = ledger.mouth.error(goal.measure, goal.pair)
    if row.absolute or error == 0:
        return row.terms
    name = goal.measure if goal.pair is None else f"{goal.measure}@{'-'.join(sorted(goal.pair))}"
    return plus(row.terms, {ledger.frame.error_column(name, -error, error): 1.0})


def _about(ledger: Ledger, kept: KeepMeasure, row: MeasureRow) -> tuple[Terms, float | None]:
    """A final value as a change: the terms less their error, and the value they start from."""
    arch, _, what = kept.measure.partition("-")
    if kept.measure == "posterior-open-bite":
        return row.terms, ledger.mouth.amount(kept.measure)
    if not ledger.mouth.room_known(arch):
        return row.terms, None
    sign = -1 if what == "crowding" else 1
    there = [contact for contact in ledger.mouth.rows[arch].contacts if sign * contact.before > 0]
    middle = sum(sign * contact.before for contact in there)
    if kept.measure not in ledger.frame.errors:
        return row.terms, middle
    share = sum(contact.crowding if what == "crowding" else contact.spacing for contact in there)
    return plus(row.terms, {ledger.frame.errors[kept.measure][0]: -share}), middle
