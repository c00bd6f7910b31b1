"""Every question a reader can ask has words, and the words need nothing that the question does not have."""

import ast
import tomllib
from importlib import resources
from pathlib import Path

import pytest

from wellposed_converters.text import completeness, wording
from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.wording import asked_names, option_words, options_of, tooth_words

PACKAGE = Path(wording.__file__).parent
DATA = tomllib.loads((PACKAGE / "questions.toml").read_text("utf-8"))
TYPED = {"Question": 1, "Lack": 1, "ask": 0, "_asks": 2, "_vague": 1, "not_understood": 1, "asked": 0}
"""Calls that make a question, and which of their arguments is its name."""


def _named(call):
    function = call.func.attr if isinstance(call.func, ast.Attribute) else getattr(call.func, "id", None)
    place = TYPED.get(function)
    return call.args[place] if place is not None and len(call.args) > place else None


def _constants(node):
    constants = (one.value for one in ast.walk(node) if isinstance(one, ast.Constant))
    return {value for value in constants if isinstance(value, str) and value}


def _in_code():
    found = set()
    for path in (
        one for one in PACKAGE.rglob("*.py") if not {"draft", "readback"} & set(one.parts)
    ):  # those have words of their own
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            name = _named(node) if isinstance(node, ast.Call) else None
            found |= _constants(name) if name is not None and not isinstance(name, ast.JoinedStr) else set()
    return found


def _in_data():
    lexicon = {path.stem: tomllib.loads(path.read_text("utf-8")) for path in (PACKAGE / "lexicon").glob("*.toml")}
    groups = tomllib.loads((PACKAGE / "places" / "groups.toml").read_text("utf-8"))
    heads = {facts["of"][1:] for facts in lexicon["heads"].values() if str(facts.get("of", "")).startswith("?")}
    slots = {name[1:] for readings in lexicon["slots"].values() for name in readings if name.startswith("?")}
    return {*lexicon["asked"], *heads, *slots, *(facts["asks"] for facts in groups.values() if "asks" in facts)}


def test_every_name_of_a_question_in_code_or_data_has_words():
    names = _in_code() | _in_data()
    assert {"same-side", "how-much", "now-or-wanted", "front-teeth", "ext", "words-against-number"} <= names
    assert names - asked_names() == set()


def test_choices_have_words():
    assert {name for entry in DATA["ask"].values() for name in entry.get("options", ())} == set(DATA["option"])


@pytest.mark.parametrize("name", sorted(DATA["ask"]))
def test_a_sentence_ends_and_is_british(name):
    text = DATA["ask"][name]["text"]
    assert text.endswith(("?", ".")), name
    assert not any(word in text.lower() for word in ("color", "millimeter", "center", "aligning teeth to"))


def test_a_name_without_words_is_an_error():
    with pytest.raises(KeyError):
        wording.wording(Question("vague", "no-such-question", ((0, 1),)), [], "x")
    with pytest.raises(KeyError):
        options_of("no-such-question")


def test_teeth_are_given_in_numbers_and_words():
    assert tooth_words((13, 75)) == "13, upper right canine; 75, lower left second primary molar"


def test_the_sentence_quotes_the_note_and_names_the_teeth():
    text = "36 must not move.\nDistalise\nlower molars 1 mm."
    clauses = [
        Clause("movement", "forbid", ((0, 16),), teeth=(36,)),
        Clause("move", "do", ((18, len(text) - 1),), teeth=(47, 46, 36, 37), dir="distal"),
    ]
    facts = (("level", "stop"), ("teeth", "36"))
    question = Question("contradiction", "locked-and-moved", ((0, 16),), ("stays", "moves"), (0, 1), facts)
    assert wording.wording(question, clauses, text) == (
        "“36 must not move” and “Distalise lower molars 1 mm”: "
        "is this tooth to stay or to move: 36, lower left first molar?"
    )
    assert option_words(question, clauses, text) == ("it stays", "it moves")


def test_a_choice_without_a_name_stands_for_itself():
    question = Question("meaning", "ext", ((0, 3),), ("extract", "extrude"))
    assert option_words(question, [], "ext") == ("extract", "extrude")


def test_data_files_are_part_of_the_package():
    package = completeness.__package__
    assert all(resources.files(package).joinpath(name).is_file() for name in ("questions.toml", "plausible.toml"))
