"""Practice profiles: a practice's own numbers in place of the specification's, all of them named."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from difflib import get_close_matches
from pathlib import Path
from types import MappingProxyType
from typing import Any

from wellposed.findings import Severity
from wellposed.norms.book import Change, Norms, home, nearest, read_toml, topic
from wellposed.norms.entry import Norm, NormError, number

_WHERE = "practice profile"
_THEIRS = (
    *("practice", "caution", "step", "normal", "achieved", "auxiliary"),
    *("tooth-size", "space", "crown", "mouth", "review"),
)
"""First words of the keys a profile may change."""


def with_profile(profile: Path | str | bytes, usual: Mapping[str, Severity] | None = None) -> Norms:
    """The numbers with those of a practice in place of some: the path of a TOML file, or its bytes.

    The file holds ``name = "..."`` and one of two tables or both: ``[limits]`` of known keys and numbers, each in the
    unit of the norm it replaces, and ``[severities]`` of rules and how much each weighs here. What a practice asks by
    is its own; geometry, the model, plausible ranges and published indices are not. No rule can be switched off, and
    each change is named in every report. NormError tells what is wrong with the file.

    usual    the rules whose weight may be changed, with the weight they usually have
    """
    content = profile if isinstance(profile, bytes) else Path(profile).read_bytes()
    name, limits, weights = _parts(read_toml(_WHERE, content))
    changed = {key: _replaced(name, key, limits[key]) for key in sorted(limits)}
    severities = {rule: _weight(rule, weights[rule], usual or {}) for rule in sorted(weights)}
    numbers = (Change(key, topic(home(key))[key].value, norm.value) for key, norm in changed.items())
    weighed = (Change(rule, (usual or {})[rule].value, now.value) for rule, now in severities.items())
    return Norms(name, (*numbers, *weighed), MappingProxyType(changed), MappingProxyType(severities))


def _parts(table: dict[str, Any]) -> tuple[str, dict[str, Any], dict[str, Any]]:
    for unknown in sorted(table.keys() - {"name", "limits", "severities"}):
        raise NormError(_WHERE, unknown, "is not known here; only name, [limits] and [severities] are")
    name, limits, weights = table.get("name"), table.get("limits", {}), table.get("severities", {})
    if not isinstance(name, str) or not name.strip():
        raise NormError(_WHERE, "name", "must be words")
    if not isinstance(limits, dict) or not (limits or weights):
        raise NormError(_WHERE, "limits", "must be a table of keys and numbers")
    if not isinstance(weights, dict):
        raise NormError(_WHERE, "severities", "must be a table of rules and weights")
    return name, limits, weights


def _weight(rule: str, weight: Any, usual: Mapping[str, Severity]) -> Severity:
    if rule not in usual:
        near = get_close_matches(rule, usual, n=1)
        also = f"; the nearest is {near[0]!r}" if near else ""
        raise NormError(_WHERE, rule, f"is no clinical rule{also}")
    if weight not in list(Severity):
        raise NormError(_WHERE, rule, f"weighs {', '.join(Severity)}, not {weight!r}; no rule can be switched off")
    return Severity(weight)


def _replaced(name: str, key: str, amount: Any) -> Norm:
    if isinstance(amount, dict):
        raise NormError(_WHERE, key, 'is a table: write the whole key in quotes, "practice.midline" = 3')
    known = topic(home(key)).get(key)
    if known is None:
        raise NormError(_WHERE, key, f"is not a known norm{nearest(key)}")
    if key.partition(".")[0] not in _THEIRS:
        raise NormError(
            _WHERE, key, f"is not a practice's to change; a profile may change keys of {', '.join(_THEIRS)}"
        )
    after, note = number(_WHERE, key, amount), f"Set by the practice profile {name!r}."
    plain = replace(known, low=None, high=None, spread=None)
    return replace(plain, value=after, sources=(), sure="common practice", note=note)
