"""No file says on which machine, or from which server, it was made."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
TOP = (
    ".ci",
    ".gitignore",
    "CHANGELOG.md",
    "DEVELOPERS.md",
    "LICENSE",
    "Makefile",
    "README.md",
    "converters",
    "examples",
    "pyproject.toml",
    "spec",
    "tests",
    "validator",
)
CACHES = re.compile(r"__pycache__|\.egg-info|node_modules")

# Written so that no pattern matches itself.
TRACES = {
    "a folder of one machine": r"(?<![\w.\-/])/(?:home|root|Users|work|workspace|opt|srv|mnt)/\w",
    # The one exception is the entity that hostile XML asks for, which the readers must refuse.
    "an address on a disk": r"file:[/]{3}(?!etc/passwd)",
    "a package server": r"https?://[^\s\"'<>)]*(?:/simple\b|/packages/|\bregistry\.|\b[p]ypi\.)",
    "an option that names a package server": r"--(?:extra-)?index-[u]rl|--find-[l]inks|--trusted-[h]ost",
}


def files():
    for top in TOP:
        path = ROOT / top
        found = sorted(path.rglob("*")) if path.is_dir() else [path]
        yield from (file for file in found if file.is_file() and not CACHES.search(file.as_posix()))


TEXTS = {file.relative_to(ROOT).as_posix(): file.read_bytes().decode("utf-8", "replace") for file in files()}


@pytest.mark.parametrize("pattern", TRACES.values(), ids=TRACES)
def test_no_file_carries_a_trace_of_its_making(pattern):
    found = {name: match[0] for name, text in TEXTS.items() if (match := re.search(pattern, text))}
    assert found == {}
