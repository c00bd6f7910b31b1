"""Bundles damaged at random: never an exception, and never another document than the one that was sent.

WELLPOSED_MUTANTS says how many of each kind are tried; 40 unless it is set.
"""

import json
import os
from random import Random

import pytest
from tests.converters.wellposed_converters.fhir.samples import (
    FULL,
    PLAIN,
    bundle_of,
    carried,
    changed,
    made,
    places,
    same,
    taken_out,
    without_original,
)

from wellposed.findings import Severity
from wellposed_converters.fhir.form import read

COUNT = int(os.environ.get("WELLPOSED_MUTANTS", "40"))
KINDS = {"whole": (bundle_of(FULL), made(FULL)), "alone": (without_original(bundle_of(PLAIN)), made(PLAIN))}
VALUES = (None, True, False, 0, -1, 1.5, 10**15, "", " ", "x", "urn:uuid:1", [], {}, [[]], [{}], [None], {"url": "x"})


def stopped_or_sent(found, sent):
    """Nothing is given where something stops; what is given is what was sent."""
    stops = [one for one in found.findings if one.severity == Severity.STOP]
    return (found.document is None and bool(stops)) or (not stops and same(found.document, sent))


@pytest.mark.parametrize("kind", KINDS)
def test_values_put_anywhere(kind):
    bundle, sent = KINDS[kind]
    random, everywhere = Random(kind), [place for place, _ in places(bundle) if place]
    for _ in range(COUNT):
        pointer = random.choice(everywhere)
        spoilt = (
            changed(bundle, pointer, random.choice(VALUES)) if random.random() < 0.8 else taken_out(bundle, pointer)
        )
        assert stopped_or_sent(carried(spoilt), sent), pointer


@pytest.mark.parametrize("kind", KINDS)
def test_places_exchanged(kind):
    """The value of one place at another: resources, extensions and quantities where they do not belong."""
    bundle, sent = KINDS[kind]
    random, everywhere = Random(f"exchanged {kind}"), [(place, value) for place, value in places(bundle) if place]
    for _ in range(COUNT):
        (pointer, _), (_, value) = random.sample(everywhere, 2)
        assert stopped_or_sent(carried(changed(bundle, pointer, value)), sent), pointer


@pytest.mark.parametrize("kind", KINDS)
def test_bytes_changed(kind):
    bundle, sent = KINDS[kind]
    random, text = Random(f"bytes {kind}"), json.dumps(bundle).encode()
    for _ in range(COUNT):
        place = random.randrange(len(text))
        width = random.choice((0, 1, 1, 3))
        mutant = text[:place] + bytes(random.choices(range(256), k=random.choice((0, 1, 2)))) + text[place + width :]
        (found,) = read(mutant)
        assert stopped_or_sent(found, sent), (place, mutant[place - 20 : place + 20])
