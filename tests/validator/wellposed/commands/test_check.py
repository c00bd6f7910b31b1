"""`wellposed check`: exit codes, forms, and nothing said of a document that fails."""

import json
import os
import pty
import subprocess
import sys

import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import DOCUMENTS

from wellposed.check import check
from wellposed.commands import check as loaded
from wellposed.commands import files as file_names
from wellposed.commands import main
from wellposed.findings import CAUTION
from wellposed.render.text import text

PROFILE = 'name = "Strict"\n[limits]\n"practice.midline" = 3\n'


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A folder with every document under the name of its verdict, to work in."""
    monkeypatch.chdir(tmp_path)
    for name, data in DOCUMENTS.items():
        (tmp_path / f"{name}.json").write_bytes(data)
    (tmp_path / "profile.toml").write_text(PROFILE)
    return tmp_path


def run(*arguments, data=None):
    return CliRunner().invoke(main, ["check", *arguments], input=data)


@pytest.mark.parametrize(
    "sentence, files, code",
    [
        ("all that must hold can hold", ["possible"], 0),
        ("a question is open", ["incomplete"], 1),
        ("clauses exclude each other", ["contradictory"], 1),
        ("the structure is at fault", ["refused"], 1),
        ("the text is at fault", ["unreadable"], 3),
        ("there is no such file", ["absent"], 3),
        ("nothing stands against either", ["possible", "possible"], 0),
        ("one of two is stopped", ["contradictory", "possible"], 1),
        ("unreadable is worse than stopped", ["unreadable", "contradictory"], 3),
    ],
)
@pytest.mark.parametrize("form", ["text", "json", "jsonl", "sarif", "operation-outcome", "problem"])
@pytest.mark.usefixtures("folder")
def test_the_worst_file_gives_the_exit_code_in_every_form(sentence, files, code, form):
    result = run("--format", form, *(f"{name}.json" for name in files))
    assert (sentence, result.exit_code) == (sentence, code)


@pytest.mark.parametrize(
    "sentence, arguments, told",
    [
        ("no file", [], "Missing argument 'FILE...'"),
        ("an unknown form", ["--format", "yaml", "possible.json"], "'yaml' is not one of"),
        ("no such profile", ["--profile", "absent.toml", "possible.json"], "'absent.toml' does not exist"),
        ("a bad profile", ["--profile", "bad.toml", "possible.json"], "the nearest is 'practice.midline'"),
        ("one input read twice", ["-", "-"], "can be given once only"),
        ("output into nowhere", ["--output", "no/where.txt", "possible.json"], "cannot be written"),
    ],
)
def test_a_wrong_call_ends_with_2_and_says_why(folder, sentence, arguments, told):
    (folder / "bad.toml").write_text(PROFILE.replace("midline", "midlin"))
    result = run(*arguments)
    assert (sentence, result.exit_code, told in result.stderr) == (sentence, 2, True)


@pytest.mark.parametrize("name", DOCUMENTS)
@pytest.mark.usefixtures("folder")
def test_the_text_is_that_of_the_renderer_and_carries_the_caution(name):
    printed = run(f"{name}.json").stdout
    assert printed == text(check(DOCUMENTS[name]), f"{name}.json")
    assert CAUTION in " ".join(printed.split())


@pytest.mark.usefixtures("folder")
def test_of_several_texts_each_is_named():
    printed = run("possible.json", "refused.json").stdout
    one, two = (text(check(DOCUMENTS[name]), f"{name}.json") for name in ("possible", "refused"))
    assert printed == f"possible.json:\n{one}\nrefused.json:\n{two}"


@pytest.mark.usefixtures("folder")
def test_the_standard_input_is_a_document_too():
    told = json.loads(run("--format", "json", "-", data=DOCUMENTS["possible"]).stdout)
    assert (told["verdict"], told["document"]["name"]) == ("possible", "standard input")


@pytest.mark.usefixtures("folder")
def test_a_profile_is_named_in_the_report():
    told = json.loads(run("--format", "json", "--profile", "profile.toml", "possible.json").stdout)
    changed = {"key": "practice.midline", "from": 4.0, "to": 3.0}
    assert told["profile"] == {"name": "Strict", "changes": [changed]}


def test_the_output_file_holds_what_would_be_printed(folder):
    printed = run("--format", "json", "possible.json").stdout
    result = run("--format", "json", "--output", "report.json", "possible.json")
    assert (result.exit_code, result.output) == (0, "")
    assert (folder / "report.json").read_text() == printed


@pytest.mark.parametrize(
    "sentence, error, told",
    [
        ("it is not there", FileNotFoundError, "there is no such file"),
        ("it is a folder", IsADirectoryError, "it is a directory"),
        ("it is closed to us", PermissionError, "there is no permission to read it"),
        ("the disk fails", OSError, "it cannot be read"),
    ],
)
def test_a_file_that_cannot_be_read_is_named_with_the_reason(folder, monkeypatch, sentence, error, told):
    def failing(*_, **__):
        raise error("P-7F3A")

    monkeypatch.setattr(file_names.Path, "open", failing)
    result = run(str(folder / "possible.json"))
    assert (sentence, result.exit_code) == (sentence, 3)
    assert (result.stdout, result.stderr) == ("", f"wellposed: possible.json: {told}\n")


def test_a_file_not_read_stands_in_the_report_of_all(folder):
    (folder / "folder").mkdir()
    told = json.loads(run("--format", "json", "folder", "possible.json").stdout)
    assert [one["verdict"] for one in told["reports"]] == ["possible"]
    assert told["not_checked"] == [{"name": "folder", "reason": "it is a directory"}]


def test_no_more_of_a_file_is_read_than_may_be_judged(folder):
    (folder / "large.json").write_bytes(b" " * 2_000_001)
    told = json.loads(run("--format", "json", "large.json").stdout)
    assert [finding["rule"] for finding in told["findings"]] == ["document-too-large"]


@pytest.mark.parametrize(
    "sentence, place",
    [
        ("while checking", f"{loaded.__name__}.check"),
        ("while wording", "wellposed.render.json_report.sentence"),
    ],
)
@pytest.mark.usefixtures("folder")
def test_a_fault_inside_is_one_line_and_the_others_go_on(monkeypatch, sentence, place):
    module, _, name = place.rpartition(".")
    sound = getattr(sys.modules[module], name)

    def failing(first, **more):
        about_one = first == DOCUMENTS["refused"] or getattr(first, "rule", "") == "unknown-member"
        if about_one:
            raise ValueError("P-7F3A")
        return sound(first, **more)

    monkeypatch.setattr(sys.modules[module], name, failing)
    result = run("--format", "json", "refused.json", "possible.json")
    assert (sentence, result.exit_code) == (sentence, 4)
    assert result.stderr == "wellposed: refused.json: internal fault (ValueError)\n"
    assert [one["verdict"] for one in json.loads(result.stdout)["reports"]] == ["possible"]


@pytest.mark.parametrize("form", ["text", "json", "jsonl", "sarif", "operation-outcome", "problem"])
@pytest.mark.usefixtures("folder")
def test_the_same_files_give_the_same_bytes(form):
    names = [f"{name}.json" for name in DOCUMENTS]
    assert run("--format", form, *names).stdout == run("--format", form, *names).stdout


def program(*arguments, **more):
    """The real program in a process of its own."""
    environment = {**os.environ, "PYTHONPATH": ":".join(sys.path), "TERM": "xterm-256color", "COLUMNS": "90"}
    environment.pop("NO_COLOR", None)
    environment |= more.pop("environment", {})
    command = [sys.executable, "-m", "wellposed", *arguments]
    return subprocess.Popen(command, env=environment, **more)


def watched(stream, *arguments, **environment):
    """What the program writes to a stream that is a terminal."""
    ours, theirs = pty.openpty()
    other = {"stdout", "stderr"} - {stream}
    streams = {stream: theirs, **dict.fromkeys(other, subprocess.DEVNULL)}
    process = program(*arguments, environment=environment, **streams)
    os.close(theirs)
    written = b""
    try:
        while part := os.read(ours, 65536):
            written += part
    except OSError:  # the other end is closed
        os.close(ours)
    process.wait()
    return written


@pytest.mark.usefixtures("folder")
def test_a_pipe_that_breaks_is_no_news():
    process = program("schema", stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    process.stdout.close()
    assert (process.stderr.read(), process.wait()) == (b"", 1)
    process.stderr.close()


@pytest.mark.usefixtures("folder")
def test_what_is_piped_is_plain_and_the_exit_code_is_the_process_s_own():
    process = program("check", "contradictory.json", stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    printed, faults = process.communicate()
    assert (process.returncode, faults) == (1, b"")
    assert printed.decode() == text(check(DOCUMENTS["contradictory"]), "contradictory.json")


@pytest.mark.parametrize(
    "sentence, environment, coloured",
    [("a terminal has colour", {}, True), ("unless it is not wanted", {"NO_COLOR": "1"}, False)],
)
@pytest.mark.usefixtures("folder")
def test_the_verdict_is_coloured_on_a_terminal_only(sentence, environment, coloured):
    written = watched("stdout", "check", "contradictory.json", **environment)
    assert (sentence, b"\x1b[31m\x1b[1mcontradictory\x1b[0m." in written) == (sentence, coloured)
    assert (sentence, b"\x1b" in written) == (sentence, coloured)


@pytest.mark.parametrize("sentence, count, shown", [("few need no bar", 20, False), ("many are watched", 21, True)])
@pytest.mark.usefixtures("folder")
def test_progress_over_many_files_stands_on_the_terminal(sentence, count, shown):
    written = watched("stderr", "check", *["unreadable.json"] * count)
    assert (sentence, b"Checking" in written) == (sentence, shown)
