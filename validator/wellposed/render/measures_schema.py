"""The schemas of ``wellposed measure``: what is derived from a document, and what landmark points tell."""

from __future__ import annotations

from typing import get_args

from wellposed.landmarks.result import Why
from wellposed.render.points_words import DOUBTS
from wellposed.render.schema_parts import COUNT, NAME, TEXT, Schema, closing, listed, named, one_of, or_null
from wellposed.vocabulary.landmarks import MOMENTS
from wellposed.vocabulary.measures import MEASURES, TOOTH_MEASURES
from wellposed.vocabulary.motions import VARIABLES

__all__ = ["measures_schema", "points_schema"]

_NUMBER: Schema = {"type": "number"}
_OBJECT: Schema = {"type": "object"}


def measures_schema() -> Schema:
    """Of ``wellposed/measures``."""
    document = named(name=TEXT, id=or_null(TEXT), revision=or_null({"type": "integer", "minimum": 1}))
    return named(document=document, measures=listed(_derived()), norms=listed(_norm()), **closing("measures"))


def _derived() -> Schema:
    return named(
        name=NAME,
        value={**or_null(_NUMBER), "description": "null for a grade, a range, or what was refused"},
        unit=one_of(["mm", "deg", "percent", "1"]),
        low=or_null(_NUMBER),
        high=or_null(_NUMBER),
        usual=or_null(named(least=_NUMBER, most=_NUMBER)),
        refused={**or_null(NAME), "description": "why it could not be derived"},
        **{"from": {**listed(TEXT), "description": "findings and clauses it comes from"}},
        norms={**listed(TEXT), "description": "keys of the norms used"},
        facts={"type": "object", "description": "what else there is to say; amounts as computed"},
    )


def _norm() -> Schema:
    return named(key=TEXT, value=_NUMBER, unit=TEXT, sure=TEXT, sources=listed(TEXT), note=TEXT)


def points_schema() -> Schema:
    """Of ``wellposed/points``. Amounts to six decimals; those of the two sections for documents to two."""
    unit = one_of(["mm", "deg", "percent"])
    lack = named(where=TEXT, what=TEXT)
    value = named(value=or_null(_NUMBER), lacks=listed(lack))
    doubt = named(reason=one_of(list(DOUBTS)), where=TEXT, moment={"type": "string"}, amount=or_null(_NUMBER))
    tooth_measure = named(name=one_of(list(TOOTH_MEASURES)), unit=unit, values=_by_moment(_amounts()))
    measures = named(name=one_of(list(MEASURES)), unit=unit, values=_by_moment(value), change=or_null(_NUMBER))
    return named(
        document=named(name=TEXT),
        moments=listed(one_of(list(MOMENTS))),
        teeth=COUNT,
        measures=listed(measures),
        tooth_measures=listed(tooth_measure),
        room={**_by_moment(_amounts()), "description": "contact to mm between its teeth on the arch line: gap +"},
        movements=listed(_moved()),
        look_again=listed(doubt),
        no_landmark_for=listed(one_of(list(MEASURES))),
        derived=listed(_derived()),
        norms=listed(_norm()),
        for_prescription=named(findings=listed(_OBJECT)),
        for_setup=named(movements=listed(_OBJECT)),
        **closing("points"),
    )


def _moved() -> Schema:
    variables: Schema = {"propertyNames": {"enum": list(VARIABLES)}}
    return named(
        tooth=TEXT,
        why_not={"enum": [*get_args(Why), None], "description": "why its variables cannot be told"},
        values={**_amounts(), **variables, "description": "mm and deg, all six or none"},
        spread_per_tenth={
            **_amounts(),
            **variables,
            "description": "standard deviations for 0.1 mm in every coordinate",
        },
        points=COUNT,
        residual=or_null(_NUMBER),
        shift=or_null({**listed(_NUMBER), "description": "of the edge or cusp in the frame of the file, mm"}),
        turned=or_null({**_NUMBER, "description": "the whole turn, deg"}),
    )


def _amounts() -> Schema:
    return {"type": "object", "additionalProperties": _NUMBER}


def _by_moment(form: Schema) -> Schema:
    """An object with the form for the one moment, or for both."""
    return {
        "type": "object",
        "properties": dict.fromkeys(MOMENTS, form),
        "additionalProperties": False,
        "required": ["before"],
    }
