"""The limits of a practice profile, for the commands that take one."""

from __future__ import annotations

import click

from wellposed.norms import NormError, Norms, with_profile

__all__ = ["limits", "profile_option"]

profile_option = click.option(
    "--profile",
    metavar="FILE.toml",
    type=click.Path(exists=True, dir_okay=False, readable=True),
    help="A practice's own limits, in place of the published ones.",
)


def limits(profile: str | None) -> Norms | None:
    """The limits of a practice profile, none where none was named."""
    # loaded for those who have a profile
    from wellposed.review.rules import USUAL as OF_SETUPS  # noqa: PLC0415
    from wellposed.rules import USUAL  # noqa: PLC0415

    try:
        return with_profile(profile, {**USUAL, **OF_SETUPS}) if profile is not None else None
    except NormError as error:
        raise click.UsageError(str(error)) from error
