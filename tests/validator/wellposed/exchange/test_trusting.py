"""The list of trusted keys: read strictly, and changed so that nothing once lost comes back."""

import json
from itertools import pairwise

import pytest
import rfc8785
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from tests.validator.wellposed.exchange.arrivals import (
    DOCUMENT,
    KEY,
    KID,
    NOW,
    STRANGER,
    X,
    sealed,
    thumbprint,
    trust,
    trusted,
    written,
    x_of,
)

from wellposed.exchange import changes, jws, keys
from wellposed.exchange.base64url import bytes_of
from wellposed.exchange.trust import Standing, standing
from wellposed.exchange.trusting import TrustError, added, content_of, empty, replaced, revoked, trust_of
from wellposed.exchange.verification import verified
from wellposed.model.keys import PrivateKey, PublicKey, SignedKeyChange
from wellposed.model.moments import time_of

MINE = "https://keys.example/"
SINCE, LATER = "2026-03-04T12:00:00Z", "2026-03-06T12:00:00Z"
OTHER = x_of(STRANGER)


def key(x=X, **members):
    return PublicKey.model_validate({"kty": "OKP", "crv": "Ed25519", "x": x, **members})


def made():
    return keys.made()


def put(members, **changed):
    return json.dumps({**trusted(**members), **changed}).encode()


def test_a_list_is_read_as_it_is_written():
    written_out = trusted(since=SINCE, until=LATER, recorded=NOW)
    assert content_of(trust_of(json.dumps(written_out).encode())) == written_out


FAULTS = {
    "nothing": b"",
    "not JSON": b"{",
    "a list": b"[]",
    "a document": written(DOCUMENT),
    "no object": b'"keys"',
    "a name twice": put({}).replace(b'"version"', b'"format": "wellposed/trusted-keys", "version"'),
    "a mark before": b"\xef\xbb\xbf" + put({}),
    "another version": put({}, version="2.0"),
    "another format": put({}, format="wellposed/prescription"),
    "without holder": json.dumps({n: v for n, v in trusted().items() if n != "holder"}).encode(),
    "held by nobody": put({}, holder=[]),
    "a member nobody knows": put({}, note="x"),
    "keys that are none": put({}, keys={}),
    "another type of key": put({"kty": "RSA"}),
    "another curve": put({"crv": "X25519"}),
    "an x too short": put({"x": X[:-1]}),
    "an x too long": put({"x": X + "A"}),
    "an x with bits over": put({"x": X[:-1] + "p"}),
    "a padded x": put({"x": X + "="}),
    "an x in other letters": put({"x": "+" + X[1:]}),
    "a kid of another key": put({"kid": thumbprint(OTHER)}),
    "a kid of its own choice": put({"kid": "key-1"}),
    "another algorithm": put({"alg": "EdDSA"}),
    "another use": put({"use": "enc"}),
    "a private key": put({"d": X}),
    "a key from elsewhere": put({"jku": MINE}),
    "of nobody": put({"owners": []}),
    "of one who is no text": put({"owners": [1]}),
    "of one with a blank": put({"owners": ["clinic 17"]}),
    "until no time": put({"until": "soon"}),
    "until a day": put({"until": "2027-03-01"}),
    "until no day of the calendar": put({"until": "2027-02-29T00:00:00Z"}),
    "ending before it begins": put({"since": LATER, "until": SINCE}),
    "ending as it begins": put({"since": SINCE, "until": SINCE}),
    "revoked without reason": put({"revoked": {"since": SINCE, "recorded": SINCE}}),
    "revoked for another reason": put({"revoked": {"since": SINCE, "recorded": SINCE, "reason": "lost"}}),
    "revoked on no day": put({"revoked": {"since": "2026-02-30T00:00:00Z", "recorded": SINCE, "reason": "ended"}}),
    "not revoked, as null": put({"revoked": None}),
    "a key twice": put({}, keys=trusted()["keys"] * 2),
}


@pytest.mark.parametrize("data", FAULTS.values(), ids=FAULTS)
def test_a_list_with_a_fault_is_not_used(data):
    with pytest.raises(TrustError) as told:
        trust_of(data)
    assert [secret for secret in (X, "clinic", "lab-4", MINE) if secret in str(told.value)] == []


# keys added and revoked


def test_a_key_is_added_with_its_thumbprint():
    grown = added(empty(["lab-4"]), key(), ["clinic-17/dr-2"], NOW, until=LATER)
    expected = {**KEY, "owners": ["clinic-17/dr-2"], "recorded": NOW, "until": LATER}
    assert content_of(grown) == {**trusted(), "keys": [expected]}
    assert trust_of(json.dumps(content_of(grown)).encode()) == grown


@pytest.mark.parametrize(
    "owners, stated",
    [
        ([], {}),
        (["clinic 17"], {}),
        (["clinic-17"], {"until": "never"}),
        (["clinic-17"], {"until": "2027-02-30T00:00:00Z"}),
        (["clinic-17"], {"since": LATER, "until": SINCE}),
    ],
)
def test_a_key_that_does_not_fit_is_not_added(owners, stated):
    with pytest.raises(TrustError):
        added(empty(["lab-4"]), key(), owners, NOW, **stated)


def test_a_key_is_not_added_twice_nor_under_another_name():
    with pytest.raises(TrustError, match="in the list"):
        added(trust(), key(), ["clinic-9/dr-1"], NOW)


def test_a_key_is_revoked_and_stays_in_the_list():
    after = revoked(trust(), KID, SINCE, "ended", NOW)
    assert content_of(after)["keys"][0]["revoked"] == {"since": SINCE, "reason": "ended", "recorded": NOW}


EARLIER = "2026-03-04T11:00:00Z"
AGAIN = {
    "ended, then compromised": (("ended", SINCE), ("compromised", LATER), True),
    "superseded, then compromised": (("superseded", SINCE), ("compromised", SINCE), True),
    "compromised, and earlier than thought": (("compromised", SINCE), ("compromised", EARLIER), True),
    "compromised, and later than thought": (("compromised", SINCE), ("compromised", LATER), False),
    "compromised, and the same again": (("compromised", SINCE), ("compromised", SINCE), False),
    "compromised, then only ended": (("compromised", SINCE), ("ended", EARLIER), False),
    "ended, and later than thought": (("ended", SINCE), ("ended", LATER), False),
    "ended, and earlier than thought": (("ended", SINCE), ("ended", EARLIER), False),
}


@pytest.mark.parametrize("first, second, goes", AGAIN.values(), ids=AGAIN)
def test_a_revocation_can_only_take_more_away(first, second, goes):
    before = revoked(trust(), KID, first[1], first[0], NOW)
    if goes:
        after = revoked(before, KID, second[1], second[0], NOW)
        assert (after.keys[0].revoked.reason, after.keys[0].revoked.since) == second
        return
    with pytest.raises(TrustError, match="was revoked"):
        revoked(before, KID, second[1], second[0], NOW)


def test_a_key_that_is_not_there_is_not_revoked():
    with pytest.raises(TrustError, match="not in the list"):
        revoked(trust(), thumbprint(OTHER), SINCE, "ended", NOW)


# one key after another


def chain(length):
    """Keys of one owner, each vouched for by the one before it, and the list they are in."""
    ring = [made() for _ in range(length)]
    held = added(empty(["lab-4"]), keys.public(ring[0]), ["clinic-17/dr-2"], "2026-03-01T00:00:00Z")
    for place, (old, new) in enumerate(pairwise(ring)):
        moment = f"2026-03-0{place + 2}T12:00:00Z"
        held = replaced(held, changes.change_signed(old, new, moment), moment)
    return ring, held


def test_three_changes_and_the_archive_still_verifies():
    """Each document was issued while its key was the one in force."""
    ring, held = chain(4)
    for place, secret in enumerate(ring):
        document = {**DOCUMENT, "issued": f"2026-03-0{place + 1}T18:00:00Z"}
        told = verified(written(document), sealed(document, _secret(secret)), held, "2026-03-20T08:00:00Z")
        assert told.authentic
        assert [one.rule for one in told.findings] == (["key-was-replaced"] if place < 3 else [])


@pytest.mark.parametrize("place, issued", [(0, "2026-03-02T12:00:00Z"), (1, "2026-03-02T11:59:59Z"), (3, NOW)])
def test_a_key_does_not_speak_for_the_time_of_another(place, issued):
    ring, held = chain(3)
    secret = (*ring, made())[place]
    document = {**DOCUMENT, "issued": issued}
    told = verified(written(document), sealed(document, _secret(secret)), held, "2026-03-20T08:00:00Z")
    assert not told.authentic


def _secret(one):
    return Ed25519PrivateKey.from_private_bytes(bytes_of(one.d))


def test_the_new_key_has_the_owners_and_the_end_of_the_old_one():
    old, new = made(), made()
    before = added(empty(["lab-4"]), keys.public(old), ["clinic-17/dr-2", "clinic-17"], SINCE, until=LATER)
    after = replaced(before, changes.change_signed(old, new, NOW), NOW).keys[1]
    assert (after.owners, after.until, after.since) == (("clinic-17/dr-2", "clinic-17"), LATER, NOW)
    assert (after.replaces, after.recorded, after.kid) == (old.kid, NOW, new.kid)


def test_with_a_compromised_key_go_those_it_has_vouched_for_since():
    ring, held = chain(4)
    after = revoked(held, ring[1].kid, "2026-03-03T00:00:00Z", "compromised", NOW)
    assert [one.revoked.reason if one.revoked else None for one in after.keys] == [
        "superseded",
        "compromised",
        "compromised",
        "compromised",
    ]


def test_and_those_it_vouched_for_before_stay():
    ring, held = chain(3)
    after = revoked(held, ring[0].kid, "2026-03-02T12:00:01Z", "compromised", NOW)
    assert [one.revoked.reason if one.revoked else None for one in after.keys] == ["compromised", "superseded", None]


def test_a_thief_who_dates_a_change_back_gains_nothing():
    """Whoever has the key can name any moment; when the change was noted is told by the receiver's own clock."""
    thief = made()
    ring, held = chain(1)
    robbed = replaced(held, changes.change_signed(ring[0], thief, "2020-01-01T00:00:00Z"), NOW)
    after = revoked(robbed, ring[0].kid, SINCE, "compromised", LATER)
    assert after.keys[1].revoked.reason == "compromised"


def changed(**members):
    old, new = made(), made()
    held = added(empty(["lab-4"]), keys.public(old), ["clinic-17/dr-2"], SINCE)
    content = content_of(changes.change_signed(old, new, NOW))
    return held, SignedKeyChange.model_validate({**content, **members.pop("put", lambda _: {})(content)})


FORGED = {
    "as it was signed": (lambda content: {}, None),
    "another moment": (lambda content: {"change": {**content["change"], "since": LATER}}, "do not fit"),
    "another new key": (
        lambda content: {"change": {**content["change"], "new": {"kty": "OKP", "crv": "Ed25519", "x": OTHER}}},
        "do not fit",
    ),
    "another old key": (lambda content: {"change": {**content["change"], "old": KID}}, "not in the list"),
    "the new key alone signed": (lambda content: {"by_old": content["by_new"]}, "do not fit"),
    "the old key alone signed": (lambda content: {"by_new": content["by_old"]}, "do not fit"),
    "the signatures changed about": (
        lambda content: {"by_old": content["by_new"], "by_new": content["by_old"]},
        "do not fit",
    ),
    "no signature": (lambda content: {"by_old": "", "by_new": ""}, "do not fit"),
    "letters that are none": (lambda content: {"by_new": content["by_new"] + "\u00e9"}, "do not fit"),
}


@pytest.mark.parametrize("put, words", FORGED.values(), ids=FORGED)
def test_a_change_of_keys_is_signed_by_both(put, words):
    held, signed = changed(put=put)
    if words is None:
        assert len(replaced(held, signed, NOW).keys) == 2
        return
    with pytest.raises(TrustError, match=words):
        replaced(held, signed, NOW)


def test_a_change_does_not_call_the_new_key_by_the_name_of_another():
    old, new = made(), made()
    held = added(empty(["lab-4"]), keys.public(old), ["clinic-17/dr-2"], SINCE)
    change = {**content_of(changes.change_signed(old, new, NOW))["change"]}
    change["new"] = {**change["new"], "kid": KID}
    by_old, by_new = (jws.signed(rfc8785.dumps(change), one, changes.TYPE) for one in (old, new))
    with pytest.raises(TrustError, match="do not fit"):
        replaced(held, SignedKeyChange.model_validate({"change": change, "by_old": by_old, "by_new": by_new}), NOW)


@pytest.mark.parametrize("reason", ["compromised", "superseded", "ended"])
def test_a_key_that_is_gone_vouches_for_nothing(reason):
    held, signed = changed()
    with pytest.raises(TrustError, match="not in force"):
        replaced(revoked(held, held.keys[0].kid, SINCE, reason, NOW), signed, NOW)


def test_a_change_is_taken_once():
    held, signed = changed()
    after = replaced(held, signed, NOW)
    with pytest.raises(TrustError, match="not in force"):
        replaced(after, signed, NOW)


def test_the_signature_of_a_document_is_no_change_of_keys():
    held, signed = changed()
    document = {**content_of(signed), "by_old": sealed(DOCUMENT).decode()}
    with pytest.raises(TrustError, match="do not fit"):
        replaced(held, SignedKeyChange.model_validate(document), NOW)


def test_halves_that_do_not_belong_together_are_noticed():
    one, other = made(), made()
    assert keys.belongs(one)
    assert not keys.belongs(PrivateKey.model_validate({**one.model_dump(), "d": other.d}))


def test_a_key_with_a_broken_time_is_never_in_force():
    one = trust(since="2026-02-30T00:00:00Z").keys[0]
    assert standing(one, time_of(NOW), time_of(NOW)) == Standing.OUTSIDE
