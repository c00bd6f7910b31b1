"""Enamel reduction, when and how told: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must
from tests.validator.wellposed.rules.charts import Case, pointers, table
from tests.validator.wellposed.rules.charts import found as findings_of

from wellposed.rules import enamel_told, enamel_when

RULES = (*enamel_when.RULES, *enamel_told.RULES)
CARIES, SENSITIVE = "reduction-with-caries", "reduction-with-hypersensitivity"
REACH, AGAIN = "reduction-before-reach", "reduction-repeated"
WORDS, SHORT = "reduction-told-per-surface", "reduction-falls-short"
FIRST = ("/allow/0",)
FRONT = ["43", "42", "41", "31", "32", "33"]


def reduced(*contacts, each=0.3, **said):
    """One allowance of enamel reduction at named contacts."""
    return allowed("a1", "enamel-reduction", contacts=list(contacts), per_contact=each, unit="mm", **said)


def stated(condition, teeth=None, **members):
    """A condition beside a reduction at 41-31."""
    one = {"condition": condition, "teeth": teeth} if teeth else {"condition": condition}
    return {"conditions": [one], "allow": [reduced("41-31")], **members}


def overlapped(amount, *order, at_least=0.2):
    """Crowding at 42-41, the front to be aligned, and reduction there, with an order of the two."""
    said = {"at_least": at_least} if at_least else {}
    staging = {
        "id": "s1",
        "strength": "must",
        "order": [dict(zip(("first", "relation", "then"), order, strict=False)) | {"id": "o1"}],
    }
    return {
        "findings": [found("f1", "lower-crowding", amount, contacts=["42-41"])],
        "goals": [must("g1", align=FRONT)],
        "allow": [reduced("42-41", **said)],
        **({"staging": staging} if order else {}),
    }


def out_of_line(amount):
    """All six lower front teeth measured, 41 so far behind the others."""
    measured = {"displacement": dict.fromkeys(FRONT, 0) | {"41": -amount}, "rotation": dict.fromkeys(FRONT, 0)}
    measured["tooth-width"] = {"43": 7, "42": 5.5, "41": 5, "31": 5, "32": 5.5, "33": 7}
    units = {"rotation": "deg"}
    return {
        "findings": [
            {"id": f"f{number}", "tooth_measure": name, "values": values, "unit": units.get(name, "mm")}
            for number, (name, values) in enumerate(measured.items())
        ],
        "goals": [must("g1", align=FRONT)],
        "allow": [reduced("41-31", at_least=0.2)],
    }


def again(now, then, *contacts, crowding=(0.5, 2), arch="lower"):
    """A second revision, its crowding and that of the first, and what each allowed at 41-31."""
    measured = [found("f1", f"{arch}-crowding", amount) for amount in crowding]
    first = {"findings": measured[1:], "allow": [reduced(*(contacts or ["41-31"]), each=then)]}
    second = {"findings": measured[:1], "allow": [reduced("41-31", each=now)]}
    return {"revision": 2, "replaces": "ab" * 32, **second, "earlier": [first]}


def third(*allowed_then):
    """A third revision with 0.2 mm at 41-31, after two that each began with another crowding."""
    earlier = [
        {
            "revision": number + 1,
            **({"replaces": "ab" * 32} if number else {}),
            "findings": [found("f1", "lower-crowding", 3 - number)],
            "allow": [reduced("41-31", each=each)],
        }
        for number, each in enumerate(allowed_then)
    ]
    now = {"findings": [found("f1", "lower-crowding", 0.5)], "allow": [reduced("41-31", each=0.2)]}
    return {"revision": 3, "replaces": "ab" * 32, **now, "earlier": earlier}


def noted(text):
    """A note beside a reduction."""
    return {"allow": [reduced("41-31")], "notes": [{"text": text}]}


def enamel_alone(need, taken, arch="lower", *more, **said):
    """Crowding of an arch and enamel in all of it, with other allowances."""
    whole = allowed("a1", "enamel-reduction", arch=arch, in_all=taken, unit="mm", **said)
    return {"findings": [found("f1", f"{arch}-crowding", need)], "allow": [whole, *more]}


CASES = (
    Case(CARIES, "in the whole mouth", stated("active-caries"), FIRST),
    Case(CARIES, "at one of the teeth", stated("active-caries", ["41"]), FIRST),
    Case(CARIES, "at other teeth", stated("active-caries", ["46"])),
    Case(CARIES, "another condition", stated("dry-mouth")),
    Case(CARIES, "no reduction", stated("active-caries", allow=None)),
    Case(SENSITIVE, "in the whole mouth", stated("hypersensitive-enamel"), FIRST),
    Case(SENSITIVE, "at one of the teeth", stated("hypersensitive-enamel", ["31"]), FIRST),
    Case(SENSITIVE, "at other teeth", stated("hypersensitive-enamel", ["16"])),
    # 2 mm of overlap or displacement: common practice, no source.
    Case(REACH, "an overlap at the limit", overlapped(2)),
    Case(REACH, "an overlap above it", overlapped(2.01), FIRST),
    Case(REACH, "the same, only allowed", overlapped(3, at_least=0)),
    Case(REACH, "alignment begins first", overlapped(3, "g1", "before", "a1")),
    Case(REACH, "reduction begins first", overlapped(3, "a1", "before", "g1", at_least=0), FIRST),
    Case(REACH, "both together", overlapped(3, "a1", "together-with", "g1")),
    Case(REACH, "a tooth behind the line, at the limit", out_of_line(2)),
    Case(REACH, "a tooth behind the line, above it", out_of_line(2.01), FIRST),
    # Hudson 1956: 0.2 a surface, 0.4 at a contact of lower incisors; here 0.2 + 0.2 and 0.2 + 0.21.
    Case(AGAIN, "both courses at the advice", again(0.2, 0.2)),
    Case(AGAIN, "both courses above it", again(0.2, 0.21), FIRST),
    Case(AGAIN, "the same crowding, so the same course", again(0.3, 0.3, crowding=(2, 2))),
    Case(AGAIN, "another contact then", again(0.3, 0.3, "42-41")),
    Case(AGAIN, "another arch measured anew", again(0.3, 0.3, arch="upper")),
    Case(AGAIN, "two courses before", third(0.1, 0.1)),
    Case(AGAIN, "two courses before, more", third(0.1, 0.2), FIRST),
    Case(WORDS, "by the surface", noted("Strip 0.2 mm per surface."), ("/notes/0/text",)),
    Case(WORDS, "by the side", noted("IPR 0.1 on each side, polished"), ("/notes/0/text",)),
    Case(WORDS, "by the contact", noted("IPR 0.2 mm per contact")),
    Case(WORDS, "sides of the mouth", noted("Elastics on each side at night.")),
    Case(WORDS, "no reduction allowed", {"notes": [{"text": "Never strip, on either or each side."}]}),
    # De Felice et al. 2020: 37 percent done in the lower arch, 45 in the upper. By hand: 3.17 x 0.63 = 1.997,
    # 3.18 x 0.63 = 2.003; 3.63 x 0.55 = 1.997, 3.64 x 0.55 = 2.002.
    Case(SHORT, "lower, just below", enamel_alone(3.17, 3.17)),
    Case(SHORT, "lower, just above", enamel_alone(3.18, 3.18), FIRST),
    Case(SHORT, "upper, just below", enamel_alone(3.63, 3.63, "upper")),
    Case(SHORT, "upper, just above", enamel_alone(3.64, 3.64, "upper"), FIRST),
    # By hand: what is lacking at the limit, 2.74 - 2 x 0.37 = 2.
    Case(SHORT, "at 2 mm lacking", enamel_alone(2.74, 2)),
    Case(
        SHORT,
        "another means",
        enamel_alone(4, 4, "lower", allowed("a2", "incisor-advance", arch="lower", up_to=1, unit="mm")),
    ),
    Case(SHORT, "ordered, of which another rule speaks", enamel_alone(4, 4, at_least=3)),
    Case(
        SHORT, "crowding not stated", {"allow": [allowed("a1", "enamel-reduction", arch="lower", in_all=4, unit="mm")]}
    ),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


def test_words_of_a_note_are_not_repeated():
    (told,) = findings_of(Case(WORDS, "", noted("Strip 0.2 per surface, Mrs Zzyzx")), RULES)
    assert "Zzyzx" not in repr(told)
