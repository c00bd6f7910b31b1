"""The pages of the specification taken apart: fenced examples, marked tables, links, names in code type."""

import json
import re
from pathlib import Path
from typing import NamedTuple

SPEC = Path(__file__).parents[2] / "spec"
WRITTEN = (
    "README.md",
    "prescription.md",
    "setup.md",
    "setup-tables.md",
    "forms.md",
    "tables.md",
    "xml.md",
    "review.md",
    "semantics.md",
    "objectives.md",
    "measures.md",
    "landmarks.md",
    "report.md",
    "readback.md",
    "notes.md",
    "revisions.md",
    "fhir.md",
    "signatures.md",
    "receipt.md",
)
PAGES = {path.relative_to(SPEC).as_posix(): path.read_text("utf-8") for path in sorted(SPEC.rglob("*.md"))}

_FENCE = re.compile(r"^```(?P<info>[^\n]*)\n(?P<body>.*?)^```$", re.MULTILINE | re.DOTALL)
_MARK = re.compile(r"<!-- (?P<kind>[a-z]+): (?P<of>[^>]*?) -->\n(?P<body>(?:\|[^\n]*\n)*)")
_GENERATED = re.compile(r"(<!-- generated: (?P<name>[a-z-]+) -->\n)(?P<body>.*?)(<!-- end -->)", re.DOTALL)


class Example(NamedTuple):
    """A fenced block: its page and line, the words behind ``json``, its text."""

    page: str
    line: int
    words: tuple[str, ...]
    body: str

    @property
    def told(self):
        """What the words claim: name to value; a bare word has no value."""
        return dict(word.partition("=")[::2] for word in self.words)


class Table(NamedTuple):
    """A marked table: its page, what it lists, its rows of cells without the head."""

    page: str
    of: str
    rows: list[list[str]]


def fences(page):
    """Every fenced block of a page: (line, info string, body)."""
    text = PAGES[page]
    return [(text[: m.start()].count("\n") + 1, m["info"].strip(), m["body"]) for m in _FENCE.finditer(text)]


def examples():
    """Every fenced JSON block of the written pages."""
    for page in WRITTEN:
        for line, info, body in fences(page):
            language, *words = info.split()
            if language == "json":
                yield Example(page, line, tuple(words), body)


def base(kind=""):
    """The document that fragments are put into: a prescription, or the setup or review of that name."""
    (found,) = [example for example in examples() if example.told.get("base") == kind]
    return json.loads(found.body)


def whole(example):
    """The bytes an example stands for: itself, or the base with its members in place of the base's."""
    if "fragment" not in example.told:
        return example.body.encode()
    return json.dumps(base(example.told["fragment"]) | json.loads(example.body)).encode()


def tables(kind):
    """Every marked table of a kind."""
    for page in WRITTEN:
        for mark in _MARK.finditer(PAGES[page]):
            if mark["kind"] == kind:
                rows = [[cell.strip() for cell in row.split("|")[1:-1]] for row in mark["body"].splitlines()]
                yield Table(page, mark["of"], rows[2:])


def blocks(page):
    """Every generated block of a page, name to text."""
    return {mark["name"]: mark["body"] for mark in _GENERATED.finditer(PAGES[page])}


def filled(text, made):
    """A page with every generated block written anew."""
    return _GENERATED.sub(lambda m: f"{m[1]}{made[m['name']]()}{m[4]}", text)


def prose(page):
    """A page without its fenced blocks."""
    return _FENCE.sub("", PAGES[page])


def code(page):
    """Everything in code type on a page."""
    return re.findall(r"`([^`\n]+)`", prose(page))


def links(page):
    """Every link that stays inside the specification: (words, file, anchor)."""
    found = re.findall(r"\[([^\]]+)\]\(([^)\s#]*)(?:#([^)\s]*))?\)", prose(page))
    return [(words.strip("`"), file, anchor) for words, file, anchor in found if ":" not in file]


def anchors(page):
    """The anchors of a page's headings."""
    heads = re.findall(r"^#+ (.+)$", PAGES[page], re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", head.lower()).replace(" ", "-") for head in heads}
