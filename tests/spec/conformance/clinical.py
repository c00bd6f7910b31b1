"""The clinical area of the kit, from the pages of the rules: ``python -m tests.spec.conformance.clinical``.

One case a rule: the members its page says fail, put over the base document. Rules that look at earlier revisions have
no case: a case is one document.
"""

import json
import shutil

from tests.spec.conformance.kit import KIT, written
from tests.spec.conformance.runner import finding_of, outcome
from tests.validator.wellposed.consistency.ordinary import document
from tests.validator.wellposed.rules.charts import chart

from wellposed.check import check
from wellposed.rules import RULES

AREA = KIT / "cases" / "clinical"
ALONE = tuple(rule for rule in RULES if "earlier" not in rule.fails)


def about(number, rule):
    """What a case says of itself; the digest is written by the kit."""
    return {
        "id": f"clinical/{number:03}-{rule.id}",
        "title": rule.title.rstrip("."),
        "level": "should",
        "spec": f"spec/rules.md#{rule.id}",
        "since": "1.0",
        "input": "input.json",
        "media_type": "application/json",
        "sha256": "",
    }


def expected(rule):
    """What the rule by itself finds in the members of its page."""
    found = [finding_of(one) for one in rule.findings(chart(**rule.fails))]
    whole = check(json.dumps(document(**rule.fails)).encode())
    told = [{name: one[name] for name in ("rule", "severity", "pointer")} for one in found]
    return {"outcome": outcome(whole), "match": "at-least", "findings": told}


def main():
    """Write the area anew."""
    shutil.rmtree(AREA, ignore_errors=True)
    for number, rule in enumerate(ALONE, 1):
        folder = AREA / f"{number:03}-{rule.id}"
        folder.mkdir(parents=True)
        (folder / "case.json").write_text(written(about(number, rule)), "utf-8")
        (folder / "expected.json").write_text(written(expected(rule)), "utf-8")
        (folder / "input.json").write_text(written(document(**rule.fails)), "utf-8")


if __name__ == "__main__":
    main()
