"""``wellposed keys``."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, get_args

import click

from wellposed.commands.files import shown
from wellposed.commands.key_files import (
    alone,
    either_half,
    key_file,
    new_file,
    new_pair,
    new_phrase,
    private_key,
    put_trust,
    read_trust,
    written,
)
from wellposed.commands.output import printed
from wellposed.exchange import keys, trusting
from wellposed.exchange.changes import change_signed
from wellposed.exchange.spoken import same
from wellposed.exchange.trust import Trust
from wellposed.model.base import Part
from wellposed.model.keys import PrivateKey, PublicKey, Reason, SignedKeyChange
from wellposed.model.moments import now, time_of
from wellposed.render.keys import PICTURES, key_text, keys_text, picture

__all__ = ["command"]

_file = click.Path(dir_okay=False)
_trust_option = click.option("--trust", "store", metavar="STORE", type=_file, required=True, help="The list of keys.")


@click.group("keys", epilog="Example: wellposed keys make dr-2.private.json --public dr-2.public.json")
def command() -> None:
    """Make, show, trust, revoke and replace the keys documents are signed with.

    A key has two halves. Its owner keeps the private one and signs with it; whoever receives documents trusts the
    public one, once its words were read back to the owner by telephone or in person.
    """


def _moment(ctx: click.Context, parameter: click.Parameter, value: str | None) -> str | None:  # noqa: ARG001 - as click calls it
    if value is not None and time_of(value) is None:
        raise click.BadParameter("not an RFC 3339 date-time such as 2026-03-04T09:30:00+01:00")
    return value


@command.command("make")
@click.argument("private", metavar="PRIVATE", type=_file)
@click.option("--public", metavar="FILE", type=_file, required=True, help="Write the half for others there.")
@click.option("--pass-phrase", "ask", is_flag=True, help="Ask for a pass phrase, without which PRIVATE is of no use.")
def make(private: str, public: str, ask: bool) -> None:
    """Make a key. PRIVATE stays with its owner, and nobody else may read it."""
    if Path(private).exists():
        raise click.UsageError(f"{shown(private)} is there, and is not written over")
    if Path(private).absolute() == Path(public).absolute():
        raise click.UsageError("the two halves of a key need two files")
    phrase = new_phrase(private) if ask else None
    made = keys.made()
    new_pair(private, public, made, keys.public(made), phrase)
    printed(key_text(made))


@command.command("show")
@click.argument("key", metavar="KEY", type=_file)
@click.option("--qr", metavar="FILE.svg|.png", type=_file, help="Write the thumbprint there as a picture to scan.")
def show(key: str, qr: str | None) -> None:
    """Show a key by its thumbprint and in words. KEY is either half; of the private one nothing is shown."""
    found = either_half(key)
    if qr is not None:
        kind = Path(qr).suffix.lower().removeprefix(".")
        if kind not in PICTURES:
            raise click.UsageError("--qr must end in one of .svg, .png")
        new_file(qr, picture(found, kind))
    printed(key_text(found))


@command.command("trust")
@click.argument("key", metavar="KEY", type=_file)
@_trust_option
@click.option("--owner", metavar="ID", multiple=True, help="Whom the key signs for; once for each id.")
@click.option("--read-back", metavar="WORDS", help="What the owner reads out: the sixteen words, or the thumbprint.")
@click.option("--since", metavar="TIME", callback=_moment, help="The key signs nothing issued before.")
@click.option("--until", metavar="TIME", callback=_moment, help="Nor anything issued or received from then on.")
@click.option("--holder", metavar="ID", multiple=True, help="For a new STORE: under which ids documents come here.")
def trust(key: str, store: str, **options: Any) -> None:
    """Trust a key: KEY as its owner gave it, or the change of keys that the key before it signed.

    What the owner reads out from their own copy goes to --read-back and must agree. A change needs no reading back, for
    it is signed by a key that is trusted.
    """
    found = key_file(key, SignedKeyChange, PublicKey, PrivateKey)
    _changed(store, lambda: _with(_list(store, options["holder"]), found, options))


def _changed(store: str, change: Callable[[], Trust]) -> None:
    """Change the list of keys while nobody else does, and say how it is then."""
    with alone(store):
        try:
            after = change()
        except trusting.TrustError as error:
            raise click.UsageError(str(error)) from error
        put_trust(store, after)
    printed(_listed(after))


def _list(store: str, holder: tuple[str, ...]) -> Trust:
    """The list of keys there is, or a new one."""
    if Path(store).exists():
        if holder:
            raise click.UsageError("--holder is for a new list of keys; this one says whose it is")
        return read_trust(store)
    if not holder:
        raise click.UsageError(f"{shown(store)} is not there yet; a new list of keys needs --holder")
    return trusting.empty(holder)


def _with(before: Trust, found: Part, options: dict[str, Any]) -> Trust:
    if isinstance(found, SignedKeyChange):
        stray = [name for name in ("owner", "read_back", "since", "until") if options[name]]
        if stray:
            raise click.UsageError(f"--{stray[0].replace('_', '-')} does not go with a change of keys, which says it")
        return trusting.replaced(before, found, now())
    if isinstance(found, PrivateKey) or not isinstance(found, PublicKey):
        raise click.UsageError("this is a private key, which was to stay with its owner; ask for a new one")
    if not options["owner"] or options["read_back"] is None:
        raise click.UsageError("a key is trusted with --owner and --read-back, once its owner has read it out")
    if not same(options["read_back"], keys.thumbprint(found.x)):
        raise click.UsageError("what was read back is another key: do not trust this one")
    times = {name: options[name] for name in ("since", "until")}
    return trusting.added(before, found, options["owner"], now(), **times)


def _listed(trust: Trust) -> str:
    return keys_text(trust, datetime.now(UTC))


@command.command("revoke")
@click.argument("key", metavar="KEY")
@_trust_option
@click.option("--reason", type=click.Choice(get_args(Reason)), required=True, help="Why it is not to be used.")
@click.option("--since", metavar="TIME", callback=_moment, help="From when on; now where it is not given.")
def revoke(key: str, store: str, reason: Reason, since: str | None) -> None:
    """Revoke a key of the list. KEY is its thumbprint, or its words.

    \b
    compromised  it may be in other hands: nothing received from then on counts, whatever its date,
                 nor do the keys it has vouched for since
    superseded   another key has taken its place: it counts for what was issued before
    ended        its owner signs no more: it counts for what was issued before
    """
    _changed(store, lambda: _revoked(read_trust(store), key, reason, since))


def _revoked(before: Trust, key: str, reason: Reason, since: str | None) -> Trust:
    recorded = now()
    kid = next((one.kid for one in before.keys if one.kid and same(key, one.kid)), None)
    return trusting.revoked(before, kid or "", since or recorded, reason, recorded)


@command.command("rotate")
@click.argument("old", metavar="OLD", type=_file)
@click.argument("new", metavar="NEW", type=_file)
@click.option("-o", "--output", metavar="FILE", type=_file, required=True, help="Write the change of keys there.")
@click.option("--since", metavar="TIME", callback=_moment, help="From when on the new key signs; now if not given.")
def rotate(old: str, new: str, output: str, since: str | None) -> None:
    """Let a key give way to a new one: both sign the change, and whoever trusts the old one can trust it.

    OLD and NEW are private keys. A key that may be in other hands is not to be replaced so: have it revoked, and the
    new one read back.
    """
    keys_of = private_key(old), private_key(new)
    if keys_of[0].x == keys_of[1].x:
        raise click.UsageError("the two are one key")
    new_file(output, written(change_signed(*keys_of, since or now())))
    printed(key_text(keys_of[1]))


@command.command("list")
@_trust_option
def listed(store: str) -> None:
    """List the keys that are trusted: whose, how each stands today, and its words."""
    printed(_listed(read_trust(store)))
