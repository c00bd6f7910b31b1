"""What was released does not change: the digests of released schemas and of the kit's cases.

``python -m tests.spec.conformance.frozen 1.0`` writes down those of a version at its release; there is no way back.
"""

import hashlib
import sys

from tests.spec.conformance import kit

LIST = kit.KIT / "frozen.json"
FROZEN = ("spec/schema/*/*", "spec/conformance/cases/*/*/*")


def digests(root):
    """Of every file that a release fixes, by its path."""
    files = sorted(path for pattern in FROZEN for path in root.glob(pattern) if path.is_file())
    return {path.relative_to(root).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


def changed(released, root):
    """Paths of files that are not as they were released, or are gone; files that came later are none of them."""
    now = digests(root)
    fixed = {(path, digest) for files in released.values() for path, digest in files.items()}
    return sorted({path for path, digest in fixed if now.get(path) != digest})


def with_version(released, version, root):
    """The list with a version more. ValueError where it was released before, or something released has changed."""
    if version in released or changed(released, root):
        raise ValueError("released before, or not as it was released")
    return {**released, version: digests(root)}


def main(version):
    """Write down a release."""
    released = kit.read(LIST)["released"]
    LIST.write_text(kit.written({"released": with_version(released, version, kit.ROOT)}), "utf-8")
    kit.main()


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: python -m tests.spec.conformance.frozen VERSION")
    main(sys.argv[1])
