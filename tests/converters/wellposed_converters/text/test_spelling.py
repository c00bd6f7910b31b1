import pytest

from wellposed_converters.text.known import known_words
from wellposed_converters.text.lexicon import content_words
from wellposed_converters.text.spelling import repair

# Rule R17: one slip, five letters or more, one target, and never a word of the danger list.
REPAIRED = [
    ("alighn", "align", "a letter too many"),
    ("redcue", "reduce", "two letters changed about"),
    ("mantain", "maintain", "a letter too few"),
    ("attachemnts", "attachments", "two letters changed about, in a plural"),
    ("incissors", "incisors", "a tooth word"),
    ("overjat", "overjet", "a wrong letter"),
]
LEFT = [
    ("retarct", "one slip from an order whose opposite is near"),
    ("exrude", "extrude is on the danger list"),
    ("extracted", "it is a word of its own"),
    ("leve", "four letters"),
    ("proclind", "procline and proclined are both near"),
    ("where", "there is a word that carries a place"),
    ("three", "a number word"),
    ("accept", "on the danger list"),
]


@pytest.mark.parametrize("slip, word, why", REPAIRED)
def test_one_slip_with_one_target_is_repaired(slip, word, why):
    assert repair(f"do {slip} now", content_words(), known_words()).text == f"do {word} now", why


@pytest.mark.parametrize("word, why", LEFT)
def test_other_words_are_left_alone(word, why):
    assert repair(word, content_words(), known_words()).text == word, why


def test_places_are_those_of_the_text_as_given():
    found = repair("pls alighn 13", content_words(), known_words())
    assert found.text == "pls align 13"
    assert "pls alighn 13"[slice(*found.back((4, 9)))] == "alighn"
    assert "pls alighn 13"[slice(*found.back((10, 12)))] == "13"
