"""Documents signed without the program: RFC 7515 by hand over rfc8785, hashlib and the key of RFC 8037 appendix A."""

import json
from base64 import urlsafe_b64decode, urlsafe_b64encode
from hashlib import sha256

import rfc8785
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from tests.validator.wellposed.consistency.answering import setup_document
from tests.validator.wellposed.consistency.ordinary import BASE, CROWDED_FRONT

from wellposed.exchange.verification import Received, Trust, verified

X = "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo"
D = "nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A"
KID = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k"
KEY = {"kty": "OKP", "crv": "Ed25519", "x": X, "kid": KID, "alg": "Ed25519", "use": "sig"}
SECRET = Ed25519PrivateKey.from_private_bytes(urlsafe_b64decode(D + "="))
STRANGER = Ed25519PrivateKey.from_private_bytes(bytes(range(32)))
NOW = "2026-03-05T08:00:00Z"
DOCUMENT = {**BASE, **CROWDED_FRONT}


def b64(data):
    return urlsafe_b64encode(data).rstrip(b"=").decode()


def written(document):
    return json.dumps(document).encode()


def digest(document):
    return sha256(rfc8785.dumps(document)).hexdigest()


def thumbprint(x):
    """RFC 7638 by its text: the required members in order, no blanks."""
    return b64(sha256(f'{{"crv":"Ed25519","kty":"OKP","x":"{x}"}}'.encode()).digest())


def x_of(secret):
    return b64(secret.public_key().public_bytes_raw())


def header(secret=SECRET, **members):
    """A header as the specification has it, with members put in; None takes one out."""
    said = {"alg": "Ed25519", "kid": thumbprint(x_of(secret)), "typ": "wellposed-signature", **members}
    return json.dumps({name: value for name, value in said.items() if value is not None}).encode()


def sealed(document, secret=SECRET, head=None):
    """The detached signature over a document."""
    protected = b64(header(secret) if head is None else head)
    signature = secret.sign(f"{protected}.{b64(rfc8785.dumps(document))}".encode())
    return f"{protected}..{b64(signature)}".encode()


def trusted(**members):
    """The list of keys of a laboratory, with one key in it."""
    key = {**KEY, "owners": ["clinic-17/dr-2"], **members}
    return {"format": "wellposed/trusted-keys", "version": "1.0", "holder": ["lab-4"], "keys": [key]}


def trust(**members):
    return Trust.model_validate(trusted(**members))


def received(document=DOCUMENT, **members):
    """A prescription as one that arrived before."""
    kept = {name: document.get(name) for name in ("format", "id", "revision", "replaces")}
    return Received(**{**kept, "sender": document["prescriber"]["id"], "digest": digest(document), **members})


def document_of(told):
    """The document of an example: the ordinary one with members put in, or a setup that names no laboratory."""
    if "setup" in told:
        return setup_document(**{"laboratory": None, **told["setup"]})
    sender = {"prescriber": {"id": told["sender"]}} if "sender" in told else {}
    document = {**DOCUMENT, **sender, **told.get("document", {})}
    return based(document)


def based(members):
    """Members in which ``replaces`` may stand for the digest of the ordinary document."""
    return {**members, "replaces": digest(DOCUMENT)} if members.get("replaces") == "BASE" else members


def sent(**told):
    """What arrives, told in short as on the pages of the rules: data, signature, keys, moment, what came before."""
    document = document_of(told)
    secret = STRANGER if "signed_by" in told else SECRET
    signature = sealed(document, secret, header(secret, **told.get("header", {})))
    if "signature" in told:
        signature = told["signature"] and told["signature"].encode()
    earlier = [received(**based(members)) for members in told.get("earlier", ())]
    data = written({**document, **told.get("changed", {})})
    return data, signature, trusted(**told.get("key", {})), told.get("now", NOW), earlier


def arrived(**told):
    """What is said of an arrival."""
    data, signature, keys, now, earlier = sent(**told)
    return verified(data, signature, Trust.model_validate(keys), now, earlier)
