"""Who may import whom, where each outside library lives, and how long things may grow."""

import ast
import re
import sys
from graphlib import TopologicalSorter
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "validator" / "wellposed"
CONVERTERS = ROOT / "converters" / "wellposed_converters"

# From the ground up. A room may import from its own level and from those below, and no two rooms each other.
LEVELS = (
    {"_spec_folder", "vocabulary"},
    {"declare", "findings", "report"},
    {"digests", "gate", "model", "norms", "reading", "schema"},
    {"consistency", "derive", "kinematics", "landmarks", "rules"},
    {"catalogue", "check", "exchange", "formats", "json_forms", "measure", "review", "revisions"},
    {"render"},
    {"__main__", "commands", "desk", "generate"},
)
LEVEL = {room: level for level, rooms in enumerate(LEVELS) for room in rooms}

# The modules, by how their names begin, that may import an outside library.
HOMES = {
    "click": ("commands",),
    "cryptography": ("exchange.keys",),
    "fastjsonschema": ("gate", "schema.gate_code"),
    "filelock": ("commands.key_files",),
    "highspy": ("kinematics.solve",),
    "jinja2": ("render.sheet.page",),
    "markupsafe": ("render.sheet.page",),
    "numpy": ("kinematics", "landmarks"),
    "pydantic": ("model", "reading", "schema"),
    "pydantic_core": ("model", "reading", "schema"),
    "rapidfuzz": ("reading",),
    "rfc8785": ("digests",),
    "rich": ("commands", "render"),
    "weasyprint": ("render.sheet.pdf",),
    "scipy": ("landmarks",),
    "segno": ("render.keys",),
}

# The same of the converters; there the modules of a folder are one room.
CONVERTER_HOMES = {
    "click": ("setups.command", "setups.running", "text.command", "text.running"),
    "docx": ("text.files.documents",),
    "lark": ("text.grammar.parse", "text.readback.form", "text.readback.grammar"),
    "lxml": ("xml.",),
    "openpyxl": ("setups.workbook", "tables.filling"),
    "pydantic": ("setups.mapping",),
    "rapidfuzz": ("text.spelling",),
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


def named(path, package):
    """The module's name below the package, "" for the package itself."""
    return ".".join(path.relative_to(package).with_suffix("").parts).removesuffix("__init__").rstrip(".")


def sources(package):
    return {named(path, package): path.read_text("utf-8") for path in sorted(package.rglob("*.py"))}


SOURCES = sources(PACKAGE)
WRITTEN = {name: text for name, text in SOURCES.items() if "generated" not in text.partition("\n")[0].lower()}
TREES = {name: ast.parse(text) for name, text in SOURCES.items()}
CONVERTER_SOURCES = sources(CONVERTERS)
CONVERTER_TREES = {name: ast.parse(text) for name, text in CONVERTER_SOURCES.items()}


def imported(tree):
    """Every full name a module imports, wherever in it the import stands."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from (f"{'.' * node.level}{node.module or ''}.{alias.name}" for alias in node.names)


def inside(tree, package="wellposed", modules=SOURCES):
    """The modules of this package that a module imports."""
    for name in imported(tree):
        own = name.removeprefix(f"{package}.")
        if own not in {name, "__version__"}:
            yield own if own in modules else own.rpartition(".")[0]


def outside(tree):
    """The libraries a module imports that are neither Python's own nor this package."""
    tops = {name.partition(".")[0] for name in imported(tree)}
    return tops - sys.stdlib_module_names - {"wellposed"}


def room(module):
    return module.partition(".")[0]


def level(module):
    return LEVEL.get(room(module), len(LEVELS))


def astray(trees, homes, *own):
    """Which modules import a library away from its home."""
    return [
        f"{name} imports {library}"
        for name, tree in trees.items()
        for library in sorted(outside(tree) - set(own))
        if not any(f"{name}.".startswith(home) for home in homes.get(library, ()))
    ]


def long_modules(texts):
    return {name for name, text in texts.items() if len(text.splitlines()) > LONGEST_MODULE}


def functions(trees):
    kinds = (ast.FunctionDef, ast.AsyncFunctionDef)
    return [node for tree in trees for node in ast.walk(tree) if isinstance(node, kinds)]


def long_functions(found):
    return [node.name for node in found if node.end_lineno - node.lineno + 1 >= LONG_FUNCTION]


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
    assert astray(TREES, HOMES) == []


def test_the_solver_knows_no_clinical_word():
    solver = {name: text for name, text in SOURCES.items() if name.startswith("kinematics.solve")}
    words = {name: [match[0] for match in CLINICAL.finditer(text)] for name, text in solver.items()}
    assert {name: found for name, found in words.items() if found} == {}


def test_modules_stay_short():
    assert long_modules(WRITTEN) == set(LONG_MODULES)
    assert all(a < b for a, b in pairwise(LONG_MODULES))


def test_nine_functions_in_ten_are_short():
    found = functions(TREES[name] for name in WRITTEN)
    assert len(long_functions(found)) <= len(found) / 10, long_functions(found)


def converter_room(module):
    """Its folder; a module beside the folders is a room of its own."""
    folders = {name.rpartition(".")[0] for name in CONVERTER_SOURCES if name.count(".") > 1}
    return module if module not in folders and module.count(".") == 1 else ".".join(module.split(".")[:2])


def test_no_converter_modules_and_no_rooms_import_in_a_circle():
    graph = {
        name: set(inside(tree, "wellposed_converters", CONVERTER_SOURCES)) - {name}
        for name, tree in CONVERTER_TREES.items()
    }
    assert cycle_free(graph)
    rooms = {converter_room(name): set() for name in graph}
    for name, lower in graph.items():
        rooms[converter_room(name)] |= {converter_room(one) for one in lower} - {converter_room(name)}
    assert cycle_free(rooms)


def test_each_outside_library_of_the_converters_has_one_home():
    assert astray(CONVERTER_TREES, CONVERTER_HOMES, "wellposed_converters") == []


def test_converters_import_public_names_and_are_imported_by_no_one():
    private = [
        f"{name} imports {one}"
        for name, tree in CONVERTER_TREES.items()
        for one in imported(tree)
        if one.startswith("wellposed.") and any(part.startswith("_") for part in one.split("."))
    ]
    assert private == []
    assert [name for name, tree in TREES.items() if "wellposed_converters" in outside(tree)] == []


def test_converter_modules_and_functions_stay_short():
    assert long_modules(CONVERTER_SOURCES) == set()
    found = functions(CONVERTER_TREES.values())
    assert len(long_functions(found)) <= len(found) / 10, long_functions(found)
