import pytest

from wellposed_converters.text.checks.timing import is_timing, not_before, starts
from wellposed_converters.text.clause import Clause


@pytest.mark.parametrize(
    "words, first, allowed",
    [
        ("from the first stage", 1, None),
        ("only from the third aligner on", 3, None),
        ("from step 12", 12, None),
        ("after step 3", 4, None),
        ("before stage 4", None, 4),
        ("until step 5", None, 5),
        ("unless you have to", None, None),
        ("from the beginning", None, None),
        (None, None, None),
    ],
)
def test_a_condition_may_say_when_something_starts(words, first, allowed):
    clause = Clause("attachment", "do", ((0, 1),), condition=words)
    assert (starts(clause), not_before(clause)) == (first, allowed)
    assert is_timing(clause) is (first is not None or allowed is not None)
