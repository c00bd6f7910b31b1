"""How much tooth at rest and gum on smiling is usual at an age and for a sex: ranges with the norms they rest on."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor

from wellposed import norms

_REST = "normal.incisor-display-at-rest"
_YOUNG_AND_OLD = "normal.da-motta-age"
_GUM = "normal.gingival-display-on-smiling"
_SEXES = ("female", "male")


@dataclass(frozen=True, slots=True)
class Usual:
    """A usual range, mm; for gum, negative hides the tooth.

    mean  where one is published
    keys  of the norms it comes from
    """

    low: float
    mean: float | None
    high: float
    keys: tuple[str, ...]


def display_at_rest(age: float | None, sex: str | None) -> Usual | None:
    """Upper central incisor shown with the lips at rest, by age in years and ``female`` or ``male``.

    From 12 to 15, and from 51 where the sex is known, by the study that tells the sexes apart; else by decade; where no
    age is stated by sex alone. None where neither is, and below 12, for which there is no number.
    """
    keys = _rest_keys(age, sex)
    if not keys:
        return None
    means, side = [norms.value(key) for key in keys], norms.value(f"{_REST}.either-side")
    return Usual(min(means) - side, sum(means) / len(means), max(means) + side, (*keys, f"{_REST}.either-side"))


def _rest_keys(age: float | None, sex: str | None) -> list[str]:
    """The means to go by."""
    sexes = [sex] if sex else list(_SEXES)
    if age is None:
        return [f"{_REST}.by-sex.{sex}"] if sex else []
    whole = floor(age)
    if whole < norms.value(f"{_YOUNG_AND_OLD}.youngest.least"):
        return []
    if whole <= norms.value(f"{_YOUNG_AND_OLD}.youngest.most"):
        return [f"{_REST}.da-motta.{one}.youngest" for one in sexes]
    if sex and whole >= norms.value(f"{_YOUNG_AND_OLD}.oldest"):
        return [f"{_REST}.da-motta.{sex}.oldest"]
    return [f"{_REST}.by-age.{_band(age)}"]


def _band(age: float) -> str:
    """The decade an age falls in, by its name in the norms."""
    begins = norms.family("normal.display-from-age")
    return max((name for name in begins if begins[name] <= age), key=begins.__getitem__)


def gingival_display(sex: str | None) -> Usual:
    """Gum shown on a full smile; where the sex is not stated, from the least of men to the most of women."""
    sexes = [sex] if sex else list(_SEXES)
    keys = tuple(f"{_GUM}.{one}.{end}" for one in sexes for end in ("least", "most"))
    ends = [norms.value(key) for key in keys]
    return Usual(min(ends), None, max(ends), keys)


def lip_still_grows(age: float | None, sex: str | None) -> bool | None:
    """Whether the upper lip may still grow longer; None where age or sex leave it open."""
    if age is None:
        return None
    ends = [norms.value(f"normal.lip-growth-end.{one}") for one in ([sex] if sex else _SEXES)]
    growing = {age < end for end in ends}
    return growing.pop() if len(growing) == 1 else None
