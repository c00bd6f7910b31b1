"""``wellposed read``: its options. What it does is loaded when it runs: the overview of commands stays quick."""

from __future__ import annotations

from importlib import import_module
from typing import Any

import click


@click.command("read", epilog="Example: wellposed read note.txt -o draft.json")
@click.argument("note", metavar="NOTE", type=click.Path())
@click.option("-o", "--output", metavar="FILE", help="Where the draft is written.")
@click.option("--ask", is_flag=True, help="Put the questions at the terminal and fill in the answers.")
@click.option("--by", metavar="ID", help="Who answers: an identifier, not a name. Needed with --ask.")
@click.option("--standing", metavar="FILE", help="Standing instructions of the practice, read beside the note.")
@click.option("--particulars", metavar="FILE", help="What no note says, as JSON; then a prescription is written.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@click.pass_context
def command(ctx: click.Context, /, note: str, **options: Any) -> None:
    """Read a note, a checklist or an e-mail into a draft, and ask about what is not certain.

    NOTE is a .txt, .eml or .docx file, in UTF-8 where it is text. Nothing is guessed: what has two readings is a
    question, and a draft with open questions is no prescription.

    \b
    Exit status:
      0  read, and nothing is open
      1  read, and questions are open
      2  the command was called wrongly
      3  the note could not be read
      4  a fault inside the program
    """
    ctx.exit(import_module("wellposed_converters.text.running").run(ctx, note, options))
