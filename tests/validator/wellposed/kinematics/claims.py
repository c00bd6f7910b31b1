"""What a judgement claims of its conflicts, put to the exact solver."""

from functools import lru_cache

from tests.validator.wellposed.kinematics import exact
from tests.validator.wellposed.kinematics.generate import GROUP, Case, judged, must, prescription, read

CLOSE, NEAR = 1e-7, 1e-6  # what cannot hold must not even so loosened; what can hold must when loosened so


class Claims:
    """The variants in which a judgement says that its conflicts cannot hold, and what surrounds them."""

    def __init__(self, seed):
        self.judgement = judged(seed)
        self.case = Case(read(prescription(seed)))
        hinge = self.case.full.frame.hinge
        self.system = self.case.nominal.system
        self.ends = [[(self.system, name) for name in group] for group in hinge.stated]
        systems = [self.system, *(model.system for model in self.case.deeper)]
        self.proof = [(system, name) for system in systems for name in hinge.proof]

    def groups(self, conflict):
        """Groups of variants; in one of them none may hold."""
        return self.groups_like(conflict) if conflict in self.judgement.conflicts else self.ends

    def groups_like(self, conflict):
        """The same of a conflict of another judgement that should claim as much."""
        return [self.proof] if self.proven(conflict) else self.ends

    def proven(self, conflict):
        """Whether a conflict is told as a proof rather than for the stated values."""
        return conflict.proven

    def field_of(self, conflict):
        """The whole prescription without what the other conflicts ask for."""
        usual = limits_in(conflict)
        others = {key for other in self.judgement.conflicts for key in asked(other)} - set(conflict.members)
        return [key for key in must(self.case.full, limits=usual) if key not in others]


@lru_cache(maxsize=GROUP)
def claims_of(seed):
    """The claims of a seed: several tests look at the same ones in turn."""
    return Claims(seed)


def limits_in(conflict):
    return any(kind.name == "LIMIT" for kind in conflict.kinds.values())


def asked(conflict):
    return [key for key, kind in conflict.kinds.items() if kind.name == "DEMAND"]


def can_hold(group, members, slack, **strain):
    """Whether members can hold together in one of the variants."""
    return any(exact.holds(system, members, name, slack, **strain) for system, name in group)


def fault_of(groups, members):
    """What is wrong with a conflict; "" if in one of the groups it is one, and irreducible."""
    faults = [fault_in(group, members) for group in groups]
    return "" if "" in faults else " / ".join(faults)


def fault_in(group, members):
    if can_hold(group, members, CLOSE):
        return "can hold"
    spare = exact.reducible_by(members, lambda rest: can_hold(group, rest, NEAR))
    return f"does not need {spare}" if spare else ""
