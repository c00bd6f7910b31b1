"""Whatever is wrong is told by the rule and the pointer of the JSON form, at its place in the XML."""

import json
from xml.parsers import expat

import pytest
from tests.converters.wellposed_converters.xml.documents import BASE, SAME, generated, model
from tests.converters.wellposed_converters.xml.malformed import MALFORMED

from wellposed.catalogue import rules
from wellposed.check import sound_document
from wellposed.render.wording import sentence
from wellposed_converters.xml.faults import RULES
from wellposed_converters.xml.order import misplaced
from wellposed_converters.xml.parsing import parsed
from wellposed_converters.xml.places import nodes, places
from wellposed_converters.xml.plan import plans
from wellposed_converters.xml.reading import read
from wellposed_converters.xml.writing import write

CATALOGUE = {rule.id for rule in rules()}


def told(data):
    """What is wrong, each as rule, pointer and place."""
    (carried,) = read(data)
    assert (carried.document is None) == bool(carried.findings)
    return tuple(map(line_of, carried.findings))


def line_of(one):
    """Rule, pointer and place; the column where the parser gives up may differ from one of its versions to another."""
    place = f"{one.line}" if one.rule == "not-xml" else f"{one.line}:{one.column}"
    return f"{one.rule} {one.pointer} {place}"


@pytest.mark.parametrize("old, new, expected", [(old, new, expected) for old, new, *expected in MALFORMED])
def test_malformed(old, new, expected):
    assert old in BASE
    assert told(BASE.replace(old, new).encode()) == tuple(expected)


def test_there_are_enough_of_them_and_every_rule_of_the_form_speaks():
    assert len({row[:2] for row in MALFORMED}) == len(MALFORMED) >= 100
    spoken = {line.partition(" ")[0] for _, _, *expected in MALFORMED for line in expected}
    assert set(RULES) - spoken == {"document-type"}  # see the hostile ones
    assert spoken - set(RULES) - CATALOGUE == set()
    assert set(RULES) & CATALOGUE == set()


def test_all_of_it_is_told_in_one_run():
    data = BASE.replace("<growth>", "<growth x='1'>").replace("mm<", "<!-- -->mm<").replace("ISO 3950", "ISO 3951")
    assert told(data.replace("<use>", "<reason/><use>").encode()) == (
        "unknown-member /allow/0/reason 69:7",
        "comment-or-instruction /allow/0/unit 74:13",
        "comment-or-instruction /findings/0/unit 44:13",
        "comment-or-instruction /findings/1/unit 53:13",
        "not-one-of /notation 13:3",
        "unknown-attribute /patient/growth 23:5",
    )


def test_a_comment_is_told_where_nothing_else_is_read():
    data = BASE.replace("<goals>", "<aims><a><!-- x --></a></aims><goals>").replace("12<", "<b><?x y?></b>12<")
    assert [one for one in told(data.encode()) if "comment" in one] == [
        "comment-or-instruction /aims 56:12",
        "comment-or-instruction /teeth/upper/0 27:16",
    ]


def test_the_second_of_two_members_names_the_first():
    data = BASE.replace("<id>g1</id>", "<id>g1</id><id>g2</id>")
    ((one,),) = [carried.findings for carried in read(data.encode())]
    assert (one.line, one.column, one.facts["first_line"], one.facts["first_column"]) == (58, 18, 58, 7)


ORDERS = (
    ("the order of the model", "id strength because align", []),
    ("one too late", "strength because align id", [("id", "before strength")]),
    ("one too early", "align id strength because", [("align", "behind all others")]),
    ("two that have changed places", "id because strength align", [("strength", "before because")]),
    ("one of another form, and one of none", "id unit shape strength align", []),
    (
        "all turned round",
        "align because strength id",
        [(name, "before align") for name in ("because", "strength", "id")],
    ),
)


@pytest.mark.parametrize("names, expected", [row[1:] for row in ORDERS], ids=[row[0] for row in ORDERS])
def test_the_fewest_members_are_out_of_place(names, expected):
    plan = plans()["prescription"].member("goals").inner
    assert list(misplaced(plan, dict.fromkeys(names.split()))) == expected


def test_places_are_those_of_another_parser():
    """expat tells line and column of each start tag as it reads; columns from 0, in code points."""
    data = BASE.replace("<notes>", "<!-- < 歯 <x> --><![CDATA[ <a> ]]><?p <b> ?>\r\n<notes>\r").replace("P-7", "😀")
    assert positions(data) == by_expat(data)
    for text in generated(2):
        written = write([model(json.loads(text))]).data.decode()
        assert not written or positions(written) == by_expat(written)


def positions(text):
    tree = parsed(text.encode())
    elements = [node for node in nodes(tree.root) if isinstance(node.tag, str)]
    return [place[1:] for place in places(tree, elements).values()]


def by_expat(text):
    found, reader = [], expat.ParserCreate()
    reader.StartElementHandler = lambda *_: found.append((reader.CurrentLineNumber, reader.CurrentColumnNumber + 1))
    reader.Parse(text.encode(), True)
    return found


SECRET = "Jane Doe 1970"
PRIVATE = (
    ("<reference>P-7F3A", f"<reference>{SECRET}"),
    ("<age_years>24", f"<age_years>{SECRET}"),
    ("<id>clinic-17/dr-2", f"<id>{SECRET}"),
    ("<text>Prefers mornings.", f"<text>{SECRET}<b/>"),
    ("<notes>", f"<notes>{SECRET}"),
    ("<notes>", f"<!-- {SECRET} --><notes>"),
    ("<growth>", f"<growth note='{SECRET}'>"),
    ("<critical>false", f"<critical>{SECRET}"),
    ("<string>x", f"<string>{SECRET}<null/>"),
    ("<number>1", f"<number>{SECRET}"),
    ("Prefers mornings.</text>", f"{SECRET}</txt>"),
    ("Prefers mornings.", f"{SECRET} &entity;"),
)


@pytest.mark.parametrize("old, new", PRIVATE)
def test_no_text_of_the_document_is_repeated(old, new):
    (carried,) = read(BASE.replace(old, new).encode())
    assert carried.findings
    assert not any(SECRET in repr(one) or SECRET in sentence(one) for one in carried.findings)


def test_json_says_the_same():
    """The rows of which JSON has the like: the same document with the same fault, and what the check says of it."""
    for change, rule, pointer in (
        ({"revision": 0}, "out-of-range", "/revision"),
        ({"notation": "ISO  3950"}, "not-one-of", "/notation"),
        ({"prescriber": {}}, "missing-member", "/prescriber/id"),
        ({"goals": [{"id": "g1", "strength": "must", "align": []}]}, "too-few", "/goals/0/align"),
        ({"format": "wellposed/order"}, "unknown-format", "/format"),
    ):
        (found,) = sound_document(json.dumps(SAME | change).encode()).findings
        assert (found.rule, found.pointer) == (rule, pointer)
        assert any(f"{rule} {pointer} " in line for _, _, *expected in MALFORMED for line in expected)
