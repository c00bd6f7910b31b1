"""Overbite, overjet, open bite, crossbite, midline, curve of Spee, sagittal and skeletal relation, crowding."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from wellposed.vocabulary.teeth import arch_of, is_canine, is_incisor, side_of
from wellposed_converters.text.draft.measured import ARCHES, FACE, named, nought, statement
from wellposed_converters.text.draft.part import Facts, NotCarried, Part
from wellposed_converters.text.places.notation import neighbours

GRADES: Final = ("mild", "moderate", "severe")
SIDES: Final = ("right", "left")
CLASSES: Final = {"I": "class-i", "II": "class-ii", "III": "class-iii"}


def told(facts: Facts, problem: str = "other", **members: object) -> tuple[Part, ...]:
    """A finding in the writer's own words, under the term that fits it."""
    teeth = facts.teeth()
    value = {"problem": problem, **members} | ({"teeth": teeth} if teeth else {})
    return (Part("problems", {**value, "words": facts.words()}),)


def unmeasured(facts: Facts) -> bool:
    """Whether it is a finding without a number."""
    return facts.mode == "state" and facts.clause.minimum is None and facts.clause.maximum is None


def diagnosis(facts: Facts, problem: str, **members: object) -> tuple[Part, ...]:
    """A finding without a number: a problem, with its grade."""
    grade = facts.take("of")
    if grade is not None and grade not in GRADES:
        return told(facts)
    return (Part("problems", {"problem": problem, **members} | ({"grade": grade} if grade else {})),)


def arches(facts: Facts) -> tuple[str, ...]:
    """The arches named. :raises NotCarried: when there is none."""
    arch = facts.take("arch")
    if arch is None:
        raise NotCarried("which-arch")
    return ARCHES if arch == "both" else (arch,)


def overbite(facts: Facts) -> tuple[Part, ...]:
    """Overbite, and the deep bite that is not measured."""
    return diagnosis(facts, "deep-bite") if unmeasured(facts) else statement(facts, "overbite")


def overjet(facts: Facts) -> tuple[Part, ...]:
    """Overjet; a reverse one is negative."""
    if unmeasured(facts):
        terms = {"increased": "increased-overjet", "reverse": "reverse-overjet"}
        of = facts.clause.of or ""
        return (Part("problems", {"problem": terms[facts.take("of")]}),) if of in terms else told(facts)
    found = named(facts.clause)
    if found is None or (facts.clause.of and facts.mode != "state"):
        raise NotCarried("more-than-the-format-says")
    facts.take("of")
    return statement(facts, *found)


def open_bite(facts: Facts) -> tuple[Part, ...]:
    """An open bite: a negative overbite in front, a gap behind. Closed is an overbite of 0 or more, or no gap."""
    if unmeasured(facts):
        terms = {"anterior": "open-bite-anterior", "posterior": "open-bite-posterior"}
        of = facts.take("of")
        return (Part("problems", {"problem": terms[of]}),) if of in terms else told(facts)
    found = named(facts.clause)
    if found is None:
        raise NotCarried("more-than-the-format-says")
    facts.take("of")
    if facts.mode in ("do", "prefer") and facts.clause.measure is None and facts.take("dir") == "close":
        front = found[0] == "overbite"
        part = nought(facts, found[0], least=front, most=not front)
        return (part.assuming("at_least" if front else "at_most", "closed"),)
    if facts.clause.measure == "change":
        raise NotCarried("which-way")
    return statement(facts, *found)


def crossbite(facts: Facts) -> tuple[Part, ...]:
    """A crossbite is a problem; corrected or kept it is a measure at a pair of teeth."""
    teeth = facts.teeth()
    if facts.mode == "state":
        return (_crossed(facts, teeth),)
    pairs = [(pair, _measure_at(pair)) for pair in _pairs(teeth)]
    if facts.mode == "keep":
        return tuple(part for pair, name in pairs for part in statement(facts, name, pair=pair))
    if facts.mode not in ("do", "prefer") or facts.take("dir") != "correct":
        raise NotCarried("force-does-not-fit")
    value = {"strength": facts.strength, "unit": "mm"}
    return tuple(Part("goals", {**value, "measure": name, "pair": pair}, ("at_least",)) for pair, name in pairs)


def _pairs(teeth: list[str]) -> list[list[str]]:
    """An upper and a lower tooth; of more teeth, those that stand over each other by their numbers."""
    upper, lower = ([tooth for tooth in teeth if arch_of(tooth) == arch] for arch in ARCHES)
    if len(upper) == len(lower) == 1:
        return [[*upper, *lower]]
    over = {(side_of(tooth), tooth[1]): tooth for tooth in lower}
    pairs = [[tooth, over[side_of(tooth), tooth[1]]] for tooth in upper if (side_of(tooth), tooth[1]) in over]
    if not pairs or not len(pairs) == len(upper) == len(lower):
        raise NotCarried("which-pair")
    return pairs


def _crossed(facts: Facts, teeth: list[str]) -> Part:
    terms = {"anterior": "crossbite-anterior", "posterior": "crossbite-posterior", "scissor": "scissors-bite"}
    of, side, arch = facts.take("of"), facts.take("side"), facts.take("arch")
    front = {is_incisor(tooth) or is_canine(tooth) for tooth in teeth}
    if of is None and len(front) == 1:
        of = "anterior" if front.pop() else "posterior"
    if of not in terms or arch == "both":
        raise NotCarried("which-pair")
    said = {"side": side if side != "both" else None, "arch": arch, "teeth": teeth}
    return Part("problems", {"problem": terms[of]} | {name: value for name, value in said.items() if value})


def _measure_at(teeth: list[str]) -> str:
    front = {is_incisor(tooth) for tooth in teeth}
    if front == {True}:
        return "overjet"
    sides = {side_of(tooth) for tooth in teeth}
    if front != {False} or len(sides) != 1:
        raise NotCarried("which-pair")
    return f"transverse-overlap-{sides.pop()}"


def midline(facts: Facts) -> tuple[Part, ...]:
    """A midline, against the middle of the face: the format has no measure against the other arch."""
    if facts.mode == "state":
        found = named(facts.clause)
        if found is None:
            raise NotCarried("midline-to-what")
        for member in ("arch", "dir", "ref"):
            facts.take(member)
        return statement(facts, *found)
    names = [f"{arch}-midline" for arch in arches(facts)]
    if facts.take("ref") not in (None, FACE):
        raise NotCarried("midline-to-what")
    if facts.mode in ("do", "prefer") and facts.clause.measure is None:
        return _to_the_face(facts, names)
    if facts.clause.measure == "target":
        raise NotCarried("midline-to-what")
    return tuple(part for name in names for part in statement(facts, name))


def _to_the_face(facts: Facts, names: list[str]) -> tuple[Part, ...]:
    if facts.clause.ref != FACE:
        raise NotCarried("no-amount")
    return tuple(nought(facts, name).assuming("at_most", "none-is-nought") for name in names)


def curve_of_spee(facts: Facts) -> tuple[Part, ...]:
    """The lower curve. To level it opens heights; how far is a goal of its own."""
    if facts.clause.arch not in (None, "lower"):
        return _levelled(facts)
    facts.take("arch")
    if facts.mode not in ("do", "prefer"):
        return statement(facts, "curve-of-spee")
    level = Part("goals", {"strength": facts.strength, "level": "lower"})
    level = level if facts.clause.arch else level.assuming("level", "lower-curve")
    return (level,) if facts.clause.measure is None else (level, *statement(facts, "curve-of-spee"))


def _levelled(facts: Facts) -> tuple[Part, ...]:
    """An upper curve has no measure: it can be levelled, without saying how far."""
    if facts.mode not in ("do", "prefer") or facts.clause.measure is not None:
        raise NotCarried("no-such-clause")
    return tuple(Part("goals", {"strength": facts.strength, "level": arch}) for arch in arches(facts))


def crowding(facts: Facts) -> tuple[Part, ...]:
    """Crowding of an arch, measured or graded; where teeth are named, at the contacts between them."""
    if facts.clause.teeth or facts.clause.contacts:
        return told(facts, "crowding") if unmeasured(facts) else (_crowded_at(facts),)
    if unmeasured(facts) and facts.clause.of != "none":
        if facts.clause.arch is None:
            return diagnosis(facts, "crowding")
        grade = facts.clause.of
        return tuple(part for arch in arches(facts) for part in (_graded(facts, arch, grade),))
    named_arches = arches(facts)
    if len(named_arches) > 1 and facts.clause.of != "none" and facts.mode != "keep":
        raise NotCarried("which-arch")
    return tuple(part for arch in named_arches for part in statement(facts, f"{arch}-crowding"))


def _graded(facts: Facts, arch: str, grade: str | None) -> Part:
    facts.take("of")
    if grade is not None and grade not in GRADES:
        raise NotCarried("more-than-the-format-says")
    return Part("problems", {"problem": "crowding", "arch": arch} | ({"grade": grade} if grade else {}))


def _crowded_at(facts: Facts) -> Part:
    teeth = facts.take("teeth")
    contacts = facts.contacts() or [f"{one}-{other}" for one, other in pairwise(teeth) if neighbours(one, other)]
    found = {arch_of(contact[:2]) for contact in contacts}
    if facts.mode != "state" or len(found) != 1 or (teeth and len(contacts) != len(teeth) - 1):
        raise NotCarried("which-contacts")
    (part,) = statement(facts, f"{found.pop()}-crowding", contacts=contacts)
    return part


def sagittal(facts: Facts) -> tuple[Part, ...]:
    """Molar and canine relation: the class is a problem, kept it is a measure of each side."""
    of, side, relation = facts.take("of"), facts.take("side"), facts.take("relation")
    sides = SIDES if side in (None, "both") else (side,)
    if facts.mode == "state":
        return _classed(facts, of, (None,) if side is None else sides, relation)
    if of == "incisor":
        raise NotCarried("class-of-incisors")
    if of not in ("molar", "canine"):
        raise NotCarried("relation-in-mm")
    names = [f"{of}-relation-{one}" for one in sides]
    if facts.mode == "keep":
        facts_of = _classed(facts, of, (None,) if side is None else sides, relation) if relation else ()
        return (*(part for name in names for part in statement(facts, name)), *facts_of)
    if facts.mode in ("do", "prefer") and relation == "I" and facts.clause.measure is None:
        value = {"strength": facts.strength, "unit": "mm"}
        return tuple(Part("goals", {**value, "measure": name}, ("at_least", "at_most")) for name in names)
    raise NotCarried("relation-in-mm")


def _classed(facts: Facts, of: str | None, sides: tuple[str | None, ...], relation: str | None) -> tuple[Part, ...]:
    """Class I of molars is a term; what a term does not say of a class is told in the writer's words."""
    if relation is None:
        return told(facts)
    name, _, division = relation.partition("/")
    plain = not division and of in (None, "molar") and name in CLASSES
    problem = CLASSES.get(name, "other") if plain or name != "I" else "other"
    words = {} if plain else {"words": facts.words()}
    return tuple(Part("problems", {"problem": problem, **words} | ({"side": side} if side else {})) for side in sides)


def in_words(facts: Facts) -> tuple[Part, ...]:
    """Findings the format has no term for are told; orders of the kind it has no clause for."""
    if facts.mode == "state":
        return told(facts)
    raise NotCarried("no-such-clause")
