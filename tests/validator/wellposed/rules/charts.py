"""Charts to try clinical rules on, and the form of a case: one rule, alone, on its own document."""

from typing import NamedTuple

from tests.validator.wellposed.consistency.ordinary import prescription

from wellposed.rules import RULES, Chart

IDS = {rule.id: rule for rule in RULES}


class Case(NamedTuple):
    """A rule, what the document says in a sentence, the members it has, and the pointers of what is found."""

    rule: str
    sentence: str
    members: dict
    pointers: tuple = ()


def chart(numbers=None, **members):
    """The chart of the ordinary base with these members; ``earlier`` lists members of the revisions before it."""
    before = tuple(prescription(**one) for one in members.pop("earlier", ()))
    asked = Chart(prescription(**members), earlier=before)
    return asked if numbers is None else Chart(asked.rx, numbers, before)


def found(case, rules=RULES):
    """What the rule of a case finds in it."""
    return [finding for rule in rules if rule.id == case.rule for finding in rule.findings(chart(**case.members))]


def pointers(case, rules=RULES):
    """Where."""
    return tuple(finding.pointer for finding in found(case, rules))


def table(*cases):
    """Cases for parametrize, named after their rule and sentence."""
    return {"argvalues": cases, "ids": [f"{case.rule}: {case.sentence}" for case in cases]}
