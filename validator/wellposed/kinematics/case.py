"""One prescription under question: its translations and models, made when first asked for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property

from wellposed import norms
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.rows import Key, Kind
from wellposed.kinematics.search import Alternatives, Members, Variant
from wellposed.kinematics.solve import Model
from wellposed.kinematics.translate import Translation
from wellposed.model.prescription import Prescription
from wellposed.norms import Norms

Groups = Sequence[Alternatives]
"""At the stated values: every group must hold, in one of its alternatives; one group an end of the hinge."""


@dataclass
class Case:
    """A prescription; ``extracting`` false leaves its extractions out."""

    prescription: Prescription
    numbers: Norms = field(default_factory=norms.load)
    extracting: bool = True
    taken: frozenset[str] | None = None

    @cached_property
    def mouth(self) -> Mouth:
        """The mouth."""
        return Mouth(self.prescription, self.extracting, taken=self.taken)

    @cached_property
    def quick(self) -> Translation:
        """The translation a feasible prescription needs: practice limits of opened movements only."""
        return Translation(self.mouth, 0.0, self.numbers)

    @cached_property
    def quick_model(self) -> Model:
        """The model of ``quick``."""
        return Model(self.quick.system)

    @cached_property
    def full(self) -> Translation:
        """The translation the search for conflicts and ways out needs."""
        return Translation(self.mouth, 0.0, self.numbers, whole=True)

    @cached_property
    def nominal(self) -> Model:
        """The model of ``full``."""
        return Model(self.full.system)

    @cached_property
    def kinds(self) -> dict[Key, Kind]:
        """What each member of ``full`` is."""
        return {key: member.kind for key, member in self.full.system.members.items()}

    @cached_property
    def deeper(self) -> tuple[Model, ...]:
        """The same at the other arch depths within the uncertainty of an assumed depth."""
        if all(row.measured_depth is not None or len(row.teeth) < 2 for row in self.mouth.rows.values()):
            return ()
        error = norms.value("arch.depth-error")
        return tuple(Model(Translation(self.mouth, o, self.numbers, whole=True).system) for o in (-error, error))

    def quick_groups(self) -> Groups:
        """The stated variants of the quick model; one end is enough where nothing moves the back teeth up or down."""
        return _groups(self.quick_model, self.quick, self.quick.hinge_live)

    def groups(self, both_ends: bool | None = None, model: Model | None = None) -> Groups:
        """The stated variants of a full model."""
        ends = self.full.hinge_live if both_ends is None else both_ends
        return _groups(model or self.nominal, self.full, ends)

    def proof(self) -> Alternatives:
        """Every variant in which the prescription might yet hold."""
        names = self.full.frame.hinge.proof
        return [Variant(model, name) for model in (self.nominal, *self.deeper) for name in names]

    def sensitive(self, members: Members) -> bool:
        """Whether arch depth can matter to a conflict: some member bounds a column whose coefficients change."""
        if not self.deeper:
            return False
        return not self._changing.isdisjoint(column for key in members for column in self.columns_of(key))

    @cached_property
    def _changing(self) -> set[int]:
        here, there = self.nominal.system.row_terms, self.deeper[0].system.row_terms
        return {column for a, b in zip(here, there, strict=True) if a != b for column in a}

    def columns_of(self, key: Key) -> set[int]:
        """The columns a member bounds, alone or in rows."""
        system = self.full.system
        return {
            column
            for bound in system.members[key].bounds
            for column in (system.row_terms[bound.at] if bound.is_row else (bound.at,))
        }


def _groups(model: Model, translation: Translation, both_ends: bool) -> Groups:
    groups = translation.frame.hinge.stated
    chosen = groups if both_ends else groups[:1]
    return tuple(tuple(Variant(model, name) for name in group) for group in chosen)


def must(translation: Translation, limits: bool) -> Members:
    """The members that count: no preference, no question about space; practice limits if asked for."""
    optional = {key for _, keys in translation.preferred for key in keys}
    return tuple(
        key
        for key, member in translation.system.members.items()
        if key not in optional and not is_space(key) and (limits or member.kind != Kind.LIMIT)
    )


def is_space(key: Key) -> bool:
    """Whether a member is the question about new space."""
    return isinstance(key, tuple) and key[0] == "space"
