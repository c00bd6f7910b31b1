"""Whether a setup answers this prescription, takes out the right teeth, and leaves room as it was."""

import pytest
from tests.validator.wellposed.review.rules.held import Case, moved, pointers, reduced, table

ROOM = {
    "findings": [
        {"id": "f1", "measure": "upper-crowding", "value": 0, "unit": "mm"},
        {"id": "f2", "measure": "lower-crowding", "value": 1, "unit": "mm", "contacts": ["41-31"]},
    ]
}
TAKEN = {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}]}
STILL = {"unlisted": "unmoved", "reductions": [], "prescription": ROOM}


def answers(name="HR-2031", revision=1, sha256="0" * 64):
    return {"answers": {"id": name, "revision": revision, "sha256": sha256}}


def slid(**along):
    """Teeth slid, all else still."""
    return STILL | {"movements": moved(along={tooth.removeprefix("t"): mm for tooth, mm in along.items()})}


def spread(each):
    """Both sides slid so that each upper contact but that of the centrals opens so far, or closes."""
    return slid(**{f"t{side}{n}": round(-each * (n - 1), 2) for side in (1, 2) for n in range(2, 8)})


ALIGNED = ROOM | {"goals": [{"id": "g1", "strength": "must", "align": ["41", "31"]}]}
CLOSED = ROOM | {"goals": [{"id": "g1", "strength": "must", "close_arch": "upper"}]}
LEFT = ROOM | {"goals": [{"id": "g1", "strength": "must", "leave": "14-13", "amount": 0.9, "unit": "mm"}]}
CASES = (
    Case("setup-answers-another", "The same id and revision.", {}),
    Case("setup-answers-another", "Another revision.", answers(revision=2), ("/answers",)),
    Case("setup-answers-another", "Another id.", answers("HR-2032"), ("/answers",)),
    Case("setup-answers-another", "Another content is another rule's.", answers()),
    Case("setup-answers-other-content", "The same digest.", {}),
    Case("setup-answers-other-content", "Another digest.", answers(), ("/answers/sha256",)),
    Case("setup-answers-other-content", "Of another revision it is no wonder.", answers(revision=2)),
    Case("extraction-not-ordered", "None is taken out.", {"extractions": []}),
    Case("extraction-not-ordered", "One that is allowed.", {"extractions": ["14"], "prescription": TAKEN}),
    Case("extraction-not-ordered", "Its neighbour.", {"extractions": ["15"], "prescription": TAKEN}, ("/extractions",)),
    Case("extraction-not-used", "It is taken out.", {"extractions": ["14"], "prescription": TAKEN}),
    Case("extraction-not-used", "It stays.", {"extractions": [], "prescription": TAKEN}, ("/extractions",)),
    Case("extraction-not-used", "The setup does not say.", {"prescription": TAKEN}, ("",)),
    Case("setup-leaves-space", "0.4 mm is no space.", slid(t13=-0.4, t14=-0.4)),
    Case("setup-leaves-space", "0.5 mm is the most.", slid(t13=-0.5, t14=-0.5)),
    Case("setup-leaves-space", "0.6 mm is.", slid(t13=-0.6, t14=-0.6), ("/movements",)),
    Case("setup-leaves-space", "A little at each of twelve contacts adds up: 0.48 mm.", spread(0.04)),
    Case("setup-leaves-space", "A little at each of twelve contacts adds up: 0.6 mm.", spread(0.05), ("/movements",)),
    Case("setup-leaves-space", "A goal closes the arch.", slid(t13=-0.9) | {"prescription": CLOSED}),
    Case("setup-leaves-space", "A goal leaves it.", slid(t13=0.9) | {"prescription": LEFT}),
    Case("teeth-pushed-together", "0.1 mm is within the tolerance.", slid(t14=0.1)),
    Case("teeth-pushed-together", "0.12 mm is not.", slid(t14=0.12), ("/movements",)),
    Case("teeth-pushed-together", "At twelve contacts what tenths may be off by, 0.48 mm.", spread(-0.04)),
    Case("teeth-pushed-together", "At twelve contacts more than that, 0.6 mm.", spread(-0.05), ("/movements",)),
    Case("teeth-pushed-together", "0.1 mm at two contacts.", slid(t14=0.1, t24=0.1)),
    Case("teeth-pushed-together", "Crowding that was there.", slid(t11=0)),
    Case("teeth-pushed-together", "More of it.", slid(t41=0.5), ("/movements",)),
    Case("teeth-pushed-together", "A goal tells it there.", slid(t41=0.5) | {"prescription": ALIGNED}),
    Case("teeth-pushed-together", "Enamel makes the room.", slid(t14=0.5) | {"reductions": [reduced("14-13", 0.5)]}),
)  # fmt: skip


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_should(case):
    assert pointers(case) == case.pointers
