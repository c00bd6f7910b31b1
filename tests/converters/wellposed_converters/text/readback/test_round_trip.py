"""A read-back, read again, says the same prescription; changed in one word, it says another or is asked about."""

import random
import re
from typing import Literal, get_args, get_origin

import pytest
from lark import Lark
from tests.converters.wellposed_converters.text.readback.corpus import UNSAID, corpus, named, plain, read, said, told
from tests.validator.wellposed.render.readback.test_sentences import inside

from wellposed.model import Prescription
from wellposed.model.base import Part
from wellposed.model.mouth import Record
from wellposed.model.people import Laboratory, Patient, Prescriber
from wellposed.render.readback import sentences
from wellposed.vocabulary.teeth import TEETH
from wellposed_converters.text.readback import is_read_back, read_back
from wellposed_converters.text.readback.grammar import grammar, parsed

NAMES = sorted(corpus())
WIDTHS = (100, 60, 200)
LEFT_OUT = {Laboratory, Patient, Prescriber, Record}
OFTEN = {"unit", "measure", "motion"}


@pytest.mark.parametrize("usage", ["british", "american"])
@pytest.mark.parametrize("name", NAMES)
def test_the_same_is_read_again(name, usage):
    text = told(name, usage, WIDTHS[len(name) % 3])
    assert is_read_back(text)
    assert read(text) == (said(corpus()[name]), ())


def test_what_is_left_out_is_what_the_read_back_says_it_leaves_out():
    """Persons, records and notes are not repeated, extensions are not read; the rest is the envelope."""
    members = set(Prescription.model_fields)
    assert members >= UNSAID
    read_again = {member for name in NAMES[::10] for member in read_back(told(name)).document}
    assert read_again == members - UNSAID


def test_the_corpus_is_large_and_says_everything():
    assert sum(name.startswith("any-") for name in NAMES) >= 200
    seen = {(type(part), member, stated) for rx in corpus().values() for part, member, stated in stated_members(rx)}
    lacking = [
        (part.__name__, member, stated)
        for part in set(inside(Prescription)) - {Prescription} - LEFT_OUT
        for member, field in part.model_fields.items()
        for stated in ((True,) if field.is_required() else (True, False))
        if (part, member, stated) not in seen
    ]
    assert lacking == []


def test_every_term_of_every_clause_is_read_again():
    """Units, measures, motions and teeth in some clause; any other term in each class that may hold it."""
    met = [(type(part), member, value) for rx in corpus().values() for part, member, value in values(rx)]
    seen, anywhere = set(met), {value for _, _, value in met}
    lacking = [
        (part.__name__, member, term)
        for part in set(inside(Prescription)) - {Prescription} - LEFT_OUT
        for member, field in part.model_fields.items()
        for term in literals(field.annotation)
        if term not in anywhere or ((part, member, term) not in seen and member not in OFTEN and term not in TEETH)
    ]
    assert lacking == []


def parts(value):
    """Every part of a document."""
    if isinstance(value, Part):
        yield value
        for name in type(value).model_fields:
            yield from parts(getattr(value, name))
    elif isinstance(value, (tuple, dict)):
        for inner in value.values() if isinstance(value, dict) else value:
            yield from parts(inner)


def stated_members(rx):
    return ((part, name, getattr(part, name) is not None) for part in parts(rx) for name in type(part).model_fields)


def values(rx):
    for part in parts(rx):
        for name in type(part).model_fields:
            value = getattr(part, name)
            for one in value if isinstance(value, tuple) else [value]:
                if isinstance(one, (str, bool)):
                    yield part, name, one


def literals(annotation):
    """The terms an annotation allows."""
    if get_origin(annotation) is Literal:
        return [one for one in get_args(annotation) if isinstance(one, str)]
    return [term for inner in get_args(annotation) if not isinstance(inner, (int, float)) for term in literals(inner)]


# the grammar


def every_sentence():
    """One sentence for each that differs in more than its teeth and its digits."""
    alike = {}
    for name in NAMES:
        for one in sentences(corpus()[name]):
            shape = re.sub(r"\d\d(?:/\d\d)? \([a-z ]+\)", "T", one.text)
            alike.setdefault(re.sub(r"\d+", "0", re.sub(r"T(?:, T)*(?: and T)?", "T", shape)), one.text)
    return sorted(alike.values())


def test_no_sentence_has_a_second_reading():
    """Earley's parser looks for every derivation, over every way to cut the sentence into words."""
    every = Lark(grammar(), parser="earley", lexer="dynamic_complete", ambiguity="explicit")
    checked = every_sentence()
    assert len(checked) > 1000
    for sentence in checked:
        tree = every.parse(sentence)
        assert not list(tree.find_data("_ambig")), sentence
        assert tree.children == [parsed(sentence)], sentence


def test_two_different_prescriptions_are_told_differently():
    """What no sentence tells apart could not be read again: two documents, two texts."""
    first = {}
    for name in NAMES:
        document = repr(plain(said(corpus()[name])))
        assert first.setdefault(told(name), document) == document, name


# one word changed

OPPOSITES = [
    *(("intrude", "extrude"), ("intrusion", "extrusion"), ("into the bone", "out of the bone"), ("advance", "retract")),
    *(("at least", "at most"), ("exactly", "at most"), ("exactly", "at least"), ("Must", "Preferably")),
    *(("Must", "Not allowed"), ("Allowed", "Not allowed"), ("Allowed", "Must"), ("Preferably", "Allowed")),
    *(("upper", "lower"), ("right", "left"), ("mesially", "distally"), ("mesial", "distal"), ("labially", "lingually")),
    *(("buccally", "palatally"), ("crowns", "roots"), ("forwards", "backwards"), ("outwards", "inwards")),
    *(("towards", "away from"), ("widen", "narrow"), ("widening", "narrowing"), ("apart", "together")),
    *(("Class II", "Class III"), ("Class I", "Class II"), ("wanted", "not wanted"), ("removable", "bonded")),
    *(("begins before", "goes together with"), ("night", "meals"), ("upright", "across"), ("gum", "biting edge")),
    *(("per contact", "in all over these contacts"), ("each by", "by"), ("all alike", "each"), ("only", "also")),
    *(("mild", "severe"), ("more", "less"), ("mm", "%"), ("°", " mm"), ("first", "second"), ("central", "lateral")),
    *(("incisor", "canine"), ("premolar", "molar"), ("no", "some"), ("none", "all"), ("not", "now")),
    *(
        ("canines to second molars: ", ""),
        ("every movement: ", ""),
        (" but those a goal leaves", ""),
        ("Kept", "Moved"),
    ),
]
BOTH = [*OPPOSITES, *((b, a) for a, b in OPPOSITES if b)]
AMOUNT = re.compile(r"-?\d+(?:\.\d+)?(?= mm|°| %)")
NUMBER = re.compile(r"\b[1-8][1-8](?=[ /])")


def changed(text, rng):
    """The text with one thing in it changed: a word to its opposite, an amount, a number without its words, a line."""
    kind = rng.randrange(6)
    if kind == 0:
        return swapped(text, rng, AMOUNT, lambda old: f"{float(old) + 1.5:g}")
    if kind == 1:
        return swapped(text, rng, NUMBER, lambda old: rng.choice([n for n in ("11", "23", "36", "44") if n != old]))
    if kind == 2:
        lines = text.splitlines()
        at = rng.choice([number for number, line in enumerate(lines) if line.strip()])
        return "\n".join([*lines[:at], *lines[at + 1 :]])
    if kind == 3:
        return swapped(text, rng, re.compile(r"(?<=[a-z,;)]) [a-z]+(?=[ .,;])"), lambda old: "")
    old, new = rng.choice([pair for pair in BOTH if words(pair[0]).search(text)])
    return swapped(text, rng, words(old), lambda _: new)


def words(told_):
    return re.compile(rf"(?<![A-Za-z]){re.escape(told_)}(?![A-Za-z])")


def swapped(text, rng, pattern, new):
    """One place of a pattern changed, outside the prescriber's own words, which may say anything."""
    quoted = [match.span() for match in re.finditer(r"“[^”]*”", text)]
    free = [m for m in pattern.finditer(text) if not any(a <= m.start() < b for a, b in quoted)]
    if not free:
        return text
    at = rng.choice(free)
    return text[: at.start()] + new(at[0]) + text[at.end() :]


@pytest.mark.parametrize("seed", range(40))
def test_one_change_is_another_prescription_or_a_question(seed):
    rng = random.Random(f"change {seed}")
    for _ in range(25):
        name = rng.choice(NAMES)
        text = told(name)
        other = changed(text, rng)
        if other == text or not is_read_back(other):
            continue
        document, questions = read(other)
        same = document == said(corpus()[name]) and named(other) == named(text)
        assert questions or not same, (name, set(other.splitlines()) ^ set(text.splitlines()))
