"""Pointers are those of RFC 6901."""

import pytest

from wellposed.reading import read_document
from wellposed.reading.pointer import pointer, steps, within

SECTION_5 = b"""{
      "foo": ["bar", "baz"],
      "": 0,
      "a/b": 1,
      "c%d": 2,
      "e^f": 3,
      "g|h": 4,
      "i\\\\j": 5,
      "k\\"l": 6,
      " ": 7,
      "m~n": 8
   }"""

# RFC 6901 section 5: every pointer of its example, the steps it means, and the text of the value.
EXAMPLES = {
    "one member": ("/foo", ("foo",), '["bar", "baz"]'),
    "one entry": ("/foo/0", ("foo", 0), '"bar"'),
    "the empty name": ("/", ("",), "0"),
    "a slash": ("/a~1b", ("a/b",), "1"),
    "a percent sign": ("/c%d", ("c%d",), "2"),
    "a caret": ("/e^f", ("e^f",), "3"),
    "a bar": ("/g|h", ("g|h",), "4"),
    "a backslash": ("/i\\j", ("i\\j",), "5"),
    "a quotation mark": ('/k"l', ('k"l',), "6"),
    "a space": ("/ ", (" ",), "7"),
    "a tilde": ("/m~0n", ("m~n",), "8"),
}


@pytest.mark.parametrize("written,path,source", EXAMPLES.values(), ids=EXAMPLES)
def test_section_5(written, path, source):
    assert pointer(path) == written
    assert steps(written) == tuple(map(str, path))
    assert read_document(SECTION_5).positions.source(written) == source


def test_section_5_the_whole_document():
    assert (pointer(()), steps("")) == ("", ())
    assert read_document(SECTION_5).positions.source("") == SECTION_5.decode()


def test_every_pointer_of_a_document_comes_in_the_order_of_its_text():
    expected = [
        "",
        "/foo",
        "/foo/0",
        "/foo/1",
        "/",
        "/a~1b",
        "/c%d",
        "/e^f",
        "/g|h",
        "/i\\j",
        '/k"l',
        "/ ",
        "/m~0n",
    ]
    assert list(read_document(SECTION_5).positions) == expected


# RFC 6901 section 4: ~1 first, so that ~01 becomes ~1 and not a slash.
ESCAPED = {"~1": "/~01", "~0": "/~00", "~": "/~0", "/": "/~1", "~/": "/~0~1", "//": "/~1~1"}


@pytest.mark.parametrize("name,written", ESCAPED.items(), ids=ESCAPED)
def test_escapes_go_both_ways(name, written):
    assert (pointer((name,)), steps(written)) == (written, (name,))


WITHIN = {
    "the place itself": ("/a", True),
    "a place below": ("/a/0", True),
    "a longer name": ("/ab", False),
    "a place above": ("", False),
}


@pytest.mark.parametrize("place,expected", WITHIN.values(), ids=WITHIN)
def test_within(place, expected):
    assert within(place, ("/b", "/a")) is expected
