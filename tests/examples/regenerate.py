"""Write the reports of the examples again: ``python tests/examples/regenerate.py``.

A changed report is read before it is committed: the verdict of each case stands in ``examples/README.md``.
"""

from pathlib import Path

from click.testing import CliRunner

from wellposed.commands import main

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples"
CASES = {folder.name: folder for folder in sorted(EXAMPLES.iterdir()) if folder.is_dir()}
FORMS = {"report.txt": "text", "report.json": "json"}


def checked(name, form):
    """Exit status and output of the check of one case, as a pipe gets it."""
    result = CliRunner().invoke(main, ["check", "--format", form, str(CASES[name] / "prescription.json")])
    return result.exit_code, result.output


if __name__ == "__main__":
    for case, folder in CASES.items():
        for file, form in FORMS.items():
            (folder / file).write_text(checked(case, form)[1], "utf-8", newline="")
