"""Which numbering a text uses: stated, shown, or undecided. Expected values follow from the numberings themselves."""

import pytest

from wellposed_converters.text.places import Numbering, find_places, resolve, settle, stated


def settled(text):
    return settle(text, find_places(text, dotted=stated(text).dotted))


@pytest.mark.parametrize(
    "text, system, dotted",
    [
        ("FDI. Align 11 21.", "FDI", False),
        ("Mixed dentition, FDI.", "FDI", False),
        ("Tooth numbers to ISO 3950", "FDI", False),
        ("UNIVERSAL NUMBERING. ALIGN #6-11", "Universal", False),
        ("Universal.", "Universal", False),
        ("Palmer. Derotate 3⏌", "Palmer", False),
        ("Zsigmondy notation", "Palmer", False),
        ("Haderup: 6+", "Haderup", False),
        ("FDI with dot. Intrude 1.1", "FDI", True),
    ],
)
def test_stated(text, system, dotted):
    found = stated(text)
    assert (found.system, found.stated, found.dotted, found.conflict) == (system, True, dotted, False)


def test_where_it_is_stated():
    text = "Please use FDI numbers."
    assert [text[start:end] for start, end in stated(text).stated_spans] == ["FDI"]


@pytest.mark.parametrize("text", ["not FDI", "a universal retainer", "Align 11 21"])
def test_not_stated(text):
    assert stated(text) == Numbering(None)


def test_two_stated_numberings_conflict():
    found = settled("FDI 36, Universal numbering 19")
    assert (found.system, found.conflict) == (None, True)


@pytest.mark.parametrize(
    "text, system",
    [
        ("Align 13-23, derotate 12 22", "FDI"),
        ("derot 33 & 43", "FDI"),
        ("41 goes out next week", "FDI"),
        ("75 and 85 are ankylosed", "FDI"),
        ("IPR between 11 and 21", "FDI"),
        ("IPR 11/21", "FDI"),
        ("upper 24 25", "FDI"),
        ("Upper: IPR 24-25.", "FDI"),
        ("Lower: IPR 24-25.", "Universal"),
        ("lower central incisors 24 25", "Universal"),
        ("upper left canine (23)", "FDI"),
        ("Align 6-11 and 22-27", "Universal"),
        ("Crowns on 14 and 19", "Universal"),
        ("#13 and #14", "Universal"),
        ("all premolars except 15", "FDI"),
    ],
)
def test_shown(text, system):
    found = settled(text)
    assert (found.system, found.stated, found.conflict) == (system, False, False)


@pytest.mark.parametrize(
    "text",
    [
        "Intrude 24 25 0.5 mm. IPR 23-26 0.2 mm per contact. Att on 22 27.",
        "#13",
        "Align 3-3",
        "UR3 and UL3",
        "17-27",
        "24-31",
        "Upper: expand. Align 24 25.",
        "5, 12",
        "Procline 10. Align 24 25.",
        "ICW 34. Align 24 25.",
    ],
)
def test_undecided(text):
    """17-27 runs within the lower arch in the Universal numbering; 10 and 34 may be amounts here."""
    assert settled(text).system is None
    assert not settled(text).conflict


@pytest.mark.parametrize(
    "text", ["Attachments on 34, 44 and #19", "Align 6-11, IPR 33-43", "Align 13-23. Crowns on 14 and 19."]
)
def test_evidence_both_ways_is_a_conflict(text):
    found = settled(text)
    assert (found.system, found.conflict) == (None, True)
    places = find_places(text)
    assert all(len(resolve(place, found)) != 1 for place in places)


def test_a_stated_numbering_governs_and_is_never_repaired():
    """FDI has no tooth 19."""
    text = "FDI. Intrude 19 and 11."
    found = settled(text)
    assert (found.system, found.conflict) == ("FDI", False)
    (place,) = find_places(text)
    assert resolve(place, found) == ()


def test_one_meaning_that_nothing_speaks_for_is_not_taken():
    """5 exists in the Universal numbering only, but is also a Palmer position."""
    (place,) = find_places("Attachments 5, 12")
    assert [one.system for one in place.meanings] == ["Universal"]
    assert resolve(place, Numbering(None)) == ()


def test_evidence_says_where_it_stands():
    text = "Lock 36, align 12 22"
    assert [text[start:end] for _, start, end in settled(text).evidence] == ["36"]
