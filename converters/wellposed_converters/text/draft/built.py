"""What is bonded or built: attachments, elastics, planes and blocks, pontics, cut-outs, trimming, retainers."""

from __future__ import annotations

from typing import Any, Final

from wellposed.vocabulary.teeth import arch_of, side_of
from wellposed_converters.text.draft.bites import arches
from wellposed_converters.text.draft.data import term
from wellposed_converters.text.draft.measured import ARCHES
from wellposed_converters.text.draft.part import Facts, NotCarried, Part

LISTS: Final = {"do": "must", "forbid": "must_not", "permit": "may", "prefer": "prefer"}
CLASSES: Final = {"II": "class-ii-elastics", "III": "class-iii-elastics"}
SURFACES: Final = (None, "palatal", "lingual", "anterior", "posterior")
PARTS: Final = {"bite_ramp": "bite-plane", "bite_block": "bite-block"}
FRONT: Final = 3


def with_condition(facts: Facts, value: dict[str, Any]) -> dict[str, Any]:
    """The members, and the condition word for word: what is built can say it."""
    condition = facts.take("condition")
    return value | ({"words": condition} if condition else {})


def attachment(facts: Facts) -> tuple[Part, ...]:
    """Teeth that must, may, or must not carry one; without teeth it is said of all that no clause names."""
    if facts.mode not in LISTS:
        raise NotCarried("force-does-not-fit")
    value = with_condition(facts, {})
    of = facts.take("of")
    shape = term("shape", of)
    if of is not None and shape is None:
        raise NotCarried("more-than-the-format-says")
    reason = facts.take("ref")
    value |= ({"shape": shape} if shape else {}) | ({"reason": reason} if reason else {})
    teeth, member = facts.teeth(), LISTS[facts.mode]
    if teeth:
        only = facts.mode != "forbid" and facts.take("only")
        rest = (Part("attachments", {"otherwise": "none"}),) if only else ()
        return (Part("attachments", {member: teeth, **value}), *rest)
    if facts.clause.arch in ARCHES:
        part = Part("attachments", value, fill=(member, facts.take("arch")))
        return (part.assuming(member, "all-teeth-present"),)
    facts.take("arch")
    if member in ("must", "prefer"):
        raise NotCarried("which-teeth")
    return (Part("attachments", {"otherwise": "none" if member == "must_not" else "laboratory-decides", **value}),)


def elastic(facts: Facts) -> tuple[Part, ...]:
    """Elastics as a means, and where each begins and ends."""
    kind, of = _class(facts)
    if facts.mode == "forbid":
        return _no_elastics(facts, kind, of)
    if facts.mode not in ("do", "permit"):
        raise NotCarried("no-strength")
    pairs = [(str(one), str(other)) for one, other in facts.take("links")]
    side, teeth = facts.take("side"), facts.teeth()
    pattern = None
    if kind:
        if of is not None or teeth:
            raise NotCarried("more-than-the-format-says")
        means = Part("allow", {"use": kind, "sides": _sides(pairs, side)})
    else:
        pattern = term("pattern", of)
        named = teeth or [tooth for pair in pairs for tooth in pair]
        if side or not named or (pattern is None and (of is not None or teeth or facts.mode != "do")):
            raise NotCarried("more-than-the-format-says")
        means = Part("allow", {"use": "elastics", "pattern": pattern, "teeth": list(dict.fromkeys(named))})
    links = tuple(_link(facts, pair) for pair in pairs)
    return (means, *links) if kind or pattern else links


def _class(facts: Facts) -> tuple[str | None, str | None]:
    """The means of Class II or III elastics, and what else is said of the sort."""
    of, name = facts.take("of"), facts.take("relation")
    if of is not None and of.startswith("class_"):
        name, of = name or of.removeprefix("class_"), None
    if name is not None and name not in CLASSES:
        raise NotCarried("more-than-the-format-says")
    return CLASSES.get(name or ""), of


def _sides(pairs: list[tuple[str, str]], side: str | None) -> list[str]:
    """The sides said, or those the elastics are on."""
    if any(side_of(one) != side_of(other) or arch_of(one) == arch_of(other) for one, other in pairs):
        raise NotCarried("which-side")
    found = list(dict.fromkeys(side_of(one) for one, _ in pairs))
    said = ["right", "left"] if side == "both" else [side] if side else found
    if not said or (found and set(found) != set(said)):
        raise NotCarried("which-side")
    return said


def _link(facts: Facts, pair: tuple[str, str]) -> Part:
    return Part("appliance", with_condition(facts, {"part": "elastic", "start": pair[0], "end": pair[1]}))


def _no_elastics(facts: Facts, kind: str | None, of: str | None) -> tuple[Part, ...]:
    teeth = facts.teeth()
    if facts.clause.links or facts.clause.side or of:
        raise NotCarried("more-than-the-format-says")
    place = {"teeth": teeth} if teeth else {}
    kinds = [kind] if kind else ["elastics", *CLASSES.values()]
    return tuple(Part("exclude", {"means": means, **place}) for means in kinds)


def bite_raiser(facts: Facts) -> tuple[Part, ...]:
    """A plane in the upper front, or blocks over back teeth: built, or permitted."""
    teeth, of = facts.teeth(), facts.take("of")
    name = PARTS[facts.kind]
    front = all(arch_of(tooth) == "upper" and int(tooth[1]) <= FRONT for tooth in teeth)
    if of not in SURFACES or (name == "bite-plane" and (not front or of == "posterior")):
        raise NotCarried("more-than-the-format-says")
    place = {"teeth": teeth} if teeth else {}
    arch = facts.take("arch")
    if facts.mode == "permit" and arch is None:
        return (Part("allow", {"use": "auxiliary", "auxiliary": name, **place}),)
    if facts.mode != "do" or arch == "both":
        raise NotCarried("no-such-clause")
    return (Part("appliance", with_condition(facts, {"part": name, **place} | ({"arch": arch} if arch else {}))),)


def pontic(facts: Facts) -> tuple[Part, ...]:
    """A false tooth in the aligner, at the place of one that is missing."""
    teeth = facts.teeth()
    if facts.mode != "do" or not teeth:
        raise NotCarried("no-such-clause" if teeth else "which-teeth")
    return (Part("appliance", with_condition(facts, {"part": "pontic", "teeth": teeth})),)


def other_part(facts: Facts) -> tuple[Part, ...]:
    """Buttons, cut-outs, hooks: built as described, in the writer's words."""
    if facts.mode != "do":
        raise NotCarried("no-such-clause")
    teeth = facts.teeth()
    part = "button-opening" if facts.kind == "cutout" and facts.clause.of == "button" else "other"
    value = {"part": part} | ({"teeth": teeth} if teeth else {})
    return (Part("appliance", value | {"words": facts.words()}),)


def trim(facts: Facts) -> tuple[Part, ...]:
    """How the edge is cut; all but a plain scalloped edge in the writer's words."""
    if facts.mode != "do":
        raise NotCarried("no-such-clause")
    if facts.clause.of == "scalloped" and facts.left <= {"of", "arch"} and facts.clause.arch != "both":
        facts.take("of")
        arch = facts.take("arch")
        return (Part("appliance", {"part": "trimming", "trimming": "scalloped"} | ({"arch": arch} if arch else {})),)
    return (Part("appliance", {"part": "trimming", "trimming": "as-described", "words": facts.words()}),)


def retainer(facts: Facts) -> tuple[Part, ...]:
    """What is worn at the end."""
    of, teeth = facts.take("of"), facts.teeth()
    if facts.mode == "forbid" and of is None and not teeth:
        return tuple(Part("retention", {"arch": arch, "retainer": "none"}) for arch in arches(facts))
    if facts.mode != "do":
        raise NotCarried("force-does-not-fit")
    words = {"vacuum_formed": "vacuum-formed"}.get(of or "")
    kind = "removable" if words else of
    if kind not in (None, "bonded", "removable"):
        raise NotCarried("which-retainer")
    found = {arch_of(tooth) for tooth in teeth}
    named = tuple(arch for arch in ARCHES if arch in found) or arches(facts)
    said: dict[str, Any] = {"retainer": kind} if kind else {}
    value = with_condition(facts, said | ({"words": words} if words else {}))
    if words and value["words"] != words:
        raise NotCarried("condition")
    return tuple(_retained(value, arch, teeth) for arch in named)


def _retained(value: dict[str, Any], arch: str, teeth: list[str]) -> Part:
    mine = [tooth for tooth in teeth if arch_of(tooth) == arch]
    return Part(
        "retention",
        {"arch": arch, **value} | ({"teeth": mine} if mine else {}),
        () if "retainer" in value else ("retainer",),
    )
