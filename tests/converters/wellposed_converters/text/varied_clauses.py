"""Clauses whose reading is known because the clause is there before its words are.

Each function draws one clause, or a few that share words, and gives the words and the expected records. The words are
from a list made by hand out of free text 1.1 to 1.6, the records follow the reading rules R1 to R19.
"""

from tests.converters.wellposed_converters.text import varied_bite as bite
from tests.converters.wellposed_converters.text.varied_bite import clause, contacts
from tests.converters.wellposed_converters.text.varied_pen import ROW, UPPER

SMALL = [0.3, 0.5, 0.8, 1, 1.2, 1.5, 2]
TURNS = [3, 5, 8, 10, 12, 15, 20]
MOST_TEETH = [tooth for tooth in ROW if tooth % 10 < 8]


def align(pen):
    teeth, words = pen.teeth(most=6)
    if pen.random.random() < 0.15:
        return pen.say("[Align|Straighten] {t} only", t=words), [clause("align", "do", teeth=teeth, only=True)]
    forms = ["[Align|Straighten|Line up|Please align|Unravel] {t}", "{t}: align", "{t} to be aligned"]
    return pen.say(*forms, t=words), [clause("align", "do", teeth=teeth)]


def align_but(pen):
    teeth, words = pen.across(arch=pen.random.choice(["upper", "lower"]))
    out = pen.random.choice(teeth)
    left = [tooth for tooth in teeth if tooth != out]
    return pen.say("Align {t} [except|but not|apart from|excluding] {o}", t=words, o=pen.tooth(out)), [
        clause("align", "do", teeth=left)
    ]


def vertical(pen):
    kind = pen.random.choice(["intrude", "extrude"])
    teeth, where = pen.teeth()
    words, said = pen.amount(SMALL, "mm")
    words = pen.say("{v} {t} [|by] {a} [||each]", "{t}: {v} [|by] {a}", v=kind.capitalize(), t=where, a=words)
    return words, [clause(kind, "do", teeth=teeth, measure="change", **said)]


def no_vertical(pen):
    kind = pen.random.choice(["intrude", "extrude"])
    teeth, where = pen.teeth()
    return pen.say("Do not {v} {t}", "Don't {v} {t}", v=kind, t=where), [clause(kind, "forbid", teeth=teeth)]


def derotate(pen):
    teeth, where = pen.teeth(most=3)
    words = pen.say("[Derotate|Derot] {t}", "{t}: derotate", t=where)
    return words, [clause("rotate", "do", teeth=teeth, dir="derotate")]


def rotate(pen):
    teeth, where = pen.teeth([tooth for tooth in ROW if tooth % 10 < 4], most=2)
    way = pen.random.choice(["mesial-in", "mesial-out", "mesiolabially", "distolabially"])
    words, said = pen.amount(TURNS, "deg")
    words = pen.say("Rotate {t} {w} [|by] {a}", "{t}: rotate {w} {a}", t=where, w=way, a=words)
    turn = {"mesiolabially": "mesiolabial", "distolabially": "distolabial"}.get(way, way.replace("-", "_"))
    return words, [clause("rotate", "do", teeth=teeth, dir=turn, measure="change", **said)]


def torque(pen):
    teeth, where = pen.teeth([tooth for tooth in UPPER if tooth % 10 < 4], most=3)
    way = pen.random.choice(["palatal", "labial"])
    words, said = pen.amount(TURNS[:5], "deg")
    words = pen.say("{a} {w} root torque on {t}", "{t}: {w} root torque {a}", a=words, w=way, t=where)
    return words, [clause("torque", "do", teeth=teeth, dir=f"{way}_root", measure="change", **said)]


def incline(pen):
    teeth, where = pen.teeth([tooth for tooth in ROW if tooth % 10 < 3], most=4)
    way = pen.random.choice(["procline", "retrocline"])
    words, said = pen.amount(TURNS[:4], "deg")
    words = pen.say("{v} {t} [|by] {a}", "{t}: {v} [|by] {a}", v=way.capitalize(), t=where, a=words)
    return words, [clause("incline", "do", teeth=teeth, dir=way, measure="change", **said)]


def no_incline(pen):
    teeth, where = pen.group(["incisors"])
    words = pen.say("No proclination of the {t}", "Do not procline the {t}", t=where)
    return words, [clause("incline", "forbid", teeth=teeth, dir="procline")]


def shift(pen):
    teeth, where = pen.teeth([tooth for tooth in ROW if tooth % 10 in (3, 4, 5, 6)], most=2)
    way = pen.random.choice(["mesial", "distal"])
    words, said = pen.amount(SMALL, "mm")
    verb = {"mesial": "[Mesialise|Mesialize]", "distal": "[Distalise|Distalize]"}[way]
    words = pen.say("Move {t} {w}ly [|by] {a}", verb + " {t} by {a}", "Move {t} {a} {w}ly", t=where, w=way, a=words)
    return words, [clause("move", "do", teeth=teeth, dir=way, measure="change", **said)]


def lock(pen):
    teeth, where = pen.teeth()
    forms = ["[Do not move|Don't move|Lock|No movement of] {t}", "{t} must not move", "{t}: [do not move|lock]"]
    return pen.say(*forms, t=where), [clause("movement", "forbid", teeth=teeth)]


def attachments(pen):
    teeth, where = pen.teeth()
    word = "[Attachments|Att|Attachment|Atts]"
    mode, forms = pen.random.choice([
        ("do", [word + " on {t}", "[Place|Use|Add] attachments on {t}", "Attachments: {t}"]),
        ("forbid", ["No [attachments|attachment] on {t}", "Attachments: [none|not] on {t}",
                    "Do not [use|place|put] attachments on {t}"]),
        ("permit", ["Attachments [allowed|are allowed|permitted|optional] on {t}", "Attachments on {t} [ok|are fine]"]),
    ])  # fmt: skip
    return pen.say(*forms, t=where), [clause("attachment", mode, teeth=teeth)]


def aids(pen):
    teeth, where = pen.teeth([tooth for tooth in ROW if tooth % 10 in (3, 4, 5, 6)], most=3)
    kind, word = pen.random.choice([("button", "[Buttons|Button]"), ("cutout", "[Cut-outs|Cutouts]")])
    return pen.say(word + " [on|at] {t}", t=where), [clause(kind, "do", teeth=teeth)]


def ramps(pen):
    if pen.random.random() < 0.4:
        return pen.say("No bite ramps", "Bite ramps: [no|none]"), [clause("bite_ramp", "forbid")]
    teeth, where = pen.teeth([tooth for tooth in UPPER if tooth % 10 < 4], most=4)
    return pen.say("Bite ramps [on the palatal of|palatal of|on] {t}", t=where), [
        clause("bite_ramp", "do", teeth=teeth)
    ]


def none_of_it(pen):
    kind, forms = pen.random.choice([
        ("elastic", ["No [elastics|intermaxillary elastics|elastic]", "Elastics: [no|none]", "Do not use elastics"]),
        ("extraction", ["No extractions", "Extractions: [no|none]", "[Non-extraction|No extraction]"]),
        ("attachment", ["No attachments", "Attachments: [no|none]"]),
    ])  # fmt: skip
    return pen.say(*forms), [clause(kind, "forbid")]


def extraction(pen):
    teeth, where = pen.teeth([tooth for tooth in ROW if tooth % 10 in (4, 5)], most=4)
    words = pen.say("Extract {t}", "Please extract {t}", "{t} [is|are] to be extracted", "Extraction of {t}", t=where)
    return words, [clause("extraction", "do", teeth=teeth)]


def elastics(pen):
    one, other = pen.random.choice([(13, 46), (23, 36), (43, 16), (33, 26)])
    words = pen.say("[Elastics|Elastic] from {a} to {b}", a=pen.tooth(one), b=pen.tooth(other))
    return words, [clause("elastic", "do", links=[[one, other]])]


def spaces(pen):
    if pen.random.random() < 0.5:
        pair, where = pen.contact()
        words = pen.say("Close the [space|gap|diastema] {t}" if where[0] == "b" else "Close [|the space] {t}", t=where)
        return words, [clause("space", "do", contacts=[list(pair)], dir="close")]
    teeth, where = pen.across()
    words = pen.say("[Close|Please close] all [spaces|gaps] {t}", t=where)
    return words, [clause("space", "do", contacts=contacts(teeth), dir="close")]


def width(pen):
    arch = pen.random.choice(["upper", "lower"])
    kept = pen.say("Keep [|the] {a} arch width", "[Keep|Maintain] the {a} [intercanine|intermolar] width", a=arch)
    of = next((name for name in ("intercanine", "intermolar") if name in kept), None)
    words, said = pen.amount([0.5, 1, 1.5, 2], "mm")
    return pen.random.choice([
        (kept, [clause("archwidth", "keep", arch=arch, of=of)]),
        (pen.say("No expansion", "Expansion: [no|none]"), [clause("archwidth", "forbid", arch="both", dir="expand")]),
        (pen.say("Expand [|the] {u} arch [|by] {a} [per side|on each side]", u=arch, a=words),
         [clause("archwidth", "do", arch=arch, dir="expand", measure="per_side", **said)]),
    ])  # fmt: skip


def staging(pen):
    steps, days = pen.random.randint(5, 40), pen.random.choice([7, 10, 14])
    words, said = pen.most([0.1, 0.2, 0.25], "mm")
    return pen.random.choice([
        (pen.say("[Max|Maximum|No more than|Not more than] {n} [steps|aligners]", "{n} steps [max|maximum]", n=steps),
         [clause("staging", "limit", of="steps", measure="count", max=steps, unit="count")]),
        (pen.say("Change every {n} days", "[Change|New] [aligner|aligners] every {n} days", n=days),
         [clause("staging", "do", of="change_interval", measure="interval", min=days, max=days, unit="day")]),
        (pen.say("Per step {a}", "{a} per step", a=words),
         [clause("staging", "limit", of="movement_per_step", measure="step", **said)]),
    ])  # fmt: skip


def status(pen):
    teeth, where = pen.teeth(MOST_TEETH, most=2)
    be, article = ("is", "an ") if len(teeth) == 1 else ("are", "")
    of, forms = pen.random.choice([
        ("missing", ["{t} {b} [missing|absent]", "{t} missing"]),
        ("implant", ["{t} {b} {c}implant{s}"]),
        ("ankylosed", ["{t} {b} ankylosed"]),
        ("root_filled", ["{t} {b} [root filled|root-filled]"]),
        ("worn", ["{t} {b} worn"]),
        ("crown", ["{t} has a crown" if len(teeth) == 1 else "{t} have crowns", "Crown{s} on {t}"]),
    ])  # fmt: skip
    words = pen.say(*forms, t=where, b=be, c=article, s="" if len(teeth) == 1 else "s")
    return words, [clause("tooth_status", "state", teeth=teeth, of=of)]


def crowding(pen):
    arch, value = pen.random.choice(["upper", "lower"]), pen.random.choice([1, 1.5, 2, 3, 4])
    words = pen.say("{u} crowding [|of] {a}", "Crowding of {a} in the {u} arch", u=arch.capitalize(),
                    a=pen.with_unit(pen.number(value), "mm"))  # fmt: skip
    return words, [clause("crowding", "state", arch=arch, measure="current", min=value, max=value, unit="mm")]


def sagittal(pen):
    relation, of = pen.random.choice(["I", "II", "III"]), pen.random.choice(["molar", "canine"])
    return pen.random.choice([
        (f"Class {relation} on both sides", [clause("sagittal", "state", side="both", **{"class": relation})]),
        (pen.say("[Accept|Maintain|Keep] the Class {r} {o} [relationship|relation]", r=relation, o=of),
         [clause("sagittal", "keep", of=of, **{"class": relation})]),
    ])  # fmt: skip


def retainer(pen):
    teeth, where = pen.across(3)
    words = pen.say("[Bonded|Fixed|Finish with a bonded] retainer {t} [||at the end]", t=where)
    return words, [clause("retainer", "do", teeth=teeth, of="bonded")]


def edges(pen):
    teeth, where = pen.teeth([tooth for tooth in ROW if tooth % 10 < 4], most=4)
    of = pen.random.choice(["incisal edges", "gingival margins"])
    return pen.say("Level the {o} of {t}", o=of, t=where), [clause("level", "do", teeth=teeth, of=of.replace(" ", "_"))]


def crossbite(pen):
    position = pen.random.choice([2, 4, 5, 6])
    right = pen.random.random() < 0.5
    pair = [10 + position, 40 + position] if right else [20 + position, 30 + position]
    words = pen.say("Correct the [crossbite|cross-bite] {a}/{b}", "Crossbite {a}/{b}[: correct| to be corrected]",
                    a=pen.tooth(pair[0]), b=pen.tooth(pair[1]))  # fmt: skip
    return words, [clause("crossbite", "do", teeth=pair, dir="correct")]


def rest(pen):
    arch = pen.random.choice(["upper", "lower"])
    return pen.random.choice([
        (pen.say("Keep [|the] canine guidance", "Canine guidance must be kept"), [clause("guidance", "keep")]),
        (pen.say("Keep the {u} arch form", u=arch), [clause("archform", "keep", arch=arch)]),
        (pen.say("Please send the set-up for approval before [manufacture|production]"),
         [clause("process", "do", of="approval_before_manufacture")]),
        (pen.say("[Trim line|Trim] scalloped"), [clause("trim", "do")]),
        (pen.say("AOB {a}", "Anterior open bite {a}", a=pen.with_unit("2", "mm")),
         [clause("openbite", "state", measure="current", min=2, max=2, unit="mm")]),
    ])  # fmt: skip


def removable(pen):
    arch, of = pen.random.choice(["upper", "lower"]), pen.random.choice(["Removable", "Vacuum-formed"])
    words = pen.say("{o} retainer [for|in] the {u} arch", o=of, u=arch)
    return words, [clause("retainer", "do", arch=arch, of=of.lower().replace("-", "_"))]


def joined(pen):
    """Two orders with a verb each in one sentence; each has its own words."""
    one, other = pen.random.sample(WITH_VERB, 2)
    first, expected = one(pen)
    second, more = other(pen)
    if ":" in first + second or " only" in first or first.endswith("each"):
        return first, expected
    link = pen.random.choice([" and ", ", and "])
    at = len(first) + len(link)
    second = second[0].lower() + second[1:]
    spans = [[0, len(first)]], [[at, at + len(second)]]
    return first + link + second, [
        *({**record, "spans": spans[0]} for record in expected),
        *({**record, "spans": spans[1]} for record in more),
    ]


WITH_VERB = [derotate, rotate, incline, shift, edges, vertical]


def ipr_total(pen):
    """A bound for each contact and one for all of them: two clauses at the same places."""
    teeth, where = pen.across()
    each, bound = pen.most([0.2, 0.3], "mm")
    whole, most = pen.most([1, 1.5], "mm")
    words = pen.say("IPR {t} {a} per contact, [|in ]total {b}", t=where, a=each, b=whole)
    return words, [
        clause("ipr", "limit", contacts=contacts(teeth), measure="per_contact", **bound),
        clause("ipr", "limit", contacts=contacts(teeth), measure="total", **most),
    ]


FOUND = [status, crowding, bite.midline_now]
WANTED = [
    align, bite.ipr, bite.ipr_most, bite.no_ipr, vertical, derotate, rotate, lock, attachments, incline, none_of_it,
    bite.midlines_kept, retainer, joined, ipr_total,
]  # fmt: skip
MAKERS = [
    joined, joined, joined, ipr_total,
    align, align, align_but, bite.keep, bite.keep_both, bite.bite_target, bite.bite_from_to, bite.may_deepen,
    bite.midlines_kept, bite.midline_moved, bite.midline_now, bite.no_ipr, bite.no_ipr_run, bite.ipr, bite.ipr,
    bite.ipr_most, bite.ipr_one, vertical, vertical, no_vertical, derotate, rotate,
    torque, incline, no_incline, shift, lock, lock, attachments, attachments, aids, ramps, none_of_it, extraction,
    elastics, spaces, width, staging, status, status, crowding, sagittal, retainer, edges, crossbite, rest, removable,
]  # fmt: skip
