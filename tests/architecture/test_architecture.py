"""Who may import whom, where each outside library lives, and how long things may grow."""

import ast
import re
import sys
from graphlib import TopologicalSorter
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "validator" / "wellposed"

# From the ground up. A room may import from its own level and from those below, and no two rooms each other.
LEVELS = (
    {"_spec_folder", "vocabulary"},
    {"declare", "findings", "report"},
    {"gate", "model", "norms", "reading", "schema"},
    {"consistency", "derive", "kinematics", "rules"},
    {"catalogue", "check", "exchange", "measure", "review", "revisions"},
    {"render"},
    {"__main__", "commands", "desk", "generate"},
)
LEVEL = {room: level for level, rooms in enumerate(LEVELS) for room in rooms}

# The modules, by how their names begin, that may import an outside library.
HOMES = {
    "click": ("commands",),
    "fastjsonschema": ("gate", "schema.gate_code"),
    "highspy": ("kinematics.solve",),
    "numpy": ("kinematics",),
    "pydantic": ("model", "reading", "schema"),
    "pydantic_core": ("model", "reading", "schema"),
    "rapidfuzz": ("reading",),
    "rfc8785": ("rules.revisions",),
    "rich": ("commands", "render"),
}

# Modules over the limit, sorted, each with its reason.
LONG_MODULES: dict[str, str] = {}
LONGEST_MODULE = 250
LONG_FUNCTION = 30

CLINICAL = re.compile(
    r"(?i)\b(tooth|teeth|incisors?|canines?|premolars?|molars?|overbite|overjet|midlines?|intru\w+|extru\w+"
    r"|enamel|reductions?|crowding|spacing|aligners?|attachments?|arch(es)?|jaws?|bites?|crowns?|gums?"
    r"|hinge|labial|buccal|mesial|distal|patients?|clinic\w*|laborator\w+|prescri\w+)\b"
)


def named(path):
    """The module's name below the package, "" for the package itself."""
    return ".".join(path.relative_to(PACKAGE).with_suffix("").parts).removesuffix("__init__").rstrip(".")


SOURCES = {named(path): path.read_text("utf-8") for path in sorted(PACKAGE.rglob("*.py"))}
WRITTEN = {name: text for name, text in SOURCES.items() if "generated" not in text.partition("\n")[0].lower()}
TREES = {name: ast.parse(text) for name, text in SOURCES.items()}


def imported(tree):
    """Every full name a module imports, wherever in it the import stands."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from (f"{'.' * node.level}{node.module or ''}.{alias.name}" for alias in node.names)


def inside(tree):
    """The modules of this package that a module imports."""
    for name in imported(tree):
        own = name.removeprefix("wellposed.")
        if own not in {name, "__version__"}:
            yield own if own in SOURCES else own.rpartition(".")[0]


def outside(tree):
    """The libraries a module imports that are neither Python's own nor this package."""
    tops = {name.partition(".")[0] for name in imported(tree)}
    return tops - sys.stdlib_module_names - {"wellposed"}


def room(module):
    return module.partition(".")[0]


def level(module):
    return LEVEL.get(room(module), len(LEVELS))


def cycle_free(graph):
    TopologicalSorter(graph).prepare()  # raises CycleError and names the cycle
    return True


def test_every_module_is_in_a_room_that_is_named():
    assert {room(name) for name in SOURCES} - {""} <= LEVEL.keys()


def test_imports_run_downward_only():
    steps = [(name, lower) for name, tree in TREES.items() if name for lower in inside(tree)]
    upward = [f"{a} -> {b or 'the package'}" for a, b in steps if level(a) < level(b)]
    assert upward == []


def test_no_modules_and_no_rooms_import_in_a_circle():
    assert cycle_free({name: set(inside(tree)) - {name} for name, tree in TREES.items()})
    rooms = {room(name): set() for name in TREES}
    for name, tree in TREES.items():
        rooms[room(name)] |= {room(lower) for lower in inside(tree)} - {room(name)}
    assert cycle_free(rooms)


def test_each_outside_library_has_one_home():
    astray = [
        f"{name} imports {library}"
        for name, tree in TREES.items()
        for library in sorted(outside(tree))
        if not any(f"{name}.".startswith(home) for home in HOMES.get(library, ()))
    ]
    assert astray == []


def test_the_solver_knows_no_clinical_word():
    solver = {name: text for name, text in SOURCES.items() if name.startswith("kinematics.solve")}
    words = {name: [match[0] for match in CLINICAL.finditer(text)] for name, text in solver.items()}
    assert {name: found for name, found in words.items() if found} == {}


def test_modules_stay_short():
    long = {name for name, text in WRITTEN.items() if len(text.splitlines()) > LONGEST_MODULE}
    assert long == set(LONG_MODULES)
    assert all(a < b for a, b in pairwise(LONG_MODULES))


def test_nine_functions_in_ten_are_short():
    kinds = (ast.FunctionDef, ast.AsyncFunctionDef)
    functions = [node for name in WRITTEN for node in ast.walk(TREES[name]) if isinstance(node, kinds)]
    long = [node.name for node in functions if node.end_lineno - node.lineno + 1 >= LONG_FUNCTION]
    assert len(long) <= len(functions) / 10, long
