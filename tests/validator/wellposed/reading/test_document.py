"""The one way in: each rule of the text alone, then many at once, with line, column and pointer."""

import pytest

from wellposed.findings import Finding, Severity
from wellposed.reading import Document, read_document

FORM = "a number without exponent, with at most 2 decimals and 20 characters"
RANGE = "a number from -9007199254740991 to 9007199254740991"
ONCE = "each member name once in an object"
DEEP = "at most 64 levels of objects and lists"
PAIR = "both halves of a surrogate pair"
MEANT = "characters meant for interchange"
UTF_8 = "UTF-8 without a byte order mark"
MANY = "at most 1000 faults; what follows was not read"


def stop(rule, pointer, line, column, **facts):
    return Finding(rule, Severity.STOP, pointer, facts, line=line, column=column)


def form(pointer, line, column, found):
    return stop("number-form", pointer, line, column, expected=FORM, found=found)


def broken(pointer, line, column, expected, found):
    return stop("not-json", pointer, line, column, expected=expected, found=found)


ONE_FAULT = {
    "no byte at all": (b"", stop("document-empty", "", 1, 1, expected="a JSON object")),
    "nothing but white space": (b" \n\t\r\n ", stop("document-empty", "", 3, 2, expected="a JSON object")),
    "a byte order mark": (b'\xef\xbb\xbf{"a":1}', stop("byte-order-mark", "", 1, 1, expected=UTF_8)),
    "UTF-16": (
        '{"a":1}'.encode("utf-16"),
        stop("not-utf-8", "", 1, 1, expected=UTF_8, byte=0, found="a mark of UTF-16 or UTF-32"),
    ),
    "a byte that is not UTF-8, behind two that are one character": (
        b'{\n "\xc3\xa9": "\xff"}',
        stop("not-utf-8", "", 2, 8, expected=UTF_8, byte=10, found="a byte out of place"),
    ),
    "a surrogate written in raw bytes": (
        b'{"a":"\xed\xa0\x80"}',
        stop("not-utf-8", "", 1, 7, expected=UTF_8, byte=6, found="a byte out of place"),
    ),
    "one level too many": (
        b'{"a":' + b"[" * 63 + b"{}" + b"]" * 63 + b"}",
        stop("nesting-too-deep", "/a" + "/0" * 63, 1, 69, expected=DEEP),
    ),
    "a hundred thousand lists": (
        b"[" * 100_000,
        stop("nesting-too-deep", "/0" * 64, 1, 65, expected=DEEP),
    ),
    "a name twice": (
        b'{"a":1,\n "a":2}',
        stop("duplicate-member", "/a", 2, 2, expected=ONCE, name="a", first_line=1, first_column=2),
    ),
    "a name twice, once escaped": (
        b'{"b":{"a":1, "\\u0061":1}}',
        stop("duplicate-member", "/b/a", 1, 14, expected=ONCE, name="a", first_line=1, first_column=7),
    ),
    "a name twice, hidden behind escaped quotation marks": (
        b'{"a":1,"a":"\\u0022\\u0022"}',
        stop("duplicate-member", "/a", 1, 8, expected=ONCE, name="a", first_line=1, first_column=2),
    ),
    "not a number": (
        b'{"a":[0,NaN]}',
        stop("number-not-finite", "/a/1", 1, 9, expected="a finite number", found="NaN"),
    ),
    "minus infinity": (
        b'{"a":-Infinity}',
        stop("number-not-finite", "/a", 1, 6, expected="a finite number", found="-Infinity"),
    ),
    "a number beyond every double": (
        b'{"a":1e400}',
        stop("number-not-finite", "/a", 1, 6, expected="a finite number"),
    ),
    "an exponent": (b'{"a":1E2}', form("/a", 1, 6, "an exponent")),
    "three decimals": (b'{"a":[-0.250]}', form("/a/0", 1, 7, "3 decimals")),
    "twenty-one characters": (b'{"a":100000000000000000000}', form("/a", 1, 6, "21 characters")),
    "five thousand digits": (b'{"a":' + b"9" * 5000 + b"}", form("/a", 1, 6, "5000 characters")),
    "a whole number beyond 2^53 - 1": (
        b'{"a":9007199254740992}',
        stop("number-too-large", "/a", 1, 6, expected=RANGE),
    ),
    "a quarter past -(2^53 - 1), which no double tells apart": (
        b'{"a":-9007199254740991.25}',
        stop("number-too-large", "/a", 1, 6, expected=RANGE),
    ),
    "the first half of a pair alone": (
        b'{"a":"x\\ud83d"}',
        stop("lone-surrogate", "/a", 1, 8, expected=PAIR, found="U+D83D alone"),
    ),
    "the second half of a pair alone": (
        b'{"a":"\\uDE00\\ud83d\\ude00"}',
        stop("lone-surrogate", "/a", 1, 7, expected=PAIR, found="U+DE00 alone"),
    ),
    "half a pair in a name": (
        b'{"b":{"\\ud83d":1}}',
        stop("lone-surrogate", "/b", 1, 8, expected=PAIR, found="U+D83D alone"),
    ),
    "an escaped noncharacter": (
        b'{"a":"\\uffff"}',
        stop("noncharacter", "/a", 1, 7, expected=MEANT, found="U+FFFF"),
    ),
    "a raw noncharacter": (
        '{"é":"é\ufdd0"}'.encode(),
        stop("noncharacter", "/é", 1, 8, expected=MEANT, found="U+FDD0"),
    ),
    "a noncharacter of the last plane, escaped as a pair": (
        b'{"a":"\\udbff\\udfff"}',
        stop("noncharacter", "/a", 1, 7, expected=MEANT, found="U+10FFFF"),
    ),
    "a list on top": (b" [1]", stop("not-an-object", "", 1, 2, expected="an object", found="a list")),
    "a string on top": (b'"a"', stop("not-an-object", "", 1, 1, expected="an object", found="a string")),
    "null on top": (b"null", stop("not-an-object", "", 1, 1, expected="an object", found="null")),
    "a word without quotation marks": (
        b'{"a":{"b":Jane}}',
        broken("/a/b", 1, 11, "a value", "a word without quotation marks"),
    ),
    "single quotation marks": (
        b"{'a':1}",
        broken("", 1, 2, "a member name in quotation marks", "a quotation mark of another kind"),
    ),
    "a comment": (b'{"a":1 // one\n}', broken("", 1, 8, "a comma or }", "a comment")),
    "a comma too many in a list": (b'{"a":[1,]}', broken("/a/1", 1, 9, "a value", "]")),
    "a comma too many in an object": (b'{"a":1,}', broken("", 1, 8, "a member name in quotation marks", "}")),
    "no colon": (b'{"a" 1}', broken("", 1, 6, "a colon behind the member name", "a number")),
    "a second document": (b'{"a":1} {"a":1}', broken("", 1, 9, "the end of the document", "an object")),
    "a leading zero": (b'{"a":01}', broken("", 1, 7, "a comma or }", "a number")),
    "white space JSON does not have": (
        '{"a":\u00a01}'.encode(),
        broken("/a", 1, 6, "a value", "the character U+00A0"),
    ),
    "a line break in a string": (
        b'{"a":"b\r\nc"}',
        broken("/a", 1, 8, "a closing quotation mark", "a line break inside a string"),
    ),
    "a tab in a name": (
        b'{"a\t":1}',
        broken("", 1, 4, "a closing quotation mark", "the character U+0009"),
    ),
    "an escape JSON does not have": (
        b'{"a":"\\x41"}',
        broken("/a", 1, 7, "a closing quotation mark", "an escape that JSON does not have"),
    ),
    "the end inside a string": (
        b'{"a":\r["b',
        broken("/a/0", 2, 4, "a closing quotation mark", "the end of the document"),
    ),
}


@pytest.mark.parametrize("data,finding", ONE_FAULT.values(), ids=ONE_FAULT)
def test_one_fault_is_one_finding(data, finding):
    assert read_document(data) == (finding,)


MANY_FAULTS = """\ufeff{
 "a/b": [1e5, 0.125, "\\ud800", "\ufffe"],
 "a/b": {"~": NaN},
 "n": 12345678901234567, "n": "\\udead\\udead",
 "v": [tru]
}"""

FOUND = (
    stop("byte-order-mark", "", 1, 1, expected=UTF_8),
    stop("duplicate-member", "/a~1b", 3, 2, expected=ONCE, name="a/b", first_line=2, first_column=2),
    stop("number-not-finite", "/a~1b/~0", 3, 15, expected="a finite number", found="NaN"),
    form("/a~1b/0", 2, 10, "an exponent"),
    form("/a~1b/1", 2, 15, "3 decimals"),
    stop("lone-surrogate", "/a~1b/2", 2, 23, expected=PAIR, found="U+D800 alone"),
    stop("noncharacter", "/a~1b/3", 2, 33, expected=MEANT, found="U+FFFE"),
    stop("duplicate-member", "/n", 4, 26, expected=ONCE, name="n", first_line=4, first_column=2),
    stop("lone-surrogate", "/n", 4, 32, expected=PAIR, found="U+DEAD alone"),
    stop("lone-surrogate", "/n", 4, 38, expected=PAIR, found="U+DEAD alone"),
    stop("number-too-large", "/n", 4, 7, expected=RANGE),
    broken("/v/0", 5, 8, "a value", "a word without quotation marks"),
)


def test_every_fault_up_to_the_end_of_the_syntax_is_found_in_one_run():
    assert read_document(MANY_FAULTS.encode()) == FOUND


def test_every_further_occurrence_of_a_name_is_told_with_the_first():
    found = read_document(b'{"a":1,"a":2,"a":3}')
    assert [(one.column, one.facts["first_column"]) for one in found] == [(8, 2), (14, 2)]


def test_a_document_of_the_largest_size_is_read_and_one_byte_more_is_not():
    largest = b'{"a":"' + b"x" * 1_999_992 + b'"}'
    too_large = Finding("document-too-large", Severity.STOP, "", {"expected": "at most 2000000 bytes"})
    assert len(largest) == 2_000_000
    assert (type(read_document(largest)), read_document(largest + b" ")) == (Document, (too_large,))


def test_reading_ends_after_a_thousand_faults_and_says_so():
    *told, last = sorted(read_document(b'{"a":[' + b"1e1," * 5000), key=lambda one: one.column)
    assert [one.rule for one in told] == ["number-form"] * 1000
    assert last == stop("too-many-faults", "", 1, 4006, expected=MANY)


def test_a_name_that_cannot_be_written_is_replaced_in_the_pointer_only():
    found = read_document(b'{"\\ud800":{"b":1e1}}')
    assert [one.pointer for one in found] == ["", "/\ufffd/b"]


def test_an_overlong_name_ends_the_pointer_at_the_parent_and_is_not_repeated():
    name = b'"' + b"n" * 3000 + b'"'
    found = read_document(b'{"a":{' + name + b":1e1," + name + b":2}}")
    assert [(one.rule, one.pointer, "name" in one.facts) for one in found] == [
        ("duplicate-member", "/a", False),
        ("number-form", "/a", False),
    ]


PATIENT = b'{"patient": {"name": "Jane Doe", "born": 1970.123, "born": "Jane Doe", "x": "Jane Doe'


def test_no_value_is_told():
    assert [one for one in read_document(PATIENT) if "Jane" in repr(one) or "1970" in repr(one)] == []


TEXT = b'{"a": {\r\n  "b/c": [10, "\xc3\xa9", {"~": null}],\r "d": 1.5}}'

PLACES = {
    "the whole document": ("", (1, 1)),
    "an object": ("/a", (1, 7)),
    "a list, behind CR LF, with an escaped name": ("/a/b~1c", (2, 10)),
    "an entry": ("/a/b~1c/1", (2, 15)),
    "an entry behind a character of two bytes": ("/a/b~1c/2", (2, 20)),
    "a member called ~": ("/a/b~1c/2/~0", (2, 26)),
    "a value behind a lone CR": ("/a/d", (3, 7)),
    "a missing member: its parent": ("/a/b~1c/2/missing", (2, 20)),
    "an index past the end: the list": ("/a/b~1c/3/x", (2, 10)),
    "an index with a leading zero: the list": ("/a/b~1c/01", (2, 10)),
    "an index of a million digits: the list": ("/a/b~1c/" + "1" * 1_000_000, (2, 10)),
    "a step into a number: the number": ("/a/d/0", (3, 7)),
}


@pytest.mark.parametrize("pointer,place", PLACES.values(), ids=PLACES)
def test_a_pointer_has_a_place(pointer, place):
    assert read_document(TEXT).place(pointer) == place


PLACED = {
    "a value": (Finding("out-of-range", Severity.STOP, "/a/d"), (3, 7)),
    "an unknown member stands at its name": (Finding("unknown-member", Severity.STOP, "/a/d"), (3, 2)),
    "a name of a mapping too": (Finding("not-one-of", Severity.STOP, "/a/d", {"about": "name"}), (3, 2)),
    "a place already known stays": (Finding("any", Severity.NOTE, "/a/d", line=7, column=8), (7, 8)),
}


@pytest.mark.parametrize("finding,place", PLACED.values(), ids=PLACED)
def test_findings_are_placed(finding, place):
    assert read_document(TEXT).placed([finding]) == (finding.at(*place),)


def test_a_document_does_not_show_its_content_when_it_is_logged():
    assert repr(read_document(TEXT)) == "Document()"
