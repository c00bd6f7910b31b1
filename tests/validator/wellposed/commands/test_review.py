"""`wellposed review`: exit codes, both forms, and a document only as the reviewer decided."""

import json

import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import EXAMPLE, written

from wellposed.check import sound_document
from wellposed.commands import main
from wellposed.digests import digest
from wellposed.findings import CAUTION
from wellposed.model import Prescription, Review

FRONT = ["42", "41", "31", "32"]
LINE = [*EXAMPLE["teeth"]["upper"], *EXAMPLE["teeth"]["lower"]]
ORDER = {name: value for name, value in EXAMPLE.items() if name not in ("goals", "keep", "allow", "attachments")} | {
    "movements": [
        {"id": "m1", "strength": "must", "teeth": FRONT, "motion": "intrusion", "at_least": 1, "unit": "mm"},
        {"id": "m2", "strength": "prefer", "teeth": ["13"], "motion": "labial", "at_least": 0.5, "unit": "mm"},
    ],
    "keep": [{"id": "k1", "strength": "must", "hold": ["16", "26"]}],
}


def plan(vertical=-1.2, out=0.6, **moved):
    """A setup that answers the order; ``moved`` are other heights."""
    heights = dict.fromkeys(FRONT, vertical) | {f"{name[1:]}": value for name, value in moved.items()}
    return {
        "format": "wellposed/setup",
        "version": "1.0",
        "notation": "ISO 3950",
        "id": "ST-7",
        "revision": 1,
        "issued": "2026-03-09T10:00:00+01:00",
        "answers": {
            "id": ORDER["id"],
            "revision": 1,
            "sha256": digest(Prescription.model_validate_json(json.dumps(ORDER))),
        },
        "movements": [
            {"variable": "vertical", "unit": "mm", "values": heights},
            {"variable": "out", "unit": "mm", "values": {"13": out}},
        ],
        "unlisted": "unmoved",
        "reductions": [],
    }


DOCUMENTS = {
    "order": written(ORDER),
    "good": written(plan()),
    "short": written(plan(vertical=-0.5)),
    "unasked": written(plan(t15=0.8)),
    "wishless": written(plan(out=0.0)),
    "faulty": written(plan() | {"colour": "blue"}),
    "unreadable": b'{"id": 1,\n "id": 2}',
}
WRITE = ["-o", "review.json", "--id", "RW-1", "--issued", "2026-03-12T09:00:00+01:00"]


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A folder with every document, to work in."""
    monkeypatch.chdir(tmp_path)
    for name, data in DOCUMENTS.items():
        (tmp_path / f"{name}.json").write_bytes(data)
    return tmp_path


def run(setup, *arguments, order="order", data=None):
    return CliRunner().invoke(main, ["review", f"{order}.json", f"{setup}.json", *arguments], input=data)


@pytest.mark.parametrize(
    "sentence, order, setup, code",
    [
        ("all is as ordered", "order", "good", 0),
        ("a wish alone is not met", "order", "wishless", 0),
        ("a clause is not met", "order", "short", 1),
        ("something moved unasked", "order", "unasked", 1),
        ("the setup has a fault", "order", "faulty", 1),
        ("the setup is no JSON", "order", "unreadable", 3),
        ("there is no such file", "order", "absent", 3),
        ("the prescription is no JSON", "unreadable", "good", 3),
        ("a prescription in place of a setup", "order", "order", 2),
        ("a setup in place of a prescription", "good", "good", 2),
    ],
)
@pytest.mark.parametrize("form", ["text", "json"])
@pytest.mark.usefixtures("folder")
def test_the_exit_code_says_whether_all_is_as_ordered(sentence, order, setup, code, form):
    result = run(setup, "--format", form, order=order)
    assert (sentence, result.exit_code) == (sentence, code)


@pytest.mark.usefixtures("folder")
def test_the_text_says_what_is_off_and_carries_the_caution():
    printed = " ".join(run("short").stdout.split())
    assert "0.5 mm of intrusion, 0.5 mm less intrusion than asked" in printed
    assert printed.endswith(CAUTION)


@pytest.mark.usefixtures("folder")
def test_one_of_the_two_may_be_the_standard_input():
    result = CliRunner().invoke(main, ["review", "order.json", "-", "--format", "json"], input=DOCUMENTS["short"])
    told = json.loads(result.stdout)
    assert (told["unmet"], told["setup"]["name"], told["prescription"]["name"]) == (
        ["m1"],
        "standard input",
        "order.json",
    )


@pytest.mark.parametrize(
    "sentence, setup, arguments, told",
    [
        ("both from the standard input", "good", None, "can be given once only"),
        ("a document without a decision", "short", ["-o", "x.json", "--id", "RW-1"], "-o needs --outcome"),
        ("a document without an id", "short", ["-o", "x.json", "--outcome", "returned"], "-o needs --id"),
        ("a decision without a document", "short", ["--outcome", "returned"], "--outcome goes with -o"),
        ("acceptance without a document", "short", ["--accept", "m1"], "--accept goes with -o"),
        ("approved though a clause is not met", "short", [*WRITE, "--outcome", "approved"], "by --accept: m1"),
        ("a wish counts as well", "wishless", [*WRITE, "--outcome", "approved"], "by --accept: m2"),
        ("approved though teeth moved unasked", "unasked", [*WRITE, "--outcome", "approved"], "--accept-unopened"),
        ("taken but returned", "unasked", [*WRITE, "--outcome", "returned", "--accept-unopened"], "approved"),
        ("a clause nobody knows", "short", [*WRITE, "--outcome", "approved", "--accept", "m9"], "no clause of this id"),
        ("a clause that is met", "short", [*WRITE, "--outcome", "approved", "--accept", "k1"], "nothing to accept"),
        ("returned without a reason", "good", [*WRITE, "--outcome", "returned"], "a return needs a request"),
        ("an id that is none", "short", ["-o", "x.json", "--id", "R W", "--outcome", "returned"], "as decided"),
        ("an outcome nobody knows", "short", [*WRITE, "--outcome", "perhaps"], "is not one of"),
        ("a reviewer without a document", "short", ["--reviewer", "d-2"], "--reviewer goes with -o"),
        ("a reviewer that is no id", "short", [*WRITE, "--outcome", "returned", "--reviewer", "D 2"], "as decided"),
        (
            "replaces what is no review",
            "short",
            [*WRITE, "--outcome", "returned", "--replaces", "good.json"],
            "not a rev",
        ),
        ("replaces nothing there", "short", ["-o", "x.json", "--outcome", "returned"], "-o needs --id"),
        ("no such profile", "short", ["--profile", "absent.toml"], "does not exist"),
    ],
)
def test_a_wrong_call_ends_with_2_says_why_and_writes_nothing(folder, sentence, setup, arguments, told):
    result = run(setup, *arguments) if arguments is not None else CliRunner().invoke(main, ["review", "-", "-"])
    shown = " ".join(result.stderr.replace("\u2502", " ").split())
    assert (sentence, result.exit_code, told in shown) == (sentence, 2, True)
    assert (sentence, result.stdout, list(folder.glob("[xr]*.json"))) == (sentence, "", [])


@pytest.mark.parametrize(
    "sentence, setup, arguments, expected",
    [
        ("returned", "short", ["--outcome", "returned"], ("returned", None, ["movements"])),
        ("a wish too", "wishless", ["--outcome", "returned", "--also-preferred"], ("returned", None, ["movements"])),
        ("what moved unasked", "unasked", ["--outcome", "returned"], ("returned", None, ["keep"])),
        ("approved", "good", ["--outcome", "approved"], ("approved", None, None)),
        ("accepted", "short", ["--outcome", "approved", "--accept", "m1"], ("approved", ["m1"], None)),
        ("unasked and accepted", "unasked", ["--outcome", "approved", "--accept-unopened"], ("approved", None, None)),
    ],
)
def test_the_document_is_as_decided_and_sound(folder, sentence, setup, arguments, expected):
    result = run(setup, *WRITE, *arguments)
    data = (folder / "review.json").read_bytes()
    made = json.loads(data)
    told = made["outcome"], made.get("accepted"), list(made["requests"]) if "requests" in made else None
    assert (sentence, told, type(sound_document(data))) == (sentence, expected, Review)
    assert (sentence, made.get("unopened")) == (sentence, "accepted" if "--accept-unopened" in arguments else None)
    assert (sentence, result.exit_code) == (sentence, 0 if setup in ("good", "wishless") else 1)


@pytest.mark.usefixtures("folder")
def test_a_review_that_replaces_another_keeps_its_id_and_names_it(folder):
    run("short", *WRITE, "--outcome", "returned")
    later = ["-o", "later.json", "--replaces", "review.json", "--reviewer", "dr-2"]
    assert run("short", *later, "--outcome", "approved", "--accept", "m1").exit_code == 1
    first, second = (sound_document((folder / f"{name}.json").read_bytes()) for name in ("review", "later"))
    assert (second.id, second.revision, second.replaces, second.reviewer.id) == ("RW-1", 2, digest(first), "dr-2")
    assert (first.revision, first.replaces, first.reviewer, second.outcome) == (1, None, None, "approved")


@pytest.mark.parametrize(
    "sentence, changes, arguments, told",
    [
        ("an id of its own", {}, ["--id", "RW-2"], "keeps its id"),
        (
            "another case",
            {"prescription": {"id": "HR-9", "revision": 1, "sha256": "ab" * 32}},
            [],
            "another prescription",
        ),
        (
            "another revision of the setup",
            {"answers": {"id": "ST-7", "revision": 1, "sha256": "ab" * 32}},
            [],
            "answers another setup",
        ),
    ],
)
def test_a_review_replaces_only_itself(folder, sentence, changes, arguments, told):
    run("short", *WRITE, "--outcome", "returned")
    kept = json.loads((folder / "review.json").read_bytes()) | changes
    (folder / "kept.json").write_text(json.dumps(kept))
    result = run("short", "-o", "x.json", "--outcome", "returned", "--replaces", "kept.json", *arguments)
    assert (sentence, result.exit_code, told in result.stderr) == (sentence, 2, True)
    assert not (folder / "x.json").exists()


@pytest.mark.parametrize("over", ["order.json", "short.json", "./kept.json"])
def test_a_document_that_is_reviewed_is_never_written_over(folder, over):
    run("short", *WRITE, "--outcome", "returned")
    (folder / "kept.json").write_bytes((folder / "review.json").read_bytes())
    before = (folder / over).read_bytes()
    result = run("short", "-o", over, "--outcome", "returned", "--replaces", "kept.json")
    assert (result.exit_code, "not written over" in result.stderr) == (2, True)
    assert (folder / over).read_bytes() == before


def test_a_document_without_a_time_is_of_now(folder):
    run("short", "-o", "review.json", "--id", "RW-1", "--outcome", "returned")
    assert json.loads((folder / "review.json").read_bytes())["issued"].endswith("+00:00")


def test_a_practice_profile_is_used_and_each_change_named(folder):
    (folder / "wide.toml").write_text('name = "Wide"\n[limits]\n"review.within-mm" = 0.6\n')
    result = run("short", "--profile", "wide.toml")
    assert result.exit_code == 0
    assert "Practice profile: Wide (review.within-mm 0.1 → 0.6)." in result.stdout


@pytest.mark.parametrize("form", ["text", "json"])
@pytest.mark.usefixtures("folder")
def test_the_same_files_give_the_same_bytes(form):
    assert run("short", "--format", form).stdout == run("short", "--format", form).stdout
