"""The published XML Schema: current, valid, alike in two engines, and where it says less than the reader.

WELLPOSED_XML_TREES sets how many changed trees there are.
"""

import json
import os
import random
from functools import cache

import elementpath
import pytest
from elementpath.xpath31 import XPath31Parser
from lxml import etree
from tests.converters.wellposed_converters.xml.changes import CHANGES, XSI, Changer
from tests.converters.wellposed_converters.xml.documents import BASE, extended, generated, model
from tests.converters.wellposed_converters.xml.engines import ROOT, libxml2, second, verdicts
from tests.converters.wellposed_converters.xml.malformed import MALFORMED

from wellposed import generate as spec
from wellposed.catalogue import rules
from wellposed.schema import names
from wellposed_converters.xml import generate
from wellposed_converters.xml.faults import RULES
from wellposed_converters.xml.names import NAMESPACE
from wellposed_converters.xml.parsing import parsed
from wellposed_converters.xml.particles import Slot, particle
from wellposed_converters.xml.plan import plans
from wellposed_converters.xml.reading import read
from wellposed_converters.xml.writing import write
from wellposed_converters.xml.xsd import FILE, text

TREES = int(os.environ.get("WELLPOSED_XML_TREES", "300"))
SHAPE = {rule.id for rule in rules() if rule.group in ("text", "structure")} | set(RULES)
XS = "{http://www.w3.org/2001/XMLSchema}"
SCHEMA = etree.fromstring(text().encode())


# what is committed


def test_the_committed_file_is_what_the_models_make():
    assert generate.drifted(spec.root()) is False
    assert "python -m wellposed_converters.xml.generate" in text().partition("\n")[0]


def test_check_says_that_it_has_drifted(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(generate, "root", lambda: tmp_path)
    assert generate.main(["--check"]) == 1
    assert (generate.main([]), generate.main(["--check"]), generate.main([])) == (0, 0, 0)
    (tmp_path / FILE).write_text("<schema/>")
    assert generate.main(["--check"]) == 1
    assert capsys.readouterr().out == f"drifted: {FILE}\nwritten: {FILE}\ndrifted: {FILE}\n"
    assert (tmp_path / FILE).read_text() == "<schema/>"


def test_another_argument_is_refused(capsys):
    assert generate.main(["--force"]) == 2
    assert "usage" in capsys.readouterr().err


# what it is


def test_both_engines_take_it_for_a_schema():
    """Both hold it to the schema of schemas and to the rule of one particle for one element before they build it."""
    assert second().validity == "valid"
    assert list(libxml2().error_log) == []


def test_it_names_every_document_and_nothing_that_could_be_fetched():
    assert [one.get("name") for one in SCHEMA.findall(f"{XS}element")] == list(names()) == list(plans())
    assert SCHEMA.get("targetNamespace") == NAMESPACE
    assert [one.tag for one in SCHEMA.iter(f"{XS}import", f"{XS}include", f"{XS}redefine", f"{XS}any")] == []


def test_text_is_taken_as_it_stands():
    """No type of text lets an engine take blanks away before it looks: all rest on xs:string, which keeps them."""
    bases = {one.get("base") for one in SCHEMA.iter(f"{XS}restriction")}
    assert bases == {"xs:string", "xs:decimal", "xs:boolean"}
    assert list(SCHEMA.iter(f"{XS}whiteSpace", f"{XS}list", f"{XS}union")) == []


# what it says


def shape(data):
    """What the reader has against the shape of a document, apart from what it says."""
    (carried,) = read(data)
    return [one for one in carried.findings if one.rule in SHAPE]


def blank(data):
    """The text of every number and truth value without the blanks around it, as XSD reads them."""
    root = etree.fromstring(data)
    for one in root.iter(etree.Element):
        if one.text and len(one) == 0 and (one.text.strip() in ("true", "false") or is_number(one.text.strip())):
            one.text = one.text.strip()
    return etree.tostring(root)


def is_number(what):
    try:
        float(what)
    except ValueError:
        return False
    return True


def by_use(one):
    """In an allowance, which members go with which value of ``use``."""
    other = one.rule in ("unknown-member", "missing-member") and not one.pointer.endswith("/use")
    return other and "/allow/" in one.pointer


def a_kind(one):
    return one.rule == "wrong-kind"


def no_content(one):
    """What is no part of the content of an XML document to a schema: comments, and attributes of schema instances."""
    return one.rule == "comment-or-instruction"


def of_the_text(one):
    return one.rule in ("noncharacter", "nesting-too-deep", "document-too-large", "too-many-faults")


LESS = {
    "which members go with which use": lambda data, found: all(map(by_use, found)),
    "blanks around a number or a truth value": lambda data, found: all(map(a_kind, found)) and shape(blank(data)) == [],
    "comments and processing instructions": lambda data, found: all(map(no_content, found)),
    "attributes of schema instances": lambda data, found: shape(without_instance(data)) == [],
    "what the text of a document may hold": lambda data, found: all(map(of_the_text, found)),
}
"""Where a document passes the schema that the reader refuses: all that the specification lists, and no more."""


def without_instance(data):
    root = etree.fromstring(data)
    for one in root.iter():
        for name in [name for name in one.attrib if name.startswith(f"{{{XSI}}}")]:
            del one.attrib[name]
    return etree.tostring(root)


def less(data):
    """The differences that would explain it."""
    return [name for name, explains in LESS.items() if explains(data, shape(data))]


@cache
def trees():
    """Changed trees, each with its change and its bytes."""
    changer = Changer(random.Random("changes"))
    written = [write([model(json.loads(one))]).data for one in generated(12)]
    sources = [etree.fromstring(data) for data in written if 0 < len(data) < 8_000]
    made = [changer.changed(sources[number % len(sources)]) for number in range(TREES)]
    return [(name, etree.tostring(root)) for name, root in made]


@cache
def judged():
    """Each of them with the verdicts of libxml2, xmlschema and the reader."""
    return [(data, *verdicts(etree.fromstring(data)), shape(data) == []) for _, data in trees()]


def test_two_engines_give_one_verdict_on_every_changed_tree():
    assert [data for data, one, other, _ in judged() if one != other] == []


def test_what_the_schema_refuses_the_reader_refuses():
    assert [data for data, one, _, ours in judged() if ours and not one] == []
    valid = sum(ours for *_, ours in judged())
    assert 0.1 * TREES < valid < 0.9 * TREES


def test_what_the_schema_lets_through_beside_the_reader_is_listed():
    unexplained = [data for data, one, _, ours in judged() if one and not ours and not less(data)]
    assert unexplained == []


def test_every_change_is_tried():
    assert {name for name, _ in trees()} == set(CHANGES)


WELL_FORMED = [row for row in MALFORMED if not row[2].startswith("not-xml")]


@pytest.mark.parametrize("old, new", [row[:2] for row in WELL_FORMED])
def test_what_is_malformed_both_refuse_but_for_the_differences(old, new):
    data = BASE.replace(old, new).encode()
    one, other = verdicts(parsed(data).root)
    assert one == other
    assert one == bool(less(data))


SHOWN = (
    ("which members go with which use", "<use>enamel-reduction", "<use>laboratory-choice"),
    ("blanks around a number or a truth value", "<value>2.5", "<value>\n  2.5"),
    ("blanks around a number or a truth value", "<critical>false", "<critical> false"),
    ("blanks around a number or a truth value", "<number>1", "<number>1 "),
    ("comments and processing instructions", "<text>", "<text><!-- x -->"),
    ("comments and processing instructions", "<notes>", "<?x y?><notes>"),
    ("attributes of schema instances", "<notes>", f'<notes xmlns:i="{XSI}" i:type="Notes">'),
    ("attributes of schema instances", "<notes>", f'<notes xmlns:i="{XSI}" i:schemaLocation="urn:x x.xsd">'),
    ("what the text of a document may hold", "Prefers", "\ufdd0"),
    ("what the text of a document may hold", '<map key="b"/>', '<array key="b">' + "<array>" * 61 + "</array>" * 62),
)


@pytest.mark.parametrize("name, old, new", SHOWN)
def test_each_difference_is_one(name, old, new):
    data = BASE.replace(old, new, 1).encode()
    assert verdicts(parsed(data).root) == (True, True)
    assert name in less(data)


def test_every_difference_is_shown_and_stands_in_the_specification():
    assert {name for name, *_ in SHOWN} == set(LESS)
    page = " ".join((ROOT / "spec" / "xml.md").read_text("utf-8").split())
    assert [name for name in LESS if name not in page] == []


# forms of one object, as a particle


def slots(words):
    """``a b? c`` as the members of a form."""
    return [
        Slot(etree.Element(f"{XS}element", name=one.rstrip("?"), type="xs:string"), not one.endswith("?"))
        for one in words.split()
    ]


def language(forms):
    """Every sequence that one of the forms lets through."""
    found = set()
    for form in forms:
        runs = [()]
        for one in form.split():
            runs = [(*run, one.rstrip("?")) for run in runs] + (runs if one.endswith("?") else [])
        found |= set(runs)
    return found


FORMS = (
    ("a b c",),
    ("a? b? c?",),
    ("a b", "a c"),
    ("a? b", "a? c"),
    ("a b? c? d", "a c e", "a d"),
    ("a b? c", "a", "a c b"),
    ("a x? y? z", "a y z?", "a z x", "a"),
    ("a? b? c", "b c d", "c? a"),
)


@pytest.mark.parametrize("forms", FORMS)
def test_a_particle_lets_through_what_one_of_the_forms_does(forms):
    """Against every sequence of up to four names: libxml2 takes the particle, and finds in it what the forms hold."""
    schema = etree.Element(f"{XS}schema", nsmap={"xs": XS[1:-1]})
    held = etree.SubElement(etree.SubElement(schema, f"{XS}element", name="r"), f"{XS}complexType")
    held.append(particle([slots(form) for form in forms], lambda name: f"{XS}{name}"))
    engine = etree.XMLSchema(schema)
    names_in = sorted({one.rstrip("?") for form in forms for one in form.split()})
    runs = [()]
    for _ in range(4):
        runs += [(*run, name) for run in runs for name in names_in if (*run, name) not in runs]
    taken = {run for run in set(runs) if engine.validate(etree.fromstring(f"<r>{''.join(f'<{n}/>' for n in run)}</r>"))}
    assert taken == {run for run in language(forms) if len(run) <= 4}


def test_one_name_has_one_type_in_an_object():
    other = [Slot(etree.Element(f"{XS}element", name="a", type="xs:int"), True)]
    with pytest.raises(ValueError, match="a would have two types"):
        particle([slots("a"), other], str.upper)


# any JSON, by another hand


CONTENT = ('{"a": [1, null, true, "x", []], "b": {"": -1.5}, "c d": "é\\n"}', "[]", '"x"', "null", "[[false], {}]")


@pytest.mark.parametrize("content", CONTENT)
def test_content_is_the_xml_representation_of_json(content):
    """XPath and XQuery Functions and Operators 3.1, ``json-to-xml``, as elementpath does it."""
    ours = etree.fromstring(write([extended(json.loads(content))]).data).find(f".//{{{NAMESPACE}}}content")[0]
    (made,) = elementpath.select(
        etree.Element("any"), "json-to-xml($json)", parser=XPath31Parser, variables={"json": content}
    )
    assert plain(ours) == plain(made.getroot())


def plain(element):
    """Names without namespace, attributes, text, children; numbers as numbers."""
    tag = element.tag.rpartition("}")[2]
    value = element.text or ""
    return tag, dict(element.attrib), float(value) if tag == "number" else value, [plain(one) for one in element]
