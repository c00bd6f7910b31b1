"""What the law of a place asks of a work order: the examples of ``spec/work-orders``, read strictly."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any, Literal, cast, get_args

from wellposed._spec_folder import spec_folder

Sure = Literal["published", "from memory"]
OUTSIDE = "outside"

_WORDS = ("jurisdiction", "title", "source", "sure", "note")
_MEMBERS = {*_WORDS, "also", "kept_years", "content"}
_OF_CONTENT = {"what", "carried_by", "sure"}
_CAUTION = "An example, not legal advice. Local law governs."


class WorkOrderError(ValueError):
    """A file of work-order contents that cannot be used: which file, and what is wrong."""

    def __init__(self, file: str, wrong: str) -> None:
        super().__init__(f"{file}: {wrong}")


@dataclass(frozen=True, slots=True)
class Content:
    """One thing an order must hold.

    what        in words
    carried_by  places of a prescription, any of which carries it; none where the format does not
    sure        published or from memory
    """

    what: str
    carried_by: tuple[str, ...]
    sure: Sure


@dataclass(frozen=True, slots=True)
class WorkOrder:
    """What one law asks for; ``kept_years`` is None where it is not known or differs."""

    jurisdiction: str
    also: tuple[str, ...]
    title: str
    kept_years: int | None
    source: str
    sure: Sure
    note: str
    contents: tuple[Content, ...]

    def lacking(self, document: Mapping[str, Any]) -> list[str]:
        """The contents that a prescription could carry and does not, in words."""
        return [one.what for one in self.contents if one.carried_by and not _carried(one.carried_by, document)]


def work_order(jurisdiction: str) -> WorkOrder | None:
    """The example for a code; without one of its own, that of its first two letters; None if there is none."""
    known = work_orders()
    return known.get(jurisdiction) or known.get(jurisdiction.partition("-")[0])


@cache
def work_orders() -> Mapping[str, WorkOrder]:
    """Every example by its code and by those it also holds for. WorkOrderError tells what is wrong with a file."""
    found: dict[str, WorkOrder] = {}
    for path in sorted((spec_folder() / "work-orders").glob("*.toml")):
        read = read_work_order(path)
        for code in (read.jurisdiction, *read.also):
            if found.setdefault(code, read) is not read:
                raise WorkOrderError(path.name, f"{code} stands in {found[code].jurisdiction}.toml already")
    return MappingProxyType(found)


def read_work_order(path: Path) -> WorkOrder:
    """One file. WorkOrderError tells what is wrong with it."""
    try:
        table = tomllib.loads(path.read_bytes().decode())
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise WorkOrderError(path.name, f"is not TOML: {error}") from error
    _check_names(path.name, table, _MEMBERS, _MEMBERS - {"also", "kept_years"})
    words = {name: _words(path.name, name, table[name]) for name in _WORDS}
    if words["jurisdiction"] != path.stem:
        raise WorkOrderError(path.name, f"'jurisdiction' must be {path.stem!r}")
    if not words["note"].startswith(_CAUTION):
        raise WorkOrderError(path.name, f"'note' must begin: {_CAUTION}")
    return WorkOrder(
        words["jurisdiction"],
        _texts(path.name, "also", table.get("also", [])),
        words["title"],
        _years(path.name, table.get("kept_years")),
        words["source"],
        _sure(path.name, words["sure"]),
        words["note"],
        tuple(_contents(path.name, table["content"])),
    )


def _contents(file: str, entries: Any) -> Iterator[Content]:
    if not isinstance(entries, list) or not entries or not all(isinstance(entry, dict) for entry in entries):
        raise WorkOrderError(file, "'content' must be written as [[content]]")
    for entry in entries:
        _check_names(file, entry, _OF_CONTENT, _OF_CONTENT)
        places = () if entry["carried_by"] == OUTSIDE else _texts(file, "carried_by", entry["carried_by"])
        if entry["carried_by"] != OUTSIDE and not (places and all(place.startswith("/") for place in places)):
            raise WorkOrderError(file, "'carried_by' must be 'outside' or a list of pointers")
        yield Content(_words(file, "what", entry["what"]), places, _sure(file, entry["sure"]))


def _check_names(file: str, table: Mapping[str, Any], known: set[str], needed: set[str]) -> None:
    for name in sorted(table.keys() - known):
        raise WorkOrderError(file, f"has an unknown member {name!r}")
    for name in sorted(needed - table.keys()):
        raise WorkOrderError(file, f"has no {name!r}")


def _words(file: str, name: str, value: Any) -> str:
    if not isinstance(value, str) or not value.strip():
        raise WorkOrderError(file, f"must have words as {name!r}")
    return value


def _texts(file: str, name: str, value: Any) -> tuple[str, ...]:
    if not isinstance(value, list):
        raise WorkOrderError(file, f"{name!r} must be a list")
    return tuple(_words(file, name, one) for one in value)


def _years(file: str, value: Any) -> int | None:
    if value is not None and (not isinstance(value, int) or isinstance(value, bool) or value < 1):
        raise WorkOrderError(file, "'kept_years' must be a whole number of years")
    return value


def _sure(file: str, value: Any) -> Sure:
    if value not in get_args(Sure):
        raise WorkOrderError(file, f"is sure = {value!r}; known are {', '.join(get_args(Sure))}")
    return cast("Sure", value)


# places of a prescription


def _carried(places: Iterable[str], document: Mapping[str, Any]) -> bool:
    return any(_stated(document, place.split("/")[1:]) for place in places)


def _stated(value: Any, steps: list[str]) -> bool:
    """Whether something stands at a place: not an empty list, and of the value the last step asks for."""
    if not steps:
        return value not in (None, [], {}, "")
    step, rest = steps[0], steps[1:]
    if step == "*":
        return isinstance(value, list) and any(_stated(entry, rest) for entry in value)
    name, _, wanted = step.partition("=")
    inner = value.get(name) if isinstance(value, Mapping) else None
    return inner == wanted if wanted else _stated(inner, rest)
