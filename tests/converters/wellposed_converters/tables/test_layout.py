"""The layout of the long table: every member of every document has its one place in it."""

import pytest

from wellposed.model import DOCUMENTS
from wellposed.model.base import Part
from wellposed.schema import document_schema, names
from wellposed.vocabulary import terms
from wellposed_converters.tables.cells import NONE
from wellposed_converters.tables.layout import CONTENT, KEYED, LIST, NUMBERS, SECTION, headers, layout

KINDS = list(DOCUMENTS)


def properties(node):
    """Every name of a member in a schema."""
    if isinstance(node, list):
        return {name for inner in node for name in properties(inner)}
    if not isinstance(node, dict):
        return set()
    here = set(node["properties"]) if isinstance(node.get("properties"), dict) else set()
    return here | {name for inner in node.values() for name in properties(inner)}


@pytest.mark.parametrize("kind", names())
def test_every_member_of_the_published_schema_has_its_place(kind):
    found = [*layout(f"wellposed/{kind}").all()]
    places = {step for one in found for column in one.columns for step in column.steps} | {one.member for one in found}
    assert properties(document_schema(kind)) - places == set()


@pytest.mark.parametrize("kind", KINDS)
def test_sections_and_columns_stand_once_and_do_not_collide(kind):
    found = [*layout(kind).all()]
    assert len({one.name for one in found}) == len(found)
    for one in found:
        taken = [SECTION, *NUMBERS[: one.depth], *([one.key] if one.key else []), *(c.name for c in one.columns)]
        assert len(set(taken)) == len(taken)
        assert one.depth <= len(NUMBERS)
        assert one.inner == () or one.form != KEYED


def parts(cls=Part):
    return [cls, *(part for one in cls.__subclasses__() for part in parts(one))]


def test_json_stands_only_in_the_content_of_extensions():
    found = {
        (one.name, c.name) for kind in KINDS for one in layout(kind).all() for c in one.columns if c.kind == CONTENT
    }
    assert found == {("extensions", "content")}


def test_no_word_of_a_list_has_a_space_or_is_the_word_for_none():
    said = [word for value in vars(terms).values() for word in getattr(value, "__args__", ()) if isinstance(word, str)]
    assert len(said) > 100
    assert [word for word in said if " " in word or word == NONE] == []


def test_a_number_or_a_list_is_one_wherever_it_is_in_one_kind_of_section():
    kinds = {}
    for kind in KINDS:
        for one in layout(kind).all():
            for column in one.columns:
                kinds.setdefault((one.name.removeprefix("requests/"), column.name), set()).add(column.kind)
    assert {
        at: found for at, found in kinds.items() if len(found) > 1 and at[0] not in ("findings", "attachments")
    } == {}
    assert kinds["goals", "align"] == {LIST}


def test_headers_are_names_of_members_or_of_the_table():
    own = {"section", "entry", "inner_entry", "tooth", "name"}
    members = {name for part in parts() for name in getattr(part, "model_fields", {})}
    joined = {f"{a}_{b}" for a in ("overcorrection",) for b in ("value", "unit")}
    assert set(headers()) - own - members - joined == set()
