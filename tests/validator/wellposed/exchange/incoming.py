"""Orders as they come in: revisions that follow each other, a desk that looks at them quickly, a store to keep them."""

import json

from tests.validator.wellposed.commands.documents import EXAMPLE, written

from wellposed.check import sound_document
from wellposed.digests import digest
from wellposed.exchange.answering import stands
from wellposed.exchange.intake import Desk, taken_in
from wellposed.exchange.kept import holding
from wellposed.exchange.trusting import empty
from wellposed.findings import Finding, Severity
from wellposed.report import Report

NOW = "2026-03-05T08:00:00Z"
LABORATORY = "lab-4"
PRESCRIBER = EXAMPLE["prescriber"]["id"]
SMALL = {
    name: value for name, value in EXAMPLE.items() if name not in ("findings", "goals", "keep", "allow", "attachments")
}
SMALL["teeth"] = {"upper": ["11", "21"], "lower": ["41", "31"]}


def digest_of(data):
    return digest(sound_document(data))


def order(revision=1, replaces=None, **changes):
    """A small order as some revision."""
    chain = {} if revision == 1 else {"replaces": replaces or "0" * 64}
    return written({**SMALL, "revision": revision, **chain, **changes})


def chain(count, **changes):
    """Revisions 1 to count, each replacing the one before."""
    found = []
    for revision in range(1, count + 1):
        found.append(order(revision, digest_of(found[-1]) if found else None, **changes))
    return found


def quick(data):
    """In place of the whole check: an order whose first goal is called ``faulty`` must be answered first."""
    content = json.loads(data)
    faulty = any(goal["id"] == "faulty" for goal in content.get("goals", ()))
    findings = (Finding("bounds-missing", Severity.STOP, "/goals/0", {}, ("faulty",)),) if faulty else ()
    return Report("refused" if faulty else "possible", findings, content["id"], content["revision"])


def desk(**changes):
    return Desk(**{"trust": empty([LABORATORY]), "look": quick, **changes})


def faulty():
    return {"goals": [{"id": "faulty", "strength": "must", "align": ["31", "41"]}]}


def take(store, *datas, signature=None, at=NOW, on=None):
    """Take in documents one after the other; what became of the last."""
    return [taken_in(store, on or desk(), data, signature, at) for data in datas][-1]


def state(store):
    """Of each document its bytes, how it stands, and the answer that holds; of each case what was withdrawn.

    The answer to one that was overtaken is left out: it may be of the time before.
    """
    found = {}
    for case in store.cases():
        found[case] = store.withdrawn(case)
        for one, how in stands(store, case).items():
            outcome = holding(store.answers(one)).outcome
            found[one] = (store.kept(one).data, str(how), outcome if how != "overtaken" else None)
    return found
