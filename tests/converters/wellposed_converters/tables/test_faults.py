"""Malformed tables, the same in both forms: each with the rule that speaks, the row and the column."""

import pytest
from tests.converters.wellposed_converters.tables.grids import code, csv_of, grid, put, told, xlsx_of
from tests.converters.wellposed_converters.tables.test_separated import TRIED as SEPARATED
from tests.converters.wellposed_converters.tables.test_workbook import TRIED as WORKBOOK

from wellposed_converters.setups.grid import letter
from wellposed_converters.tables.faults import RULES
from wellposed_converters.tables.forms import CSV, XLSX

# where, header, what is typed there, the rule
TYPED = [
    ("document", "id", "a b", "wrong-form"),
    ("document", "id", "", "missing-member"),
    ("document", "version", "1", "wrong-form"),
    ("document", "version", "2.0", "wrong-form"),
    ("document", "notation", "Universal", "not-one-of"),
    ("document", "notation", "", "missing-member"),
    ("document", "format", "wellposed/prescripton", "unknown-format"),
    ("document", "format", "", "missing-member"),
    ("document", "issued", "04.03.2026 09:30", "wrong-form"),
    ("document", "issued", "2026-03-04", "wrong-form"),
    ("document", "issued", "2026-03-04T09:30:00", "wrong-form"),
    ("document", "revision", "0", "out-of-range"),
    ("document", "revision", "1.5", "wrong-kind"),
    ("document", "revision", "2", "revision-chain"),
    ("document", "entry", "1", "table-entry"),
    ("patient", "age_years", "200", "out-of-range"),
    ("patient", "growth", "finished", "not-one-of"),
    ("patient", "reference", "", "missing-member"),
    ("patient", "colour", "blue", "table-header-unknown"),
    ("patient", "Reference", "P-1", "table-header-unknown"),
    ("patient", "licence", "OR-1", "unknown-member"),
    ("teeth", "upper", "17 16 15 14 13 12 11 21 22 23 24 25 26 27 27", "tooth-listed-twice"),
    ("teeth", "upper", "17,16,15", "not-one-of"),
    ("teeth", "upper", "17  16", "table-list"),
    ("teeth", "upper", " 17 16", "table-list"),
    ("teeth", "upper", "17 16 ", "table-list"),
    ("teeth", "upper", "17\u00a016", "not-one-of"),
    ("teeth", "upper", "UR7 UR6", "not-one-of"),
    ("teeth", "upper", "１７", "not-one-of"),
    ("teeth", "upper", "17-14", "not-one-of"),
    ("teeth", "upper", "none", "not-one-of"),
    ("goals 1", "align", "", "missing-member"),
    ("goals 1", "align", "(none)", "too-few"),
    ("goals 1", "align", "12-Nov", "table-date"),
    ("goals 1", "align", "2026-11-12", "table-date"),
    ("goals 1", "because", "f9", "unknown-reference"),
    ("goals 1", "strength", "Must", "not-one-of"),
    ("goals 1", "strength", "must ", "not-one-of"),
    ("goals 1", "strength", "muѕt", "not-one-of"),
    ("goals 1", "strength", "", "missing-member"),
    ("goals 1", "within", "0.5", "unknown-member"),
    ("goals 1", "overcorrection_value", "5", "missing-member"),
    ("goals 1", "overcorrection_unit", "deg", "missing-member"),
    ("goals 1", "section", "Goals", "table-section"),
    ("goals 1", "section", "goal", "table-section"),
    ("goals 1", "section", "goals ", "table-section"),
    ("goals 1", "section", "", "table-section"),
    ("goals 1", "section", "stages", "table-section"),
    ("goals 1", "entry", "", "table-entry"),
    ("goals 1", "entry", "0", "table-entry"),
    ("goals 1", "entry", "2", "table-entry-missing"),
    ("goals 1", "entry", "one", "table-entry"),
    ("goals 1", "entry", "1.5", "table-entry"),
    ("goals 1", "entry", "-1", "table-entry"),
    ("goals 1", "entry", "(none)", "table-entry"),
    ("goals 1", "inner_entry", "1", "table-entry"),
    ("keep 1", "id", "k 1", "wrong-form"),
    ("keep 1", "id", "g1", "duplicate-id"),
    ("keep 1", "measure", "over-bite", "not-one-of"),
    ("keep 1", "unit", "MM", "not-one-of"),
    ("keep 1", "unit", "inch", "not-one-of"),
    ("keep 1", "unit", "", "missing-member"),
    ("keep 1", "unit", "deg", "unit-not-allowed"),
    ("keep 1", "within", "-1", "out-of-range"),
    ("keep 1", "within", "0.5 mm", "table-not-a-number"),
    ("keep 1", "within", "0,5", "table-not-a-number"),
    ("keep 1", "within", "1.000,5", "table-not-a-number"),
    ("keep 1", "within", "+0.5", "table-not-a-number"),
    ("keep 1", "within", ".5", "table-not-a-number"),
    ("keep 1", "within", "5.", "table-not-a-number"),
    ("keep 1", "within", "\u0662", "table-not-a-number"),
    ("keep 1", "within", "½", "table-not-a-number"),
    ("keep 1", "within", "1_0", "table-not-a-number"),
    ("keep 1", "within", "0x1", "table-not-a-number"),
    ("keep 1", "within", "NaN", "table-not-a-number"),
    ("keep 1", "within", "Infinity", "table-not-a-number"),
    ("keep 1", "within", "12%", "table-not-a-number"),
    ("keep 1", "within", "(2)", "table-not-a-number"),
    ("keep 1", "within", "\u22122", "table-not-a-number"),
    ("keep 1", "within", "01.03.2026", "table-not-a-number"),
    ("keep 1", "within", "1'000", "table-not-a-number"),
    ("keep 1", "within", "true", "table-not-a-number"),
    ("keep 1", "within", "0.5 ", "table-not-a-number"),
    ("keep 1", "within", "'0.5", "table-not-a-number"),
    ("allow 1", "contacts", "33/32", "wrong-form"),
    ("allow 1", "contacts", "33-32,32-31", "too-long"),
    ("allow 1", "contacts", "12-Nov", "table-date"),
    ("allow 1", "contacts", "12/11/2026", "table-date"),
    ("allow 1", "contacts", "12. Nov", "table-date"),
    ("allow 1", "contacts", "33-31", "not-neighbours"),
    ("allow 1", "use", "ipr", "not-one-of"),
    ("allow 1", "use", "", "missing-member"),
    ("attachments 2", "entry", "1", "table-row-twice"),
    ("attachments 2", "entry", "3", "table-entry-missing"),
    ("findings/values 3 21", "tooth", "11", "table-row-twice"),
    ("findings/values 3 21", "tooth", "", "table-entry"),
    ("findings/values 3 21", "tooth", "19", "not-one-of"),
    ("findings/values 3 21", "tooth", "(none)", "table-entry"),
    ("findings/values 3 21", "entry", "9", "table-row-alone"),
    ("findings/values 3 21", "value", "", "wrong-kind"),
    ("staging/order (none)", "id", "o1", "table-entry"),
    ("staging", "section", "process", "table-entry"),
    ("notes 2", "text", "'as agreed", "table-mark"),
    ("extensions", "critical", "no", "table-truth-value"),
    ("extensions", "critical", "TRUE", "table-truth-value"),
    ("extensions", "critical", "true", "unknown-critical-extension"),
    ("extensions", "content", "{shelf: 12}", "table-content"),
    ("extensions", "content", '1},"x":{', "table-content"),
    ("extensions", "content", '1,"critical":true', "table-content"),
    ("extensions", "content", "1 2", "table-content"),
    ("extensions", "content", "1e5", "table-content"),
    ("extensions", "content", '{"a":1,"a":2}', "table-content"),
    ("extensions", "name", "case", "wrong-form"),
    ("extensions", "name", "", "table-entry"),
]


def changed(where, header, value):
    cells = grid()
    row, name = put(where, header, value)(cells)
    return cells, row, letter(cells[0].index(name))


@pytest.mark.parametrize("form, made", [pytest.param(CSV, csv_of, id="csv"), pytest.param(XLSX, xlsx_of, id="xlsx")])
@pytest.mark.parametrize("typed, rule", [pytest.param(case[:3], case[3], id=" ".join(case)) for case in TYPED])
def test_a_malformed_cell(form, made, typed, rule, tmp_path):
    cells, row, column = changed(*typed)
    found, ended = told(form, made(cells), tmp_path)
    place = 1 if rule == "table-header-unknown" else row
    assert {(one, at) for one, at, _ in found} == {(rule, place)}
    assert all(letters in ("", "A", column) for _, _, letters in found)
    assert ended == code(rule)


def test_every_kind_of_fault_of_a_table_is_tried():
    tried = {rule for *_, rule in TYPED} | SEPARATED | WORKBOOK
    assert set(RULES) - tried == set()
