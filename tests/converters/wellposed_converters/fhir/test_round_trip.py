"""JSON to FHIR and back: the same document, and a bundle that others can read.

WELLPOSED_ROUND_TRIPS says how many prescriptions are carried; 300 unless it is set.
"""

import json
import os
from decimal import Decimal
from random import Random

import pytest
from fhir.resources.R4B.bundle import Bundle
from tests.converters.wellposed_converters.fhir.defined import faults
from tests.converters.wellposed_converters.fhir.invariants import broken
from tests.converters.wellposed_converters.fhir.samples import (
    DOCUMENTS,
    bundle_of,
    carried,
    made,
    same,
    without_original,
)
from tests.spec.made import Maker, possible
from tests.validator.wellposed.kinematics.generate import prescription
from tests.validator.wellposed.review.made import plausible
from tests.validator.wellposed.rules.sound import sound

from wellposed.check import sound_document
from wellposed.digests import digest_of
from wellposed.model import Prescription
from wellposed.report import Report
from wellposed.schema import document_schema
from wellposed_converters.fhir.bundle import bundle
from wellposed_converters.fhir.cursor import Cursor
from wellposed_converters.fhir.differences import differences
from wellposed_converters.fhir.entries import Entries
from wellposed_converters.fhir.faults import Told
from wellposed_converters.fhir.form import read, write
from wellposed_converters.fhir.rebuilt import Rebuilt

COUNT = int(os.environ.get("WELLPOSED_ROUND_TRIPS", "300"))
SLICES = 10


def numbers(value):
    """A JSON value with every number as the number it is, as fhir.resources writes 1.50 as 1.5."""
    if isinstance(value, dict):
        return {name: numbers(inner) for name, inner in value.items()}
    if isinstance(value, list):
        return [numbers(inner) for inner in value]
    return value.normalize() if isinstance(value, Decimal) else value


def read_by_another(one):
    """The bundle as fhir.resources reads and writes it."""
    text = json.dumps(one)
    kept = json.loads(Bundle.model_validate_json(text).model_dump_json(exclude_none=True), parse_float=Decimal)
    return numbers(kept), numbers(json.loads(text, parse_float=Decimal))


@pytest.mark.parametrize("part", range(SLICES))
def test_generated_prescriptions_come_back_the_same(part):
    """Of thousands made at random a few are not sound: these come back with what the check says of them."""
    for seed in range(part, COUNT, SLICES):
        document = prescription(seed) if seed % 2 else sound(seed)
        said = sound_document(json.dumps(document).encode())
        sent = Prescription.model_validate_json(json.dumps(document))
        (found,) = read(write([sent]).data)
        if isinstance(said, Report):
            assert (seed, found.document, rules(found)) == (seed, None, rules(said))
        else:
            assert (seed, same(found.document, sent), found.findings, found.losses) == (seed, True, (), ())


def rules(told):
    """Each finding by rule and place in the document."""
    return {(one.rule, one.pointer) for one in told.findings if "within" in one.facts or isinstance(told, Report)}


@pytest.mark.parametrize("seed", range(20))
def test_the_projection_alone_gives_the_same_prescription(seed):
    document = sound(seed) if seed % 2 else prescription(seed)
    found = carried(without_original(bundle_of(document)))
    assert same(found.document, made(document))
    assert ([one.rule for one in found.findings], found.losses) == (["bundle-without-original"], ())


@pytest.mark.parametrize("seed", range(10))
def test_setups_come_back_the_same(seed):
    _, setup = plausible(seed)
    found = carried(bundle_of(setup))
    assert (same(found.document, made(setup)), found.findings, found.losses) == (True, (), ())


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_kind_of_document_comes_back_the_same(name):
    found = carried(bundle_of(DOCUMENTS[name]))
    assert (same(found.document, made(DOCUMENTS[name])), found.findings, found.losses) == (True, (), ())


@pytest.mark.parametrize("name", DOCUMENTS)
def test_a_bundle_is_sound_fhir(name):
    """By fhir.resources, which reads it and writes it the same; by the bindings and invariants of R4; by our own."""
    written = bundle_of(DOCUMENTS[name])
    again, before = read_by_another(written)
    assert again == before
    assert broken(written) == []
    assert list(faults(written)) == []


def test_generated_bundles_are_sound_fhir():
    for seed in range(40):
        written = bundle_of(prescription(seed) if seed % 2 else sound(seed))
        Bundle.model_validate(written)
        assert (seed, broken(written), list(faults(written))) == (seed, [], [])


def named_apart(value, names):
    """The document with every id its own: the maker gives the same ones again."""
    if isinstance(value, dict):
        value |= {"id": f"c{next(names)}"} if "id" in value else {}
    for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        named_apart(inner, names)
    return value


def test_every_member_of_the_format_is_carried_or_named():
    """Documents made out of the published schema, in which each member and form of it occurs."""
    schema = document_schema("prescription")
    maker = Maker(schema, Random(20))
    wanted = {what for what in possible(schema) if " = " not in what and "JsonValue" not in what}
    whole = 0
    while len(maker.made) < 2000 and not wanted <= maker.seen.keys():
        document = named_apart(maker.document(), iter(range(10_000)))
        document.pop("extensions", None)
        made_bundle = bundle(document)
        if len(maker.made) < 100:
            Bundle.model_validate(made_bundle.resource)
            assert broken(made_bundle.resource) == []
        whole += not made_bundle.left_out
        told = Told()
        entries = Entries(Cursor(made_bundle.resource, "", told))
        again = Rebuilt(entries.of("ServiceRequest")[0], entries)
        lost = {one.pointer for one in differences(document, again.content)}
        assert told.findings == []
        assert again.left_out == list(made_bundle.left_out)
        assert again.left_out or digest_of(again.content) == digest_of(document)
        assert {place for place in lost if not place.startswith("/notes")} <= set(again.left_out)
    assert wanted - maker.seen.keys() == set()
    assert whole > 50
