"""What reading a note costs, beside checking a prescription in the same run: ``python tests/bench/notes.py``."""

import json
import sys
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

from bench import row, seconds

from wellposed.check import check
from wellposed_converters.text.read import read_text

ROOT = Path(__file__).parents[2]
CORPUS = ROOT / "tests" / "converters" / "wellposed_converters" / "text" / "corpus"
EXAMPLE = ROOT / "examples" / "spaced-upper-front" / "prescription.json"
PAGES = 3
"""The longest notes of the corpus stand for pages: letters with headings, of 350 to 1,350 characters."""


def pages():
    """The longest notes."""
    lines = [
        line for name in ("samples", "ordinary") for line in (CORPUS / f"{name}.jsonl").read_text("utf-8").splitlines()
    ]
    return sorted((json.loads(line)["text"] for line in lines), key=len, reverse=True)[:PAGES]


def reading():
    """The median page and the longest, in milliseconds, and against the check of an example."""
    texts = pages()
    for text in texts:
        read_text(text)  # the lexicon and the grammar are loaded once a process
    costs = [seconds(lambda text=text: read_text(text), rounds=7, repeat=2) for text in texts]
    data = EXAMPLE.read_bytes()
    beside = seconds(lambda: check(data), rounds=7, repeat=2)
    page = median(costs)
    row(f"a page read, median of the {PAGES} longest notes, ms", f"{page * 1e3:.0f}", "<= 100")
    row(f"   the longest, {len(texts[0])} characters, ms", f"{costs[0] * 1e3:.0f}", "<= 100")
    row("   pages a second", f"{1 / page:.0f}", ">= 10")
    row("   a page : check of an example", f"{page / beside:.2f}", "-")
    characters = sum(map(len, texts))
    row("   characters a millisecond", f"{characters / sum(costs) / 1e3:.1f}", "-")


if __name__ == "__main__":
    reading()
