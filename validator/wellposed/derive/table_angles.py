"""Derived: overbite in its other unit, angles that close or follow, the planned interincisal angle, usual display."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed import norms
from wellposed.derive.cephalometric import WHOLE_TURN, closures, fourths, planned_interincisal
from wellposed.derive.display import Usual, display_at_rest, gingival_display
from wellposed.derive.overbite import mm_of, percent_of
from wellposed.derive.table_parts import Derived, measuring
from wellposed.kinematics.measured import Measured
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.units import DEG, MM, PERCENT

_TOLERANCE = "normal.closure-tolerance"
_INTERINCISAL = ("normal.interincisal.least", "normal.interincisal.most")
_TIPPING = "kinematics.torque-per-advance"
_DISPLAYED = ("incisor-display-at-rest", "gingival-display-on-smiling")


def angles(prescription: Prescription) -> Iterator[Derived]:
    """All of it."""
    yield from _overbite(prescription)
    yield from _closing(prescription)
    yield from _planned(prescription)
    yield from _display(prescription)


def _overbite(prescription: Prescription) -> Iterator[Derived]:
    """The overbite in the unit it is not stated in; refused where the lower crown is not measured."""
    measured = Measured(prescription)
    found = measured.stated("overbite")
    if len({finding.unit for finding in found}) != 1 or measured.finding("overbite") is None:
        return
    value, unit = found[0].value, PERCENT if found[0].unit == MM else MM
    height, from_ = (
        measured.crown_height,
        measuring(prescription, "overbite", "lower-incisor-crown-height", "crown-height"),
    )
    if height is None:
        yield Derived("overbite", None, unit, from_=from_, refused="no-crown-height")
        return
    ends = tuple(f"normal.overbite{'-percent' if unit == PERCENT else ''}.{end}" for end in ("least", "most"))
    derived = (percent_of if unit == PERCENT else mm_of)(value, height)
    yield Derived("overbite", derived, unit, keys=ends, from_=from_, usual=_pair(ends), facts={"crown_height": height})


def _closing(prescription: Prescription) -> Iterator[Derived]:
    reach = norms.value(_TOLERANCE)
    for closed in closures(prescription):
        usual = (WHOLE_TURN - reach, WHOLE_TURN + reach)
        name, facts = f"sum-of-angles-{closed.form}", {"gap": closed.gap}
        yield Derived(name, closed.sum, DEG, keys=(_TOLERANCE,), from_=closed.from_, usual=usual, facts=facts)
    for one in fourths(prescription):
        ends = _ends(one.measure)
        yield Derived(one.measure, one.value, DEG, keys=ends, from_=one.from_, usual=_pair(ends))


def _ends(measure: str) -> tuple[str, str]:
    """The norms of the usual range of an angle."""
    head = "normal.interincisal" if measure == "interincisal-angle" else f"normal.{measure}"
    return f"{head}.least", f"{head}.most"


def _planned(prescription: Prescription) -> Iterator[Derived]:
    """The interincisal angle that the clauses bring about, where any of them touches it."""
    found = planned_interincisal(prescription)
    if found is None or not found.clauses:
        return
    yield Derived(
        "planned-interincisal-angle",
        found.low if found.low == found.high else None,
        DEG,
        found.low,
        found.high,
        keys=(*_INTERINCISAL, _TIPPING),
        from_=(*found.from_, *found.clauses),
        usual=_pair(_INTERINCISAL),
        facts={"present": found.present},
    )


def _display(prescription: Prescription) -> Iterator[Derived]:
    """What is usual for the patient's age and sex, beside what is measured."""
    age, sex = prescription.patient.age_years, prescription.patient.sex
    if age is None and sex is None:
        return
    for measure, usual in zip(_DISPLAYED, (display_at_rest(age, sex), gingival_display(sex)), strict=True):
        finding = Measured(prescription).finding(measure)
        if finding is not None and usual is not None:
            yield _shown(f"usual-{measure}", usual, finding.id, finding.value)


def _shown(name: str, usual: Usual, finding: str, measured: float) -> Derived:
    facts = {"measured": measured, "mean": usual.mean}
    return Derived(name, None, MM, usual.low, usual.high, usual.keys, (finding,), facts=facts)


def _pair(keys: tuple[str, ...]) -> tuple[float, float]:
    return norms.value(keys[0]), norms.value(keys[1])
