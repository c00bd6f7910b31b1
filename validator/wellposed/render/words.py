"""The trade's words for motions, variables, means and attachments: data."""

from __future__ import annotations

MOTION_VERBS = {
    "mesial": "move {} mesially",
    "distal": "move {} distally",
    "labial": "move {} labially",
    "buccal": "move {} buccally",
    "lingual": "move {} lingually",
    "palatal": "move {} palatally",
    "extrusion": "extrude {}",
    "intrusion": "intrude {}",
    "labial-crown-torque": "torque the crowns of {} labially",
    "buccal-crown-torque": "torque the crowns of {} buccally",
    "lingual-crown-torque": "torque the crowns of {} lingually",
    "palatal-crown-torque": "torque the crowns of {} palatally",
    "labial-root-torque": "torque the roots of {} labially",
    "buccal-root-torque": "torque the roots of {} buccally",
    "lingual-root-torque": "torque the roots of {} lingually",
    "palatal-root-torque": "torque the roots of {} palatally",
    "mesial-crown-tip": "tip the crowns of {} mesially",
    "distal-crown-tip": "tip the crowns of {} distally",
    "mesiolingual-rotation": "rotate {}, mesial side towards the tongue",
    "distolingual-rotation": "rotate {}, distal side towards the tongue",
}
VARIABLE_WORDS = {
    "along": "travel along the arch",
    "out": "travel in or out",
    "vertical": "height",
    "torque": "torque",
    "tip": "tip",
    "rotation": "rotation",
}
MEANS_WORDS = {
    "enamel-reduction": "enamel reduction",
    "incisor-advance": "incisor advance",
    "incisor-retraction": "incisor retraction",
    "widening": "widening",
    "narrowing": "narrowing",
    "distal-movement": "distal movement",
    "mesial-movement": "mesial movement",
    "intrusion": "intrusion",
    "extrusion": "extrusion",
    "posterior-open-bite": "a posterior open bite",
    "extraction": "extraction",
    "class-ii-elastics": "Class II elastics",
    "class-iii-elastics": "Class III elastics",
    "elastics": "elastics",
    "auxiliary": "an auxiliary",
    "movement": "movement",
    "laboratory-choice": "the laboratory's choice",
}
ATTACHMENT_WORDS = {
    "must": "attachments on {}",
    "must_not": "no attachments on {}",
    "may": "attachments allowed on {}",
    "prefer": "attachments wished for on {}",
    "prefer_not": "attachments not wished for on {}",
}
