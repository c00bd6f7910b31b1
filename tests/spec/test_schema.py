"""The published schemas are current, portable, equal to the models, and place a fault alike."""

import copy
import json
import subprocess
import sys

import jsonschema_rs
import pytest
from jsonschema import Draft202012Validator
from pydantic import ValidationError
from tests.validator.wellposed.commands.documents import EXAMPLE

from wellposed import gate, generate
from wellposed.model import DOCUMENTS
from wellposed.model.base import Part
from wellposed.schema import document_schema, names, outside_subset

SCHEMA = document_schema("prescription")
UNIONS = {name for name, node in SCHEMA["properties"].items() if {"if", "allOf"} & set(node.get("items", {}))}


def changed(path, *value):
    """The example with another value there, or with nothing there."""
    document = copy.deepcopy(EXAMPLE)
    *steps, last = path.split("/")[1:]
    holder = document
    for step in steps:
        holder = holder[int(step)] if isinstance(holder, list) else holder[step]
    if value:
        holder[int(last) if isinstance(holder, list) else last] = value[0]
    else:
        del holder[last]
    return document


def pointer(steps):
    return "".join(f"/{str(step).replace('~', '~0').replace('/', '~1')}" for step in steps)


def model_places(document):
    """Where the model finds faults: its locations without the tags of unions, which are no steps."""
    try:
        DOCUMENTS["wellposed/prescription"].model_validate(document)
    except ValidationError as refusal:
        return {pointer(untagged(error["loc"])) for error in refusal.errors()}
    return set()


def untagged(location):
    """After the number of a clause that has several forms comes the tag of its form."""
    return (*location[:2], *location[3:]) if location[0] in UNIONS else location


def schema_places(document):
    """Where each of the three schema validators finds faults."""
    return {
        "jsonschema": {pointer(one.absolute_path) for one in Draft202012Validator(SCHEMA).iter_errors(document)},
        "jsonschema-rs": {
            pointer(one.instance_path) for one in jsonschema_rs.validator_for(SCHEMA).iter_errors(document)
        },
        "gate": {error.pointer for error in gate.errors(document)},
    }


def everywhere(place):
    return dict.fromkeys(("jsonschema", "jsonschema-rs", "gate"), place)


def test_committed_files_are_what_the_models_make():
    assert generate.drifted(generate.root()) == []


def test_check_names_what_has_drifted(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(generate, "root", lambda: tmp_path)
    assert generate.main([]) == 0
    changed_file, _ = generate.GENERATED[0]
    (tmp_path / changed_file).write_text("{}\n")
    capsys.readouterr()
    assert generate.main(["--check"]) == 1
    assert capsys.readouterr().out == f"drifted: {changed_file}\n"


def test_check_is_silent_when_all_is_current(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(generate, "root", lambda: tmp_path)
    generate.write(tmp_path)
    assert (generate.main(["--check"]), capsys.readouterr().out) == (0, "")


def test_another_argument_is_refused(capsys):
    assert generate.main(["--force"]) == 2
    assert "usage" in capsys.readouterr().err


@pytest.mark.parametrize("name", names())
def test_the_published_schema_is_a_schema(name):
    Draft202012Validator.check_schema(document_schema(name))


@pytest.mark.parametrize("name", names())
def test_nothing_is_outside_the_portable_subset(name):
    assert outside_subset(document_schema(name)) == []


@pytest.mark.parametrize("name", names())
def test_the_first_line_says_it_is_generated_and_the_name_cannot_be_fetched(name):
    schema = document_schema(name)
    assert next(iter(schema)) == "$comment"
    assert "python -m wellposed.generate" in schema["$comment"]
    assert schema["$id"] == f"urn:wellposed:schema:1:{name}"


LONG = {"type": "string", "maxLength": 5}


@pytest.mark.parametrize(
    "node, what",
    [
        ({"oneOf": []}, ": oneOf is no keyword of the subset"),
        ({"requird": []}, ": requird is no keyword of the subset"),
        ({"type": "string"}, ": string without enum or const or maxLength"),
        ({"type": "array", "maxItems": 3}, ": array without items"),
        ({"type": "array", "items": {}}, ": array without maxItems"),
        ({"type": "number", "minimum": 0}, ": number without maximum or exclusiveMaximum"),
        ({"type": "object"}, ": object without additionalProperties"),
        ({"enum": [1]}, ": enum and const compare strings only"),
        ({"not": {"type": "null"}}, ": not may only ban line breaks"),
        ({**LONG, "pattern": "^a$"}, ": pattern without maxLength or without a ban on line breaks"),
        ({"$ref": "#/$defs/Gone"}, ": $ref leads out of the schema"),
        ({"$ref": "#/$defs/a", "maxLength": 1, "$defs": {"a": {}}}, ": $ref beside other keywords"),
        (
            {"properties": {"a": {"type": "string"}}},
            "/properties/a: string without enum or const or maxLength",
        ),
        ({"allOf": [{"then": {"format": "date"}}]}, "/allOf/0/then: format is no keyword of the subset"),
    ],
)
def test_the_lint_names_what_is_outside(node, what):
    assert outside_subset(node) == [what]


@pytest.mark.parametrize("pattern", ["a$", "^a", "^\\d$", "^é$", "^[\n]$"])
def test_the_lint_refuses_patterns_that_are_read_differently(pattern):
    ban = {"type": "string", "pattern": "[\n]"}
    told = outside_subset({**LONG, "pattern": pattern, "not": ban})
    assert told == [": pattern is not anchored, not ASCII or has a backslash"]


def test_names_of_members_of_an_open_object_are_limited():
    node = {"type": "object", "maxProperties": 2, "propertyNames": LONG, "additionalProperties": {}}
    assert outside_subset(node) == [": propertyNames lets any name in"]


def parts(cls=Part):
    """Every model, by its name."""
    return {cls.__name__: cls} | {name: part for one in cls.__subclasses__() for name, part in parts(one).items()}


def objects(name):
    """Every object of a schema with the model it was made from."""
    schema, models = document_schema(name), parts()
    nodes = {node_name: node for node_name, node in schema["$defs"].items() if "properties" in node}
    return [
        (schema, DOCUMENTS[f"wellposed/{name}"]),
        *((node, models[title]) for title, node in nodes.items()),
    ]


@pytest.mark.parametrize("name", names())
def test_every_object_has_the_members_of_its_model(name):
    for node, model in objects(name):
        fields = model.model_fields
        assert list(node["properties"]) == list(fields)
        assert node.get("required", []) == [field for field, info in fields.items() if info.is_required()]
        assert node["additionalProperties"] is False


def test_the_example_of_the_format_is_valid_everywhere():
    assert schema_places(EXAMPLE) == everywhere(set())
    assert model_places(EXAMPLE) == set()


@pytest.mark.parametrize(
    "path, value, sentence",
    [
        ("/revision", 0, "revisions count from 1"),
        ("/teeth/upper/3", "19", "no such tooth"),
        ("/findings/1/value", True, "a truth value is no number"),
        ("/goals/0/align/2", 31, "a tooth number is text"),
        ("/goals/0/id", "g 1", "an id has no blank"),
        ("/keep/0/within", 200.5, "beyond the bound, deep in a union told by its members"),
        ("/allow/0/per_contact", "0.4", "text in the place of a number, deep in a union told by its use"),
        ("/allow/0/contacts/4", "42-49", "no such tooth in a contact"),
        ("/attachments/1/otherwise", "ask", "not in the closed list, last form of its union"),
        ("/attachments/0", 7, "a clause is an object"),
        ("/allow/0", 7, "a permission is an object"),
        ("/patient/reference", "P-7F3A\n", "a line break after the pattern"),
        ("/extensions", [], "extensions are an object"),
        ("/extensions", {"org.example": {"critical": 1, "content": 0}}, "a key with a dot"),
    ],
)
def test_a_wrong_value_is_placed_exactly(path, value, sentence):
    place = {path + ("/org.example/critical" if "dot" in sentence else "")}
    assert schema_places(changed(path, value)) == everywhere(place)
    assert model_places(changed(path, value)) == place


@pytest.mark.parametrize(
    "document, holder, member",
    [
        (changed("/patient/reference"), "/patient", "reference"),
        (changed("/goals/0/strength"), "/goals/0", "strength"),
        (changed("/allow/0/unit"), "/allow/0", "unit"),
        (changed("/goals/0/close", ["11-12"]), "/goals/0", "close"),
        (changed("/colour", "blue"), "", "colour"),
        (changed("/allow/0/up_to", 1), "/allow/0", "up_to"),
    ],
)
def test_a_member_too_few_or_too_many_is_placed_at_its_object(document, holder, member):
    assert schema_places(document) == everywhere({holder})
    assert model_places(document) == {f"{holder}/{member}"}


def test_two_faults_are_two_places():
    document = changed("/allow/0/per_contact", None) | {"revision": 0}
    assert schema_places(document) == everywhere({"/allow/0/per_contact", "/revision"})


def test_a_use_nobody_knows_is_placed_at_the_use_and_by_the_model_at_the_permission():
    document = changed("/allow/0/use", "polishing")
    assert schema_places(document) == everywhere({"/allow/0/use"})
    assert model_places(document) == {"/allow/0"}


def test_a_permission_without_its_use_is_one_fault():
    found = Draft202012Validator(SCHEMA).iter_errors(changed("/allow/0/use"))
    assert [(pointer(error.absolute_path), error.message) for error in found] == [
        ("/allow/0", "'use' is a required property")
    ]


def test_the_gate_says_what_is_missing_and_nothing_of_the_values():
    document = changed("/patient", {"reference": "Jane Doe"}) | {"goals": [{"id": "g1"}]}
    told = [str(error) for error in gate.errors(document)]
    assert told[0] == "/goals/0 must have strength, measure, unit"
    assert told[1].startswith("/patient/reference must match ^")
    assert "Jane" not in "".join(told)


def test_the_gate_raises_the_first_fault_and_leaves_the_document_alone():
    document = changed("/teeth/upper/0", "x") | {"revision": 0}
    before = json.dumps(document)
    with pytest.raises(gate.GateError, match="/revision must be at least 1") as raised:
        gate.check(document)
    assert (raised.value.pointer, json.dumps(document)) == ("/revision", before)


@pytest.mark.parametrize("document, place", [(None, ""), ([], ""), ({}, "/format"), ({"format": ["x"]}, "/format")])
def test_the_gate_needs_a_document_it_knows(document, place):
    assert [error.pointer for error in gate.errors(document)] == [place]


def test_the_gate_names_no_place_it_cannot_tell():
    extension = {"critical": 1, "content": None}
    document = EXAMPLE | {"extensions": {"org.a": extension, "org.a.critical": True}}
    assert [error.pointer for error in gate.errors(document)] == ["/extensions"]


def test_the_gate_needs_no_model():
    program = f"import json, sys; from wellposed import gate; gate.check(json.loads({json.dumps(EXAMPLE)!r}))"
    checked = f"{program}; print('pydantic' in sys.modules, 'wellposed.gate.prescription' in sys.modules)"
    ran = subprocess.run([sys.executable, "-c", checked], capture_output=True, text=True, check=True, env=path_of())
    assert ran.stdout == "False True\n"


def path_of():
    return {"PYTHONPATH": ":".join(sys.path), "PYTHONDONTWRITEBYTECODE": "1"}
