"""Where the data of the specification stand: inside the package once installed, else in the repository."""

from __future__ import annotations

from functools import cache
from pathlib import Path


@cache
def spec_folder() -> Path:
    """The folder that holds ``norms``.

    Raises FileNotFoundError when it is neither in the package nor in a folder above it.
    """
    here = Path(__file__).resolve()
    if (here.parent / "_spec").is_dir():
        return here.parent / "_spec"
    for folder in here.parents:
        if (folder / "spec" / "norms").is_dir():
            return folder / "spec"
    message = "spec/norms is neither inside the installed package nor in a folder above it: install it again"
    raise FileNotFoundError(message)
