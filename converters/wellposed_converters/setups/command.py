"""``wellposed setup``: its options. What it does is loaded when it runs: the overview of commands stays quick."""

from __future__ import annotations

from importlib import import_module
from typing import Any

import click


@click.command(
    "setup", epilog="Example: wellposed setup moves.csv --columns lab.toml --answers rx.json --id S-1 -o s.json"
)
@click.argument("table", metavar="TABLE", type=click.Path())
@click.option("--columns", metavar="FILE.toml", required=True, help="The declared reading of the table.")
@click.option("--answers", metavar="FILE.json", required=True, help="The prescription that the setup answers.")
@click.option("--id", "name", metavar="ID", required=True, help="The id of the setup.")
@click.option("--sheet", metavar="NAME", help="The sheet of the movements, where a workbook has several.")
@click.option(
    "--also", metavar="NAME=FILE", multiple=True, help="A further table, to be known as a sheet of that name."
)
@click.option("--issued", metavar="MOMENT", help="RFC 3339 date-time with its offset; now, where it is left out.")
@click.option("--replaces", metavar="FILE.json", help="The revision of the setup before this one.")
@click.option("-o", "--output", metavar="FILE", help="Where the setup is written.")
@click.option("--all", "every_cell", is_flag=True, help="Tell every cell by itself, not column by column.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@click.pass_context
def command(ctx: click.Context, /, table: str, **options: Any) -> None:
    """Read a table of tooth movements into a setup, by a declared reading of its columns.

    TABLE is a .csv, .tsv or .txt file of separated values, or an .xlsx workbook. Nothing is guessed: what is not
    declared is told, with its sheet, row and column, and no setup is written.

    \b
    Exit status:
      0  the setup was made, and nothing is asked
      1  something stops it, or must be answered first
      2  the command was called wrongly
      3  a file could not be read
      4  a fault inside the program
    """
    ctx.exit(import_module("wellposed_converters.setups.running").run(table, options))
