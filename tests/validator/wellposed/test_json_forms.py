"""JSON and JSON Lines as forms: every line strict by itself, faults by the number of their line."""

import hashlib
import json
import random

import pytest
from tests.validator.wellposed.commands.documents import EXAMPLE
from tests.validator.wellposed.kinematics.generate import prescription

from wellposed.check import sound_document
from wellposed.digests import digest
from wellposed.findings import Severity
from wellposed.json_forms import JSON, JSON_LINES

LINE = json.dumps(EXAMPLE).encode()
ONE = sound_document(LINE)
PLAIN = LINE.decode()


def changed(old, new):
    assert old in PLAIN
    return PLAIN.replace(old, new, 1).encode("utf-8", "surrogatepass")


# what is wrong, the line that is wrong, rule, column where it is said
MALFORMED = [
    ("nothing", b"", "document-empty", 1),
    ("blanks", b"  ", "document-empty", 3),
    ("a carriage return", b"\r", "document-empty", 2),
    ("a byte order mark", b"\xef\xbb\xbf" + LINE, "byte-order-mark", 1),
    ("not UTF-8", LINE.replace(b"HR-2031", b"HR-\xe9"), "not-utf-8", 90),
    ("a lone surrogate in UTF-8", changed('"lab-4"', '"\ud800"'), "not-utf-8", None),
    ("a byte 0", b"\0", "not-json", 1),
    ("the first line of a laid out document", b"{", "not-json", 2),
    ("its last line", b"}", "not-json", 1),
    ("a list", b"[" + LINE + b"]", "not-an-object", 1),
    ("text", b'"wellposed"', "not-an-object", 1),
    ("null", b"null", "not-an-object", 1),
    ("two documents on a line", LINE + LINE, "not-json", len(PLAIN) + 1),
    ("two documents with a comma", LINE + b"," + LINE, "not-json", len(PLAIN) + 1),
    ("a comma behind it", LINE + b",", "not-json", len(PLAIN) + 1),
    ("a record separator before it", b"\x1e" + LINE, "not-json", 1),
    ("a next line character", LINE + "\u0085".encode(), "not-json", len(PLAIN) + 1),
    ("a line separator", LINE + "\u2028".encode(), "not-json", len(PLAIN) + 1),
    ("a comment", b"// order", "not-json", 1),
    ("a number with three decimals", changed('"value": 2.5', '"value": 2.500'), "number-form", None),
    ("an exponent", changed('"value": 2.5', '"value": 25e-1'), "number-form", None),
    ("NaN", changed('"value": 2.5', '"value": NaN'), "number-not-finite", None),
    ("a name twice", changed('"revision": 1', '"revision": 1, "revision": 1'), "duplicate-member", None),
    ("too deep", b'{"a":' + b"[" * 100 + b"]" * 100 + b"}", "nesting-too-deep", None),
    ("half a character", changed('"lab-4"', '"\\ud800"'), "lone-surrogate", None),
    ("too large", b'{"a":"' + b"x" * 2_000_001 + b'"}', "document-too-large", 1),
    ("a member that is not known", changed('"revision": 1', '"revision": 1, "colour": 1'), "unknown-member", None),
    ("another kind of document", changed("wellposed/prescription", "wellposed/order"), "unknown-format", None),
    ("a member missing", changed('"notation": "ISO 3950", ', ""), "missing-member", 1),
    ("a reference to nothing", changed('["f2"]', '["f9"]'), "unknown-reference", None),
]


@pytest.mark.parametrize("line, rule, column", [pytest.param(*case[1:], id=case[0]) for case in MALFORMED])
def test_a_malformed_line_is_told_with_its_number_and_stops_no_other(line, rule, column):
    first, second, third, *more = JSON_LINES.read(LINE + b"\n" + line + b"\n" + LINE + b"\n")
    assert (first.document, third.document, more) == (ONE, ONE, [])
    assert second.document is None
    assert {(one.rule, one.severity, one.line) for one in second.findings} == {(rule, Severity.STOP, 2)}
    assert column in (None, second.findings[0].column)


def test_places_within_a_line_are_those_of_the_line_by_itself():
    """The same faults as of the line as a document of its own, one line further down."""
    for _, line, _, _ in MALFORMED:
        (alone,) = JSON.read(line)
        _, below = JSON_LINES.read(LINE + b"\n" + line + b"\n")
        told = [(one.rule, one.pointer, one.column or 1) for one in alone.findings if one.line in (None, 1)]
        assert told == [(one.rule, one.pointer, one.column) for one in below.findings][: len(told)]


def test_the_first_of_two_names_is_on_the_same_line():
    _, one = JSON_LINES.read(LINE + b'\n{"a":1,"a":2}')
    (finding,) = one.findings
    assert (finding.line, finding.facts["first_line"], finding.facts["first_column"]) == (2, 2, 2)


def test_a_carriage_return_is_a_blank_of_its_line():
    """RFC 8259 has it among the blanks; here only a line feed ends a line, so columns run on."""
    _, one = JSON_LINES.read(LINE + b'\n{"\xc3\xa9":1,\r\r"a":2, "a":3}')
    (finding,) = one.findings
    assert (finding.rule, finding.line, finding.column) == ("duplicate-member", 2, 17)
    assert (finding.facts["first_line"], finding.facts["first_column"]) == (2, 10)


@pytest.mark.parametrize("end", [b"", b"\n", b"\r\n"])
def test_line_ends(end):
    assert [one.document for one in JSON_LINES.read(LINE + end)] == [ONE]
    assert [one.document for one in JSON_LINES.read(LINE + (end or b"\n") + LINE + end)] == [ONE, ONE]


def test_an_empty_file_holds_no_document_and_says_so():
    (one,) = JSON_LINES.read(b"")
    assert (one.document, [finding.rule for finding in one.findings]) == (None, ["document-empty"])


def test_generated_prescriptions_come_back_the_same_and_every_line_is_what_its_digest_is_of():
    """The digest is the SHA-256 of the line without its line feed: a second implementation needs no more than that."""
    orders = [sound_document(json.dumps(prescription(seed)).encode()) for seed in range(300)]
    data = JSON_LINES.write(orders).data
    assert [one.document for one in JSON_LINES.read(data)] == orders
    assert [hashlib.sha256(line).hexdigest() for line in data.splitlines()] == [digest(one) for one in orders]
    for order in orders:
        (back,) = JSON.read(JSON.write([order]).data)
        assert (back.document, digest(back.document)) == (order, digest(order))


def test_whole_numbers_are_written_without_a_point_and_text_as_it_is():
    note = ONE.model_copy(update={"findings": (ONE.findings[1],), "id": "HR-9"})
    text = JSON.write([note]).data.decode()
    assert '"value": 2,' in text
    assert text.startswith('{\n  "version": "1.0"')
    assert text.endswith("}\n")


@pytest.mark.parametrize("documents", [[], [ONE, ONE]])
def test_json_carries_one_document(documents):
    with pytest.raises(ValueError, match="values to unpack"):
        JSON.write(documents)


def test_damage_is_told_with_its_line_or_read():
    data = JSON_LINES.write([ONE, ONE, ONE]).data
    for seed in range(300):
        rng, found = random.Random(seed), bytearray(data)
        found[rng.randrange(len(found))] = rng.randrange(256)
        carried = JSON_LINES.read(bytes(found))
        assert len(carried) in (2, 3, 4)
        for place, one in enumerate(carried, 1):
            assert (one.document is None) == bool(one.findings)
            assert {finding.line for finding in one.findings} <= {place}
