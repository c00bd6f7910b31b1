"""What a clause still lacks: a unit, an amount, what that measures, a direction; and amounts that are slips.

Rules R6, R8 and R9 of the reading. What a rule fills is marked as inferred, what it cannot fill is asked and pending.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import cache
from typing import Final, NamedTuple

from wellposed_converters.text.checks.amounts import amount_said, has_amount, is_exact
from wellposed_converters.text.checks.data import names
from wellposed_converters.text.checks.order import ACTED, WANTED
from wellposed_converters.text.checks.reach import is_everywhere, is_open
from wellposed_converters.text.clause import Clause, Question, quoted
from wellposed_converters.text.plausible import listed, most_of, overbite_unit, unit_of
from wellposed_converters.text.wording import options_of

NUMBER: Final = r"(?P<n>\d+(?:[.,·]\d+)?|[.,·]\d+)"
NO_UNIT: Final = frozenset(("note", "notation", "history", "process"))
WIDTHS: Final = frozenset(("archwidth",))


class Lack(NamedTuple):
    """What is asked of a clause: the question's type and name, and the facts its words need."""

    type: str
    asks: str
    facts: tuple[tuple[str, str], ...] = ()


Step = Callable[[Clause, str], tuple[Clause, tuple[Lack, ...]]]


def completeness(clauses: Sequence[Clause], text: str) -> tuple[tuple[Clause, ...], tuple[Question, ...]]:
    """The clauses with what the rules fill, in the same order, and a question for what they cannot."""
    full: list[Clause] = []
    questions: list[Question] = []
    for at, clause in enumerate(clauses):
        for step in STEPS:
            clause, lacks = step(clause, text)  # noqa: PLW2901  # each step goes on from the one before
            questions += [_question(lack, clause, at) for lack in lacks]
        full.append(clause)
    return tuple(full), tuple(questions)


def _question(lack: Lack, clause: Clause, at: int) -> Question:
    return Question(lack.type, lack.asks, clause.spans, options_of(lack.asks), (at,), lack.facts)


def _waiting(clause: Clause, *members: str) -> Clause:
    return clause.with_(pending=tuple(dict.fromkeys((*clause.pending, *members))))


def unit(clause: Clause, _: str) -> tuple[Clause, tuple[Lack, ...]]:
    """R6: the unit of a number without one; overbite by its size, inclination never."""
    if not has_amount(clause) or clause.unit is not None or clause.kind in NO_UNIT or "unit" in clause.pending:
        return clause, ()
    if clause.kind == "staging" and (clause.measure == "count" or clause.of == "steps"):
        return clause.with_(unit="count"), ()
    found = _unit(clause)
    if found is None:
        return _waiting(clause, "unit"), (Lack("missing_unit", "which-unit", _amount(clause)),)
    return clause.with_(unit=found, inferred=(*clause.inferred, "unit")), ()


def _unit(clause: Clause) -> str | None:
    if clause.kind == "overbite":
        bounds = [abs(bound) for bound in (clause.minimum, clause.maximum) if bound is not None]
        return overbite_unit(min(bounds), max(bounds))
    if clause.kind == "staging":
        return "mm" if clause.measure == "step" else None
    return unit_of(clause.kind)


def _amount(clause: Clause) -> tuple[tuple[str, str], ...]:
    return (("amount", amount_said(clause)),)


def approximate(clause: Clause, text: str) -> tuple[Clause, tuple[Lack, ...]]:
    """The word "about" beside the number makes it approximate."""
    if clause.approx or not has_amount(clause):
        return clause, ()
    values = {_value(found["n"]) for found in _about(quoted(text, clause.spans))}
    return clause.with_(approx=bool(values & {clause.minimum, clause.maximum})), ()


def _value(figures: str) -> float:
    return float(f"0{figures}".replace(",", ".").replace("·", "."))


def _about(words: str) -> list[re.Match[str]]:
    return [found for pattern in _approximations() for found in pattern.finditer(words)]


@cache
def _approximations() -> tuple[re.Pattern[str], ...]:
    before = "|".join(re.escape(word) for word in sorted(listed("approx", "before")))
    after = "|".join(re.escape(word) for word in sorted(listed("approx", "after")))
    return (
        re.compile(rf"(?:\b(?:{before})|(?<!\d)\s*~)\.?\s*{NUMBER}", re.IGNORECASE),
        re.compile(rf"{NUMBER}\s*(?:[a-z°%]+\s*)?(?:{after})\b", re.IGNORECASE),
    )


def amount(clause: Clause, _: str) -> tuple[Clause, tuple[Lack, ...]]:
    """R9: a change without an amount and without a target, and a permission without a bound."""
    if "amount" in clause.pending or clause.of == "means":
        return clause, ()
    if clause.mode in WANTED and _needs_amount(clause) and not has_amount(clause):
        return _without_amount(clause)
    permitted = clause.mode in ("permit", "limit") and clause.kind in listed("amount", "permitted")
    if permitted and clause.maximum is None:
        name = "ipr-how-much" if clause.kind == "ipr" else "how-much-at-most"
        return _waiting(clause, "amount"), (Lack("missing_amount", name),)
    return clause, ()


def _needs_amount(clause: Clause) -> bool:
    has_target = (clause.kind == "midline" and clause.ref is not None) or clause.of == "edge_to_edge"
    ends = clause.dir in listed("amount", "without") or has_target
    return clause.kind in listed("amount", "kinds") and not ends


def _without_amount(clause: Clause) -> tuple[Clause, tuple[Lack, ...]]:
    if clause.kind == "ipr":
        return _waiting(clause, "amount"), (Lack("missing_amount", "ipr-how-much"),)
    if _lacks_way(clause):
        return _waiting(clause, "amount", "dir"), (Lack("missing_amount", "which-way-and-how-much"),)
    return _waiting(clause, "amount"), (Lack("missing_amount", "how-much"),)


def place(clause: Clause, _: str) -> tuple[Clause, tuple[Lack, ...]]:
    """Enamel reduction and extraction are never done just anywhere; attachments are permitted anywhere, not wanted."""
    nowhere = is_everywhere(clause) and clause.arch is None and not is_open(clause)
    if clause.kind == "ipr" and clause.mode in WANTED and nowhere and "amount" not in clause.pending:
        return _waiting(clause, "contacts"), (Lack("teeth", "ipr-where"),)
    if clause.kind == "extraction" and clause.mode in ("permit", "limit", "prefer") and nowhere:
        return _waiting(clause, "teeth"), (Lack("teeth", "extraction-of-which"),)
    if clause.kind in names("bonded") and clause.mode in WANTED and nowhere and "teeth" not in clause.pending:
        return _waiting(clause, "teeth"), (Lack("teeth", "which-teeth"),)
    return clause, ()


def basis(clause: Clause, _: str) -> tuple[Clause, tuple[Lack, ...]]:
    """R8: per contact, per surface or in total, where there are several contacts; a width, per side or in total."""
    if clause.mode not in ACTED or not has_amount(clause) or clause.measure or "measure" in clause.pending:
        return clause, ()
    if clause.kind == "ipr" and len(clause.contacts) == 1:
        return clause.with_(measure="per_contact"), ()
    if clause.kind == "ipr":
        return _waiting(clause, "measure"), (Lack("reference", "per-contact-or-total", _amount(clause)),)
    if clause.kind in WIDTHS:
        return _waiting(clause, "measure"), (Lack("reference", "per-side-or-total", _amount(clause)),)
    return clause, ()


def way(clause: Clause, _: str) -> tuple[Clause, tuple[Lack, ...]]:
    """A rotation, a tip, a torque, an inclination or a movement says which way, unless it names a target."""
    if clause.mode in ACTED and clause.of != "means" and _lacks_way(clause) and clause.measure != "target":
        return _waiting(clause, "dir"), (Lack("missing_amount", "which-way"),)
    return clause, ()


def _lacks_way(clause: Clause) -> bool:
    return clause.kind in listed("amount", "directed") and clause.dir is None and "dir" not in clause.pending


def sign(clause: Clause, _: str) -> tuple[Clause, tuple[Lack, ...]]:
    """What a minus means must be said in words."""
    below = any(bound is not None and bound < 0 for bound in (clause.minimum, clause.maximum))
    return clause, ((Lack("meaning", "minus-sign", _amount(clause)),) if below else ())


def slip(clause: Clause, _: str) -> tuple[Clause, tuple[Lack, ...]]:
    """An amount that is likely a slip of the pen: far too much, or a change of nothing."""
    most = most_of(clause)
    amounts = [abs(bound) for bound in (clause.minimum, clause.maximum) if bound is not None]
    too_much = most is not None and any(bound > most for bound in amounts)
    return clause, ((Lack("implausible", "slip", _amount(clause)),) if too_much or _is_nothing(clause) else ())


def _is_nothing(clause: Clause) -> bool:
    return clause.mode in WANTED and clause.measure != "target" and is_exact(clause) and not clause.maximum


STEPS: Final[tuple[Step, ...]] = (unit, approximate, amount, place, basis, way, sign, slip)
"""In this order: a question of a later step may hang on what an earlier one filled or asked."""
