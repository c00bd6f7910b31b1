"""A prescription as sentences: each part by what tells its class, then what follows from silence."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.consistency.whole import Place
from wellposed.model import Prescription
from wellposed.render.readback.binding import BINDING
from wellposed.render.readback.followers import measures_left
from wellposed.render.readback.making import MAKING
from wellposed.render.readback.means import MEANS_TOLD
from wellposed.render.readback.mouth import MOUTH
from wellposed.render.readback.sentence import HEADINGS, Context, Sentence, Teller, context
from wellposed.render.readback.silence import kept
from wellposed.render.readback.spelling import BRITISH, spelt
from wellposed.render.readback.unbound import UNBOUND, sections_without

__all__ = ["TELLERS", "sentences"]

TELLERS: Mapping[type, Teller] = MappingProxyType({**MOUTH, **BINDING, **MEANS_TOLD, **MAKING, **UNBOUND})
"""What tells each class of the model. Persons and records are never told; a quantity is part of its clause."""

_ORDER = list(HEADINGS)


def sentences(prescription: Prescription, usage: str = BRITISH) -> tuple[Sentence, ...]:
    """All that a sound prescription says, heading by heading in the order of the document, then what it does not say.

    prescription  one that nothing between its parts stops
    usage         ``british`` or ``american``
    """
    ctx = context(prescription)
    told = (*_parts(ctx), *kept(ctx), *measures_left(ctx), *sections_without(ctx))
    spelled = (one._replace(text=spelt(one.text, usage)) for one in told)
    return tuple(sorted(spelled, key=lambda one: _ORDER.index(one.heading)))


def _parts(ctx: Context) -> Iterator[Sentence]:
    for place in _places(ctx):
        tell = TELLERS.get(type(place.part))
        if tell is not None:
            yield from tell(place, ctx)


def _places(ctx: Context) -> Iterator[Place]:
    """Every part with its place; those the rules between the parts do not look at first and last."""
    if ctx.rx.treat is not None:
        yield Place("/treat", "treat", "", ctx.rx.treat)
    yield from ctx.whole.places
    for name, extension in (ctx.rx.extensions or {}).items():
        yield Place(f"/extensions/{name}", "extensions", "", extension)
