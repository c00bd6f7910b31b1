"""The prescriptions of the examples and of the conformance kit, each content once."""

from pathlib import Path

from wellposed.check import sound
from wellposed.digests import digest
from wellposed.model import Prescription

ROOT = Path(__file__).parents[4]
EXAMPLES = sorted(ROOT.glob("examples/*/prescription.json"))
CASES = sorted(ROOT.glob("spec/conformance/cases/*/*/input.json"))


def distinct(paths):
    """Name to prescription; the name is the folder of the first file that holds it. What is not sound is left out."""
    seen = {}
    for path in paths:
        found = sound(path.read_bytes())
        if isinstance(found, Prescription):
            seen.setdefault(digest(found), ("/".join(path.parent.parts[-2:]), found))
    return dict(seen.values())
