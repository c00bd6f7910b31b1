"""Personal data in the texts of a setup or a review: marked with its place, never repeated, never deleted."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Written
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.vocabulary.personal import tells_who

_TEXTS = ("words", "text")


@rule(
    "person-in-text",
    Severity.CAUTION,
    title="A text may tell who somebody is.",
    do="Look at this text; leave out what tells who the patient is.",
)
def person_in_text(whole: Written) -> Iterator[Told]:
    """No words or note of a setup or a review has what looks like a name, a date of birth, a telephone number or an
    e-mail address.

    What goes between clinic and laboratory goes by a pseudonym; a name beside it undoes that. These are patterns of
    some languages, nothing more: they overlook names, and take a word of the trade for one. The text is not repeated.

    Passes: {"notes": [{"text": "The lower canines are worn."}]}
    Fails: {"notes": [{"text": "Mrs Example asked for an early visit."}]}
    """
    for place in whole.places:
        for member in _TEXTS:
            said = place.said(member)
            if isinstance(said, str) and tells_who(said):
                yield told(f"{place.pointer}/{member}", place.owner)


RULES = (person_in_text,)
