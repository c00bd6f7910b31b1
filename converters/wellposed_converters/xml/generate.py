"""Write the XML Schema of the source tree, or with ``--check`` say whether it has drifted."""

from __future__ import annotations

import sys
from pathlib import Path

from wellposed.generate import root
from wellposed_converters.xml.xsd import FILE, text

__all__ = ["drifted", "main"]


def drifted(base: Path) -> bool:
    """Whether the file is missing, or not what would be written now."""
    path = base / FILE
    return not path.is_file() or path.read_bytes() != text().encode()


def main(arguments: list[str]) -> int:
    """0 when it is current or written, 1 when ``--check`` finds drift, 2 for another argument."""
    if arguments not in ([], ["--check"]):
        sys.stderr.write("usage: python -m wellposed_converters.xml.generate [--check]\n")
        return 2
    base = root()
    if not drifted(base):
        return 0
    if not arguments:
        (base / FILE).parent.mkdir(parents=True, exist_ok=True)
        (base / FILE).write_bytes(text().encode())
    sys.stdout.write(f"{'drifted' if arguments else 'written'}: {FILE}\n")
    return len(arguments)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
