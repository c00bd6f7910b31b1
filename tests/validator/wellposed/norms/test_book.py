"""Numbers are found by key, on both sides of the mouth, and a bad file is refused in words."""

import os
import subprocess
import sys

import pytest

from wellposed import norms
from wellposed.norms import book
from wellposed.norms.book import read_norms, read_references

KNOWN_UNITS = "mm, deg, percent, 1, mm/mm, deg/mm, mm/deg, years, months, days, hours"
GOOD = {"key": '"arch.depth"', "value": "3", "unit": '"mm"', "sure": '"common practice"', "note": '"Depth."'}


def written(**changes):
    """A file of one norm, the good one but for the changes; None leaves a member out."""
    members = {name: text for name, text in (GOOD | changes).items() if text is not None}
    return "[[norm]]\n" + "".join(f"{name} = {text}\n" for name, text in members.items())


def family(values, key="tooth-width"):
    shared = 'unit = "mm"\nsure = "common practice"\nnote = "Width."'
    return f'[[family]]\nkey = "{key}"\n{shared}\nvalues = {values}\n'


BAD = {
    "an unknown table": (
        "[[norms]]\n",
        "'norms' is not known here; only [[norm]] and [[family]] are",
    ),
    "a table that is no list": ("[norm]\n", "'norm' must be written as [[norm]]"),
    "no key": (written(key=None), "has no 'key'"),
    "no value": (written(value=None), "'arch.depth' has no 'value'"),
    "an unknown member": (written(vlaue="4"), "'arch.depth' has an unknown member 'vlaue'"),
    "an unknown unit": (
        written(unit='"cm"'),
        f"'arch.depth' has an unknown unit 'cm'; known are {KNOWN_UNITS}",
    ),
    "an unknown sureness": (
        written(sure='"certain"'),
        "'arch.depth' is sure = 'certain'; known are published, from memory, common practice, computed",
    ),
    "no source though published": (
        written(sure='"published"'),
        "'arch.depth' has no 'source'",
    ),
    "no source though computed": (written(sure='"computed"'), "'arch.depth' has no 'source'"),
    "a source of common practice": (
        written(source='"proffit"'),
        "'arch.depth' is common practice, which has no source",
    ),
    "a source that is no word": (
        written(source="[7]"),
        "'arch.depth' must name its source in words, not [7]",
    ),
    "memory without a grade": (
        written(sure='"from memory"', source='"proffit"'),
        "'arch.depth' is from memory: its note must begin with its grade, such as 'Grade B. '",
    ),
    "a note of blanks": (written(note='" "'), "'arch.depth' must have words as 'note'"),
    "a value in words": (
        written(value='"3"'),
        "'arch.depth' must be a finite number, not '3'",
    ),
    "a yes for a value": (
        written(value="true"),
        "'arch.depth' must be a finite number, not True",
    ),
    "no finite value": (written(value="inf"), "'arch.depth' must be a finite number, not inf"),
    "a range in words": (written(low='"2"'), "'arch.depth' must be a finite number, not '2'"),
    "the same key twice": (written() + written(), "'arch.depth' stands twice"),
    "the same key in a norm and a family": (
        written(key='"tooth-width.11"') + family("{ 11 = 8 }"),
        "'tooth-width.11' stands twice",
    ),
    "a key of another file": (
        written(key='"kinematics.elastics"'),
        "'kinematics.elastics' belongs in kinematics.toml",
    ),
    "a tooth of the left": (
        family("{ 21 = 8 }"),
        "'tooth-width.21' is answered by its mirror: write 'tooth-width.11'",
    ),
    "a family of nothing": (
        family("{}"),
        "'tooth-width' must have a table of names and numbers as 'values'",
    ),
    "a family that is no table": (
        family("7"),
        "'tooth-width' must have a table of names and numbers as 'values'",
    ),
    "a pair from most to least": (
        family("{ 11 = [9, 8] }"),
        "'tooth-width.11' must be one number or a pair from least to most, not [9, 8]",
    ),
    "three numbers": (
        family("{ 11 = [7, 8, 9] }"),
        "'tooth-width.11' must be one number or a pair from least to most, not [7, 8, 9]",
    ),
}


def refusal(call, *arguments):
    with pytest.raises(norms.NormError) as caught:
        call(*arguments)
    return str(caught.value)


@pytest.mark.parametrize("text,message", BAD.values(), ids=BAD)
def test_a_bad_file_is_refused_by_name_and_key(tmp_path, text, message):
    path = tmp_path / "geometry.toml"
    path.write_text(text)
    assert refusal(read_norms, path) == f"geometry.toml: {message}"


def test_a_file_that_is_no_toml_is_refused_by_name(tmp_path):
    path = tmp_path / "geometry.toml"
    path.write_text("[[norm]\n")
    assert refusal(read_norms, path).startswith("geometry.toml: is not TOML: ")


def test_a_reference_must_be_words(tmp_path):
    path = tmp_path / "sources.toml"
    path.write_text("proffit = 1993\n")
    assert refusal(read_references, path) == "sources.toml: 'proffit' must be a reference in words"


def test_a_pair_answers_by_its_ends(tmp_path):
    path = tmp_path / "geometry.toml"
    path.write_text(family("{ 11 = [8, 9] }"))
    assert {key: norm.value for key, norm in read_norms(path).items()} == {
        "tooth-width.11.least": 8.0,
        "tooth-width.11.most": 9.0,
    }


def test_a_norm_tells_all_that_is_known_of_it():
    assert norms.norm("practice.reduction-per-contact.lower-lateral-canine") == norms.Norm(
        key="practice.reduction-per-contact.lower-lateral-canine",
        value=0.6,
        unit="mm",
        sources=("hudson-1956", "tuverson-1980"),
        sure="from memory",
        note="Grade B. Both teeth together, 33-32 and 43-42: 0.25 + 0.30 and 0.3 + 0.4 a surface.",
        low=0.55,
        high=0.7,
    )


def test_a_norm_leads_to_its_full_references():
    reference = "Sheridan JJ. J Clin Orthod 1985;19:43-59, and the update of 1987."
    assert norms.load().references("practice.reduction-in-all.lower") == (reference,)
    assert norms.load().references("practice.tip") == ()


@pytest.mark.parametrize("right,left", [("11", "21"), ("18", "28"), ("46", "36"), ("55", "65"), ("83", "73")])
def test_the_left_answers_with_the_right(right, left):
    widths = norms.family("tooth-width")
    assert widths[left] == widths[right] == norms.value(f"tooth-width.{left}") == norms.value(f"tooth-width.{right}")


def test_a_family_answers_for_every_tooth():
    assert len(norms.family("tooth-width")) == 52
    assert len(norms.family("tooth-length")) == 28


def test_a_family_leaves_out_its_neighbours():
    assert norms.family("practice.apex-travel") == {"incisors": 4.0, "canines": 4.0}


@pytest.mark.parametrize(
    "asked,near",
    [
        ("kinematics.hing.least", "kinematics.hinge.least"),
        ("practise.midline", "practice.midline"),
        ("plausible.mm.overbit.most", "plausible.mm.overbite.most"),
    ],
)
def test_an_unknown_key_is_answered_with_the_nearest(asked, near):
    with pytest.raises(KeyError, match=f"no norm '{asked}'; the nearest is '{near}'"):
        norms.value(asked)


def test_an_unknown_family_is_refused():
    with pytest.raises(KeyError, match="no norms under 'tooth-weight'"):
        norms.family("tooth-weight")


def test_the_references_are_no_topic():
    assert "sources" not in book.topics()
    assert book.topic("sources") == {}


def test_importing_reads_nothing_and_a_question_reads_one_file():
    program = (
        "from wellposed import norms\nfrom wellposed.norms import book\n"
        "before = book.topic.cache_info().currsize\nnorms.value('tooth-width.11')\n"
        "print(before, book.topic.cache_info().currsize)"
    )
    paths = {"PYTHONPATH": os.pathsep.join(sys.path)}
    run = subprocess.run([sys.executable, "-c", program], capture_output=True, check=True, env=paths)
    assert run.stdout.split() == [b"0", b"1"]


def test_the_numbers_are_read_once():
    assert norms.load() is norms.load()
    assert norms.norm("practice.tip") is norms.norm("practice.tip")
