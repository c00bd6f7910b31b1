import pytest

from wellposed_converters.text.layout.notices import greeting_before, is_name_line, notice, subject


@pytest.mark.parametrize(
    "said, expected",
    [
        ("Dear all,", "greeting"),
        ("Good morning team!", "greeting"),
        ("hope you are all well.", "admin"),
        ("New case attached, patient code A-102.", "admin"),
        ("New case attached, no IPR.", None),
        ("Scans and photos attached", "admin"),
        ("Case ref. 12345", "admin"),
        ("Case UR3", None),
        ("no 1121", None),
        ("With thanks", "closing"),
        ("Kind regards,", "closing"),
        ("Many thanks, Dr Sample", "signature"),
        ("Thanks, Align Lower", None),
        ("Dr Sample", "signature"),
        ("Dr Sample extracted 14", None),
        ("If anything is unclear, phone before you start.", None),
        ("x" * 400, None),
    ],
)
def test_a_sentence_is_a_notice_only_when_a_pattern_covers_it_whole(said, expected):
    assert notice(said) == expected


@pytest.mark.parametrize(
    "said, expected",
    [
        ("Example Dental Practice", True),
        ("Dr. Jane Sample BDS MSc", True),
        ("Jane Sample", True),
        ("jane sample", False),
        ("Lower Dental Midline Practice", False),
        ("12 High Street, Sampletown", True),
        ("+44 1234 567890", True),
        ("13 12 11 21 22", False),
        ("0.2 0.3 0.25 0.2 0.3", False),
        ("jane@example.org", True),
        ("OB.keep", False),
        ("Severe Crowding", False),
        ("OB", False),
    ],
)
def test_a_name_line_holds_no_word_of_an_order(said, expected):
    assert is_name_line(said) is expected


def test_the_greeting_before_a_sentence_ends_with_its_sign():
    assert greeting_before("Hi team, please align") == len("Hi team, ")
    assert greeting_before("Hi lower canines, please") == 0


@pytest.mark.parametrize(
    "said, expected",
    [
        ("Subject: change to order C-88", (9, True)),
        ("Re: Re: new case", (4, True)),
        ("Subject: no IPR", (9, False)),
        ("No IPR", None),
    ],
)
def test_a_subject_is_idle_only_when_a_pattern_covers_it(said, expected):
    assert subject(said) == expected
