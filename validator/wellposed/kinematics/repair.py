"""What a way out is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from wellposed.kinematics.rows import Key, Strain


@dataclass(frozen=True)
class Repair:
    """One way in which a member of a conflict could give way.

    what          ``lower-floor``, ``raise-ceiling``, ``widen-tolerance``, ``leave-undone``, ``change-amount``,
                  ``allow``, ``give-up``, ``lift-exclusion``, ``more-aligners``, ``pass-limit``, ``leave-space``
    member        the member that gives way
    strain        its strain; the amount is in ``unit``
    use           for ``allow``: the allowance, or the motion of single teeth
    facts         what the wording and the clause to write need: clause, teeth, arch, contacts
    irreversible  enamel is taken off
    whole         the amount counts in whole units (aligners)
    """

    what: str
    member: Key
    strain: Strain
    unit: str
    use: str = ""
    facts: tuple[tuple[str, Any], ...] = ()
    irreversible: bool = False
    whole: bool = False
