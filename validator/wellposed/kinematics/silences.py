"""What was not mentioned, and the allowances that would let it give way."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from wellposed.kinematics.openings import (
    Openings,
    follow_reduction,
    incisor_travel,
    molars,
    motion,
    usual_reduction_contacts,
    with_along,
    with_travel,
)
from wellposed.kinematics.repair import Repair
from wellposed.kinematics.rows import Key, Strain, StrainRow, loosened
from wellposed.kinematics.strains import opening_strain
from wellposed.kinematics.translate import Translation
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.motions import MOTIONS, VARIABLE_UNITS, Motion
from wellposed.vocabulary.teeth import SIDES, is_canine, is_incisor, is_molar, position
from wellposed.vocabulary.units import MM

_TRAVEL = {"incisor-advance": 1, "incisor-retraction": -1}
_WIDTH = {"widening": 1, "narrowing": -1}
_SLIDE = {"distal-movement": -1, "mesial-movement": 1}
_VERTICAL = {"intrusion": -1, "extrusion": 1}
_ANGLES: dict[str, tuple[Motion, ...]] = {
    "torque": ("labial-crown-torque", "lingual-crown-torque"),
    "tip": ("mesial-crown-tip", "distal-crown-tip"),
    "rotation": ("mesiolingual-rotation", "distolingual-rotation"),
}


def ways_of_silence(translation: Translation, key: Key, arch: str, group: str) -> Iterator[Repair]:
    """The allowances that would open what an arch is silent about."""
    if group == "gap":
        strain = Strain((key,), rows=loosened(translation.system, key))
        yield Repair("allow", key, strain, "mm", "posterior-open-bite")
    elif group == "reduction":
        yield _reduction(translation, key, arch)
    else:
        line = [t for t in translation.mouth.rows[arch].teeth if t not in translation.mouth.locked]
        yield from _movement(translation, key, arch, group, line)


def _movement(translation: Translation, key: Key, arch: str, group: str, line: list[str]) -> Iterator[Repair]:
    kind, _, variable = group.partition("-")
    if group == "along":
        yield from _along(translation, key, arch, line)
    elif group == "incisor-out":
        teeth = [tooth for tooth in line if is_incisor(tooth)]
        for use, sign in _TRAVEL.items():
            yield _allow(translation, key, use, incisor_travel(translation.mouth, teeth, sign), arch, teeth)
    elif group == "side-out":
        teeth = [tooth for tooth in line if 3 <= position(tooth) <= 7]
        for use, sign in _WIDTH.items():
            opened = with_along(motion(teeth, "out", sign), translation.mouth)
            yield _allow(translation, key, use, opened, arch, teeth)
    elif variable == "vertical":
        yield from _vertical(translation, key, arch, [tooth for tooth in line if _is(kind, tooth)], kind)
    else:
        yield from _angle(translation, key, arch, [tooth for tooth in line if _is(kind, tooth)], variable)


def _is(kind: str, tooth: str) -> bool:
    return is_incisor(tooth) if kind == "incisor" else is_canine(tooth) if kind == "canine" else position(tooth) > 3


def _vertical(translation: Translation, key: Key, arch: str, teeth: list[str], kind: str) -> Iterator[Repair]:
    """The bite rests on the first molars: extruding these opens it; to close it all the back teeth must go in."""
    for use, sign in _VERTICAL.items():
        first = [tooth for tooth in teeth if position(tooth) == 6]
        chosen = first if kind == "posterior" and sign > 0 and first else teeth
        yield _allow(translation, key, use, motion(chosen, "vertical", sign), arch, chosen)


def _angle(translation: Translation, key: Key, arch: str, teeth: list[str], variable: str) -> Iterator[Repair]:
    for name in _ANGLES[variable]:
        sense = MOTIONS[name]
        opened = with_along(with_travel(motion(teeth, *sense)), translation.mouth)
        yield _allow(translation, key, name, opened, arch, teeth)


def _along(translation: Translation, key: Key, arch: str, line: list[str]) -> Iterator[Repair]:
    back = [tooth for tooth in molars(translation.mouth, arch, SIDES) if tooth in line]
    for use, sign in _SLIDE.items():
        if back:
            yield _allow(translation, key, use, motion(back, "along", sign), arch, back)
    sliding = [tooth for tooth in line if not is_molar(tooth)]
    opened = motion(sliding, "along", 1) + motion(sliding, "along", -1)
    yield _allow(translation, key, "slide", opened, arch, sliding)


def _reduction(translation: Translation, key: Key, arch: str) -> Repair:
    """Enamel between the first molars; the teeth at the reduced contacts follow."""
    taken = {name for names in translation.bounds.reductions.values() for name in names}
    row = [contact.name for contact in translation.mouth.rows[arch].contacts if contact.name not in taken]
    usual = [name for name in usual_reduction_contacts(translation.mouth, arch) if name in row]
    columns = {name: translation.frame.contacts[name].reduction for name in row}
    rows = [StrainRow(dict.fromkeys((columns[name] for name in usual), 1.0), -1.0, -inf, 0.0)]
    rows += [StrainRow({columns[name]: 1.0}, 0.0, -inf, 0.0) for name in row if name not in usual]
    follow = opening_strain(translation, follow_reduction(map(teeth_of, usual), 1.0))
    strain = Strain((key,), follow.releases, (*rows, *follow.rows))
    facts = (("arch", arch), ("contacts", tuple(usual)))
    return Repair("allow", key, strain, "mm", "enamel-reduction", facts, irreversible=True)


def _allow(translation: Translation, key: Key, use: str, opened: Openings, arch: str, teeth: list[str]) -> Repair:
    facts = (("arch", arch), ("teeth", tuple(teeth)))
    unit = VARIABLE_UNITS[MOTIONS[use].variable] if use in MOTIONS else MM
    return Repair("allow", key, opening_strain(translation, opened), unit, use, facts)
