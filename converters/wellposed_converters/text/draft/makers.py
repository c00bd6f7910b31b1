"""One maker a kind of clause, and how a clause is given to its maker."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from wellposed_converters.text.draft import bites, built, enamel, motions, mouth, off_line, rooms, row, staying, widths
from wellposed_converters.text.draft.part import Facts, NotCarried, Order, Part

Maker = Callable[[Facts], tuple[Part, ...]]

MAKERS: Final[dict[str, Maker]] = {
    "overbite": bites.overbite,
    "overjet": bites.overjet,
    "openbite": bites.open_bite,
    "crossbite": bites.crossbite,
    "midline": bites.midline,
    "sagittal": bites.sagittal,
    "skeletal": bites.in_words,
    "curve_of_spee": bites.curve_of_spee,
    "crowding": bites.crowding,
    "occlusion": bites.in_words,
    "guidance": bites.in_words,
    "clearance": bites.in_words,
    "archform": bites.in_words,
    "space": rooms.space,
    "archwidth": widths.arch_width,
    "align": motions.align,
    "level": motions.level,
    "rotate": motions.rotate,
    "tip": motions.tip,
    "torque": lambda facts: motions.move(facts, facts.clause.dir),
    "incline": motions.incline,
    "intrude": lambda facts: motions.move(facts, facts.clause.dir),
    "extrude": lambda facts: motions.move(facts, facts.clause.dir),
    "move": motions.retract,
    "movement": staying.locked,
    "overcorrection": motions.overcorrected,
    "ipr": enamel.enamel_reduction,
    "attachment": built.attachment,
    "elastic": built.elastic,
    "cutout": built.other_part,
    "button": built.other_part,
    "hook": built.other_part,
    "bite_ramp": built.bite_raiser,
    "bite_block": built.bite_raiser,
    "pontic": built.pontic,
    "trim": built.trim,
    "retainer": built.retainer,
    "extraction": mouth.extraction,
    "tooth_status": mouth.tooth_status,
    "position": off_line.position_of,
    "restoration": mouth.restoration,
    "patient": mouth.patient,
    "history": mouth.remembered,
    "concern": mouth.remembered,
    "scope": row.scope,
    "staging": row.staging,
    "process": mouth.process,
}
"""Kinds without a maker are not carried: ``anchorage``, ``priority``."""

ADMINISTRATIVE: Final = frozenset(("note", "notation"))
"""Kinds that order nothing and find nothing: greetings, headings, the numbering."""
ALONE: Final = frozenset(
    ("align", "rotate", "tip", "torque", "incline", "intrude", "extrude", "move", "archwidth", "ipr", "extraction")
)
"""Kinds of which "only" says what the format's silence says: nothing else is opened."""


def made(order: Order, at: int) -> tuple[Part, ...]:
    """The parts of a clause. :raises NotCarried: when the format cannot say it, or not all of it."""
    facts = Facts(at, order.clauses[at], order)
    if facts.clause.pending:
        raise NotCarried("waits-for-an-answer")
    if facts.kind not in MAKERS:
        raise NotCarried("no-such-clause")
    parts = MAKERS[facts.kind](facts)
    if "condition" in facts.left:
        raise NotCarried("condition")
    if facts.left == {"only"} and facts.kind in ALONE and facts.mode != "forbid":
        facts.take("only")
        parts = (parts[0].assuming("only", "silence-is-no-change"), *parts[1:])
    facts.done()
    return tuple(_inferred(part, facts) for part in parts)


def _inferred(part: Part, facts: Facts) -> Part:
    """What the reading filled is shown as well."""
    return replace(part, assumed=(*part.assumed, *((name, "read-by-convention") for name in facts.clause.inferred)))
