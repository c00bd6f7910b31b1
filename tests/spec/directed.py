"""Mutants of every place of a document in turn: another kind of value, or one past a bound."""

import copy

from tests.spec.mutants import COUNTS, EDGES, FURTHER, LENGTHS, at

WRONG = (None, True, 0, 1, -1, 1.5, 1e9, "", "x", "X", [], {}, ["x"], {"x": 1}, [None])


def wrongs(value):
    """What to put in the place of a value: other kinds, and just past whatever bounds there may be."""
    yield from WRONG
    if isinstance(value, str):
        yield from (f"{value}\n", f"{value}x", value[:-1], f" {value}", value.upper())
        yield from ("w" * length for length in LENGTHS)
    elif isinstance(value, list):
        yield from ([*value, None], [*value, "x"], [*value, 7], [*value, {}])
        yield from ((value * 53)[:count] for count in (1, *COUNTS) if value)
    elif isinstance(value, dict):
        spare = next(iter(value.values()), 0.5)
        yield from ({**value, key: spare} for key in ("x", "81", "org.x", "org.x\n", "Org.x", "org"))
        yield {f"org.x{number}": spare for number in range(21)}
        yield from ({name: value[name] for name in value if name != gone} for gone in value)
        yield {f"{name}x": inner for name, inner in value.items()}
    elif type(value) in (int, float):
        yield from (*EDGES, *FURTHER)


def mutants_of(where, documents):
    """Mutants of every place there is in turn, under the name of the place."""
    for place, (number, path) in where.items():
        for wrong in wrongs(at(documents[number], path)):
            holder = [copy.deepcopy(documents[number])]
            at(holder, (0, *path)[:-1])[(0, *path)[-1]] = copy.deepcopy(wrong)
            yield place, holder[0]
