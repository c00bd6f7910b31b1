"""Clauses of the bite, the midlines and the enamel, known before their words; see ``varied_clauses``."""

from itertools import pairwise

THIN = [0.1, 0.2, 0.25, 0.3, 0.4, 0.5]
KEEP = "[Keep|Maintain|Preserve] [|the] "
BE_KEPT = "[keep|unchanged|no change]"
IPR = "[IPR|interproximal reduction|stripping|enamel reduction|interproximal enamel reduction]"
ALL_OF = {"overbite": "[overbite|OB]", "overjet": "[overjet|OJ]"}


def clause(kind, mode, **said):
    return {"kind": kind, "mode": mode} | {name: value for name, value in said.items() if value is not None}


def contacts(teeth):
    return [list(pair) for pair in pairwise(teeth)]


def keep(pen):
    kind = pen.random.choice(list(ALL_OF))
    name = pen.say(ALL_OF[kind])
    forms = [KEEP + "{n}", "{n}: " + BE_KEPT, "The {n} [stays as it is|must not change|is to be kept]", "{n} keep"]
    return pen.say(*forms, n=name), [clause(kind, "keep")]


def keep_both(pen):
    one, other = (pen.say(form) for form in ALL_OF.values())
    words = pen.say(KEEP + "{a} [and|+|&] [|the] {b}", a=one, b=other)
    return words, [clause("overbite", "keep"), clause("overjet", "keep")]


def bite_target(pen):
    kind = pen.random.choice(list(ALL_OF))
    amount = pen.with_unit(pen.number(value := pen.random.choice([1, 1.5, 2, 2.5, 3])), "mm")
    words = pen.say("[Reduce|Decrease] [|the] {n} to {a}", "{n} {a} at the end", n=pen.say(ALL_OF[kind]), a=amount)
    return words, [clause(kind, "do", measure="target", min=value, max=value, unit="mm")]


def bite_from_to(pen):
    kind = pen.random.choice(list(ALL_OF))
    first, last = pen.random.choice([4, 4.5, 5, 6, 7]), pen.random.choice([2, 2.5, 3])
    words = pen.say("{n} from {a} to {b}", n=pen.say(ALL_OF[kind]),
                    a=pen.with_unit(pen.number(first), "mm"), b=pen.with_unit(pen.number(last), "mm"))  # fmt: skip
    return words, [
        clause(kind, "state", measure="current", min=first, max=first, unit="mm"),
        clause(kind, "do", measure="target", min=last, max=last, unit="mm"),
    ]


def may_deepen(pen):
    words, said = pen.most([0.5, 1, 1.5], "mm")
    words = pen.say("The overbite may [deepen|increase] by {a}", a=words)
    return words, [clause("overbite", "limit", dir="increase", measure="change", **said)]


def midlines_kept(pen):
    arch = pen.random.choice(["upper", "lower", None])
    word = pen.random.choice(["midline", "centreline"]) + ("" if arch else "s")
    words = pen.say(KEEP + "{n}", "{n}: " + BE_KEPT, n=f"{arch or ''} {word}".strip())
    return words, [clause("midline", "keep", arch=arch or "both")]


def midline_moved(pen):
    arch, side = pen.random.choice(["upper", "lower"]), pen.random.choice(["right", "left"])
    words, said = pen.amount([0.5, 1, 1.5, 2], "mm")
    words = pen.say("[Move|Shift] the {u} [midline|centreline] {a} to the [|patient's] {s}", u=arch, a=words, s=side)
    return words, [clause("midline", "do", arch=arch, dir=f"patient_{side}", measure="change", **said)]


def midline_now(pen):
    arch, side = pen.random.choice(["upper", "lower"]), pen.random.choice(["right", "left"])
    value = pen.random.choice([0.5, 1, 1.5, 2])
    words = pen.say("The {u} [midline|centreline] is {a} to the {s}", u=arch, a=pen.with_unit(pen.number(value), "mm"),
                    s=side)  # fmt: skip
    said = {"dir": f"patient_{side}", "measure": "current", "min": value, "max": value, "unit": "mm"}
    return words, [clause("midline", "state", arch=arch, **said)]


def no_ipr(pen):
    arch = pen.random.choice(["upper", "lower", None])
    if arch is None:
        words = pen.say(f"No {IPR}", "IPR: [none|no]", f"Do not do any {IPR}")
        return words, [clause("ipr", "forbid", arch="both")]
    jaw = {"upper": "[maxilla|upper]", "lower": "[mandible|lower]"}[arch]
    words = pen.say(f"No {IPR} [{arch}|in the {arch} arch|in the {jaw}]", f"{arch} IPR: none")
    return words, [clause("ipr", "forbid", arch=arch)]


def no_ipr_run(pen):
    teeth, words = pen.across()
    return pen.say(f"No {IPR} {{t}}", t=words), [clause("ipr", "forbid", contacts=contacts(teeth))]


def _where_stripped(pen):
    return pen.across() if pen.random.random() < 0.6 else pen.group(["incisors", "anteriors", "four to four"])


def ipr(pen):
    teeth, where = _where_stripped(pen)
    words, said = pen.amount(THIN, "mm")
    words = pen.say(f"{IPR} {{t}}, {{a}} {{b}}", f"{IPR} {{t}} {{a}} {{b}}", f"{IPR} {{a}} {{b}} {{t}}",
                    f"{{t}}: {IPR} {{a}} {{b}}", t=where, a=words, b=pen.say(*PER_CONTACT))  # fmt: skip
    return words, [clause("ipr", "do", contacts=contacts(teeth), measure="per_contact", **said)]


PER_CONTACT = ["per contact", "per contact", "/contact", "at each contact", "each contact"]


def ipr_most(pen):
    teeth, where = _where_stripped(pen)
    words, said = pen.most(THIN, "mm")
    words = pen.say(f"{IPR} {{t}} {{a}} {{b}}", f"{IPR} {{t}}, {{a}} {{b}}", t=where, a=words, b=pen.say(*PER_CONTACT))
    return words, [clause("ipr", "limit", contacts=contacts(teeth), measure="per_contact", **said)]


def ipr_one(pen):
    pair, where = pen.contact()
    words, said = pen.amount(THIN, "mm")
    words = pen.say(f"{IPR} {{t}} {{a}}", f"{IPR} {{t}}, {{a}}", t=where, a=words)
    return words, [clause("ipr", "do", contacts=[list(pair)], measure="per_contact", **said)]
