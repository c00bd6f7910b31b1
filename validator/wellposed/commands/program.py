"""The program: its commands, loaded when called for, and what happens when something inside it fails."""

from __future__ import annotations

import os
import sys
from importlib import import_module
from typing import Any

import click

from wellposed import __version__
from wellposed.commands.codes import INTERNAL, internal

__all__ = ["COMMANDS", "main"]

COMMANDS = {
    "check": "Check documents and say what stands against them.",
    "explain": "Explain a rule, a verdict or a number by its name.",
    "measure": "Derive what follows from the measurements in a file.",
    "rules": "List every rule: how much it weighs, its name and its title.",
    "schema": "Print the published JSON Schema of a document.",
}
"""Each command, a module of this package, and its help in a line: the overview loads none of them."""


class Program(click.Group):
    """A group that loads the one command it runs, and answers its own failures in a line."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - as click calls it
        """The names of the commands."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 - as click calls it
        """The command of a name, if there is one."""
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = import_module(f"wellposed.commands.{cmd_name}").command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002
        """The overview, without loading a command."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command; where it fails through a fault of its own, say so without a word of a document."""
        try:
            return super().invoke(ctx)
        except (click.ClickException, click.exceptions.Exit, click.Abort, BrokenPipeError):
            raise
        except Exception as error:
            click.echo(f"wellposed: {internal(error)}", err=True)
            ctx.exit(INTERNAL)


@click.group(
    cls=Program,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog="Example: wellposed check prescription.json",
)
@click.version_option(__version__, prog_name="wellposed", message="%(prog)s %(version)s")
@click.pass_context
def main(ctx: click.Context) -> None:
    """Say whether the clauses of a clear-aligner prescription can hold together."""
    if os.environ.get("NO_COLOR") or not sys.stdout.isatty():
        ctx.color = False
