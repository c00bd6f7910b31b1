"""What does not bind: notes, which are not repeated, and extensions, kept unread; and sections with nothing in them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.consistency.whole import Place
from wellposed.model.making import Extension, Note
from wellposed.render.readback.sentence import Context, Sentence, Teller, saying
from wellposed.render.readback.words import ids

__all__ = ["SECTIONS", "UNBOUND", "sections_without"]

SECTIONS = {
    "treat": ("there", "which arches are treated: both are taken to be"),
    "conditions": ("there", "conditions"),
    "findings": ("found", "findings"),
    "problems": ("found", "problems"),
    "expect": ("expected", "changes counted on"),
    "goals": ("change", "goals"),
    "movements": ("change", "movements"),
    "keep": ("stay", "anything to keep"),
    "allow": ("means", "anything allowed"),
    "exclude": ("means", "anything not allowed"),
    "attachments": ("means", "attachments"),
    "staging": ("made", "staging"),
    "appliance": ("made", "anything built beside the movement"),
    "process": ("made", "steps of the process"),
    "retention": ("made", "retention"),
}


def _note(part: Note, ctx: Context) -> str:
    del ctx
    about = f" about {ids(part.about)}" if part.about else ""
    return f"a note{about} is not repeated here, and is no instruction"


def _extension(place: Place, ctx: Context) -> Iterator[Sentence]:
    del ctx
    name = place.pointer.rpartition("/")[2]
    yield Sentence(place.pointer, "open", f"Not binding: the extension [{name}] is kept as it is, and not read.")


UNBOUND: Mapping[type, Teller] = MappingProxyType({Note: saying("open", "Not binding: ", _note), Extension: _extension})
"""What tells each part that does not bind."""


def sections_without(ctx: Context) -> Iterator[Sentence]:
    """The sections stated as none, each under its heading; then those not stated, in one sentence."""
    stated = vars(ctx.rx)
    for name, (heading, words) in SECTIONS.items():
        if stated[name] == ():
            yield Sentence(f"/{name}", heading, f"Stated as none: {words}.")
    lacking = [words for name, (_, words) in SECTIONS.items() if stated[name] is None]
    if lacking:
        yield Sentence("", "open", f"Not stated: {'; '.join(lacking)}.")
