"""Setups built from points of the linear system: by scipy's own solver, not the one of the program.

Of all plans the system admits, one with little movement and some room to every bound it could fail.
"""

from functools import cache

import numpy as np
from scipy.optimize import linprog
from scipy.sparse import csr_matrix
from tests.validator.wellposed.kinematics.exact import in_force
from tests.validator.wellposed.kinematics.generate import prescription, read

from wellposed.kinematics.case import Case, must
from wellposed.model import Setup
from wellposed.review.matter import Matter
from wellposed.review.sums import Sums
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES

SPARE, CHEAP = 0.3, 0.02
FAR = 4.0  # mm; beyond, the sums are no longer near the exact measures (see test_exact)
LIKE = {"displacement": "out", "rotation": "rotation"}


def point(case, offsets=()):
    """Column values of one plan in which the back teeth neither close nor open the bite; None if there is none.

    offsets  room that contacts have beside what the linear equation says, mm
    """
    translation, system = case.full, case.full.system
    bounds = in_force(system, must(translation, limits=True), translation.frame.hinge.stated[0][0], None)
    lever = getattr(translation.frame.hinge, "_rows", None)
    for row in lever or ():
        bounds[True, row] = (0.0, 0.0)
    for (_, variable), column in translation.frame.columns.items():
        if VARIABLE_UNITS[variable] == "mm":
            low, high = bounds[False, column]
            bounds[False, column] = (max(low, -FAR), min(high, FAR))
    for column, way in to_the_line(case):
        bounds[False, column] = (way, way)
    for name, more in dict(offsets).items():
        row = room_row(case, name)
        bounds[True, row] = tuple(end + more for end in bounds[True, row])
    owned = {bound.at for member in system.members.values() for bound in member.bounds if bound.is_row}
    return solved(system, bounds, owned, set(translation.frame.columns.values()))


def to_the_line(case):
    """Displaced teeth that an align names come all the way, if they may move."""
    displaced = case.mouth.tooth_values("displacement")
    aligned = {tooth for goal in case.prescription.goals or () for tooth in getattr(goal, "align", ())}
    held = {tooth for kept in case.prescription.keep or () for tooth in getattr(kept, "hold", ())}
    free = aligned - held - case.mouth.locked.keys()
    return [(column, -displaced[tooth]) for tooth, column in case.full.frame.travels.items() if tooth in free]


def room_row(case, name):
    """The row that defines the room at a contact."""
    at = case.full.frame.contacts[name]
    return next(
        number for number, terms in enumerate(case.full.system.row_terms) if {at.gap, at.reduction} <= set(terms)
    )


def exact_room(case, setup):
    """What the exact geometry makes of each contact beside the linear equation, mm."""
    matter = Matter(case.prescription, setup)
    sums = Sums(matter)
    return {name: room - sums.room(name) for name, room in matter.ended.rooms.items() if room is not None}


def solved(system, bounds, owned, movements):
    """The columns: x = p - n in their bounds, a spare s of each owned row; little p + n, much s."""
    count = len(system.column_low)
    spares = {row: 2 * count + number for number, row in enumerate(sorted(owned))}
    width = 2 * count + len(spares)
    upper, limits = [], []
    for at, terms in enumerate(system.row_terms):
        for side, end in zip((-1, 1), bounds[True, at], strict=True):
            if abs(end) < np.inf:
                spare = 1.0 if at in spares and bounds[True, at][1] - bounds[True, at][0] > 2 * SPARE else 0.0
                upper.append((terms, side, spares.get(at), spare))
                limits.append(side * end)
    for at in range(count):
        for side, end in zip((-1, 1), bounds[False, at], strict=True):
            if abs(end) < np.inf:
                upper.append(({at: 1.0}, side, None, 0.0))
                limits.append(side * end)
    cost = np.zeros(width)
    for column in movements:
        cost[column] = cost[count + column] = CHEAP
    cost[2 * count :] = -1.0
    spans = [(0, None)] * (2 * count) + [(0, SPARE)] * len(spares)
    found = linprog(cost, A_ub=matrix(upper, count, width), b_ub=limits, bounds=spans, method="highs")
    return found.x[:count] - found.x[count : 2 * count] if found.status == 0 else None


def matrix(rows, count, width):
    """Each row as side * (terms of p - n) + its spare."""
    at, columns, values = [], [], []
    for number, (terms, side, spare, weight) in enumerate(rows):
        for column, factor in terms.items():
            at += [number, number]
            columns += [column, count + column]
            values += [side * factor, -side * factor]
        if spare is not None and weight:
            at.append(number)
            columns.append(spare)
            values.append(weight)
    return csr_matrix((values, (at, columns)), shape=(len(rows), width))


def setup_of(case, columns, places=2):
    """The setup of a point: every tooth in line, the way to the line within ``out``, no attachment."""
    frame, rx = case.full.frame, case.prescription
    tables = {variable: {} for variable in VARIABLES}
    for row in case.mouth.rows.values():
        for tooth in row.teeth:
            for variable in VARIABLES:
                column = frame.column(tooth, variable)
                value = 0.0 if column is None else columns[column]
                if variable == "out" and tooth in frame.travels:
                    value += columns[frame.travels[tooth]]
                tables[variable][tooth] = round(float(value), places) + 0.0
    reductions = [
        {"contact": name, "amount": round(float(columns[at.reduction]), places), "unit": "mm"}
        for name, at in frame.contacts.items()
        if columns[at.reduction] > 0.5 * 10**-places
    ]
    movements = [
        {"variable": variable, "unit": VARIABLE_UNITS[variable], "values": values}
        for variable, values in tables.items()
        if values
    ]
    gaps = list(frame.hinge.gaps.values())
    gap = round(float(np.mean([columns[at] for at in gaps])), places) + 0.0 if gaps else None
    predicted = [] if gap is None else [{"measure": "posterior-open-bite", "value": gap, "unit": "mm"}]
    return document(rx, movements=movements, reductions=reductions, predicted=predicted, extractions=taken(case))


def taken(case):
    return sorted(case.mouth.extracted)


def document(rx, **members):
    """A setup that answers a prescription."""
    head = {
        "format": "wellposed/setup",
        "version": "1.0",
        "notation": "ISO 3950",
        "id": f"{rx.id}-S",
        "revision": 1,
        "issued": "2026-03-09T10:00:00+01:00",
        "answers": {"id": rx.id, "revision": rx.revision, "sha256": "0" * 64},
        "attachments": [],
    }
    return Setup.model_validate(head | members)


@cache
def feasible(seed):
    """The case of a seed and a setup that is a point of it; None where there is none."""
    case = Case(read(prescription(seed)))
    columns, before = point(case), None
    for _ in range(4):  # the linear plan, then corrected by what the exact geometry makes of it
        setup = None if columns is None else setup_of(case, columns)
        if setup is None or setup == before:  # there is none, or correcting changes nothing more
            break
        columns, before = point(case, exact_room(case, setup)), setup
    return None if columns is None else (case, setup_of(case, columns))
