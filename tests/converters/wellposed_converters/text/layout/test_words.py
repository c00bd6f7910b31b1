import re

import pytest

from wellposed_converters.text.layout.words import CODE, DATE, FILES, headings, pattern, plain


@pytest.mark.parametrize("name", ["subject", "greeting", "admin", "closing", "signature"])
def test_the_patterns_leave_no_shape_unfilled(name):
    assert "{" not in re.sub(r"\{\d*,?\d*\}", "", pattern(name).pattern)


def test_no_word_is_a_heading_of_two_sections():
    raw = list(headings())
    assert len(raw) == len({word.casefold() for word in raw})


@pytest.mark.parametrize("word", ["13-23", "UR3", "II/1", "3-3", "36", "0.3"])
def test_a_tooth_or_amount_is_no_code(word):
    assert re.fullmatch(CODE, word, re.IGNORECASE) is None


def test_codes_dates_and_files():
    assert re.fullmatch(CODE, "A-102", re.IGNORECASE)
    assert re.fullmatch(DATE, "3 May 2024", re.IGNORECASE)
    assert re.fullmatch(FILES, "upper jaw.stl, photo 1.jpg", re.IGNORECASE)


def test_plain_words_have_straight_quotes_and_no_last_punctuation():
    assert plain("  Patient\u2019s \n wish. ") == "Patient's wish"
