"""The published schema of a review as JSON."""

from __future__ import annotations

from typing import get_args

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
    profile,
    ref,
)
from wellposed.report import READ_VERDICTS
from wellposed.review.result import Doing, Section
from wellposed.vocabulary.terms import ReviewOutcome

__all__ = ["review_schema", "unasked"]

_NUMBER: Schema = {"type": "number"}
_WHERE: Schema = {"type": "string", "description": "tooth, contact, arch or pair; empty for the mouth"}
_YES_NO: Schema = {"type": ["boolean", "null"], "description": "null where it cannot be told"}
_REVISION: Schema = {"type": "integer", "minimum": 1}


def review_schema() -> Schema:
    """All of it; ``Finding`` is defined beside it."""
    document = {"name": {**TEXT, "description": "base name of the file"}, "id": TEXT, "revision": _REVISION}
    outcomes = list(get_args(ReviewOutcome))
    return named(
        unmet={**listed(TEXT), "description": "clauses that must hold and do not, and allowances passed"},
        counts=named(**dict.fromkeys(outcomes, COUNT), unasked=COUNT),
        setup=named(**document),
        prescription=named(**document, verdict=one_of(list(READ_VERDICTS))),
        clauses=listed(_clause(outcomes)),
        unasked=listed(unasked()),
        measures=listed(_measure()),
        findings=listed(ref("Finding")),
        profile=profile(),
        **closing("setup-review"),
    )


def _span() -> Schema:
    """Bounds, either of which may be open."""
    return named(least=or_null(_NUMBER), most=or_null(_NUMBER))


def _doing() -> Schema:
    return {"type": "string", "enum": list(get_args(Doing))}


def _clause(outcomes: list[str]) -> Schema:
    strength: Schema = {"type": ["string", "null"], "enum": ["must", "prefer", None]}
    doing: Schema = {"type": ["string", "null"], "enum": [*get_args(Doing), None]}
    return named(
        clause=TEXT,
        section=one_of(list(get_args(Section))),
        pointer={**POINTER, "description": "into the prescription, RFC 6901"},
        strength=strength,
        outcome=one_of(outcomes),
        asked={**TEXT, "description": "the clause in words"},
        delivered={**listed(TEXT), "description": "what is delivered, in words"},
        doing={**doing, "description": "whose doing it is that the clause is not met"},
        against={**listed(TEXT), "description": "what the clause conflicts with, where no setup can meet it"},
        nearer={
            **or_null(named(amount=_NUMBER, unit=TEXT)),
            "description": "how much nearer another setup could have come with all else no worse",
        },
        parts=listed(_part()),
    )


def _part() -> Schema:
    return named(
        what=NAME,
        where=_WHERE,
        unit=TEXT,
        asked=_span(),
        before=or_null(_NUMBER),
        delivered=or_null(_span()),
        difference={**or_null(_NUMBER), "description": "how far outside the bounds, + above and - below"},
        tolerance=_NUMBER,
        met=_YES_NO,
        why={**or_null(NAME), "description": "why it cannot be told"},
        counted_on={**or_null(_span()), "description": "the change counted on, where it is met only with it"},
    )


def unasked() -> Schema:
    """What moved unasked."""
    return named(
        what=NAME,
        where=_WHERE,
        unit=TEXT,
        delivered=_NUMBER,
        opened={**_NUMBER, "description": "how far the prescription opens it in that sense"},
        beyond=_NUMBER,
        tolerance=_NUMBER,
        owner={**or_null(TEXT), "description": "the clause whose amount is passed"},
        doing=_doing(),
        nearer={**_NUMBER, "description": "how much of it another setup could have spared, where some but not all"},
    )


def _measure() -> Schema:
    return named(
        measure=NAME,
        where=_WHERE,
        unit=TEXT,
        before=or_null(_NUMBER),
        after={**or_null(_span()), "description": "computed from the movements, exactly"},
        is_change={"type": "boolean", "description": "whether after is a change, nothing being measured before"},
        linear={**or_null(_NUMBER), "description": "the same by the sums of the check"},
        claimed={**or_null(_NUMBER), "description": "as the setup states it"},
        tolerance=_NUMBER,
        agrees=_YES_NO,
    )
