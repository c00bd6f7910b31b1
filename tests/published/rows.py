"""The published rows, by their ids."""

import tomllib
from pathlib import Path

ROWS = {
    row["id"]: row for row in tomllib.loads(Path(__file__).with_name("changes.toml").read_text(encoding="utf-8"))["row"]
}


def titled(row_id):
    """The id of a row with the head of its citation, as a test is called."""
    return f"{row_id}, {ROWS[row_id]['citation'].partition('.')[0][:60]}"
