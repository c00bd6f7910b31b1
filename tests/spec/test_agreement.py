"""The model and every schema validator give one verdict on every document, mutants included.

WELLPOSED_MUTANTS sets how many mutants there are.
"""

import copy
import json
import os
import random
import re
from functools import cache
from importlib import import_module

import jsonschema_rs
import pytest
from fastjsonschema import JsonSchemaException
from jsonschema import Draft202012Validator
from pydantic import ValidationError
from tests.spec import directed, made, mutants, planted

from wellposed.model import DOCUMENTS
from wellposed.schema import document_schema, names

MUTANTS = int(os.environ.get("WELLPOSED_MUTANTS", "6000"))
SHARES = {"prescription": 0.8, "setup": 0.05, "receipt": 0.03, "review": 0.12}
EACH = {"prescription": 4, "setup": 1, "receipt": 1, "review": 1}  # mutants of one document
SOURCES = {kind: int(MUTANTS * share / EACH[kind]) for kind, share in SHARES.items()}


def accepts(function, refusal):
    def judge(document):
        try:
            function(document)
        except refusal:
            return False
        return True

    return judge


@cache
def judges(kind):
    """Five ways to a verdict, all compiled once."""
    schema, model = document_schema(kind), DOCUMENTS[f"wellposed/{kind}"]
    return {
        "model": accepts(model.model_validate, ValidationError),
        "model, from text": accepts(lambda it: model.model_validate_json(json.dumps(it)), ValidationError),
        "gate": accepts(import_module(f"wellposed.gate.{kind}").validate, JsonSchemaException),
        "jsonschema-rs": jsonschema_rs.validator_for(schema).is_valid,
        "jsonschema": Draft202012Validator(schema).is_valid,
    }


def verdicts(kind, document, but=""):
    return {name: judge(document) for name, judge in judges(kind).items() if name != but}


@cache
def shared(kind):
    """What a schema defines as that of the prescription does: there the slowest validator has judged it before."""
    ours, theirs = (document_schema(one).get("$defs", {}) for one in (kind, "prescription"))
    return {name for name, node in ours.items() if kind != "prescription" and theirs.get(name) == node}


def spared(kind, place):
    """The validator that is left out for the mutants of a place, "" for none."""
    return "jsonschema" if re.split("[. ]", place)[0] in shared(kind) else ""


@cache
def documents(kind, count, seed):
    """A maker and what it made; whoever changes a document copies it."""
    maker = made.Maker(document_schema(kind), random.Random(f"{kind} {seed}"))
    return maker, [maker.document() for _ in range(count)]


def words_of(kind):
    """Members and terms the schema knows, for the mutants to misplace."""
    nodes = document_schema(kind).get("$defs", {}).values()
    tags = sorted({name for node in nodes for name in node.get("properties", {})})
    terms = sorted({what.partition(" = ")[2] for what in made.possible(document_schema(kind)) if " = " in what})
    return tags, terms


def mutated(kind, count):
    """``count`` mutants with the names of their changes."""
    mutator = mutants.Mutator(random.Random(f"{kind} mutants"), *words_of(kind))
    _, sources = documents(kind, -(-count // EACH[kind]), 2)
    return (mutator.mutant(sources[place // EACH[kind]]) for place in range(count))


@pytest.mark.parametrize("kind", names())
def test_every_member_branch_and_term_occurs(kind):
    maker, _ = documents(kind, SOURCES[kind], 2)
    assert made.possible(document_schema(kind)) - set(maker.seen) == set()


@pytest.mark.parametrize("kind", names())
def test_what_the_schema_makes_everyone_accepts(kind):
    _, sources = documents(kind, 60, 1)
    assert [verdicts(kind, source) for source in sources if not all(verdicts(kind, source).values())] == []


def disagreements(kind, changed):
    """The mutants (a change or a place, and the document) the judges disagree about; the share the model accepts."""
    differences, valid = [], []
    for number, (change, document) in enumerate(changed):
        given = verdicts(kind, document, spared(kind, change))
        valid.append(given["model"])
        if len(set(given.values())) > 1:
            differences.append((number, change, given))
    return differences, sum(valid) / len(valid)


@pytest.mark.parametrize("kind", names())
def test_one_verdict_on_every_blind_mutant(kind):
    differences, share = disagreements(kind, mutated(kind, SOURCES[kind] * EACH[kind]))
    assert differences == []
    assert 0.05 < share < 0.95


@pytest.mark.parametrize("kind", names())
def test_one_verdict_on_the_mutants_of_every_place(kind):
    maker, sources = documents(kind, 400, 3)
    differences, share = disagreements(kind, directed.mutants_of(maker.where, sources))
    assert differences == []
    assert 0.05 < share < 0.95


def test_every_change_is_tried():
    tried = {change for change, _ in mutated("prescription", 2000)}
    assert tried == set(mutants.CHANGES)


@pytest.mark.parametrize("kind", names())
def test_a_constraint_taken_out_of_the_schema_is_noticed(kind):
    """The mutants are no sham: whichever constraint a schema lacked, one of them would show it."""
    schema, refused = document_schema(kind), judges(kind)["jsonschema-rs"]
    maker, sources = documents(kind, 400, 3)
    invalid = [mutant for _, mutant in directed.mutants_of(maker.where, sources) if not refused(mutant)]
    planned = [path for path in planted.constraints(schema) if not planted.said_twice(schema, path)]
    unnoticed = [path for path in planned if not _noticed(planted.without(schema, path), invalid)]
    assert unnoticed == [path for path in planned if planted.at(schema, path) == MOST]


def _noticed(faulty, invalid):
    accepted = jsonschema_rs.validator_for(faulty).is_valid
    return any(accepted(mutant) for mutant in invalid)


MOST = 2000  # entries of a section; the mutants have no list so long


def sections(kind):
    """The places of the lists that take as many entries: sections, in a review those of its requests too."""
    nodes = {"": document_schema(kind), **document_schema(kind).get("$defs", {})}
    lists = [(f"{name}.{one}", at) for name, node in nodes.items() for one, at in node.get("properties", {}).items()]
    return [f"{place} items" for place, node in lists if node.get("maxItems") == MOST]


@pytest.mark.parametrize("kind, place", [(kind, place) for kind in names() for place in sections(kind)])
def test_a_section_has_at_most_two_thousand_items(kind, place):
    maker, sources = documents(kind, 400, 3)
    number, path = maker.where[place]
    full, over = copy.deepcopy(sources[number]), copy.deepcopy(sources[number])
    for document, count in ((full, MOST), (over, MOST + 1)):
        mutants.at(document, path[:-2])[path[-2]] = [mutants.at(document, path)] * count
    assert set(verdicts(kind, full, "jsonschema").values()) == {True}  # which takes seconds for a list so long
    assert set(verdicts(kind, over, "jsonschema").values()) == {False}


def test_every_section_is_measured():
    assert {kind: len(sections(kind)) for kind in names()} == {
        "prescription": 15,
        "receipt": 2,
        "review": 8,
        "setup": 6,
    }


def test_jsonschema_needs_the_ban_on_line_breaks():
    schema = document_schema("review")
    document = documents("review", 1, 4)[1][0] | {"id": "x\n"}
    assert not Draft202012Validator(schema).is_valid(document)
    assert Draft202012Validator(planted.without(schema, ("$defs", "Identifier", "not"))).is_valid(document)
