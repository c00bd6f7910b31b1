"""Each form of sentence to its members: the sentences are those written out by hand for the read-back."""

import pytest
from tests.converters.wellposed_converters.text.readback.corpus import plain
from tests.validator.wellposed.render.readback.test_sentences import C4131, ORDER, SENTENCES, T11, T13

from wellposed_converters.text.readback.form import Form, NotSaidAlike
from wellposed_converters.text.readback.grammar import parsed
from wellposed_converters.text.readback.said import said

TOLD = [
    (name, part, text)
    for _, sections, text in SENTENCES
    for name, parts in sections.items()
    for part in (parts[:1] if isinstance(parts, list) else [parts])
]


def members(text):
    """The place and the members of a sentence."""
    told = said(Form(parsed(text)))
    return told.place, plain(told.value)


@pytest.mark.parametrize("name, part, text", TOLD)
def test_a_sentence_gives_the_members_it_was_written_from(name, part, text):
    wanted = {member: value for member, value in part.items() if member not in ("id", "text")}
    assert members(text) == (name, plain(wanted))


STATED = [
    ("Must: at most 20 aligners.", "staging", {"strength": "must", "most_aligners": 20}),
    ("Must: wear each aligner for exactly 1 day.", "staging", {"strength": "must", "wear_interval_days": 1}),
    (
        f"Preferably: at most 2° per aligner of rotation (either way) of {T13}.",
        "staging",
        {
            "strength": "prefer",
            "largest_steps": [{"variable": "rotation", "amount": 2, "unit": "deg", "teeth": ["13"]}],
        },
    ),
    (
        "Must: [g1] is done before [g2] begins.",
        "order",
        {"strength": "must"} | {member: value for member, value in ORDER[0].items() if member != "id"},
    ),
    (
        f"Must: extract {T11}, injured; its place closes unless a goal leaves room.",
        "particulars",
        {"tooth": "11", "states": ["injured", "to-be-extracted"]},
    ),
    (
        f"Present: {T13}, implant and crown, so it does not move.",
        "particulars",
        {"tooth": "13", "states": ["crown", "implant"]},
    ),
    (f"Present in the upper arch: {T13} and {T11}.", "teeth", {"upper": ["11", "13"]}),
    ("No tooth is present in the lower arch.", "teeth", {"lower": []}),
    ("Stated as none: anything not allowed.", "none", {"exclude": []}),
    ("Stated as none: largest steps per aligner.", "none", {"largest_steps": []}),
]


@pytest.mark.parametrize("text, place, value", STATED)
def test_a_sentence_on_teeth_staging_or_nothing(text, place, value):
    assert members(text) == (place, value)


FOLLOWING = [
    f"Kept: {T13}; no intrusion (into the bone), no rotation (either way).",
    f"Kept: {T13} and {T11}; no movement at all.",
    f"Kept: the enamel at {C4131}; none is taken off there.",
    "Not used, as neither allowed nor excluded: widening (the teeth of a pair apart) and extraction (teeth taken out).",
    "Free to follow what is moved, as no goal and no keep holds them: overjet and upper crowding.",
    "Not stated: conditions; which arches are treated: both are taken to be.",
]


@pytest.mark.parametrize("text", FOLLOWING)
def test_a_sentence_that_orders_nothing(text):
    assert said(Form(parsed(text))) is None


UNALIKE = [
    ("Must: align 11 (upper left central incisor).", "tooth-words"),
    ("Must: align 19 (upper right central incisor).", None),
    ("Must: close the space at 41/31 (lower left central incisor and lower right central incisor).", "tooth-words"),
    ("Kept: 13 (upper left canine); no movement at all.", "tooth-words"),
    ("Found: overbite 2 mm (an open bite).", "sense"),
    ("Found: overbite -2 mm.", "sense"),
    ("Found: overbite 02 mm.", "sense"),
    ("Must: bring the overbite to at least 1 mm and at most 40 %.", "units"),
    (f"Must: rotate {T13} mesially (along the arch, towards its middle), by at most 2 mm.", "motion"),
    ("Treat: the upper arch only; in the upper arch no tooth is moved and no enamel taken off.", "arches"),
    (f"Must: align {T13}, with an overcorrection of exactly 2 mm of the movement.", "units"),
    ("Condition: other, “two \N{REPLACEMENT CHARACTER} words”.", "lost-signs"),
    ("Must: align 11.", None),
    ("Must: intrude 11 (upper right central incisor), by at most 1 mm.", None),
    (f"Not allowed: align {T11}.", None),
    (f"Must: align {T11}", None),
    (f"Must: align {T11} .", None),
    (f"Must: align {T11}. Must: align {T13}.", None),
    (f"Must not: align {T11}.", None),
    (f"Must: extrude (into the bone) {T11}, by at most 1 mm.", None),
]


@pytest.mark.parametrize("text, asks", UNALIKE)
def test_a_sentence_that_disagrees_with_itself_or_is_none(text, asks):
    """With ``asks`` it is parsed and refused, without it is no sentence of a read-back."""
    tree = parsed(text)
    assert (tree is None) == (asks is None)
    if tree is not None:
        with pytest.raises(NotSaidAlike, match=f"^{asks}$"):
            said(Form(tree))
