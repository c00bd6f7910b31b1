"""Write the generated files of the source tree, or with ``--check`` name those that have drifted."""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path

from wellposed.catalogue import bibliography_page, rules_page
from wellposed.render.schemas import SCHEMAS, schema_text
from wellposed.schema import FOLDER, names, text
from wellposed.schema.gate_code import gate_text

__all__ = ["GENERATED", "drifted", "main", "write"]

GATES = "validator/wellposed/gate"

GENERATED: tuple[tuple[str, Callable[[], str]], ...] = (
    *((f"{FOLDER}/{name}.schema.json", partial(text, name)) for name in names()),
    *((f"{FOLDER}/{name}.schema.json", partial(schema_text, name)) for name in SCHEMAS),
    *((f"{GATES}/{name}.py", partial(gate_text, name)) for name in names()),
    ("spec/rules.md", rules_page),
    ("spec/bibliography.md", bibliography_page),
)
"""Each generated file, from the root of the repository, and what makes it."""


def root() -> Path:
    """The root of the source tree this module stands in."""
    here = Path(__file__).resolve().parents[2]
    if not (here / "pyproject.toml").is_file() or not (here / "spec").is_dir():
        raise SystemExit("wellposed.generate works in the source tree only: no pyproject.toml and spec/ here")
    return here


def drifted(base: Path) -> list[str]:
    """The generated files that are missing, or not what would be written now."""
    return [path for path, made in GENERATED if _current(base / path) != made().encode()]


def write(base: Path) -> list[str]:
    """Write what has drifted; the paths written."""
    paths = drifted(base)
    for path, made in GENERATED:
        if path in paths:
            (base / path).parent.mkdir(parents=True, exist_ok=True)
            (base / path).write_bytes(made().encode())
    return paths


def main(arguments: list[str]) -> int:
    """0 when all is current or written, 1 when ``--check`` finds drift, 2 for another argument."""
    if arguments not in ([], ["--check"]):
        sys.stderr.write("usage: python -m wellposed.generate [--check]\n")
        return 2
    checking = bool(arguments)
    paths = drifted(root()) if checking else write(root())
    sys.stdout.writelines(f"{'drifted' if checking else 'written'}: {path}\n" for path in paths)
    return int(checking and bool(paths))


def _current(path: Path) -> bytes | None:
    return path.read_bytes() if path.is_file() else None


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
