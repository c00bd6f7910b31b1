"""Tables read under a declaration with one sign turned round: asked about where the prescription contradicts it."""

from decimal import Decimal

import pytest
from tests.converters.wellposed_converters.setups.test_round_trip import read_back_as
from tests.converters.wellposed_converters.setups.written import Table
from tests.validator.wellposed.review.planned import Planned

from wellposed.model.setup import Setup
from wellposed.review.signs import sign_questions
from wellposed_converters.setups.building import Identity, document

TIMES = 60
WHO = Identity("ST-1", 1, None, "2026-03-05T09:00:00Z")


def asked(one, table):
    """The variables whose sign is asked about once the table is read."""
    said = read_back_as(table, one.rx)
    setup = Setup.model_validate(document(said, WHO, one.rx, "unmoved"))
    return {question.facts["name"] for question in sign_questions(setup, one.rx)}


def table_of(one, seed):
    final = {at: Decimal(str(value)) for at, value in one.values.items()}
    return Table({"final": final, "stages": {}, "unlisted": True}, seed)


@pytest.mark.parametrize("seed", range(TIMES))
def test_a_declaration_turned_round(seed):
    one = Planned(seed)
    assert asked(one, table_of(one, seed)) == set()
    for variable in dict.fromkeys(name for _, name in one.ordered):
        table = table_of(one, seed)
        table.turn(variable)
        assert asked(one, table) == {variable}
