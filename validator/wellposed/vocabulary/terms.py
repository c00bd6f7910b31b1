"""Closed lists of trade terms, one list a member of the format."""

from __future__ import annotations

from typing import Literal

Strength = Literal["must", "prefer"]
Arch = Literal["upper", "lower"]
Side = Literal["right", "left"]

Sex = Literal["female", "male"]
Growth = Literal["growing", "complete", "unknown"]
Dentition = Literal["primary", "mixed", "permanent"]

ToothState = Literal[
    "crown",
    "veneer",
    "large-filling",
    "bridge-abutment",
    "pontic",
    "implant",
    "ankylosed",
    "unerupted",
    "partly-erupted",
    "short-root",
    "root-filled",
    "splinted",
    "injured",
    "mobile",
    "small-crown",
    "to-be-extracted",
    "transposed",
]

Condition = Literal[
    "active-periodontitis",
    "treated-periodontitis",
    "gingival-recession",
    "thin-gingiva",
    "active-caries",
    "hypersensitive-enamel",
    "dry-mouth",
    "antiresorptive-medication",
    "bleeding-disorder",
    "jaw-joint-disorder",
    "clenching-or-grinding",
    "tongue-habit",
    "mouth-breathing",
    "allergy-acrylate",
    "allergy-nickel",
    "allergy-latex",
    "pregnancy",
    "other",
]

RecordKind = Literal[
    "intraoral-scan",
    "model-scan",
    "plaster-model",
    "impression",
    "bite-registration",
    "intraoral-photograph",
    "face-photograph",
    "panoramic-radiograph",
    "lateral-cephalogram",
    "periapical-radiograph",
    "cone-beam-tomogram",
    "other",
]

JawPosition = Literal["intercuspal", "retruded-contact"]

Problem = Literal[
    "deep-bite",
    "open-bite-anterior",
    "open-bite-posterior",
    "crowding",
    "spacing",
    "class-i",
    "class-ii",
    "class-iii",
    "increased-overjet",
    "reverse-overjet",
    "crossbite-anterior",
    "crossbite-posterior",
    "scissors-bite",
    "midline-deviation",
    "rotated-teeth",
    "displaced-teeth",
    "deep-curve-of-spee",
    "narrow-arch",
    "protrusive-incisors",
    "retroclined-incisors",
    "excess-gingival-display",
    "low-incisor-display",
    "tooth-size-discrepancy",
    "missing-teeth",
    "impacted-tooth",
    "tilted-teeth",
    "infraocclusion",
    "gingival-margin-unevenness",
    "open-gingival-embrasures",
    "wear",
    "relapse",
    "other",
]
Grade = Literal["mild", "moderate", "severe"]

Ground = Literal["growth", "leeway-space", "functional-shift", "derotation", "eruption", "other"]

ElasticPattern = Literal["vertical", "cross", "triangular", "box", "anterior-diagonal"]
Auxiliary = Literal["bite-plane", "bite-block", "bone-screw", "expansion-screw", "bonded-button", "other"]

Means = Literal[
    "enamel-reduction",
    "incisor-advance",
    "incisor-retraction",
    "widening",
    "narrowing",
    "distal-movement",
    "mesial-movement",
    "intrusion",
    "extrusion",
    "posterior-open-bite",
    "extraction",
    "class-ii-elastics",
    "class-iii-elastics",
    "elastics",
    "auxiliary",
]

AttachmentReason = Literal["movement", "retention"]
AttachmentOtherwise = Literal["laboratory-decides", "none"]
AttachmentShape = Literal[
    "rectangular-vertical",
    "rectangular-horizontal",
    "ellipsoid-vertical",
    "ellipsoid-horizontal",
    "bevelled-gingival",
    "bevelled-occlusal",
    "as-described",
]

Relation = Literal["before", "together-with", "not-before-done", "only-if"]

AppliancePart = Literal[
    "bite-plane",
    "bite-block",
    "pontic",
    "button-opening",
    "elastic-notch",
    "elastic",
    "trimming",
    "material",
    "passive-appliance",
    "other",
]
Wear = Literal["full-time", "night", "meals", "as-described"]
Trimming = Literal["at-gingival-margin", "above-gingival-margin", "scalloped", "as-described"]

Step = Literal[
    "approval-before-making",
    "build-up-before",
    "build-up-after",
    "extraction",
    "exposure",
    "periodontal-treatment",
    "surgery",
    "new-scan",
    "next-stage-on-condition",
    "consent-given",
    "other",
]

Retainer = Literal["removable", "bonded", "both", "none"]

Standing = Literal["done", "not-done", "changed"]
"""What a laboratory says of a clause that teeth do not show."""
ReviewOutcome = Literal["met", "not-met", "within", "beyond", "cannot-be-told", "declared"]
"""Of a clause: met or not; of an allowance: used within or beyond it; not to be told; only said by the laboratory."""

Weight = Literal["stop", "ask", "caution", "note"]
"""How much a finding weighs, heaviest first."""
