"""The digest of a document as sent, by the canonical form of RFC 8785 taken from its JSON, not from the model."""

import json
from hashlib import sha256
from pathlib import Path

import pytest
import rfc8785
from tests.validator.wellposed.consistency.answering import (
    SOUND_REVIEWS,
    SOUND_SETUPS,
    review,
    review_document,
    setup,
    setup_document,
)
from tests.validator.wellposed.consistency.ordinary import SOUND, document, found, prescription

from wellposed.check import prescription_of
from wellposed.digests import digest

ROOT = Path(__file__).parents[3]


def canonical(value):
    return sha256(rfc8785.dumps(value)).hexdigest()


@pytest.mark.parametrize("path", sorted(ROOT.glob("examples/*/prescription.json")), ids=lambda path: path.parent.name)
def test_the_digest_of_an_example_is_that_of_its_bytes(path):
    assert digest(prescription_of(path.read_bytes())) == canonical(json.loads(path.read_bytes()))


MADE = {name: (prescription(**changes), document(**changes)) for name, changes in SOUND.items()}
MADE |= {name: (setup(**changes), setup_document(**changes)) for name, changes in SOUND_SETUPS.items()}
MADE |= {name: (review(**changes), review_document(**changes)) for name, changes in SOUND_REVIEWS.items()}


@pytest.mark.parametrize("model, written", MADE.values(), ids=MADE)
def test_the_digest_of_a_model_is_that_of_its_document(model, written):
    assert digest(model) == canonical(written)


def test_how_a_number_is_written_does_not_matter():
    whole, pointed = ({**document(), "findings": [found("f1", "overbite", value)]} for value in ("2", "2.0"))
    texts = [
        json.dumps(one).replace('"value": "', '"value": ').replace('", "unit"', ', "unit"') for one in (whole, pointed)
    ]
    assert '"value": 2.0,' in texts[1]
    assert digest(prescription_of(texts[0].encode())) == digest(prescription_of(texts[1].encode()))


def test_a_null_inside_an_extension_stays():
    content = {"extensions": {"org.example.case": {"critical": False, "content": {"a": None, "b": [None, 1.5]}}}}
    assert digest(prescription(**content)) == canonical(document(**content))
    assert digest(prescription(**content)) != digest(prescription())
