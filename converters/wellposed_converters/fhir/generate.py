"""Write the definitions into the source tree, or with ``--check`` say whether they have drifted."""

from __future__ import annotations

import sys
from pathlib import Path

from wellposed_converters.fhir.definitions import text

PATH = Path("spec/fhir/definitions.json")


def root() -> Path:
    """The root of the source tree this module stands in."""
    here = Path(__file__).resolve().parents[3]
    if not (here / "pyproject.toml").is_file() or not (here / "spec").is_dir():
        raise SystemExit("wellposed_converters.fhir.generate works in the source tree only")
    return here


def drifted(base: Path) -> bool:
    """Whether the file is missing, or not what would be written now."""
    path = base / PATH
    return not path.is_file() or path.read_bytes() != text().encode()


def main(arguments: list[str]) -> int:
    """0 when it is current or written, 1 when ``--check`` finds drift, 2 for another argument."""
    if arguments not in ([], ["--check"]):
        sys.stderr.write("usage: python -m wellposed_converters.fhir.generate [--check]\n")
        return 2
    found = drifted(root())
    if found and not arguments:
        (root() / PATH).parent.mkdir(parents=True, exist_ok=True)
        (root() / PATH).write_bytes(text().encode())
    if found:
        sys.stdout.write(f"{'drifted' if arguments else 'written'}: {PATH.as_posix()}\n")
    return int(found and bool(arguments))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
