"""What a clause becomes on its way into the format, and the clause as something whose members are taken one by one.

A maker takes the members it understands. What is left at the end would be lost, and then the whole clause is not
carried: nothing a clause says is dropped unseen.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import Any, Final, NamedTuple

from wellposed.vocabulary.units import DEG, MM, PERCENT
from wellposed_converters.text.clause import Clause, quoted

UNITS: Final = {"mm": MM, "deg": DEG, "pct": PERCENT}
SILENT: Final = frozenset(("spans", "rules", "inferred", "pending", "kind", "mode"))
"""Members that say nothing about the mouth by themselves."""
STRENGTHS: Final = {"prefer": "prefer"}


class NotCarried(Exception):  # noqa: N818  # not an error of the program: a clause that the format cannot say
    """The format cannot say the clause, or the clause lacks something; the reason is a name in ``draft.toml``."""


@dataclass(frozen=True)
class Part:
    """A part of the document.

    section  the list it stands in; or ``treat``, ``particulars``, ``patient``, ``staging``, ``absent``,
             ``overcorrection``
    value    its members, without the id
    open     members the format needs and the note does not say
    assumed  what was filled by a definition or a convention: member and name of the rule
    because  clauses whose finding it rests on
    fill     a member that holds all teeth present in an arch (``upper``, ``lower`` or ``both``), once they are known
    """

    section: str
    value: Mapping[str, Any]
    open: tuple[str, ...] = ()
    assumed: tuple[tuple[str, str], ...] = ()
    because: tuple[int, ...] = ()
    fill: tuple[str, str] | None = None

    def with_(self, **members: Any) -> Part:
        """The same part with more members in its value."""
        return replace(self, value={**self.value, **members})

    def assuming(self, member: str, rule: str) -> Part:
        """The same part, and that a member was filled by a rule."""
        return replace(self, assumed=(*self.assumed, (member, rule)))


class Amount(NamedTuple):
    """Bounds in a unit of the format; ``about`` when the note is not exact, ``below`` when it says "less than"."""

    low: Decimal | None
    high: Decimal | None
    unit: str
    about: bool = False
    below: bool = False

    @property
    def exact(self) -> Decimal | None:
        """The one value, if it is one and not about it."""
        return self.low if self.low == self.high and not self.about else None


@dataclass(frozen=True)
class Order:
    """All clauses of a note and its text."""

    clauses: tuple[Clause, ...]
    text: str

    def of(self, kinds: Sequence[str], modes: Sequence[str]) -> list[tuple[int, Clause]]:
        """The clauses of these kinds and modes that wait for no answer, with their numbers."""
        return [
            (at, one)
            for at, one in enumerate(self.clauses)
            if one.kind in kinds and one.mode in modes and not one.pending
        ]


@dataclass
class Facts:
    """A clause, its number, and which of its members nobody has taken yet."""

    at: int
    clause: Clause
    order: Order
    left: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.left = {name for name, value in vars(self.clause).items() if value not in (None, (), False)} - SILENT

    @property
    def kind(self) -> str:
        """What the clause is about."""
        return self.clause.kind

    @property
    def mode(self) -> str:
        """The force of the clause."""
        return self.clause.mode

    @property
    def strength(self) -> str:
        """``prefer`` for a wish, else ``must``."""
        return STRENGTHS.get(self.mode, "must")

    def take(self, name: str) -> Any:
        """A member, now taken."""
        self.left.discard(name)
        return getattr(self.clause, name)

    def words(self, longest: int = 200) -> str:
        """The words of the clause, which hold all it says. :raises NotCarried: when they are too long."""
        quote = quoted(self.order.text, self.clause.spans)
        if self.clause.condition and self.clause.condition not in quote:
            raise NotCarried("condition")
        self.left.clear()
        words = " ".join(quote.split())
        if len(words) > longest:
            raise NotCarried("words-too-long")
        return words

    def teeth(self) -> list[str]:
        """The teeth as the format writes them."""
        return [str(number) for number in self.take("teeth")]

    def contacts(self) -> list[str]:
        """The contacts as the format writes them."""
        return [f"{one}-{other}" for one, other in self.take("contacts")]

    def amount(self, *measures: str) -> Amount | None:
        """The amount, if there is one. :raises NotCarried: when it is of something else, or no number of the format."""
        if self.clause.minimum is None and self.clause.maximum is None:
            return None
        if self.take("measure") not in measures:
            raise NotCarried("amount-of-something-else")
        unit = UNITS.get(self.take("unit") or "")
        if unit is None:
            raise NotCarried("unit-unknown")
        low, high = decimal(self.take("minimum")), decimal(self.take("maximum"))
        return Amount(low, high, unit, self.take("approx"), self.take("max_open"))

    def done(self) -> None:
        """:raises NotCarried: when something was not taken."""
        if self.left:
            raise NotCarried("more-than-the-format-says")


def decimal(value: float | None) -> Decimal | None:
    """The number as it was written. :raises NotCarried: with more decimals than the format has."""
    if value is None:
        return None
    number = Decimal(str(value))
    if number != round(number, 2):
        raise NotCarried("too-many-decimals")
    return number


def plain(number: Decimal) -> int | float:
    """The number for JSON."""
    return int(number) if number == int(number) else float(number)
