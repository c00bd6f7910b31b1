"""The area ``canonical``: one content spelt in many ways, contents that are not the same, texts that have none."""

import json

from tests.spec.conformance.canonical_bytes import digest
from tests.spec.conformance.laying import Area, Row, expecting, finding
from tests.validator.wellposed.exchange.arrivals import DOCUMENT
from tests.validator.wellposed.exchange.test_tampering import CHANGES, SPELLINGS

PAGE = "signatures.md#what-is-signed"
SMALL = {"format": "wellposed/prescription", "id": "HR-1"}


def holding(content):
    """A small text with this content, as it is written out; canonical form is about content, sound or not."""
    return f'{{"format":"wellposed/prescription","id":"HR-1","x":{content}}}'


# what is so, how it is written, what it stands for
CONTENT = (
    ("Names stand in the order of UTF-16", '{"\ufb33":1,"\U0001f600":2,"b":3}', {"\ufb33": 1, "\U0001f600": 2, "b": 3}),
    ("Capital letters come before small ones", '{"a":1,"B":2}', {"a": 1, "B": 2}),
    ("Letters are not composed", '"\u0065\u0301"', "e\u0301"),
    ("Letters are not taken apart", '"\u00e9"', "\u00e9"),
    ("Control characters are escaped in their short or long form", r'"\u000a\u000f\u0008"', "\n\x0f\b"),
    ("Delete is not escaped", r'"\u007f"', "\x7f"),
    ("A slash is not escaped", r'"a\/b"', "a/b"),
    ("Letters outside ASCII are not escaped", r'"\u20ac\ud83d\ude00"', "\u20ac\U0001f600"),
    ("A number is written without its noughts", "[1.50,2.00,0.10]", [1.5, 2, 0.1]),
    ("The negative nought is written as nought", "[-0,-0.0]", [0, 0]),
    ("The largest whole number keeps its digits", "9007199254740991", 9007199254740991),
    ("Lists keep their order", "[2,1,null,true,false]", [2, 1, None, True, False]),
    ("An empty object and an empty list stay", '{"a":{},"b":[]}', {"a": {}, "b": []}),
)
TEXT = json.dumps(SMALL)
# what is so, the bytes, the finding
NONE = (
    ("A name twice", b'{"id":"HR-1","id":"HR-1"}', finding("duplicate-member", pointer="/id", line=1, column=14)),
    ("A number that is none", holding("NaN").encode(), finding("number-not-finite", pointer="/x")),
    ("A number with three decimals", holding("1.125").encode(), finding("number-form", pointer="/x")),
    ("A number with an exponent", holding("1e2").encode(), finding("number-form", pointer="/x")),
    (
        "A number beyond those kept exactly",
        holding("9007199254740993").encode(),
        finding("number-too-large", pointer="/x"),
    ),
    ("Half a character", holding(r'"\ud800"').encode(), finding("lone-surrogate", pointer="/x")),
    ("A byte order mark", b"\xef\xbb\xbf" + TEXT.encode(), finding("byte-order-mark", line=1, column=1)),
    ("A list", b"[]", finding("not-an-object", pointer="")),
    ("Nothing at all", b"", finding("document-empty", pointer="")),
)


def rows():
    for sentence, data in SPELLINGS.items():
        yield Row(f"The same canonical bytes: {sentence}", PAGE, data, expecting("accept", digest=digest(DOCUMENT)))
    for sentence, data in CHANGES.items():
        other = digest(json.loads(data))
        yield Row(f"Other canonical bytes: {sentence}", PAGE, data, expecting("accept", digest=other))
    for sentence, content, value in CONTENT:
        same = expecting("accept", digest=digest({**SMALL, "x": value}))
        yield Row(sentence, PAGE, holding(content).encode(), same)
    for sentence, data, one in NONE:
        yield Row(f"Without canonical form: {sentence.lower()}", PAGE, data, expecting("unreadable", one))


AREA = Area("canonical", "canonical", "application/json", "input.json", tuple(rows()))
