"""A prescription read back in plain sentences, one for each clause, and what silence adds to them."""

from wellposed.render.readback.forms import readback_json, readback_text
from wellposed.render.readback.sentence import HEADINGS, Sentence
from wellposed.render.readback.spelling import BRITISH, USAGES
from wellposed.render.readback.told import sentences

__all__ = ["BRITISH", "HEADINGS", "USAGES", "Sentence", "readback_json", "readback_text", "sentences"]
