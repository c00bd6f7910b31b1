"""What a clause opens, amount by amount: the openings of the arithmetic, and what it does not reckon with."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from math import inf
from typing import Any

from wellposed.kinematics.means import allowance_opens, clause_opens, reduction_contacts
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import Openings
from wellposed.model import making, means

Opens = dict[Hashable, float]


def opens(part: Any, mouth: Mouth) -> Opens:
    """The greatest amount of each thing a clause opens; an amount of nothing opens nothing."""
    amount, opened = allowance_opens(mouth, part)
    found = {**_reaches(opened, amount), **_reaches(clause_opens(mouth, part), 1.0)}
    more = _MORE.get(type(part))
    return {**found, **(more(part, mouth) if more else {})}


def _reaches(opened: Openings, amount: float) -> Opens:
    """The greatest reach of each sensed variable; what yields to other clauses is told apart from what does not."""
    found: Opens = {}
    for one in opened:
        reach = inf if one.rate == inf else one.rate * amount
        key = (*one.at, one.soft, one.usual)
        if reach > 0:
            found[key] = max(reach, found.get(key, 0.0))
    return found


def _enamel(part: means.EnamelReduction, mouth: Mouth) -> Opens:
    """The enamel of each contact and of all; a sum bounds the contact too, and the contacts the sum."""
    contacts = reduction_contacts(mouth, part)
    each = inf if part.per_contact is None else part.per_contact
    whole = inf if part.in_all is None else part.in_all
    reached: Opens = {("reduction", contact): min(each, whole) for contact in contacts}
    return {**reached, "reduction in all": min(whole, each * len(contacts)) if contacts else 0.0}


def _width(part: means.WidthChange, mouth: Mouth) -> Opens:
    _, opened = allowance_opens(mouth, part)
    return {(part.use, one.at.tooth): part.up_to for one in opened if one.at.variable == "out"}


def _gap(part: means.PosteriorOpenBite, mouth: Mouth) -> Opens:
    del mouth
    return {"gap at the back": part.up_to}


def _extraction(part: means.Extraction, mouth: Mouth) -> Opens:
    del mouth
    return {("extraction", tooth): 1.0 for tooth in part.teeth}


def _elastics(part: means.Elastics, mouth: Mouth) -> Opens:
    del mouth
    return {(part.pattern, tooth): 1.0 for tooth in part.teeth}


def _auxiliary(part: means.AuxiliaryUse, mouth: Mouth) -> Opens:
    del mouth
    return {(part.auxiliary, tooth): 1.0 for tooth in part.teeth or ("",)}


def _expected(part: means.Expectation, mouth: Mouth) -> Opens:
    """Both ends of the change counted on; a wider span opens more."""
    del mouth
    at = (part.measure, tuple(sorted(part.contacts or ())), part.tooth, part.unit)
    return {("up", *at): part.at_most, ("down", *at): -part.at_least}


def _may(part: making.AttachmentMay, mouth: Mouth) -> Opens:
    del mouth
    return {("attachment", tooth): 1.0 for tooth in part.may}


def _rest(part: making.AttachmentRest, mouth: Mouth) -> Opens:
    del mouth
    return {} if part.otherwise == "none" else {("attachment", "others"): 1.0}


_MORE: dict[type, Callable[[Any, Mouth], Opens]] = {
    means.EnamelReduction: _enamel,
    means.WidthChange: _width,
    means.PosteriorOpenBite: _gap,
    means.Extraction: _extraction,
    means.Elastics: _elastics,
    means.AuxiliaryUse: _auxiliary,
    means.Expectation: _expected,
    making.AttachmentMay: _may,
    making.AttachmentRest: _rest,
}
