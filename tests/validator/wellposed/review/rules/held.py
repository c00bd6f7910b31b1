"""Setups to try rules on, and the form of a case: one rule, alone, on its own setup and prescription."""

from typing import NamedTuple

from tests.validator.wellposed.consistency.ordinary import document

from wellposed.digests import digest
from wellposed.model import Prescription
from wellposed.model.setup import Setup
from wellposed.norms import load
from wellposed.review.held import Held
from wellposed.review.matter import Matter
from wellposed.review.result import MeasureLine, Span
from wellposed.review.rules import RULES
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.units import DEG

UNITS = {"along": "mm", "out": "mm", "vertical": "mm", "torque": "deg", "tip": "deg", "rotation": "deg"}
BASE = {
    "format": "wellposed/setup",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "SU-2031",
    "revision": 1,
    "issued": "2026-03-11T16:00:00+01:00",
    "answers": {"id": "HR-2031", "revision": 1, "sha256": "ab" * 32},
    "movements": [],
}


class Case(NamedTuple):
    """A rule, what the setup says in a sentence, its members, and the pointers of what is found."""

    rule: str
    sentence: str
    members: dict
    pointers: tuple = ()


def setup(**members):
    """The base with members put in; None takes one out."""
    whole = {name: value for name, value in {**BASE, **members}.items() if value is not None}
    return Setup.model_validate(whole)


def held(numbers=None, **members):
    """A setup beside the ordinary prescription; ``prescription`` holds members of that, ``computed`` its measures."""
    order = Prescription.model_validate(document(**members.pop("prescription", {})))
    computed = members.pop("computed", {})
    answers = {"id": order.id, "revision": order.revision, "sha256": digest(order)}
    made = setup(**{"answers": answers, **members})
    lines = tuple(line(made, measure, value) for measure, value in computed.items())
    return Held(Matter(order, made, numbers or load()), lines)


def line(made, measure, value):
    """A measure as a review computes it, beside what the setup predicts of it."""
    low, high = value if isinstance(value, list) else (value, value)
    claimed = next((one.value for one in made.predicted or () if one.measure == measure), None)
    unit = MEASURE_KINDS[measure].unit
    within = load().value("review.claim-deg" if unit == DEG else "review.claim-mm")
    agrees = None if claimed is None else low - within <= claimed <= high + within
    return MeasureLine(measure, "", unit, 0.0, Span(low, high), None, claimed, within, agrees)


def moved(**values):
    """Tables of movements: ``out={"11": 1}``; a number for several teeth: ``out=(1, "11", "21")``."""
    tables = {name: dict.fromkeys(v[1:], v[0]) if isinstance(v, tuple) else v for name, v in values.items()}
    return [{"variable": name, "unit": UNITS[name], "values": table} for name, table in tables.items()]


def stage(aligner, arch, **values):
    """Where teeth stand after an aligner."""
    return {"aligner": aligner, "arch": arch, "movements": moved(**values)}


def reduced(contact, amount, before=None):
    """A planned reduction."""
    more = {} if before is None else {"before_aligner": before}
    return {"contact": contact, "amount": amount, "unit": "mm", **more}


def found(case, rules=RULES):
    """What the rule of a case finds in it."""
    return [finding for rule in rules if rule.id == case.rule for finding in rule.findings(held(**case.members))]


def pointers(case, rules=RULES):
    """Where."""
    return tuple(finding.pointer for finding in found(case, rules))


def table(*cases):
    """Cases for parametrize, named after their rule and sentence."""
    return {"argvalues": cases, "ids": [f"{case.rule}: {case.sentence}" for case in cases]}
