"""Clinical numbers with their sources, and the practice profiles that change them.

The numbers stand in ``spec/norms``, one file a topic, read when first asked for and once only.
A key is dotted: ``tooth-width.11``, ``practice.intrusion.upper-incisors``. Teeth are given on the
patient's right; a tooth of the left answers with its mirror. Every number says how sure it is.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from wellposed.norms.book import Change as Change
from wellposed.norms.book import Norms as Norms
from wellposed.norms.entry import Norm as Norm
from wellposed.norms.entry import NormError as NormError
from wellposed.norms.profile import with_profile as with_profile


@cache
def load() -> Norms:
    """The numbers of the specification, without a practice profile."""
    return Norms()


def norm(key: str) -> Norm:
    """``load().norm(key)``."""
    return load().norm(key)


@cache
def value(key: str) -> float:
    """``load().value(key)``."""
    return load().value(key)


@cache
def family(head: str) -> Mapping[str, float]:
    """``load().family(head)``."""
    return load().family(head)
