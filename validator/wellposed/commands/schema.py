"""``wellposed schema``."""

from __future__ import annotations

import click

from wellposed._spec_folder import spec_folder
from wellposed.commands.output import printed

__all__ = ["command"]

_ENDING = ".schema.json"


@click.command("schema", epilog="Example: wellposed schema prescription > prescription.schema.json")
@click.argument("document", metavar="[DOCUMENT]", default="prescription")
def command(document: str) -> None:
    """Print the published JSON Schema of a document.

    DOCUMENT is prescription (the default), receipt, setup or review; or what this program writes: report,
    reports (of several files), rules, measures, readback, setup-review, verification, comparison,
    history, conversion, formats.
    """
    folder = spec_folder() / "schema" / "1"
    known = sorted(path.name.removesuffix(_ENDING) for path in folder.glob(f"*{_ENDING}"))
    if document not in known:
        raise click.UsageError(f"no schema of {document!r}; there are those of {', '.join(known)}")
    printed((folder / f"{document}{_ENDING}").read_text("utf-8"))
