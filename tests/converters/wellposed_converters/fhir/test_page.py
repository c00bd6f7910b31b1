"""The page on FHIR and the published definitions are what the form does."""

import json
from importlib import import_module

import pytest
from fhir.resources.R4B.bundle import Bundle
from tests.converters.wellposed_converters.fhir.defined import BY_URL, FILE
from tests.converters.wellposed_converters.fhir.samples import DOCUMENTS, bundle_of
from tests.converters.wellposed_converters.fhir.words import FHIR_ELEMENTS, NOT_CARRIED
from tests.spec.prose import PAGES, code, links

from wellposed.render.conversion import LOSSES
from wellposed_converters.fhir import generate
from wellposed_converters.fhir.definitions import text
from wellposed_converters.fhir.entries import OURS
from wellposed_converters.fhir.faults import RULES
from wellposed_converters.fhir.names import extension

PAGE = "fhir.md"
DEFINED = [one for one in BY_URL.values() if one["resourceType"] == "StructureDefinition"]


def rows(kind):
    """The cells of a marked table."""
    body = PAGES[PAGE].partition(f"<!-- {kind}: fhir -->\n")[2].partition("\n\n")[0]
    return [[cell.strip().strip("`") for cell in line.split("|")[1:-1]] for line in body.splitlines()[2:]]


def test_the_definitions_are_current():
    assert FILE.read_text("utf-8") == text()
    assert generate.main(["--check"]) == 0
    assert generate.main(["--wrong"]) == 2


def test_a_missing_or_changed_file_is_drift(tmp_path):
    assert generate.drifted(tmp_path)
    path = tmp_path / generate.PATH
    path.parent.mkdir(parents=True)
    path.write_text(text() + " ")
    assert generate.drifted(tmp_path)
    path.write_text(text())
    assert not generate.drifted(tmp_path)


def test_the_definitions_are_sound_fhir():
    published = json.loads(text())
    Bundle.model_validate(published)
    urls = [one["fullUrl"] for one in published["entry"]]
    assert len(set(urls)) == len(urls)
    assert [one["fullUrl"] for one in published["entry"]] == [one["resource"]["url"] for one in published["entry"]]


@pytest.mark.parametrize("definition", DEFINED, ids=lambda one: one["name"])
def test_a_definition_is_well_made(definition):
    """sdf-8a and eld invariants that fhir.resources leaves alone: ids and paths agree, every slice fixes its url."""
    elements = definition["differential"]["element"]
    assert len({one["id"] for one in elements}) == len(elements)
    assert all(".".join(step.partition(":")[0] for step in one["id"].split(".")) == one["path"] for one in elements)
    fixed = {one["id"].removesuffix(".url"): one["fixedUri"] for one in elements if "fixedUri" in one}
    assert fixed.pop("Extension") == definition["url"]
    assert {one["id"]: one["sliceName"] for one in elements if "sliceName" in one} == fixed
    bound = [one["binding"]["valueSet"] for one in elements if "binding" in one]
    assert all(BY_URL[one]["compose"]["include"][0]["system"] in BY_URL for one in bound)


def test_every_rule_is_on_the_page():
    assert [tuple(row) for row in rows("rules")] == [*RULES.items()]


def test_every_extension_is_on_the_page():
    told = {(extension(name), element) for name, element, _ in rows("extensions")}
    assert told == {(one["url"], one["context"][0]["expression"]) for one in DEFINED}


def test_every_resource_is_on_the_page():
    told = {row[0] for row in rows("resources")}
    made = {one["resource"]["resourceType"] for each in DOCUMENTS.values() for one in bundle_of(each)["entry"]}
    assert told == made == OURS


def test_every_word_for_what_is_not_carried_is_on_the_page():
    assert NOT_CARRIED - set(code(PAGE)) == set()
    assert NOT_CARRIED - LOSSES.keys() == set()


def test_the_elements_named_are_elements_of_fhir():
    """As fhir.resources has them."""
    models = (
        "bundle",
        "servicerequest",
        "observation",
        "operationoutcome",
        "bodystructure",
        "condition",
        "coding",
        "meta",
        "task",
    )
    known = set()
    for name in models:
        known |= {field for one in vars(import_module(f"fhir.resources.R4B.{name}")).values() for field in fields(one)}
    assert FHIR_ELEMENTS - known == set()


def fields(model):
    """The elements of a model."""
    return getattr(model, "model_fields", {})


def test_the_page_leads_to_the_definitions():
    assert "fhir/definitions.json" in [file for _, file, _ in links(PAGE)]
