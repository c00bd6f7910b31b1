"""``wellposed sign``."""

from __future__ import annotations

import click

from wellposed.commands.documents import sound_in
from wellposed.commands.key_files import new_file, private_key
from wellposed.commands.output import printed
from wellposed.digests import digest
from wellposed.exchange.keys import thumbprint
from wellposed.exchange.signing import signed

__all__ = ["command"]


@click.command("sign", epilog="Example: wellposed sign order.json --key dr-2.private.json -o order.sig")
@click.argument("document", metavar="DOCUMENT", type=click.Path())
@click.option("--key", metavar="PRIVATE", type=click.Path(dir_okay=False), required=True, help="The key to sign with.")
@click.option(
    "-o", "--output", metavar="FILE", type=click.Path(dir_okay=False), required=True, help="Write the signature there."
)
@click.pass_context
def command(ctx: click.Context, document: str, key: str, output: str) -> None:
    """Sign a document: a prescription, a setup, a review or a receipt.

    The signature stands beside the document, which is not changed. It is over the content: blanks, the order of
    members and the way a number is written may change on the way, and nothing else. What has faults is not signed.

    \b
    Exit status:
      0  the signature was written
      1  faults in the document stop it
      2  the command was called wrongly
      3  the file or the document could not be read
      4  a fault inside the program
    """
    found = sound_in(ctx, document)
    secret = private_key(key)
    new_file(output, signed(found, secret).encode())
    printed(f"{found.id}, revision {found.revision}: signed.\nkey      {thumbprint(secret.x)}\n")
    printed(f"SHA-256  {digest(found)}\n")
