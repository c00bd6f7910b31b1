"""Which rows a document has, and which columns each of them fills: taken from the models, so nothing is left out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from types import NoneType, UnionType
from typing import Any, Final, Literal, Union, get_args, get_origin

from wellposed.model import DOCUMENTS
from wellposed.model.base import Part

DOCUMENT: Final = "document"
SECTION, ENTRY, INNER, TOOTH, NAME = "section", "entry", "inner_entry", "tooth", "name"
NUMBERS: Final = (ENTRY, INNER)
"""Columns that count: in the list of the section, and in a list within one of its entries."""
TEXT, LIST, NUMBER, TRUTH, CONTENT = "text", "list", "number", "truth", "content"
"""What a cell holds: words, words with a space between them, a number, true or false, JSON."""
ONE, MANY, KEYED = "one", "many", "keyed"
"""How often a section stands: once, a row an entry of a list, a row a name."""
_FIRST: Final = (
    *(
        SECTION,
        ENTRY,
        INNER,
        "id",
        "strength",
        "use",
        "motion",
        "measure",
        "variable",
        TOOTH,
        "teeth",
        "contacts",
        "arch",
    ),
    *("value", "at_least", "at_most", "within", "up_to", "amount", "unit", "because", "words", NAME),
)
"""What most rows fill stands to the left."""
_KINDS: Final[dict[Any, str]] = {str: TEXT, int: NUMBER, float: NUMBER, bool: TRUTH}


@dataclass(frozen=True, slots=True)
class Column:
    """A column as one section uses it.

    name   of the header
    steps  from the object of the row to the member; none where the row is the value itself
    kind   what its cells hold
    """

    name: str
    steps: tuple[str, ...]
    kind: str


@dataclass(frozen=True, slots=True)
class Section:
    """A part of a document that has rows of its own.

    name     the pointer of its place without numbers, ``document`` for the whole
    member   its name in the object it belongs to
    form     how often it stands
    depth    how many of the columns that count its rows fill
    key      the column of its names, "" where it has none
    columns  what its rows fill, in the order of the model
    inner    the sections within it
    """

    name: str
    member: str
    form: str
    depth: int
    key: str
    columns: tuple[Column, ...]
    inner: tuple[Section, ...] = ()

    def column(self, name: str) -> Column | None:
        """Its column of a name, if it has one."""
        return next((one for one in self.columns if one.name == name), None)

    def all(self) -> Iterator[Section]:
        """Itself and every section within it, each before those within it."""
        yield self
        for one in self.inner:
            yield from one.all()


@cache
def layout(named: str) -> Section:
    """The rows of a document of this ``format``."""
    return _section(DOCUMENT, "", ONE, 0, (DOCUMENTS[named],))


@cache
def sections(named: str) -> dict[str, Section]:
    """Every section of a document of this ``format``, by its name."""
    return {one.name: one for one in layout(named).all()}


@cache
def headers() -> tuple[str, ...]:
    """Every header there is, in the order in which they are written."""
    everywhere = [section for named in DOCUMENTS for section in layout(named).all()]
    return tuple(dict.fromkeys((*_FIRST, *(column.name for section in everywhere for column in section.columns))))


def _section(name: str, member: str, form: str, depth: int, models: tuple[type[Part], ...], key: str = "") -> Section:
    columns, inner = dict[str, Column](), list[Section]()
    for own, annotation in _members(models):
        parts, shape = _parts(annotation)
        if not parts and shape != KEYED:
            columns.setdefault(own, Column(own, (own,), _kind(annotation)))
        elif shape == ONE and depth:
            columns |= {one.name: one for one in _flat(own, parts)}
        else:
            inner.append(_within(name, own, shape, depth, annotation))
    return Section(name, member, form, depth, key, tuple(columns.values()), tuple(inner))


def _within(holder: str, own: str, shape: str, depth: int, annotation: Any) -> Section:
    """The section of a member that holds objects, or values by name."""
    name = own if holder == DOCUMENT else f"{holder}/{own}"
    parts, _ = _parts(annotation)
    if shape != KEYED:
        return _section(name, own, shape, depth + (shape == MANY), parts)
    named, value = get_args(bare(annotation))
    key = TOOTH if get_origin(bare(named)) is Literal else NAME
    if parts:
        return _section(name, own, KEYED, depth, parts, key)
    return Section(name, own, KEYED, depth, key, (Column("value", (), _kind(value)),))


def _flat(own: str, models: tuple[type[Part], ...]) -> Iterator[Column]:
    """The members of an object within an entry, as columns of the entry's row."""
    for name, annotation in _members(models):
        yield Column(f"{own}_{name}", (own, name), _kind(annotation))


def _members(models: Iterable[type[Part]]) -> Iterator[tuple[str, Any]]:
    for model in models:
        yield from ((name, field.annotation) for name, field in model.model_fields.items())


def _parts(annotation: Any) -> tuple[tuple[type[Part], ...], str]:
    """The models a member holds, none where it holds plain values; and how often."""
    inner, shape = bare(annotation), ONE
    if get_origin(inner) is tuple:
        inner, shape = bare(get_args(inner)[0]), MANY
    elif get_origin(inner) is dict:
        inner, shape = bare(get_args(inner)[1]), KEYED
    forms = tuple(map(bare, get_args(inner))) if get_origin(inner) in (UnionType, Union) else (inner,)
    return tuple(one for one in forms if isinstance(one, type) and issubclass(one, Part)), shape


def _kind(annotation: Any) -> str:
    inner = bare(annotation)
    if get_origin(inner) is tuple:
        return LIST
    return TEXT if get_origin(inner) is Literal else _KINDS.get(inner, CONTENT)


def bare(annotation: Any) -> Any:
    """A type without what is said about it, and without "may be left out"."""
    while hasattr(annotation, "__metadata__") or get_origin(annotation) in (UnionType, Union):
        args = [one for one in get_args(annotation) if one is not NoneType]
        if not hasattr(annotation, "__metadata__") and len(args) > 1:
            break
        annotation = args[0]
    return annotation
