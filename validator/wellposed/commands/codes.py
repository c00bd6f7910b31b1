"""Exit codes, the worst of which a run over several files ends with, and the words of a failure."""

from __future__ import annotations

__all__ = ["FIT", "INTERNAL", "NOT_FIT", "NOT_READ", "internal"]

FIT = 0
NOT_FIT = 1
NOT_READ = 3
INTERNAL = 4


def internal(error: Exception) -> str:
    """A fault of the program, by its kind alone: what it says may quote the document."""
    return f"internal fault ({type(error).__name__})"
