"""One sentence for each finding. The only place where findings become words."""

from __future__ import annotations

from collections.abc import Callable

from wellposed.findings import Finding
from wellposed.render.amounts import amount, ends, value
from wellposed.render.clinical import clinical_sentence, is_clinical
from wellposed.render.conflict import Fact, member, missing, silences
from wellposed.render.filled import joined
from wellposed.render.phrases import clause
from wellposed.render.plain import plain_sentence
from wellposed.render.signs import SENTENCES as SIGNS
from wellposed.render.ways import way
from wellposed.vocabulary.measures import MEASURE_KINDS


def sentence(finding: Finding) -> str:
    """What a finding says, in one line of plain words."""
    phrase = SENTENCES.get(finding.rule)
    if phrase is None:
        return clinical_sentence(finding) if is_clinical(finding) else plain_sentence(finding)
    return phrase(finding.facts)


def _members(facts: Fact, role: str) -> list[str]:
    return [member(fact) for fact in facts["members"] if fact["role"] == role]


def _unsaid(facts: Fact) -> str:
    return silences([fact for fact in facts["members"] if fact["role"] == "unsaid"])


def _said(facts: Fact) -> str:
    stated = [member(fact) for fact in facts["members"] if fact["role"] != "unsaid"]
    return "; ".join(stated)


def _ways(facts: Fact) -> str:
    usual = [way(fact) for fact in facts["ways_out"] if not fact["beyond_practice"]]
    return f" Ways out: {'; or '.join(usual)}." if usual else ""


def _contradiction(facts: Fact) -> str:
    silent = _unsaid(facts)
    kept = f", while {silent} are not mentioned and so kept" if silent else ""
    return f"These cannot hold together: {_said(facts)}{kept}. {missing(facts)}{_ways(facts)}".replace("  ", " ")


def _means(facts: Fact) -> str:
    said = f"You have not said how: {_said(facts)}. Not mentioned, so kept: {_unsaid(facts)}."
    turns = f" Whether it must be said turns on {_turns(facts)}." if facts.get("depends_on") else ""
    return f"{said}{turns}{_ways(facts)}"


def _close(facts: Fact) -> str:
    return f"It turns on {_turns(facts)}: {_said(facts)}.{_ways(facts)}"


def _turns(facts: Fact) -> str:
    return ", ".join(depends(name) for name in facts["depends_on"])


def _beyond(facts: Fact) -> str:
    limits = "; ".join(_members(facts, "usual"))
    asked = "; ".join([*_members(facts, "asked"), *_members(facts, "kept")])
    return f"Only beyond a usual limit ({limits}): {asked}.{_ways(facts)}"


def depends(name: str) -> str:
    """What a verdict turns on, in words."""
    known = {
        "hinge": "the hinge factor: 1 mm at the molars moves the bite by 1.0 to 2.5 mm",
        "arch-depth": "arch depth",
        "molar-slide": "how far molars moved in or out slide along the arch",
        "edge-arc": "how far the incisors' edges sink or rise as they travel",
        "crowding-place": "at which contacts the crowding lies",
    }
    if name in known:
        return known[name]
    if name.endswith("-room"):
        return f"{name.partition('-')[0]} crowding or spacing, not stated"
    measure = name.partition("@")[0]
    if measure in MEASURE_KINDS:
        return f"the measuring error of {MEASURE_KINDS[measure].words}"
    return "several uncertainties together (measuring errors, arch depth, how teeth slide and tip)"


def _baseline(facts: Fact) -> str:
    kind = MEASURE_KINDS.get(facts["measure"])
    words = kind.words if kind else str(facts["measure"])
    said = clause(facts["said"])
    return f"{said[:1].upper()}{said[1:]}: it cannot be checked, as {words} is not measured. State it as a finding."


def _toothless(facts: Fact) -> str:
    return f"{clause(facts['said']).capitalize()}: the teeth it is taken at are not there, or teeth do not change it."


def _preference(facts: Fact) -> str:
    return f"The wish {facts['wish']} gives way: {_said(facts)}.{_ways(facts)}"


def _space(facts: Fact) -> str:
    ways = _ways(facts)
    return (
        f"Every plan opens new space in the {facts['arch']} arch that nothing closes or leaves: {_said(facts)}.{ways}"
    )


_NIL = 0.005


def forced_lines(facts: Fact) -> list[str]:
    """What a possible plan must use and can reach, a line each."""
    return [line for found in facts["ranges"] for line in _range(found)]


def _range(found: Fact) -> list[str]:
    low, high, unit = found["least"], found["most"], found["unit"]
    if found["what"] == "use":
        what = clause(found["said"])
        if low is not None and low > _NIL:
            return [f"{what}: every plan uses at least {amount(low, unit)}"]
        if high is not None and high < _NIL:
            return [f"{what}: no plan can use it"]
        return [f"{what}: can be done without"]
    words = MEASURE_KINDS[found["what"]].words
    if low is None or high is None:
        return [f"{words}: can end at any value allowed"]
    if abs(high - low) < _NIL:
        return [f"{words}: ends at {value(found['what'], low, unit)}"]
    return [f"{words}: can end between {' and '.join(ends(found['what'], low, high, unit))}"]


def _forced(facts: Fact) -> str:
    return "What a plan must use and can reach: " + "; ".join(forced_lines(facts)) + "."


def _assumed(facts: Fact) -> str:
    return "Taken as so, because not stated: " + "; ".join(assumption(fact) for fact in facts["assumed"]) + "."


_ASSUMED = {
    "arch-depth": "depth of the {} arch, that of an average arch of this length",
    "arch-depth-implausible": "depth of the {} arch: the one stated cannot belong to these teeth",
    "tooth-widths": "{}, of average width",
    "no-crowding": "no crowding or spacing in the {} arch",
    "closed-gap": "no space at {}, where a tooth is missing",
    "elastics": "2 mm of tooth movement by elastics ({})",
    "extraction": "the extraction of {} is decided",
    "no-hinge": "the bite does not close or open at the back: no opposed first molars{}",
}


def assumption(fact: Fact) -> str:
    """One thing taken as so."""
    return _ASSUMED.get(str(fact["what"]), "{}").format(fact["where"])


def _expectation(facts: Fact) -> str:
    return f"The verdict leans on what you expect: {clause(facts['said'])}."


def _always(words: str) -> Callable[[Fact], str]:
    return lambda facts: words


SENTENCES: dict[str, Callable[[Fact], str]] = {
    "cannot-hold-together": _contradiction,
    "means-not-said": _means,
    "too-close-to-tell": _close,
    "beyond-practice": _beyond,
    "baseline-missing": _baseline,
    "measure-without-teeth": _toothless,
    "preference-not-met": _preference,
    "space-left-over": _space,
    "what-it-forces": _forced,
    "taken-as-so": _assumed,
    "leans-on-expectation": _expectation,
    "small-shortfall": lambda facts: (
        f"Align and space goals fall short by {amount(facts['amount'], 'mm')} in all: taken as met."
    ),
    "goals-already-met": _always("Every goal holds already: leaving the teeth as they are is one option to discuss."),
    "treat-not-stated": _always(
        "It is not said which arches are treated; until it is, both are taken to be. State `treat`."
    ),
    "nothing-asked": _always("The order has no goal and no movement. State what is to be reached, unless nothing is."),
    "answers-nothing": lambda facts: (
        f"No reason is given for {joined(facts['names'])}. Name in `because` the finding or problem that a movement "
        "answers, or look whether it is needed."
    ),
    "extraction-not-decided": lambda facts: (
        f"With the extraction these cannot hold together; without it they can: {_said(facts)}. Is it decided?"
    ),
    **SIGNS,
}
