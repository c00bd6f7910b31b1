"""A practice's own numbers stand in place of ours, and every one of them is told."""

import pytest

from wellposed import norms

KEY = "practice.reduction-per-contact.lower-incisors"
STRICT = f'name = "Strict"\n[limits]\n"{KEY}" = 0.4\n"practice.midline" = 3\n'.encode()

BAD = {
    "no TOML": (b"name =", "practice profile: is not TOML: Invalid value (at end of document)"),
    "an unknown part": (
        b'name = "A"\nunits = "mm"\n[limits]\n"practice.tip" = 9\n',
        "practice profile: 'units' is not known here; only name and [limits] are",
    ),
    "no name": (b'[limits]\n"practice.tip" = 9\n', "practice profile: 'name' must be words"),
    "no limits": (b'name = "A"\n', "practice profile: 'limits' must be a table of keys and numbers"),
    "an unknown key": (
        b'name = "A"\n[limits]\n"practice.midlin" = 3\n',
        "practice profile: 'practice.midlin' is not a known norm; the nearest is 'practice.midline'",
    ),
    "a tooth of the left": (
        b'name = "A"\n[limits]\n"tooth-width.21" = 8\n',
        "practice profile: 'tooth-width.21' is not a known norm; the nearest is 'tooth-width.11'",
    ),
    "a key without quotes": (
        b'name = "A"\n[limits]\npractice.midline = 3\n',
        "practice profile: 'practice' is a table: write the whole key in quotes, \"practice.midline\" = 3",
    ),
    "words for a number": (
        b'name = "A"\n[limits]\n"practice.midline" = "3 mm"\n',
        "practice profile: 'practice.midline' must be a finite number, not '3 mm'",
    ),
    "a number of the model": (
        b'name = "A"\n[limits]\n"kinematics.hinge.least" = 2\n',
        "practice profile: 'kinematics.hinge.least' is no practice limit; a profile may change those under practice.",
    ),
}


@pytest.mark.parametrize("content,message", BAD.values(), ids=BAD)
def test_a_bad_profile_is_refused_in_words(content, message):
    with pytest.raises(norms.NormError) as caught:
        norms.with_profile(content)
    assert str(caught.value) == message


def test_a_profile_changes_what_it_names_and_nothing_else():
    ours, theirs = norms.load(), norms.with_profile(STRICT)
    changed = {norm.key for norm in ours if norm != theirs.norm(norm.key)}
    assert changed == {KEY, "practice.midline"}
    assert (theirs.value(KEY), ours.value(KEY)) == (0.4, 0.5)
    assert theirs.family("practice.reduction-per-contact")["lower-incisors"] == 0.4


def test_a_profile_tells_its_name_and_its_changes_by_key():
    theirs = norms.with_profile(STRICT)
    assert theirs.profile == "Strict"
    assert theirs.changes == (norms.Change("practice.midline", 4.0, 3.0), norms.Change(KEY, 0.5, 0.4))
    assert (norms.load().profile, norms.load().changes) == (None, ())


def test_a_changed_number_no_longer_claims_the_source():
    changed = norms.with_profile(STRICT).norm(KEY)
    assert (changed.sources, changed.sure) == ((), "common practice")
    assert changed.note == "Set by the practice profile 'Strict'."


def test_a_number_left_as_it_was_is_told_too():
    same = norms.with_profile(b'name = "Same"\n[limits]\n"practice.midline" = 4\n')
    assert same.changes == (norms.Change("practice.midline", 4.0, 4.0),)


def test_a_profile_is_read_from_its_path(tmp_path):
    path = tmp_path / "strict.toml"
    path.write_bytes(STRICT)
    assert norms.with_profile(path) == norms.with_profile(str(path)) == norms.with_profile(STRICT)
