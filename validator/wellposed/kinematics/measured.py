"""What was measured: findings by measure, baselines in the model's units, measuring errors."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from wellposed import norms
from wellposed.model.findings import Finding, ToothFinding
from wellposed.model.prescription import Prescription


@dataclass(frozen=True)
class Measured:
    """The findings of a prescription, looked up."""

    prescription: Prescription

    @cached_property
    def _findings(self) -> dict[tuple[str, tuple[str, ...]], list[Finding]]:
        found: dict[tuple[str, tuple[str, ...]], list[Finding]] = {}
        for finding in self.prescription.findings or ():
            if isinstance(finding, Finding):
                found.setdefault((finding.measure, _pair(finding.pair)), []).append(finding)
        return found

    @cached_property
    def _tooth_values(self) -> dict[str, dict[str, float]]:
        values: dict[str, dict[str, float]] = {}
        for finding in self.prescription.findings or ():
            if isinstance(finding, ToothFinding):
                values.setdefault(finding.tooth_measure, {}).update(finding.values)
        return values

    def tooth_values(self, measure: str) -> dict[str, float]:
        """A measure of single teeth, tooth to value."""
        return self._tooth_values.get(measure, {})

    def stated(self, measure: str, pair: tuple[str, ...] | None = None) -> list[Finding]:
        """Every finding of this measure (at this tooth pair)."""
        return self._findings.get((measure, _pair(pair)), [])

    def finding(self, measure: str, pair: tuple[str, ...] | None = None) -> Finding | None:
        """The one finding of this measure; None if there is none, or there are several that differ."""
        found = self.stated(measure, pair)
        return found[0] if found and len({(f.value, f.unit) for f in found}) == 1 else None

    def baseline(self, measure: str, pair: tuple[str, ...] | None = None) -> float | None:
        """Present value in the measure's own unit; overbite percent becomes mm by the crown height."""
        found = self.stated(measure, pair)
        if len({finding.unit for finding in found}) > 1:
            return self._agreed(found)
        finding = self.finding(measure, pair)
        if finding is None:
            return None
        scale = self.scale(measure, finding.unit)
        return None if scale is None else finding.value * scale

    def _agreed(self, found: list[Finding]) -> float | None:
        """A measure stated in two units: the value in its own, if the other says the same or cannot be compared."""
        values = [f.value * scale for f in found if (scale := self.scale(f.measure, f.unit)) is not None]
        own = [f.value for f in found if f.unit != "percent"]
        alike = max(values) - min(values) <= norms.value("kinematics.two-units-apart")
        return own[0] if own and alike else None

    def _in_its_own_unit(self, measure: str, pair: tuple[str, ...] | None) -> Finding | None:
        """Of a measure stated in two units, the finding its baseline is taken from."""
        found = self.stated(measure, pair) if self.baseline(measure, pair) is not None else []
        return next((f for f in found if f.unit != "percent"), None)

    @cached_property
    def crown_height(self) -> float | None:
        """Crown height of the most overlapped lower incisor, mm, if measured."""
        finding = self.finding("lower-incisor-crown-height")
        if finding is not None:
            return finding.value if finding.value > 0 else None
        heights = [height for tooth, height in self.tooth_values("crown-height").items() if tooth in ("31", "41")]
        return min(heights) if heights and min(heights) > 0 else None

    def scale(self, measure: str, unit: str) -> float | None:
        """Model units per unit of a clause; None where percent lacks the crown height."""
        if unit != "percent" or measure != "overbite":
            return 1.0
        return self.crown_height / 100 if self.crown_height else None

    def amount(self, measure: str) -> float:
        """Crowding or spacing as the geometry takes it: stated, else none."""
        return max(0.0, self.baseline(measure) or 0.0)

    def room_stated(self, arch: str) -> bool:
        """Whether the arch's crowding or its spacing is known."""
        return any(self.baseline(f"{arch}-{what}") is not None for what in ("crowding", "spacing"))

    def room_known(self, arch: str) -> bool:
        """Whether the arch's crowding or spacing is stated, and where it is clear."""
        return self.room_stated(arch) and not self.room_unclear(arch)

    def room_unclear(self, arch: str) -> bool:
        """Crowding and spacing both, and not said where the spaces are."""
        spacing = self.finding(f"{arch}-spacing")
        both = self.amount(f"{arch}-crowding") > 0 and self.amount(f"{arch}-spacing") > 0
        return bool(both and spacing and not spacing.contacts)

    def error(self, measure: str, pair: tuple[str, ...] | None = None) -> float:
        """Measuring error of the baseline, mm or deg; the usual one for crowding if none is stated."""
        finding = self.finding(measure, pair) or self._in_its_own_unit(measure, pair)
        if finding is None:
            return 0.0
        if finding.error is not None:
            percent = finding.unit == "percent" and measure == "overbite"
            return finding.error * (self.crown_height or 0.0) / 100 if percent else finding.error
        return norms.value("kinematics.crowding-error") if measure.endswith("crowding") and finding.value > 0 else 0.0


def _pair(pair: tuple[str, ...] | None) -> tuple[str, ...]:
    return tuple(sorted(pair)) if pair else ()
