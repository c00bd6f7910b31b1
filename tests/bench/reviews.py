"""What a review costs against reading its setup, in one run: ``make bench``."""

import json
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

from bench import row, seconds
from tests.validator.wellposed.review.made import large, plausible

from wellposed.check import sound_document
from wellposed.kinematics.verdict import judge
from wellposed.model import Prescription, Setup
from wellposed.review import review


def whole(order, made, what):
    """One setup: milliseconds of its review, and how many readings of it those are."""
    prescription, setup = Prescription.model_validate(order), Setup.model_validate(made)
    data = json.dumps(made).encode()
    told = seconds(lambda: review(prescription, setup), rounds=9, repeat=3)
    reading = seconds(lambda: sound_document(data), rounds=9, repeat=3)
    verdict = seconds(lambda: judge(prescription), rounds=9, repeat=3)
    row(f"review of {what}, ms", f"{told * 1e3:.0f}", "<= 50")
    row("   the same : reading the setup", f"{told / reading:.2f}", "-")
    row("   the same : the verdict on its prescription", f"{told / verdict:.1f}", "-")


if __name__ == "__main__":
    whole(*large(), "28 teeth in 40 stages, all moving in every way")
    whole(*plausible(3), "an ordinary setup")
