"""Teeth named in texts: each rule alone, with what must be let through."""

import pytest
from tests.validator.wellposed.consistency.ordinary import present
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules import _numbers as numbers
from wellposed.rules.notation import RULES
from wellposed.vocabulary.teeth import TEETH

AT = ("/notes/0/text",)


def note(text):
    return {"notes": [{"text": text}]}


def built(words, *teeth, **said):
    part = {"id": "b1", "part": "button-opening", "words": words, **said}
    return {"appliance": [{**part, "teeth": list(teeth)} if teeth else part]}


BARE = (
    Case("bare-number-in-words", "a crown", note("The crown on 14 is new."), AT),
    Case("bare-number-in-words", "a list", note("Teeth 12, 11 and 21 were knocked."), AT),
    Case("bare-number-in-words", "above 32 is in one notation only", note("The crown on 36 is new.")),
    Case("bare-number-in-words", "one above 32 settles the others", note("Crowns on 14 and 36.")),
    Case("bare-number-in-words", "words settle it", note("The crown on 14 (upper right first premolar) is new.")),
    Case("bare-number-in-words", "the notation is named", note("Crown on 14 (FDI).")),
    Case("bare-number-in-words", "days", note("The crown came off 14 days ago.")),
    Case("bare-number-in-words", "millimetres", note("A gap of 11 mm at the front.")),
    Case("bare-number-in-words", "a count of teeth", note("All 28 teeth are there.")),
    Case("bare-number-in-words", "an hour", note("She comes at 11 with her mother.")),
    Case("bare-number-in-words", "the clause has the tooth itself", built("attachment on 14 as before", "14")),
    Case(
        "bare-number-in-words",
        "the clause has another",
        built("attachment on 14 as before", "15"),
        ("/appliance/0/words",),
    ),
    Case(
        "bare-number-in-words",
        "the name of a record",
        {"records": [{"kind": "other", "name": "tooth 11.png"}]},
        ("/records/0/name",),
    ),
)
OTHER = (
    Case("number-of-another-notation", "after tooth", note("Tooth 19 is tender."), AT),
    Case("number-of-another-notation", "after a number sign", note("#30 has a crown."), AT),
    Case("number-of-another-notation", "a number sign after another word", note("Look at #3 again."), AT),
    Case("number-of-another-notation", "a photograph", note("As in photo #3.")),
    Case("number-of-another-notation", "one digit", note("Teeth 3 and 14 have crowns."), AT),
    Case("number-of-another-notation", "a tooth of both", note("Tooth 18 is tender.")),
    Case("number-of-another-notation", "an aligner", note("Started with aligner #19.")),
    Case("number-of-another-notation", "hours", note("Wears them on the teeth 20 hours a day.")),
    Case("number-of-another-notation", "a distance", note("Moved the teeth 2 to 3 mm last time.")),
    Case("number-of-another-notation", "no tooth in any notation", note("Tooth 99 is tender.")),
)
MARKS = (
    Case("quadrant-mark-in-words", "a quadrant and a digit", note("UR6 has a large filling."), AT),
    Case("quadrant-mark-in-words", "a primary tooth", note("LLE is loose."), AT),
    Case("quadrant-mark-in-words", "an angle", note("6\u2518 has a large filling."), AT),
    Case("quadrant-mark-in-words", "a bare digit", note("All four upper 4s were taken out."), AT),
    Case("quadrant-mark-in-words", "in ISO 3950", note("16 and 26 (upper first molars) have large fillings.")),
    Case("quadrant-mark-in-words", "a decade", note("She is in the 40s.")),
    Case("quadrant-mark-in-words", "a word of capitals", note("URGENT: LRT closed on Monday.")),
)
ON_24 = ("/appliance/0/words",)
DISAGREE = (
    Case(
        "words-disagree-with-number",
        "the side, after the number",
        note("14 (upper left first premolar) is tender."),
        AT,
    ),
    Case(
        "words-disagree-with-number", "the jaw, before the number", note("The upper right canine (43) is tender."), AT
    ),
    Case("words-disagree-with-number", "no noun between", note("Lower right 36 is tender."), AT),
    Case("words-disagree-with-number", "it agrees", note("14 (upper right first premolar) is tender.")),
    Case("words-disagree-with-number", "words of the next tooth", note("14, upper left canine and 36 are tender.")),
    Case("words-disagree-with-number", "left as a verb", note("The teeth beside 14 left no room.")),
    Case("words-disagree-with-number", "no tooth", note("99 (upper left) is not there.")),
    Case(
        "words-disagree-with-number", "the clause has the other side", built("on the upper right premolar", "24"), ON_24
    ),
    Case("words-disagree-with-number", "the clause has the other jaw", built("on the mandibular canine", "13"), ON_24),
    Case("words-disagree-with-number", "one of its teeth is there", built("on the right canine", "13", "23")),
    Case("words-disagree-with-number", "it says both sides", built("right canine first, left canine later", "13")),
    Case(
        "words-disagree-with-number",
        "it speaks of a second tooth",
        built("for an elastic to the lower right molar", "13"),
    ),
    Case(
        "words-disagree-with-number",
        "the arch of a clause without teeth",
        built("over the lower molars", arch="upper"),
        ON_24,
    ),
    Case("words-disagree-with-number", "no teeth and no arch", built("over the lower molars")),
    Case(
        "words-disagree-with-number",
        "what is said of a tooth",
        {"teeth": {**present(), "particulars": [{"tooth": "11", "states": ["crown"], "words": "upper left central"}]}},
        ("/teeth/particulars/0/words",),
    ),
)
CASES = (*BARE, *OTHER, *MARKS, *DISAGREE)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


# ISO 3950 quadrant 1 U = 9 - n, 2 U = 8 + n, 3 U = 25 - n, 4 U = 24 + n: what the numbering from 1 to 32 calls a tooth.
UNIVERSAL = {f"{q}{n}": u for n in range(1, 9) for q, u in ((1, 9 - n), (2, 8 + n), (3, 25 - n), (4, 24 + n))}


def test_eighteen_numbers_are_legal_in_two_notations():
    legal = {str(number) for number in UNIVERSAL.values()}
    both = [tooth for tooth in TEETH if numbers.either(f"tooth {tooth}")]
    assert len(both) == 18
    assert set(both) == legal & set(UNIVERSAL)


def test_none_of_them_is_the_same_tooth_in_both():
    assert [tooth for tooth, number in UNIVERSAL.items() if tooth == str(number)] == []


def test_the_numbers_of_the_other_notation_alone_are_the_other_fourteen():
    foreign = [number for number in range(100) if numbers.foreign(f"tooth {number}")]
    assert foreign == [number for number in range(1, 33) if str(number) not in TEETH]
    assert len(foreign) == 14


@pytest.mark.parametrize("text", ["tooth 1" + " " * 3900, "1 " * 2000, "upper " * 660, "tooth " * 660, "#" * 4000])
def test_long_texts_are_looked_through_at_once(text):
    assert numbers.contradicted(text) is False
    assert numbers.places(text) == [] or text.startswith(("upper", "tooth"))
    assert numbers.either(text) == []
