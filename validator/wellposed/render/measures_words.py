"""Derived measurements in words: their names, why one could not be derived, what is wrong with a table of widths."""

from __future__ import annotations

__all__ = ["FAULTS", "LINES", "REASONS", "name_of"]

_NAMES = {
    "planned-interincisal-angle": "interincisal angle as planned",
    "sum-of-angles-palatal": "sum of angles, palatal plane",
    "sum-of-angles-sella-nasion": "sum of angles, sella-nasion",
    "upper-space-budget": "upper arch, room left over",
    "lower-space-budget": "lower arch, room left over",
    "usual-incisor-display-at-rest": "upper incisor usually shown at rest",
    "usual-gingival-display-on-smiling": "gum usually shown on smiling",
    "overall-upper-tooth-size-excess": "upper tooth-size excess, 12 teeth",
    "overall-lower-tooth-size-excess": "lower tooth-size excess, 12 teeth",
    "anterior-upper-tooth-size-excess": "upper tooth-size excess, 6 teeth",
    "anterior-lower-tooth-size-excess": "lower tooth-size excess, 6 teeth",
    "overall-tooth-size-ratio": "tooth-size ratio, 12 teeth",
    "anterior-tooth-size-ratio": "tooth-size ratio, 6 teeth",
}
_ABBREVIATIONS = {"iotn": "IOTN", "par": "PAR", "abo": "ABO", "anb": "ANB"}


def name_of(name: str) -> str:
    """A derived measurement's name in words."""
    if name in _NAMES:
        return _NAMES[name]
    words = [_ABBREVIATIONS.get(word, word) for word in name.split("-")]
    return " ".join(words)


REASONS = {
    "teeth-not-fit": "Only measured widths of sound permanent teeth count; these have none:",
    "not-every-tooth-measured": "Every tooth from canine to canine must be measured; these are not:",
    "amount-not-stated": "An amount is not stated.",
    "no-crown-height": "The crown height of the lower incisor is not measured.",
}
LINES = {
    "crowding": "crowding",
    "levelling": "levelling",
    "incisor-advance": "incisor advance",
    "incisor-retraction": "incisor retraction",
    "widening": "widening",
    "narrowing": "narrowing",
    "distal-movement": "distal movement",
    "mesial-movement": "mesial movement",
    "space-left": "space to be left",
    "midline": "midline, in all",
    "spacing": "spacing",
    "enamel-reduction": "enamel reduction",
    "extraction": "extraction",
    "expected": "a change counted on",
    "laboratory-choice": "the laboratory's choice",
}
FAULTS = {
    "not-utf-8": "the text is not UTF-8",
    "too-large": "the table is larger than one with every tooth and point ({most} bytes)",
    "byte-order-mark": "a byte order mark stands before the text",
    "wrong-header": "the first line must be {expected}",
    "no-rows": "no tooth is listed",
    "wrong-number-of-cells": "expected {expected} cells with a comma between, found {found}",
    "unknown-tooth": "not a tooth number of ISO 3950",
    "tooth-twice": "this tooth stands in line {first_line} already",
    "not-a-number": "expected mm with a decimal point and at most {expected} decimals",
    "outside-range": "no tooth is that wide; expected {least:g} to {most:g} mm",
}
