"""Properties of the scanner and the gate over made-up documents and damaged ones."""

import json
from functools import reduce

from hypothesis import example, given, settings
from hypothesis import strategies as st

from wellposed.reading import Document, read_document
from wellposed.reading.gate import fast
from wellposed.reading.pointer import below, steps
from wellposed.reading.scan import scan

NONCHARACTERS = {chr(code) for code in range(0xFDD0, 0xFDF0)} | {
    chr(plane << 16 | low) for plane in range(17) for low in (0xFFFE, 0xFFFF)
}
LARGEST = 2**53 - 1

characters = st.characters(codec="utf-8").filter(lambda character: character not in NONCHARACTERS)
texts = st.text(characters, max_size=12) | st.sampled_from(["a", "b", "~/", "0e1", '"', "\\", "[", "1.234", "é"])
hundredths = st.integers(-(10**12), 10**12).map(lambda whole: whole / 100)
scalars = st.none() | st.booleans() | st.integers(-LARGEST, LARGEST) | hundredths | texts
values = st.recursive(
    scalars,
    lambda inner: st.lists(inner, max_size=5) | st.dictionaries(texts, inner, max_size=5),
    max_leaves=25,
)
objects = st.dictionaries(texts, values, max_size=6)
layouts = st.sampled_from([None, 0, 1, "\t", "\r\n "])


def written(value, ascii_only, indent):
    return json.dumps(value, ensure_ascii=ascii_only, indent=indent)


documents = st.builds(written, objects, st.booleans(), layouts)


@given(documents)
def test_the_scanner_reads_what_the_standard_library_reads(text):
    result = scan(text)
    assert (repr(result.value), result.faults) == (repr(json.loads(text)), ())


@given(documents)
def test_the_gate_and_the_scanner_agree_on_good_documents(text):
    value, accepted = fast(text.encode())
    assert (not accepted) or repr(value) == repr(scan(text).value)
    assert repr(read_document(text.encode()).value) == repr(json.loads(text))


@given(documents)
def test_every_pointer_leads_to_the_text_of_its_value(text):
    document = read_document(text.encode())
    for pointer in document.positions:
        value = reduce(below, steps(pointer), document.value)
        assert repr(json.loads(document.positions.source(pointer))) == repr(value)


@given(documents)
def test_line_and_column_are_those_of_the_offset(text):
    positions = read_document(text.encode()).positions
    for pointer in positions:
        for offset, line, column in (positions.value(pointer), positions.name(pointer)):
            before = text[:offset].replace("\r\n", "\n").split("\n")
            assert (line, column) == (len(before), len(before[-1]) + 1)


@given(documents)
def test_the_name_of_a_member_stands_where_it_is_said_to(text):
    document = read_document(text.encode())
    for pointer in document.positions:
        parent, _, _ = pointer.rpartition("/")
        if pointer and isinstance(reduce(below, steps(parent), document.value), dict):
            name, _ = json.JSONDecoder().raw_decode(text, document.positions.name(pointer).offset)
            assert name == steps(pointer)[-1]


# Pieces that break documents, put in at any place; the rest of the damage is bytes changed or cut off.
odd_numbers = [b"e5", b".123", b"0" * 17, b"-", b"1e400", b"NaN"]
odd_names = [b'"a":1,', b'"\\u0061":1,']
odd_strings = [b'"', b"\\", b"\\u0022", b"\\ud800", b"\\uffff", b"\xef\xbf\xbf", b"\xff"]
odd_structure = [b"", b",", b"{}", b"[", b"]", b"\x0b", b"//", b"[" * 70 + b"]" * 70]
pieces = st.sampled_from([*odd_numbers, *odd_strings, *odd_names, *odd_structure])


@st.composite
def damaged(draw):
    data = draw(documents).encode()
    for _ in range(draw(st.integers(1, 3))):
        start = draw(st.integers(0, len(data)))
        end = draw(st.integers(start, min(len(data), start + 3)) | st.just(len(data)))
        data = data[:start] + draw(pieces | st.binary(max_size=2)) + data[end:]
    return data


def agree(data):
    """The gate accepts only what the scanner accepts, with the same value; nothing is raised."""
    value, accepted = fast(data)
    outcome = read_document(data)
    try:
        text = data.decode()
    except UnicodeDecodeError:
        assert (accepted, outcome[0].rule) == (False, "not-utf-8")
        return
    judged = scan(text)
    assert isinstance(outcome, Document) == (judged.faults == ())
    assert not accepted or (repr(value), ()) == (repr(judged.value), judged.faults)


@settings(max_examples=500)
@given(damaged() | st.binary(max_size=40))
@example(b'{"a":' * 100_000)
@example(b'{"a":1,"a":"\\u0022\\u0022"}')
@example(b'{"a":{"b":1},"a":{"\\"":1}}')
@example(b'{"a":["]",' * 40 + b"[" * 60 + b"1")
@example(b'{"a":' + b'["]",' * 70 + b'"' + b"[" * 70 + b'"' + b"]" * 70 + b"}")
@example(b'{"a":' + b"[" * 64 + b"]" * 64 + b"}")
@example(b'{"a":12345678901234567.25}')
@example(b'{"a":"\\\\u0022"}')
@example(b'{"a":"0e\\\\","b":1e5}')
@example(b'{"a":"0e\\"","b":1e5}')
def test_damage_is_found_and_the_gate_never_overrules_the_scanner(data):
    agree(data)


@settings(max_examples=200)
@given(damaged())
def test_findings_of_damage_are_placed_and_come_in_the_same_order_each_time(data):
    outcome = read_document(data)
    if not isinstance(outcome, Document):
        assert outcome == read_document(data)
        assert [one for one in outcome if one.line is None or one.column is None] == []
        assert [one for one in outcome if one.pointer.encode().decode() != one.pointer] == []
