"""Whole notes put together from clauses that are known beforehand, in many hands.

``note(seed)`` gives the text, the expected clauses with their spans, and the spans of headings, which may be notes of
their own or stand with the clause below them.
"""

from dataclasses import dataclass
from random import Random

from tests.converters.wellposed_converters.text.varied_bite import ALL_OF, clause
from tests.converters.wellposed_converters.text.varied_clauses import FOUND, MAKERS, WANTED
from tests.converters.wellposed_converters.text.varied_pen import STATED, Pen

# Never misspelt: one keystroke turns these into another word that is an order (free text, 6.4).
NEVER_MISSPELT = (
    "no not none now on one any and or for only except accept expect intrude extrude retract extract procline "
    "retrocline left right upper lower mesial distal open close keep deep with "
    "without ext exp int tip lock max min"
)
DANGER = frozenset(NEVER_MISSPELT.split())
SYSTEMS = ["FDI"] * 5 + ["Universal"] * 3 + ["alphanumeric"] * 2 + ["Palmer"] * 2 + ["dotted"]
GREETINGS = ["Hi,", "Hello,", "Dear colleague,", "Dear all,", "Hi team,"]
PARTINGS = ["Thanks\nDr Sample", "Kind regards\nDr Example", "Many thanks", "Best wishes\nDr Sample"]
LAYOUTS = ["sentences"] * 3 + ["lines"] * 2 + ["bullets", "numbered", "commas", "semicolons", "sections", "sections"]
FINDINGS = ["Findings:\n", "Findings\n", "Clinical findings\n", "Diagnosis:\n", "Findings: "]
PLANS = ["Plan:\n", "Plan\n", "Treatment plan\n", "Treatment request\n", "Plan: "]
NEGATIVE = ("no ", "do not", "don't", "non-")
SHORTEST = 5
LETTERS = "abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True)
class Note:
    text: str
    expected: list
    layout: str
    slip: str | None
    headings: tuple


def note(seed):
    """The note of a seed."""
    random = Random(f"varied {seed}")
    system = random.choice(SYSTEMS)
    pen = Pen(random, system)
    layout = random.choice(LAYOUTS)
    made = _sections(pen) if layout == "sections" else _clauses(pen, layout)
    parts = _notation(pen) + made
    case = random.choice([str] * 7 + [str.upper, str.lower])
    parts = [(case(words), records) for words, records in parts]
    slip = None
    if random.random() < 0.3:
        parts, slip = _misspelt(random, parts)
    text, expected = _laid_out(random, layout, parts)
    headings = tuple(tuple(one["spans"][0]) for one in expected if one["kind"] == "heading")
    return Note(text, [one for one in expected if one["kind"] != "heading"], layout, slip, headings)


def _notation(pen):
    forms = STATED[pen.system]
    name = {"dotted": "FDI_dot"}.get(pen.system, pen.system)
    return [(pen.random.choice(forms), [clause("notation", "state", of=name)])] if forms else []


def _clauses(pen, layout):
    """Three to eight clauses, each maker at most once; in a comma list none that would lean on the one before."""
    makers = list(dict.fromkeys(pen.random.sample(MAKERS, pen.random.randint(3, 8))))
    parts = []
    for maker in makers:
        words, records = maker(pen)
        if not parts or _fits(layout, words, records, parts):
            parts.append((words[0].upper() + words[1:] if layout == "sentences" else words, records))
    return parts


def _sections(pen):
    """What is found and what is wanted, under headings (R12: a bare number is the one or the other by its heading)."""
    random = pen.random
    found, wanted = random.sample(FOUND, random.randint(2, 3)), random.sample(WANTED, random.randint(2, 4))
    kinds = random.sample(["overjet", "overbite"], random.randint(0, 2))
    pairs = {kind: (random.choice([4, 5, 6.5]), random.choice([2, 2.5, 3])) for kind in kinds}
    below = [[maker(pen) for maker in makers] for makers in (found, wanted)]
    for side, (mode, measure) in enumerate([("state", "current"), ("do", "target")]):
        for kind, values in pairs.items():
            words = f"{pen.say(ALL_OF[kind])} {pen.with_unit(pen.number(values[side]), 'mm')}"
            said = {"measure": measure, "min": values[side], "max": values[side], "unit": "mm"}
            below[side].insert(random.randint(0, 1), (words, [clause(kind, mode, **said)]))
    heads = [(random.choice(words), [clause("heading", "state")]) for words in (FINDINGS, PLANS)]
    sections = [head[:1] + rows for head, rows in zip([[heads[0]], [heads[1]]], below, strict=True)]
    return [(words[0].upper() + words[1:], records) for rows in sections for words, records in rows]


def _fits(layout, words, records, parts):
    """Whether a clause says after those before it, in one sentence with them, what it says alone."""
    if layout == "commas" and not _stands_alone(words, parts[-1][0]):
        return False
    led = any(":" in before and before_records[0].get("teeth") for before, before_records in parts)
    placed = any(name in record for record in records for name in ("teeth", "contacts", "links"))
    return layout not in ("commas", "semicolons") or placed or not led or records[0]["kind"] not in PLACEABLE


PLACEABLE = {"elastic", "extraction", "attachment", "bite_ramp", "ipr", "retainer", "trim", "archwidth"}
"""Kinds that "36: must not move; no attachments" may mean of the tooth named before."""
FIRST_WORDS = (
    "align straighten line please unravel keep maintain preserve reduce decrease move shift intrude extrude derotate "
    "derot rotate procline retrocline mesialise mesialize distalise distalize lock place use add expand change level "
    "correct accept finish no do don't non-extraction"
)
VERBS = frozenset(FIRST_WORDS.split())


def _stands_alone(words, before):
    """R14: after a comma only what has a verb of its own; a clause of a new noun not after a negation."""
    if words.split()[0].casefold() in VERBS:
        return True
    return words[:1].isalpha() and words.split()[0].isalpha() and ":" not in words and not _negative(before) and (
        words.casefold().startswith(("ipr", "attachment", "att", "button", "cut", "bite ramps on", "bite ramps pal"))
    )  # fmt: skip


def _negative(words):
    return words.casefold().startswith(NEGATIVE) or "none" in words.casefold()


def _misspelt(random, parts):
    """One slip of the keyboard in one word of five letters or more."""
    places = [
        (n, at, word)
        for n, (words, records) in enumerate(parts)
        for at, word in _words(words)
        if records[0]["kind"] != "heading" and "spans" not in records[0]
        if len(word) >= SHORTEST and word.isascii() and word.isalpha() and word.casefold() not in DANGER
    ]
    if not places:
        return parts, None
    n, at, word = random.choice(places)
    slip = edited(random, word)
    words, records = parts[n]
    parts[n] = (words[:at] + slip + words[at + len(word) :], records)
    return parts, f"{word} > {slip}"


def _words(text):
    at = 0
    for word in text.replace("-", " ").replace(",", " ").replace(":", " ").split(" "):
        yield at, word
        at += len(word) + 1


def edited(random, word):
    """The word with a letter left out, doubled, changed, put in, or two letters changed about."""
    at = random.randrange(len(word) - 1)
    letter = random.choice(LETTERS)
    letter = letter.upper() if word.isupper() else letter
    return random.choice([
        word[:at] + word[at + 1 :],
        word[:at] + word[at] + word[at:],
        word[:at] + word[at + 1] + word[at] + word[at + 2 :],
        word[:at] + letter + word[at + 1 :],
        word[: at + 1] + letter + word[at + 1 :],
    ])  # fmt: skip


def _laid_out(random, layout, parts):
    """The text and the expected clauses with their spans."""
    end = random.choice(["\n", "\n", "\n", "\r\n"])
    text, expected = "", []
    if layout != "commas" and random.random() < 0.2:
        text, expected = _with_note(text, expected, random.choice(GREETINGS), "greeting", end)
    before, after = _marks(random, layout, end)
    ended = [(words.replace("\n", end), records) for words, records in parts]
    for number, (words, records) in enumerate(ended, start=1):
        heading = records[0]["kind"] == "heading"
        text = text.rstrip() + 2 * end if heading and text else text + before.format(number)
        whole, by = [[0, len(words.rstrip())]], len(text)
        expected += [one | {"spans": [[a + by, b + by] for a, b in one.get("spans", whole)]} for one in records]
        stop = "" if heading else after
        if layout in ("commas", "semicolons") and (number == len(parts) or records[0]["kind"] == "notation"):
            stop = ". " if number < len(parts) else random.choice(["", "."])
        text += words + stop
    text = text.rstrip(" ") if random.random() < 0.5 else text
    if expected[0]["kind"] == "note" and random.random() < 0.7:
        text = text.rstrip() + 2 * end
        text, expected = _with_note(text, expected, random.choice(PARTINGS).replace("\n", end), "signature", "")
    return text, expected


def _marks(random, layout, end):
    match layout:
        case "sentences" | "sections":
            return "", random.choice([". ", ". ", ".  "])
        case "lines":
            return "", random.choice([end, "." + end])
        case "bullets":
            return random.choice(["- ", "• ", "* ", "– "]), end
        case "numbered":
            return random.choice(["{}. ", "{}) ", "({}) "]), random.choice([end, "." + end])
        case "commas":
            return "", ", "
    return "", "; "


def _with_note(text, expected, words, of, end):
    spans = [[len(text), len(text) + len(words)]]
    return text + words + (2 * end), [*expected, clause("note", "state", of=of, spans=spans)]
