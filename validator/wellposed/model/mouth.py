"""What is there: the arches to treat, the teeth, conditions of the whole mouth, the records."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, Strict

from wellposed.model.base import ArchTeeth, Date, Digest, Part, Stated, ToothList, ToothNumber, Words
from wellposed.vocabulary.terms import Arch, RecordKind, ToothState
from wellposed.vocabulary.terms import Condition as ConditionTerm


class Treat(Part):
    """Which arches are treated; for one that is not, whether a passive appliance is wanted."""

    arches: Literal["upper", "lower", "both"]
    passive_appliance: Stated[Literal["wanted", "not-wanted"]] = None


class ToothStates(Part):
    """What is not ordinary about one tooth."""

    tooth: ToothNumber
    states: Annotated[tuple[ToothState, ...], Strict(False), Field(min_length=1, max_length=17)]
    words: Stated[Words] = None


class Teeth(Part):
    """The teeth present in each arch, and per tooth what is not ordinary. Order carries no meaning."""

    upper: ArchTeeth
    lower: ArchTeeth
    particulars: Stated[Annotated[tuple[ToothStates, ...], Strict(False), Field(max_length=52)]] = None


class Condition(Part):
    """A condition of the whole mouth or of named teeth."""

    condition: ConditionTerm
    teeth: Stated[ToothList] = None
    words: Stated[Words] = None


class Record(Part):
    """A record the order rests on. The name is shown, never opened or fetched."""

    kind: RecordKind
    date: Stated[Date] = None
    sha256: Stated[Digest] = None
    name: Stated[Words] = None
    arch: Stated[Arch] = None
