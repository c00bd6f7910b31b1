"""``wellposed rules``."""

from __future__ import annotations

import click

from wellposed.catalogue import rules
from wellposed.commands.output import printed
from wellposed.render.rules_json import rules_json

__all__ = ["command"]


@click.command("rules", epilog="Example: wellposed rules --format json")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
def command(form: str) -> None:
    """List every rule: how much it weighs, its name and its title."""
    printed(rules_json() if form == "json" else _listed())


def _listed() -> str:
    widest = max(len(rule.id) for rule in rules())
    return "".join(f"{rule.severity:<7}  {rule.id:<{widest}}  {rule.title}\n" for rule in rules())
