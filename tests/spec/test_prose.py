"""The written specification is what the program does: its examples run, its tables are the models, its names exist."""

import json
import re
from typing import get_args

import pytest
from tests.converters.wellposed_converters.fhir.words import WORDS as FHIR_WORDS
from tests.spec.blocks import BLOCKS, stale
from tests.spec.prose import PAGES, SPEC, WRITTEN, anchors, blocks, code, examples, fences, links, tables, whole

from wellposed import norms
from wellposed.catalogue import rules, verdicts
from wellposed.check import check
from wellposed.commands import codes
from wellposed.exchange import changes, jws
from wellposed.findings import GROUNDS, Severity
from wellposed.model.base import Part
from wellposed.model.keys import PrivateKey, SignedKeyChange, TrustedKeys
from wellposed.reading import limits
from wellposed.render.schemas import schema_text
from wellposed.schema import document_schema, names
from wellposed.vocabulary import measures, motions, terms
from wellposed.vocabulary.landmarks import BOTH, LANDMARKS, MOMENTS
from wellposed_converters.setups.faults import RULES as FAULTS
from wellposed_converters.setups.mapping import Mapping
from wellposed_converters.tables.faults import RULES as TABLES
from wellposed_converters.tables.layout import headers
from wellposed_converters.text.clause import QUESTIONS
from wellposed_converters.xml import names as xml_names
from wellposed_converters.xml.faults import RULES as XML_FAULTS

WORDS = {"valid", "fragment", "base", "refused", "verdict", "asks"}
EXAMPLES = [pytest.param(e, id=f"{e.page}:{e.line} {' '.join(e.words)}") for e in examples()]
OBJECTIVES = range(1, 41)

RULES = {rule.id for rule in rules()}
VERDICTS = {verdict.id for verdict in verdicts()}
LISTS = {
    name: get_args(value)
    for module in (terms, motions, measures)
    for name, value in vars(module).items()
    if get_args(value) and all(isinstance(term, str) for term in get_args(value))
}


def parts(cls=Part):
    return {cls.__name__: cls} | {name: part for one in cls.__subclasses__() for name, part in parts(one).items()}


PARTS = parts()


def own(model):
    """The members a model adds to those it inherits: name to whether it must be there."""
    inherited = {name for base in model.__mro__[1:] for name in getattr(base, "model_fields", {})}
    fields = {name: field for name, field in model.model_fields.items() if name not in inherited}
    return {name: field.is_required() for name, field in fields.items()}


def members(node):
    """Every member name in a schema."""
    if isinstance(node, list):
        return {name for inner in node for name in members(inner)}
    if not isinstance(node, dict):
        return set()
    here = set(node["properties"]) if isinstance(node.get("properties"), dict) else set()
    return here | {name for inner in node.values() for name in members(inner)}


def closed(node):
    """Every term of a closed list in a schema."""
    if isinstance(node, list):
        return {term for inner in node for term in closed(inner)}
    if not isinstance(node, dict):
        return set()
    here = {*node.get("enum", ()), *([node["const"]] if "const" in node else [])}
    return here | {term for inner in node.values() for term in closed(inner)}


def named(cell):
    """The names in code type in a cell, and whether each is there without a question mark."""
    return {name: not mark for name, mark in re.findall(r"`([^`]+)`(\??)", cell)}


READING = Mapping.model_json_schema()
SCHEMAS = [document_schema(name) for name in names()]
MEMBERS, TERMS = members(SCHEMAS), closed(SCHEMAS)


# examples


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_example_is_what_its_fence_says(example):
    report = check(whole(example))
    told = example.told
    stopped = {finding.rule for finding in report.findings if finding.severity == Severity.STOP}
    if "refused" in told:
        assert report.verdict in ("refused", "unreadable")
        assert stopped == {told["refused"]}
        return
    assert report.verdict == told.get("verdict", report.verdict)
    assert stopped <= ({"cannot-hold-together"} if told.get("verdict") == "contradictory" else set())
    asked = {finding.rule for finding in report.findings if finding.severity == Severity.ASK}
    assert told.get("asks", "") in {"", *asked}


def test_every_fence_says_what_it_is():
    unmarked = [
        f"{page}:{line}"
        for page in WRITTEN
        for line, info, _ in fences(page)
        if not info.startswith("json ") or not {word.partition("=")[0] for word in info.split()[1:]} <= WORDS
    ]
    assert unmarked == []


def test_an_example_that_claims_too_much_is_noticed():
    (sound,) = [e for e in examples() if "base" in e.words]
    with pytest.raises(AssertionError):
        test_every_example_is_what_its_fence_says(sound._replace(words=("verdict=contradictory",)))


# tables


def test_tables_made_from_the_program_are_current():
    assert stale() == [], "python -m tests.spec.blocks writes them"


def test_every_table_that_can_be_made_is_used():
    assert sorted(name for page in WRITTEN for name in blocks(page)) == sorted(BLOCKS)


@pytest.mark.parametrize("table", [*tables("members")], ids=lambda table: table.of)
def test_a_table_of_members_is_the_model(table):
    told = {name: row[1] == "yes" for row in table.rows for name in named(row[0])}
    assert list(told.items()) == list(own(PARTS[table.of]).items())


@pytest.mark.parametrize("table", [*tables("forms")], ids=lambda table: table.of.split()[0])
def test_a_table_of_forms_is_the_models(table):
    forms = table.of.split()
    assert len(table.rows) == len(forms)
    for name, row in zip(forms, table.rows, strict=True):
        assert list(named(row[0]).items()) == list(own(PARTS[name]).items())


@pytest.mark.parametrize("table", [*tables("terms")], ids=lambda table: table.of)
def test_a_table_of_terms_is_the_list(table):
    assert tuple(name for row in table.rows for name in named(row[0])) == LISTS[table.of]


def test_every_model_has_its_table():
    listed = {name for kind in ("members", "forms") for table in tables(kind) for name in table.of.split()}
    assert {name for name, model in PARTS.items() if own(model)} - listed == set()


def test_every_member_and_every_term_is_named():
    told = [*code("prescription.md"), *code("setup.md"), *code("receipt.md")]
    written = {name for text in told for name in (text, *text.split())}
    assert MEMBERS - written == set()
    assert TERMS - written == set()


# names, links, numbers


@pytest.mark.parametrize("page", WRITTEN)
def test_every_link_leads_somewhere(page):
    astray = [
        f"{file}#{anchor}"
        for _, file, anchor in links(page)
        if not (SPEC / file).exists() or (anchor and anchor not in anchors(file or page))
    ]
    assert astray == []


@pytest.mark.parametrize("page", WRITTEN)
def test_every_rule_named_is_in_the_catalogue(page):
    linked = [(words, anchor) for words, file, anchor in links(page) if file == "rules.md" and anchor]
    assert [words for words, anchor in linked if words != anchor or anchor not in RULES] == []


def test_every_rule_between_the_parts_and_every_verdict_is_named():
    assert {verdict for verdict in VERDICTS if verdict not in code("prescription.md")} == set()
    between = {rule.id for rule in rules() if rule.group in ("text", "consistency")}
    assert between - {words for words, _, _ in links("prescription.md")} == set()
    answering = {rule.id for rule in rules() if rule.group in ("setup", "review")}
    assert answering - {words for words, _, _ in links("setup.md")} == set()
    arriving = {rule.id for rule in rules() if rule.group == "exchange"}
    assert arriving - {words for words, _, _ in links("signatures.md")} == set()
    taken_in = {rule.id for rule in rules() if rule.group in ("receipt", "intake")}
    assert taken_in - {words for words, _, _ in links("receipt.md")} == set()


FAMILIES = {norm.key.partition(".")[0] for norm in norms.load()}
PRINTED = re.compile(r"`([a-z-]+\.[a-z0-9.-]+)` \(([−-]?[0-9.]+)(?: ([a-z/]+))?,\s([a-z ]+)\)")


def keys(page):
    """Everything in code type that is written like the key of a norm."""
    return [text for text in code(page) if text.partition(".")[0] in FAMILIES and "." in text]


@pytest.mark.parametrize("page", WRITTEN)
def test_every_norm_named_exists(page):
    known = [norm.key for norm in norms.load()]
    wrong = [
        key
        for key in keys(page)
        if key not in known and not (key.endswith(".*") and any(k.startswith(key[:-1]) for k in known))
    ]
    assert wrong == []


@pytest.mark.parametrize("page", WRITTEN)
def test_a_norm_printed_has_its_value_and_how_sure_it_is(page):
    found = PRINTED.findall(PAGES[page])
    for key, value, unit, sure in found:
        norm = norms.norm(key)
        assert (float(value), unit or "1", " ".join(sure.split())) == (norm.value, norm.unit, norm.sure)


@pytest.mark.parametrize("page", WRITTEN)
def test_no_norm_is_named_without_its_value(page):
    printed = {key for key, *_ in PRINTED.findall(PAGES[page])}
    listed = {key for body in blocks(page).values() for key in re.findall(r"^\| `([^`]+)` \|", body, re.MULTILINE)}
    assert {key for key in keys(page) if not key.endswith(".*")} - printed - listed == set()


def test_norms_are_printed_at_all():
    assert len(PRINTED.findall(PAGES["semantics.md"])) >= 15


REPORT = json.loads(schema_text("report"))
NAMES = members(REPORT) | set(GROUNDS) | MEMBERS | TERMS | RULES | VERDICTS | {str(severity) for severity in Severity}
ELSEWHERE = {"null", "slide", "valid", "fragment", "generated"} | {"text", "expected", "ask"} | set(QUESTIONS)
ELSEWHERE |= {*LANDMARKS, *MOMENTS, BOTH}  # of the tables of points
ELSEWHERE |= {*XML_FAULTS, *xml_names.WORDS, *names(), "character-not-in-xml"}  # of the XML form
ELSEWHERE |= {*TABLES, *headers(), "document", "csv", "xlsx", "json", "jsonl", "xml", "fhir", "false"}  # of forms
ELSEWHERE |= {*FAULTS, *members(READING), *closed(READING), "true", "counter"}  # of the tables of setups
ELSEWHERE |= FHIR_WORDS
KEY_FILES = [model.model_json_schema() for model in (PrivateKey, TrustedKeys, SignedKeyChange)]
ELSEWHERE |= {*members(KEY_FILES), *closed(KEY_FILES), *jws.MEMBERS, jws.TYPE, changes.TYPE}  # of keys and signatures


@pytest.mark.parametrize("page", WRITTEN)
def test_every_word_in_code_type_is_a_name_of_the_format(page):
    single = [text for text in code(page) if re.fullmatch("[a-z][a-z_-]+", text)]
    assert sorted({text for text in single if text not in NAMES | ELSEWHERE}) == []


def test_limits_of_the_text_are_the_reader_s():
    page = PAGES["prescription.md"]
    for words in (
        f"at most {limits.MOST_BYTES:,} bytes",
        f"at most {limits.MOST_LEVELS} objects",
        f"at most {limits.LONGEST_NUMBER} characters",
        f"−{limits.LARGEST_WHOLE} to {limits.LARGEST_WHOLE}",
        f"after {limits.MOST_FAULTS:,} it stops",
    ):
        assert words in page


def test_exit_statuses_are_the_program_s():
    found = re.findall(r"^\| (\d) \|", PAGES["prescription.md"], re.MULTILINE)
    assert {codes.FIT, codes.NOT_FIT, codes.NOT_READ, codes.INTERNAL} <= {int(code) for code in found}
    assert found == ["0", "1", "2", "3", "4"]


# objectives


def test_every_objective_is_said_or_said_not_to_be():
    page = PAGES["objectives.md"]
    said = {int(n): body for n, body in re.findall(r"^### (\d+)\. (.*?)(?=^##)", page, re.MULTILINE | re.DOTALL)}
    listed = page.partition("## What the format does not say")[2]
    unsaid = {int(n) for many in re.findall(r"^- \*\*([\d, ]+)\.\*\*", listed, re.MULTILINE) for n in many.split(",")}
    assert sorted({*said, *unsaid}) == list(OBJECTIVES)
    assert [n for n, body in said.items() if "```json " not in body] == []
    assert [n for n, body in said.items() if "In part" in body and n not in unsaid] == []
