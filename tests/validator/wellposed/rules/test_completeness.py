"""What is left unsaid: each rule alone, and at its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import BASE, allowed, expected, found, must
from tests.validator.wellposed.rules.charts import Case, chart, pointers, table

from wellposed.rules import completeness, completeness_plan
from wellposed.rules.work_orders import work_orders

RULES = (*completeness.RULES, *completeness_plan.RULES)
ALIGN = must("g1", align=["42", "41", "31", "32"])
REDUCTION = allowed("a1", "enamel-reduction", contacts=["42-41", "41-31", "31-32"], per_contact=0.4, unit="mm")
MATERIAL = {"id": "b1", "part": "material", "words": "the usual sheet"}


def prescriber(jurisdiction, licence="L-20417"):
    stated = {"id": "clinic-17/dr-2", "licence": licence, "jurisdiction": jurisdiction}
    return {"prescriber": {name: value for name, value in stated.items() if value is not None}}


def full(jurisdiction, **members):
    return {**prescriber(jurisdiction), "goals": [ALIGN], "appliance": [MATERIAL], **members}


def patient(**said):
    return {"patient": {"reference": "P-7F3A", **said}}


AT = ("/prescriber/jurisdiction",)
# Montana 37-4-501 and Florida 466.021 ask for licence number and materials; the European regulation for neither.
ORDERS = (
    *(Case("work-order-incomplete", f"complete in {place}", full(place)) for place in sorted(work_orders())),
    Case("work-order-incomplete", "Montana, no licence", full("US-MT", **prescriber("US-MT", None)), AT),
    Case("work-order-incomplete", "Montana, no material", full("US-MT", appliance=None), AT),
    Case(
        "work-order-incomplete",
        "another part is no material",
        full("US-FL", appliance=[{**MATERIAL, "part": "trimming"}]),
        AT,
    ),
    Case("work-order-incomplete", "West Virginia, no licence", full("US-WV", **prescriber("US-WV", None))),
    Case("work-order-incomplete", "Europe, neither", {**prescriber("EU", None), "goals": [ALIGN]}),
    Case("work-order-incomplete", "Europe, no design characteristics", prescriber("DE"), AT),
    Case("work-order-incomplete", "an empty list carries nothing", {**prescriber("DE"), "goals": []}, AT),
    Case("work-order-incomplete", "no example", prescriber("US-CA", None)),
    Case("work-order-incomplete", "not stated", {}),
    Case("work-order-not-known", "an example of its own", prescriber("US-OK")),
    Case("work-order-not-known", "a province", prescriber("CA-ON")),
    Case("work-order-not-known", "no example", prescriber("US-CA"), AT),
    Case("work-order-not-known", "not stated", prescriber(None), ("/prescriber",)),
)
GROWTH = expected("e1", "overjet", -1, ground="growth")
# Growth is asked about below 18 years (common practice).
PEOPLE = (
    Case("age-not-stated", "stated", patient(age_years=0.5)),
    Case("age-not-stated", "not stated", patient(), ("/patient",)),
    Case("growth-unknown", "just below 18", patient(age_years=17.99), ("/patient",)),
    Case("growth-unknown", "18", patient(age_years=18)),
    Case("growth-unknown", "above", patient(age_years=18.01)),
    Case("growth-unknown", "asked, and not known", patient(age_years=13, growth="unknown"), ("/patient",)),
    Case("growth-unknown", "growing", patient(age_years=13, growth="growing")),
    Case("growth-unknown", "age not stated", patient()),
    Case("growth-unknown", "primary teeth", patient(dentition="mixed"), ("/patient",)),
    Case("growth-unknown", "growth counted on", {**patient(age_years=20), "expect": [GROWTH]}, ("/patient",)),
    Case(
        "growth-unknown",
        "another change counted on",
        {**patient(age_years=20), "expect": [{**GROWTH, "ground": "eruption"}]},
    ),
    Case(
        "growth-counted-on-after-growth", "complete", {**patient(growth="complete"), "expect": [GROWTH]}, ("/expect/0",)
    ),
    Case("growth-counted-on-after-growth", "growing", {**patient(growth="growing"), "expect": [GROWTH]}),
    Case("growth-counted-on-after-growth", "not stated", {**patient(), "expect": [GROWTH]}),
    Case(
        "growth-counted-on-after-growth",
        "another ground",
        {**patient(growth="complete"), "expect": [{**GROWTH, "ground": "eruption"}]},
    ),
)
RECORDS = (
    Case("records-missing", "not stated", {}, ("",)),
    Case("records-missing", "a scan of both", {"records": [{"kind": "intraoral-scan"}]}),
    Case("records-missing", "no scan among them", {"records": [{"kind": "face-photograph"}]}, ("/records",)),
    Case("records-missing", "one arch of two", {"records": [{"kind": "impression", "arch": "upper"}]}, ("/records",)),
    Case(
        "records-missing",
        "the one arch that is treated",
        {"records": [{"kind": "impression", "arch": "upper"}], "treat": {"arches": "upper"}},
    ),
    Case(
        "records-missing",
        "each arch by its own",
        {"records": [{"kind": "plaster-model", "arch": "upper"}, {"kind": "model-scan", "arch": "lower"}]},
    ),
)


def crowded(amount, *allow, **members):
    means = [allowed("a2", "incisor-advance", arch="lower", up_to=4, unit="mm"), *allow]
    return {"findings": [found("f1", "lower-crowding", amount)], "goals": [ALIGN], "allow": means, **members}


# Moderate crowding begins at 4 mm in the index used.
MEANS = (
    Case("allowance-neither-given-nor-excluded", "below moderate", crowded(3.99)),
    Case("allowance-neither-given-nor-excluded", "at moderate", crowded(4), ("/goals/0",)),
    Case("allowance-neither-given-nor-excluded", "above", crowded(4.01), ("/goals/0",)),
    Case("allowance-neither-given-nor-excluded", "allowed", crowded(4, REDUCTION)),
    Case(
        "allowance-neither-given-nor-excluded",
        "excluded",
        crowded(4, exclude=[{"id": "x1", "means": "enamel-reduction"}]),
    ),
    Case(
        "allowance-neither-given-nor-excluded",
        "excluded in the other arch",
        crowded(4, exclude=[{"id": "x1", "means": "enamel-reduction", "arch": "upper"}]),
        ("/goals/0",),
    ),
    Case(
        "allowance-neither-given-nor-excluded",
        "allowed in the other arch",
        crowded(4, allowed("a1", "enamel-reduction", contacts=["12-11"], per_contact=0.3, unit="mm")),
        ("/goals/0",),
    ),
    Case("allowance-neither-given-nor-excluded", "the verdict asks already", crowded(4, allow=[])),
    Case("allowance-neither-given-nor-excluded", "crowding not measured", crowded(4, findings=None)),
)
INTRUSION = must("m1", teeth=["11", "21"], motion="intrusion", at_least=1, unit="mm")
MEASUREMENTS = (
    Case(
        "measurement-needed-but-missing",
        "levelled, the curve not measured",
        {"goals": [must("g1", level="lower")]},
        ("/goals/0",),
    ),
    Case(
        "measurement-needed-but-missing",
        "levelled, the curve measured as flat",
        {"goals": [must("g1", level="lower")], "findings": [found("f1", "curve-of-spee", 0)]},
    ),
    Case("measurement-needed-but-missing", "the upper arch has none", {"goals": [must("g1", level="upper")]}),
    Case("measurement-needed-but-missing", "incisors intruded", {"movements": [INTRUSION]}, ("/movements/0",)),
    Case(
        "measurement-needed-but-missing",
        "overbite in percent will do",
        {"movements": [INTRUSION], "findings": [found("f1", "overbite", 50, "percent")]},
    ),
    Case("measurement-needed-but-missing", "molars intruded", {"movements": [{**INTRUSION, "teeth": ["16", "26"]}]}),
    Case(
        "measurement-needed-but-missing",
        "a goal asks for it already",
        {"movements": [INTRUSION], "goals": [must("g1", measure="overbite", at_most=3, unit="mm")]},
    ),
    Case(
        "measurement-needed-but-missing",
        "two for one measure",
        {"movements": [INTRUSION], "allow": [allowed("a1", "intrusion", teeth=["31"], up_to=1, unit="mm")]},
        ("/movements/0",),
    ),
    Case(
        "measurement-needed-but-missing",
        "widened, a width measured",
        {
            "allow": [allowed("a1", "widening", arch="upper", up_to=2, unit="mm")],
            "findings": [found("f1", "upper-inter-canine-width", 33)],
        },
    ),
    Case(
        "measurement-needed-but-missing",
        "widened, the other arch measured",
        {
            "allow": [allowed("a1", "widening", arch="upper", up_to=2, unit="mm")],
            "findings": [found("f1", "lower-inter-canine-width", 25)],
        },
        ("/allow/0",),
    ),
    Case(
        "measurement-needed-but-missing",
        "elastics, one side of two",
        {
            "allow": [allowed("a1", "class-ii-elastics", sides=["right", "left"])],
            "findings": [found("f1", "canine-relation-right", 3)],
        },
        ("/allow/0",),
    ),
)
CONSENT = {"process": [{"id": "q1", "step": "consent-given"}]}
AFTER = (
    Case("consent-not-recorded", "enamel is reduced", {"allow": [REDUCTION]}, ("/allow/0",)),
    Case("consent-not-recorded", "and agreed to", {"allow": [REDUCTION], **CONSENT}),
    Case(
        "consent-not-recorded",
        "nothing that lasts",
        {"allow": [allowed("a1", "widening", arch="upper", up_to=2, unit="mm")]},
    ),
    Case("consent-not-recorded", "surgery", {"process": [{"id": "q1", "step": "surgery"}]}, ("/process/0",)),
    Case("retention-not-mentioned", "not stated", {"goals": [ALIGN]}, ("",)),
    Case("retention-not-mentioned", "stated as none at all", {"goals": [ALIGN], "retention": []}),
    Case(
        "retention-not-mentioned",
        "of the other arch",
        {"goals": [ALIGN], "retention": [{"id": "r1", "arch": "upper", "retainer": "bonded"}]},
        ("/retention",),
    ),
    Case(
        "retention-not-mentioned",
        "none for the arch",
        {"goals": [ALIGN], "retention": [{"id": "r1", "arch": "lower", "retainer": "none"}]},
    ),
    Case("retention-not-mentioned", "nothing moves", {}),
    Case(
        "retention-not-mentioned",
        "the upper arch is widened too",
        {
            "goals": [ALIGN],
            "allow": [allowed("a1", "widening", arch="upper", up_to=2, unit="mm")],
            "retention": [{"id": "r1", "arch": "lower", "retainer": "none"}],
        },
        ("/retention",),
    ),
)
CASES = (*ORDERS, *PEOPLE, *RECORDS, *MEANS, *MEASUREMENTS, *AFTER)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


def test_what_is_missing_is_told_in_one_finding_without_the_jurisdiction():
    bare = chart(prescriber={**BASE["prescriber"], "jurisdiction": "US-MT"})
    (finding,) = completeness.work_order_incomplete.findings(bare)
    assert finding.facts["contents"] == [
        "description of the work",
        "type and quality of the materials",
        "licence number of the dentist",
    ]
    assert "MT" not in repr(finding)
    assert "Montana" not in repr(finding)
