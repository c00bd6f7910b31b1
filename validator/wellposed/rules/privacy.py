"""Personal data where none belongs: marked with its place and kind, never repeated, never deleted."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, told
from wellposed.rules.chart import Chart
from wellposed.rules.free_text import Text, names, texts
from wellposed.vocabulary import personal

_DO = "Look at this text; leave out what tells who the patient is."
_YEAR = slice(4)


@rule(
    "name-in-text",
    Severity.CAUTION,
    title="A text may hold somebody's name.",
    says="This text may hold somebody's name.",
    do=_DO,
    change="A text without names would change it.",
)
def name_in_text(chart: Chart) -> Iterator[Told]:
    """No words, note or name of a record has a title before a capital, `named` and a name, or two names side by side.

    The order goes by a pseudonym that only the clinic can resolve; a name beside it undoes that.

    Evidence: patterns of some languages, nothing more: a name without a title is seen in names of records only, and a
    word of the trade may be taken for one. The text is not repeated here.

    Passes: {"notes": [{"text": "She travels a lot and prefers early visits."}]}
    Fails: {"notes": [{"text": "Mrs Example prefers early visits."}]}
    """
    files = (one for one in names(chart) if personal.looks_like_a_name(one.text))
    yield from _marked((*_with(chart, personal.names_somebody), *files))


@rule(
    "birth-date-in-text",
    Severity.CAUTION,
    title="A text may hold a date of birth.",
    says="This text may hold a date of birth.",
    do=_DO,
    change="A text without it would change it; the age in years has a member of its own.",
)
def birth_date_in_text(chart: Chart) -> Iterator[Told]:
    """No text has a date after a word for birth, or one of a year that fits the age stated.

    A date of birth tells who somebody is almost as surely as a name. The age is enough for the order.

    Evidence: patterns of some languages, nothing more. The text is not repeated here.

    Passes: {"notes": [{"text": "Last seen on 2026-02-12."}]}
    Fails: {"notes": [{"text": "Born 2001-05-17."}]}
    """
    yield from _marked(_with(chart, lambda text: personal.tells_a_birth(text) or _fits_age(chart, text)))


def _fits_age(chart: Chart, text: str) -> bool:
    """Whether a date in it lies as many years back as the patient is old, give or take one, and not in the last two."""
    issued, age = int(chart.rx.issued[_YEAR]), chart.age
    back = (issued - year for year in personal.years(text))
    return age is not None and any(years > 1 and abs(years - age) <= 1 for years in back)


@rule(
    "telephone-number-in-text",
    Severity.CAUTION,
    title="A text may hold a telephone number.",
    says="This text may hold a telephone number.",
    do=_DO,
    change="A text without it would change it.",
)
def telephone_number_in_text(chart: Chart) -> Iterator[Told]:
    """No text has digits that stand as telephone numbers do.

    A number leads to a person, and an order is copied to many places.

    Evidence: patterns, nothing more: a leading plus or nought, three groups, or a word such as `phone` before it. The
    text is not repeated here.

    Passes: {"notes": [{"text": "Teeth 13 12 11 21 22 23 were bleached in 2019."}]}
    Fails: {"notes": [{"text": "Reach her at +44 20 7946 0000."}]}
    """
    yield from _marked(_with(chart, personal.has_a_telephone_number))


@rule(
    "mail-address-in-text",
    Severity.CAUTION,
    title="A text holds an e-mail address.",
    says="This text holds an e-mail address.",
    do=_DO,
    change="A text without it would change it.",
)
def mail_address_in_text(chart: Chart) -> Iterator[Told]:
    """No text has an e-mail address.

    Most addresses are made of names, and an order is copied to many places.

    Evidence: a pattern; it knows addresses by their sign. The text is not repeated here.

    Passes: {"notes": [{"text": "Answers by letter."}]}
    Fails: {"notes": [{"text": "Write to someone@example.org."}]}
    """
    yield from _marked(_with(chart, personal.has_a_mail_address))


@rule(
    "reference-tells-who",
    Severity.CAUTION,
    title="The patient's reference looks like a name or a date of birth.",
    says="The reference looks like {kind}.",
    do="Use a pseudonym that only the clinic can resolve.",
    change="A reference that tells nothing of the patient would change it.",
)
def reference_tells_who(chart: Chart) -> Iterator[Told]:
    """The reference of the patient is no name, and holds no date of an earlier year.

    It stands on the order, the receipt and every report; made of a name or a birthday it tells who the patient is.

    Evidence: patterns, nothing more. The reference is not repeated here.

    Passes: {"patient": {"reference": "P-7F3A"}}
    Fails: {"patient": {"reference": "Example.Maria-1984"}}
    """
    reference, issued = chart.rx.patient.reference, int(chart.rx.issued[_YEAR])
    if any(year < issued for year in personal.years(reference)):
        yield told("/patient/reference", kind="a date of birth")
    elif personal.looks_like_a_name(reference):
        yield told("/patient/reference", kind="a name")


def _with(chart: Chart, holds: Callable[[str], bool]) -> Iterator[Text]:
    return (one for one in texts(chart) if holds(one.text))


def _marked(found: Iterable[Text]) -> Iterator[Told]:
    """One finding a text."""
    owners = {one.pointer: one.owner for one in found}
    yield from (told(pointer, owner) for pointer, owner in owners.items())


RULES = (name_in_text, birth_date_in_text, telephone_number_in_text, mail_address_in_text, reference_tells_who)
