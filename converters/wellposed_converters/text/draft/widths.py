"""Arch width: widened, narrowed, kept, or as it is."""

from __future__ import annotations

from typing import Final

from wellposed.vocabulary.teeth import ARCHES, arch_of, is_primary, mirrored, position
from wellposed.vocabulary.units import MM
from wellposed_converters.text.draft.bites import arches, told
from wellposed_converters.text.draft.data import data
from wellposed_converters.text.draft.measured import statement
from wellposed_converters.text.draft.motions import MEANS, allowed, bounded_means, ordered
from wellposed_converters.text.draft.part import Amount, Facts, NotCarried, Part, plain

USES: Final = {"expand": "widening", "constrict": "narrowing"}
NAMES: Final = {3: "canine", 4: "first-premolar", 5: "second-premolar", 6: "first-molar", 7: "second-molar"}


def arch_width(facts: Facts) -> tuple[Part, ...]:
    """The width of an arch. Per side is the travel of each tooth, in all is the width of each pair."""
    if facts.mode == "state":
        return _narrow(facts)
    if facts.mode == "keep" or (facts.mode == "limit" and facts.clause.dir is None):
        return _kept(facts)
    way, of = facts.take("dir"), facts.take("of")
    if of not in (None, MEANS) or way not in (*USES, None):
        raise NotCarried("more-than-the-format-says")
    if facts.mode == "forbid":
        return _forbidden(facts, way)
    if way is None:
        raise NotCarried("which-way")
    amount = facts.amount("per_side", "total")
    if amount is not None and (amount.about or amount.unit != MM):
        raise NotCarried("about" if amount.about else "unit-unknown")
    if bounded_means(of, amount) or facts.mode in ("permit", "limit"):
        return _allowed(facts, way, amount)
    return _ordered(facts, way, amount)


def _narrow(facts: Facts) -> tuple[Part, ...]:
    if facts.clause.of != "narrow" or facts.clause.arch is None:
        return told(facts)
    facts.take("of")
    return tuple(Part("problems", {"problem": "narrow-arch", "arch": arch}) for arch in arches(facts))


def _kept(facts: Facts) -> tuple[Part, ...]:
    """A named width, those of named pairs, or every width of the arch."""
    teeth = facts.teeth()
    of = facts.take("of")
    pairs = data()["width"].get(of or "every")
    if pairs is None:
        raise NotCarried("which-teeth")
    names = _measures(teeth) if teeth else [f"{arch}-inter-{pair}-width" for arch in arches(facts) for pair in pairs]
    parts = tuple(part for name in names for part in statement(facts, name))
    return tuple(part.assuming("measure", "between-first-molars") for part in parts) if of == "intermolar" else parts


def _measures(teeth: list[str]) -> list[str]:
    """The widths between the named teeth, each of which has its counterpart named too."""
    if any(mirrored(tooth) not in teeth or is_primary(tooth) or position(tooth) not in NAMES for tooth in teeth):
        raise NotCarried("which-teeth")
    return list(dict.fromkeys(f"{arch_of(tooth)}-inter-{NAMES[position(tooth)]}-width" for tooth in teeth))


def _forbidden(facts: Facts, way: str | None) -> tuple[Part, ...]:
    if facts.amount("per_side", "total") is not None:
        raise NotCarried("more-than-the-format-says")
    teeth = facts.teeth()
    arch = facts.take("arch")
    place = {"teeth": teeth} if teeth else ({"arch": arch} if arch in ARCHES else {})
    uses = [USES[way]] if way else list(USES.values())
    return tuple(Part("exclude", {"means": use, **place}) for use in uses)


def _allowed(facts: Facts, way: str, amount: Amount | None) -> tuple[Part, ...]:
    """Per side each tooth may go so far; in all the width of each pair may change so far."""
    teeth = facts.teeth()
    if amount is not None and facts.clause.measure == "per_side":
        if not teeth:
            raise NotCarried("which-teeth")
        return allowed(facts, "buccal" if way == "expand" else "lingual", teeth, amount)
    if amount is not None and (amount.low is not None or amount.high is None):
        raise NotCarried("not-one-value")
    named = {arch: [tooth for tooth in teeth if arch_of(tooth) == arch] for arch in ARCHES} if teeth else {}
    places = [(arch, found) for arch, found in named.items() if found] or [(arch, []) for arch in arches(facts)]
    return tuple(_change(USES[way], arch, found, amount) for arch, found in places)


def _change(use: str, arch: str, teeth: list[str], amount: Amount | None) -> Part:
    value = {"use": use, "arch": arch, "unit": MM} | ({"teeth": teeth} if teeth else {})
    if amount is None or amount.high is None:
        return Part("allow", value, ("up_to",))
    part = Part("allow", {**value, "up_to": plain(amount.high)})
    return part.assuming("up_to", "bound-included") if amount.below else part


def _ordered(facts: Facts, way: str, amount: Amount | None) -> tuple[Part, ...]:
    """Ordered per side, each named tooth goes outwards or inwards by so much."""
    teeth = facts.teeth()
    if not teeth:
        raise NotCarried("which-teeth")
    if amount is not None and facts.clause.measure == "total":
        raise NotCarried("total-of-both-sides")
    if facts.mode not in ("do", "prefer"):
        raise NotCarried("force-does-not-fit")
    part = ordered(facts, "buccal" if way == "expand" else "lingual", teeth, amount)
    return (part.assuming("motion", "width-per-side-is-travel"),)
