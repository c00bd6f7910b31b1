"""Setups written as tables under readings made at random come back as they were, number by number."""

import random

import pytest
from tests.converters.wellposed_converters.setups.tables import RX
from tests.converters.wellposed_converters.setups.written import Table, setup_of

from wellposed_converters.setups.csv_file import csv_book
from wellposed_converters.setups.declared import mapping_of
from wellposed_converters.setups.reading import read_table
from wellposed_converters.setups.workbook import workbook

TIMES = 200


def read_back_as(table, rx=RX):
    """What is read of a table that was written."""
    data, ending = table.data()
    mapping = mapping_of(table.columns().encode(), "columns.toml")
    asked = mapping.table
    book = workbook(data, "t") if ending == ".xlsx" else csv_book(data, "t", asked.encoding, asked.delimiter)
    return read_table(book, None, mapping, rx)


@pytest.mark.parametrize("seed", range(TIMES))
def test_what_is_written_is_read(seed):
    made = setup_of(random.Random(seed))
    said = read_back_as(Table(made, seed))
    assert {(one.tooth, one.variable): one.value for one in said.final} == made["final"]
    assert {(one.tooth, one.variable, one.stage): one.value for one in said.stages} == made["stages"]
