"""``wellposed explain``."""

from __future__ import annotations

import click

from wellposed.catalogue import find, nearest, page
from wellposed.commands.output import printed, width

__all__ = ["command"]

_WIDEST = 80


@click.command("explain", epilog="Example: wellposed explain cannot-hold-together")
@click.argument("name", metavar="ID")
def command(name: str) -> None:
    """Explain a rule, a verdict or a number by its name.

    \b
    A rule     means-not-said
    A verdict  undecided
    A number   practice.intrusion.upper-incisors, or a family of them: practice.intrusion
    """
    found = find(name)
    if not found:
        near = nearest(name)
        raise click.UsageError(f"nothing is called {name!r}" + (f"; the nearest is {near!r}" if near else ""))
    printed("\n".join(page(one, min(width(), _WIDEST)) for one in found))
