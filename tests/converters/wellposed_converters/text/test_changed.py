"""Notes changed in a known way are read with that change, or a question is put: no change of meaning is passed over.

The nine changes of free text 6.6, over the samples and the ordinary notes.
"""

import re
from random import Random

import pytest
from tests.converters.wellposed_converters.text.changed import (
    changed,
    has_primary,
    renamed,
    samples,
    stated,
    write,
    written_teeth,
)
from tests.converters.wellposed_converters.text.readings import asked_over, compared, firm, read, said
from tests.converters.wellposed_converters.text.varied import DANGER, edited, note

from wellposed_converters.text.lexicon import vocabulary
from wellposed_converters.text.scoring import overlap, score

PLAIN = [sample for sample in samples() if not sample.hard]
FDI = [one for one in PLAIN if one.notation.startswith("FDI") and "dot" not in one.text]
SINGLE = [one for one in PLAIN if one.notation.startswith(("FDI", "Universal", "alphanumeric"))]


def by_name(chosen):
    return pytest.mark.parametrize("sample", chosen, ids=lambda sample: sample.name)


# 1. Another numbering, stated: the same clauses.


SYSTEMS = {"Universal": "Universal numbering", "alphanumeric": "alphanumeric", "Palmer": "Palmer"}
RENUMBERED = [one for one in FDI if "Single teeth" not in one.text and not any(map(has_primary, one.expected))]
READ_AS_WELL = {"Universal": 0.98, "alphanumeric": 0.98, "Palmer": 0.77}
"""The share of the clauses that are read right in another numbering, of those that were; measured 0.99, 1.0, 0.78."""


def renumbered(sample, system):
    """The sample with its teeth in another numbering, which is stated."""
    made = changed(sample, [(start, end, write(tooth, system)) for start, end, tooth in written_teeth(sample)])
    return stated(made, SYSTEMS[system], system)


@pytest.mark.parametrize("system", SYSTEMS)
@by_name(RENUMBERED)
def test_another_numbering_changes_nothing(sample, system):
    assert compared(renumbered(sample, system)).silent == ()


@pytest.mark.parametrize("system", SYSTEMS)
def test_another_numbering_is_read_as_well(system):
    before, after = map(read_right, (RENUMBERED, [renumbered(sample, system) for sample in RENUMBERED]))
    assert after >= READ_AS_WELL[system] * before


def read_right(notes):
    """How many clauses of the notes are read right; what states the numbering is not counted."""
    return sum(one.expected[g]["kind"] != "notation" for one in notes for g, _ in compared(one).right)


# 2. A word left out: another reading, or another question.

JOINING = (
    "a an the and or of on in at by to for from with so as it that them these is are be been has will must may they do "
    "please pls now all each two three arch arches teeth tooth numbers number numbering contact between plane pattern "
    "trays aligner sites end send put bring change treat allowed yes needed afterwards present line"
)
MAY_BE_LEFT_OUT = frozenset(JOINING.split())
"""Words that join, are polite, or are said once more by what a clause is about ("line" of trim)."""
SAID_TWICE = {
    ("FT-007", "upper"), ("FT-023", "upper"), ("FT-026", "lower"), ("FT-033", "lower"), ("OT-004", "upper"),
    ("OT-004", "lower"),
    ("FT-014", "keep"), ("FT-023", "keep"), ("OT-018", "keep"), ("OT-031", "keep"), ("OT-006", "stays"),
    ("OT-012", "stays"), ("OT-021", "stays"), ("OT-034", "stays"), ("OT-034", "unchanged"), ("OT-027", "mm"),
    ("OT-047", "mm"), ("FT-015", "space"), ("OT-010", "space"), ("OT-016", "space"), ("OT-014", "gap"),
    ("FT-020", "level"), ("OT-020", "level"), ("OT-020", "curve"), ("FT-033", "reduce"), ("OT-051", "reduce"),
    ("FT-021", "parallel"), ("OT-017", "parallel"), ("FT-025", "incisal"), ("OT-032", "incisal"), ("FT-009", "midline"),
    ("FT-023", "discrepancy"), ("FT-025", "edge"), ("FT-032", "face"), ("FT-033", "centreline"), ("FT-033", "mild"),
    ("FT-033", "crown"), ("FT-033", "leave"), ("OT-001", "ipr"), ("OT-004", "crowding"), ("OT-018", "friday"),
    ("OT-023", "retention"),
}  # fmt: skip
"""Words of single notes whose meaning stands there a second time: beside teeth in numbers, in "to 2 mm", as the head of
the clause before ("IPR L 3-3 ..., no U"), in "where they are"; or that no record has ("Friday", "mild")."""


def _may_be_left_out(found, sample):
    """A joining word, one that is said twice, or a heading."""
    word, line = found[0].casefold(), sample.text[sample.text.rfind("\n", 0, found.start()) + 1 :].split("\n")[0]
    heading = re.fullmatch(r"[A-Za-z ]+", line) is not None
    return word in MAY_BE_LEFT_OUT or (sample.name, word) in SAID_TWICE or heading


@by_name(PLAIN)
def test_no_word_is_passed_over(sample):
    whole = read(sample.text)
    sure = [one for one in firm(sample.text) if one["kind"] != "note"]
    passed = []
    for found in re.finditer(r"[A-Za-z]{2,}|\d+(?:[.,]\d+)?", sample.text):
        if not any(overlap(one, {"spans": [list(found.span())]}) for one in sure) or _may_be_left_out(found, sample):
            continue
        less = read(sample.text[: found.start()] + sample.text[found.end() :])
        if _sayings(whole) == _sayings(less):
            passed.append(found[0])
    assert passed == []


def _sayings(reading):
    made, put = reading
    return sorted(said(one) + str(one.get("inferred")) for one in made), sorted(one["type"] for one in put)


# 3. "no" before what is used or done: forbidden, or a question.

DEVICE = {
    "attachment": r"att\w*", "ipr": r"IPR|strip\w*|interproximal", "elastic": r"elastics?", "bite_ramp": r"bite ramps?",
    "button": r"buttons?", "cutout": r"cut-outs?", "retainer": r"(?:bonded |removable |vacuum-formed )?retainers?",
    "bite_block": r"bite blocks?", "pontic": r"pontics?",
}  # fmt: skip


@by_name([one for one in PLAIN if any(clause["kind"] in DEVICE for clause in one.expected)])
def test_no_before_a_device_forbids_it_or_is_asked(sample):
    for one in sample.expected:
        if one["kind"] not in DEVICE or one["mode"] == "forbid":
            continue
        start, end = one["spans"][0]
        found = re.compile(rf"\b(?:{DEVICE[one['kind']]})\b", re.IGNORECASE).search(sample.text, start, end)
        if found is None:
            continue
        made = changed(sample, [(found.start(), found.start(), "no ")])
        here = {"spans": [[found.start(), found.end() + 3]]}
        left = [clause for clause in firm(made.text) if clause["kind"] == one["kind"] and overlap(clause, here)]
        assert [clause for clause in left if clause["mode"] != "forbid"] == [], made.text


# 4. Left for right, upper for lower: teeth, sides and arches change about.

SIDES = {"left": "right", "UR": "UL", "LR": "LL", "L side": "R side", "patient_left": "patient_right"}
ARCHES = {"upper": "lower", "maxillary": "mandibular", "UR": "LR", "UL": "LL", "U": "L"}
MIRROR = {1: 2, 2: 1, 3: 4, 4: 3, 5: 6, 6: 5, 7: 8, 8: 7}
OTHER_ARCH = {1: 4, 2: 3, 3: 2, 4: 1, 5: 8, 6: 7, 7: 6, 8: 5}


@pytest.mark.parametrize("swap, quadrants", [(SIDES, MIRROR), (ARCHES, OTHER_ARCH)], ids=["sides", "arches"])
@by_name([one for one in SINGLE if not re.search(r"palatal|U/L|U\+L|IPR L|exp U|\b[UL] ", one.text)])
def test_what_is_changed_about_in_the_words_is_changed_about_in_the_clauses(sample, swap, quadrants):
    both = swap | {other: one for one, other in swap.items()}
    system = sample.notation.split("/")[0]
    edits = [
        (start, end, _as_written(sample.text[start:end], quadrants[tooth // 10] * 10 + tooth % 10, system))
        for start, end, tooth in written_teeth(sample)
    ]
    taken = [(start, end) for start, end, _ in edits]
    words = re.finditer(rf"\b(?:{'|'.join(sorted(both, key=len, reverse=True))})\b", sample.text, re.IGNORECASE)
    free = [found for found in words if not any(start <= found.start() < end for start, end in taken)]
    edits += [(*found.span(), _cased(found[0], both)) for found in free]
    made = renamed(changed(sample, edits), lambda tooth: quadrants[tooth // 10] * 10 + tooth % 10, both)
    if system == "FDI":
        made = stated(made, "FDI", "FDI")
    assert compared(made).silent == ()


def _as_written(words, tooth, system):
    made = write(tooth, system)
    return made if words.startswith("#") or system != "Universal" else made[1:]


def _cased(word, both):
    other = both.get(word) or both[word.lower()]
    return other.upper() if word.isupper() else other.capitalize() if word[0].isupper() else other


# 5. Signs lost on the way: a question, never another clause.

LOST = {
    "corner signs": r"[⏌⎿⏋⎾]",
    "degree signs": r"°",
    "slashes": r"/",
    "decimal points": r"(?<=\d)\.(?=\d)|(?<!\S)\.(?=\d)",
    "decimal commas": r"(?<=\d),(?=\d)",
    "number signs": r"#",
}


@pytest.mark.parametrize("signs", LOST)
@by_name(samples())
def test_lost_signs_never_make_another_clause(sample, signs):
    text = re.sub(LOST[signs], "", sample.text)
    before = {said(one) for one in read(sample.text)[0]}
    assert [one for one in firm(text) if said(one) not in before] == [], text


# 6. A number that no tooth has in this numbering: a question.


@pytest.mark.parametrize("number", ["49", "19", "30", "00"])
@by_name([one for one in FDI if any(True for _ in written_teeth(one))])
def test_a_number_that_no_tooth_has_is_asked(sample, number):
    for start, end, _ in written_teeth(sample):
        made = stated(changed(sample, [(start, end, number)]), "FDI", "FDI")
        at = len(made.text) - len(sample.text[end:]) - len(number)
        assert asked_over(made.text, at, at + len(number)), made.text


# 7. Lines that do not lean on one another, in any order: the same clauses.

LINES = ["FT-032", "OT-003", "OT-007", "OT-031", "OT-043"]


@by_name([one for one in samples() if one.name in LINES])
def test_the_order_of_lines_that_stand_alone_is_nothing(sample):
    lines = sample.text.split("\n")
    Random(sample.name).shuffle(lines)
    whole, other = (sorted(said(one) for one in read(text)[0]) for text in (sample.text, "\n".join(lines)))
    assert whole == other


@pytest.mark.parametrize("seed", [seed for seed in range(300) if note(seed).layout in ("lines", "bullets")])
def test_made_lines_in_another_order_are_read_as_well(seed):
    """Each line with its clauses goes to another place."""
    written = note(seed)
    lines = list(re.finditer(r"[^\r\n]+", written.text))
    held = [[one for one in written.expected if line.start() <= one["spans"][0][0] < line.end()] for line in lines]
    order = [at for at, records in enumerate(held) if records and records[0]["kind"] not in ("note", "notation")]
    first = [at for at, records in enumerate(held) if records and records[0]["kind"] == "notation"]
    Random(seed).shuffle(order)
    text, expected = "", []
    for at in first + order:
        by = len(text) - lines[at].start()
        expected += [one | {"spans": [[a + by, b + by] for a, b in one["spans"]]} for one in held[at]]
        text += lines[at][0] + "\n"
    assert score(expected, [], *read(text)).silent == ()


# 8. A contradiction added: found.

AGAINST = [
    (("overjet", "keep"), "Reduce the overjet to 1 mm."),
    (("overbite", "keep"), "Reduce the overbite to 1 mm."),
    (("ipr", "forbid"), "IPR {contact} 0.2 mm."),
    (("movement", "forbid"), "Intrude {tooth} by 1 mm."),
    (("extraction", "forbid"), "Extract {tooth}."),
    (("extraction", "do"), "No extractions."),
    (("attachment", "forbid"), "Attachment on {tooth}."),
    (("elastic", "forbid"), "Elastics from 13 to 46."),
    (("overjet", "do"), "Overjet 0.5 mm at the end."),
    (("overbite", "do"), "Overbite 0.5 mm at the end."),
    (("align", "do"), "Do not move {tooth}."),
    (("intrude", "do"), "Do not move {tooth}."),
    (("intrude", "do"), "{tooth} is ankylosed."),
    (("rotate", "do"), "{tooth} is missing."),
    (("attachment", "do"), "No attachments."),
    (("ipr", "do"), "No IPR."),
    (("ipr", "limit"), "No IPR."),
    (("archwidth", "do"), "No expansion."),
    (("tooth_status", "state"), "Rotate {tooth} mesial-in by 10 degrees."),
]
FIXED_STATES = {"missing", "implant", "ankylosed"}


@by_name([one for one in FDI if not one.ask])
def test_an_added_contradiction_is_found(sample):
    missed = []
    for one in sample.expected:
        for what, words in AGAINST:
            if what != (one["kind"], one["mode"]) or not _contradicts(one):
                continue
            added = words.format(tooth=min(one.get("teeth", [11])), contact=_contact(one))
            text = f"{sample.text}\n\n{added}"
            at = len(text) - len(added)
            if not asked_over(text, at, len(text)):
                missed.append(added)
    assert missed == []


def _contradicts(one):
    """Whether a clause of this kind is met by the sentence against it."""
    if one["kind"] == "tooth_status":
        return one.get("of") in FIXED_STATES
    return one.get("of") not in ("primary_teeth", "means") and "if" not in one


def _contact(one):
    contact = one.get("contacts", [[12, 11] if one.get("arch") == "upper" else [42, 41]])[0]
    return "/".join(map(str, contact))


# 9. Each word misspelt once: repaired rightly, or a question.


@by_name(PLAIN)
def test_a_misspelt_word_is_repaired_rightly_or_asked(sample):
    random = Random(sample.name)
    for found in re.finditer(r"\b[A-Za-z]{2,}\b", sample.text):
        slip = edited(random, found[0])
        if slip.casefold() in vocabulary() or slip == found[0]:
            continue  # it is a word of its own
        made = changed(sample, [(*found.span(), slip)])
        assert compared(made).silent == (), (found[0], slip, made.text)
        if found[0].casefold() in DANGER:
            assert asked_over(made.text, found.start(), found.start() + len(slip)), (found[0], slip, made.text)
