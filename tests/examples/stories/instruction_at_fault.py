"""A midline that teeth were asked to correct, three times; then the bite was looked at again."""

from tests.examples.stories.making import (
    carried,
    enamel,
    predicted,
    read,
    revised,
    said,
    setup,
    stages,
    tables,
    text,
)

LEFT, RIGHT = ("32", "31"), ("41", "42", "43")


def orders(first):
    """Four revisions: the one that was made of the note, and three that the clinic made of it."""
    allowed = {**first["allow"][0], "per_contact": 0.5}
    second = revised(first, "2026-02-20T10:40:00+01:00", allow=[allowed], extensions=None)
    closed = {"id": "c22", "strength": "must", "close_arch": "lower"}
    back = {"id": "c23", "use": "distal-movement", "arch": "lower", "sides": ["left"], "up_to": 0.5, "unit": "mm"}
    third = revised(
        second, "2026-03-06T12:15:00+01:00", goals=[*second["goals"], closed], allow=[*second["allow"], back]
    )
    return first, second, third, revised(third, "2026-04-02T09:30:00+02:00", **_looked_at_again(third))


def _looked_at_again(third):
    """What is otherwise in the last revision: the crossbite, and the jaw that slides because of it."""
    shift = {"ground": "functional-shift", "unit": "mm"}
    words = "guided back, the midlines meet, and 13 and 43 touch first; from there the jaw slides to the right"
    pairs = ["14", "15", "16", "24", "25", "26"]
    return {
        "treat": {"arches": "both"},
        "findings": [
            *third["findings"],
            {"id": "c24", "measure": "transverse-overlap-right", "value": -1, "unit": "mm"},
            {"id": "c25", "measure": "transverse-overlap-left", "value": 2.5, "unit": "mm"},
            {"id": "c35", "measure": "upper-crowding", "value": 0.6, "unit": "mm"},
        ],
        "problems": [
            {
                "id": "c26",
                "problem": "crossbite-posterior",
                "because": ["c24"],
                "side": "right",
                "teeth": ["14", "15", "16"],
            },
            {"id": "c27", "problem": "midline-deviation", "because": ["c9"], "arch": "lower"},
        ],
        "goals": [
            {**third["goals"][0], "because": ["c9", "c27"]},
            {"id": "c36", "strength": "must", "align": ["13", "12", "11", "21", "22", "23"], "because": ["c35"]},
            {
                "id": "c28",
                "strength": "must",
                "because": ["c24", "c26"],
                "measure": "transverse-overlap-right",
                "at_least": 1,
                "at_most": 3,
                "unit": "mm",
            },
            {
                "id": "c29",
                "strength": "must",
                "because": ["c25"],
                "measure": "transverse-overlap-left",
                "at_least": 1,
                "at_most": 3,
                "unit": "mm",
            },
        ],
        "allow": [
            {
                "id": "c30",
                "because": ["c26"],
                "use": "widening",
                "arch": "upper",
                "teeth": pairs,
                "up_to": 2.5,
                "unit": "mm",
            }
        ],
        "expect": [
            {"id": "c31", "measure": "lower-midline", "at_least": 1.5, "at_most": 2, **shift, "words": words},
            {"id": "c32", "measure": "transverse-overlap-right", "at_least": 0.8, "at_most": 1, **shift},
            {"id": "c33", "measure": "transverse-overlap-left", "at_least": -1, "at_most": -0.8, **shift},
        ],
        "attachments": [{"id": "c37", "must": pairs, "reason": "movement", "because": ["c30"]}],
        "notes": [{"text": "Of revision 3, c14, c15, c16, c22 and c23 no longer hold."}],
        "retention": [
            {"id": "c34", "arch": "upper", "retainer": "removable"},
            {"id": "c19", "arch": "lower", "retainer": "none", "words": "the lower teeth are not moved"},
        ],
    }


def setups(first, second, third, fourth):
    """What the laboratory planned for each revision."""
    one = _lower(first, 0.25, 0.75, "2026-02-12T15:20:00+01:00", "SU-871", 4, overbite=2.5, lower_midline=-1.4)
    two = _lower(second, 0.5, 1.5, "2026-02-27T14:05:00+01:00", "SU-902", 8, overbite=2.5, lower_midline=-0.75)
    three = _lower(third, 0.35, 1.05, "2026-03-13T16:45:00+01:00", "SU-933", 6, overbite=2.5, lower_midline=-1.1)
    return one, two, three, _upper(fourth)


def _lower(order, each, moved, issued, number, aligners, **ends):
    """The lower front slid to the left into the room of three reductions: 32 by one, 31 by two, the rest by all."""
    slid = dict(zip(LEFT, (-each, -2 * each), strict=True)) | dict.fromkeys(RIGHT, moved)
    ended = {"along": {tooth: round(value, 2) for tooth, value in slid.items()}}
    contacts = dict.fromkeys(("32-33", "31-32", "41-31"), (each, 1))
    return setup(
        order,
        "lab-6",
        issued,
        number,
        aligners={"lower": aligners},
        wear_interval_days=10,
        movements=tables(ended),
        unlisted="unmoved",
        extractions=[],
        reductions=enamel(contacts),
        attachments=carried("33", "43"),
        stages=stages(ended, "lower", aligners),
        predicted=predicted(**ends),
        statements=said(["c20", "c19"]),
    )


def _upper(order):
    """The upper side teeth out on both sides, the front into the room, and the lower teeth left where they are."""
    back = {"5": -0.1, "4": -0.2, "3": -0.27, "2": -0.16, "1": -0.05}
    slid = {side + tooth: value for side in "12" for tooth, value in back.items()}
    ended = {"along": slid, "out": dict.fromkeys(("14", "15", "16", "24", "25", "26"), 1.1)}
    return setup(
        order,
        "lab-6",
        "2026-04-10T11:30:00+02:00",
        "SU-967",
        aligners={"upper": 11, "lower": 0},
        wear_interval_days=10,
        movements=tables(ended),
        unlisted="unmoved",
        extractions=[],
        reductions=[],
        attachments=carried("14", "15", "16", "24", "25", "26"),
        stages=stages(ended, "upper", 11, late=("along",)),
        predicted=predicted(overbite=2.5, overjet=2.5),
        statements=said(["c20", "c19", "c34"]),
    )


def written(folder):
    """The documents of this story that no command makes: name to text; prescription-1 is there."""
    made = orders(read(folder / "case" / "prescription-1.json"))
    later = {f"case/prescription-{number}.json": order for number, order in enumerate(made[1:], start=2)}
    plans = {f"case/setup-{number}.json": plan for number, plan in enumerate(setups(*made), start=1)}
    return {name: text(document) + "\n" for name, document in (later | plans).items()}
