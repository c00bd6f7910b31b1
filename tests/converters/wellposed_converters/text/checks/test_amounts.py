import pytest

from wellposed_converters.text.checks.amounts import amount_said, apart, comparable
from wellposed_converters.text.clause import Clause


def ipr(least, most, **members):
    return Clause("ipr", "do", ((0, 1),), minimum=least, maximum=most, **{"unit": "mm", "measure": "total", **members})


@pytest.mark.parametrize(
    "one, said",
    [
        (ipr(0.2, 0.2), "0.2 mm"),
        (ipr(0.2, 0.3), "0.2 to 0.3 mm"),
        (ipr(None, 1.0), "at most 1 mm"),
        (ipr(0.4, None), "at least 0.4 mm"),
        (ipr(30.0, 30.0, unit="pct"), "30 %"),
        (ipr(5.0, 5.0, unit="deg"), "5°"),
        (ipr(20.0, 20.0, unit="count"), "20"),
    ],
)
def test_amounts_are_said_as_they_are_bounded(one, said):
    assert amount_said(one) == said


def test_intervals_are_apart_only_when_no_number_is_in_both():
    assert apart(ipr(0.4, None), ipr(None, 0.3))
    assert not apart(ipr(0.3, None), ipr(None, 0.3))
    assert not apart(ipr(None, 0.5), ipr(None, 0.3))


def test_amounts_of_another_measure_or_unit_are_not_compared():
    assert comparable(ipr(1.0, 1.0), ipr(None, 2.0))
    assert not comparable(ipr(1.0, 1.0), ipr(1.0, 1.0, measure="per_contact"))
    assert not comparable(ipr(1.0, 1.0), ipr(1.0, 1.0, unit="pct"))
    assert not comparable(ipr(1.0, 1.0), ipr(None, None))
