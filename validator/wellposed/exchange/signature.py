"""Whether a signature is there, has the one form it may have, and fits the document and a key that is trusted."""

from __future__ import annotations

import re
from collections.abc import Iterator

from wellposed.declare import Rule, Told, rule, told
from wellposed.exchange import jws
from wellposed.exchange.arrival import Arrival
from wellposed.exchange.trust import in_force_for
from wellposed.findings import Severity

_ORDINARY = re.compile("[A-Za-z0-9_#-]{1,32}")


@rule(
    "not-signed",
    Severity.CAUTION,
    title="Nothing shows who sent the document, or that it is as it was sent.",
    do="Ask for a signature, or ask the sender in another way whether this is what was sent.",
)
def not_signed(arrival: Arrival) -> Iterator[Told]:
    """A document comes with a signature.

    Anybody can write a document in the name of a prescriber, and change one on its way. Without a signature that is not
    seen: it is never the same as signed.

    Passes: {}
    Fails: {"sender": "clinic-9/dr-1", "signature": null}
    """
    if arrival.signature is None:
        yield told("")


@rule(
    "signature-left-out",
    Severity.STOP,
    title="There is no signature, and a key of the sender named is at hand.",
    do="Ask the sender for the signature. Do not work from the document before it is there.",
)
def signature_left_out(arrival: Arrival) -> Iterator[Told]:
    """Who has given a key signs everything.

    Otherwise whoever wants to pass off a document leaves the signature away.

    Passes: {"sender": "clinic-9/dr-1", "signature": null}
    Fails: {"signature": null}
    """
    if arrival.signature is None and arrival.sender and any(in_force_for(arrival.trust, arrival.sender, arrival.now)):
        yield told(arrival.sender_at)


@rule(
    "signature-form",
    Severity.STOP,
    title="The signature does not have the form of one.",
    do="Ask for the signature file again, as it was written: no letter, blank or line break more or less.",
)
def signature_form(arrival: Arrival) -> Iterator[Told]:
    """A signature is a compact JWS of three parts between two points, the middle one empty, in base64url without
    padding, each letter the only one possible.

    A reader that repairs a signature accepts what nobody signed.

    Passes: {}
    Fails: {"signature": "eyJhbGciOiJFZDI1NTE5In0..AA="}
    """
    if arrival.signature is not None and arrival.parts is None:
        yield told("", expected="a compact JWS without its payload, and nothing behind it")


@rule(
    "signature-header",
    Severity.STOP,
    title="The header of the signature does not hold alg, kid and typ and nothing else.",
    do="Ask the sender to sign with a program that follows the specification.",
)
def signature_header(arrival: Arrival) -> Iterator[Told]:
    """A header holds `alg`, `kid` and `typ`, each a text, and nothing else.

    Other members would bring the key along that vouches for them (`jwk`, `jku`, `x5c`), change what is signed (`b64`),
    or ask for what the reader does not know (`crit`).

    Passes: {}
    Fails: {"header": {"b64": false, "crit": ["b64"]}}
    """
    if arrival.parts is None:
        return
    odd = sorted({*arrival.header} ^ {*jws.MEMBERS})
    odd += [name for name in jws.MEMBERS if name not in odd and not isinstance(arrival.header[name], str)]
    if odd:
        yield told("", names=[name for name in odd if _ORDINARY.fullmatch(name)], expected=list(jws.MEMBERS))


@rule(
    "signature-algorithm",
    Severity.STOP,
    title="The signature names another algorithm than Ed25519.",
    do="Ask the sender to sign with Ed25519.",
)
def signature_algorithm(arrival: Arrival) -> Iterator[Told]:
    """`alg` is `Ed25519`, to the letter.

    Where a reader takes several algorithms, the sender of a false document chooses the weakest, or none at all.

    Passes: {}
    Fails: {"header": {"alg": "none"}}
    """
    if arrival.parts is not None and arrival.header["alg"] != jws.ALGORITHM:
        yield told("", expected=jws.ALGORITHM)


@rule(
    "signature-type",
    Severity.STOP,
    title="The signature was made for something else than a document.",
    do="Ask for the signature of this document.",
)
def signature_type(arrival: Arrival) -> Iterator[Told]:
    """`typ` is `wellposed-signature`.

    A key may sign other things, such as the key that follows it. None of them can be passed off as a document.

    Passes: {}
    Fails: {"header": {"typ": "wellposed-key-change"}}
    """
    if arrival.parts is not None and arrival.header["typ"] != jws.TYPE:
        yield told("", expected=jws.TYPE)


@rule(
    "key-not-known",
    Severity.STOP,
    title="The signature was made with a key that is not trusted here.",
    do="Ask the sender for the key, have its words read back by telephone, and trust it; or refuse the document.",
)
def key_not_known(arrival: Arrival) -> Iterator[Told]:
    """`kid` is the thumbprint of a key in the receiver's own list.

    Anybody can make a key. Only one whose words were read back to its owner says who signed.

    Passes: {}
    Fails: {"signed_by": "a stranger"}
    """
    if arrival.parts is not None and arrival.key is None:
        yield told("")


@rule(
    "signature-does-not-fit",
    Severity.STOP,
    title="The document is not the one that was signed.",
    do="Ask the sender for both files again. Do not work from this one.",
)
def signature_does_not_fit(arrival: Arrival) -> Iterator[Told]:
    """The signature fits the canonical bytes of the document, made anew by the receiver.

    One letter changed after signing is enough for it not to fit. Blanks, the order of members and the way a number is
    written are not content, and may change.

    Passes: {}
    Fails: {"changed": {"revision": 1, "notation": "ISO 3950", "id": "HR-9"}}
    """
    parts, key = arrival.parts, arrival.key
    if parts is not None and key is not None and not jws.parts_fit(parts, arrival.signed, key):
        yield told("")


RULES: tuple[Rule[Arrival], ...] = (
    *(signature_left_out, not_signed),
    *(signature_form, signature_header, signature_algorithm, signature_type),
    *(key_not_known, signature_does_not_fit),
)
