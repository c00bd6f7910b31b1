"""Attachments missing or misplaced, and movements seldom reached: below, at and above."""

import pytest
from tests.validator.wellposed.consistency.ordinary import UPPER, must, present
from tests.validator.wellposed.review.rules.held import Case, found, moved, pointers, stage, table

LATER = "attachment-planned-after-movement"
BARE, DOUBTFUL, NONE = (
    *("planned-movement-without-hold", "attachment-planned-on-doubtful-surface", "attachment-planned-where-none-holds"),
)
SELDOM, PARTLY = "planned-movement-seldom-reached", "planned-movement-partly-reached"
HERE, BOTH = ("/attachments/0",), ("/movements/0",)


def at(tooth):
    return (f"/movements/0/values/{tooth}",)


def bare(*carriers, **values):
    """Movements, and attachments on some other teeth."""
    return {"movements": moved(**values), "attachments": on(*(carriers or ("17",)))["attachments"]}


def on(*teeth, **said):
    """Attachments on these teeth."""
    return {"attachments": [{"tooth": tooth, **said} for tooth in teeth]}


def order(*particulars):
    """A prescription with these states of teeth."""
    return {"prescription": {"teeth": present(*particulars)}}


def late(gone, first, **said):
    """13 extruded so far by aligner 10 and 2 mm by aligner 20, and an attachment from some aligner on."""
    path = [stage(10, "upper", vertical={"13": gone}), stage(20, "upper", vertical={"13": 2})]
    return {"movements": moved(vertical={"13": 2}), "stages": path, **on("13", from_aligner=first), **said}


FROM = ("/attachments/0/from_aligner",)
REFUSED = {"prescription": {"attachments": [{"id": "t1", "must_not": ["13"]}]}}
ASKED = {"prescription": {"attachments": [{"id": "t1", "must": ["15"]}]}}
ADULT = {"prescription": {"patient": {"reference": "P-1", "growth": "complete"}}}
BUTTON = {"prescription": {"appliance": [{"id": "b1", "part": "button-opening", "teeth": ["13"]}]}}
MORE = {"prescription": {"movements": [must("m1", teeth=["13"], motion="mesiolingual-rotation", at_least=20, unit="deg",
        overcorrection={"value": 2, "unit": "deg"})]}}  # fmt: skip
CASES = (
    # Texts: canines and premolars from 10 deg, extrusion hard from 0.5 mm, crown and root from 1 mm, roots from 5 deg.
    Case(BARE, "a canine, below", bare(rotation={"13": 9.99})),
    Case(BARE, "a canine, at it", bare(rotation={"13": -10})),
    Case(BARE, "a canine, above", bare(rotation={"13": -10.01}), at("13")),
    Case(BARE, "a canine that carries one", bare("13", rotation={"13": 20})),
    Case(BARE, "an incisor turns without", bare(rotation={"11": 20})),
    Case(BARE, "extrusion at it", bare(vertical={"11": 0.5})),
    Case(BARE, "extrusion above", bare(vertical={"11": 0.51}), at("11")),
    Case(BARE, "intrusion", bare(vertical={"11": -2})),
    Case(BARE, "crown and root, at it", bare(along={"16": -1})),
    Case(BARE, "crown and root, above", bare(along={"16": -1.01}), at("16")),
    Case(BARE, "the crown alone", bare(along={"16": -2}, tip={"16": -4})),
    Case(BARE, "root torque at it", bare(torque={"11": 5})),
    Case(BARE, "root torque above", bare(torque={"11": -5.01}), at("11")),
    Case(BARE, "torque that goes with the crown", bare(out={"11": 2.5}, torque={"11": 6})),
    Case(BARE, "a root upright, above", bare(tip={"13": 5.01}), at("13")),
    Case(BARE, "attachments not stated", {"movements": moved(rotation={"13": 20})}),
    Case(BARE, "no attachment at all", {"movements": moved(rotation={"13": 20}), "attachments": []}, at("13")),
    Case(BARE, "refused by the prescription", {**bare(rotation={"13": 20}), **REFUSED}),
    Case(BARE, "a button", {**bare(rotation={"13": 20}), **BUTTON}),
    Case(BARE, "two kinds are two findings", bare(rotation={"13": 20}, vertical={"11": 1}),
         (*at("13"), "/movements/1/values/11")),
    Case(BARE, "two teeth of a kind are one", bare(rotation=(20, "13", "23")), BOTH),
    # Extrusion asks for one from 0.5 mm on, texts.
    Case(LATER, "0.5 mm before it", late(0.5, 11)),
    Case(LATER, "more before it", late(0.51, 11), FROM),
    Case(LATER, "from the aligner on after which so much is told", late(0.51, 10)),
    Case(LATER, "long after", late(2, 20), FROM),
    Case(LATER, "no time stated", late(2, 20, **on("13"))),
    Case(LATER, "one of two in time", late(2, 20, attachments=[{"tooth": "13", "from_aligner": 20},
         {"tooth": "13", "from_aligner": 2}])),
    Case(LATER, "no path told", {"movements": moved(vertical={"13": 2}), **on("13", from_aligner=20)}),
    Case(LATER, "a movement that needs none", {"movements": moved(rotation={"11": 20}),
         "stages": [stage(20, "upper", rotation={"11": 20})], **on("11", from_aligner=25)}),
    Case(LATER, "a button", {**late(2, 20), **BUTTON}),
    Case(LATER, "two teeth of a kind are one", {"movements": moved(vertical=(2, "13", "23")), "stages": [
         stage(20, "upper", vertical=(2, "13", "23"))], **on("13", "23", from_aligner=21)}, FROM),
    Case(DOUBTFUL, "enamel", on("15")),
    Case(DOUBTFUL, "a crown", {**on("15"), **order(("15", "crown"))}, HERE),
    Case(DOUBTFUL, "a crown the prescription names", {**on("15"), "prescription": {**ASKED["prescription"],
         "teeth": present(("15", "crown"))}}),
    Case(DOUBTFUL, "erupting", {**on("16", "15"), **order(("15", "partly-erupted"))}, ("/attachments/1",)),
    Case(DOUBTFUL, "a primary molar, to move it", {**on("55", reason="movement"), "prescription": {"teeth": {
         "upper": ["16", "55", "14"], "lower": []}}}, HERE),
    Case(DOUBTFUL, "a primary molar, for retention", {**on("55", reason="retention"), "prescription": {"teeth": {
         "upper": ["16", "55", "14"], "lower": []}}}),
    Case(NONE, "a tooth that is there", on("17")),
    Case(NONE, "one that is not", on("17", "18"), ("/attachments/1",)),
    Case(NONE, "not erupted", {**on("18"), "prescription": {
         "teeth": present(("18", "unerupted"), upper=["18", *UPPER])}}, HERE),
    Case(NONE, "an implant", {**on("15"), **order(("15", "implant"))}, HERE),
    Case(NONE, "a pontic, for retention", {**on("15", reason="retention"), **order(("15", "pontic"))}),
    Case(NONE, "taken out by the setup itself", {**on("18"), "extractions": ["18"]}),
    # The same amounts; what was reached is told with its source in the norms.
    Case(SELDOM, "extrusion at it", {"movements": moved(vertical={"11": 0.5})}),
    Case(SELDOM, "extrusion above", {"movements": moved(vertical={"11": 0.51})}, at("11")),
    Case(SELDOM, "intrusion", {"movements": moved(vertical={"11": -0.51})}),
    Case(SELDOM, "a canine at it", {"movements": moved(rotation={"33": 10})}),
    Case(SELDOM, "a canine above", {"movements": moved(rotation={"33": -10.01})}, at("33")),
    Case(SELDOM, "a premolar above", {"movements": moved(rotation={"35": 10.01})}, at("35")),
    Case(SELDOM, "root torque above", {"movements": moved(torque={"11": 5.01})}, at("11")),
    Case(SELDOM, "tipping of the crown", {"movements": moved(out={"11": 2.5}, torque={"11": 5.01})}),
    Case(SELDOM, "an attachment", {"movements": moved(rotation={"13": 20}), **on("13")}),
    Case(SELDOM, "none, told elsewhere", bare(rotation={"13": 20})),
    Case(SELDOM, "refused by the prescription", {**bare(rotation={"13": 20}), **REFUSED}, at("13")),
    Case(SELDOM, "an overcorrection ordered", {"movements": moved(rotation={"13": 20}), **MORE}),
    Case(SELDOM, "two canines of an arch are asked about once", {"movements": moved(rotation=(20, "13", "23"))}, BOTH),
    Case(PARTLY, "a lower incisor at it", {"movements": moved(rotation={"31": 15})}),
    Case(PARTLY, "a lower incisor above", {"movements": moved(rotation={"31": 15.01})}, at("31")),
    Case(PARTLY, "an upper incisor", {"movements": moved(rotation={"11": 20})}),
    Case(PARTLY, "widening at it", {"movements": moved(out=(2, "16", "26")), **ADULT}),
    Case(PARTLY, "widening above", {"movements": moved(out=(2.01, "16", "26")), **ADULT}, BOTH),
    Case(PARTLY, "widening with root torque", {"movements": moved(out={"16": 2.01}, torque={"16": -3}), **ADULT}),
    Case(PARTLY, "widening, growth not stated", {"movements": moved(out=(2.01, "16", "26"))}),
    Case(PARTLY, "lower molars back, at it", {"movements": moved(along={"36": -1})}),
    Case(PARTLY, "lower molars back, above", {"movements": moved(along={"36": -1.01})}, at("36")),
    Case(PARTLY, "lower molars back so far that it is asked", {"movements": moved(along={"36": -2.01})}),
    Case(PARTLY, "lower molars forward", {"movements": moved(along={"36": 1.5})}),
    # Rossini et al. 2015: 0.72 mm.
    Case(PARTLY, "intrusion at it", {"movements": moved(vertical={"31": -0.72})}),
    Case(PARTLY, "intrusion above", {"movements": moved(vertical={"31": -0.73})}, at("31")),
    Case(PARTLY, "intrusion so far that it is asked", {"movements": moved(vertical={"11": -1.89})}),
    Case(PARTLY, "an attachment", {"movements": moved(rotation={"31": 20}), **on("31")}),
)  # fmt: skip


@pytest.mark.parametrize("case", **table(*CASES))
def test_it_speaks_where_it_should_and_nowhere_else(case):
    assert pointers(case) == case.pointers


@pytest.mark.parametrize(
    "tooth, amount, reached",
    # Koletsi et al. 2021, Lombardo et al. 2017, Blouza et al. 2025, Rossini et al. 2015
    [
        ("13", {"rotation": 20}, "47.9 %"),
        ("33", {"rotation": 20}, "54.2 %"),
        ("14", {"rotation": 20}, "37.0 % to 60.0 %"),
        ("11", {"vertical": 1}, "30.0 %"),
        ("11", {"torque": 8}, "72.9 %"),
    ],
)
def test_what_was_reached_is_told_as_published(tooth, amount, reached):
    values = {name: {tooth: value} for name, value in amount.items()}
    (told,) = found(Case(SELDOM, "", {"movements": moved(**values)}))
    assert told.facts["reached"] == reached


def test_teeth_that_go_both_ways_are_told_so():
    (told,) = found(Case(BARE, "", bare(along={"16": -2, "26": 2})))
    assert (told.facts["motion"], told.facts["teeth"]) == (["distal", "mesial"], ["16", "26"])
