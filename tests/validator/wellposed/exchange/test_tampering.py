"""Nothing that was changed verifies: every bit, every way of writing a signature otherwise, every weaker header.

The signatures are made without the program, in ``arrivals``.
"""

import json
from base64 import b64encode

import pytest
import rfc8785
from tests.validator.wellposed.consistency.ordinary import BASE
from tests.validator.wellposed.exchange.arrivals import (
    DOCUMENT,
    KEY,
    KID,
    NOW,
    SECRET,
    STRANGER,
    b64,
    digest,
    header,
    sealed,
    thumbprint,
    trust,
    written,
    x_of,
)

from wellposed.exchange import jws
from wellposed.exchange.verification import verified
from wellposed.model.keys import PublicKey

CANONICAL = rfc8785.dumps(DOCUMENT)
SIGNATURE = sealed(DOCUMENT)
PROTECTED, _, RAW = SIGNATURE.decode().split(".")
TRUST = trust()


def rules_of(data, signature):
    told = verified(data, signature, TRUST, NOW)
    assert not told.authentic
    assert told.signer is None
    return [one.rule for one in told.findings]


def flips(data):
    """The data with each of its bits turned over, one at a time."""
    for place in range(len(data)):
        for bit in range(8):
            yield data[:place] + bytes([data[place] ^ 1 << bit]) + data[place + 1 :]


def test_what_was_not_changed_verifies():
    assert verified(CANONICAL, SIGNATURE, TRUST, NOW).accepted


def test_no_bit_of_the_signed_bytes_can_be_turned_over():
    parts, key = jws.taken_apart(SIGNATURE), PublicKey.model_validate(KEY)
    assert jws.parts_fit(parts, CANONICAL, key)
    assert [turned for turned in flips(CANONICAL) if jws.parts_fit(parts, turned, key)] == []


def test_no_bit_of_a_document_can_be_turned_over():
    document, signature = rfc8785.dumps(BASE), sealed(BASE)
    assert verified(document, signature, TRUST, NOW).accepted
    assert [turned for turned in flips(document) if verified(turned, signature, TRUST, NOW).authentic] == []


def test_no_bit_of_a_signature_can_be_turned_over():
    turned = [*flips(SIGNATURE)]
    assert len(turned) == 8 * len(SIGNATURE)
    assert [one for one in turned if verified(CANONICAL, one, TRUST, NOW).authentic] == []


def test_every_beginning_of_a_signature_is_none():
    assert {rule for end in range(len(SIGNATURE)) for rule in rules_of(CANONICAL, SIGNATURE[:end])} == {
        "signature-form"
    }


# the same content, spelt otherwise


SPELLINGS = {
    "as it was signed": CANONICAL,
    "with blanks": json.dumps(DOCUMENT, indent=3).encode(),
    "with line breaks of another system": json.dumps(DOCUMENT, indent=1).encode().replace(b"\n", b"\r\n"),
    "members in another order": json.dumps(dict(reversed(DOCUMENT.items()))).encode(),
    "letters as escapes": CANONICAL.replace(b'"HR-2031"', b'"\\u0048R-2031"'),
    "a whole number with a decimal": CANONICAL.replace(b'"revision":1', b'"revision":1.0'),
    "an amount with a decimal more": CANONICAL.replace(b'"value":2.5', b'"value":2.50'),
    "an escaped slash": CANONICAL.replace(b"clinic-17/dr-2", b"clinic-17\\/dr-2"),
}


@pytest.mark.parametrize("data", SPELLINGS.values(), ids=SPELLINGS)
def test_the_same_content_spelt_otherwise_is_the_same_document(data):
    told = verified(data, SIGNATURE, TRUST, NOW)
    assert (told.accepted, told.digest) == (True, digest(DOCUMENT))


def test_the_spellings_are_different():
    assert len(set(SPELLINGS.values())) == len(SPELLINGS)


CHANGES = {
    "an amount": CANONICAL.replace(b'"value":2.5', b'"value":2.51'),
    "another tooth": CANONICAL.replace(b'"33-32"', b'"33-34"'),
    "an empty list for none stated": rfc8785.dumps({**DOCUMENT, "notes": []}),
    "a section left out": rfc8785.dumps({name: part for name, part in DOCUMENT.items() if name != "keep"}),
    "teeth in another order": rfc8785.dumps(
        {**DOCUMENT, "goals": [{**DOCUMENT["goals"][0], "align": DOCUMENT["goals"][0]["align"][::-1]}]}
    ),
    "a blank within a text": CANONICAL.replace(b'"ISO 3950"', b'"ISO  3950"'),
    "the time written with another offset": CANONICAL.replace(b"T09:30:00+01:00", b"T08:30:00+00:00"),
}


@pytest.mark.parametrize("data", CHANGES.values(), ids=CHANGES)
def test_other_content_is_another_document(data):
    assert data != CANONICAL
    assert rules_of(data, SIGNATURE) == ["signature-does-not-fit"]


# signatures that are none


def other_last(text):
    """The same bytes by another last letter: the bits that are left over are not zero."""
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
    return text[:-1] + letters[letters.index(text[-1]) + 1]


FULL = f"{PROTECTED}.{b64(CANONICAL)}.{RAW}"
MALFORMED = {
    "nothing": "",
    "a blank": " ",
    "one point": ".",
    "two points": "..",
    "three points": "...",
    "four points": "....",
    "no point": PROTECTED + RAW,
    "no header": f"..{RAW}",
    "no signature": f"{PROTECTED}..",
    "one point only": f"{PROTECTED}.{RAW}",
    "a part too many": f"{PROTECTED}..{RAW}.",
    "a part before": f".{PROTECTED}..{RAW}",
    "five parts, as if encrypted": f"{PROTECTED}....{RAW}",
    "with its payload": FULL,
    "with another payload": f"{PROTECTED}.e30.{RAW}",
    "a line break behind": f"{PROTECTED}..{RAW}\n",
    "two line breaks behind": f"{PROTECTED}..{RAW}\r\n",
    "a blank behind": f"{PROTECTED}..{RAW} ",
    "a blank before": f" {PROTECTED}..{RAW}",
    "a tab behind": f"{PROTECTED}..{RAW}\t",
    "a NUL behind": f"{PROTECTED}..{RAW}\0",
    "a line break within": f"{PROTECTED}..\n{RAW}",
    "broken over lines": f"{PROTECTED}..{RAW[:40]}\n{RAW[40:]}",
    "a blank within": f"{PROTECTED}..{RAW[:40]} {RAW[40:]}",
    "padded": f"{PROTECTED}..{RAW}==",
    "padded by one": f"{PROTECTED}..{RAW}=",
    "a padded header": f"{PROTECTED}=..{RAW}",
    "a header one letter short": f"{PROTECTED[:-1]}..{RAW}",
    "a signature one letter short": f"{PROTECTED}..{RAW[:-1]}",
    "a letter more": f"{PROTECTED}..{RAW}A",
    "two letters more": f"{PROTECTED}..{RAW}AA",
    "of 63 bytes": f"{PROTECTED}..{b64(bytes(63))}",
    "of 65 bytes": f"{PROTECTED}..{b64(bytes(65))}",
    "another last letter": f"{PROTECTED}..{other_last(RAW)}",
    "letters of the other base64": f"{PROTECTED}..{RAW.replace('-', '+').replace('_', '/')}+",
    "a plus for a minus": f"{PROTECTED}..+{RAW[1:]}",
    "a slash for a line": f"{PROTECTED}../{RAW[1:]}",
    "an equals sign within": f"{PROTECTED}..{RAW[:8]}={RAW[9:]}",
    "percent codes": f"{PROTECTED}..{RAW[:8]}%41{RAW[9:]}",
    "a tilde": f"{PROTECTED}..~{RAW[1:]}",
    "in quotation marks": f'"{PROTECTED}..{RAW}"',
    "as JSON": json.dumps({"protected": PROTECTED, "payload": "", "signature": RAW}),
    "as JSON with several": json.dumps({"payload": "", "signatures": [{"protected": PROTECTED, "signature": RAW}]}),
    "with the word for it before": f"Bearer {PROTECTED}..{RAW}",
    "twice": f"{PROTECTED}..{RAW}{PROTECTED}..{RAW}",
    "twice in two lines": f"{PROTECTED}..{RAW}\n{PROTECTED}..{RAW}",
    "too long": f"{PROTECTED}..{'A' * 1000}",
    "a long header": f"{'A' * 1000}..{RAW}",
    "in hexadecimal": f"{PROTECTED}..{'ab' * 64}",
    "a header of plain text": f"{b64(b'Ed25519')}..{RAW}",
    "a header that is no object": f"{b64(b'[1]')}..{RAW}",
    "a header that is null": f"{b64(b'null')}..{RAW}",
    "a header cut short": f"{b64(header()[:-1])}..{RAW}",
    "a header with more behind": f"{b64(header() + b'x')}..{RAW}",
    "a header with a name twice": f"{b64(header()[:-1] + b',' + header()[1:])}..{RAW}",
    "a header with a mark before": f"{b64(bytes([0xEF, 0xBB, 0xBF]) + header())}..{RAW}",
    "a header that is not UTF-8": f"{b64(header().replace(b'Ed25519', bytes([0xFF])))}..{RAW}",
    "a header in UTF-16": f"{b64(header().decode().encode('utf-16'))}..{RAW}",
    "a header with a comment": f"{b64(b'/**/' + header())}..{RAW}",
    "a header with NaN": f"{b64(header()[:-1] + b', ' + json.dumps('n').encode() + b': NaN}')}..{RAW}",
    "a deep header": f"{b64(b'[' * 200)}..{RAW}",
    "PEM": "-----BEGIN SIGNATURE-----\nAA\n-----END SIGNATURE-----",
    "the signature alone": RAW,
    "ordinary base64 of all": b64encode(SIGNATURE).decode(),
    "the document": CANONICAL.decode(),
    "large letters": SIGNATURE.decode().upper() + "Z",
    "digits of another script": f"{PROTECTED}..\u0661{RAW[1:]}",
    "full-width points": f"{PROTECTED}\uff0e\uff0e{RAW}",
    "a letter that looks alike": f"{PROTECTED}..\u0410{RAW[1:]}",
}


@pytest.mark.parametrize("text", MALFORMED.values(), ids=MALFORMED)
def test_a_signature_has_one_form(text):
    assert rules_of(CANONICAL, text.encode()) == ["signature-form"]


def test_there_are_enough_of_them():
    assert len(set(MALFORMED.values())) == len(MALFORMED) >= 60


# headers that ask for less


OWN = {"jwk": {**KEY, "x": x_of(STRANGER)}}
HEADERS = {
    "no algorithm": ({"alg": "none"}, "signature-algorithm"),
    "no algorithm, in other letters": ({"alg": "nOnE"}, "signature-algorithm"),
    "the name before": ({"alg": "EdDSA"}, "signature-algorithm"),
    "small letters": ({"alg": "ed25519"}, "signature-algorithm"),
    "a blank behind": ({"alg": "Ed25519 "}, "signature-algorithm"),
    "a NUL behind": ({"alg": "Ed25519\0"}, "signature-algorithm"),
    "another curve": ({"alg": "Ed448"}, "signature-algorithm"),
    "the key as a secret": ({"alg": "HS256"}, "signature-algorithm"),
    "a longer secret": ({"alg": "HS512"}, "signature-algorithm"),
    "RSA": ({"alg": "RS256"}, "signature-algorithm"),
    "ECDSA": ({"alg": "ES256"}, "signature-algorithm"),
    "an empty algorithm": ({"alg": ""}, "signature-algorithm"),
    "without algorithm": ({"alg": None}, "signature-header"),
    "an algorithm that is a number": ({"alg": 0}, "signature-header"),
    "an algorithm that is a list": ({"alg": ["Ed25519"]}, "signature-header"),
    "without key": ({"kid": None}, "signature-header"),
    "a key that is a number": ({"kid": 1}, "signature-header"),
    "a key that is an object": ({"kid": KEY}, "signature-header"),
    "without type": ({"typ": None}, "signature-header"),
    "another type": ({"typ": "JWT"}, "signature-type"),
    "the type in other letters": ({"typ": "Wellposed-Signature"}, "signature-type"),
    "the type of a change of keys": ({"typ": "wellposed-key-change"}, "signature-type"),
    "the whole media type": ({"typ": "application/wellposed-signature"}, "signature-type"),
    "a key of its own": (OWN, "signature-header"),
    "an address of keys": ({"jku": "https://keys.example/k.json"}, "signature-header"),
    "a certificate": ({"x5c": ["MIIB"]}, "signature-header"),
    "an address of certificates": ({"x5u": "https://keys.example/k.pem"}, "signature-header"),
    "a thumbprint of a certificate": ({"x5t#S256": "AAAA"}, "signature-header"),
    "bytes as they are": ({"b64": False, "crit": ["b64"]}, "signature-header"),
    "bytes as they are, not critical": ({"b64": False}, "signature-header"),
    "bytes as ever": ({"b64": True}, "signature-header"),
    "something critical": ({"crit": ["exp"], "exp": 1}, "signature-header"),
    "nothing critical": ({"crit": []}, "signature-header"),
    "a time": ({"iat": 1772612000}, "signature-header"),
    "a type of content": ({"cty": "application/json"}, "signature-header"),
    "compressed": ({"zip": "DEF"}, "signature-header"),
    "encrypted": ({"enc": "A256GCM"}, "signature-header"),
    "a member nobody knows": ({"note": "x"}, "signature-header"),
    "another spelling": ({"ALG": "Ed25519"}, "signature-header"),
    "the key of a stranger": ({"kid": thumbprint(x_of(STRANGER))}, "key-not-known"),
    "an empty key": ({"kid": ""}, "key-not-known"),
    "a key with a blank": ({"kid": f"{KID} "}, "key-not-known"),
    "a key as an address": ({"kid": f"urn:ietf:params:oauth:jwk-thumbprint:sha-256:{KID}"}, "key-not-known"),
    "a key as a path": ({"kid": "../keys.json"}, "key-not-known"),
}


@pytest.mark.parametrize("members, rule", HEADERS.values(), ids=HEADERS)
def test_a_header_that_asks_for_less_is_refused_however_it_is_signed(members, rule):
    """The signature itself is good: it was made over this very header, by the trusted key."""
    assert rules_of(CANONICAL, sealed(DOCUMENT, head=header(**members))) == [rule]


@pytest.mark.parametrize("members, rule", HEADERS.values(), ids=HEADERS)
def test_a_header_changed_after_signing_is_refused(members, rule):
    assert rules_of(CANONICAL, f"{b64(header(**members))}..{RAW}".encode()) == [rule]


def test_a_header_may_be_written_by_another_program():
    spaced = b'{ "typ":"wellposed-signature",\n "kid":"%s", "alg":"Ed2551\\u0039" }' % KID.encode()
    assert verified(CANONICAL, sealed(DOCUMENT, head=spaced), TRUST, NOW).accepted


def test_and_not_changed_into_that_afterwards():
    other = json.dumps(dict(reversed(json.loads(header()).items()))).encode()
    assert rules_of(CANONICAL, f"{b64(other)}..{RAW}".encode()) == ["signature-does-not-fit"]


# keys of others


def test_a_stranger_signs_in_vain():
    assert rules_of(CANONICAL, sealed(DOCUMENT, STRANGER)) == ["key-not-known"]


def test_a_stranger_who_names_the_trusted_key_signs_in_vain():
    assert rules_of(CANONICAL, sealed(DOCUMENT, STRANGER, header())) == ["signature-does-not-fit"]


def test_a_signature_of_another_document_of_the_sender_does_not_fit():
    assert rules_of(CANONICAL, sealed({**DOCUMENT, "id": "HR-2032"})) == ["signature-does-not-fit"]


def test_a_signature_over_the_digest_is_none_over_the_document():
    protected = b64(header())
    raw = SECRET.sign(f"{protected}.{b64(digest(DOCUMENT).encode())}".encode())
    assert rules_of(CANONICAL, f"{protected}..{b64(raw)}".encode()) == ["signature-does-not-fit"]


def test_a_signature_over_the_bytes_as_they_were_sent_is_none_over_their_meaning():
    data, protected = written(DOCUMENT), b64(header())
    raw = SECRET.sign(f"{protected}.{b64(data)}".encode())
    assert rules_of(data, f"{protected}..{b64(raw)}".encode()) == ["signature-does-not-fit"]
