"""Forms of amounts as clinicians write them; each expected value is what the words say, written by hand."""

import tomllib
from importlib import resources

import pytest

from wellposed_converters.text.clause import QUESTIONS
from wellposed_converters.text.quantities import Amount, FromTo, find_amounts, find_bases, find_ordinals


def amounts(text, taken=()):
    return find_amounts(text, 0, len(text), taken)


def one(text):
    (found,) = amounts(text)
    assert isinstance(found, Amount)
    return found


def said(text, found):
    return text[found.start : found.end]


@pytest.mark.parametrize(
    "text, value, unit",
    [
        ("0.5 mm", 0.5, "mm"),
        ("0.5mm", 0.5, "mm"),
        ("0.5 MM", 0.5, "mm"),
        ("2-mm", 2, "mm"),
        ("3 m/m", 3, "mm"),
        ("2 millimetres", 2, "mm"),
        ("1 millimeter", 1, "mm"),
        ("10°", 10, "deg"),
        ("10 º", 10, "deg"),
        ("5 deg", 5, "deg"),
        ("5 degs", 5, "deg"),
        ("20 degrees", 20, "deg"),
        ("110 degrees", 110, "deg"),
        ("50 %", 50, "pct"),
        ("50%", 50, "pct"),
        ("50 per cent", 50, "pct"),
        ("50 percent", 50, "pct"),
        ("6 weeks", 6, "week"),
        ("10 days", 10, "day"),
        ("10-day", 10, "day"),
        ("3 months", 3, "month"),
        ("1 unit", 1, "unit"),
        ("½ unit", 0.5, "unit"),
        ("½u", 0.5, "unit"),
        ("¼ unit", 0.25, "unit"),
        ("half unit", 0.5, "unit"),
        ("half a unit", 0.5, "unit"),
        ("three-quarter unit", 0.75, "unit"),
        ("full unit", 1, "unit"),
        ("½ LI", 0.5, "tooth_li"),
        ("half a lower incisor width", 0.5, "tooth_li"),
    ],
)
def test_units(text, value, unit):
    found = one(text)
    assert (found.minimum, found.maximum, found.unit, found.bound) == (value, value, unit, "exact")
    assert said(text, found) == text
    assert (found.asks, found.bare) == (None, False)


@pytest.mark.parametrize(
    "text, value, unit",
    [
        ("0.3", 0.3, None),
        (".3", 0.3, None),
        ("0,3", 0.3, None),
        ("(.3 mm)", 0.3, "mm"),
        (",3 mm", 0.3, "mm"),
        ("0·3 mm", 0.3, "mm"),
        ("1,2 mm", 1.2, "mm"),
        ("12.5 mm", 12.5, "mm"),
        ("OB 2,5", 2.5, None),
        ("1.0 mm", 1, "mm"),
        ("3/10 mm", 0.3, "mm"),
        ("1/2 mm", 0.5, "mm"),
        ("½ mm", 0.5, "mm"),
        ("1½ mm", 1.5, "mm"),
        ("1 1/2 mm", 1.5, "mm"),
        ("three tenths", 0.3, None),
        ("three tenths of a mm", 0.3, "mm"),
        ("2 tenths of a millimetre", 0.2, "mm"),
        ("a tenth of a mm", 0.1, "mm"),
        ("point two mm", 0.2, "mm"),
        ("point two five mm", 0.25, "mm"),
        ("nought point three", 0.3, None),
        ("0 point 3 mm", 0.3, "mm"),
        ("half a millimetre", 0.5, "mm"),
        ("a quarter of a mm", 0.25, "mm"),
        ("one and a half mm", 1.5, "mm"),
        ("two millimetres", 2, "mm"),
        ("a millimetre", 1, "mm"),
        ("ten days", 10, "day"),
        ("twelve degrees", 12, "deg"),
    ],
)
def test_numbers(text, value, unit):
    found = one(text)
    assert (found.minimum, found.maximum, found.unit, found.asks) == (value, value, unit, None)


@pytest.mark.parametrize(
    "text, low, high",
    [
        *((f"{word} 0.3 mm", None, 0.3) for word in ("max", "max.", "maximum", "maximum of", "a maximum of", "up to")),
        *((f"{word} 0.3 mm", None, 0.3) for word in ("at most", "≤", "<=", "no more than", "not more than", "within")),
        *(
            (f"{word} 0.3 mm", None, 0.3)
            for word in ("not to exceed", "must not exceed", "do not exceed", "never over")
        ),
        *((f"{word} 0.3 mm", None, 0.3) for word in ("must not be more than", "to a maximum of", "limited to", "max:")),
        *((f"{word} 0.3 mm", 0.3, None) for word in ("min", "min.", "minimum", "a minimum of", "at least", "≥", ">=")),
        *((f"{word} 0.3 mm", 0.3, None) for word in ("not less than", "no less than", "not below", ">", "more than")),
        *((f"0.3 mm {word}", None, 0.3) for word in ("max", "maximum", "or less", "at most", "or below")),
        *((f"0.3 mm {word}", 0.3, None) for word in ("min", "minimum", "or more", "at least", "or above")),
        ("max 0.3 mm max", None, 0.3),
    ],
)
def test_bounds(text, low, high):
    found = one(text)
    assert (found.minimum, found.maximum) == (low, high)
    assert found.bound == ("at_least" if high is None else "at_most")
    assert said(text, found) == text
    assert (found.asks, found.max_open) == (None, False)


@pytest.mark.parametrize("text", ["under 0.2 mm", "below 0.2 mm", "less than 0.2 mm", "< 0.2 mm", "<0.2 mm"])
def test_strictly_less(text):
    found = one(text)
    assert (found.minimum, found.maximum, found.max_open, said(text, found)) == (None, 0.2, True, text)


@pytest.mark.parametrize(
    "text",
    [
        *(f"{word} 2 mm" for word in ("about", "approx", "approx.", "approximately", "around", "roughly", "circa")),
        *("c. 2 mm", "~2 mm", "close to 2 mm", "2 mm or so", "2-ish mm", "2 mm-ish", "2 mm give or take"),
    ],
)
def test_about(text):
    found = one(text)
    assert (found.minimum, found.maximum, found.unit, found.approx, said(text, found)) == (2, 2, "mm", True, text)


@pytest.mark.parametrize(
    "text, low, high, unit",
    [
        ("0.2-0.3", 0.2, 0.3, None),
        ("0.2–0.3 mm", 0.2, 0.3, "mm"),
        ("0.2-.3 mm", 0.2, 0.3, "mm"),
        ("0,2-0,3 mm", 0.2, 0.3, "mm"),
        ("0.2 to 0.3 mm", 0.2, 0.3, "mm"),
        ("0.2 mm to 0.3 mm", 0.2, 0.3, "mm"),
        ("between 0.2 and 0.3", 0.2, 0.3, None),
        ("between 2 and 3 mm", 2, 3, "mm"),
        ("0.2/0.3", 0.2, 0.3, None),
        ("0.2~0.3 mm", 0.2, 0.3, "mm"),
        ("0.2..0.3 mm", 0.2, 0.3, "mm"),
        ("2-3 mm", 2, 3, "mm"),
        ("2 - 3 mm", 2, 3, "mm"),
        ("7 to 10 days", 7, 10, "day"),
        ("at least 1 mm and at most 2 mm", 1, 2, "mm"),
        ("min 0.2 max 0.3 mm", 0.2, 0.3, "mm"),
        ("2 mm ±0.5", 1.5, 2.5, "mm"),
        ("2 +/- 0.5 mm", 1.5, 2.5, "mm"),
        ("2 mm, give or take 0.5 mm", 1.5, 2.5, "mm"),
    ],
)
def test_ranges_and_tolerances(text, low, high, unit):
    found = one(text)
    assert (found.minimum, found.maximum, found.unit, found.bound) == (low, high, unit, "range")
    assert said(text, found) == text
    assert found.asks is None


@pytest.mark.parametrize(
    "text, words, before, after, unit",
    [
        ("from 60 % to 30 %", "from 60 % to 30 %", 60, 30, "pct"),
        ("from 60 to 30 %", "from 60 to 30 %", 60, 30, "pct"),
        ("OJ 6 -> 3 mm", "6 -> 3 mm", 6, 3, "mm"),
        ("5 → 3", "5 → 3", 5, 3, None),
        ("3 → 5 mm", "3 → 5 mm", 3, 5, "mm"),
        ("6 to 3 mm", "6 to 3 mm", 6, 3, "mm"),
        ("overjet from 6 to 3", "from 6 to 3", 6, 3, None),
        ("Overjet from 2,5 to 1,5", "from 2,5 to 1,5", 2.5, 1.5, None),
    ],
)
def test_from_one_value_to_another(text, words, before, after, unit):
    (found,) = amounts(text)
    assert isinstance(found, FromTo)
    assert said(text, found) == words
    assert (found.before.minimum, found.after.maximum) == (before, after)
    assert {found.before.unit, found.after.unit} == {unit}


@pytest.mark.parametrize(
    "text, low, high",
    [
        ("12 steps", 12, 12),
        ("14 aligners", 14, 14),
        ("20 stages", 20, 20),
        ("two steps", 2, 2),
        ("twenty-four aligners", 24, 24),
        ("10-12 steps", 10, 12),
        ("12 to 14 steps", 12, 14),
        ("8 steps max", None, 8),
        ("no more than 14 steps", None, 14),
        ("20 steps or fewer", None, 20),
    ],
)
def test_counts_of_steps(text, low, high):
    found = one(text)
    assert (found.minimum, found.maximum, found.unit, found.noun) == (low, high, "count", "step")
    assert found.asks is None


@pytest.mark.parametrize(
    "text, value, unit, basis",
    [
        ("every 10 days", 10, "day", "every"),
        ("every ten days", 10, "day", "every"),
        ("every two weeks", 2, "week", "every"),
        ("once every 2 weeks", 2, "week", "once every"),
        ("every week", 1, "week", "every"),
        ("every other week", 2, "week", "every"),
        ("every fortnight", 14, "day", "every"),
        ("2-weekly", 2, "week", "weekly"),
        ("weekly", 1, "week", "weekly"),
        ("fortnightly", 14, "day", "fortnightly"),
        ("intervals of 10 days", 10, "day", "intervals of"),
    ],
)
def test_how_often(text, value, unit, basis):
    found = one(text)
    assert (found.minimum, found.maximum, found.unit, found.noun) == (value, value, unit, None)
    assert [(said(text, item), item.measure) for item in find_bases(text, 0, len(text))] == [(basis, "interval")]


@pytest.mark.parametrize(
    "words, measure",
    [
        *((words, "per_contact") for words in ("per contact", "each contact", "/contact", "at each contact")),
        *((words, "per_surface") for words in ("per surface", "per side of the contact", "each surface")),
        ("on each side of the contact", "per_surface"),
        *((words, "per_tooth") for words in ("per tooth", "each tooth", "/tooth")),
        *((words, "per_side") for words in ("per side", "on each side", "each side", "/side")),
        ("per arch", "per_arch"),
        *((words, "total") for words in ("total", "in total", "overall", "in all", "combined", "altogether")),
        *((words, "each") for words in ("each", "apiece")),
        *((words, "step") for words in ("per step", "per aligner", "per stage", "each step", "/aligner")),
    ],
)
def test_what_an_amount_is_counted_by(words, measure):
    text = f"0.3 mm {words}"
    assert [(said(text, item), item.measure) for item in find_bases(text, 0, len(text))] == [(words, measure)]
    assert said(text, one(text)) == "0.3 mm"


@pytest.mark.parametrize("text", ["each side of 12", "the overall ratio", "in all cases", "each of them", "each other"])
def test_words_that_are_no_basis(text):
    assert find_bases(text, 0, len(text)) == ()


@pytest.mark.parametrize(
    "text, words, value",
    [
        ("only from the third aligner on", "third aligner", 3),
        ("until step 4", "step 4", 4),
        ("stage 3, then", "stage 3", 3),
        ("3rd aligner", "3rd aligner", 3),
        ("21st step", "21st step", 21),
        ("aligner no. 5", "aligner no. 5", 5),
        ("step #4", "step #4", 4),
    ],
)
def test_places_in_the_row_of_steps(text, words, value):
    (found,) = find_ordinals(text, 0, len(text))
    assert (said(text, found), found.value, found.noun) == (words, value, "step")
    assert amounts(text) == ()


@pytest.mark.parametrize(
    "text",
    [
        "third molars",
        "step 4-6",
        "steps 4 and 5",
        "step 0.2 mm",
        "first and second stage",
        "every second aligner",
        "step 2°",
        "12 steps",
    ],
)
def test_no_single_step(text):
    assert find_ordinals(text, 0, len(text)) == ()


@pytest.mark.parametrize(
    "text, why",
    [
        ("1,2", "decimal-or-list"),
        ("12,5 mm", "decimal-or-list"),
        ("IPR.3 mm", "decimal-or-stop"),
        ("max.3 mm", "decimal-or-stop"),
        ("2.5", "decimal-or-tooth"),
        ("1.5-1.6", "decimal-or-tooth"),
        ("1/2", "fraction-or-contact"),
        ("2/3 mm", "fraction-or-range"),
        ("12 ½ mm", "fraction-or-tooth"),
        ("point two", "list-number-or-decimal"),
        ("½", "fraction-of-what"),
        ("half a tooth", "which-tooth-width"),
        ("a quarter tooth", "which-tooth-width"),
        ("1/2 tooth", "which-tooth-width"),
        ("half a cusp", "which-tooth-width"),
        ("a third", "share-of-what"),
        ("one third of the overlap", "share-of-what"),
        ("half the crown", "share-of-what"),
        ("OJ +5", "sign"),
        ("OJ -2 mm", "sign"),
        ("plus 2 mm", "sign"),
        ("3-3-0.2 mm", "dash"),
        ("from 1 to 2 mm", "range-or-change"),
        ("3-2 mm", "range-or-change"),
        ("12 - 14 mm", "range-or-tooth"),
        ("12-22 mm", "range-or-tooth"),
        ("max 0.2-0.3 mm", "range-bounded"),
        ("3-3 mm", "equal-ends"),
        ("1 or 2 mm", "either-or"),
        ("1 and 2 mm", "two-amounts"),
        ("0.5 ± 2 mm", "tolerance-of-what"),
        ("05 mm", "lost-point"),
        ("max 13", "maximum-or-maxillary"),
        ("OJ 3 max 4|4", "maximum-or-maxillary"),
        ("10 min", "minimum-or-minutes"),
        ("up to 13", "amount-or-tooth"),
        ("below 35", "amount-or-tooth"),
        ("around 13", "amount-or-tooth"),
        ("no max 0.3 mm", "negated-bound"),
        ("± 0.5 mm", "either-way"),
        ("within 0.5 mm of its present value", "either-way"),
        ("at least 2 mm max", "bounds-disagree"),
        ("at least 3 mm, at most 2 mm", "bounds-disagree"),
        ("a couple of mm", "how-many"),
        ("biweekly", "twice-or-every-second"),
        ("2 weekly aligners", "each-or-once"),
    ],
)
def test_two_readings_are_asked(text, why):
    found = one(text)
    assert found.why == why
    assert found.asks in QUESTIONS
    assert not found.bare


def test_every_doubt_of_the_data_has_an_example():
    data = resources.files("wellposed_converters.text.quantities").joinpath("quantity.toml").read_text("utf-8")
    (table,) = (mark for mark in test_two_readings_are_asked.pytestmark if mark.name == "parametrize")
    assert {why for _, why in table.args[1]} == set(tomllib.loads(data)["asks"])


@pytest.mark.parametrize("text, sign", [("+2 mm", "+"), ("-2 mm", "-"), ("−2 mm", "-"), ("minus 2 mm", "-")])
def test_a_sign_stands_by_itself(text, sign):
    found = one(text)
    assert (found.sign, found.minimum, found.maximum, said(text, found)) == (sign, 2, 2, text)


def test_a_comma_after_a_number_with_space_before_it_is_asked():
    assert [found.why for found in amounts("13 ,5 mm")] == [None, "decimal-or-list"]


@pytest.mark.parametrize(
    "text",
    [
        *("3-3", "14 and 24", "11 21", "11,21", "2, 3", "13-23", "3~3", "between 11 and 21", "13 to 23", "24/25"),
        *("6s", "33d", "D33", "#8", "U2-2", "UR3", "4|4", "3⏌", "⎿3", "4x4", "2 x 0.3 mm", "Class II/1", "A-102"),
        *("12.03.2024", "12/03/2024", "10:30", "01234 567890", "1121", "1.2.3", "22h", "third molar", "full crown"),
        *("one tooth", "two premolars", "max", "no more", "at least", "mm", "max 3-3", "max 13, 23", "2+", "0.2cm"),
        *("three units", "3-unit bridge", "by 11-21", "ii, iv", "5/12/2024 14:00"),
    ],
)
def test_what_is_no_amount(text):
    assert amounts(text) == ()


@pytest.mark.parametrize(
    "text, expected",
    [
        ("Intrude 31 41 1 mm, derot 33", [("1 mm", False), ("33", True)]),
        ("IPR lower 3-3 max 0.3 per contact", [("max 0.3", False)]),
        ("intr 11 21 1", [("1", True)]),
        ("ML L 2 to R", [("2", True)]),
        ("rotate 13, 5°", [("13", True), ("5°", False)]),
        ("upright 13 to 5 deg", [("13", True), ("5 deg", False)]),
        ("13 - 2 mm", [("13", True), ("2 mm", False)]),
        ("hidden by 13", [("13", True)]),
        ("overjet of 11", [("11", True)]),
        ("2 mm to 3-3", [("2 mm", False)]),
        ("2 mm to 13", [("2 mm", False), ("13", True)]),
        ("12-15°", [("12-15°", False)]),
        ("OB 2", [("2", False)]),
        ("Overjet: 3", [("3", False)]),
        ("OB 2.5, OJ 13", [("2.5", False), ("13", False)]),
        ("OB 50", [("50", False)]),
        ("steps max 12", [("max 12", False)]),
        ("max 2 per side", [("max 2", False)]),
        ("8 steps max. IPR at 3-3", [("8 steps max", False)]),
        ("0.3 mm max per contact, total max 1 mm", [("0.3 mm max", False), ("max 1 mm", False)]),
        ("3 mm max OJ 2 mm", [("3 mm", False), ("2 mm", False)]),
        ("3 mm at least 2 steps", [("3 mm", False), ("at least 2 steps", False)]),
        ("Deep bite 6 mm (70 %)", [("6 mm", False), ("70 %", False)]),
        ("not more than 0.2 mm and 2°", [("not more than 0.2 mm", False), ("2°", False)]),
        ("8 aligners weekly", [("8 aligners", False), ("weekly", False)]),
        ("0.3 mm. per contact", [("0.3 mm", False)]),
        ("0.2/contact", [("0.2", False)]),
        ("10 mm-", [("10 mm", False)]),
        ("by 0,5 mm", [("0,5 mm", False)]),
        ("reduce to 2 mm", [("2 mm", False)]),
    ],
)
def test_amounts_in_their_sentence(text, expected):
    assert [(said(text, found), found.bare) for found in amounts(text, taken_teeth(text))] == expected


def taken_teeth(text):
    """The teeth of these sentences that only a tooth can be."""
    return [(text.index(words), text.index(words) + len(words)) for words in ("31 41", "11 21") if words in text]


def test_nothing_is_found_inside_what_is_taken():
    assert amounts("Expand 1.5-1.6 by 2 mm", [(7, 14)]) == amounts("Expand         by 2 mm")


@pytest.mark.parametrize("text", ["Between 0.2 and 0.3 MM", "UP TO 0.3 MM", "HALF A MILLIMETRE", "12 STEPS MAX"])
def test_case_says_nothing(text):
    assert amounts(text) == amounts(text.lower())


@pytest.mark.parametrize("text", ["max 0.3 mm", "2-3 mm", "6 -> 3 mm", "10 days"])
def test_offsets_are_those_of_the_whole_text(text):
    whole = f"No IPR. {text} Keep 3 mm"
    (found,) = find_amounts(whole, 8, 8 + len(text))
    assert said(whole, found) == text
