"""Whether members can hold together, in exact arithmetic, by a solver of another make.

Written from what ``rows`` says of a system, and nothing else: every number is the exact fraction of its float.
The geometry is known to some 1e-12: two coefficients that are meant to be equal may differ by as much, and exact
arithmetic would make room out of that with movements of a million kilometres. So no column goes further than WIDEST.
"""

from fractions import Fraction
from functools import lru_cache
from math import inf

import z3

BELOW = -1
WIDEST = 10**6


def holds(system, active, setting, slack=0, strain=None, amount=0):
    """Whether the active members can hold together in a setting.

    slack   by how much every bound is loosened
    strain  what gives way, if anything: members dropped, bounds lifted, rows added with t at ``amount``
    """
    bounds = in_force(system, active, setting, strain)
    extra = strained(strain, amount) if strain else []
    return satisfiable(system, bounds, extra, slack)


def in_force(system, active, setting, strain):
    """(is row, place) to (low, high): definitions, tightened by members, overridden by the setting."""
    members = [system.members[key] for key in active if not strain or key not in strain.drops]
    lifted = {tuple(release) for release in strain.releases} if strain else set()
    bounds = {
        **{(False, at): ends for at, ends in enumerate(zip(system.column_low, system.column_high, strict=True))},
        **{(True, at): ends for at, ends in enumerate(zip(system.row_low, system.row_high, strict=True))},
    }
    for member in members:
        for is_row, at, side, value in member.bounds:
            if (member.kind, is_row, at, side) not in lifted:
                low, high = bounds[is_row, at]
                tighter = (max(low, value), high) if side == BELOW else (low, min(high, value))
                bounds[is_row, at] = tighter
    for is_row, at, low, high in system.settings[setting]:
        bounds[is_row, at] = (low, high)
    return bounds


def strained(strain, amount):
    """The rows a strain adds, with its t at an amount: (terms, low, high)."""
    return [
        (terms, *(end if abs(end) == inf else Fraction(end) - Fraction(rate) * Fraction(amount) for end in ends))
        for terms, rate, *ends in strain.rows
    ]


def satisfiable(system, bounds, extra, slack):
    rows = [({at: 1.0}, *ends) for (is_row, at), ends in bounds.items() if not is_row]
    rows += [(system.row_terms[at], *ends) for (is_row, at), ends in bounds.items() if is_row]
    text = "\n".join(assertions([*rows, *extra], slack))
    solver = z3.SolverFor("QF_LRA")
    solver.from_string(text)
    answer = solver.check()
    assert answer != z3.unknown, solver.reason_unknown()
    return answer == z3.sat


def assertions(rows, slack):
    """The rows with a bound, as text of SMT-LIB, and the columns they name."""
    columns, lines = set(), []
    for terms, low, high in rows:
        used = {at: factor for at, factor in terms.items() if factor}
        columns |= used.keys()
        total = summed(used)
        if low > -inf:
            lines.append(f"(assert (>= {total} {number(low, -slack)}))")
        if high < inf:
            lines.append(f"(assert (<= {total} {number(high, slack)}))")
    names = [f"x{at}" for at in sorted(columns)]
    declared = [f"(declare-const {name} Real)" for name in names]
    within = [f"(assert (<= (- {WIDEST}.0) {name} {WIDEST}.0))" for name in names]
    return [*declared, *within, *lines]


def summed(terms):
    parts = [f"x{at}" if factor == 1 else f"(* {number(factor)} x{at})" for at, factor in terms.items()]
    return "0.0" if not parts else parts[0] if len(parts) == 1 else f"(+ {' '.join(parts)})"


@lru_cache(maxsize=100_000)
def number(value, more=0):
    """The exact sum of two floats as SMT-LIB writes a fraction."""
    fraction = Fraction(value) + Fraction(more)
    size = f"(/ {abs(fraction.numerator)}.0 {fraction.denominator}.0)"
    return f"(- {size})" if fraction < 0 else size


def reducible_by(members, holds_together):
    """Members that a conflict does not need: without each of them, the rest cannot hold either."""
    return [key for key in members if not holds_together([other for other in members if other != key])]
