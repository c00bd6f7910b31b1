"""What the sheets are tried with: the examples, the sound prescriptions of the conformance kit, setups for them."""

import json
import random
from functools import cache
from pathlib import Path

from tests.validator.wellposed.commands.documents import EXAMPLE

from wellposed.check import check, sound, sound_document
from wellposed.digests import digest
from wellposed.kinematics.mouth import Mouth
from wellposed.model import Prescription, Setup
from wellposed.render.sheet import history_sheet, order_sheet, review_sheet
from wellposed.review import review
from wellposed.revisions.history import history

ROOT = Path(__file__).parents[5]
FOLDER = ROOT / "examples"
EXAMPLES = {path.parent.name: path for path in sorted(FOLDER.glob("*/prescription.json"))}
STORIES = {path.parent.name: path for path in sorted(FOLDER.glob("stories/*/case"))}
LARGEST = {"along": 1.5, "out": 1.2, "vertical": 0.8, "torque": 6, "tip": 5, "rotation": 15}


def made(**changes):
    """The bytes of a prescription: that of the tests of the commands, with other members."""
    return json.dumps({**EXAMPLE, **changes}).encode()


def setup_for(order, dense, seed=3):
    """A setup nobody would make, with as much in it as can be drawn: every tooth in every way, or a quarter of them."""
    rng, mouth = random.Random(seed), Mouth(order)
    teeth = [tooth for row in mouth.rows.values() for tooth in row.teeth if tooth not in mouth.locked]
    chosen = {name: [t for t in teeth if dense or rng.random() < 0.25] for name in LARGEST}
    tables = [
        {
            "variable": name,
            "unit": "mm" if name in ("along", "out", "vertical") else "deg",
            "values": {tooth: round(rng.uniform(-LARGEST[name], LARGEST[name]), 2) for tooth in those},
        }
        for name, those in chosen.items()
        if those
    ]
    contacts = [contact.name for row in mouth.rows.values() for contact in row.contacts if not contact.taken]
    document = {
        "format": "wellposed/setup",
        "version": "1.0",
        "notation": "ISO 3950",
        "id": "SU-77",
        "revision": 1,
        "issued": "2026-07-01T10:00:00+02:00",
        "answers": {"id": order.id, "revision": order.revision, "sha256": digest(order)},
        "aligners": {"upper": 22, "lower": 18},
        "movements": tables,
        "unlisted": "unmoved",
        "reductions": [{"contact": name, "amount": 0.3, "unit": "mm"} for name in contacts if dense],
        "attachments": [{"tooth": tooth} for tooth in teeth if rng.random() < 0.4],
        "predicted": [{"measure": "overbite", "value": 2.0, "unit": "mm"}],
    }
    if mouth.extracted:
        document["extractions"] = sorted(mouth.extracted)
    return json.dumps(document).encode()


@cache
def order_page(name):
    """The sheet of an example."""
    data = EXAMPLES[name].read_bytes()
    return order_sheet(sound(data), check(data))


@cache
def review_page(name, dense):
    """The sheet of an example with a setup for it."""
    order = sound(EXAMPLES[name].read_bytes())
    setup = sound_document(setup_for(order, dense))
    return review_sheet(order, setup, review(order, setup))


@cache
def history_page():
    """The sheet of a case of two orders and a setup."""
    first = made()
    order = sound(first)
    second = made(revision=2, replaces=digest(order), issued="2026-04-01T09:30:00+02:00", keep=[])
    files = [("1.json", first), ("setup.json", setup_for(order, dense=False)), ("2.json", second)]
    return history_sheet(history(files, review).cases[0])


def story_pages(folder):
    """The sheet of each setup of a story beside the order it answers, then that of the story."""
    files = {path.name: path.read_bytes() for path in sorted(folder.glob("*.json"))}
    orders = {digest(one): one for one in map(sound, files.values()) if isinstance(one, Prescription)}
    for name, data in files.items():
        setup = sound_document(data)
        if isinstance(setup, Setup):
            order = orders[setup.answers.sha256]
            yield name, lambda order=order, setup=setup: review_sheet(order, setup, review(order, setup))
    yield "history", lambda: history_sheet(history(files.items(), review).cases[0])


def pages():
    """Every page, by a name: the orders, then the reviews, sparse and dense, then the history."""
    for name in EXAMPLES:
        yield f"{name}, order", lambda name=name: order_page(name)
    for name in EXAMPLES:
        yield f"{name}, setup", lambda name=name: review_page(name, dense=False)
    for name in ("class-two-distal-movement", "lower-incisor-extraction", "several-conflicts"):
        yield f"{name}, full setup", lambda name=name: review_page(name, dense=True)
    yield "history", history_page
    for name, folder in STORIES.items():
        yield from ((f"{name}, {part}", cache(page)) for part, page in story_pages(folder))
