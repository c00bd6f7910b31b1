"""What a prescription says of each tooth and each contact, for the drawing of its arches."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.kinematics.excluded import excluded_senses
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import Sensed, sensed
from wellposed.kinematics.translate import Translation
from wellposed.model.clauses import Align, Close, CloseArch, Hold, Leave, Level
from wellposed.render.sheet.arches import line_of, mesial, notes_of, states_of, today_of
from wellposed.render.sheet.at_contacts import contacts_said
from wellposed.render.sheet.phrases import phrases_of
from wellposed.render.sheet.said import ArchSaid, Carrying, Standing, ToothSaid
from wellposed.render.sheet.words import short_name
from wellposed.vocabulary.motions import MOTIONS, VARIABLES, Variable
from wellposed.vocabulary.teeth import arch_of, is_molar, position

__all__ = ["ordered", "standing"]


def ordered(translation: Translation, arch: str) -> ArchSaid:
    """One arch as it is ordered."""
    mouth = translation.mouth
    row = mouth.rows[arch]
    teeth = tuple(_tooth(translation, tooth, width) for tooth, width in zip(row.initial, row.widths, strict=True))
    return ArchSaid(arch, line_of(row), teeth, tuple(contacts_said(mouth, row)), tuple(notes_of(mouth, arch)))


def _tooth(translation: Translation, tooth: str, width: float) -> ToothSaid:
    mouth = translation.mouth
    ways = _ways(mouth, tooth)
    along, out = ways.get("along", 0) * mesial(tooth), ways.get("out", 0)
    stands = standing(translation, tooth)
    said = [*states_of(mouth, tooth), *phrases_of(mouth, tooth)]
    if stands == "may" and not any(map(_permits, said)):
        said.append(_follows(translation, tooth))
    return ToothSaid(
        tooth,
        short_name(tooth),
        width,
        stands,
        tuple(one for one in said if stands not in ("held", "fixed") or not _permits(one)),
        way=(along, out) if along or out else None,
        vertical=ways.get("vertical", 0),
        turns=ways.get("rotation", 0) * mesial(tooth),
        carries=_carries(mouth, tooth),
        today=today_of(mouth, tooth),
    )


def _permits(phrase: str) -> bool:
    return phrase.startswith("may")


# how a tooth stands


def standing(translation: Translation, tooth: str) -> Standing:
    """The first that holds: it goes, cannot move, is held, is named by what moves, may move, is silent."""
    mouth = translation.mouth
    if tooth in mouth.extracted:
        return "gone"
    if tooth in mouth.locked:
        return "fixed"
    if any(isinstance(keep, Hold) and tooth in keep.hold for keep in mouth.prescription.keep or ()):
        return "held"
    if _untreated(mouth, tooth):
        return "held"
    if _named(mouth, tooth):
        return "moves"
    return _opened(translation, tooth)


def _untreated(mouth: Mouth, tooth: str) -> bool:
    treat = mouth.prescription.treat
    return treat is not None and treat.arches not in ("both", arch_of(tooth))


def _named(mouth: Mouth, tooth: str) -> bool:
    rx = mouth.prescription
    if any(tooth in item.teeth for item in rx.movements or ()):
        return True
    return any(_goal_names(goal, tooth) for goal in rx.goals or ())


def _goal_names(goal: object, tooth: str) -> bool:
    if isinstance(goal, Align):
        return tooth in goal.align
    if isinstance(goal, Level):
        return goal.level == arch_of(tooth) and not (is_molar(tooth) and position(tooth) == 6)
    if isinstance(goal, Close):
        return any(tooth in contact.split("-") for contact in goal.close) and not is_molar(tooth)
    if isinstance(goal, Leave):
        return tooth in goal.leave.split("-") and not is_molar(tooth)
    return isinstance(goal, CloseArch) and goal.close_arch == arch_of(tooth) and not is_molar(tooth)


def _opened(translation: Translation, tooth: str) -> Standing:
    """Whether something that is no keep opens any of its movements, and none excludes it."""
    keeps = {keep.id for keep in translation.rx.keep or ()}
    owners = set(_owners(translation, tooth))
    return "may" if owners - keeps else "held" if owners else "silent"


def _owners(translation: Translation, tooth: str) -> Iterator[str]:
    """The clauses that open a movement of the tooth which nothing excludes."""
    barred = {at for item in translation.rx.exclude or () for at in excluded_senses(translation.mouth, item)}
    for at in _senses(tooth):
        if at not in barred:
            yield from (one.owner for one in translation.opened.sources(at))


def _follows(translation: Translation, tooth: str) -> str:
    """For a tooth that only follows: what it may follow."""
    keeps = {keep.id for keep in translation.rx.keep or ()}
    owners = [owner for owner in dict.fromkeys(_owners(translation, tooth)) if owner not in keeps]
    return f"may follow ({', '.join(owners)})"


def _senses(tooth: str) -> Iterator[Sensed]:
    for variable in VARIABLES:
        yield from (sensed(tooth, variable, sign) for sign in (1, -1))


# marks


def _ways(mouth: Mouth, tooth: str) -> dict[Variable, int]:
    """The sense of every movement ordered of the tooth; one ordered both ways has none."""
    found: dict[Variable, set[int]] = {}
    for item in mouth.prescription.movements or ():
        if tooth in item.teeth:
            variable, sign = MOTIONS[item.motion]
            found.setdefault(variable, set()).add(sign)
    return {variable: next(iter(signs)) for variable, signs in found.items() if len(signs) == 1}


_CARRYING: tuple[tuple[str, Carrying], ...] = (
    ("must", "attached"),
    ("must_not", "bare"),
    ("prefer", "attachable"),
    ("prefer_not", "bare"),
    ("may", "attachable"),
)


def _carries(mouth: Mouth, tooth: str) -> Carrying | None:
    """What a clause that names the tooth says of an attachment on it."""
    clauses = mouth.prescription.attachments or ()
    for member, carrying in _CARRYING:
        if any(tooth in getattr(clause, member, ()) for clause in clauses):
            return carrying
    return None
