"""The stories of ``examples/stories``, as each conversation went: what arrived, what the program was asked."""

import os
from pathlib import Path
from typing import NamedTuple

from click.testing import CliRunner
from tests.examples.stories import all_in_order, instruction_at_fault, setup_at_fault

from wellposed.commands import main

FOLDER = Path(__file__).parents[3] / "examples" / "stories"
WRITTEN = {
    "all-in-order": all_in_order.written,
    "instruction-at-fault": instruction_at_fault.written,
    "setup-at-fault": setup_at_fault.written,
}
ARRIVES = "arrives"
BY_HAND = ("note.txt", "answers.txt", "particulars.json")
RX, SU, RV = ("case/prescription-{}.json", "case/setup-{}.json", "case/review-{}.json")
CASE_AFTER_FOUR = [form.format(number) for form in (RX, SU, RV) for number in range(1, 5)]


def arrives(*files):
    """Files that people wrote, as they come in."""
    return ARRIVES, files, 0


def says(file, status, *command):
    """A command; what it prints goes to the file, if one is named, and this is its exit status."""
    return file, command, status


def ordered(by):
    """A note and the answers to its questions become the first revision of a prescription."""
    made = ("--ask", "--by", by, "--particulars", "particulars.json", "-o", RX.format(1))
    return [arrives(*BY_HAND), says("", 0, "read", "note.txt", *made)]


def checked(number, status):
    """The check of a revision, those before it at hand."""
    earlier = [part for before in range(1, number) for part in ("--earlier", RX.format(before))]
    return says(f"check-{number}.txt", status, "check", *earlier, RX.format(number))


def reviewed(order, plan, outcome, issued, status):
    """The review of a setup, and the document in which the reviewer decides."""
    decided = ("--outcome", outcome, "--id", f"RV-{order}{plan}", "--issued", issued, "-o", RV.format(plan))
    return says(f"review-{plan}.txt", status, "review", RX.format(order), SU.format(plan), *decided)


def compared(kind, name, before, status):
    """Two revisions of a prescription or a setup, one beside the other."""
    now = before + 1
    return says(f"compare-{name}-{before}-{now}.txt", status, "compare", kind.format(before), kind.format(now))


STORIES = {
    "all-in-order": [
        arrives("landmarks.csv"),
        says("measures.txt", 0, "measure", "landmarks.csv"),
        *ordered("clinic-5/dr-3"),
        checked(1, 0),
        arrives("movements.csv", "enamel.csv", "attachments.csv", "columns.toml"),
        says(
            "setup-1.txt",
            0,
            *("setup", "movements.csv", "--also", "enamel=enamel.csv", "--also", "attachments=attachments.csv"),
            *("--columns", "columns.toml", "--answers", RX.format(1), "--id", "SU-55"),
            *("--issued", "2026-04-22T10:15:00+02:00", "-o", SU.format(1)),
        ),
        reviewed(1, 1, "approved", "2026-04-23T08:50:00+02:00", 0),
        says("history.txt", 0, "history", "case"),
        says("", 0, "sheet", RX.format(1), SU.format(1), "-o", "sheet.html"),
    ],
    "instruction-at-fault": [
        *ordered("clinic-22/dr-4"),
        checked(1, 1),
        arrives(SU.format(1)),
        reviewed(1, 1, "returned", "2026-02-17T13:00:00+01:00", 1),
        arrives(RX.format(2)),
        compared(RX, "orders", 1, 0),
        checked(2, 1),
        arrives(SU.format(2)),
        reviewed(2, 2, "returned", "2026-03-03T09:45:00+01:00", 1),
        arrives(RX.format(3)),
        compared(RX, "orders", 2, 1),
        checked(3, 1),
        arrives(SU.format(3)),
        reviewed(3, 3, "returned", "2026-03-17T10:20:00+01:00", 1),
        says("history-after-three.txt", 1, "history", "case"),
        arrives(RX.format(4)),
        compared(RX, "orders", 3, 0),
        checked(4, 0),
        arrives(SU.format(4)),
        reviewed(4, 4, "approved", "2026-04-14T17:10:00+02:00", 0),
        says("history.txt", 0, "history", "case"),
        says("", 0, "sheet", RX.format(4), SU.format(4), "-o", "sheet.html"),
        says("", 0, "sheet", *CASE_AFTER_FOUR, "-o", "case.html"),
    ],
    "setup-at-fault": [
        *ordered("clinic-31/dr-2"),
        checked(1, 0),
        arrives(SU.format(1)),
        reviewed(1, 1, "returned", "2026-03-19T12:30:00+01:00", 1),
        arrives(SU.format(2)),
        compared(SU, "setups", 1, 0),
        reviewed(1, 2, "returned", "2026-03-27T08:40:00+01:00", 1),
        says("history-after-two.txt", 1, "history", "case"),
        arrives(SU.format(3)),
        compared(SU, "setups", 2, 0),
        reviewed(1, 3, "approved", "2026-04-02T14:15:00+02:00", 0),
        says("history.txt", 0, "history", "case"),
        says("", 0, "sheet", RX.format(1), SU.format(3), "-o", "sheet.html"),
    ],
}


class Step(NamedTuple):
    """A step that was taken: its file, the exit status it should end with and the one it ended with, and the fault."""

    file: str
    expected: int
    found: int
    fault: str


def tell(name, folder):
    """The story told anew in an empty folder, which then holds all its files but the page; every command as a step.

    Of what people wrote, the notes and tables by hand come from the committed story, the rest is made anew.
    """
    (folder / "case").mkdir()
    return [taken for step in STORIES[name] if (taken := _taken(name, step, folder))]


def _taken(name, step, folder):
    file, what, status = step
    if file == ARRIVES:
        return _arrived(name, what, folder)
    result = _run(what, folder)
    if file:
        (folder / file).write_text(result.stdout, "utf-8", newline="")
    return Step(file or f"{what[0]} {what[-1]}", status, result.exit_code, result.stderr)


def _arrived(name, files, folder):
    made = {} if files == BY_HAND else WRITTEN[name](folder)
    for file in files:
        text = made[file] if file in made else (FOLDER / name / file).read_text("utf-8")
        (folder / file).write_text(text, "utf-8", newline="")


def _run(command, folder):
    """As a pipe in that folder gets it; the answers are typed in where the command asks."""
    given = (folder / "answers.txt").read_text("utf-8") if "--ask" in command else None
    before = Path.cwd()
    os.chdir(folder)
    try:
        return CliRunner().invoke(main, list(command), input=given)
    finally:
        os.chdir(before)
