"""What is: states of teeth, facts of the patient, what is told of the past; and what is done around the making."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.clause import quoted
from wellposed_converters.text.draft.bites import told
from wellposed_converters.text.draft.data import data, term
from wellposed_converters.text.draft.part import Facts, NotCarried, Part

LONGEST_NOTE: Final = 4000


def tooth_status(facts: Facts) -> tuple[Part, ...]:
    """The particulars of a tooth; a missing one is not among the teeth present."""
    known = term("status", facts.clause.of)
    if facts.clause.of == "bridge":
        raise NotCarried("bridge")
    if known is None or facts.mode != "state" or not facts.clause.teeth:
        raise NotCarried("no-such-state")
    if "problem" in known:
        return told(facts, known["problem"])
    if "condition" in known:
        return (Part("conditions", {"condition": known["condition"], "teeth": facts.teeth(), "words": facts.words()}),)
    facts.take("of")
    if known.get("absent"):
        return (Part("absent", {"teeth": facts.teeth()}),)
    return tuple(Part("particulars", {"tooth": tooth, "states": [known["state"]]}) for tooth in facts.teeth())


def extraction(facts: Facts) -> tuple[Part, ...]:
    """Ordered, the tooth is one that goes; permitted or excluded it is a means."""
    teeth = facts.teeth()
    if facts.mode == "forbid":
        if facts.take("arch") not in (None, "both"):
            return (Part("exclude", {"means": "extraction", "arch": facts.clause.arch}),)
        return (Part("exclude", {"means": "extraction"} | ({"teeth": teeth} if teeth else {})),)
    if not teeth:
        raise NotCarried("which-teeth")
    if facts.mode == "permit":
        return (Part("allow", {"use": "extraction", "teeth": teeth}),)
    if facts.mode != "do":
        raise NotCarried("no-strength")
    return tuple(Part("particulars", {"tooth": tooth, "states": ["to-be-extracted"]}) for tooth in teeth)


def patient(facts: Facts) -> tuple[Part, ...]:
    """A particular of the patient, a condition, or surgery to come."""
    of = facts.clause.of
    particular = term("particular", of)
    if facts.mode != "state" or of == "adult":
        raise NotCarried("no-such-clause")
    if particular is not None:
        facts.take("of")
        return (Part("patient", particular),)
    if of == "pre_surgical":
        return (Part("process", {"step": "surgery", "words": facts.words()}),)
    known = data()["patient"].get(of or "")
    teeth = facts.teeth()
    place = {"teeth": teeth} if teeth else {}
    return (Part("conditions", {"condition": known or "other", **place, "words": facts.words()}),)


def remembered(facts: Facts) -> tuple[Part, ...]:
    """History and what the patient complains of bind nobody: they are notes."""
    if facts.mode != "state":
        raise NotCarried("no-such-clause")
    facts.left.clear()
    words = quoted(facts.order.text, facts.clause.spans)
    if len(words) > LONGEST_NOTE:
        raise NotCarried("words-too-long")
    return (Part("notes", {"text": words}),)


def restoration(facts: Facts) -> tuple[Part, ...]:
    """What is built up, told as a step in the writer's words: before or after is in them."""
    teeth = facts.teeth()
    if facts.mode not in ("state", "do"):
        raise NotCarried("no-such-clause")
    return (Part("process", {"step": "other"} | ({"teeth": teeth} if teeth else {}) | {"words": facts.words()}),)


def process(facts: Facts) -> tuple[Part, ...]:
    """What happens around the making."""
    if facts.mode != "do":
        raise NotCarried("delegation" if facts.clause.of == "lab_discretion" else "no-such-clause")
    if facts.clause.of == "approval_before_manufacture" and facts.left == {"of"}:
        facts.take("of")
        return (Part("process", {"step": "approval-before-making"}),)
    return (Part("process", {"step": "other", "words": facts.words()}),)
