"""Where teeth stand and face, written out by hand, and which way each direction word points for each of them.

x to the patient's left, y backward, z up: the right-handed patient axes of DICOM (PS3.3, Image Plane module). The
quadrants are those of ISO 3950: 1 upper right, 2 upper left, 3 lower left, 4 lower right. A right-handed turn about the
axis one looks along is clockwise.
"""

RIGHT, UPPER = "1458", "1256"
LEFTWARD, FORWARD, UPWARD = (1, 0, 0), (0, -1, 0), (0, 0, 1)


def mesial(tooth):
    """Direction, roughly: across to the midline in front, forward behind."""
    across = 1.0 if tooth[0] in RIGHT else -1.0
    front = {1: (across, 0, 0), 2: (across, -0.3, 0), 3: (0.6 * across, -0.8, 0)}
    return front.get(int(tooth[1]), (0.2 * across, -1.0, 0))


def outward(tooth):
    """Away from the tongue: square to mesial."""
    x, y, _ = mesial(tooth)
    return (y, -x, 0) if tooth[0] in RIGHT else (-y, x, 0)


def crown(tooth):
    """From the bone to the biting edge: the way of extrusion."""
    return (0, 0, -1) if tooth[0] in UPPER else UPWARD


def minus(direction):
    return tuple(-part for part in direction)


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def dot(a, b):
    return sum(p * q for p, q in zip(a, b, strict=True))


def clockwise(turned, to, looking):
    """+1 if what points along ``turned`` and goes to ``to`` goes clockwise for one who looks along ``looking``."""
    return 1 if dot(cross(turned, to), looking) > 0 else -1


def towards(direction, axis):
    return 1 if dot(direction, axis) > 0 else -1


def turning(direction, tooth):
    """The sense of a turn in the format's own variable, rotation or tip."""
    lingual = minus(outward(tooth))
    views = {
        "from-above": (mesial(tooth), lingual, (0, 0, -1)),
        "on-the-biting-surface": (mesial(tooth), lingual, minus(crown(tooth))),
        "from-outside": (crown(tooth), mesial(tooth), lingual),
    }
    sense, _, view = direction.partition("clockwise-")
    return clockwise(*views[view]) * (-1 if sense else 1)


def shown(direction, variable, tooth):
    """+1 or -1 as the format counts, for a direction that is said by place; None where it says nothing there."""
    if "clockwise" in direction:
        return turning(direction, tooth)
    name = direction.removeprefix("crown-")
    axis = {"left": LEFTWARD, "right": minus(LEFTWARD), "forward": FORWARD, "backward": minus(FORWARD)}.get(name)
    if axis is None:
        return towards(crown(tooth), UPWARD if name == "up" else minus(UPWARD))
    across = variable in ("out", "torque")
    sideways, front = name in ("left", "right"), int(tooth[1])
    if (across and sideways and front < 3) or (across and not sideways and front > 3):
        return None
    if not across and not sideways and front < 3:
        return None
    return towards(outward(tooth) if across else mesial(tooth), axis)
