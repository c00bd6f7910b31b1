"""Bytes, keys and signatures against the standards' own examples, and against another library, joserfc, both ways."""

import json
import struct
import warnings
from base64 import urlsafe_b64decode

import pytest
import rfc8785
from joserfc import jws as jose
from joserfc.errors import BadSignatureError
from joserfc.jwk import OKPKey
from tests.validator.wellposed.exchange.arrivals import (
    DOCUMENT,
    KEY,
    KID,
    NOW,
    STRANGER,
    D,
    X,
    b64,
    header,
    trust,
    written,
    x_of,
)

from wellposed.check import sound_document
from wellposed.digests import canonical, digest_of
from wellposed.exchange import jws, keys
from wellposed.exchange.base64url import bytes_of, text_of
from wellposed.exchange.signing import signed
from wellposed.exchange.verification import verified
from wellposed.model.keys import PrivateKey, PublicKey

PRIVATE = PrivateKey.model_validate({**KEY, "d": D})
PUBLIC = PublicKey.model_validate(KEY)


# RFC 8785

# Appendix B: IEEE 754 bits, and the number as it is written.
NUMBERS = {
    "0000000000000000": "0",
    "8000000000000000": "0",
    "0000000000000001": "5e-324",
    "8000000000000001": "-5e-324",
    "7fefffffffffffff": "1.7976931348623157e+308",
    "ffefffffffffffff": "-1.7976931348623157e+308",
    "4340000000000000": "9007199254740992",
    "c340000000000000": "-9007199254740992",
    "4430000000000000": "295147905179352830000",
    "44b52d02c7e14af5": "9.999999999999997e+22",
    "44b52d02c7e14af6": "1e+23",
    "44b52d02c7e14af7": "1.0000000000000001e+23",
    "444b1ae4d6e2ef4e": "999999999999999700000",
    "444b1ae4d6e2ef4f": "999999999999999900000",
    "444b1ae4d6e2ef50": "1e+21",
    "3eb0c6f7a0b5ed8c": "9.999999999999997e-7",
    "3eb0c6f7a0b5ed8d": "0.000001",
    "41b3de4355555553": "333333333.3333332",
    "41b3de4355555554": "333333333.33333325",
    "41b3de4355555555": "333333333.3333333",
    "41b3de4355555556": "333333333.3333334",
    "41b3de4355555557": "333333333.33333343",
    "becbf647612f3696": "-0.0000033333333333333333",
    "43143ff3c1cb0959": "1424953923781206.2",
}


@pytest.mark.parametrize("bits, text", NUMBERS.items())
def test_numbers_are_written_as_appendix_b_has_them(bits, text):
    (number,) = struct.unpack(">d", bytes.fromhex(bits))
    assert canonical(number).decode() == text


@pytest.mark.parametrize("bits", ["7fffffffffffffff", "7ff0000000000000", "fff0000000000000"])
def test_numbers_that_are_none_are_refused(bits):
    with pytest.raises(rfc8785.FloatDomainError):
        canonical(struct.unpack(">d", bytes.fromhex(bits))[0])


# Sections 3.2.2 to 3.2.4: what is given, and the bytes that come out.
SAMPLE = (
    '{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],'
    r' "string": "\u20ac$\u000F\u000aA' + "'" + r'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}'
)
SAMPLE_BYTES = bytes.fromhex(
    "7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e"
    "756d62657273223a5b3333333333333333332e333333333333332c31652b3330"
    "2c342e352c302e3030322c31652d32375d2c22737472696e67223a22e282ac24"
    "5c75303030665c6e4127425c225c5c5c5c5c222f227d"
)
ORDER = {
    "\u20ac": "Euro Sign",
    "\r": "Carriage Return",
    "\ufb33": "Hebrew Letter Dalet With Dagesh",
    "1": "One",
    "\U0001f600": "Emoji: Grinning Face",
    "\u0080": "Control",
    "\u00f6": "Latin Small Letter O With Diaeresis",
}


def test_the_sample_comes_out_byte_for_byte():
    assert canonical(json.loads(SAMPLE)) == SAMPLE_BYTES


def test_names_stand_in_the_order_of_utf_16():
    assert list(json.loads(canonical(ORDER)).values()) == [
        "Carriage Return",
        "One",
        "Control",
        "Latin Small Letter O With Diaeresis",
        "Euro Sign",
        "Emoji: Grinning Face",
        "Hebrew Letter Dalet With Dagesh",
    ]


# sha256sum of the two bytes {}, by the program of GNU coreutils
def test_the_digest_is_sha_256():
    assert digest_of({}) == "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a"


# RFC 8032 section 7.1, tests 1 to 3: secret, public, message, signature
ED25519 = [
    (
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "",
        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    ),
    (
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "72",
        "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    ),
    (
        "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
        "af82",
        "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
    ),
]


@pytest.mark.parametrize("secret, x, message, expected", ED25519, ids=["test 1", "test 2", "test 3"])
def test_signatures_are_those_of_rfc_8032(secret, x, message, expected):
    d, x, message, expected = (bytes.fromhex(part) for part in (secret, x, message, expected))
    key = PrivateKey(kty="OKP", crv="Ed25519", x=text_of(x), d=text_of(d))
    assert keys.belongs(key)
    assert keys.signature(key, message) == expected
    assert keys.checked(key, message, expected)
    assert not keys.checked(key, message + b"\0", expected)


# The order of the group, RFC 8032 section 5.1: s + L signs alike where a reader does not look
L = 2**252 + 27742317777372353535851937790883648493


def test_a_signature_has_no_second_form():
    signature = keys.signature(PRIVATE, b"")
    other = (int.from_bytes(signature[32:], "little") + L).to_bytes(32, "little")
    assert not keys.checked(PUBLIC, b"", signature[:32] + other)


# RFC 8037 appendix A


def test_the_name_of_a_key_is_that_of_a_3():
    assert keys.thumbprint(X) == KID
    assert bytes_of(KID).hex() == "90facafea9b1556698540f70c0117a22ea37bd5cf3ed3c47093c1707282b4b89"


def test_the_signature_of_a_4_is_made_and_fits():
    message = "eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc"
    expected = "hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg"
    assert text_of(keys.signature(PRIVATE, message.encode())) == expected
    assert keys.checked(PUBLIC, message.encode(), bytes_of(expected))


# RFC 4648 section 10, without the padding; and the letters that differ in the alphabet for addresses
@pytest.mark.parametrize(
    "data, text",
    [(b"f", "Zg"), (b"fo", "Zm8"), (b"foo", "Zm9v"), (b"foob", "Zm9vYg"), (b"fooba", "Zm9vYmE"), (b"\xfb\xff", "-_8")],
)
def test_base64url_is_that_of_rfc_4648(data, text):
    assert (text_of(data), bytes_of(text)) == (text, data)


@pytest.mark.parametrize("text", ["", "Z", "Zg==", "Zg=", "Zh", "Zm9", "Zm9vZ", "+/8", "Zm 9v", "Zm9v\n", "Zm9\u00e9"])
def test_and_has_no_other_spelling(text):
    assert bytes_of(text) is None


# another library


def test_its_keys_are_read_and_ours_by_it():
    other = OKPKey.generate_key("Ed25519")
    ours = PrivateKey.model_validate(other.as_dict(private=True))
    assert keys.belongs(ours)
    assert keys.thumbprint(ours.x) == other.thumbprint()
    made = keys.made()
    assert OKPKey.import_key(made.model_dump()).thumbprint() == made.kid == keys.thumbprint(made.x)


def test_it_checks_what_is_signed_here():
    signature = signed(sound_document(written(DOCUMENT)), PRIVATE)
    key, payload = OKPKey.import_key(KEY), canonical(DOCUMENT)
    told = jose.deserialize_compact(signature, key, payload=payload, algorithms=["Ed25519"])
    assert told.headers() == {"alg": "Ed25519", "kid": KID, "typ": "wellposed-signature"}
    with pytest.raises(BadSignatureError):
        jose.deserialize_compact(signature, key, payload=payload + b" ", algorithms=["Ed25519"])


def test_what_it_signs_is_checked_here():
    key = OKPKey.import_key({**KEY, "d": D})
    text = jose.serialize_compact(json.loads(header()), canonical(DOCUMENT), key, algorithms=["Ed25519"])
    protected, payload, raw = text.split(".")
    assert urlsafe_b64decode(payload + "==") == canonical(DOCUMENT)
    assert verified(written(DOCUMENT), f"{protected}..{raw}".encode(), trust(), NOW).accepted


def test_its_signature_under_the_older_name_of_the_algorithm_is_refused():
    key = OKPKey.import_key({**KEY, "d": D, "alg": "EdDSA"})
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it warns that EdDSA is deprecated (RFC 9864)
        text = jose.serialize_compact(json.loads(header(alg="EdDSA")), canonical(DOCUMENT), key, algorithms=["EdDSA"])
    protected, _, raw = text.split(".")
    told = verified(written(DOCUMENT), f"{protected}..{raw}".encode(), trust(), NOW)
    assert [one.rule for one in told.findings] == ["signature-algorithm"]


def test_the_same_key_signs_alike_in_both():
    key = OKPKey.import_key({**KEY, "d": D})
    ours = jws.signed(b"x", PRIVATE)
    theirs = jose.serialize_compact(
        {"alg": "Ed25519", "kid": KID, "typ": "wellposed-signature"}, b"x", key, algorithms=["Ed25519"]
    )
    protected, payload, raw = theirs.split(".")
    assert payload == b64(b"x")
    assert ours == f"{protected}..{raw}"


@pytest.mark.parametrize(
    "text, payload, kind", [("", b"x", jws.TYPE), (None, b"y", jws.TYPE), (None, b"x", "wellposed-key-change")]
)
def test_a_signature_fits_one_text_one_kind_and_one_key(text, payload, kind):
    made = jws.signed(b"x", PRIVATE).encode() if text is None else text.encode()
    assert jws.fits(jws.signed(b"x", PRIVATE).encode(), b"x", PUBLIC)
    assert not jws.fits(made, payload, PUBLIC, kind)


def test_a_signature_does_not_fit_the_key_of_another():
    other = PublicKey(kty="OKP", crv="Ed25519", x=x_of(STRANGER))
    assert not jws.fits(jws.signed(b"x", PRIVATE).encode(), b"x", other)


def test_a_private_key_does_not_show_itself():
    made = keys.made()
    assert made.d not in repr(made)
    assert made.d not in str(made)
    assert "d" not in keys.public(made).model_dump()
