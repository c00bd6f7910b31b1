"""What the law of a place asks for: the examples as read in it, and a reader that takes nothing else."""

import pytest

from wellposed.reading.pointer import steps
from wellposed.rules.work_orders import WorkOrderError, read_work_order, work_order, work_orders
from wellposed.schema import document_schema

FILES = {order.jurisdiction: order for order in work_orders().values()}
PLACES = ("AU", "CA", "EU", "GB", "US-FL", "US-MD", "US-MS", "US-MT", "US-NC", "US-OK", "US-WV")

# Years a copy is kept: Oklahoma 59 O.S. 328.36a, Montana 37-4-501, North Carolina 90-29.2, West Virginia 30-4B-2,
# Mississippi 73-9-55 (up to), Florida 466.021, Regulation (EU) 2017/745 (at least). GB and AU recalled.
KEPT = {"US-OK": 3, "US-MT": 2, "US-NC": 2, "US-WV": 2, "US-MS": 2, "US-FL": 4, "EU": 10, "GB": 5, "AU": 5}

# Montana 37-4-501 and North Carolina 90-29.2 list the same six items.
SIX = (
    *("identification of the laboratory", "address of the laboratory", "name or number of the patient", "date"),
    *("description of the work", "diagrams, where they are needed", "type and quality of the materials"),
    *("signature of the dentist", "licence number of the dentist"),
)


def test_each_place_has_its_file():
    assert tuple(sorted(FILES)) == PLACES


def test_years_are_those_of_the_law():
    assert {place: order.kept_years for place, order in FILES.items() if order.kept_years} == KEPT


def test_montana_and_north_carolina_ask_for_the_same_six():
    asked = [tuple(one.what for one in FILES[place].contents) for place in ("US-MT", "US-NC")]
    assert asked == [SIX, (*SIX, "a form of its own where work is passed on to another laboratory")]


def test_what_was_recalled_has_a_grade():
    recalled = {place for place, order in FILES.items() if order.sure == "from memory"}
    assert recalled == {place for place, order in FILES.items() if "Grade " in order.note}


def test_no_signature_is_carried():
    assert {one.carried_by for order in FILES.values() for one in order.contents if "signature" in one.what} == {()}


SECTIONS = document_schema("prescription")["properties"]


@pytest.mark.parametrize("order", FILES.values(), ids=FILES)
def test_what_carries_a_content_begins_at_a_section_of_the_format(order):
    named = {steps(place)[0] for one in order.contents for place in one.carried_by}
    assert named <= SECTIONS.keys()


@pytest.mark.parametrize(
    "code,file",
    [("US-MT", "US-MT"), ("FR", "EU"), ("DE-BY", "EU"), ("GB-NIR", "EU"), ("GB-SCT", "GB"), ("CA-ON", "CA")],
)
def test_a_region_is_answered_by_its_country(code, file):
    assert work_order(code).jurisdiction == file


@pytest.mark.parametrize("code", ["US-CA", "US", "", "CH"])
def test_where_there_is_none_there_is_none(code):
    assert work_order(code) is None


LINES = {
    "jurisdiction": 'jurisdiction = "XX"',
    "title": 'title = "A law"',
    "kept_years": "kept_years = 3",
    "source": 'source = "A code"',
    "sure": 'sure = "published"',
    "note": 'note = "An example, not legal advice. Local law governs."',
    "content": '[[content]]\nwhat = "date"\ncarried_by = ["/issued"]\nsure = "published"',
}


def written(folder, **lines):
    path = folder / "XX.toml"
    path.write_text("\n".join(line for line in {**LINES, **lines}.values() if line), "utf-8")
    return path


def test_a_whole_file_is_read(tmp_path):
    order = read_work_order(written(tmp_path))
    assert (order.jurisdiction, order.kept_years, order.contents[0].carried_by) == ("XX", 3, ("/issued",))


CONTENT = '[[content]]\nwhat = "date"\ncarried_by = {}\nsure = "published"'
WRONG = {
    "no title": ({"title": ""}, "has no 'title'"),
    "an unknown member": ({"more": "more = 1"}, "has an unknown member 'more'"),
    "another code": ({"jurisdiction": 'jurisdiction = "YY"'}, "'jurisdiction' must be 'XX'"),
    "a code that is a number": ({"jurisdiction": "jurisdiction = 1"}, "must have words as 'jurisdiction'"),
    "empty words": ({"title": 'title = " "'}, "must have words as 'title'"),
    "no caution": ({"note": 'note = "Binding."'}, "'note' must begin"),
    "no years": ({"kept_years": "kept_years = 0"}, "'kept_years' must be a whole number of years"),
    "years as true": ({"kept_years": "kept_years = true"}, "'kept_years' must be a whole number of years"),
    "half a year": ({"kept_years": "kept_years = 0.5"}, "'kept_years' must be a whole number of years"),
    "how sure": ({"sure": 'sure = "quite"'}, "is sure = 'quite'"),
    "how sure as a list": ({"sure": "sure = []"}, "must have words as 'sure'"),
    "also as words": ({"kept_years": 'also = "YY"'}, "'also' must be a list"),
    "no contents": ({"content": "content = []"}, "'content' must be written as [[content]]"),
    "contents as a number": ({"content": "content = 1"}, "'content' must be written as [[content]]"),
    "contents as numbers": ({"content": "content = [1]"}, "'content' must be written as [[content]]"),
    "carried by nothing": ({"content": CONTENT.format("[]")}, "'carried_by' must be 'outside' or a list of pointers"),
    "carried by a word": ({"content": CONTENT.format('"inside"')}, "'carried_by' must be a list"),
    "carried by a number": ({"content": CONTENT.format("1")}, "'carried_by' must be a list"),
    "carried by no pointer": ({"content": CONTENT.format('["issued"]')}, "a list of pointers"),
    "no TOML": ({"title": "title ="}, "is not TOML"),
}


@pytest.mark.parametrize("lines,wrong", WRONG.values(), ids=WRONG)
def test_anything_else_is_refused(lines, wrong, tmp_path):
    with pytest.raises(WorkOrderError) as refused:
        read_work_order(written(tmp_path, **lines))
    assert str(refused.value).startswith("XX.toml: ")
    assert wrong in str(refused.value)
