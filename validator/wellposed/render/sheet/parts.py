"""Parts of a page that a sheet of an order and one of a review share."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from wellposed.derive.space import budget
from wellposed.digests import digest
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.kinematics.mouth import Mouth
from wellposed.model import Prescription
from wellposed.model.envelope import Envelope
from wellposed.model.making import Note
from wellposed.render.clinical import clinical_sentence, is_clinical
from wellposed.render.readback import BRITISH, HEADINGS, sentences
from wellposed.render.readback.sentence import FOUR
from wellposed.render.sheet.budget import budget_drawing, budget_words
from wellposed.render.sheet.drawing import Drawing
from wellposed.render.sheet.gauges import Gauge
from wellposed.render.sheet.legend import legend
from wellposed.render.sheet.page import Block, Figure, Line, Listed, Section, Words
from wellposed.render.sheet.profiles import profiles
from wellposed.render.text import HEADINGS as WEIGHTS
from wellposed.render.text import SCOPE, finding_lines, finding_place
from wellposed.vocabulary.teeth import ARCHES

__all__ = ["CLOSING", "arches", "digest_facts", "findings", "measures", "notes", "read_back", "room", "running"]

CLOSING = (SCOPE, "Tooth numbers: ISO 3950 (FDI). Sides are the patient's.", CAUTION)
"""What closes every sheet."""
_SPACES = re.compile(r" {2,}")


def digest_facts(document: Envelope) -> Iterator[tuple[str, str]]:
    """By what this exact document is known."""
    if document.replaces is not None:
        yield "Replaces SHA-256", document.replaces
    yield "SHA-256 (RFC 8785)", digest(document)


def running(kind: str, document: Envelope) -> str:
    """What stands at the foot of every printed sheet."""
    return f"{kind} {document.id}, revision {document.revision} · SHA-256 {digest(document)[:12]}…"


def arches(drawings: Sequence[Drawing], mouth: Mouth, planned: bool, heading: str = "The arches") -> Section:
    """Both arches and the marks they use."""
    key = legend("arch-marks", set().union(*(one.used for one in drawings)), planned)
    more = " Torque, tip and what is less than 0.05 mm or half a degree are in the table." if planned else ""
    figures = [*map(Figure, drawings), *([Figure(key, scale_words(mouth) + more)] if key else [])]
    return Section(heading, tuple(figures))


def scale_words(mouth: Mouth) -> str:
    """What the drawings of the arches are to scale by."""
    line = [tooth for arch in ARCHES for tooth in mouth.rows[arch].initial]
    measured = [tooth for tooth in line if mouth.tooth_values("tooth-width").get(tooth, 0.0) > 0]
    average = [tooth for tooth in line if tooth not in measured]
    widths = "measured tooth widths"
    if not measured:
        widths = "average tooth widths"
    elif len(measured) < len(average):
        widths = f"measured widths of {' '.join(measured)}, average ones of the others"
    elif average:
        widths = f"measured tooth widths, average ones of {' '.join(average)}"
    depths = [arch for arch in ARCHES if mouth.rows[arch].initial and mouth.rows[arch].measured_depth is None]
    depth = f"; an average depth of the {' and '.join(depths)} arch{'es' if len(depths) > 1 else ''}" if depths else ""
    return f"To scale by {widths}{depth}. Lengths of arrows and depths of crowns mean nothing."


def measures(found: Mapping[str, Gauge]) -> Iterator[Section]:
    """Overbite, overjet and midlines, where anything of them is stated."""
    drawn = profiles(found)
    if drawn is not None:
        caption = "Where the edges stand is to scale, in mm; how large the crowns are is not."
        yield Section("Overbite, overjet and midlines", (Figure(drawn, caption),))


def room(mouth: Mouth) -> Section:
    """The budget of each arch, drawn where there is anything to draw."""
    blocks: list[Block] = []
    drawings = []
    for arch in ARCHES:
        found = budget(mouth, arch)
        drawn = budget_drawing(found)
        if drawn is None:
            told = budget_words(found) if mouth.rows[arch].initial else "no teeth in line."
            blocks.append(Words(f"{arch.capitalize()} arch: {told}"))
        else:
            drawings.append(drawn)
            blocks.append(Figure(drawn))
    key = legend("room-marks", set().union(*(one.used for one in drawings)) if drawings else ())
    return Section("Room", (*blocks, *([Figure(key)] if key else [])))


# in words


def read_back(prescription: Prescription) -> Section:
    """Every sentence under its heading; the four that matter most stand even if empty."""
    told = sentences(prescription, BRITISH)
    groups: list[Block] = []
    for name, heading in HEADINGS.items():
        items = tuple((one.id, (Line(one.text),)) for one in told if one.heading == name)
        if items or name in FOUR:
            groups.append(Listed(heading, items or (("", (Line("Nothing."),)),)))
    return Section("Read back, clause by clause", tuple(groups))


def notes(listed: Iterable[Note] | None) -> Iterator[Section]:
    """Free text, which never binds."""
    items = tuple(("", (Line(_about(note) + note.text),)) for note in listed or ())
    if items:
        yield Section("Notes, which never bind", (Listed("", items),))


def _about(note: Note) -> str:
    return f"About {', '.join(note.about)}: " if note.about else ""


def findings(
    found: Sequence[Finding],
    weights: Mapping[Severity, str] = WEIGHTS,
    heading: str = "What the check found",
    none: str = "Nothing.",
) -> Section:
    """What was found, by weight; what goes under another finding stands with it; ``none`` where that is nothing."""
    groups: dict[str, list[tuple[str, tuple[Line, ...]]]] = {}
    leading = [one for one in found if not one.under]
    for place, one in enumerate(leading, 1):
        members = [member for member in found if member.under == one.name]
        heaviest = min((one, *members), key=lambda each: each.severity.rank).severity
        groups.setdefault(weights[heaviest], []).append((f"{place}", tuple(_told(one, members))))
    blocks: list[Block] = [Listed(weight, tuple(items)) for weight, items in groups.items()]
    return Section(heading, tuple(blocks) or (Words(none),))


def _told(one: Finding, members: Sequence[Finding]) -> Iterator[Line]:
    yield from _lines(finding_lines(one), 0)
    yield Line(finding_place(one), aside=True)
    for member in members:
        brief = is_clinical(member) and member.severity.rank >= one.severity.rank
        yield from _lines([clinical_sentence(member)] if brief else finding_lines(member), 1)
        yield Line(finding_place(member), deeper=True, aside=True)


def _lines(told: Iterable[str], depth: int) -> Iterator[Line]:
    for line in told:
        yield Line(_SPACES.sub(" ", line.strip()), depth > 0 or line.startswith(" "))
