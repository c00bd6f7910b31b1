"""The command line."""

from wellposed.commands.program import main

__all__ = ["main"]
