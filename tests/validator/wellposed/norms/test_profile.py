"""A practice's own numbers stand in place of ours, and every one of them is told."""

import pytest

from wellposed import norms
from wellposed.findings import Severity

KEY = "practice.reduction-per-contact.lower-incisors"
STRICT = f'name = "Strict"\n[limits]\n"{KEY}" = 0.4\n"practice.midline" = 3\n'.encode()

NOT_THEIRS = (
    "is not a practice's to change; a profile may change keys of practice, caution, step, normal, achieved, "
    "auxiliary, tooth-size, space, crown, mouth, review"
)
BAD = {
    "no TOML": (b"name =", "practice profile: is not TOML: Invalid value (at end of document)"),
    "an unknown part": (
        b'name = "A"\nunits = "mm"\n[limits]\n"practice.tip" = 9\n',
        "practice profile: 'units' is not known here; only name, [limits] and [severities] are",
    ),
    "no name": (b'[limits]\n"practice.tip" = 9\n', "practice profile: 'name' must be words"),
    "no limits": (b'name = "A"\n', "practice profile: 'limits' must be a table of keys and numbers"),
    "weights that are no table": (
        b'name = "A"\nseverities = "stop"\n',
        "practice profile: 'severities' must be a table of rules and weights",
    ),
    "a rule that is none": (
        b'name = "A"\n[severities]\n"deep" = "note"\n',
        "practice profile: 'deep' is no clinical rule; the nearest is 'deep-one'",
    ),
    "a rule switched off": (
        b'name = "A"\n[severities]\n"deep-one" = "off"\n',
        "practice profile: 'deep-one' weighs stop, ask, caution, note, not 'off'; no rule can be switched off",
    ),
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
        f"practice profile: 'kinematics.hinge.least' {NOT_THEIRS}",
    ),
    "a size of a tooth": (
        b'name = "A"\n[limits]\n"tooth-width.11" = 8\n',
        f"practice profile: 'tooth-width.11' {NOT_THEIRS}",
    ),
    "a plausible range": (
        b'name = "A"\n[limits]\n"plausible.mm.overbite.most" = 20\n',
        f"practice profile: 'plausible.mm.overbite.most' {NOT_THEIRS}",
    ),
}


@pytest.mark.parametrize("content,message", BAD.values(), ids=BAD)
def test_a_bad_profile_is_refused_in_words(content, message):
    with pytest.raises(norms.NormError) as caught:
        norms.with_profile(content, {"deep-one": Severity.STOP})
    assert str(caught.value) == message


def test_a_profile_weighs_a_rule_and_the_change_is_named():
    numbers = norms.with_profile(b'name = "A"\n[severities]\n"deep-one" = "note"\n', {"deep-one": Severity.STOP})
    assert numbers.changes == (("deep-one", "stop", "note"),)
    assert numbers.severity("deep-one", Severity.STOP) == Severity.NOTE
    assert numbers.severity("another", Severity.ASK) == Severity.ASK


def test_a_profile_changes_what_it_names_and_nothing_else():
    ours, theirs = norms.load(), norms.with_profile(STRICT)
    changed = {norm.key for norm in ours if norm != theirs.norm(norm.key)}
    assert changed == {KEY, "practice.midline"}
    assert (theirs.value(KEY), ours.value(KEY)) == (0.4, 0.5)
    assert theirs.family("practice.reduction-per-contact")["lower-incisors"] == 0.4


@pytest.mark.parametrize(
    "key",
    [
        "practice.tip",
        "caution.midline",
        "step.torque",
        "normal.interincisal.most",
        "achieved.poor",
        "auxiliary.rotation.canines",
        "mouth.wait.minor-injury",
    ],
)
def test_a_practice_may_change_what_rules_ask_by(key):
    changed = norms.with_profile(f'name = "Own"\n[limits]\n"{key}" = 17\n'.encode())
    assert [change.key for change in changed.changes] == [key]
    assert (changed.value(key), norms.value(key) != 17) == (17, True)


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
