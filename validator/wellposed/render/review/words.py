"""How a review speaks: labels, senses, reasons. Data."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

LABELS: Mapping[str, str] = MappingProxyType(
    {
        "goals": "Asked:",
        "movements": "Asked:",
        "attachments": "Asked:",
        "staging": "Asked:",
        "keep": "To be kept:",
        "allow": "Allowed:",
        "exclude": "Excluded:",
    }
)
"""How a clause is introduced, by its section."""

BEYOND: Mapping[str, str] = MappingProxyType({"keep": "tolerated", "allow": "allowed", "exclude": "allowed"})
"""What a clause is outside of, by its section; elsewhere it is what was asked."""

TRAVELS: Mapping[tuple[str, int], str] = MappingProxyType(
    {
        ("along", 1): "{} mesially",
        ("along", -1): "{} distally",
        ("out", 1): "{} outwards",
        ("out", -1): "{} inwards",
        ("vertical", 1): "{} of extrusion",
        ("vertical", -1): "{} of intrusion",
        ("torque", 1): "{} of torque, crown outwards",
        ("torque", -1): "{} of torque, crown inwards",
        ("tip", 1): "{} of tip, crown mesially",
        ("tip", -1): "{} of tip, crown distally",
        ("rotation", 1): "{} of rotation, mesial side towards the tongue",
        ("rotation", -1): "{} of rotation, distal side towards the tongue",
    }
)
"""A planned movement by variable and sign."""

NOUNS: Mapping[tuple[str, int], str] = MappingProxyType(
    {
        ("along", 1): "mesial movement",
        ("along", -1): "distal movement",
        ("out", 1): "outward movement",
        ("out", -1): "inward movement",
        ("vertical", 1): "extrusion",
        ("vertical", -1): "intrusion",
        **{(angle, sign): angle for angle in ("torque", "tip", "rotation") for sign in (1, -1)},
    }
)
"""A movement in one sense, as a thing there is more or less of."""

WHY: Mapping[str, str] = MappingProxyType(
    {
        "not-stated": "the setup does not say",
        "no-baseline": "not measured at the start",
        "hinge": "it turns on how far a millimetre at the molars moves the bite (1.0 to 2.5 mm)",
        "not-in-a-setup": "no setup shows it",
        "no-amount": "the order does not say how level; a goal on the curve of Spee says it of a lower arch",
        "teeth-missing": "the teeth it is taken at are not there",
        "expected": "it rests on what is counted on",
    }
)
"""Why something cannot be told."""


def because(why: str | None) -> str:
    """A reason in words; what teeth do not show is said by no setup."""
    return WHY.get(why or "not-in-a-setup", (why or "").replace("-", " "))


STANDINGS: Mapping[str, str] = MappingProxyType({"done": "done", "not-done": "not done", "changed": "done differently"})
"""What the laboratory says of a clause that teeth do not show."""

DOING: Mapping[str | None, str] = MappingProxyType(
    {
        "setup": "Not met, though another setup can meet it with all the rest: ask for it",
        "prescription": "Not met, and no setup can meet it: change the order first, its check lists the ways out",
        "either": "Not met; whether another setup could meet it cannot be told",
        None: "Not met",
    }
)
"""Whose doing it is that clauses are not met, as the heading they stand under."""
