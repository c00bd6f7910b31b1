"""What RFC 8259 and RFC 7493 admit, and what they do not, string by string."""

import pytest

from wellposed.reading import Document, read_document
from wellposed.reading.gate import fast
from wellposed.reading.scan import scan

# Wrapped as the value of one member: {"v": ...}. RFC 8259 by section; §7493 is RFC 7493.
ADMITTED = {
    "§3 the three words": (b"[true, false, null]", [True, False, None]),
    "§4 an empty object": (b"{}", {}),
    "§4 an empty name": (b'{"":0}', {"": 0}),
    "§4 names that differ in case": (b'{"a":0,"A":1}', {"a": 0, "A": 1}),
    "§4 one name at two levels": (b'{"a":{"a":0}}', {"a": {"a": 0}}),
    "§5 an empty list": (b"[]", []),
    "§5 values of different kinds": (b'[1,"1",null,[1],{}]', [1, "1", None, [1], {}]),
    "§2 every white space": (b" [\t1\n,\r2 ] ", [1, 2]),
    "§6 zero": (b"0", 0),
    "§6 minus zero": (b"-0.0", -0.0),
    "§6 a negative number": (b"-12", -12),
    "§6 two decimals": (b"-0.25", -0.25),
    "§6 a trailing zero": (b"2.50", 2.5),
    "RFC 7493 §2.2 the largest whole number": (b"9007199254740991", 9007199254740991),
    "RFC 7493 §2.2 the smallest whole number": (b"-9007199254740991", -9007199254740991),
    "§7 every short escape": (rb'"\"\\\/\b\f\n\r\t"', '"\\/\b\f\n\r\t'),
    "§7 an escape in either case": (rb'"\u00e9\u00E9"', "éé"),
    "§7 a surrogate pair": (rb'"\ud83d\uDE00"', "😀"),
    "§7 an escaped backslash before a u": (rb'"\\ud83d"', "\\ud83d"),
    "§7 an escaped quotation mark at the end": (rb'"a\""', 'a"'),
    "§7 NUL, escaped": (rb'"\u0000"', "\0"),
    "§7 DEL, raw": (b'"\x7f"', "\x7f"),
    "§7 line separators, raw": ('"\u2028\u2029"'.encode(), "\u2028\u2029"),
    "§7 a comment inside a string": (b'"// /* # */"', "// /* # */"),
    "§7 a number of another form inside a string": (b'"1e5, 1.234"', "1e5, 1.234"),
    "§7 brackets inside a string": (b'"[[[{{{"', "[[[{{{"),
    "§8.1 a byte order mark inside a string": ('"\ufeff"'.encode(), "\ufeff"),
    "§8.1 two, three and four bytes": ('"é€😀"'.encode(), "é€😀"),
    "RFC 7493 §2.1 the replacement character": ('"\ufffd"'.encode(), "\ufffd"),
    "RFC 7493 §2.1 the last character before the noncharacters": (rb'"\udbff\udffd"', "\U0010fffd"),
    "RFC 7493 §2.1 private use": (b'"\xee\x80\x80"', "\ue000"),
}


@pytest.mark.parametrize("text,value", ADMITTED.values(), ids=ADMITTED)
def test_admitted(text, value):
    data = b'{"v":' + text + b"}"
    assert repr(read_document(data).value) == repr({"v": value})
    assert repr(scan(data.decode()).value) == repr({"v": value})


REFUSED = {
    "§2 form feed between tokens": (b"[1,\x0c2]", "not-json"),
    "§2 vertical tab between tokens": (b"[\x0b1]", "not-json"),
    "§2 NUL between tokens": (b"[\x001]", "not-json"),
    "§2 a byte order mark between tokens": ("\ufeff1".encode(), "not-json"),
    "§3 a word of another language": (b"None", "not-json"),
    "§3 a word in capitals": (b"True", "not-json"),
    "§3 a word cut short": (b"nul", "not-json"),
    "§3 a word too long": (b"nulll", "not-json"),
    "§4 a name without quotation marks": (b"{a:1}", "not-json"),
    "§4 a number as a name": (b"{1:1}", "not-json"),
    "§4 no colon": (b'{"a",1}', "not-json"),
    "§4 two colons": (b'{"a"::1}', "not-json"),
    "§4 no value": (b'{"a":}', "not-json"),
    "§4 a comma too many": (b'{"a":1,}', "not-json"),
    "§4 a comma first": (b'{,"a":1}', "not-json"),
    "§4 two commas": (b'{"a":1,,"b":1}', "not-json"),
    "§4 no comma": (b'{"a":1 "b":1}', "not-json"),
    "§4 closed as a list": (b'{"a":1]', "not-json"),
    "§4 a name twice": (b'{"a":1,"a":1}', "duplicate-member"),
    "§5 a comma too many": (b"[1,]", "not-json"),
    "§5 a comma first": (b"[,1]", "not-json"),
    "§5 no comma": (b"[1 2]", "not-json"),
    "§5 closed as an object": (b"[1}", "not-json"),
    "§5 closed twice": (b"[1]]", "not-json"),
    "§5 not closed": (b"[1", "not-json"),
    "§6 a plus sign": (b"+1", "not-json"),
    "§6 a minus sign alone": (b"-", "not-json"),
    "§6 two minus signs": (b"--1", "not-json"),
    "§6 a leading zero": (b"012", "not-json"),
    "§6 a leading zero behind the sign": (b"-012", "not-json"),
    "§6 no digit before the point": (b".5", "not-json"),
    "§6 no digit behind the point": (b"1.", "not-json"),
    "§6 two points": (b"1.2.3", "not-json"),
    "§6 no digit in the exponent": (b"1e", "not-json"),
    "§6 hexadecimal": (b"0x1F", "not-json"),
    "§6 a group mark": (b"1_000", "not-json"),
    "§6 a decimal comma": (b"[1,5 6]", "not-json"),
    "§6 Arabic digits": ("١".encode(), "not-json"),
    "§6 full-width digits": ("１".encode(), "not-json"),
    "§6 a minus sign of another kind": ("\u22121".encode(), "not-json"),
    "§6 not a number": (b"NaN", "number-not-finite"),
    "§6 minus not a number": (b"-NaN", "number-not-finite"),
    "§6 infinity": (b"Infinity", "number-not-finite"),
    "§6 infinity, short": (b"inf", "not-json"),
    "§6 an exponent of nothing": (b"1e0", "number-form"),
    "§6 an exponent with a sign": (b"1.5E+1", "number-form"),
    "§6 too small for a double": (b"1e-999", "number-form"),
    "§6 three decimals, all zero": (b"1.000", "number-form"),
    "RFC 7493 §2.2 a whole number too large": (b"9007199254740992", "number-too-large"),
    "RFC 7493 §2.2 and too small": (b"-9007199254740992", "number-too-large"),
    "§7 not closed": (b'"a', "not-json"),
    "§7 single quotation marks": (b"'a'", "not-json"),
    "§7 a line break": (b'"a\nb"', "not-json"),
    "§7 a tab": (b'"a\tb"', "not-json"),
    "§7 NUL": (b'"a\x00b"', "not-json"),
    "§7 an escape of another language": (rb'"\x41"', "not-json"),
    "§7 an escaped single quotation mark": (rb'"\'"', "not-json"),
    "§7 an escape in a capital": (rb'"\U00e9"', "not-json"),
    "§7 three digits": (rb'"\u00e"', "not-json"),
    "§7 a digit that is none": (rb'"\u00eg"', "not-json"),
    "§7 a backslash last": (b'"\\', "not-json"),
    "§7 a comment": (b"1 /* one */", "not-json"),
    "§8.1 an overlong byte pair": (b'"\xc0\xaf"', "not-utf-8"),
    "§8.1 a byte missing": (b'"\xe2\x82"', "not-utf-8"),
    "§8.1 beyond U+10FFFF": (b'"\xf4\x90\x80\x80"', "not-utf-8"),
    "§8.1 Latin-1": ('"é"'.encode("latin-1"), "not-utf-8"),
    "§8.2 a first half alone": (rb'"\ud800"', "lone-surrogate"),
    "§8.2 a first half before another character": (rb'"\ud800a"', "lone-surrogate"),
    "§8.2 halves in the wrong order, the second found first": (rb'"\udc00\ud800\udc00"', "lone-surrogate"),
    "RFC 7493 §2.1 U+FDD0": (rb'"\ufdd0"', "noncharacter"),
    "RFC 7493 §2.1 U+FDEF, raw": (b'"\xef\xb7\xaf"', "noncharacter"),
    "RFC 7493 §2.1 U+FFFE, raw": (b'"\xef\xbf\xbe"', "noncharacter"),
    "RFC 7493 §2.1 U+1FFFF, raw": (b'"\xf0\x9f\xbf\xbf"', "noncharacter"),
    "RFC 7493 §2.1 U+10FFFE, in a name": (rb'{"\udbff\udffe":1}', "noncharacter"),
}


@pytest.mark.parametrize("text,rule", REFUSED.values(), ids=REFUSED)
def test_refused(text, rule):
    assert [finding.rule for finding in read_document(b'{"v":' + text + b"}")] == [rule]


DEEPEST = b'{"v":' + b"[" * 63 + b"]" * 63 + b"}"


def test_the_deepest_document_is_read():
    assert isinstance(read_document(DEEPEST), Document)
    assert scan(DEEPEST.decode()).faults == ()


TAKEN_FAST = {
    "a document with many brackets": b'{"v":[' + b",".join([b'{"a":[1,2.5]}'] * 99) + b"]}",
    "accents": '{"v":"é€"}'.encode(),
    "escapes": rb'{"v":"\"\n\\\u00e9"}',
    "a digest, which looks like a number with an exponent": b'{"v":"' + b"0e12345678901234567890.123" * 2 + b'"}',
}


@pytest.mark.parametrize("data", TAKEN_FAST.values(), ids=TAKEN_FAST)
def test_ordinary_documents_need_no_scan(data):
    assert fast(data) == (scan(data.decode()).value, True)
