"""Systems, urls and the small data types of FHIR R4, made of the format's words."""

from __future__ import annotations

from typing import Any, Final
from uuid import UUID, uuid5

from wellposed.vocabulary.teeth import in_words, is_primary

Object = dict[str, Any]

BASE: Final = "urn:wellposed:fhir:1:"
"""Every url and system of ours begins so: a name, not an address. Nothing stands behind it to be fetched."""

UCUM: Final = "http://unitsofmeasure.org"
EX_TOOTH: Final = "http://terminology.hl7.org/CodeSystem/ex-tooth"
"""The tooth numbers FHIR R4 itself comes with (ISO 3950, permanent teeth only)."""

DIGEST: Final = BASE + "sha256"
DOCUMENT_ID: Final = BASE + "document-id"
UCUM_CODES: Final = {"mm": "mm", "deg": "deg", "percent": "%"}
_NAMESPACE = UUID("3f0d4c0e-6c0a-5b7e-9a51-6c6f1b1f6a10")


def system(name: str) -> str:
    """The system of one of our lists of codes, or of identifiers."""
    return BASE + name


def extension(name: str) -> str:
    """The url of an extension of ours."""
    return f"{BASE}extension:{name}"


def value_set(name: str) -> str:
    """The url of the set of all codes of a list."""
    return f"{BASE}all-of:{name}"


def full_url(digest: str, part: str) -> str:
    """The name of an entry in its bundle: the same for the same part of the same document (RFC 4122, version 5)."""
    return f"urn:uuid:{uuid5(_NAMESPACE, f'{digest}/{part}')}"


def concept(name: str, code: str, text: str | None = None) -> Object:
    """A CodeableConcept with one code of ours."""
    made: Object = {"coding": [{"system": system(name), "code": code}]}
    return made if text is None else made | {"text": text}


def tooth(number: str) -> Object:
    """A CodeableConcept for a tooth: our code, said in words, and FHIR's own for a permanent tooth."""
    own = {"system": system("tooth"), "code": number, "display": in_words(number)}
    return {"coding": [own] if is_primary(number) else [own, {"system": EX_TOOTH, "code": number}]}


def identified(name: str, value: str) -> Object:
    """A Reference by identifier alone: whom it means is known to those who gave the identifier."""
    return {"identifier": {"system": system(name), "value": value}}


def referred(to: str) -> Object:
    """A Reference to an entry of the same bundle."""
    return {"reference": to}


def quantity(value: float, unit: str) -> Object:
    """A Quantity in UCUM."""
    return counted(value, UCUM_CODES[unit])


def counted(value: float, code: str) -> Object:
    """A Quantity under a UCUM code, which is also how it is shown."""
    return {"value": shortest(value), "unit": code, "system": UCUM, "code": code}


def shortest(value: float) -> float:
    """The same number, a whole one without a point: in FHIR ``2.0`` claims a precision that nobody stated."""
    return int(value) if int(value) == value else value
