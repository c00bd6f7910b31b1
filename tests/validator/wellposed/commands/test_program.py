"""The program as a whole: its overview, its version, what it loads, and how it fails."""

import subprocess
import sys

import pytest
from click.testing import CliRunner

import wellposed
from wellposed.commands import main
from wellposed.commands.program import COMMANDS

HEAVY = {"fastjsonschema", "highspy", "numpy", "pydantic", "rapidfuzz", "rich"}


def loaded(*arguments):
    """The heavy libraries a run has loaded by its end."""
    script = (
        "import sys\nfrom wellposed.commands import main\n"
        f"main({list(arguments)!r}, standalone_mode=False)\nprint(*sys.modules)"
    )
    environment = {"PYTHONPATH": ":".join(sys.path)}
    ran = subprocess.run([sys.executable, "-c", script], env=environment, capture_output=True, check=True)
    return HEAVY & set(ran.stdout.decode().split())


@pytest.mark.parametrize("arguments", [["--version"], ["--help"]])
def test_the_overview_and_the_version_load_nothing_heavy(arguments):
    assert loaded(*arguments) == set()


@pytest.mark.parametrize(
    "command, spared", [("explain", {"rich", "numpy", "highspy"}), ("schema", HEAVY), ("rules", {"rich"})]
)
def test_a_command_loads_only_what_it_uses(command, spared):
    arguments = [command, "possible"] if command == "explain" else [command]
    assert loaded(*arguments) & spared == set()


def test_the_version_is_that_of_the_package():
    assert CliRunner().invoke(main, ["--version"]).output == f"wellposed {wellposed.__version__}\n"


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_the_help_of_the_overview_and_ends_in_an_example(name):
    help_text = CliRunner().invoke(main, [name, "--help"]).output
    assert COMMANDS[name] in help_text
    assert help_text.rstrip().splitlines()[-1].startswith(f"  Example: wellposed {name} ")


def test_the_overview_names_every_command_and_ends_in_an_example():
    overview = CliRunner().invoke(main, ["--help"]).output
    assert [name for name in COMMANDS if f"  {name}  " not in overview] == []
    assert overview.rstrip().splitlines()[-1] == "  Example: wellposed check prescription.json"


def test_an_unknown_command_is_a_wrong_call():
    result = CliRunner().invoke(main, ["chekc"])
    assert (result.exit_code, "No such command 'chekc'" in result.stderr) == (2, True)


def test_a_fault_of_the_program_is_one_line_without_its_words(monkeypatch):
    CliRunner().invoke(main, ["explain", "possible"])

    def failing(_):
        raise RuntimeError("P-7F3A")

    monkeypatch.setattr(sys.modules["wellposed.commands.explain"], "find", failing)
    result = CliRunner().invoke(main, ["explain", "possible"])
    assert (result.exit_code, result.output) == (4, "wellposed: internal fault (RuntimeError)\n")
