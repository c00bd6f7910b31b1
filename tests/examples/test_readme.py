"""README says nothing that was not run: its commands, their outputs, its links, its tables."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from wellposed.catalogue import verdicts
from wellposed.findings import CAUTION

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text("utf-8")
PAGES = ("README.md", "examples/README.md")
LINK = re.compile(r"\]\((?!https?:)([^)#\s]+)(?:#[^)]*)?\)")
BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
BLOCKS = BLOCK.findall(README)
MAKE = ("make demo", "make test")  # they run the tests, or what the tests run; here only their targets are looked up

# A command whose output is shown is compared with it; of the others the exit status.
SHOWN = [
    (command, output)
    for language, text in BLOCKS
    if language == "console"
    for command, output in re.findall(r"^\$ (.+)\n((?:(?!\$ ).*\n)*)", text, re.MULTILINE)
]
PLAIN = [
    [
        (command.strip(), int(*re.findall(r"exit status ([0-9])", comment) or "0"))
        for command, _, comment in (line.partition("  # ") for line in text.splitlines())
        if command.strip() not in MAKE
    ]
    for language, text in BLOCKS
    if language == "sh"
]


@pytest.fixture
def shell(tmp_path):
    """Run a command as a reader would, in a folder of its own with the examples in it."""
    program = tmp_path / "bin" / "wellposed"
    program.parent.mkdir()
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m wellposed "$@"\n')
    program.chmod(0o755)
    (tmp_path / "examples").symlink_to(ROOT / "examples")
    path = os.pathsep.join([str(program.parent), os.environ["PATH"]])
    env = {**os.environ, "PATH": path, "PYTHONPATH": str(ROOT / "validator")}

    def run(command):
        return subprocess.run(command, shell=True, cwd=tmp_path, env=env, capture_output=True, text=True, check=False)

    return run


@pytest.mark.parametrize("command, output", SHOWN)
def test_a_shown_output_is_what_the_command_prints(shell, command, output):
    result = shell(command)
    assert (result.stdout, result.stderr) == (output, "")


def complaints(told):
    """The error stream without what a conversion says of itself when nothing was lost."""
    return "".join(line for line in told.splitlines(keepends=True) if not line.endswith("nothing lost.\n"))


@pytest.mark.parametrize("block", PLAIN)
def test_the_commands_of_a_block_end_as_they_say(shell, block):
    results = [(command, shell(command)) for command, _ in block]
    assert [(command, result.returncode, complaints(result.stderr)) for command, result in results] == [
        (command, status, "") for command, status in block
    ]


@pytest.mark.parametrize("code", [text for language, text in BLOCKS if language == "python"])
def test_a_piece_of_python_runs_without_the_model(shell, tmp_path, code):
    (tmp_path / "piece.py").write_text(f"{code}\nimport sys\nassert 'pydantic' not in sys.modules\n")
    result = shell(f'"{sys.executable}" piece.py')
    assert (result.returncode, result.stderr) == (0, "")


def test_the_two_commands_are_targets():
    targets = re.findall(r"(?m)^([a-z-]+):", (ROOT / "Makefile").read_text())
    assert {command.removeprefix("make ") for command in MAKE} <= set(targets)
    assert all(command in README for command in MAKE)


@pytest.mark.parametrize("page", PAGES)
def test_every_link_leads_somewhere(page):
    file = ROOT / page
    assert [link for link in LINK.findall(file.read_text("utf-8")) if not (file.parent / link).exists()] == []


def test_every_verdict_stands_in_the_table():
    assert re.findall(r"(?m)^\| `([a-z-]+)` \|", README)[: len(verdicts())] == [verdict.id for verdict in verdicts()]


def test_the_exit_statuses_are_those_of_the_help(shell):
    told = dict(re.findall(r"(?m)^ +([0-9])  (\S.*)$", shell("wellposed check --help").stdout))
    assert dict(re.findall(r"(?m)^\| ([0-9]) \| (.+) \|$", README)) == told


def test_the_caution_stands_in_full():
    assert CAUTION in " ".join(README.replace("\n> ", " ").split())
