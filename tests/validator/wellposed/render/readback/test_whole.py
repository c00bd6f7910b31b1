"""Whole prescriptions read back: every clause once, opposites apart, units everywhere, usages apart in words only."""

import json
import re
from collections import Counter
from itertools import combinations

import pytest
from tests.validator.wellposed.consistency.ordinary import document
from tests.validator.wellposed.render.kit import CASES, EXAMPLES, distinct

from wellposed.check import prescription_of
from wellposed.model.base import Part
from wellposed.render.json_report import dumped
from wellposed.render.readback import USAGES, readback_text, sentences
from wellposed.render.readback.sentence import FOUR, HEADINGS
from wellposed.render.readback.spelling import WORDS, spelt
from wellposed.render.words import MOTION_VERBS
from wellposed.vocabulary.motions import MOTIONS, unit_of
from wellposed.vocabulary.teeth import TEETH, in_words

READ = distinct([*EXAMPLES, *CASES])
EVERY = pytest.mark.parametrize("rx", READ.values(), ids=READ)
UNIT = re.compile(r" mm|°| %| days?| aligners")


def test_there_is_something_to_read():
    assert len(READ) > 200


def clauses(value, pointer=""):
    """The pointer of every part with an id, but the steps of staging, which have its own."""
    if isinstance(value, Part):
        if getattr(value, "id", None) and pointer:
            yield pointer
        for name in type(value).model_fields:
            yield from clauses(getattr(value, name), f"{pointer}/{name}")
    elif isinstance(value, tuple):
        for index, inner in enumerate(value):
            yield from clauses(inner, f"{pointer}/{index}")


def members(rx):
    """What must be said of staging: every member stated, an order by itself; of bare staging that it is bare."""
    staging = rx.staging
    lists = [f"/staging/{name}/{index}" for name in ("largest_steps", "order") for index in _each(staging, name)]
    plain = [
        f"/staging/{name}" for name in ("most_aligners", "wear_interval_days") if getattr(staging, name) is not None
    ]
    return [*plain, *lists] or ["/staging"]


def _each(staging, name):
    return range(len(getattr(staging, name) or ()))


@EVERY
def test_every_clause_stands_in_exactly_one_sentence(rx):
    wanted = Counter(
        pointer for pointer in clauses(rx) if not pointer.startswith(("/staging", "/prescriber", "/laboratory"))
    )
    wanted += Counter(members(rx) if rx.staging else [])
    told = Counter(one.pointer for one in sentences(rx) if one.pointer)
    assert {pointer: told[pointer] for pointer in wanted} == dict(wanted)
    assert set(told.values()) <= {1}


@EVERY
def test_every_sentence_leads_to_what_it_says(rx):
    whole = json.loads(rx.model_dump_json(exclude_none=True))
    for one in sentences(rx):
        here = whole
        for step in one.pointer.split("/")[1:]:
            here = here[int(step)] if isinstance(here, list) else here[step]
        if one.id and isinstance(here, dict) and "id" in here:
            assert here["id"] == one.id


NUMBER = re.compile(r"(?<![\w/-])-?\d+(?:\.\d+)?(?![\w/-]|\.\d)")


@EVERY
def test_every_number_is_a_tooth_with_its_name_or_an_amount_with_its_unit(rx):
    for one in sentences(rx):
        text = re.sub(r"“[^”]*”|\[[^\]]*\]|[0-9]{4}-[0-9]{2}-[0-9]{2}", "", one.text)
        text = re.sub(r"[0-9]{2}/[0-9]{2} \(", "(", text).replace("(12 teeth)", "").replace("(6 teeth)", "")
        for match in NUMBER.finditer(text):
            after = text[match.end() :]
            named = match[0] in TEETH and after.startswith(f" ({in_words(match[0])})")
            assert named or UNIT.match(after), (match[0], one.text)


@EVERY
def test_the_lines_are_no_wider_than_asked(rx):
    for width in (60, 100):
        lines = readback_text(rx, USAGES[0], width).splitlines()
        assert max(map(len, lines)) <= width
    assert lines[0] == "Tooth numbers: ISO 3950 (FDI)."
    assert {HEADINGS[name] for name in FOUR} <= set(lines)


@EVERY
def test_no_amount_is_rounded(rx):
    """Every amount a clause states stands in its sentence, digit for digit."""
    told = {one.pointer: one.text for one in sentences(rx)}
    for name in ("goals", "keep", "movements", "allow", "expect"):
        for index, part in enumerate(getattr(rx, name) or ()):
            for member in ("at_least", "at_most", "within", "up_to", "per_contact", "in_all", "amount"):
                value = getattr(part, member, None)
                if value is not None:
                    assert re.search(rf"(?<![\d.]){re.escape(f'{value:g}')}( mm|°| %)", told[f"/{name}/{index}"])


@EVERY
def test_nothing_of_persons_records_or_notes_is_repeated(rx):
    text = " ".join(one.text for one in sentences(rx))
    secrets = [rx.prescriber.id, rx.laboratory.id, rx.patient.reference]
    secrets += [note.text for note in rx.notes or ()] + [one.name for one in rx.records or () if one.name]
    assert [secret for secret in secrets if secret in text] == []


# usages


@EVERY
def test_usages_differ_in_the_listed_words_only(rx):
    british, american = (sentences(rx, usage) for usage in USAGES)
    assert [one._replace(text="") for one in british] == [one._replace(text="") for one in american]
    for one, other in zip(british, american, strict=True):
        pairs = list(zip(re.findall(r"\w+|\W", one.text), re.findall(r"\w+|\W", other.text), strict=True))
        assert {pair for pair in pairs if pair[0] != pair[1]} <= set(WORDS)


@pytest.mark.parametrize("british, american", WORDS)
def test_a_word_in_both_usages(british, american):
    text = f"{american.capitalize()} {british}, “{british}” [{american}]"
    assert spelt(text, "british") == f"{british.capitalize()} {british}, “{british}” [{american}]"
    assert spelt(text, "american") == f"{american.capitalize()} {american}, “{british}” [{american}]"


# opposites


def ordered(motion):
    movement = {
        "id": "m1",
        "strength": "must",
        "teeth": ["11"],
        "motion": motion,
        "at_most": 1,
        "unit": unit_of(motion),
    }
    rx = prescription_of(dumped(document(movements=[movement])).encode())
    (text,) = [one.text for one in sentences(rx) if one.pointer == "/movements/0"]
    return text


def test_intrusion_and_extrusion_share_no_verb():
    assert ordered("intrusion").split()[1:5] == ["intrude", "(into", "the", "bone)"]
    assert ordered("extrusion").split()[1:6] == ["extrude", "(out", "of", "the", "bone)"]


def test_every_motion_reads_otherwise_than_its_opposites():
    upper = [motion for motion in MOTIONS if "buccal" not in motion]  # 11 is a front tooth
    told = {motion: ordered(motion) for motion in upper}
    assert len(set(told.values())) == len(upper)
    opposites = [
        (one, other)
        for one, other in combinations(upper, 2)
        if MOTIONS[one].variable == MOTIONS[other].variable and MOTIONS[one].sign != MOTIONS[other].sign
    ]
    senses = ("towards its middle", "away from its middle", "outwards", "inwards", "crown outwards", "crown inwards")
    senses += ("towards the middle", "away from the middle", "mesial side", "distal side", "into", "out of")
    for one, other in opposites:
        assert {s for s in senses if s in told[one]} != {s for s in senses if s in told[other]}
    assert len(opposites) > 6
    assert set(MOTIONS) == set(MOTION_VERBS)
