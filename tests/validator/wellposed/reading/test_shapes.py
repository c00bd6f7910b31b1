"""What a model knows at a place, and which known name a misspelt one means."""

from typing import Annotated, Literal

import pytest
from pydantic import BaseModel, Field, JsonValue

from wellposed.reading import known_members
from wellposed.reading.nearest import nearest


class Leaf(BaseModel):
    kind: Literal["leaf"]
    green: bool


class Branch(BaseModel):
    kind: Literal["branch"]
    holds: tuple["Twig", ...]


class Root(BaseModel):
    deep: Annotated[int, Field(alias="how-deep")]


Twig = Annotated[Leaf | Branch, Field(discriminator="kind")]


class Tree(BaseModel):
    crown: list[Twig] | None = None
    roots: dict[str, Root] = {}
    either: Leaf | Root | int = 1
    pair: tuple[int, Root] | None = None
    free: JsonValue = None


TREE = {
    "crown": [
        {"kind": "leaf"},
        {"kind": "branch", "holds": [{"kind": "branch", "holds": [{"kind": "leaf"}]}]},
        {},
    ],
    "roots": {"main": {}},
    "either": {},
    "pair": [1, {}],
    "free": {"a": {"b": 1}},
}

KNOWN = {
    "the whole document": ("", ("crown", "either", "free", "pair", "roots")),
    "the form its tag tells": ("/crown/0", ("green", "kind")),
    "another form": ("/crown/1", ("holds", "kind")),
    "a form inside itself": ("/crown/1/holds/0", ("holds", "kind")),
    "and once more": ("/crown/1/holds/0/holds/0", ("green", "kind")),
    "every form where no tag tells": ("/crown/2", ("green", "holds", "kind")),
    "a value of a mapping, with its outer name": ("/roots/main", ("how-deep",)),
    "every form of a union without tags": ("/either", ("green", "how-deep", "kind")),
    "an entry of a tuple": ("/pair/1", ("how-deep",)),
    "a list has no members": ("/crown", ()),
    "a place no model knows": ("/elsewhere/0", ()),
    "a place that is free": ("/free/a", ()),
}


@pytest.mark.parametrize("pointer,names", KNOWN.values(), ids=KNOWN)
def test_known_members(pointer, names):
    assert known_members(Tree, TREE, pointer) == names


MOTIONS = ("intrusion", "extrusion", "mesial", "distal", "labial", "lingual", "buccal", "palatal")
TURNS = ("mesial-crown-tip", "distal-crown-tip", "mesiolingual-rotation", "distolingual-rotation")
MEASURES = ("overbite", "overjet", "upper-crowding", "lower-crowding", "upper-midline", "lower-midline")
MEMBERS = ("at_least", "at_most", "must", "must_not", "per_contact", "in_all", "id")

MEANT = {
    "a letter left out": ("intrsion", MOTIONS, "intrusion"),
    "two letters the wrong way round": ("extrusoin", MOTIONS, "extrusion"),
    "a letter too many, nearer to one of two opposites": ("inntrusion", MOTIONS, "intrusion"),
    "a hyphen for an underscore": ("at-least", MEMBERS, "at_least"),
    "capitals in the middle": ("atMost", MEMBERS, "at_most"),
    "capitals at the beginning": ("Per_Contact", MEMBERS, "per_contact"),
    "a space": ("upper crowding", MEASURES, "upper-crowding"),
    "nothing alike": ("colour", MEMBERS, None),
    "two as near as one another": ("abcdefgh", ("abcdefgx", "abcdefgy"), None),
    "nothing known": ("overbite", (), None),
    "a short word one letter off, which could be any": ("ie", MEMBERS, None),
    "a word longer than any name": ("overbite" * 10, MEASURES, None),
    "one letter left out of four": ("pai", ("pair", "id"), "pair"),
    "a tooth number one digit off, which could be any": ("19", ("11", "18"), None),
    "the empty name": ("", MEMBERS, None),
}


@pytest.mark.parametrize("name,known,expected", MEANT.values(), ids=MEANT)
def test_the_nearest_name(name, known, expected):
    assert nearest(name, known) == expected


WORDS = [(word, words) for words in (MOTIONS, TURNS, MEASURES, MEMBERS) for word in words]


@pytest.mark.parametrize("word,words", WORDS, ids=[f"{word} is meant" for word, _ in WORDS])
def test_a_word_spelt_right_is_never_taken_for_its_opposite(word, words):
    assert nearest(word, [other for other in words if other != word]) is None
