"""A parsed sentence as something to take members from. What is told twice in it, in number and in words, must agree."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any, Final

from lark import Token, Tree

from wellposed.render.readback.measured import changed, valued
from wellposed.render.readback.spelling import BRITISH, spelt
from wellposed.render.readback.words import amount
from wellposed.vocabulary.teeth import TEETH, in_words
from wellposed_converters.text.readback.terms import motion_of, terms

UNITS: Final = {" mm": "mm", "°": "deg", " %": "percent"}

Members = dict[str, Any]


class NotSaidAlike(ValueError):  # noqa: N818  # not a fault of the program: the sentence disagrees with itself
    """A sentence says one thing in two ways that differ: the name of the question, and the words it is about."""

    def __init__(self, asks: str, words: str) -> None:
        super().__init__(asks)
        self.asks, self.words = asks, words


class Form:
    """A sentence, or a part of one."""

    def __init__(self, tree: Tree[Token]) -> None:
        self.tree = tree

    @property
    def name(self) -> str:
        """The rule of the grammar it follows."""
        return str(self.tree.data)

    def words(self, terminal: str) -> list[str]:
        """What stands there of a terminal."""
        return [str(one) for one in self.tree.children if isinstance(one, Token) and one.type == terminal]

    def terms(self, terminal: str) -> list[Any]:
        """The terms that stand there of a terminal, in the names of the format."""
        return [terms()[terminal][one] for one in self.words(terminal)]

    def term(self, terminal: str) -> Any:
        """The one of them, or None."""
        return next(iter(self.terms(terminal)), None)

    def word(self, terminal: str) -> str:
        """What stands there of a terminal that is always there."""
        return self.words(terminal)[0]

    def parts(self, rule: str) -> Iterator[Form]:
        """The parts that follow a rule."""
        return (Form(one) for one in self.tree.children if isinstance(one, Tree) and one.data == rule)

    def part(self, rule: str) -> Form | None:
        """The one of them, or None."""
        return next(self.parts(rule), None)

    def inside(self, rule: str) -> Form:
        """The one that is always there."""
        return next(self.parts(rule))

    # what stands in many sentences

    def teeth(self) -> list[str]:
        """The numbers of the teeth that stand right here."""
        return [_tooth(one) for one in self.words("TOOTH")]

    def contacts(self) -> list[str]:
        """The contacts that stand right here."""
        return [_contact(one) for one in self.words("CONTACT")]

    def listed(self, member: str = "teeth") -> Members:
        """Teeth or contacts as a member, if they are told."""
        part = self.part("contacts" if member == "contacts" else "teeth")
        return {} if part is None else {member: part.contacts() if member == "contacts" else part.teeth()}

    def ids(self) -> list[str]:
        """The ids that stand right here."""
        return [one[1:-1] for one in self.words("ID")]

    def rest(self) -> Members:
        """What every part may add: words of the prescriber, and what it answers."""
        words, because = self.part("words"), self.part("because")
        told = {} if words is None else {"words": quotation(words.word("WORDS"))}
        return told if because is None else told | {"because": because.ids()}

    def strength(self) -> Members:
        """The strength it begins with."""
        return {"strength": "must" if self.inside("force").words("MUST") else "prefer"}

    def arch(self) -> Members:
        """The arch, if one is told."""
        told = self.words("ARCH") or self.terms("IN_ARCH")
        return {"arch": told[0]} if told else {}

    def amounts(self, **members: str) -> Members:
        """Amounts by the names of their rules, all in one unit."""
        found = {member: self.inside(rule) for member, rule in members.items() if self.part(rule)}
        return _of_one_unit({member: quantity(form.word("AMOUNT")) for member, form in found.items()})

    def bounds(self, measure: str | None = None, change: bool = False) -> Members:
        """The least and the most; ``measure`` says what the sign of a value means, ``change`` that it is a change."""
        told: dict[str, tuple[float, str]] = {}
        for rule, members in _BOUNDS.items():
            part = self.part(rule)
            if part is not None:
                told |= dict.fromkeys(members, part.inside("value").value(measure, change))
        return _of_one_unit(told)

    def value(self, measure: str | None, change: bool = False) -> tuple[float, str]:
        """A value and its unit, what is told of its sign being what the sign means."""
        number, unit = quantity(self.word("AMOUNT"))
        said = "".join((self.word("AMOUNT"), *self.words("SENSE")))
        meant = (changed if change else valued)(measure, number, unit) if measure else amount(number, unit)
        if said != spelt(meant, BRITISH):
            raise NotSaidAlike("sense", said)
        return number, unit

    def motion(self) -> str:
        """The motion whose verb stands around the teeth."""
        found = motion_of(self.word("BEFORE"), "".join(self.words("AFTER")))
        if found is None:
            raise NotSaidAlike("motion", self.word("BEFORE").strip())
        return found


Maker = Callable[[Form], Members]
"""What makes the members of a sentence."""

_BOUNDS: Final = {"at_least": ("at_least",), "at_most": ("at_most",), "exactly": ("at_least", "at_most")}


def quotation(told: str) -> str:
    """The words between quotation marks. Signs that could not be shown are gone, and cannot be guessed."""
    words = told.partition("“")[2].removesuffix("”")
    if chr(0xFFFD) in words:
        raise NotSaidAlike("lost-signs", words)
    return words


def quantity(told: str) -> tuple[float, str]:
    """An amount and its unit; whole numbers stay whole."""
    ending = next(one for one in UNITS if told.endswith(one))
    number = float(told.removesuffix(ending))
    return int(number) if number.is_integer() else number, UNITS[ending]


def _of_one_unit(told: dict[str, tuple[float, str]]) -> Members:
    units = {unit for _, unit in told.values()}
    if len(units) > 1:
        raise NotSaidAlike("units", ", ".join(sorted(units)))
    numbers: Members = {member: number for member, (number, _) in told.items()}
    return numbers | dict.fromkeys(["unit"], *units) if units else {}


def _tooth(told: str) -> str:
    number, _, words = told.partition(" ")
    return _named(number, words[1:-1], told)


def _contact(told: str) -> str:
    """``33-32`` for ``33/32 (lower left canine and lower left lateral incisor)``."""
    numbers, _, words = told.partition(" ")
    first, _, second = numbers.partition("/")
    one, _, other = words[1:-1].partition(" and ")
    return f"{_named(first, one, told)}-{_named(second, other, told)}"


def _named(number: str, words: str, told: str) -> str:
    if number not in TEETH or in_words(number) != words:
        raise NotSaidAlike("tooth-words", told)
    return number


def measured(form: Form) -> Members:
    """A measure, with the pair of teeth it is taken at."""
    inner = form.inside("measure")
    pair = inner.contacts()
    return {"measure": inner.term("MEASURE")} | ({"pair": pair[0].split("-")} if pair else {})


def dated(form: Form) -> Members:
    """A date, if one is told."""
    date = form.part("date")
    return {} if date is None else {"date": date.word("DATE")}
