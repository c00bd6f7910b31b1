"""Terms in words where the name alone could be taken for something else, and the words of every other term."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

__all__ = ["MEANS", "gloss", "plain"]

MEANS: Mapping[str, str] = MappingProxyType(
    {
        "enamel-reduction": "enamel reduction",
        "incisor-advance": "incisor advance (forwards)",
        "incisor-retraction": "incisor retraction (backwards; nothing is extracted by it)",
        "widening": "widening (the teeth of a pair apart)",
        "narrowing": "narrowing (the teeth of a pair together)",
        "distal-movement": "distal movement (along the arch, away from its middle)",
        "mesial-movement": "mesial movement (along the arch, towards its middle)",
        "intrusion": "intrusion (into the bone)",
        "extrusion": "extrusion (out of the bone)",
        "posterior-open-bite": "a posterior open bite (the back teeth apart)",
        "extraction": "extraction (teeth taken out)",
        "class-ii-elastics": "Class II elastics (upper teeth backwards, lower teeth forwards)",
        "class-iii-elastics": "Class III elastics (upper teeth forwards, lower teeth backwards)",
        "elastics": "other elastics",
        "auxiliary": "auxiliaries (bite planes, blocks, screws)",
    }
)
"""Every means that can be excluded."""

_GLOSSES = {
    "class-i": "Class I",
    "class-ii": "Class II",
    "class-iii": "Class III",
    "intercuspal": "with all teeth together",
    "retruded-contact": "at first contact with the jaw guided back",
    "vertical": "vertical (straight up and down)",
    "cross": "cross (from the inside of one arch to the outside of the other)",
    "triangular": "triangular (over three teeth)",
    "box": "box (over four teeth)",
    "anterior-diagonal": "anterior diagonal (across the front, for the midlines)",
    "growth": "growth of the jaws",
    "leeway-space": "leeway space (primary molars give way to smaller premolars)",
    "functional-shift": "the end of a functional shift (the jaw no longer slides on closing)",
    "derotation": "derotation (turned upper first molars give room)",
    "eruption": "eruption of a tooth",
    "rectangular-vertical": "rectangular, upright",
    "rectangular-horizontal": "rectangular, across",
    "ellipsoid-vertical": "rounded, upright",
    "ellipsoid-horizontal": "rounded, across",
    "bevelled-gingival": "bevelled towards the gum",
    "bevelled-occlusal": "bevelled towards the biting edge",
    "night": "at night",
    "meals": "at meals",
    "at-gingival-margin": "straight at the gum",
    "above-gingival-margin": "on the gum",
    "scalloped": "following the gum",
    "pontic": "pontic (a false tooth in the aligner)",
    "button-opening": "opening for a bonded button",
    "elastic-notch": "notch for an elastic",
    "passive-appliance": "passive appliance (moves nothing)",
    "bone-screw": "bone screw (an anchor in the bone)",
    "expansion-screw": "expansion screw (parts the halves of the upper jaw)",
    "bonded-button": "bonded button (to hook an elastic to)",
    "approval-before-making": "the setup is approved before anything is made",
    "build-up-before": "teeth are built up before",
    "build-up-after": "teeth are built up afterwards",
    "exposure": "exposure of an unerupted tooth",
    "next-stage-on-condition": "the next stage on a condition",
    "consent-given": "consent to the plan and its means is given",
}


def plain(term: str) -> str:
    """A term as it is, with spaces."""
    return term.replace("-", " ")


def gloss(term: str) -> str:
    """A term with its meaning where that is not plain from the name."""
    return _GLOSSES.get(term) or plain(term)
