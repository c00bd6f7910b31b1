"""Who orders, who makes, for whom. The values of these sections never appear in a message."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wellposed.model.base import Date, Identifier, Part, Stated, one_line
from wellposed.vocabulary.terms import Dentition, Growth, Sex

Jurisdiction = Annotated[str, one_line("^[A-Z]{2}(-[A-Z0-9]{1,3})?$", 6, "a region code such as EU, GB or US-CA")]


class Prescriber(Part):
    """Who signs for the order; jurisdiction names whose work-order rules apply."""

    id: Identifier
    licence: Stated[Identifier] = None
    jurisdiction: Stated[Jurisdiction] = None


class Laboratory(Part):
    """Who makes it, and by when."""

    id: Identifier
    needed_by: Stated[Date] = None


class Patient(Part):
    """A pseudonymous reference and what the rules need to know."""

    reference: Identifier
    age_years: Stated[Annotated[float, Field(ge=0, le=120)]] = None
    sex: Stated[Sex] = None
    growth: Stated[Growth] = None
    dentition: Stated[Dentition] = None
