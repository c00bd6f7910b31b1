"""A document as a FHIR R4 bundle: the original attached, and beside it what of it FHIR has places for."""

from wellposed_converters.fhir.form import FORM

__all__ = ["FORM"]
