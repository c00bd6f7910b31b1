"""What the setup predicts, beside what its own movements give."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.review.held import Facts, Held
from wellposed.review.result import MeasureLine
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import amount
from wellposed.vocabulary.units import DEG

_WITHIN = {True: "review.claim-deg", False: "review.claim-mm"}


@rule(
    "prediction-differs",
    Severity.ASK,
    title="What the setup predicts is not what its movements give.",
    says="{measure:measure}{where}: the setup predicts {claimed:{unit}}, and its movements give {given}.",
    do="Ask which is meant, the movements or the prediction.",
    change="A prediction within {within:{unit}} of what the movements give would change it.",
    figures=tuple(_WITHIN.values()),
)
def prediction_differs(held: Held) -> Iterator[Told]:
    """Each measure the setup predicts is the one that its movements give, from the measurement in the prescription.

    Two things are then told of one plan, and the aligners follow the movements. A sign turned round, or a start
    measured elsewhere, shows here first.

    Evidence: the sums of the specification; where the bite turns about its hinge, any amount between is let pass.

    Passes: {"predicted": [{"measure": "overbite", "value": 2.5, "unit": "mm"}], "computed": {"overbite": 2.6}}
    Fails: {"predicted": [{"measure": "overbite", "value": 2.5, "unit": "mm"}], "computed": {"overbite": 3.5}}
    """
    for line in held.measures:
        if line.agrees is False and line.claimed is not None and line.after is not None:
            key = _WITHIN[line.unit == DEG]
            facts: Facts = {"measure": line.measure, "where": f" at {line.where}" if line.where else ""}
            facts |= {"claimed": line.claimed, "unit": line.unit, "within": line.tolerance, "given": _given(line)}
            yield told(_pointer(held, line), **facts, figures=(key,))


def _given(line: MeasureLine) -> str:
    ends = [end for end in (line.after.low, line.after.high) if end is not None] if line.after else []
    return " to ".join(dict.fromkeys(amount(end, line.unit) for end in ends))


def _pointer(held: Held, line: MeasureLine) -> str:
    """Where the prediction stands: the first of its measure and pair."""
    pair = sorted(line.where.split("/")) if line.where else []
    for number, one in enumerate(held.setup.predicted or ()):
        if one.measure == line.measure and sorted(one.pair or ()) == pair:
            return f"/predicted/{number}"
    return "/predicted"


RULES = (prediction_differs,)
