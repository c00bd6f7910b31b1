"""The page of the specification on the read-back: its example and its table of words are the program's."""

import re

from tests.spec.prose import PAGES, examples, whole

from wellposed.check import prescription_of
from wellposed.render.readback import sentences
from wellposed.render.readback.spelling import WORDS

PAGE = PAGES["readback.md"]


def test_the_example_is_read_back_as_it_says():
    (example,) = [one for one in examples() if one.page == "readback.md"]
    sections = ("/movements", "/keep", "/exclude")
    told = [one.text for one in sentences(prescription_of(whole(example))) if one.pointer.startswith(sections)]
    assert told == re.findall(r"^    (\S.*)$", PAGE, re.MULTILINE)


def test_the_words_that_differ_are_listed():
    rows = re.findall(r"^\| (\w+(?:, \w+)*) \| (\w+(?:, \w+)*) \|$", PAGE.partition("## Forms")[2], re.MULTILINE)
    listed = [
        pair for british, american in rows for pair in zip(british.split(", "), american.split(", "), strict=True)
    ]
    assert tuple(listed) == (("British", "American"), *WORDS)
