"""What a table says to a setup document of the format."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from typing import Any, NamedTuple

from wellposed.digests import digest
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES
from wellposed.vocabulary.teeth import ARCHES, UPPER, arch_of, place
from wellposed_converters.setups.movements import Item
from wellposed_converters.setups.reading import Reading


class Identity(NamedTuple):
    """Which document it becomes; ``replaces`` is the digest of the revision before."""

    id: str
    revision: int
    replaces: str | None
    issued: str


def document(said: Reading, who: Identity, prescription: Prescription, unlisted: str | None) -> dict[str, Any]:
    """The setup, as JSON types, its members in the order of the format."""
    answers = {"id": prescription.id, "revision": prescription.revision, "sha256": digest(prescription)}
    members: dict[str, Any] = {
        "format": "wellposed/setup",
        "version": "1.0",
        "notation": "ISO 3950",
        "id": who.id,
        "revision": who.revision,
        "replaces": who.replaces,
        "issued": who.issued,
        "answers": answers,
        "aligners": None if said.aligners is None else dict(said.aligners),
        "movements": _tables(said.final),
        "unlisted": unlisted,
        "extractions": None if said.extractions is None else list(said.extractions),
        "reductions": _reductions(said),
        "attachments": _attachments(said),
        "stages": _stages(said.stages) if said.stages else None,
        "predicted": _predicted(said),
    }
    return {name: value for name, value in members.items() if value is not None}


def _tables(items: Iterable[Item]) -> list[dict[str, Any]]:
    """One table a variable, teeth from the patient's right to left, the upper arch first."""
    placed = sorted(items, key=lambda one: (arch_of(one.tooth) != UPPER, place(one.tooth), one.tooth))
    by_variable = {name: {one.tooth: _plain(one.value) for one in placed if one.variable == name} for name in VARIABLES}
    return [
        {"variable": name, "unit": VARIABLE_UNITS[name], "values": values}
        for name, values in by_variable.items()
        if values
    ]


def _stages(items: Iterable[Item]) -> list[dict[str, Any]]:
    held: dict[tuple[str, int], list[Item]] = {}
    for item in items:
        held.setdefault((arch_of(item.tooth), item.stage), []).append(item)
    ordered = sorted(held, key=lambda key: (ARCHES.index(key[0]), key[1]))
    return [{"aligner": stage, "arch": arch, "movements": _tables(held[arch, stage])} for arch, stage in ordered]


def _reductions(said: Reading) -> list[dict[str, Any]] | None:
    if said.reductions is None:
        return None
    return [
        {"contact": one.contact, "amount": _plain(one.amount), "unit": "mm"}
        | ({"before_aligner": one.before} if one.before is not None else {})
        for one in said.reductions
    ]


def _attachments(said: Reading) -> list[dict[str, Any]] | None:
    if said.attachments is None:
        return None
    return [
        {"tooth": one.tooth, **one.carried.model_dump(exclude_unset=True)}
        | ({"from_aligner": one.begins} if one.begins is not None else {})
        for one in said.attachments
    ]


def _predicted(said: Reading) -> list[dict[str, Any]] | None:
    if said.predicted is None:
        return None
    return [
        {"measure": one.asked.measure, "value": _plain(one.number.value), "unit": one.asked.unit}
        for one in said.predicted
    ]


def _plain(value: Decimal) -> float | int:
    """A number that JSON writes as it is, with at most two decimals."""
    return int(value) if value == value.to_integral_value() else float(value)
