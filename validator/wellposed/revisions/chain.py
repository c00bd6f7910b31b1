"""Where the documents of a case do not join up. Nothing here is mended: what is told is for people to settle."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from wellposed.findings import Severity
from wellposed.model import Prescription
from wellposed.revisions.case import Conversation, Held
from wellposed.rules._declare import Told, rule, told

Chain = tuple[Held, ...]


def chains(case: Conversation) -> Iterator[Chain]:
    """Documents of one kind and id, by revision."""
    found: dict[tuple[str, str], list[Held]] = {}
    for one in case.held:
        found.setdefault((one.identity.format, one.identity.id), []).append(one)
    yield from (tuple(sorted(chain, key=lambda one: one.identity.revision)) for chain in found.values())


def _named(*held: Held) -> list[str]:
    return [name for one in held for name in one.names]


def _kind(one: Held) -> str:
    return one.identity.format.removeprefix("wellposed/")


@rule(
    "two-documents-of-one-revision",
    Severity.STOP,
    title="Two different documents have one id and one revision.",
    says="{documents:list} are different documents, each of them revision {revision} of the {kind} {id}. {followed}",
    do="Find out which of them was sent, and take the other away.",
    change="A number of its own for each would change it.",
)
def two_documents_of_one_revision(case: Conversation) -> Iterator[Told]:
    """No two documents of one kind have the same id and the same revision, unless they are the same document.

    Whoever answers such a revision, or follows a case over it, may have the other one in hand.

    Evidence: none is needed. Documents are the same where their canonical forms are. Of two prescriptions the one whose
    digest the next revision replaces is followed; where nothing tells, neither is.

    Passes: {"case": [{"revision": 1}, {"revision": 2}]}
    Fails: {"case": [{"revision": 1}, {"revision": 1, "goals": []}]}
    """
    for chain in chains(case):
        for revision in sorted({one.identity.revision for one in chain}):
            rivals = [one for one in chain if one.identity.revision == revision]
            if len(rivals) > 1:
                facts = {"documents": _named(*rivals), "followed": _followed(case, rivals)}
                yield told("/revision", kind=_kind(rivals[0]), id=rivals[0].identity.id, revision=revision, **facts)


def _followed(case: Conversation, rivals: list[Held]) -> str:
    if not isinstance(rivals[0].document, Prescription):
        return "Each is looked at by itself."
    chosen = [one for one in rivals if one in case.line]
    if chosen:
        return f"The next revision replaces {_named(*chosen)[0]}, which is followed here."
    return "Neither is followed here."


@rule(
    "revision-not-at-hand",
    Severity.ASK,
    title="A revision is not at hand.",
    says="Of the {kind} {id} revision {absent:list} is not at hand, and revision {last} is.",
    do="Add the revision that is not there; until then what it changed is told as a change of the next one.",
    change="The document itself would change it.",
)
def revision_not_at_hand(case: Conversation) -> Iterator[Told]:
    """Every revision from the first to the last is at hand, of prescriptions, setups and reviews alike.

    What was asked or answered in between cannot be seen, and a clause that was dropped and put back looks untouched.

    Evidence: none is needed; revisions are counted from 1.

    Passes: {"case": [{"revision": 1}, {"revision": 2}]}
    Fails: {"case": [{"revision": 1}, {"revision": 3}]}
    """
    for chain in chains(case):
        there = sorted({one.identity.revision for one in chain})
        absent = [_run(before + 1, after - 1) for before, after in pairwise((0, *there)) if after - before > 1]
        if absent:
            facts = {"absent": absent, "last": there[-1]}
            yield told("/revision", kind=_kind(chain[-1]), id=chain[-1].identity.id, **facts)


def _run(first: int, last: int) -> str:
    return str(first) if first == last else f"{first} to {last}"


@rule(
    "replaces-not-at-hand",
    Severity.ASK,
    title="A document does not replace the revision before it that is at hand.",
    says="{documents:list} replaces another document than the revision {revision} that is at hand.",
    do="Find the revision that was meant, or correct `replaces`.",
    change="The digest of the revision before would change it.",
)
def replaces_not_at_hand(case: Conversation) -> Iterator[Told]:
    """`replaces` is the digest of the revision before, as it is at hand.

    If it is not, another document was sent in between, or the one at hand is not what was sent.

    Evidence: computed: SHA-256 of the canonical form by RFC 8785. It is looked at only where the revision before is at
    hand.

    Passes: {"case": [{"revision": 1}, {"revision": 2}]}
    Fails: {"case": [{"revision": 1},
                     {"revision": 2, "replaces": "0000000000000000000000000000000000000000000000000000000000000000"}]}
    """
    for chain in chains(case):
        for one in chain:
            before = [was for was in chain if was.identity.revision == one.identity.revision - 1]
            if before and one.document.replaces not in {was.identity.digest for was in before}:
                yield told("/replaces", documents=_named(one), revision=one.identity.revision - 1)


@rule(
    "answered-not-at-hand",
    Severity.ASK,
    title="What a document answers is not at hand.",
    says="{documents:list} answers revision {revision} of {id}, which is not at hand.",
    do="Add the document it answers; until then it is not looked at.",
    change="The document itself would change it.",
)
def answered_not_at_hand(case: Conversation) -> Iterator[Told]:
    """What a setup, a receipt or a review answers is at hand.

    A setup alone says where teeth go, not what was asked.

    Evidence: none is needed.

    Passes: {"case": [{"revision": 1}, {"setup": {}}]}
    Fails: {"case": [{"revision": 1}, {"setup": {}, "answers": {"id": "HR-2031", "revision": 4, "sha256":
             "0000000000000000000000000000000000000000000000000000000000000000"}}]}
    """
    for one, pointer, name, revision, rivals in _answered(case):
        if not rivals:
            yield told(pointer, documents=_named(one), id=name, revision=revision)


@rule(
    "answers-another-version",
    Severity.STOP,
    title="A document answers another version of the revision at hand.",
    says="{documents:list} answers revision {revision} of {id} by its number, but not the document at hand: the digest"
    " is another.",
    do="Find the document that was answered. It is not held against the one at hand.",
    change="The digest of the document at hand would change it.",
)
def answers_another_version(case: Conversation) -> Iterator[Told]:
    """The digest that a document answers is that of the revision at hand.

    Number and id alike, the content may differ: a setup would be judged by an order that nobody sent.

    Evidence: computed: SHA-256 of the canonical form by RFC 8785.

    Passes: {"case": [{"revision": 1}, {"setup": {}}]}
    Fails: {"case": [{"revision": 1}, {"setup": {}, "answers": {"id": "HR-2031", "revision": 1, "sha256":
             "0000000000000000000000000000000000000000000000000000000000000000"}}]}
    """
    for one, pointer, name, revision, rivals in _answered(case):
        named = one.answers[0] if pointer == "/answers" else one.answers[-1]
        if rivals and named.sha256 not in {rival.identity.digest for rival in rivals}:
            yield told(pointer, documents=_named(one), id=name, revision=revision)


def _answered(case: Conversation) -> Iterator[tuple[Held, str, str, int, list[Held]]]:
    """Each answer: who gives it and where, to what, and the documents of that id and revision at hand."""
    for one in case.held:
        for number, answers in enumerate(one.answers):
            kind = "setup" if len(one.answers) > 1 and number == 0 else "prescription"
            rivals = [
                other
                for other in case.held
                if (_kind(other), other.identity.id, other.identity.revision) == (kind, answers.id, answers.revision)
            ]
            yield one, "/prescription" if number else "/answers", answers.id, answers.revision, rivals


@rule(
    "issued-before-its-predecessor",
    Severity.CAUTION,
    title="A revision was issued before the one it follows.",
    says="{documents:list} says it was issued before revision {revision}, which it follows.",
    do="Find out which of the two is the later.",
    change="A moment of issue after that of the revision before would change it.",
)
def issued_before_its_predecessor(case: Conversation) -> Iterator[Told]:
    """A later revision was issued no earlier than the one before.

    Of two documents nobody could tell which holds.

    Evidence: none is needed. Moments are compared with their offsets.

    Passes: {"case": [{"revision": 1, "issued": "2026-03-04T09:30:00+01:00"},
                      {"revision": 2, "issued": "2026-03-04T08:30:00Z"}]}
    Fails: {"case": [{"revision": 1, "issued": "2026-03-04T09:30:00+01:00"},
                     {"revision": 2, "issued": "2026-03-04T08:29:59Z"}]}
    """
    for chain in chains(case):
        for one in chain:
            before = [was for was in chain if was.identity.revision == one.identity.revision - 1]
            if any(one.issued < was.issued for was in before):
                yield told("/issued", documents=_named(one), revision=one.identity.revision - 1)


@rule(
    "patients-differ",
    Severity.STOP,
    title="The revisions of one order are for different patients.",
    says="{documents:list} have another reference for the patient than the first revision at hand.",
    do="Find out whose orders these are before anything is made.",
    change="One reference in every revision would change it.",
)
def patients_differ(case: Conversation) -> Iterator[Told]:
    """Every prescription of a case has the same reference for the patient.

    Teeth would be moved by somebody else's order.

    Evidence: none is needed. The references are not repeated here.

    Passes: {"case": [{"revision": 1}, {"revision": 2}]}
    Fails: {"case": [{"revision": 1}, {"revision": 2, "patient": {"reference": "P-0002"}}]}
    """
    orders = [(one, one.document) for one in case.held if isinstance(one.document, Prescription)]
    other = [one for one, order in orders if order.patient.reference != orders[0][1].patient.reference]
    if other:
        yield told("/patient/reference", documents=_named(*other))


RULES = (
    *(two_documents_of_one_revision, patients_differ, answers_another_version, revision_not_at_hand),
    *(replaces_not_at_hand, answered_not_at_hand, issued_before_its_predecessor),
)
