"""Teeth, amounts and clauses in the trade's words. Pure functions over plain data."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import partial
from itertools import pairwise
from typing import Any

from wellposed.render.amounts import amount, bounded, changes, number
from wellposed.render.sides import sided
from wellposed.render.words import ATTACHMENT_WORDS, MEANS_WORDS, MOTION_VERBS, VARIABLE_WORDS
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.teeth import along_arch, arch_of, in_words, place, position, side_of

Said = Mapping[str, Any]

_CLASSES = {1: "incisors", 2: "incisors", 3: "canines", 4: "premolars", 5: "premolars"}


def teeth(listed: Iterable[str]) -> str:
    """Teeth in numbers and words: ``12 11 21 22 (upper incisors)``, ``13 to 23 (upper right canine to …)``."""
    named = list(listed)
    by_arch = [along_arch([tooth for tooth in named if arch_of(tooth) == arch]) for arch in ("upper", "lower")]
    return " and ".join(_of_arch(row) for row in by_arch if row)


def _of_arch(row: tuple[str, ...]) -> str:
    if len(row) == 1:
        return f"{row[0]} ({in_words(row[0])})"
    kinds = {_CLASSES.get(position(tooth), "molars") for tooth in row}
    numbers = " ".join(row)
    if len(kinds) == 1:
        sides = {side_of(tooth) for tooth in row}
        where = f"{arch_of(row[0])} {sides.pop()}" if len(sides) == 1 else arch_of(row[0])
        return f"{numbers} ({where} {kinds.pop()})"
    if _unbroken(row):
        return f"{row[0]} to {row[-1]} ({in_words(row[0])} to {in_words(row[-1])})"
    if len(row) <= 3:
        return " and ".join(f"{tooth} ({in_words(tooth)})" for tooth in row)
    return f"{numbers} ({arch_of(row[0])} teeth)"


def _unbroken(row: tuple[str, ...]) -> bool:
    places = [place(tooth) - (place(tooth) > 0) for tooth in row]
    return all(b - a == 1 for a, b in pairwise(places))


def contacts(listed: Iterable[str]) -> str:
    """Contacts by their numbers, the arch in words: ``33-32 32-31 (lower)``."""
    named = list(listed)
    arches = sorted({arch_of(contact[:2]) for contact in named}, reverse=True)
    return f"{' '.join(named)} ({' and '.join(arches)})"


def measure(said: Said) -> str:
    """A measure's name, with the tooth pair it is taken at."""
    words = MEASURE_KINDS[said["measure"]].words
    return f"{words} at {'/'.join(said['pair'])}" if said.get("pair") else words


def bounds(said: Said, part: str = "") -> str:
    """``at least 1.8 mm``, ``at most 2.2 mm``, ``1.8 to 2.2 mm``; one part of it if so asked."""
    low = None if part == "ceiling" else said.get("at_least")
    high = None if part == "floor" else said.get("at_most")
    unit = said["unit"]
    if sided(said.get("measure", "")):
        return bounded(said["measure"], low, high, unit)
    if low is not None and high is not None:
        return amount(high, unit) if low == high else f"{number(low)} to {amount(high, unit)}"
    if low is not None:
        return f"at least {amount(low, unit)}"
    return f"at most {amount(high or 0.0, unit)}"


def clause(said: Said, part: str = "") -> str:
    """A clause in words; ``part`` picks one bound of it."""
    for member, phrase in _FORMS:
        if member in said:
            return phrase(said, part)
    return "this clause"


def _movement(said: Said, part: str) -> str:
    joint = ", by " if "rotation" in said["motion"] else " by "
    return MOTION_VERBS[said["motion"]].format(teeth(said["teeth"])) + joint + bounds(said, part)


def _motion(said: Said, part: str) -> str:
    if "within" in said:
        verb = MOTION_VERBS[said["motion"]].format(teeth(said["teeth"]))
        return f"do not {verb} by more than {amount(said['within'], said['unit'])}"
    return _movement(said, part)


def _measured(said: Said, part: str) -> str:
    if "within" in said:
        return f"{measure(said)} within {amount(said['within'], said['unit'])}"
    return f"{measure(said)} {bounds(said, part)}"


def _variable(said: Said, part: str) -> str:
    del part
    return f"{VARIABLE_WORDS[said['variable']]} of {teeth(said['teeth'])} within {amount(said['within'], said['unit'])}"


def _use(said: Said, part: str) -> str:
    words = MEANS_WORDS[said["use"]]
    if said["use"] == "movement":
        words = MOTION_VERBS[said["motion"]].format(teeth(said["teeth"]))
        return f"{words} by up to {amount(said['up_to'], said['unit'])}"
    return words + _where(said) + _how_much(said, part)


def _where(said: Said) -> str:
    if said.get("teeth"):
        return f" of {teeth(said['teeth'])}"
    if said.get("contacts"):
        return f" at {contacts(said['contacts'])}"
    sides = f" {' and '.join(said['sides'])}" if said.get("sides") else ""
    return f",{sides} {said['arch']} arch" if said.get("arch") else f",{sides}" if sides else ""


def _how_much(said: Said, part: str) -> str:
    if part == "floor":
        return f", at least {amount(said['at_least'], said['unit'])}"
    bounds_of = {"up_to": "up to {}", "per_contact": "up to {} a contact", "in_all": "up to {} in all"}
    if part in ("per-contact", "in-all"):
        bounds_of = {part.replace("-", "_"): bounds_of[part.replace("-", "_")]}
    told = [words.format(amount(said[name], said["unit"])) for name, words in bounds_of.items() if name in said]
    return f", {', '.join(told)}" if told else ""


def _staging(said: Said, part: str) -> str:
    del part
    steps = [f"{VARIABLE_WORDS[s['variable']]} {amount(s['amount'], s['unit'])}" for s in said.get("largest_steps", ())]
    most = f"at most {said['most_aligners']} aligners" if "most_aligners" in said else "staging"
    return f"{most}, largest steps: {', '.join(steps)}" if steps else most


def _expected(said: Said, part: str) -> str:
    del part
    span = changes(said["measure"], said["at_least"], said["at_most"], said["unit"])
    return f"{measure(said)} to change, {span} ({said['ground'].replace('-', ' ')})"


def _attachment(member: str, said: Said, part: str) -> str:
    del part
    return ATTACHMENT_WORDS[member].format(teeth(said[member]))


def _built(said: Said, part: str) -> str:
    del part
    where = f" on {teeth(said['teeth'])}" if said.get("teeth") else f", {said['arch']} arch" if said.get("arch") else ""
    return str(said.get("part") or said["step"]).replace("-", " ") + where


_FORMS: tuple[tuple[str, Callable[[Said, str], str]], ...] = (
    ("align", lambda said, part: f"align {teeth(said['align'])}"),
    ("level", lambda said, part: f"level the {said['level']} arch"),
    ("close", lambda said, part: f"close the space at {contacts(said['close'])}"),
    ("close_arch", lambda said, part: f"close every space of the {said['close_arch']} arch"),
    (
        "leave",
        lambda said, part: f"leave {amount(said['amount'], said['unit'])} at {contacts([said['leave']])}",
    ),
    *((member, partial(_attachment, member)) for member in ATTACHMENT_WORDS),
    ("otherwise", lambda said, part: f"attachments elsewhere: {said['otherwise'].replace('-', ' ')}"),
    ("hold", lambda said, part: f"hold {teeth(said['hold'])}"),
    ("ground", _expected),
    ("variable", _variable),
    ("use", _use),
    ("motion", _motion),
    ("means", lambda said, part: f"no {MEANS_WORDS[said['means']]}{_where(said)}"),
    ("measure", _measured),
    ("most_aligners", _staging),
    ("part", _built),
    ("step", _built),
    ("strength", _staging),
)
