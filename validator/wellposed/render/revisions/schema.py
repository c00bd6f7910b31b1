"""The published schemas of comparisons and histories."""

from __future__ import annotations

from typing import get_args

from wellposed.model import DOCUMENTS
from wellposed.render.review.schema import unasked
from wellposed.render.schema_parts import (
    COUNT,
    NAME,
    POINTER,
    TEXT,
    Schema,
    closing,
    listed,
    named,
    one_of,
    or_null,
    ref,
)
from wellposed.report import READ_VERDICTS, REFUSED, UNREADABLE
from wellposed.review.result import Doing
from wellposed.revisions.meaning import SECTIONS
from wellposed.revisions.result import CHANGES, Turn
from wellposed.vocabulary.terms import ReviewOutcome

__all__ = ["comparison_schema", "history_schema"]

_DIGEST: Schema = {"type": "string", "pattern": "^[0-9a-f]{64}$"}
_REVISION: Schema = {"type": "integer", "minimum": 1}
_NUMBER: Schema = {"type": "number"}
_FLAG: Schema = {"type": "boolean"}
_ANY: Schema = {"description": "a value as it stands in the document; null where it is not there, or not repeated"}
_DOING: Schema = {"type": ["string", "null"], "enum": [*get_args(Doing), None]}
_KINDS = [name.removeprefix("wellposed/") for name in DOCUMENTS]


def comparison_schema() -> Schema:
    """One of three contents beside what every comparison says."""
    contents = (_prescriptions(), _setups(), _reviews())
    return {
        "oneOf": [
            named(**_head(kind), **content, **closing("comparison"))
            for kind, content in zip(_OF, contents, strict=True)
        ]
    }


_OF = ("prescription", "setup", "review")


def _head(kind: str) -> dict[str, Schema]:
    document = named(name=TEXT, **_identity())
    return {"of": {"type": "string", "const": kind}, "old": document, "new": document, "lineage": _lineage()}


def _identity() -> dict[str, Schema]:
    return {"id": TEXT, "revision": _REVISION, "sha256": _DIGEST}


def _lineage() -> Schema:
    replaces = {**or_null(_FLAG), "description": "null where the new document replaces nothing"}
    return named(follows=_FLAG, same_id=_FLAG, next_one=_FLAG, replaces=replaces, same=_FLAG)


def _prescriptions() -> dict[str, Schema]:
    verdict = one_of(list(READ_VERDICTS))
    findings = listed(ref("Finding"))
    fact = named(
        section=NAME,
        what={"type": "string"},
        change=one_of(["added", "dropped", "changed"]),
        before=_ANY,
        after=_ANY,
    )
    return {
        "counts": named(**dict.fromkeys(CHANGES, COUNT)),
        "verdicts": named(before=verdict, after=verdict),
        "introduced": {**findings, "description": "conflicts of the new revision alone, with places in it"},
        "settled": {**findings, "description": "conflicts of the old revision alone, with places in it"},
        "standing": findings,
        "clauses": listed(_clause()),
        "opposites": listed(named(before=TEXT, after=TEXT)),
        "facts": listed(fact),
    }


def _clause() -> Schema:
    item = or_null(named(id=TEXT, pointer=POINTER, words=TEXT))
    turn = one_of(list(get_args(Turn)))
    return named(
        change=one_of(list(CHANGES)),
        section=one_of(list(SECTIONS)),
        before=item,
        after=item,
        asks=turn,
        opens=turn,
        members=listed(named(name=TEXT, before=_ANY, after=_ANY)),
        id_reused={**_FLAG, "description": "an id named something else in the other revision"},
    )


def _setups() -> dict[str, Schema]:
    amount = named(
        what=NAME,
        where={"type": "string", "description": "tooth, contact, arch or tooth pair; empty for the whole"},
        unit={"type": "string"},
        before=or_null(_NUMBER),
        after=or_null(_NUMBER),
        difference=or_null(_NUMBER),
        changed={**_FLAG, "description": "by more than rounding, or stated in one only"},
    )
    aligners = listed(_REVISION)
    other = named(what=NAME, where={"type": "string"}, before=_ANY, after=_ANY)
    return {
        "answers": listed(named(**_identity())),
        "movements": listed(amount),
        "amounts": listed(amount),
        "path": or_null(named(upper=aligners, lower=aligners)),
        "others": listed(other),
    }


def _reviews() -> dict[str, Schema]:
    answers = listed(named(**_identity()))
    said = named(what=NAME, name={"type": "string"}, before=_ANY, after=_ANY)
    return {"answers": answers, "prescriptions": answers, "differences": listed(said)}


def history_schema() -> Schema:
    """Cases, and the files that could not be used."""
    unread = named(name=TEXT, verdict=one_of([UNREADABLE, REFUSED]), findings=listed(ref("Finding")))
    return named(cases=listed(_case()), unread=listed(unread), **closing("history"))


def _case() -> Schema:
    document = named(
        names=listed(TEXT),
        kind=one_of(_KINDS),
        **_identity(),
        issued=TEXT,
        answers=listed(named(**_identity())),
    )
    step = {"from": _REVISION, "to": _REVISION, "lineage": _lineage()}
    return named(
        id=TEXT,
        documents=listed(document),
        followed={**listed(_DIGEST), "description": "the prescriptions followed, by their digests"},
        findings=listed(ref("Finding")),
        comparisons=listed(named(**step, **_prescriptions())),
        clauses=listed(_thread()),
        setups=listed(named(id=TEXT, revision=_REVISION, answers=_REVISION, unasked=listed(unasked()))),
    )


def _thread() -> Schema:
    outcome = named(
        setup=TEXT,
        revision=_REVISION,
        outcome=one_of(list(get_args(ReviewOutcome))),
        doing=_DOING,
        leaning={"type": "boolean", "description": "met only with a change that is counted on"},
    )
    step = named(
        revision=_REVISION,
        change=one_of([*CHANGES, "asked", "again"]),
        clause=or_null(TEXT),
        outcomes=listed(outcome),
    )
    setup: Schema = {"type": "array", "prefixItems": [TEXT, _REVISION], "minItems": 2, "maxItems": 2}
    return named(
        id=TEXT,
        section=one_of(list(SECTIONS)),
        words=TEXT,
        standing=_FLAG,
        unmet_in_a_row=COUNT,
        undone=listed(named(met=setup, unmet=setup, doing=_DOING)),
        back_and_forth=listed(_REVISION),
        steps=listed(step),
    )
