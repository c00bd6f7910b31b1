"""How often each clinical rule speaks of ordinary, sound prescriptions: ``make rule-rates``.

``python -m tests.validator.wellposed.rules.rates [NUMBER]`` prints, heaviest first, the rules that speak at all.
"""

import json
import sys
from collections import Counter
from functools import cache
from statistics import median

from tests.validator.wellposed.rules.sound import sound

from wellposed.check import check
from wellposed.findings import Severity
from wellposed.rules import USUAL

NUMBER = 500
REASONS = {
    "fourth-angle": "three cephalometric angles were measured: the fourth follows, and is shown",
    "measurement-needed-but-missing": "widening is allowed, and the width it starts from is not stated",
    "attachment-for-small-movement": "the turn drawn lies below the amount texts ask an attachment for",
    "advance-beyond-stability": "a lower lateral far behind the line may come forward by more than is held stable",
}
"""Why a rule speaks of an order that is sound."""


@cache
def reports(number=NUMBER):
    """The reports on so many sound prescriptions."""
    return tuple(check(json.dumps(sound(seed)).encode()) for seed in range(number))


def rates(number=NUMBER):
    """By rule, the share of prescriptions it speaks of."""
    told = Counter(rule for report in reports(number) for rule in {finding.rule for finding in report.findings})
    return {rule: told[rule] / number for rule in USUAL}


def cautions(number=NUMBER):
    """By prescription, how many findings weigh more than a note."""
    return [sum(finding.severity != Severity.NOTE for finding in report.findings) for report in reports(number)]


def table(number=NUMBER):
    """The rates in lines."""
    spoken = sorted(((rate, rule) for rule, rate in rates(number).items() if rate), reverse=True)
    yield from (f"{rate:6.1%}  {USUAL[rule]:<7}  {rule}: {REASONS.get(rule, '?')}" for rate, rule in spoken)
    yield f"{len(USUAL) - len(spoken)} of {len(USUAL)} rules do not speak"
    yield f"median of findings that weigh more than a note: {median(cautions(number)):g}"


if __name__ == "__main__":
    sys.stdout.writelines(f"{line}\n" for line in table(int(sys.argv[1]) if sys.argv[1:] else NUMBER))
