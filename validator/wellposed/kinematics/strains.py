"""An allowance of an amount not yet known, as a strain: what it opens grows with the amount, with all that follows."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from wellposed import norms
from wellposed.kinematics.opened import Source, followers, source, straight_back
from wellposed.kinematics.openings import Opening, Sensed, both, sensed
from wellposed.kinematics.rows import Kind, Release, Strain, StrainRow
from wellposed.kinematics.ties import alike, in_proportion, other_way
from wellposed.kinematics.translate import Translation

_NEW = ""


def opening_strain(translation: Translation, opened: list[Opening]) -> Strain:
    """Silence lifted where the allowance opens, to ``rate`` times its amount, with all that follows from it."""
    rates: dict[Sensed, float] = {}
    for at, rate in _with_all_that_follows(translation, opened):
        rates[at] = max(rate, rates.get(at, 0.0))
    releases, rows = [], []
    for at, rate in rates.items():
        column = translation.frame.column(at.tooth, at.variable)
        if column is None or translation.opened.deciding(at) is not None:
            continue
        releases.append(Release(Kind.SILENCE, False, column, at.sign))
        releases += [Release(Kind.SILENCE, True, row, 1) for row in translation.bounds.tied.get(at, ())]
        if rate < inf:
            rows.append(StrainRow({column: float(at.sign)}, -rate, -inf, 0.0))
    releases += _travel_releases(translation, rates)
    rows += [*_alike_rows(translation, opened), *_proportions(translation, opened)]
    return Strain((), tuple(releases), tuple(rows))


def _proportions(translation: Translation, opened: list[Opening]) -> Iterator[StrainRow]:
    """What comes only with another movement comes in proportion to it."""
    there = translation.opened
    for one in opened:
        if one.per and not there.sources(one.at) and not there.sources(other_way(one, one.at)):
            terms = in_proportion(translation.frame, one, one.at)
            if terms is not None:
                yield StrainRow(terms, 0.0, -inf, 0.0)


def _travel_releases(translation: Translation, rates: dict[Sensed, float]) -> list[Release]:
    """Displaced teeth whose ``out`` is opened towards the line may come to it."""
    displaced = translation.mouth.tooth_values("displacement")
    signs = {tooth: -1 if displaced[tooth] > 0 else 1 for tooth in translation.frame.travels}
    return [
        Release(Kind.SILENCE, False, translation.frame.travels[tooth], sign)
        for tooth, sign in signs.items()
        if sensed(tooth, "out", sign) in rates
    ]


def _with_all_that_follows(translation: Translation, opened: list[Opening]) -> Iterator[tuple[Sensed, float]]:
    """What an allowance opens, teeth between and canines drawn back included, as rates of its amount."""
    new: dict[Sensed, list[Source]] = {}
    for opening in opened:
        yield opening.at, opening.rate
        new.setdefault(opening.at, []).append(source(opening, _NEW, 1.0))
    for at, found in _followers(translation, new):
        yield at, found.rate
        new.setdefault(at, []).append(found)
    for at, found in list(straight_back(new)):
        yield at, found.rate
        yield from ((more.at, more.rate) for more in both(at.tooth, "along"))


def _followers(translation: Translation, new: dict[Sensed, list[Source]]) -> Iterator[tuple[Sensed, Source]]:
    """Teeth between what the allowance slides and what slides already; only what it slides itself draws them."""
    sliding = {at: found for at, found in new.items() if at.variable == "along" and not all(one.slack for one in found)}
    if not sliding:
        return
    there = {at: [_rateless(one) for one in found] for at, found in translation.opened.table.items()}
    together = {at: [*there.get(at, ()), *sliding.get(at, ())] for at in {**there, **sliding}}
    for at, found in followers(translation.mouth, together):
        if found.owner == _NEW:
            yield at, found


def _rateless(found: Source) -> Source:
    """What slides already, made small so that the new amount is the largest among them."""
    return found._replace(amount=0.0)


def _alike_rows(translation: Translation, opened: list[Opening]) -> list[StrainRow]:
    """Incisors moved as a group move alike, unless something moves them singly already."""
    teeth = list(dict.fromkeys(o.at.tooth for o in opened if o.alike))
    others = [one for t in teeth for sign in (1, -1) for one in translation.opened.sources(sensed(t, "out", sign))]
    if any(not one.alike for one in others):
        return []
    apart = norms.value("kinematics.incisors-alike")
    return [StrainRow(terms, 0.0, -apart, apart) for terms in alike(translation.frame, teeth)]
