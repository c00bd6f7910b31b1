"""``wellposed formats``."""

from __future__ import annotations

import click

from wellposed.commands.output import printed
from wellposed.formats import forms
from wellposed.render.conversion import forms_json, forms_text

__all__ = ["command"]


@click.command("formats", epilog="Example: wellposed formats --format json")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
def command(form: str) -> None:
    """List the forms a document can be carried in.

    Each with its name, whether it is read and written, the endings of its files, and what it is.
    """
    printed(forms_json(forms()) if form == "json" else forms_text(forms()))
