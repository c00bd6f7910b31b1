import pytest

from wellposed_converters.text.checks.reach import contacts, is_everywhere, overlap, reach, same_sort, teeth
from wellposed_converters.text.clause import Clause


def clause(kind, **members):
    return Clause(kind, "do", ((0, 1),), **members)


@pytest.mark.parametrize(
    "one, expected",
    [
        (clause("rotate", teeth=(13, 11)), {13, 11}),
        (clause("space", contacts=((11, 21),)), {11, 21}),
        (clause("elastic", links=((13, 46),)), {13, 46}),
        (clause("archwidth", of="intercanine", arch="lower"), {43, 33, 83, 73}),
        (clause("bite_ramp", of="anterior", arch="upper", side="right"), {11, 12, 13, 51, 52, 53}),
        (clause("align", pending=("teeth",)), set()),
    ],
)
def test_teeth_are_those_named_or_those_of_the_place(one, expected):
    assert teeth(one) == expected


def test_contacts_of_an_arch_lie_inside_it_and_those_of_a_tooth_at_it():
    assert (11, 21) in contacts(clause("ipr", arch="upper"))
    assert (41, 31) not in contacts(clause("ipr", arch="upper"))
    assert {(12, 11), (11, 21)} <= contacts(clause("space", teeth=(11,)))
    assert contacts(clause("ipr", contacts=((31, 41),))) == {(41, 31)}
    assert (55, 16) in contacts(clause("ipr", of="primary_teeth")) or (16, 55) in contacts(
        clause("ipr", of="primary_teeth")
    )


def test_an_open_place_meets_only_what_is_everywhere():
    waiting = clause("ipr", pending=("contacts",))
    assert overlap(waiting, clause("ipr", arch="both"))
    assert not overlap(waiting, clause("ipr", arch="upper"))
    assert not overlap(waiting, waiting)
    assert reach(waiting) == frozenset()
    assert [is_everywhere(one) for one in (waiting, clause("ipr"), clause("ipr", side="left"))] == [False, True, False]


@pytest.mark.parametrize(
    "one, other, same",
    [
        ({}, {"of": "vertical"}, True),
        ({"of": "vertical"}, {}, False),
        ({"of": "palatal"}, {"of": "anterior"}, True),
        ({"dir": "procline"}, {"dir": "retrocline"}, False),
        ({"relation": "II"}, {"relation": "III"}, False),
    ],
)
def test_a_sort_that_is_not_named_means_every_sort(one, other, same):
    assert same_sort(clause("attachment", **one), clause("attachment", **other)) is same
