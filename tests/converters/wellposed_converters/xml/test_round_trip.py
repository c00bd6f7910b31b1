"""JSON to XML to JSON: nothing is lost, nothing is added, and the digest stays.

WELLPOSED_ROUND_TRIPS sets how many documents of each sort there are.
"""

import json
import os
import re
from functools import cache
from xml.parsers import expat

import pytest
import rfc8785
from tests.converters.wellposed_converters.xml.documents import (
    BASE,
    SAME,
    changed,
    extended,
    generated,
    model,
    sensible,
)
from tests.converters.wellposed_converters.xml.engines import ROOT, verdicts

from wellposed.check import sound_document
from wellposed.digests import digest
from wellposed.formats import Loss, forms
from wellposed.report import Report
from wellposed_converters.xml.form import FORM
from wellposed_converters.xml.parsing import parsed
from wellposed_converters.xml.reading import read
from wellposed_converters.xml.telling import told
from wellposed_converters.xml.writing import write

EACH = int(os.environ.get("WELLPOSED_ROUND_TRIPS", "50"))  # of three sorts with sense, and four out of the schemas


def xml(document):
    """The bytes of a document, and what was lost on the way."""
    return write([document])


def back(data):
    """The JSON value an XML document stands for."""
    return json.loads(told(parsed(data).root).text)


def without_places(findings):
    return [
        (one.rule, one.severity, one.pointer, {k: v for k, v in one.facts.items() if not k.startswith("first_")})
        for one in findings
    ]


def against(made):
    """What stops a document."""
    return made.findings if isinstance(made, Report) else ()


@cache
def documents():
    """What could be carried, and its bytes in XML."""
    found = map(json.loads, generated(EACH))
    written = ((document, xml(model(document))) for document in found)
    return [(document, one.data) for document, one in written if not one.losses]


def test_generated_documents_come_back_as_they_were():
    same = [rfc8785.dumps(document) == rfc8785.dumps(back(data)) for document, data in documents()]
    assert all(same)
    assert len(same) >= 0.94 * 7 * EACH > 300


def test_what_is_lost_is_what_no_json_document_holds_either():
    """Content out of the schema may hold 10^20, which the reader of JSON refuses too."""
    lost = [text for text in generated(EACH) if xml(model(json.loads(text))).losses]
    refused = [sound_document(text.encode()) for text in lost]
    assert {one.rule for report in refused for one in against(report)} == {"number-form"}
    assert {loss.what for text in lost for loss in xml(model(json.loads(text))).losses} == {"number-form"}


def test_both_forms_are_judged_alike():
    """A sound document is the same model with the same digest; of any other the same is said, place for place."""
    sound = 0
    for document, data in documents():
        made, (carried,) = sound_document(json.dumps(document).encode()), read(data)
        if isinstance(made, Report):
            assert without_places(carried.findings) == without_places(made.findings)
            assert all(one.line and one.column for one in carried.findings)
        else:
            assert (carried.document, carried.findings, carried.losses) == (made, (), ())
            assert digest(carried.document) == digest(made)
            sound += 1
    assert sound >= 2.5 * EACH


def test_every_document_is_valid_in_both_engines():
    invalid = [data for _, data in documents() if verdicts(parsed(data).root) != (True, True)]
    assert invalid == []


def test_written_by_hand():
    (carried,) = read(BASE.encode())
    assert carried.document == model(SAME)
    assert xml(model(SAME)).data.decode() == BASE


def test_the_same_bytes_every_time():
    assert [xml(model(one)).data for one in sensible(3)] == [xml(model(one)).data for one in sensible(3)]


def test_the_form_is_found_and_refuses_two_documents():
    assert forms()["xml"] == FORM
    with pytest.raises(ValueError, match="too many"):
        write([model(SAME), model(SAME)])


TEXTS = (
    " ",
    "\n",
    "\t",
    "\r",
    "\r\n",
    " two  blanks ",
    "\n\n leading and trailing \t\r",
    "a & b < c > d \" e ' f",
    "]]>",
    "&amp; &#10; <!-- --> <?x?> <![CDATA[x]]>",
    "\u0085\u00a0\u2028\u2029\ufeff",
    "\x7f\x80\x9f",
    "e\u0301 \u00e9 \u212b",
    "13–23, 歯 😀 \U0010fffd",
    "\ue000\ufffd",
    "\u202eabc\u202c",
)


@pytest.mark.parametrize("text", TEXTS)
def test_texts_keep_every_character(text):
    for document in (changed(notes=[{"text": text}]), extended(text), extended({text: text})):
        written = xml(document)
        assert (read(written.data)[0].document, written.losses) == (document, ())


@pytest.mark.parametrize("break_", ["\r\n", "\r"])
def test_other_line_ends_in_the_file_change_no_text(break_):
    """XML 1.0 section 2.11: a parser reads each as a line feed; a carriage return of a text is written ``&#13;``."""
    document = changed(notes=[{"text": "a\nb\r\nc\rd"}])
    data = xml(document).data.replace(b"\n", break_.encode())
    assert read(data)[0].document == document


NUMBERS = (
    (2.0, "2"),
    (0.0, "0"),
    (-0.0, "0"),
    (0.1, "0.1"),
    (1.5, "1.5"),
    (-399.99, "-399.99"),
    (400.0, "400"),
)


@pytest.mark.parametrize("value, text", NUMBERS)
def test_numbers_are_written_as_rfc_8785_prints_them(value, text):
    finding = {"id": "f1", "measure": "upper-midline", "value": value, "unit": "mm"}
    written = xml(changed(findings=[finding])).data.decode()
    assert f"<value>{text}</value>" in written
    assert rfc8785.dumps(value).decode() == text


def test_not_stated_none_and_zero_differ():
    absent, none = xml(changed()).data, xml(changed(keep=[])).data
    assert (b"<keep" in absent, b"<keep/>" in none) == (False, True)
    assert read(none)[0].document.keep == ()
    assert "keep" not in read(absent)[0].document.model_fields_set


CONTENT = (
    None,
    True,
    False,
    0,
    -1.5,
    9007199254740991,
    "",
    "null",
    [],
    {},
    [[]],
    [[None, {"a": []}], {}],
    {"": {"b.c": [0.1]}, " a": 1, "a": 2, "\n\t\r": "x", "key": {"item": 1, "member": 2}},
)


@pytest.mark.parametrize("content", CONTENT)
def test_content_of_an_extension_comes_back(content):
    (carried,) = read(xml(extended(content)).data)
    assert json.dumps(carried.document.extensions["org.example"].content) == json.dumps(content)


def test_content_goes_as_deep_as_the_reader_of_json_goes():
    for levels, rules in ((61, []), (62, ["nesting-too-deep"])):  # below document, extensions, extension
        content = json.loads("[" * levels + "]" * levels)
        document = {**SAME, "extensions": {"org.example": {"critical": False, "content": content}}}
        assert [one.rule for one in against(sound_document(json.dumps(document).encode()))] == rules
        written = xml(model(document))
        assert [loss.what for loss in written.losses] == rules


LOST = (
    ("/notes/0/text", {"notes": [{"text": "a\x00b"}]}, {"notes": [{"text": "ab"}]}),
    ("/notes/1/text", {"notes": [{"text": "x"}, {"text": "y\x1f"}]}, {"notes": [{"text": "x"}, {"text": "y"}]}),
    ("/notes/0/text", {"notes": [{"text": "\ufffe \uffff"}]}, {"notes": [{"text": " "}]}),
    ("/extensions/org.example/content/1", ["", "\x0b"], ["", ""]),
    ("/extensions/org.example/content/\x0c", {"\x0c": 1}, {"": 1}),
)


@pytest.mark.parametrize("pointer, members, left", LOST)
def test_a_character_xml_cannot_hold_is_left_out_and_named(pointer, members, left):
    """XML 1.0, production 2: no control character but tab, line feed and carriage return; not U+FFFE, not U+FFFF."""
    make = extended if "extensions" in pointer else lambda members: changed(**members)
    written = xml(make(members))
    assert written.losses == (Loss(pointer, "character-not-in-xml"),)
    assert read(written.data)[0].document == make(left)


@pytest.mark.parametrize(
    "character", [chr(code) for code in (*range(0x20), 0x7F, 0x85, 0xFFFD, 0xFFFE, 0xFFFF, 0x10FFFD)]
)
def test_what_xml_can_hold_another_parser_says(character):
    """expat takes a document with this character written by its number, or does not."""
    try:
        expat.ParserCreate().Parse(f"<a>&#{ord(character)};</a>", True)
    except expat.ExpatError:
        held = False
    else:
        held = True
    assert (xml(extended(character)).losses == ()) == held


def test_the_example_of_the_specification():
    page = (ROOT / "spec" / "xml.md").read_text("utf-8")
    example = next(block for block in re.findall(r"(?:^ {4}.*\n)+", page, re.MULTILINE) if "<?xml" in block)
    text = re.sub("^ {4}", "", example, flags=re.MULTILINE)
    (carried,) = read(text.encode())
    assert xml(carried.document).data.decode() == text
    assert (carried.document.extractions, carried.document.aligners.upper) == ((), 0)
