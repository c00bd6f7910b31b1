"""The program: its commands, loaded when called for, and what happens when something inside it fails."""

from __future__ import annotations

import os
import sys
from importlib import import_module
from importlib.metadata import EntryPoint, entry_points
from typing import Any

import click

from wellposed import __version__
from wellposed.commands.codes import INTERNAL, internal

__all__ = ["COMMANDS", "main"]

COMMANDS = {
    "check": "Check documents and say what stands against them.",
    "compare": "Compare two prescriptions, two setups or two reviews.",
    "convert": "Carry documents from one form into another.",
    "explain": "Explain a rule, a verdict or a number by its name.",
    "formats": "List the forms a document can be carried in.",
    "history": "Follow the cases in a folder over their revisions.",
    "keys": "Make, show, trust, revoke and replace the keys documents are signed with.",
    "intake": "Take in what clinics send: verify, check, store, answer with a receipt.",
    "measure": "Derive what follows from the measurements in a file.",
    "readback": "Say a prescription back in plain sentences.",
    "review": "Hold a setup against the prescription it answers, clause by clause.",
    "rules": "List every rule: how much it weighs, its name and its title.",
    "schema": "Print the published JSON Schema of a document.",
    "sheet": "Write a page to look at and to print, with the arches drawn.",
    "sign": "Sign a document: a prescription, a setup, a review or a receipt.",
    "verify": "Say whether a document comes unchanged from the sender it names.",
}
"""Each command, a module of this package, and its help in a line: the overview loads none of them."""


def _added() -> dict[str, EntryPoint]:
    """The commands other packages add; none takes the place of one of these."""
    return {entry.name: entry for entry in entry_points(group="wellposed.commands") if entry.name not in COMMANDS}


class Program(click.Group):
    """A group that loads the one command it runs, and answers its own failures in a line."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - as click calls it
        """The names of the commands, those that other packages add among them."""
        return sorted((*COMMANDS, *_added()))

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 - as click calls it
        """The command of a name, if there is one."""
        if cmd_name in COMMANDS:
            command: click.Command = import_module(f"wellposed.commands.{cmd_name}").command
            return command
        added = _added().get(cmd_name)
        return added.load() if added is not None else None

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002
        """The overview; of the commands of this package none is loaded."""
        helps = COMMANDS | {name: entry.load().get_short_help_str(80) for name, entry in _added().items()}
        with formatter.section("Commands"):
            formatter.write_dl(sorted(helps.items()))

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
