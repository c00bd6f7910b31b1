"""What a reviewer decides about a setup, from the options of a command to a document; nothing is decided here."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

import click

from wellposed.check import sound_document
from wellposed.commands.output import width
from wellposed.digests import digest
from wellposed.findings import Severity
from wellposed.model import Prescription, Review, Setup
from wellposed.model.moments import now
from wellposed.render.json_report import dumped
from wellposed.render.text import text
from wellposed.report import Report
from wellposed.review.document import Decision, review_content
from wellposed.review.requests import unopened
from wellposed.review.result import SetupReview

__all__ = ["document_text", "options_fit"]

APPROVED = "approved"
_UNMET = ("not-met", "beyond")
_WITH_OUTPUT = ("id", "outcome", "issued", "reviewer", "replaces", "accept", "accept_unopened", "also_preferred")


def options_fit(options: Mapping[str, Any]) -> None:
    """UsageError where what goes with a document is given without one, or the other way about."""
    if options["output"] is None:
        stray = [name for name in _WITH_OUTPUT if options[name]]
        if stray:
            raise click.UsageError(f"{_option(stray[0])} goes with -o, the review to be written")
        return
    named = {"outcome": options["outcome"], "id": options["id"] or options["replaces"]}
    lacking = [name for name in ("id", "outcome") if not named[name]]
    if lacking:
        wanted = " and ".join(_option(name) for name in lacking)
        raise click.UsageError(f"-o needs {wanted}, which only the reviewer can say")
    if options["accept_unopened"] and options["outcome"] != APPROVED:
        raise click.UsageError("--accept-unopened goes with --outcome approved")


def _option(name: str) -> str:
    return f"--{name.replace('_', '-')}"


def document_text(review: SetupReview, prescription: Prescription, setup: Setup, options: Mapping[str, Any]) -> str:
    """The review as a document. UsageError where it cannot be written as decided."""
    _known(review, options["accept"])
    if options["replaces"] is not None:
        _same_review(options["replaces"], prescription, setup, options["id"])
    if options["outcome"] == APPROVED:
        _may_be_approved(review, options)
    content = review_content(review, prescription, setup, _decision(options))
    if options["outcome"] != APPROVED and not content.keys() & {"requests", "revising"}:
        raise click.UsageError("returned: there is nothing here that a clause could ask for; a return needs a request")
    written = dumped(content, indent=2)
    _sound(json.dumps(content).encode())
    return written


def _decision(options: Mapping[str, Any]) -> Decision:
    issued = options["issued"] or now()
    replaced = options["replaces"]
    return Decision(
        outcome=options["outcome"],
        id=options["id"] or replaced.id,
        issued=issued,
        accepted=tuple(options["accept"]),
        also_preferred=options["also_preferred"],
        unopened=options["accept_unopened"],
        reviewer=options["reviewer"],
        replaces=replaced,
    )


def _same_review(replaced: Review, prescription: Prescription, setup: Setup, name: str | None) -> None:
    """A review takes the place of one with its own id, about the same order and the very same setup."""
    if name not in (None, replaced.id):
        raise click.UsageError("--id: a review that --replaces another keeps its id; leave --id out")
    if replaced.prescription.id != prescription.id:
        raise click.UsageError("--replaces: that review is about another prescription")
    if replaced.answers.sha256 != digest(setup):
        raise click.UsageError("--replaces: that review answers another setup; this one gets a review with its own id")


def _known(review: SetupReview, accepted: tuple[str, ...]) -> None:
    outcomes = {one.id: one.outcome for one in review.clauses}
    for name in accepted:
        if name not in outcomes:
            raise click.UsageError(f"--accept {name}: the prescription has no clause of this id")
        if outcomes[name] in ("met", "within"):
            raise click.UsageError(f"--accept {name}: it is met, there is nothing to accept")


def _may_be_approved(review: SetupReview, options: Mapping[str, Any]) -> None:
    """What stands against an approval, all of it at once."""
    stops = dict.fromkeys(one.rule for one in review.findings if one.severity == Severity.STOP)
    unmet = [one.id for one in review.clauses if one.outcome in _UNMET and one.id not in options["accept"]]
    faults = [f"it is stopped by {', '.join(stops)}"] if stops else []
    faults += [f"not met, and not named by --accept: {', '.join(unmet)}"] if unmet else []
    if unopened(review) and not options["accept_unopened"]:
        faults.append(f"changes that nothing opened ({len(unopened(review))}), and no --accept-unopened")
    if faults:
        raise click.UsageError(f"approved: {'; '.join(faults)}")


def _sound(data: bytes) -> None:
    """Read by our own reader, as anybody will: an id or a time that is none is found there."""
    found = sound_document(data)
    if isinstance(found, Report):
        click.echo(text(found, "the review", width()), err=True, nl=False)
        raise click.UsageError("the review cannot be written as decided")
