"""A sound order, and a laboratory that needs three setups for it."""

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

LOWER_FRONT = ("43-42", "42-41", "41-31", "31-32", "32-33")


def setups(order):
    """Three setups: much amiss; one thing left and another undone; as ordered."""
    first = setup(order, "lab-8", "2026-03-17T10:00:00+01:00", "SU-1204", **_first())
    second = revised(first, "2026-03-25T15:30:00+01:00", **_second())
    return first, second, revised(second, "2026-04-01T09:20:00+02:00", **_third())


def _first():
    """31 too short, premolars out, incisors forward, too much enamel at one contact, steps of a quarter millimetre."""
    ends = {
        "vertical": {"42": -1.5, "41": -1.5, "31": -0.9, "32": -1.5},
        "out": {"42": 0.8, "41": 0.8, "31": 0.8, "32": 0.8, "44": 0.6, "45": 0.6, "34": 0.6, "35": 0.6},
        "torque": dict.fromkeys(("42", "41", "31", "32"), 3),
        "rotation": {"42": -14, "33": 3},
        "tip": {"32": 2, "41": -1.5},
    }
    amounts = dict.fromkeys(LOWER_FRONT, (0.25, 1)) | {"41-31": (0.45, 1)}
    attached = carried("33", "43") + carried("34", "44", reason="retention")
    return _planned(ends, 6, amounts, attached, overbite=3.65, overjet=2.2)


def _second():
    """All mended but the incisors, which still come forward a little; and the premolars have lost their attachments."""
    ends = {
        "vertical": dict.fromkeys(("42", "41", "31", "32"), -1.5),
        "out": dict.fromkeys(("42", "41", "31", "32"), 0.4),
        "torque": dict.fromkeys(("42", "41", "31", "32"), 1.5),
        "rotation": {"42": -14, "33": 3},
        "tip": {"32": 2, "41": -1.5},
    }
    return _planned(ends, 9, dict.fromkeys(LOWER_FRONT, (0.3, 1)), carried("33", "43"), overbite=3.5, overjet=2.6)


def _third():
    ends = {
        "vertical": dict.fromkeys(("42", "41", "31", "32"), -1.5),
        "rotation": {"42": -14, "33": 3},
        "tip": {"32": 2, "41": -1.5},
    }
    attached = carried("33", "43") + carried("34", "44", reason="retention")
    return _planned(ends, 9, dict.fromkeys(LOWER_FRONT, (0.3, 1)), attached, overbite=3.5, overjet=3)


def _planned(ends, count, amounts, attached, **measures):
    return {
        "aligners": {"lower": count},
        "wear_interval_days": 10,
        "movements": tables(ends),
        "unlisted": "unmoved",
        "extractions": [],
        "reductions": enamel(amounts),
        "attachments": attached,
        "stages": stages(ends, "lower", count),
        "predicted": predicted(**measures),
        "statements": said(["c24", "c23"]),
    }


def written(folder):
    """The documents of this story that no command makes: name to text; prescription-1 is there."""
    plans = setups(read(folder / "case" / "prescription-1.json"))
    return {f"case/setup-{number}.json": text(plan) + "\n" for number, plan in enumerate(plans, start=1)}
