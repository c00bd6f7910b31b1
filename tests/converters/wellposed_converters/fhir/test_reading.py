"""A bundle changed on its way: every disagreement told, the document itself never changed, nothing made up."""

import copy
import json
import random
from base64 import b64encode

import pytest
from tests.converters.wellposed_converters.fhir.samples import (
    DOCUMENTS,
    FULL,
    PLAIN,
    at,
    bundle_of,
    carried,
    changed,
    made,
    places,
    resource,
    same,
    taken_out,
    without_original,
)

from wellposed.digests import digest
from wellposed.findings import Severity
from wellposed_converters.fhir.differences import differences
from wellposed_converters.fhir.faults import RULES
from wellposed_converters.fhir.form import read

BUNDLE = bundle_of(FULL)
PROJECTED = bundle_of(PLAIN)
LAST = len(BUNDLE["entry"]) - 1
DATA = f"/entry/{LAST}/resource/content/0/attachment/data"
LEAVES = [place for place, value in places(BUNDLE) if place != DATA and not isinstance(value, dict | list)]
ALL = [place for place, _ in places(BUNDLE) if place not in ("", DATA)]
PARTS = [place for place, _ in places(without_original(PROJECTED)) if place]
KEYS = ("url", "fullUrl")


def other(value):
    """Another value of the same kind."""
    return value + 1 if isinstance(value, int | float) else f"{value}x"


def above(pointer):
    """The place itself; of a url, what has it: another url makes another thing of it."""
    return pointer.rpartition("/")[0] if pointer.rpartition("/")[2] in KEYS else pointer


def told(found):
    return [(one.rule, one.pointer) for one in found.findings]


def test_every_leaf_changed_is_a_disagreement_at_its_place():
    for pointer in LEAVES:
        tampered = changed(BUNDLE, pointer, other(at(BUNDLE, pointer)))
        assert above(pointer) in {one.pointer for one in differences(BUNDLE, tampered)}, pointer


def test_everything_taken_out_is_a_disagreement_at_its_place():
    for pointer in ALL:
        found = {one.pointer for one in differences(BUNDLE, taken_out(BUNDLE, pointer))}
        assert {pointer, pointer.rpartition("/")[0], above(pointer)} & found or under(pointer, found), pointer


def under(pointer, found):
    """Of a list without urls the last place is the one that lacks; of one that lost its url, what holds it."""
    parent = pointer.rpartition("/")[0]
    return any(one.startswith(parent) or parent.rpartition("/")[0] == one for one in found)


@pytest.mark.parametrize("pointer", random.Random(6).sample(LEAVES, 40))
def test_a_changed_leaf_is_told_and_the_document_is_the_one_attached(pointer):
    found = carried(changed(BUNDLE, pointer, other(at(BUNDLE, pointer))))
    assert above(pointer) in [place for _, place in told(found)] or found.document is None
    assert found.document is None or same(found.document, made(FULL))
    assert all(one.line is not None for one in found.findings if one.pointer)


@pytest.mark.parametrize("pointer", random.Random(7).sample(ALL, 25))
def test_what_is_taken_out_is_told_and_the_document_is_the_one_attached(pointer):
    found = carried(taken_out(BUNDLE, pointer))
    assert found.findings
    assert found.document is None or same(found.document, made(FULL))


@pytest.mark.parametrize(
    "sentence, pointer, value, rule, severity, facts",
    [
        ("a bound is raised", "goal", 3.5, "bundle-differs", Severity.ASK, {"found": 3.5, "expected": 3.25}),
        ("the age is another", "patient", 3, "bundle-differs", Severity.ASK, {}),
    ],
)
def test_amounts_are_told_and_those_of_a_person_are_not(sentence, pointer, value, rule, severity, facts):
    extensions = resource(BUNDLE, "ServiceRequest")["extension"]
    number = [place for place, one in enumerate(extensions) if one["url"].endswith(f":{pointer}")][-1]
    element = "valueQuantity/value" if pointer == "goal" else "valueDecimal"
    nested = 4 if pointer == "goal" else 0
    place = f"/entry/0/resource/extension/{number}/extension/{nested}/{element}"
    (one,) = carried(changed(BUNDLE, place, value)).findings
    name = "ServiceRequest.extension.extension." + element.replace("/", ".")
    assert (sentence, one.rule, one.severity, one.pointer) == (sentence, rule, severity, place)
    assert one.facts == {"name": name, **facts}


ADDED = [
    ("an instruction", "/entry/0/resource/patientInstruction", "wear them at night", "bundle-adds"),
    ("that it is not to be done", "/entry/0/resource/doNotPerform", True, "bundle-adds"),
    ("a narrative of an author", "/entry/0/resource/text", {"status": "additional", "div": "<div/>"}, "bundle-adds"),
    ("a profile", "/entry/0/resource/meta", {"profile": ["urn:x"]}, "bundle-adds"),
    ("another unit", "/entry/2/resource/valueQuantity/comparator", "<", "bundle-adds"),
    ("a display", "/entry/0/resource/code/text", "fillings", "bundle-adds"),
    ("an extension of a value", "/entry/0/resource/_status", {"extension": []}, "bundle-adds"),
    ("a null", "/entry/0/resource/quantityQuantity", None, "bundle-adds"),
]


@pytest.mark.parametrize("sentence, pointer, value, rule", ADDED, ids=[row[0] for row in ADDED])
def test_what_is_added_to_a_resource_is_asked_about(sentence, pointer, value, rule):
    found = carried(changed(BUNDLE, pointer, value))
    assert (sentence, told(found), found.losses) == (sentence, [(rule, pointer)], ())
    assert same(found.document, made(FULL))


NO_MATTER = [
    ("an id", "/entry/0/resource/id", "17"),
    ("the id of the bundle", "/id", "17"),
    ("a version", "/meta", {"versionId": "2", "lastUpdated": "2026-03-05T00:00:00Z"}),
]


@pytest.mark.parametrize("sentence, pointer, value", NO_MATTER, ids=[row[0] for row in NO_MATTER])
def test_what_servers_add_is_noted_and_no_loss(sentence, pointer, value):
    found = carried(changed(BUNDLE, pointer, value))
    assert (sentence, told(found), found.losses) == (sentence, [("bundle-bookkeeping", pointer)], ())
    assert [one.severity for one in found.findings] == [Severity.NOTE]
    assert same(found.document, made(FULL))


def test_a_narrative_is_told_as_not_read():
    found = carried(changed(BUNDLE, "/entry/0/resource/text", {"status": "generated", "div": "<div/>"}))
    assert [(one.pointer, one.what) for one in found.losses] == [("/entry/0/resource/text", "narrative-not-read")]
    assert (found.findings, same(found.document, made(FULL))) == ((), True)


def added(bundle, one, name="urn:uuid:00000000-0000-0000-0000-000000000000"):
    return bundle | {"entry": [*bundle["entry"], {"fullUrl": name, "resource": one}]}


def test_a_foreign_resource_is_told_as_not_read():
    found = carried(added(BUNDLE, {"resourceType": "Appointment"}))
    assert [(one.pointer, one.what) for one in found.losses] == [(f"/entry/{LAST + 1}", "resource-not-read")]
    assert found.findings == ()


def test_modifiers_of_a_foreign_resource_do_not_matter():
    found = carried(added(BUNDLE, {"resourceType": "Appointment", "modifierExtension": [{"url": "urn:x"}]}))
    assert (found.findings, same(found.document, made(FULL))) == ((), True)


def test_what_is_lacking_is_named_by_its_type_or_url():
    """The place of what is not there is only that of the list it belongs to."""
    entries = [one for one in BUNDLE["entry"] if one["resource"]["resourceType"] not in ("DeviceRequest", "Condition")]
    found = carried(BUNDLE | {"entry": entries})
    names = [one.facts["name"] for one in found.findings if one.pointer == "/entry"]
    assert names == ["Bundle.entry (Condition)"] * 2 + ["Bundle.entry (DeviceRequest)"]
    (one,) = carried(taken_out(BUNDLE, "/entry/0/resource/extension/1")).findings
    assert one.facts["name"] == "ServiceRequest.extension('urn:wellposed:fhir:1:extension:prescriber')"


@pytest.mark.parametrize("kind", ["Observation", "ServiceRequest", "DeviceRequest", "Condition", "Task"])
def test_a_resource_of_ours_that_the_document_does_not_call_for_is_asked_about(kind):
    found = carried(added(BUNDLE, {"resourceType": kind}))
    assert told(found) == [("bundle-adds", f"/entry/{LAST + 1}")]


def test_the_order_of_extensions_and_entries_says_nothing():
    turned = copy.deepcopy(BUNDLE)
    turned["entry"].reverse()
    assert carried(turned).findings == ()


def test_the_order_of_two_clauses_does():
    turned = copy.deepcopy(BUNDLE)
    extensions = resource(turned, "ServiceRequest")["extension"]
    first, second = (place for place, one in enumerate(extensions) if one["url"].endswith(":goal"))
    extensions[first], extensions[second] = extensions[second], extensions[first]
    assert {one.rule for one in carried(turned).findings} >= {"bundle-differs"}


def test_numbers_are_compared_as_numbers():
    """FHIR gives trailing noughts a meaning (datatypes.html#decimal), this format none: 1.50 is 1.5, digest and all."""
    text = json.dumps(BUNDLE, indent=1)
    assert text.count('"value": 1.5,') == 2
    (found,) = read(text.replace('"value": 1.5,', '"value": 1.50,').encode())
    assert (found.findings, same(found.document, made(FULL))) == ((), True)
    (found,) = read(json.dumps(without_original(PROJECTED)).replace('"value": 1.5,', '"value": 1.50,').encode())
    assert (told(found), digest(found.document)) == ([("bundle-without-original", "/entry")], digest(made(PLAIN)))


@pytest.mark.parametrize("text", ["1.500", "1.501", "15e-1", "1.5000000000000001"])
def test_a_number_the_format_does_not_write_is_refused(text):
    (found,) = read(json.dumps(BUNDLE, indent=1).replace('"value": 1.5,', f'"value": {text},').encode())
    assert ({one.rule for one in found.findings}, found.document) == ({"number-form"}, None)


def test_a_document_attached_in_another_spelling_is_the_same_document():
    spelled = json.dumps(FULL, indent=3).encode()
    found = carried(changed(BUNDLE, DATA, b64encode(spelled).decode()))
    assert (found.findings, same(found.document, made(FULL))) == ((), True)


def test_another_document_attached_under_the_digest_is_not_used():
    tampered = FULL | {"keep": []}
    found = carried(changed(BUNDLE, DATA, b64encode(json.dumps(tampered).encode()).decode()))
    assert found.document is None
    assert told(found) == [
        ("bundle-not-whole", "/entry/0/resource"),
        ("bundle-original-altered", f"/entry/{LAST}/resource/masterIdentifier/value"),
    ]


def test_a_projection_that_is_whole_stands_in_for_an_altered_document():
    tampered = b64encode(json.dumps(PLAIN | {"keep": []}).encode()).decode()
    found = carried(changed(PROJECTED, DATA, tampered))
    assert same(found.document, made(PLAIN))
    assert ("bundle-original-altered", Severity.ASK) in [(one.rule, one.severity) for one in found.findings]


def test_another_document_with_its_own_digest_disagrees_with_the_order():
    tampered = made(FULL | {"keep": []})
    swapped = changed(BUNDLE, DATA, b64encode(json.dumps(FULL | {"keep": []}).encode()).decode())
    swapped = changed(swapped, f"/entry/{LAST}/resource/masterIdentifier/value", digest(tampered))
    found = carried(swapped)
    assert same(found.document, tampered)
    assert ("bundle-differs", "/entry/0/resource/identifier/1/value") not in told(found)  # its very url is another
    assert ("bundle-lacks", "/entry") in told(found)
    assert ("bundle-adds", "/entry/0") in told(found)


def test_without_the_document_what_is_left_out_is_listed_and_nothing_is_given():
    found = carried(without_original(BUNDLE))
    assert found.document is None
    assert [(one.pointer, one.what) for one in found.losses] == [("", "no-original"), ("/extensions", "left-out")]
    assert told(found) == [("bundle-not-whole", "/entry/0/resource")]


MISSING = [
    ("a patient", "subject", "/patient/reference"),
    ("a prescriber", "requester", "/prescriber/id"),
    ("a laboratory", "performer", "/laboratory/id"),
    ("a date of issue", "authoredOn", "/issued"),
]


@pytest.mark.parametrize("sentence, element, member", MISSING, ids=[row[0] for row in MISSING])
def test_without_the_document_what_is_not_there_is_listed(sentence, element, member):
    found = carried(taken_out(without_original(PROJECTED), f"/entry/0/resource/{element}"))
    assert (sentence, found.document) == (sentence, None)
    assert (member, "not-there") in [(one.pointer, one.what) for one in found.losses]


@pytest.mark.parametrize("pointer", random.Random(8).sample(PARTS, 40))
def test_without_the_document_a_part_taken_out_is_never_filled_in(pointer):
    found = carried(taken_out(without_original(PROJECTED), pointer))
    assert found.document is None or (same(found.document, made(PLAIN)) and found.findings)


@pytest.mark.parametrize("name", ["setup", "review", "receipt"])
def test_a_document_that_is_not_projected_is_not_read_without_its_attachment(name):
    found = carried(without_original(bundle_of(DOCUMENTS[name])))
    assert (told(found), found.document) == ([("bundle-without-order", "/entry")], None)
    assert [one.what for one in found.losses] == ["no-original"]


def test_findings_of_the_document_attached_point_into_it():
    unsound = b64encode(json.dumps(FULL | {"goals": [{"id": "g1"}]}).encode()).decode()
    found = carried(changed(BUNDLE, DATA, unsound))
    inner = [one for one in found.findings if "within" in one.facts]
    assert ("missing-member", "/goals/0/measure") in [(one.rule, one.pointer) for one in inner]
    assert {one.facts["within"] for one in inner} == {DATA}
    text = json.dumps(changed(BUNDLE, DATA, unsound))
    assert {(one.line, one.column) for one in inner} == {(1, text.index(f'"{unsound}"') + 1)}
    assert found.document is None


def test_no_name_and_no_text_of_a_person_is_in_a_finding():
    """Canaries in every private string of the projection: none is repeated."""
    spoken = []
    for pointer in (
        "/entry/0/resource/subject/identifier/value",
        "/entry/0/resource/requester/identifier/value",
        "/entry/0/resource/performer/0/identifier/value",
        "/entry/0/resource/note/0/text",
        "/entry/0/resource/extension/1/extension/0/valueString",
        "/entry/0/resource/extension/5/extension/3/valueString",
    ):
        for bundle in (BUNDLE, without_original(PROJECTED)):
            found = carried(changed(bundle, pointer, "Canary-1970"))
            spoken.append((found.findings, found.losses))
    assert "Canary" not in repr(spoken)


def test_every_rule_told_is_listed():
    assert all(rule.startswith("bundle-") for rule in RULES)
