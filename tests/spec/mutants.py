"""Changes to a document, made blindly; most make it invalid. The same ones for the same seed."""

import copy

NUMBERLIKE = (True, False, 0, 1, 1.0, -1, 0.5, 1e300, 10**20)
JUNK = (*NUMBERLIKE, None, "", "x", "11", "mm", [], {}, [[]], [None], {"a": None})
EDGES = (0, -0.01, 0.01, 1, 1.0, 1.5, 29.99, 30, 30.01, 60, 61, 120, 120.5)
FURTHER = (200, 200.01, 201, 400, 400.01, -400, -401, 9999, 10_000)
FAR = (1e300, -1e300, 10**20, 5e-324)
LENGTHS = (6, 7, 11, 32, 33, 64, 65, 200, 201, 4001)
COUNTS = (2, 3, 7, 18, 21, 25, 27, 33, 51, 53)
NAMES = ("org.example\n", "Org.example", "org", "a.b.c.d.e.f.g", "a." * 101 + "a")
KEYS = (*NAMES, "11\n", "99", "x", "١١", "format", "")
ANY = (dict, list, str, int, float, bool)
ANY_CASE = (str.upper, str.lower, str.title, " {}".format, "{} ".format)
MISSPELT = (str.upper, str.title, "{}\n".format, "{}s".format)


def places(node, path=()):
    """Every place of a document, as the steps that lead there."""
    yield path
    inside = node.items() if isinstance(node, dict) else enumerate(node) if isinstance(node, list) else ()
    for step, inner in inside:
        yield from places(inner, (*path, step))


def at(document, path):
    """What stands at a place."""
    for step in path:
        document = document[step]
    return document


class Mutator:
    """Changes copies of documents; ``tags`` and ``terms`` are names and values the schema knows."""

    def __init__(self, random, tags, terms):
        self.random, self.tags, self.terms = random, tags, terms

    def mutant(self, document):
        """The name of the change, and the changed copy."""
        changed = copy.deepcopy(document)
        name = self.random.choice(CHANGES)
        getattr(self, name)(changed)
        return name, changed

    def some(self, document, *kinds):
        """A holder, a step and a value of one of the kinds, from anywhere; nothing if there is none."""
        paths = [path for path in places(document) if path and type(at(document, path)) in kinds]
        if not paths:
            return {}, "", None
        path = self.random.choice(paths)
        return at(document, path[:-1]), path[-1], at(document, path)

    def object(self, document):
        """Some object: the document itself, too."""
        inside = [path for path in places(document) if isinstance(at(document, path), dict)]
        return at(document, self.random.choice(inside))

    def nothing(self, document):
        """The document as it was made."""

    def delete(self, document):
        holder = self.object(document)
        if holder:
            del holder[self.random.choice(list(holder))]

    def delete_optional(self, document):
        names = [name for name in document if isinstance(document[name], list)]
        if names:
            del document[self.random.choice(names)]

    def rename(self, document):
        holder = self.object(document)
        if holder:
            name = self.random.choice(list(holder))
            holder[self.random.choice(MISSPELT)(name)] = holder.pop(name)

    def unknown(self, document):
        self.object(document)[self.random.choice(KEYS)] = self.random.choice(JUNK)

    def known_elsewhere(self, document):
        self.object(document)[self.random.choice(self.tags)] = self.random.choice(JUNK)

    def junk(self, document):
        holder, step, _ = self.some(document, *ANY)
        holder[step] = copy.deepcopy(self.random.choice(JUNK))

    def null(self, document):
        holder, step, _ = self.some(document, *ANY)
        holder[step] = None

    def truth(self, document):
        holder, step, _ = self.some(document, int, float)
        holder[step] = self.random.random() < 0.5

    def number(self, document):
        holder, step, _ = self.some(document, int, float)
        holder[step] = self.random.choice((*EDGES, *FURTHER) if self.random.random() < 0.8 else FAR)

    def other_kind_of_number(self, document):
        holder, step, value = self.some(document, int, float)
        holder[step] = float(value or 0) if isinstance(value, int) else int(value or 0)

    def number_as_text(self, document):
        holder, step, value = self.some(document, int, float)
        holder[step] = str(value)

    def line_break(self, document):
        holder, step, value = self.some(document, str)
        holder[step] = self.random.choice(("{}\n", "\n{}", "{}\r\n", "{}\u2028", "{}\x00")).format(value)

    def disguise(self, document):
        holder, step, value = self.some(document, str)
        to = self.random.choice(("٠١٢٣٤٥٦٧٨٩", "０１２３４５６７８９"))
        holder[step] = (value or "").translate(str.maketrans("0123456789", to))

    def respelt(self, document):
        holder, step, value = self.some(document, str)
        holder[step] = self.random.choice(ANY_CASE)(value or "")

    def length(self, document):
        holder, step, value = self.some(document, str)
        holder[step] = ((value or "a") * 4001)[: self.random.choice(LENGTHS)]

    def shorter(self, document):
        holder, step, value = self.some(document, str)
        holder[step] = (value or "")[: self.random.choice((0, 1, 2, -1))]

    def astral(self, document):
        holder, step, _ = self.some(document, str)
        holder[step] = "😀" * self.random.choice((1, 100, 200, 201))

    def term(self, document):
        holder, step, _ = self.some(document, str)
        holder[step] = self.random.choice(self.terms)

    def tag(self, document):
        holder = self.clause(document)
        for name in [name for name in holder if name in self.tags][:1]:
            holder[self.random.choice(self.tags)] = holder.pop(name)

    def second_tag(self, document):
        holder = self.clause(document)
        for name in [name for name in holder if name in self.tags][:1]:
            holder[self.random.choice(self.tags)] = copy.deepcopy(holder[name])

    def use(self, document):
        paths = [path for path in places(document) if path and path[-1] == "use"]
        if paths:
            at(document, self.random.choice(paths)[:-1])["use"] = self.random.choice(self.terms)

    def clause(self, document):
        """Some clause of a list, or the document."""
        clauses = [path for path in places(document) if path and isinstance(path[-1], int) and len(path) == 2]
        chosen = at(document, self.random.choice(clauses)) if clauses else document
        return chosen if isinstance(chosen, dict) else document

    def empty(self, document):
        holder, step, _ = self.some(document, list, dict)
        holder[step] = self.random.choice(([], {}))

    def count(self, document):
        holder, step, value = self.some(document, list)
        holder[step] = ((value or []) * 53)[: self.random.choice(COUNTS)]

    def doubled(self, document):
        holder, step, value = self.some(document, list)
        holder[step] = [*(value or []), *(value or [])[:1]]

    def more_keys(self, document):
        holder, step, value = self.some(document, dict)
        spare = next(iter((value or {"": 0}).values()), 0)
        holder[step] = {**(value or {}), self.random.choice((*KEYS, "81", "a.b")): copy.deepcopy(spare)}

    def many_keys(self, document):
        extension = {"critical": False, "content": None}
        document["extensions"] = {f"org.x{place}": extension for place in range(self.random.choice((20, 21)))}

    def graft(self, document):
        holder, step, _ = self.some(document, *ANY)
        _, _, other = self.some(document, *ANY)
        holder[step] = copy.deepcopy(other)

    def reorder(self, document):
        holder, step, value = self.some(document, list)
        holder[step] = list(reversed(value or []))

    def content(self, document):
        extension = {"critical": True, "content": [copy.deepcopy(document), *copy.deepcopy(JUNK)]}
        document["extensions"] = {"org.example": extension}


HELPERS = ("mutant", "some", "object", "clause")
CHANGES = tuple(name for name in vars(Mutator) if name[0] != "_" and name not in HELPERS)
