"""Documents made at random out of a published schema, and the count of what occurred in them."""

import re
from collections import Counter

SAMPLES = (
    *("1.0", "1.7", "1.999"),
    *("2026-03-04", "1999-12-31", "0000-01-01", "2026-02-31"),
    *("2026-03-04T09:30:00+01:00", "2026-03-04T23:59:59Z", "2026-03-04T00:00:00.123456-23:59"),
    *("33-32", "11-21", "88-88"),
    *("a1", "G", "f.2_x-3", "c" * 32, "clinic-17/dr-2", "0.9_x:y/z-", "Z" * 64),
    *("0" * 64, "09af" * 16),
    *("EU", "US-CA", "DE-1A2"),
    *("a-rule", "x", "cannot-hold-together"),
    *("", "/allow/0", "/extensions/org.example", "/a~1b/~0/"),
    *("/allow/0", "/goals/12/align"),
    *("org.example", "a.b", "org.example.critical", "a-1.b-2.c", "org." + ".".join(["x" * 31] * 4)),
)
WORDS = ("x", "as agreed", "two\nlines", "Zähne 13–23, 歯 😀", " ", "w" * 200)
LONGER = ("t" * 4000, "😀" * 201)
CONTENT = (
    None,
    True,
    0,
    -1.5,
    10**20,
    "",
    "text\n",
    [],
    {},
    [[None, {"a": []}]],
    {"critical": 1, "": {"b.c": [0.1]}},
)

OFTEN, MOSTLY = 0.35, 0.8  # how often a member that may be left out is there: beside others that must be, and without


class Maker:
    """Makes documents of one schema, rarest branch and term first.

    ``seen`` counts members, branches and terms by where they stand; ``where`` has the first of each place, of a list
    the first with something in it.
    """

    def __init__(self, schema, random):
        self.schema, self.random, self.seen, self.where, self.made = schema, random, Counter(), {}, []
        self.filled = set()

    def document(self):
        self.made.append(self.value(self.schema, "", ()))
        return self.made[-1]

    def saw(self, what):
        self.seen[what] += 1

    def rarest(self, choices, named):
        least = min(self.seen[named(choice)] for choice in choices)
        return self.random.choice([choice for choice in choices if self.seen[named(choice)] == least])

    def value(self, node, place, path):
        self.where.setdefault(place, (len(self.made), path))
        if "$ref" in node:
            self.saw(named_by(place)(node))
            name = referred(node)
            return self.value(self.schema["$defs"][name], name, path)
        if "if" in node or "allOf" in node:
            return self.value(self.rarest(branches(node), named_by(place)), place, path)
        if "enum" in node or "const" in node:
            term = self.rarest(terms(node), f"{place} = {{}}".format)
            self.saw(f"{place} = {term}")
            return term
        make = {"object": self.object, "array": self.array, "string": self.string, "boolean": self.boolean}
        return make.get(node.get("type"), self.number if node else self.content)(node, place, path)

    def object(self, node, place, path):
        if "properties" not in node:
            return self.mapping(node, place, path)
        made, needed = {}, node.get("required", ())
        for name, inner in node["properties"].items():
            there = name in needed or self.random.random() < (OFTEN if needed else MOSTLY)
            self.saw(f"{place}.{name} is {'there' if there else 'absent'}")
            if there:
                made[name] = self.value(inner, f"{place}.{name}", (*path, name))
        return made

    def mapping(self, node, place, path):
        count = range(self.random.randint(node.get("minProperties", 0), 3))
        keys = [self.value(node["propertyNames"], f"{place} names", path) for _ in count]
        return {key: self.value(node["additionalProperties"], f"{place} values", (*path, key)) for key in keys}

    def array(self, node, place, path):
        least, most = node.get("minItems", 0), node["maxItems"]
        full = most <= 60 and self.random.random() < 0.02
        count = most if full else self.random.randint(least, min(most, max(least, 2)))
        if count and place not in self.filled:
            self.filled.add(place)
            self.where[place] = (len(self.made), path)
        return [self.value(node["items"], f"{place} items", (*path, step)) for step in range(count)]

    def string(self, node, _place, _path):
        if "pattern" in node:
            return self.random.choice([text for text in SAMPLES if fits(text, node)])
        longer = node["maxLength"] > 1000 and self.random.random() < 0.02
        return self.random.choice(LONGER if longer else WORDS)

    def boolean(self, _node, _place, _path):
        return self.random.random() < 0.5

    def content(self, _node, _place, _path):
        return self.random.choice(CONTENT)

    def number(self, node, _place, _path):
        least = node.get("minimum", node.get("exclusiveMinimum", 0) + 0.01)
        most = node["maximum"]
        between = max(least, round(self.random.uniform(least, most), self.random.choice((0, 1, 2))))
        made = self.random.choice((least, most, between, between, between))
        whole = node["type"] == "integer" or (float(made).is_integer() and self.random.random() < 0.5)
        return int(made) if whole else float(made)


def referred(node):
    """The name a reference leads to."""
    return node["$ref"].removeprefix("#/$defs/")


def named_by(place):
    """How a branch taken at a place is called."""
    return lambda node: f"{place} as {referred(node)}"


def fits(text, node):
    """Whether a text has the pattern and the length."""
    return len(text) <= node["maxLength"] and re.fullmatch(node["pattern"], text) is not None


def terms(node):
    """The values of a closed list."""
    return node["enum"] if "enum" in node else [node["const"]]


def branches(node):
    """The forms a union may take."""
    if "allOf" in node:
        return [branch["then"] for branch in node["allOf"]]
    return [node["then"], *(branches(node["else"]) if "if" in node["else"] else [node["else"]])]


def possible(schema):
    """All that could be seen in documents of this schema."""
    places = [("", schema), *schema.get("$defs", {}).items()]
    return {what for place, node in places for what in _possible(node, place)}


def _possible(node, place):
    if "$ref" in node:
        yield named_by(place)(node)
    elif "if" in node or "allOf" in node:
        yield from map(named_by(place), branches(node))
    elif "enum" in node or "const" in node:
        yield from (f"{place} = {term}" for term in terms(node))
    elif "properties" in node:
        yield from _members(node, place)
    for word, what in (("items", "items"), ("propertyNames", "names"), ("additionalProperties", "values")):
        yield from _possible(node[word], f"{place} {what}") if node.get(word) else ()


def _members(node, place):
    for name, inner in node["properties"].items():
        yield f"{place}.{name} is there"
        yield from () if name in node.get("required", ()) else (f"{place}.{name} is absent",)
        yield from _possible(inner, f"{place}.{name}")
