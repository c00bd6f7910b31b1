"""What may be used, what may not, and what is counted on."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, Strict

from wellposed.model.base import (
    Amount,
    ClauseId,
    ContactList,
    Part,
    References,
    Signed,
    Stated,
    ToothList,
    ToothNumber,
    Unit,
    Words,
)
from wellposed.vocabulary.measures import Measure
from wellposed.vocabulary.motions import Motion, Variable
from wellposed.vocabulary.terms import Arch, Auxiliary, ElasticPattern, Ground, Side
from wellposed.vocabulary.terms import Means as MeansTerm

SideList = Annotated[tuple[Side, ...], Strict(False), Field(min_length=1, max_length=2)]
VariableList = Annotated[tuple[Variable, ...], Strict(False), Field(min_length=1, max_length=6)]


class Means(Part):
    """What every allowance has. It is a permission: it has no strength and restricts nothing."""

    id: ClauseId
    because: Stated[References] = None


class EnamelReduction(Means):
    """Enamel taken off at contacts, both teeth together; ``at_least`` makes an order of it."""

    use: Literal["enamel-reduction"]
    contacts: Stated[ContactList] = None
    arch: Stated[Arch] = None
    per_contact: Stated[Amount] = None
    in_all: Stated[Amount] = None
    at_least: Stated[Amount] = None
    unit: Unit


class IncisorTravel(Means):
    """The incisors of an arch, or named teeth, forward or back."""

    use: Literal["incisor-advance", "incisor-retraction"]
    arch: Arch
    teeth: Stated[ToothList] = None
    up_to: Amount
    unit: Unit


class WidthChange(Means):
    """Canines to second molars, or named teeth, apart or together; ``up_to`` bounds the width of each pair."""

    use: Literal["widening", "narrowing"]
    arch: Arch
    teeth: Stated[ToothList] = None
    up_to: Amount
    unit: Unit


class ArchSlide(Means):
    """First and second molars of an arch or a side, or named teeth, along the arch."""

    use: Literal["distal-movement", "mesial-movement"]
    arch: Arch
    sides: Stated[SideList] = None
    teeth: Stated[ToothList] = None
    up_to: Amount
    unit: Unit


class VerticalMovement(Means):
    """Named teeth up or down."""

    use: Literal["intrusion", "extrusion"]
    teeth: ToothList
    up_to: Amount
    unit: Unit


class AnyMovement(Means):
    """Any motion of named teeth."""

    use: Literal["movement"]
    teeth: ToothList
    motion: Motion
    up_to: Amount
    unit: Unit


class PosteriorOpenBite(Means):
    """The back teeth may end apart."""

    use: Literal["posterior-open-bite"]
    up_to: Amount
    unit: Unit


class Extraction(Means):
    """These teeth are taken out, and their gaps closed unless a goal leaves them."""

    use: Literal["extraction"]
    teeth: ToothList


class ClassElastics(Means):
    """Class II or III elastics on a side or both; 2 mm of tooth movement unless stated."""

    use: Literal["class-ii-elastics", "class-iii-elastics"]
    sides: SideList
    up_to: Stated[Amount] = None
    unit: Stated[Unit] = None


class Elastics(Means):
    """Other elastics. They open nothing by themselves."""

    use: Literal["elastics"]
    pattern: ElasticPattern
    teeth: ToothList


class AuxiliaryUse(Means):
    """Bite planes, blocks, screws. They open nothing by themselves."""

    use: Literal["auxiliary"]
    auxiliary: Auxiliary
    teeth: Stated[ToothList] = None
    words: Stated[Words] = None


class LaboratoryChoice(Means):
    """The laboratory may choose the named variables, or all of them; never reduction or extraction."""

    use: Literal["laboratory-choice"]
    variables: Stated[VariableList] = None
    teeth: Stated[ToothList] = None
    arch: Stated[Arch] = None


AnyAllowance = Annotated[
    EnamelReduction
    | IncisorTravel
    | WidthChange
    | ArchSlide
    | VerticalMovement
    | AnyMovement
    | PosteriorOpenBite
    | Extraction
    | ClassElastics
    | Elastics
    | AuxiliaryUse
    | LaboratoryChoice,
    Field(discriminator="use"),
]


class Exclusion(Part):
    """A means that must not be used, in the whole mouth or where stated."""

    id: ClauseId
    means: MeansTerm
    arch: Stated[Arch] = None
    teeth: Stated[ToothList] = None
    because: Stated[References] = None


class Expectation(Part):
    """A change that is counted on but not ordered, between signed bounds, and the ground for it."""

    id: ClauseId
    measure: Measure
    at_least: Signed
    at_most: Signed
    unit: Unit
    ground: Ground
    contacts: Stated[ContactList] = None
    tooth: Stated[ToothNumber] = None
    words: Stated[Words] = None
