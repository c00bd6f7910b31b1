"""What a laboratory asks of a document beyond its signature and its place among the revisions."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from wellposed.declare import Rule, Told, rule, told
from wellposed.findings import Severity

__all__ = ["RULES", "Asked", "revision_withdrawn", "signature_required"]


@dataclass(frozen=True, slots=True)
class Asked:
    """A document at the intake.

    signed     whether a signature came with it
    must_sign  whether the laboratory takes in only what is signed
    revision   which revision it is
    withdrawn  the revisions of it that its sender has withdrawn
    """

    signed: bool
    must_sign: bool
    revision: int
    withdrawn: Collection[int] = ()


@rule(
    "signature-required",
    Severity.STOP,
    title="The document is not signed, and this laboratory takes in signed documents only.",
    do="Send it again with its signature.",
)
def signature_required(asked: Asked) -> Iterator[Told]:
    """A document comes with a signature, where the laboratory asks for one.

    Whether it asks is for the laboratory to say. What is not signed has then no effect on what is.

    Passes: {"signed": false}
    Fails: {"signed": false, "must_sign": true}
    """
    if asked.must_sign and not asked.signed:
        yield told("")


@rule(
    "revision-withdrawn",
    Severity.STOP,
    title="The sender has withdrawn this revision, or a later one.",
    do="Send the next revision with what holds now.",
)
def revision_withdrawn(asked: Asked) -> Iterator[Told]:
    """Neither the revision nor a later one was withdrawn.

    What was withdrawn does not come back, however often and in whichever order it is sent. Nor does what it replaced:
    whether that is wanted again, only its sender can say.

    Passes: {"revision": 3, "withdrawn": [2]}
    Fails: {"revision": 2, "withdrawn": [2]}
    """
    last = max(asked.withdrawn, default=0)
    if asked.revision <= last:
        yield told("/revision", value=asked.revision, found=f"revision {last} withdrawn")


RULES: tuple[Rule[Asked], ...] = (signature_required, revision_withdrawn)
