"""What of a prescription stands where in a bundle, written out by hand."""

import json
from base64 import b64decode

import pytest
from tests.converters.wellposed_converters.fhir.samples import FULL, RECEIPT, bundle_of, made, resource, same

from wellposed.digests import digest
from wellposed.reading import limits
from wellposed.render.operation_outcome import SYSTEM
from wellposed.vocabulary.teeth import PRIMARY_TEETH
from wellposed_converters.fhir.bundle import MOST_BYTES, bundle, written
from wellposed_converters.fhir.form import FORM, read, write
from wellposed_converters.fhir.names import BASE, tooth

BUNDLE = bundle_of(FULL)
DIGEST = digest(made(FULL))
UCUM = "http://unitsofmeasure.org"
SUBJECT = {"identifier": {"system": f"{BASE}patient-reference", "value": "P-7F3A"}}


def url(kind, number=0):
    """The full url of a resource."""
    return [one["fullUrl"] for one in BUNDLE["entry"] if one["resource"]["resourceType"] == kind][number]


def extension(of, name, number=0):
    """The nested extensions of one extension, in their order."""
    return [one for one in of["extension"] if one["url"] == f"{BASE}extension:{name}"][number]["extension"]


def test_the_order_is_under_a_code_of_ours_and_names_the_document():
    order = resource(BUNDLE, "ServiceRequest")
    assert order["code"] == {"coding": [{"system": f"{BASE}request", "code": "clear-aligner-prescription"}]}
    assert order["identifier"] == [
        {"system": f"{BASE}document-id", "value": "HR-2031"},
        {"system": f"{BASE}sha256", "value": DIGEST},
    ]
    assert (order["status"], order["intent"], order["authoredOn"]) == ("active", "order", FULL["issued"])
    assert order["replaces"] == [{"identifier": {"system": f"{BASE}sha256", "value": "0" * 64}}]
    assert order["occurrencePeriod"] == {"end": "2026-04-01"}


def test_people_are_named_by_identifier_alone():
    order = resource(BUNDLE, "ServiceRequest")
    assert order["requester"] == {"identifier": {"system": f"{BASE}prescriber", "value": "clinic-17/dr-2"}}
    assert order["performer"] == [{"identifier": {"system": f"{BASE}laboratory", "value": "lab-4"}}]
    whose = [one["resource"].get("subject", one["resource"].get("patient")) for one in BUNDLE["entry"]]
    assert whose == [SUBJECT] * len(BUNDLE["entry"])
    assert {one["resource"]["resourceType"] for one in BUNDLE["entry"]} & {
        "Patient",
        "Practitioner",
        "Organization",
    } == set()


def test_a_measurement_is_an_observation_in_ucum():
    observation = resource(BUNDLE, "Observation")
    assert observation["code"] == {"coding": [{"system": f"{BASE}measure", "code": "overbite"}]}
    assert observation["valueQuantity"] == {"value": 3.5, "unit": "mm", "system": UCUM, "code": "mm"}
    assert (observation["method"], observation["effectiveDateTime"]) == ({"text": "gauge"}, "2026-03-01")
    assert extension(observation, "finding") == [
        {"url": "id", "valueString": "f1"},
        {"url": "error", "valueQuantity": {"value": 0.5, "unit": "mm", "system": UCUM, "code": "mm"}},
    ]


def test_a_measurement_of_several_teeth_has_an_observation_for_each():
    whole, one, other = (resource(BUNDLE, "Observation", number) for number in (2, 3, 4))
    assert whole["hasMember"] == [{"reference": url("Observation", number)} for number in (3, 4)]
    assert "valueQuantity" not in whole
    assert [(each["bodySite"]["coding"][0]["code"], each["valueQuantity"]["value"]) for each in (one, other)] == [
        ("31", 5.4),
        ("41", 5.35),
    ]


def test_a_problem_is_a_condition_with_its_evidence():
    crowding, turned = (resource(BUNDLE, "Condition", number) for number in (0, 1))
    assert crowding["code"]["coding"][0]["code"] == "crowding"
    assert crowding["evidence"] == [{"detail": [{"reference": url("Observation", 1)}]}]
    assert turned["evidence"] == [{"detail": [{"reference": url("Condition", 0)}]}]
    assert turned["code"]["text"] == "turned inwards"
    assert turned["bodySite"] == [tooth("31")]


def test_a_tooth_that_is_not_ordinary_is_a_body_structure():
    found = resource(BUNDLE, "BodyStructure")
    assert found["location"]["coding"] == [
        {"system": f"{BASE}tooth", "code": "26", "display": "upper left first molar"},
        {"system": "http://terminology.hl7.org/CodeSystem/ex-tooth", "code": "26"},
    ]
    assert [one["valueCode"] for one in found["extension"]] == ["crown", "root-filled"]
    assert found["description"] == "temporary crown"


def test_primary_teeth_have_no_code_of_fhir():
    """hl7.org/fhir/R4/codesystem-ex-tooth.html has the mouth, eight quadrants and 32 permanent teeth."""
    assert {len(tooth(number)["coding"]) for number in PRIMARY_TEETH} == {1}


def test_the_series_has_arches_and_counts_as_parameters():
    series = resource(BUNDLE, "DeviceRequest")
    told = {one["code"]["coding"][0]["code"]: one for one in series["parameter"]}
    assert told["wear-interval"]["valueQuantity"] == {"value": 14, "unit": "d", "system": UCUM, "code": "d"}
    assert told["most-aligners"]["valueQuantity"] == {"value": 20, "unit": "1", "system": UCUM, "code": "1"}
    assert told["arches"]["valueCodeableConcept"]["coding"][0]["code"] == "both"
    assert series["basedOn"] == [{"reference": url("ServiceRequest")}]
    (step,) = [one for one in extension(series, "staging") if one["url"] == "largest_steps"]
    assert step["extension"][1]["valueQuantity"] == {"value": 1.5, "unit": "deg", "system": UCUM, "code": "deg"}


def test_a_clause_is_an_extension_with_its_members_by_name():
    order = resource(BUNDLE, "ServiceRequest")
    assert extension(order, "goal", 1) == [
        {"url": "id", "valueString": "g2"},
        {"url": "strength", "valueCode": "prefer"},
        {"url": "measure", "valueCode": "overbite"},
        {"url": "at_least", "valueQuantity": {"value": 2, "unit": "mm", "system": UCUM, "code": "mm"}},
        {"url": "at_most", "valueQuantity": {"value": 3.25, "unit": "mm", "system": UCUM, "code": "mm"}},
    ]
    assert extension(order, "attachment", 0) == [
        {"url": "id", "valueString": "t1"},
        {"url": "must_not", "valueCode": "11"},
        {"url": "must_not", "valueCode": "21"},
    ]


def test_what_is_not_carried_and_what_is_none_are_named():
    assert extension(resource(BUNDLE, "ServiceRequest"), "document") == [
        {"url": "version", "valueString": "1.0"},
        {"url": "revision", "valueInteger": 2},
        {"url": "left-out", "valueString": "/extensions"},
        {"url": "none", "valueString": "/expect"},
    ]


def test_the_document_is_attached_under_its_digest():
    attached = resource(BUNDLE, "DocumentReference")
    assert attached["masterIdentifier"] == {"system": f"{BASE}sha256", "value": DIGEST}
    assert json.loads(b64decode(attached["content"][0]["attachment"]["data"])) == FULL
    assert BUNDLE["identifier"]["value"] == DIGEST


@pytest.mark.parametrize(
    "changes, left",
    [
        ({"notes": [{"text": " "}]}, "/notes/0/text"),
        ({"conditions": [{"condition": "other", "words": "a\u0001b"}]}, "/conditions/0/words"),
        ({"issued": "2026-03-04T09:30:00+14:30"}, "/issued"),
        ({"laboratory": {"id": "lab-4", "needed_by": "0000-01-01"}}, "/laboratory/needed_by"),
        ({"records": [{"kind": "other", "date": "2026-02-30"}]}, "/records/0/date"),
        ({"problems": [{"id": "p1", "problem": "crowding", "because": ["g1"]}]}, "/problems/0/because"),
    ],
)
def test_what_fhir_cannot_hold_is_left_out_by_name(changes, left):
    """The lexical forms of hl7.org/fhir/R4/datatypes.html: no control characters, offsets to 14:00, no year 0."""
    plain = {name: value for name, value in FULL.items() if name not in ("extensions", "problems")}
    assert bundle(plain | changes).left_out == (left,)


@pytest.mark.parametrize("text", ['"value": 2,', '"value": 1,', '"valueDecimal": 24\n'])
def test_no_precision_is_claimed_that_was_not_stated(text):
    """hl7.org/fhir/R4/datatypes.html#decimal: the noughts at the end of a decimal say how exact it is."""
    sent = write([made(FULL | {"patient": FULL["patient"] | {"age_years": 24.0}})]).data.decode()
    assert text in sent
    assert ".0," not in sent
    assert ".0\n" not in sent


def test_a_receipt_is_a_task_as_well():
    """hl7.org/fhir/R4/task.html: what a task is about is its focus, what came of it its output."""
    bundle = bundle_of(RECEIPT)
    task, attached = (one["resource"] for one in bundle["entry"])
    assert task["output"][0]["valueReference"] == {"reference": bundle["entry"][1]["fullUrl"]}
    assert attached["type"] == task["output"][0]["type"]
    assert (task["status"], task["businessStatus"]["coding"][0]["code"]) == ("rejected", "returned")
    assert task["focus"] == {"identifier": {"system": f"{BASE}sha256", "value": "2" * 64}}


def held(count):
    """A prescription with so many clauses of twenty-eight teeth."""
    teeth = [*FULL["teeth"]["upper"], *FULL["teeth"]["lower"]]
    clauses = [{"id": f"h{number}", "strength": "must", "hold": teeth} for number in range(count)]
    return FULL | {"keep": clauses[:2000], "notes": [{"text": "x" * 3900}] * (count // 10)}


def test_a_bundle_larger_than_a_document_may_be_is_read():
    document = made(held(600))
    data = write([document]).data
    assert MOST_BYTES > len(data) > limits.MOST_BYTES
    (found,) = read(data)
    assert (same(found.document, document), found.findings, found.losses) == (True, (), ())


def test_a_document_too_large_to_project_is_attached_alone():
    whole = bundle(held(2000))
    assert [one["resource"]["resourceType"] for one in whole.resource["entry"]] == ["DocumentReference"]
    assert (whole.left_out, len(written(whole.resource)) <= MOST_BYTES) == (("",), True)


def test_one_bundle_carries_one_document():
    assert not FORM.many
    for documents in ([], [made(FULL), made(FULL)]):
        with pytest.raises(ValueError, match="one document"):
            write(documents)


def test_codes_of_findings_and_of_documents_are_under_one_root():
    assert SYSTEM == BASE
