"""The meanings of the parts of one expression put together."""

from __future__ import annotations

from collections.abc import Sequence

from wellposed_converters.text.places.meaning import NUMERIC, Meaning, in_order
from wellposed_converters.text.places.notation import BOTH, in_mouth_order


def merged(parts: Sequence[Meaning]) -> Meaning:
    """Several places said together."""
    system = next((part.system for part in parts if part.system in NUMERIC), parts[0].system)
    surfaces = {part.surface for part in parts}
    return Meaning(
        system,
        in_mouth_order(number for part in parts for number in part.teeth),
        in_order(pair for part in parts for pair in part.contacts),
        tuple(run for part in parts for run in part.runs),
        _one([part.arch for part in parts]),
        _one([part.side for part in parts]),
        tuple(dict.fromkeys(name for part in parts for name in part.inferred)),
        tuple(dict.fromkeys(name for part in parts for name in part.needs)),
        tuple(form for part in parts for form in part.positions),
        surfaces.pop() if len(surfaces) == 1 else None,
        tuple(number for part in parts for number in part.minus),
        tuple(link for part in parts for link in part.links),
    )


def _one(words: Sequence[str | None]) -> str | None:
    said = {word for word in words if word}
    return BOTH if len(said) > 1 else next(iter(said), None)


def combined(parts: Sequence[Sequence[Meaning]]) -> tuple[Meaning, ...]:
    """The meanings of places said together: one a numbering that fits every part."""
    if len(parts) == 1:
        return tuple(parts[0])
    systems = [*dict.fromkeys(one.system for part in parts for one in part if one.system in NUMERIC), None]
    found = []
    for system in systems:
        chosen = [_fitting(part, system) for part in parts]
        if all(chosen):
            found.append(merged([fitting[0] for fitting in chosen]))
    return tuple(found)


def _fitting(part: Sequence[Meaning], system: str | None) -> list[Meaning]:
    exact = [one for one in part if one.system == system]
    return exact or [one for one in part if one.system not in NUMERIC and not (system and "side" in one.needs)]
