"""The numbers of ``spec/norms``, a file at a time, looked up by key."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

from wellposed._spec_folder import spec_folder
from wellposed.findings import Severity
from wellposed.norms.entry import Norm, NormError, norms_of
from wellposed.vocabulary.teeth import LEFT, TEETH, mirrored, side_of

# Where keys live whose first word is not the name of their file.
_HOMES = {
    "arch": "geometry",
    "plausible": "measures",
    "tooth-length": "geometry",
    "tooth-width": "geometry",
}
_SOURCES = "sources"
_KINDS = {"norm", "family"}
_OTHER_SIDE = {tooth: mirrored(tooth) for tooth in TEETH}
_RIGHT_OF_LEFT = {tooth: mirrored(tooth) for tooth in TEETH if side_of(tooth) == LEFT}
_NONE: Mapping[str, Norm] = MappingProxyType({})
_NO_WEIGHTS: Mapping[str, Severity] = MappingProxyType({})


class Change(NamedTuple):
    """What a practice profile has changed: a number by its key, or how much a rule weighs by its id."""

    key: str
    before: float | str
    after: float | str


@dataclass(frozen=True, slots=True)
class Norms:
    """The numbers, with the changes of a practice profile if there is one.

    profile     name of the profile, or None
    changes     what it changed, by key
    changed     the norms it put in place of others
    severities  rules it weighs differently, and how
    """

    profile: str | None = None
    changes: tuple[Change, ...] = ()
    changed: Mapping[str, Norm] = field(default_factory=lambda: _NONE)
    severities: Mapping[str, Severity] = field(default_factory=lambda: _NO_WEIGHTS)
    _values: dict[str, float] = field(default_factory=dict, compare=False, repr=False)

    def norm(self, key: str) -> Norm:
        """The number behind a key, with all that is known of it. KeyError, with the nearest key, if none."""
        right = _with_teeth(key, _RIGHT_OF_LEFT)
        found = self.changed.get(right) or topic(home(right)).get(right)
        if found is None:
            raise KeyError(f"no norm {key!r}{nearest(right)}")
        return found

    def value(self, key: str) -> float:
        """The number behind a key, in the unit of its norm."""
        if key not in self._values:
            self._values[key] = self.norm(key).value
        return self._values[key]

    def family(self, head: str) -> Mapping[str, float]:
        """Every value whose key starts with ``head.``, by the rest of its key, both sides of the mouth."""
        start = f"{head}."
        keys = [key for key in topic(home(head)) if key.startswith(start)]
        if not keys:
            raise KeyError(f"no norms under {head!r}{nearest(head)}")
        right = {key.removeprefix(start): self.value(key) for key in keys}
        left = {_with_teeth(rest, _OTHER_SIDE): amount for rest, amount in right.items()}
        return MappingProxyType(right | left)

    def severity(self, rule: str, usual: Severity) -> Severity:
        """How much a rule weighs: as its profile says, else as usual."""
        return self.severities.get(rule, usual)

    def references(self, key: str) -> tuple[str, ...]:
        """The full references of a norm; none where it is common practice."""
        return tuple(references()[source] for source in self.norm(key).sources)

    def __iter__(self) -> Iterator[Norm]:
        """Every norm there is, in the order of the files."""
        for name in topics():
            yield from (self.norm(key) for key in topic(name))


def topics() -> tuple[str, ...]:
    """The names of the files of norms, in order."""
    names = sorted(path.stem for path in _folder().glob("*.toml"))
    return tuple(name for name in names if name != _SOURCES)


@cache
def topic(name: str) -> Mapping[str, Norm]:
    """The norms of one file by key; none where there is no such file."""
    path = _folder() / f"{name}.toml"
    return read_norms(path) if path.is_file() and name != _SOURCES else _NONE


def read_norms(path: Path) -> Mapping[str, Norm]:
    """The norms of a file by key, families first. NormError tells what is wrong with the first bad one."""
    norms: dict[str, Norm] = {}
    for norm in _norms(path):
        if norm.key in norms:
            raise NormError(path.name, norm.key, "stands twice")
        _check_place(path.name, norm.key)
        norms[norm.key] = norm
    return MappingProxyType(norms)


@cache
def references() -> Mapping[str, str]:
    """The full references by their keys."""
    return read_references(_folder() / f"{_SOURCES}.toml")


def read_references(path: Path) -> Mapping[str, str]:
    """The references of a file by their keys. NormError where one is not words."""
    sources = read_toml(path.name, path.read_bytes())
    for key, reference in sources.items():
        if not isinstance(reference, str) or not reference.strip():
            raise NormError(path.name, key, "must be a reference in words")
    return MappingProxyType(sources)


def read_toml(where: str, content: bytes) -> dict[str, Any]:
    """A TOML document as it is. NormError where it is none."""
    try:
        return tomllib.loads(content.decode())
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise NormError(where, "", f"is not TOML: {error}") from error


def home(key: str) -> str:
    """The name of the file a key belongs in."""
    first = key.partition(".")[0]
    return _HOMES.get(first, first)


def nearest(key: str) -> str:
    """``"; the nearest is ..."``, or nothing where no key is near."""
    near = get_close_matches(_with_teeth(key, _RIGHT_OF_LEFT), [norm.key for norm in Norms()], n=1)
    return f"; the nearest is {near[0]!r}" if near else ""


def _folder() -> Path:
    return spec_folder() / "norms"


def _norms(path: Path) -> Iterator[Norm]:
    table = read_toml(path.name, path.read_bytes())
    for unknown in sorted(table.keys() - _KINDS):
        raise NormError(path.name, unknown, "is not known here; only [[norm]] and [[family]] are")
    for kind in sorted(table):
        if not isinstance(table[kind], list) or not all(isinstance(entry, dict) for entry in table[kind]):
            raise NormError(path.name, kind, f"must be written as [[{kind}]]")
        for entry in table[kind]:
            yield from norms_of(path.name, entry)


def _check_place(file: str, key: str) -> None:
    if file != f"{home(key)}.toml":
        raise NormError(file, key, f"belongs in {home(key)}.toml")
    right = _with_teeth(key, _RIGHT_OF_LEFT)
    if key != right:
        raise NormError(file, key, f"is answered by its mirror: write {right!r}")


def _with_teeth(key: str, others: Mapping[str, str]) -> str:
    return ".".join(others.get(part, part) for part in key.split("."))
