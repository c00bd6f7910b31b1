"""Practice profiles: a practice's own numbers in place of the specification's, all of them named."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from types import MappingProxyType
from typing import Any

from wellposed.norms.book import Change, Norms, home, nearest, read_toml, topic
from wellposed.norms.entry import Norm, NormError, number

_WHERE = "practice profile"
_OURS = "practice."


def with_profile(profile: Path | str | bytes) -> Norms:
    """The numbers with those of a practice in place of some: the path of a TOML file, or its bytes.

    The file holds ``name = "..."`` and a table ``[limits]`` of known practice limits and numbers, each in the unit
    of the norm it replaces. What is usual differs between practices; geometry and the model do not, and are not
    theirs to change. NormError tells what is wrong with the file.
    """
    content = profile if isinstance(profile, bytes) else Path(profile).read_bytes()
    name, limits = _parts(read_toml(_WHERE, content))
    changed = {key: _replaced(name, key, limits[key]) for key in sorted(limits)}
    changes = tuple(Change(key, topic(home(key))[key].value, norm.value) for key, norm in changed.items())
    return Norms(name, changes, MappingProxyType(changed))


def _parts(table: dict[str, Any]) -> tuple[str, dict[str, Any]]:
    for unknown in sorted(table.keys() - {"name", "limits"}):
        raise NormError(_WHERE, unknown, "is not known here; only name and [limits] are")
    name, limits = table.get("name"), table.get("limits")
    if not isinstance(name, str) or not name.strip():
        raise NormError(_WHERE, "name", "must be words")
    if not isinstance(limits, dict) or not limits:
        raise NormError(_WHERE, "limits", "must be a table of keys and numbers")
    return name, limits


def _replaced(name: str, key: str, amount: Any) -> Norm:
    if isinstance(amount, dict):
        raise NormError(_WHERE, key, 'is a table: write the whole key in quotes, "practice.midline" = 3')
    known = topic(home(key)).get(key)
    if known is None:
        raise NormError(_WHERE, key, f"is not a known norm{nearest(key)}")
    if not key.startswith(_OURS):
        raise NormError(_WHERE, key, f"is no practice limit; a profile may change those under {_OURS}")
    after, note = number(_WHERE, key, amount), f"Set by the practice profile {name!r}."
    plain = replace(known, low=None, high=None, spread=None)
    return replace(plain, value=after, sources=(), sure="common practice", note=note)
