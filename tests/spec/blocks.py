"""The tables of the specification's prose that are made from the program. Run as a module it writes them anew."""

from tests.spec import figures
from tests.spec.prose import PAGES, SPEC, WRITTEN, blocks, filled

from wellposed import consistency, norms
from wellposed.catalogue import rules
from wellposed.vocabulary.measures import MEASURE_KINDS, TOOTH_MEASURE_KINDS
from wellposed.vocabulary.motions import MOTIONS, VARIABLE_UNITS
from wellposed.vocabulary.teeth import TEETH, in_words
from wellposed_converters.tables.faults import RULES as TABLE_RULES
from wellposed_converters.tables.layout import KEYED, MANY, ONE, layout


def table(head, rows):
    """A table of Markdown."""
    lines = [head, ["---"] * len(head), *rows]
    return "".join(f"| {' | '.join(map(str, line))} |\n" for line in lines)


def teeth():
    quadrants = {}
    for tooth in TEETH:
        quadrants.setdefault(tooth[0], []).append(tooth)
    last = {"5": "primary ", "6": "primary ", "7": "primary ", "8": "primary "}
    rows = [
        [
            f"{'permanent' if first not in last else 'primary'}, {' '.join(in_words(row[0]).split()[:2])}",
            " ".join(f"`{tooth}`" for tooth in row),
            f"from {' '.join(in_words(row[0]).split()[2:])} to {' '.join(in_words(row[-1]).split()[2:])}",
        ]
        for first, row in quadrants.items()
    ]
    return table(["teeth", "numbers", ""], rows)


def measures():
    rows = [
        [
            f"`{name}`",
            kind.words,
            " or ".join(f"`{unit}`" for unit in (kind.unit, kind.also) if unit),
            kind.positive,
            "yes" if kind.moves else "",
        ]
        for name, kind in MEASURE_KINDS.items()
    ]
    return table(["`measure`", "is", "unit", "positive", "goal or keep"], rows)


def tooth_measures():
    rows = [[f"`{n}`", k.words, f"`{k.unit}`", k.positive] for n, k in TOOTH_MEASURE_KINDS.items()]
    return table(["`tooth_measure`", "is", "unit", "positive"], rows)


def motions():
    rows = [
        [f"`{name}`", f"`{sense.variable}`", "+" if sense.sign > 0 else "−", f"`{VARIABLE_UNITS[sense.variable]}`"]
        for name, sense in MOTIONS.items()
    ]
    return table(["`motion`", "variable", "sense", "unit"], rows)


def between():
    return listed(rule for rule in rules() if rule.group == "consistency")


def of_setups():
    return listed(consistency.SETUP_RULES)


def of_receipts():
    return listed(consistency.RECEIPT_RULES)


def of_reviews():
    return listed(consistency.REVIEW_RULES)


def listed(found):
    rows = [[f"[`{rule.id}`](rules.md#{rule.id})", f"`{rule.severity}`", rule.title.rstrip(".")] for rule in found]
    return table(["rule", "weighs", "finds"], rows)


def norms_of(*heads):
    """A table of the norms whose keys begin so."""

    def made():
        found = [norm for norm in norms.load() if norm.key.startswith(heads)]
        rows = [[f"`{n.key}`", f"{n.value:g}", "" if n.unit == "1" else n.unit, n.sure] for n in found]
        return table(["norm", "value", "unit", "how sure"], rows)

    return made


def of_tables():
    return table(["rule", "when"], [[f"`{rule}`", when] for rule, when in TABLE_RULES.items()])


def sections_of(kind):
    """A table of the rows a document of a kind has in the long table, and what they fill."""

    def made():
        rows = [
            [
                f"`{one.name}`",
                one.depth or "",
                {MANY: "an entry", KEYED: f"a `{one.key}`", ONE: "once"}[one.form],
                ", ".join(f"`{column.name}`" for column in one.columns),
            ]
            for one in layout(f"wellposed/{kind}").all()
        ]
        return table(["section", "numbers", "a row", "columns"], rows)

    return made


BLOCKS = {
    "teeth": teeth,
    "measures": measures,
    "tooth-measures": tooth_measures,
    "motions": motions,
    "rules": between,
    "setup-rules": of_setups,
    "review-rules": of_reviews,
    "receipt-rules": of_receipts,
    "norms-model": norms_of("kinematics.", "arch."),
    "norms-practice": norms_of("practice."),
    "room": figures.room,
    "answers": figures.answers,
    "table-rules": of_tables,
    **{f"table-{kind}": sections_of(kind) for kind in ("prescription", "setup", "review", "receipt")},
}


def stale():
    """The blocks that are not what would be written now."""
    return [f"{page}: {name}" for page in WRITTEN for name, text in blocks(page).items() if text != BLOCKS[name]()]


if __name__ == "__main__":
    for page in WRITTEN:
        (SPEC / page).write_text(filled(PAGES[page], BLOCKS), "utf-8")
