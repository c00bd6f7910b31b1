"""A reading that is taken back."""

from __future__ import annotations


class Refused(Exception):  # noqa: N818  # not an error of the program: a reading that is taken back
    """This grouping means nothing, or nothing certain; the reason is the name of the rule that says so."""
