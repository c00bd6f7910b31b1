"""Enamel reduction, where: each rule alone, with the contact beside the one it means."""

import pytest
from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, allowed, found, must, present
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules import enamel_places, enamel_restored

RULES = (*enamel_places.RULES, *enamel_restored.RULES)
GAP, IMPLANT, PRIMARY = "reduction-at-a-gap", "reduction-at-an-implant", "reduction-at-a-primary-tooth"
SMALL, SURFACE, RESTORED = "reduction-at-a-small-crown", "reduction-on-one-surface", "reduction-at-a-restoration"
FIRST = ("/allow/0",)


def reduced(*contacts, each=0.3, because=None, **members):
    """Enamel reduction at named contacts, and other members."""
    said = {"because": because} if because else {}
    return {
        "allow": [allowed("a1", "enamel-reduction", contacts=list(contacts), per_contact=each, unit="mm", **said)],
        **members,
    }


def whole_arch(**members):
    """Enamel reduction in the upper arch, contacts left to the laboratory."""
    return {"allow": [allowed("a1", "enamel-reduction", arch="upper", in_all=1, unit="mm")], **members}


def problem(term):
    return [{"id": "p1", "problem": term}]


SPACE = [found("f1", "upper-spacing", 1, contacts=["21-11"])]
NONE = [found("f1", "upper-spacing", 0, contacts=["11-21"])]
OUT = allowed("a2", "extraction", teeth=["14"])
CROWDED, THREE = [found("f1", "lower-crowding", 2)], [tooth for tooth in LOWER if tooth != "41"]
WITHOUT_LATERAL = [tooth for tooth in UPPER if tooth != "12"]
MIXED = [tooth if tooth != "43" else "83" for tooth in LOWER]

CASES = (
    Case(GAP, "the contact of a space", reduced("11-21", findings=SPACE), FIRST),
    Case(GAP, "the contact beside it", reduced("12-11", findings=SPACE)),
    Case(GAP, "a space of 0", reduced("11-21", findings=NONE)),
    Case(GAP, "a space not said where", reduced("11-21", findings=[found("f1", "upper-spacing", 1)])),
    Case(
        GAP,
        "two gaps, one clause",
        reduced("11-21", "13-11", findings=SPACE, teeth=present(upper=WITHOUT_LATERAL)),
        FIRST,
    ),
    Case(
        GAP,
        "tooth size as the reason",
        reduced("11-21", because=["p1"], findings=SPACE, problems=problem("tooth-size-discrepancy")),
    ),
    Case(
        GAP,
        "crowding as the reason",
        reduced("11-21", because=["p1"], findings=SPACE, problems=problem("crowding")),
        FIRST,
    ),
    Case(GAP, "the place of a missing lateral", reduced("13-11", teeth=present(upper=WITHOUT_LATERAL)), FIRST),
    Case(
        GAP,
        "a canine shaped in its place",
        reduced("13-11", because=["p1"], teeth=present(upper=WITHOUT_LATERAL), problems=problem("missing-teeth")),
    ),
    Case(GAP, "a crowded front that lacks an incisor", reduced("42-31", teeth=present(lower=THREE), findings=CROWDED)),
    Case(GAP, "the same front, not measured", reduced("42-31", teeth=present(lower=THREE)), FIRST),
    Case(
        GAP,
        "the same front, a space stated in it too",
        reduced("42-31", teeth=present(lower=THREE), findings=[*CROWDED, found("f2", "lower-spacing", 1)]),
        FIRST,
    ),
    Case(
        GAP,
        "a molar missing behind a crowded front",
        reduced("35-37", teeth=present(lower=[tooth for tooth in LOWER if tooth != "36"]), findings=CROWDED),
        FIRST,
    ),
    Case(GAP, "across the midline", reduced("11-21", "41-31")),
    Case(GAP, "an arch, of which the laboratory chooses", whole_arch(findings=SPACE)),
    Case(GAP, "an extraction site", {"allow": [*reduced("13-15")["allow"], OUT]}, FIRST),
    Case(GAP, "beside an extraction site", {"allow": [*reduced("12-13")["allow"], OUT]}),
    Case(GAP, "a space to be left", reduced("11-21", goals=[must("g1", leave="21-11", amount=1, unit="mm")]), FIRST),
    Case(GAP, "a space of 0 to be left", reduced("11-21", goals=[must("g1", leave="21-11", amount=0, unit="mm")])),
    Case(IMPLANT, "at an implant", reduced("13-12", teeth=present(("12", "implant"))), FIRST),
    Case(IMPLANT, "at a pontic", reduced("12-11", teeth=present(("12", "pontic"))), FIRST),
    Case(IMPLANT, "beside it", reduced("11-21", teeth=present(("12", "implant")))),
    Case(IMPLANT, "an ankylosed tooth has enamel", reduced("13-12", teeth=present(("12", "ankylosed")))),
    Case(PRIMARY, "at a primary canine", reduced("83-42", teeth=present(lower=MIXED)), FIRST),
    Case(PRIMARY, "beside it", reduced("42-41", teeth=present(lower=MIXED))),
    Case(PRIMARY, "partly erupted", reduced("13-12", teeth=present(("13", "partly-erupted"))), FIRST),
    Case(SMALL, "at a small lateral", reduced("13-12", "12-11", teeth=present(("12", "small-crown"))), FIRST),
    Case(SMALL, "beside it", reduced("11-21", teeth=present(("12", "small-crown")))),
    Case(SMALL, "its mirror is small", reduced("13-12", teeth=present(("22", "small-crown")))),
    # Tuverson 1980 and Fillion 1992: 0.3 a surface in front; half of Sheridan's 0.8 behind.
    Case(SURFACE, "below, in front", reduced("12-11", each=0.29, teeth=present(("11", "veneer")))),
    Case(SURFACE, "at, in front", reduced("12-11", each=0.3, teeth=present(("11", "veneer")))),
    Case(SURFACE, "above, in front", reduced("12-11", each=0.31, teeth=present(("11", "veneer"))), FIRST),
    Case(SURFACE, "at, behind", reduced("46-45", each=0.4, teeth=present(("46", "crown")))),
    Case(SURFACE, "above, behind", reduced("46-45", each=0.41, teeth=present(("46", "crown"))), FIRST),
    Case(SURFACE, "both are restored", reduced("12-11", each=0.5, teeth=present(("12", "veneer"), ("11", "veneer")))),
    Case(SURFACE, "neither is restored", reduced("12-11", each=0.5)),
    Case(RESTORED, "at a veneer", reduced("12-11", teeth=present(("11", "veneer"))), FIRST),
    Case(RESTORED, "both are restored", reduced("12-11", teeth=present(("12", "veneer"), ("11", "crown"))), FIRST),
    Case(RESTORED, "beside it", reduced("13-12", teeth=present(("11", "veneer")))),
    Case(RESTORED, "more than one surface bears", reduced("12-11", each=0.5, teeth=present(("11", "veneer")))),
    Case(RESTORED, "of an implant the other rule speaks", reduced("12-11", teeth=present(("11", "implant", "crown")))),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers
