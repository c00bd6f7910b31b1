"""Landmark points in words: what is wrong with a table of them, what to look at again, what is missing."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from wellposed.landmarks.result import Doubt, Lack
from wellposed.render.amounts import number
from wellposed.vocabulary.measures import MEASURE_KINDS

__all__ = ["DOUBTS", "POINT_FAULTS", "WHYS", "doubt_text", "lacks_text"]

_NAMED = "name each coordinate in the header by the way it runs, such as left,back,up"
POINT_FAULTS = {
    "unknown-landmark": "no such landmark; this tooth can have {expected}",
    "landmark-not-of-this-tooth": "this tooth has no such landmark; it can have {expected}",
    "unknown-moment": "expected before, after or both",
    "face-has-no-moment": "the face does not move with the teeth; give its moment as both",
    "not-a-coordinate": "expected mm with a decimal point: up to three digits before it, up to {expected} after",
    "point-twice": "this point stands in line {first_line} already; leave one of the two out",
    "two-landmarks-in-one-place": "the landmark of line {first_line} of this tooth stands at the same place; "
    "place one of the two again",
    "moment-missing": "no tooth has a point {moment}; leave the column out if there is one moment only",
    "mirrored": "the teeth run against {axes}, so that the points are a mirror image of the mouth. Which way does "
    f"{{axis}} run in your file? If the other way, {_NAMED}",
    "turned-over": "the teeth run against {axes}. Which way does {axis} run in your file? "
    f"If the other way, {_NAMED}",
    "arch-upside-down": "roots and gums of the {arch} teeth lie on their biting side, and those of the opposing teeth "
    "do not. Do both arches stand in one frame, as they bite? If not, give each arch its own file",
    "axes-turned": "the {arch} teeth do not follow {axis} as their numbers say. Which way does it run in your file? "
    f"If another way, {_NAMED}; if not, are the numbers those of ISO 3950?",
    "plane-tilted": "the {arch} occlusal plane leans by {angle:.0f} degrees. Is {axis} square to it in your file? "
    "If not, turn the points where the file is made",
    "arches-apart": "opposing teeth are {apart:.0f} mm apart along {axis}. Do both arches stand in one frame, as they "
    "bite? If not, give each arch its own file",
    "width-not-plausible": "the contact points of {tooth} are {width:.2f} mm apart; a tooth has {least:g} to {most:g}. "
    "Is the file in mm, and are both points on this tooth?",
    "teeth-in-one-place": "{tooth} stands where {other} stands; which of the two is there?",
}
WHYS = {
    "gone": "no points after",
    "new": "no points before",
    "too-few-points": "fewer than three landmarks at both moments",
    "in-a-line": "its landmarks stand in one line; add another, such as gum or root",
    "no-crown-point": "no edge or cusp before",
    "no-arch-line": "too few teeth with both contact points for an arch line",
    "tipped-too-far": "tipped so far that torque and rotation cannot be told apart",
}
DOUBTS = {
    "turned-round": "{where}: its mesial contact lies further back on the arch than the distal one ({amount}° turned); "
    "are the two exchanged?",
    "upside-down": "{where}: its gum or root lies beyond its edge or cusp, by {amount} mm; are two of them exchanged?",
    "faces-aside": "{where} arch: it faces {amount}° to the side; does y run forward in your file?",
    "places-without-points": "{where}: no tooth between them has points, and what is free there counts as room, "
    "{amount} mm; is it missing, or not measured?",
    "not-plausible": "{where}: {amount} is beyond what mouths have; is the file in mm, and are its points in place?",
    "out-of-order": "{where}: stand on the arch in the other order, by {amount} mm; are the numbers right?",
    "loose-fit": "{where}: its points do not move together (residual {amount} mm); are they the same places before and "
    "after?",
    "mirrored": "{where}: its points after are a mirror image of those before; are two of them exchanged?",
    "moved-as-one": "{where} arch: all teeth move alike, by {amount} mm; is the frame the same before and after?",
}


def doubt_text(doubt: Doubt) -> str:
    """A sentence."""
    amount = "" if doubt.amount is None else number(doubt.amount)
    moment = f"{doubt.moment}, " if doubt.moment else ""
    kind = MEASURE_KINDS.get(doubt.where)
    return moment + DOUBTS[doubt.reason].format(where=kind.words if kind else doubt.where, amount=amount)


def lacks_text(lacks: Iterable[Lack]) -> str:
    """What is missing: ``no root of 11 21; no facial midline``."""
    by_kind = groupby(sorted(lacks, key=lambda lack: lack.what), key=lambda lack: lack.what)
    return "; ".join(_lack(what, [lack.where for lack in group]) for what, group in by_kind)


def _lack(what: str, where: list[str]) -> str:
    if what == "midline":
        return "no point on the facial midline"
    if what == "tooth":
        return f"no {' '.join(where)} teeth"
    if what == "arch-line":
        return f"too few {' and '.join(where)} teeth with both contact points for an arch line"
    if what == "reversed":
        return f"the {' '.join(where)} curve is the other way round"
    return f"no {what.replace('-', ' ')} of {' '.join(where)}"
