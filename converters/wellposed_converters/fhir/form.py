"""The form ``fhir``."""

from __future__ import annotations

from collections.abc import Sequence

from wellposed.formats import Form, Written
from wellposed.model.envelope import Envelope
from wellposed_converters.fhir.bundle import bundle, written
from wellposed_converters.fhir.faults import RULES
from wellposed_converters.fhir.reading import read

__all__ = ["FORM", "read", "write"]


def write(documents: Sequence[Envelope]) -> Written:
    """The bundle of one document. ValueError for none or several.

    Nothing is lost: the document itself is attached. What only it says, the bundle names where it has an order.
    """
    if len(documents) != 1:
        raise ValueError("a bundle carries one document")
    made = bundle(documents[0].model_dump(exclude_unset=True, mode="json")).resource
    return Written(written(made))


FORM = Form("fhir", "a FHIR R4 bundle in JSON, with the document attached", (".fhir.json",), read, write, rules=RULES)
