"""Strings nobody would write: any characters, words of the lexicon in any order, notes with characters and words moved.

``strange(seed)`` gives one; a third of the seeds each sort.
"""

import json
from functools import cache
from pathlib import Path
from random import Random

from wellposed_converters.text.lexicon import vocabulary

CORPUS = Path(__file__).parent / "corpus"
SEEN = ("samples", "ordinary", "adversarial")
RANGES = [
    (0x20, 0x7E), (0x20, 0x7E), (0xA0, 0xFF), (0x300, 0x36F), (0x370, 0x3FF), (0x400, 0x4FF), (0x5D0, 0x669),
    (0x2000, 0x206F), (0x2070, 0x209F), (0x2150, 0x21FF), (0x2200, 0x22FF), (0x23B0, 0x23D0), (0x2500, 0x257F),
    (0x3041, 0x30FF), (0x4E00, 0x4EFF), (0xFF01, 0xFF5E), (0xFFFD, 0xFFFD), (0x1F600, 0x1F64F), (0x1D7CE, 0x1D7FF),
]  # fmt: skip
TEETH = (
    "11 21 13-23 33-43 12,22 1.1 2.1 #8 #9 #6-11 19 UR3 LL6 UL UL3-3 U/L L3-3 3-3 6s 4s Es E D URE 3⏌ ⎿3 6┘ └6 21|12 "
    "4|4 321┐ 31/41 24/25 15/45 13-43 21-28 75 85 6+ +6 5-5 2-2 1121 00 49 99 upper lower right left U L R 3/4 1st IV V"
)
PLACES = TEETH.split()
NUMBERS = (
    "0.2 mm|0,3mm|.5|1|2|10|1.5 mm|5°|10 deg|50 %|0.2-0.3|1,2|½|1/2|max|min|up to|≤|<|≥|~|about|per contact|/contact|"
    "per side|each|total|±0.5|1e9|0|-2|+3|3.|0.0000001|12345678901234567890|14 days|12 steps|²|٣|１２|a|%"
)
AMOUNTS = NUMBERS.split("|")
SINGLE = ". , ; : - – — / | + & ( ) [ ] \" ' ? ! # ° ↑ ↓ → -> => = * • ~ @ \n \r\n \n\n \t Δ ✓ ✗ … _ \\ > PS Dx: Plan:"
SIGNS = [*SINGLE.split(" "), "\n- ", "\n1. ", "\n| a | b |\n", "\n> ", " ", "\u00a0", "\u200b", "\u2028"]


def strange(seed):
    """The string of a seed."""
    random = Random(f"strange {seed}")
    return (characters, soup, mutated)[seed % 3](random)


def characters(random):
    """Any characters, spaces and line ends among them."""
    text = (chr(random.randint(*random.choice(RANGES))) for _ in range(random.randint(0, 150)))
    return "".join(
        random.choice([char, char, char, " ", "\n", "1"]) if random.random() < 0.2 else char for char in text
    )


@cache
def _words():
    return sorted(vocabulary())


def soup(random):
    """Words, tooth references, amounts and signs in any order, in sentences of some length or none."""
    sorts = [_words(), _words(), PLACES, AMOUNTS, SIGNS]
    weights = random.choice([(4, 4, 4, 2, 2), (2, 2, 8, 4, 1), (8, 0, 2, 1, 1), (1, 1, 1, 1, 4)])
    row = (random.choice(sort) for sort in random.choices(sorts, weights, k=random.randint(1, 60)))
    return random.choice([" ", " ", " ", ""]).join(row)


@cache
def corpus():
    """The texts that may be looked at."""
    return [
        json.loads(line)["text"] for name in SEEN for line in (CORPUS / f"{name}.jsonl").read_text("utf-8").splitlines()
    ]


def mutated(random):
    """A note with some things left out, doubled, changed about, put in, or another note cut into it."""
    text = random.choice(corpus())
    for _ in range(random.randint(1, 8)):
        text = random.choice(CHANGES)(random, text)
    return text


def _cut(random, text, most=12):
    start = random.randint(0, len(text))
    return start, min(len(text), start + random.randint(1, most))


def _without(random, text):
    start, end = _cut(random, text)
    return text[:start] + text[end:]


def _doubled(random, text):
    start, end = _cut(random, text, 40)
    return text[:end] + text[start:end] + text[end:]


def _signed(random, text):
    start, _ = _cut(random, text)
    return text[:start] + random.choice([*SIGNS, *PLACES, *AMOUNTS]) + text[start:]


def _changed_about(random, text):
    words = text.split(" ")
    one, other = random.randrange(len(words)), random.randrange(len(words))
    words[one], words[other] = words[other], words[one]
    return " ".join(words)


def _without_word(random, text):
    words = text.split(" ")
    del words[random.randrange(len(words))]
    return " ".join(words)


def _joined(random, text):
    other = random.choice(corpus())
    start, end = _cut(random, other, 60)
    at = random.randint(0, len(text))
    return text[:at] + other[start:end] + text[at:]


def _one_line(random, text):
    return text.replace("\n", random.choice(["", " ", ", ", "\r", "\n\n"]))


CHANGES = [_without, _doubled, _signed, _signed, _changed_about, _without_word, _joined, _one_line]
