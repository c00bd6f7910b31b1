"""Goals, movements and what is kept."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from wellposed.model.base import Quantity
from wellposed.model.clauses import (
    Align,
    Close,
    CloseArch,
    Hold,
    KeepMeasure,
    KeepMotion,
    KeepVariable,
    Leave,
    Level,
    Movement,
    Reach,
)
from wellposed.render.readback.measured import measure, valued
from wellposed.render.readback.senses import BOTH_WAYS, motion_noun, moved
from wellposed.render.readback.sentence import Context, Teller, saying
from wellposed.render.readback.words import amount, bounded, contacts, each, teeth
from wellposed.vocabulary.teeth import arch_of

__all__ = ["BINDING"]


def _align(part: Align, ctx: Context) -> str:
    del ctx
    return f"align {teeth(part.align)}{_beyond(part.overcorrection)}"


def _level(part: Level, ctx: Context) -> str:
    del ctx
    return f"level the {part.level} arch (levelling by itself states no amount)"


def _close(part: Close, ctx: Context) -> str:
    del ctx
    return f"close the space at {contacts(part.close)}"


def _close_arch(part: CloseArch, ctx: Context) -> str:
    left = any(isinstance(goal, Leave) and arch_of(goal.leave[:2]) == part.close_arch for goal in ctx.rx.goals or ())
    return f"close all spaces in the {part.close_arch} arch{' but those a goal leaves' if left else ''}"


def _leave(part: Leave, ctx: Context) -> str:
    del ctx
    return f"leave a space of exactly {amount(part.amount, part.unit)} at {contacts([part.leave])}"


def _reach(part: Reach, ctx: Context) -> str:
    del ctx
    bounds = (
        None if bound is None else valued(part.measure, bound, part.unit) for bound in (part.at_least, part.at_most)
    )
    return f"bring the {measure(part.measure, part.pair)} to {bounded(*bounds)}"


def _movement(part: Movement, ctx: Context) -> str:
    del ctx
    bounds = (None if bound is None else amount(bound, part.unit) for bound in (part.at_least, part.at_most))
    return f"{moved(part.motion, part.teeth)}, {each(part.teeth)}by {bounded(*bounds)}{_beyond(part.overcorrection)}"


def _beyond(further: Quantity | None) -> str:
    """How much further the plan should go."""
    if further is None:
        return ""
    of_it = " of the movement" if further.unit == "percent" else ""
    return f", with an overcorrection of exactly {amount(further.value, further.unit)}{of_it}"


# what is kept


def _keep_measure(part: KeepMeasure, ctx: Context) -> str:
    del ctx
    return f"keep the {measure(part.measure, part.pair)}, at most {amount(part.within, part.unit)} of change either way"


def _keep_variable(part: KeepVariable, ctx: Context) -> str:
    del ctx
    limited = f"limit {BOTH_WAYS[part.variable]} of {teeth(part.teeth)}"
    return f"{limited}, {each(part.teeth)}to at most {amount(part.within, part.unit)} either way"


def _keep_motion(part: KeepMotion, ctx: Context) -> str:
    del ctx
    limited = f"limit {motion_noun(part.motion)} of {teeth(part.teeth)}"
    return f"{limited}, {each(part.teeth)}to at most {amount(part.within, part.unit)}"


def _hold(part: Hold, ctx: Context) -> str:
    del ctx
    return f"do not move {teeth(part.hold)} at all, and take no enamel off there"


BINDING: Mapping[type, Teller] = MappingProxyType(
    {
        Align: saying("change", None, _align),
        Level: saying("change", None, _level),
        Close: saying("change", None, _close),
        CloseArch: saying("change", None, _close_arch),
        Leave: saying("change", None, _leave),
        Reach: saying("change", None, _reach),
        Movement: saying("change", None, _movement),
        KeepMeasure: saying("stay", None, _keep_measure),
        KeepVariable: saying("stay", None, _keep_variable),
        KeepMotion: saying("stay", None, _keep_motion),
        Hold: saying("stay", None, _hold),
    }
)
"""What tells each clause that binds."""
