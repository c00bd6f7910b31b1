"""Write the reports of the examples again, and the stories: ``python tests/examples/regenerate.py``.

A changed report is read before it is committed: the verdict of each case stands in ``examples/README.md``.
"""

import subprocess
import sys
from pathlib import Path

from click.testing import CliRunner

from wellposed.commands import main

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples"
CASES = {folder.name: folder for folder in sorted(EXAMPLES.iterdir()) if folder.is_dir() and folder.name != "stories"}
FORMS = {"report.txt": "text", "report.json": "json"}
NOTED = [name for name, folder in CASES.items() if (folder / "note.txt").exists()]
BY = "clinic-9/dr-1"


def checked(name, form):
    """Exit status and output of the check of one case, as a pipe gets it."""
    result = CliRunner().invoke(main, ["check", "--format", form, str(CASES[name] / "prescription.json")])
    return result.exit_code, result.output


def read(name):
    """What is said of the note of a case before anybody answers, as a pipe gets it."""
    return CliRunner().invoke(main, ["read", str(CASES[name] / "note.txt")]).output


def answered(name, target):
    """The prescription of a case made anew from its note, its answers and its particulars, in ``target``."""
    folder = CASES[name]
    given = ["--ask", "--by", BY, "--particulars", str(folder / "particulars.json"), "-o", str(target)]
    command = ["read", str(folder / "note.txt"), *given]
    return CliRunner().invoke(main, command, input=(folder / "answers.txt").read_text("utf-8")).exit_code


if __name__ == "__main__":
    for case in NOTED:
        (CASES[case] / "reading.txt").write_text(read(case), "utf-8", newline="")
        answered(case, CASES[case] / "prescription.json")
    for case, folder in CASES.items():
        for file, form in FORMS.items():
            (folder / file).write_text(checked(case, form)[1], "utf-8", newline="")
    subprocess.run([sys.executable, "-m", "tests.examples.stories"], cwd=ROOT, check=True)
