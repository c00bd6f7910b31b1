"""Personal data in texts: each kind alone, with what must be let through. Everybody here is invented."""

import pytest
from tests.validator.wellposed.consistency.ordinary import present
from tests.validator.wellposed.rules.charts import Case, found, pointers, table

from wellposed.rules.privacy import RULES
from wellposed.vocabulary import personal

AT, IN_NAME = ("/notes/0/text",), ("/records/0/name",)


def note(text, **members):
    return {"notes": [{"text": text}], **members}


def record(name):
    return {"records": [{"kind": "other", "name": name}]}


def aged(years):
    return {"patient": {"reference": "P-7F3A", "age_years": years}}


NAMES = (
    Case("name-in-text", "a title", note("Mrs Example prefers mornings."), AT),
    Case("name-in-text", "a title with a point", note("Seen by Dr. Muster on Monday."), AT),
    Case("name-in-text", "named", note("The patient is named Muster."), AT),
    Case("name-in-text", "patient and two names", note("Patient Anna Muster is a singer."), AT),
    Case("name-in-text", "a file", record("Muster_Anna_upper.stl"), IN_NAME),
    Case("name-in-text", "a file in capitals", record("MUSTER-ANNA-2026.zip"), IN_NAME),
    Case(
        "name-in-text",
        "words of a tooth",
        {"teeth": {**present(), "particulars": [{"tooth": "11", "states": ["crown"], "words": "made by Dr Muster"}]}},
        ("/teeth/particulars/0/words",),
    ),
    Case("name-in-text", "no name", note("She travels a lot and prefers early visits.")),
    Case("name-in-text", "a title alone", note("The Dr will call.")),
    Case("name-in-text", "miss as a verb", note("She did miss a visit.")),
    Case("name-in-text", "patient and words of the trade", note("Patient Class Two Division One.")),
    Case("name-in-text", "a file named after what it is", record("Upper_Jaw_Scan_Final.stl")),
    Case("name-in-text", "a file named after an arch", record("Maxilla.stl")),
    Case("name-in-text", "a file named by number", record("P-7F3A_upper.stl")),
)
BIRTHS = (
    Case("birth-date-in-text", "born", note("Born 2001-05-17."), AT),
    Case("birth-date-in-text", "born on", note("She was born on 17 May 2001."), AT),
    Case("birth-date-in-text", "by its letters", note("DOB: 17/05/2001"), AT),
    Case("birth-date-in-text", "in full", note("Date of birth is 5.7.01"), AT),
    Case("birth-date-in-text", "born in a year", note("Born in 1984."), AT),
    Case("birth-date-in-text", "born without teeth", note("Born without 12 and 22.")),
    Case("birth-date-in-text", "a date", note("Last seen on 2026-02-12.")),
    # Issued in 2026: 25 years back fits an age of 24 to 26.
    Case("birth-date-in-text", "a date that fits the age", note("2001-05-17", **aged(24)), AT),
    Case("birth-date-in-text", "a date that fits the age by a year", note("17.05.2001", **aged(26)), AT),
    Case("birth-date-in-text", "a date that does not", note("2001-05-17", **aged(27))),
    Case("birth-date-in-text", "a date of last year, of an infant", note("2025-05-17", **aged(1))),
    Case("birth-date-in-text", "in the name of a file", {**record("scan_20010517.stl"), **aged(24)}, IN_NAME),
)
# 020 7946 0000 to 0999 and 555-0100 to 0199 are kept for fiction.
CALLS = (
    Case("telephone-number-in-text", "abroad", note("Reach her at +44 20 7946 0000."), AT),
    Case("telephone-number-in-text", "at home", note("Reach her at 020 7946 0000."), AT),
    Case("telephone-number-in-text", "in groups of two", note("Reach her at 01 99 00 12 34."), AT),
    Case("telephone-number-in-text", "three groups", note("Reach her at (212) 555-0100."), AT),
    Case("telephone-number-in-text", "after a word", note("Mobile: 5550100"), AT),
    Case("telephone-number-in-text", "teeth", note("Teeth 13 12 11 21 22 23 were bleached in 2019.")),
    Case("telephone-number-in-text", "dates", note("From 01.02.2026 to 05.02.2026 and 2026-03-04.")),
    Case("telephone-number-in-text", "amounts", note("0.25 0.25 0.25 0.25 mm; 1.5 2.5 3.5 4.5 mm.")),
    Case("telephone-number-in-text", "an amount with a plus", note("Torque of +1.5 2.0 1.5 2.0 degrees.")),
    Case("telephone-number-in-text", "too short", note("Phone 12345.")),
)
MAILS = (
    Case("mail-address-in-text", "an address", note("Write to someone@example.org."), AT),
    Case("mail-address-in-text", "in a name", record("anna.muster@example.org.zip"), IN_NAME),
    Case("mail-address-in-text", "a sign alone", note("2 mm @ 13-12")),
    Case("mail-address-in-text", "a place", note("Seen @clinic on Monday.")),
)


def reference(name):
    return {"patient": {"reference": name}}


WHO = ("/patient/reference",)
REFERENCES = (
    Case("reference-tells-who", "a pseudonym", reference("P-7F3A")),
    Case("reference-tells-who", "a name", reference("Muster.Anna"), WHO),
    Case("reference-tells-who", "a name in capitals", reference("MUSTER-ANNA"), WHO),
    Case("reference-tells-who", "a date of birth", reference("P-19840517"), WHO),
    Case("reference-tells-who", "a date of birth with points", reference("17.05.1984"), WHO),
    Case("reference-tells-who", "a date of this year", reference("P-2026-02-03")),
    Case("reference-tells-who", "a number", reference("19841399")),
    Case("reference-tells-who", "one word", reference("Harbour-12")),
)
CASES = (*NAMES, *BIRTHS, *CALLS, *MAILS, *REFERENCES)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


@pytest.mark.parametrize("case", **table(*(case for case in CASES if case.pointers)))
def test_what_is_found_is_never_repeated(case):
    told = repr(found(case, RULES))
    words = ("Muster", "Anna", "Example", "2001", "1984", "7946", "555", "example.org", "MUSTER", "17", "99 00")
    assert [word for word in words if word in told] == []


@pytest.mark.parametrize("text", ["0" * 4000, "a" * 4000, "1 " * 2000, "tel " + " " * 3900, "Mr " * 1300, "a@" * 2000])
def test_long_texts_are_looked_through_at_once(text):
    assert personal.tells_a_birth(text) is False
    assert personal.has_a_mail_address(text) is False
    assert personal.has_a_telephone_number(text) is False
    assert personal.names_somebody(text) is text.startswith("Mr")
