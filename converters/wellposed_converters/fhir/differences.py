"""Where a bundle is not what its document makes it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

from wellposed.reading.pointer import escape

DIFFERS, LACKS, ADDS = "bundle-differs", "bundle-lacks", "bundle-adds"
_KEYS = ("url", "fullUrl")


class Difference(NamedTuple):
    """A place in the bundle; what the document makes of it, and what is there; None where that is nothing."""

    rule: str
    pointer: str
    expected: Any = None
    found: Any = None


def differences(expected: Any, found: Any, at: str = "") -> Iterator[Difference]:
    """Every place where two values of JSON are not the same. Numbers are compared as numbers: 1.50 is 1.5.

    Extensions and entries are told apart by their urls: their order among one another says nothing.
    """
    if isinstance(expected, dict) and isinstance(found, dict):
        yield from _objects(expected, found, at)
    elif isinstance(expected, list) and isinstance(found, list):
        yield from _objects(_keyed(expected), _keyed(found), at)
    elif not _same(expected, found):
        yield Difference(DIFFERS, at, expected, found)


class _Key(NamedTuple):
    """An item of a list by its url, and which of those with that url it is; or by its place alone."""

    name: str
    number: int


class _Item(NamedTuple):
    place: int
    value: Any


def _keyed(items: list[Any]) -> dict[_Key, _Item]:
    made: dict[_Key, _Item] = {}
    counts: dict[str, int] = {}
    for place, item in enumerate(items):
        name = next((item[key] for key in _KEYS if isinstance(item, dict) and isinstance(item.get(key), str)), "")
        counts[name] = counts.get(name, -1) + 1
        made[_Key(name, counts[name])] = _Item(place, item)
    return made


def _objects(expected: dict[Any, Any], found: dict[Any, Any], at: str) -> Iterator[Difference]:
    for key, value in expected.items():
        if key not in found:
            yield Difference(LACKS, _below(at, key, None), _bare(value))
        else:
            yield from differences(_bare(value), _bare(found[key]), _below(at, key, found[key]))
    for key, value in found.items():
        if key not in expected:
            yield Difference(ADDS, _below(at, key, value), None, _bare(value))


def _bare(value: Any) -> Any:
    return value.value if isinstance(value, _Item) else value


def _below(at: str, key: Any, there: Any) -> str:
    """The place of a member or item; of an item that is not there, the list."""
    if not isinstance(key, _Key):
        return f"{at}/{escape(key)}"
    return f"{at}/{there.place}" if isinstance(there, _Item) else at


def _same(expected: Any, found: Any) -> bool:
    return isinstance(expected, bool) == isinstance(found, bool) and bool(expected == found)
