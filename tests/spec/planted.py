"""Schemas with one fault planted: one constraint taken out, for every constraint there is."""

import copy

from tests.spec.made import branches, referred

BOUNDS = (
    "minimum",
    "maximum",
    "exclusiveMinimum",
    "minLength",
    "maxLength",
    "minItems",
    "maxItems",
    "minProperties",
)
DROPPED = (
    *BOUNDS,
    "maxProperties",
    "propertyNames",
    "pattern",
    "enum",
    "const",
    "additionalProperties",
    "type",
)
SKIPPED = ("if", "not", "enum", "required")


def constraints(node, path=()):
    """The place of every constraint, but for those that only choose a branch or only help one validator."""
    if isinstance(node, list):
        for place, inner in enumerate(node):
            yield from constraints(inner, (*path, place))
    if isinstance(node, dict):
        yield from ((*path, word) for word in DROPPED if word in node and path[-1:] != ("properties",))
        yield from ((*path, "required", place) for place in range(len(node.get("required", ()))))
        for word, inner in node.items():
            yield from constraints(inner, (*path, word)) if word not in SKIPPED else ()


def without(schema, path):
    """A copy of the schema without that one constraint."""
    faulty = copy.deepcopy(schema)
    del at(faulty, path[:-1])[path[-1]]
    return faulty


def at(node, path):
    for step in path:
        node = node[step]
    return node


def said_twice(schema, path):
    """Whether something else in the schema refuses the same documents."""
    holder, word = at(schema, path[:-1]), path[-1]
    if word == "type":
        return bool({"enum", "const"} & set(holder)) or "propertyNames" in path or path[1:-1] in _chosen(schema)
    if word in ("maxLength", "enum", "const"):
        return "pattern" in holder or path[-2:-1] == ("use",)
    if word == "maxProperties":
        return "$ref" in holder["propertyNames"]  # a closed list of names
    return path[-2:-1] == ("required",) and holder[word] in _tags(schema, path)


def _chosen(schema):
    """The branches of unions: what is no object was refused before, by the union or by its first branch."""
    unions = [node for node in _lists(schema) if _union(node)]
    return {(referred(branch),) for union in unions for branch in branches(union)[0 if "allOf" in union else 1 :]}


def _tags(schema, path):
    """The members that chose this branch, so that they are there."""
    return {"use"}.union(*(_conditions(chain, path[1]) for chain in _lists(schema)))


def _lists(schema):
    """What each list of the document, or of a part of it, is made of."""
    holders = (schema, *schema.get("$defs", {}).values())
    return [node.get("items", {}) for holder in holders for node in holder.get("properties", {}).values()]


def _conditions(chain, name):
    while "else" in chain:
        if referred(chain["then"]) == name:
            return set(chain["if"]["required"])
        chain = chain["else"]
    return set()


def _union(node):
    return "if" in node or "allOf" in node
