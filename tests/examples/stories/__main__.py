"""Write the stories again, and what their pages quote of them: ``python -m tests.examples.stories``."""

import shutil
import sys
import tempfile
from pathlib import Path

from tests.examples.stories.quoted import requoted
from tests.examples.stories.telling import FOLDER, STORIES, tell


def rewritten(name):
    """One story told anew; its files are put in place of those that stand there, unless a command went wrong."""
    with tempfile.TemporaryDirectory() as empty:
        anew = Path(empty, name)  # the temporary folder's own mode is narrower than a repository's
        anew.mkdir()
        wrong = [step for step in tell(name, anew) if step.found != step.expected]
        if not wrong:
            shutil.copytree(anew, FOLDER / name, dirs_exist_ok=True)
            page = FOLDER / name / "README.md"
            page.write_text(requoted(page), "utf-8", newline="")
        return [f"{name}: {step.file}: {step.found}, not {step.expected}. {step.fault}" for step in wrong]


if __name__ == "__main__":
    sys.exit("\n".join(line for story in STORIES for line in rewritten(story)) or 0)
