"""Whether widening answers anything and fits: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules.transverse_need import RULES

NEED, APART = "widening-without-need", "widths-moved-apart"
CROSS, BACK = "crossbite-without-width-change", "width-reversed-since-last"
HERE, THERE = ("/allow/0",), ("/problems/0",)


def wide(amount=2.0, arch="upper", name="a1", use="widening", **said):
    """An arch that may be widened."""
    return allowed(name, use, arch=arch, up_to=amount, unit="mm", **said)


def crowded(amount, *allowances, arch="upper", **more):
    """An arch with so much crowding, and these allowances."""
    measured = [found("f1", f"{arch}-crowding", amount), *more.pop("findings", ())]
    return {"findings": measured, "allow": list(allowances), **more}


def problem(term, name="p1", **said):
    """A problem by itself."""
    return {"problems": [{"id": name, "problem": term, **said}]}


def overlap(value, **more):
    """A transverse overlap on the right, beside what else is asked."""
    return {"findings": [found("f9", "transverse-overlap-right", value)], **more}


def crossbite(*allowances, teeth=("16", "46"), **more):
    """A crossbite of these teeth, with allowances."""
    named = {"teeth": list(teeth)} if teeth else {}
    return problem("crossbite-posterior", **named) | {"allow": list(allowances), **more}


def second(*allowances, before=(), **more):
    """A second revision with these allowances, after a first with those."""
    return {
        "revision": 2,
        "replaces": "ab" * 32,
        "allow": list(allowances),
        "earlier": [{"allow": list(before)}],
        **more,
    }


def to_width(today, **goal):
    """A goal on the width between the upper first molars."""
    measure = "upper-inter-first-molar-width"
    return {"findings": [found("f1", measure, today)], "goals": [must("g1", measure=measure, unit="mm", **goal)]}


NARROW = wide(use="narrowing")
RETRACTION = allowed("a2", "incisor-retraction", arch="upper", up_to=2, unit="mm")
ONE_SIDE = must("m1", teeth=["16", "17"], motion="buccal", at_least=1, unit="mm")
CASES = (
    # Crowding measured as none, and nothing else stated.
    Case(NEED, "no crowding", crowded(0, wide()), HERE),
    Case(NEED, "a tenth of a millimetre", crowded(0.1, wide())),
    Case(NEED, "crowding not measured", {"allow": [wide()]}),
    Case(NEED, "crowding of the other arch measured", crowded(0, wide(), arch="lower")),
    Case(NEED, "a crossbite stated", crowded(0, wide(), **problem("crossbite-posterior"))),
    Case(NEED, "a narrow arch stated", crowded(0, wide(), **problem("narrow-arch"))),
    Case(
        NEED, "an edge-to-edge bite measured", crowded(0, wide(), findings=[found("f2", "transverse-overlap-left", 0)])
    ),
    Case(
        NEED, "a good overlap measured", crowded(0, wide(), findings=[found("f2", "transverse-overlap-left", 2)]), HERE
    ),
    Case(NEED, "a reason given", crowded(0, wide(because=["p1"]), **problem("wear"))),
    Case(NEED, "a problem that is not its reason", crowded(0, wide(), **problem("wear")), HERE),
    Case(NEED, "teeth to be aligned", crowded(0, wide(), goals=[must("g1", align=["12", "11"])])),
    Case(
        NEED, "teeth of the other arch to be aligned", crowded(0, wide(), goals=[must("g1", align=["42", "41"])]), HERE
    ),
    Case(NEED, "the front drawn back", crowded(0, wide(), RETRACTION)),
    Case(NEED, "narrowed", crowded(0, NARROW)),
    Case(NEED, "one side only", crowded(0, movements=[ONE_SIDE])),
    # Common practice: 2 mm.
    Case(APART, "below the limit", {"allow": [wide(1.99)]}),
    Case(APART, "at the limit", {"allow": [wide(2)]}),
    Case(APART, "above it", {"allow": [wide(2.01)]}, HERE),
    Case(APART, "the lower arch too", {"allow": [wide(4), wide(2, "lower", "a2")]}),
    Case(
        APART, "the lower arch narrower by 0.5 mm", {"allow": [wide(1.51), wide(0.5, "lower", "a2", "narrowing")]}, HERE
    ),
    Case(APART, "a crossbite stated", {"allow": [wide(4)], **problem("crossbite-posterior")}),
    Case(APART, "a crossbite measured", overlap(-1, allow=[wide(4)])),
    Case(APART, "a good overlap measured", overlap(2, allow=[wide(4)]), HERE),
    Case(
        APART,
        "the overlap is a goal",
        overlap(1, allow=[wide(4)], goals=[must("g1", measure="transverse-overlap-right", at_most=3, unit="mm")]),
    ),
    Case(APART, "canines only", {"allow": [wide(4, teeth=["13", "23"])]}),
    Case(APART, "the lower arch only", {"allow": [wide(3, "lower")]}, HERE),
    Case(APART, "the lower arch only, a scissors bite", {"allow": [wide(3, "lower")], **problem("scissors-bite")}),
    Case(
        APART, "the lower arch only, a crossbite", {"allow": [wide(3, "lower")], **problem("crossbite-posterior")}, HERE
    ),
    Case(APART, "a goal 2 mm wider", to_width(48, at_least=50)),
    Case(APART, "a goal 2.5 mm wider", to_width(48, at_least=50.5), ("/goals/0",)),
    # Geometry: upper teeth out or lower teeth in, of those in crossbite.
    Case(CROSS, "nothing moves", crossbite(), THERE),
    Case(CROSS, "the upper arch wider", crossbite(wide())),
    Case(CROSS, "the lower arch narrower", crossbite(wide(arch="lower", use="narrowing"))),
    Case(CROSS, "the upper arch narrower", crossbite(NARROW), THERE),
    Case(CROSS, "the premolars wider", crossbite(wide(teeth=["14", "24"])), THERE),
    Case(
        CROSS,
        "the tooth itself moved",
        crossbite(movements=[must("m1", teeth=["16"], motion="buccal", at_least=2, unit="mm")]),
    ),
    Case(
        CROSS,
        "that of the other side moved",
        crossbite(movements=[must("m1", teeth=["26"], motion="buccal", at_least=2, unit="mm")]),
        THERE,
    ),
    Case(CROSS, "where is not stated, the premolars wider", crossbite(wide(teeth=["14", "24"]), teeth=())),
    Case(CROSS, "cross elastics", crossbite(allowed("a1", "elastics", pattern="cross", teeth=["16", "46"]))),
    Case(
        CROSS, "vertical elastics", crossbite(allowed("a1", "elastics", pattern="vertical", teeth=["16", "46"])), THERE
    ),
    Case(CROSS, "an expansion screw", crossbite(allowed("a1", "auxiliary", auxiliary="expansion-screw"))),
    Case(CROSS, "surgery", crossbite(process=[{"id": "q1", "step": "surgery"}])),
    Case(CROSS, "the teeth held", crossbite(keep=[must("k1", hold=["16", "46"])])),
    Case(
        CROSS,
        "the overlap kept",
        crossbite(keep=[must("k1", measure="transverse-overlap-right", within=0.5, unit="mm")]),
    ),
    Case(CROSS, "a front crossbite", problem("crossbite-anterior")),
    # A round trip: wider, then narrower.
    Case(BACK, "narrowed after it was widened", second(NARROW, before=[wide()]), HERE),
    Case(BACK, "widened after it was narrowed", second(wide(), before=[NARROW]), HERE),
    Case(BACK, "widened further", second(wide(3), before=[wide()])),
    Case(BACK, "the other arch", second(wide(arch="lower", use="narrowing"), before=[wide()])),
    Case(BACK, "other teeth", second(wide(use="narrowing", teeth=["16", "26"]), before=[wide(teeth=["14", "24"])])),
    Case(BACK, "some of the teeth", second(wide(use="narrowing", teeth=["16", "26"]), before=[wide()]), HERE),
    Case(
        BACK, "two revisions ago", second(NARROW, before=[]) | {"earlier": [{"allow": [wide()]}, {"allow": []}]}, HERE
    ),
    Case(BACK, "no earlier revision at hand", second(NARROW) | {"earlier": []}),
    Case(
        BACK,
        "by goals",
        {"revision": 2, "replaces": "ab" * 32, "earlier": [to_width(48, at_least=50)], **to_width(50, at_most=49)},
        ("/goals/0",),
    ),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers
