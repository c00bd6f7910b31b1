"""Questions about the signs of a setup, in a sentence each."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from wellposed.render.amounts import value
from wellposed.vocabulary.measures import MEASURE_KINDS

_VARIABLES: Final = {
    "along": "travel along the arch",
    "out": "travel across the arch",
    "vertical": "travel up or down",
    "torque": "torque",
    "tip": "tip",
    "rotation": "rotation",
}


def _where(name: str) -> str:
    return "" if name == "mouth" else f" in the {name}" + ("" if " " in name or name in ("right", "left") else " arch")


def _side(name: str) -> str:
    return " on the patient's " + name if name in ("right", "left") else _where(name)


def _order(facts: Mapping[str, Any]) -> str:
    teeth = ", ".join(facts["teeth"])
    return (
        f"Of {facts['of']} teeth whose {_VARIABLES[facts['name']]}{_side(facts['where'])} the prescription speaks of, "
        f"{len(facts['teeth'])} go the other way: {teeth}. Do the laboratory's numbers count in the opposite sense?"
    )


def _prediction(facts: Mapping[str, Any]) -> str:
    name = str(facts["measure"])
    said = value(name, facts["value"], facts["unit"])
    return (
        f"The setup says that {MEASURE_KINDS[name].words} ends at {said}; its movements take it the other way. They "
        f"would agree if {_VARIABLES[facts['name']]}{_side(facts['where'])} counted in the opposite sense. "
        "Which of the two is written the other way round?"
    )


def _mirrored(facts: Mapping[str, Any]) -> str:
    return (
        f"In the {facts['where']} arch {_VARIABLES[facts['name']]} is opposite left and right in {facts['value']} of "
        f"{facts['of']} pairs of teeth. Does it count to one side, or clockwise, rather than mesially and distally?"
    )


SENTENCES: Final[Mapping[str, Callable[[Mapping[str, Any]], str]]] = {
    "sign-against-the-order": _order,
    "sign-against-the-prediction": _prediction,
    "sign-mirrored": _mirrored,
}
