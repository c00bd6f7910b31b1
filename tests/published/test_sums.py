"""A sum that closes in a publication closes in the model, within the tolerance the row gives.

The published movements are fed into the model's own rows. What comes out must lie between two bounds, both
written out beside it. Where a value is not published (how a molar's travel divides), the plainest is taken:
the four incisors alike by what a cephalogram
shows of the centrals, molars ``along`` the arch, widths straight sideways.
"""

import pytest
from tests.published.planned import MOST, UPPER, Planned, apart, edges, forward, moved, teeth
from tests.published.rows import ROWS, titled
from tests.published.test_room import ROWS_OF_ROOM

from wellposed import norms

DEPTHS = (-3, 0, 3)
FRONT_UPPER, FRONT_LOWER = teeth("upper", 1, 2), teeth("lower", 1, 2)
FIRST_UPPER, FIRST_LOWER = teeth("upper", 6), teeth("lower", 6)
BACK_UPPER = teeth("upper", 6, 7)
FOUR_PREMOLARS = ("14", "24", "34", "44")

# Rows with nothing to compute, and why. They are tried as prescriptions, in test_treated.py.
NOTHING_TO_COMPUTE = {
    "C29": "the overjet after treatment is not given; growth and four extractions together changed it",
}


def around(what, value, published, tolerance):
    return what, value, published - tolerance, published + tolerance


def within(row):
    return row["tolerance"] if "tolerance" in row else row["band"]["mm"]


def c05(row):
    """The room that retracting the incisors takes, against whole-arch distal movement without growth."""
    change, supply = row["change"], 2 * row["change"]["distal_a_side"]
    least, most = change["retraction"]
    asked = change["overjet_before"] - change["overjet_after_assumed"]
    rate = norms.value("kinematics.out-per-torque")
    yield "edge travel the inclination opens", -change["u1_deg"] * rate, asked, most + within_a_step()
    for offset in DEPTHS:
        taken = Planned(moved("out", FRONT_UPPER, -least), offset=offset).arch_room("upper")
        yield f"room left, depth {offset:+}", supply + taken, *change["left_over"]


def within_a_step():
    return norms.value("kinematics.shortfall")


def c10(row):
    """The lower incisors moved along the arch shift the midline by as much."""
    amount = row["change"]["midline_lower"]
    plan = Planned(moved("along", ["41", "42"], amount), moved("along", ["31", "32"], -amount))
    yield around("lower midline", plan.change("lower-midline"), amount, within(row))


def c19(row):
    """First molar distal and premolar mesial open the sum of both between them."""
    change = row["change"]
    plan = Planned(
        moved("along", ["16", "26"], -change["distal_upper"]),
        moved("along", ["15", "25"], change["premolar_mesial"]),
        taken=("14", "17", "24", "27"),
    )
    for contact in ("16-15", "25-26"):
        yield around(contact, plan.room(contact), change["opened_a_side"], within(row))


def c21(row):
    """Six front teeth straight back in both arches: the room a side, and what must not change."""
    change, tolerance = row["change"], row["tolerance"]
    front = teeth("upper", 1, 2, 3) + teeth("lower", 1, 2, 3)
    plan = Planned(forward(front, -change["retraction"]), taken=FOUR_PREMOLARS)
    for site in ("15-13", "23-25", "45-43", "33-35"):
        yield around(f"room taken at {site}", -plan.room(site), change["retraction"], tolerance)
        yield f"no more than the site has, {site}", -plan.room(site), 0.0, change["premolar"]
    alike = Planned(edges("upper", -change["retraction"]), edges("lower", -change["retraction"]))
    yield around("overjet", alike.change("overjet"), change["overjet"], 1e-6)
    yield around("molar relation", alike.change("molar-relation-left"), change["molar_relation"], 1e-6)


def k01(row):
    """Perimeter to the first molars, from the widths with the edge's advance or with the arch's depth."""
    change = row["change"]
    widths = (
        *(apart(teeth("lower", number), change[f"lower_{number}"]) for number in (3, 4, 5)),
        apart(teeth("lower", 6, 7), change["lower_6"]),
    )
    for advance in ("l1", "depth"):
        plan = Planned(*widths, moved("out", FRONT_LOWER, change[advance]))
        yield around(f"perimeter by {advance}", plan.arch_room("lower", 6), change["perimeter"], row["tolerance"])


def k02(row):
    """The advance explains only a part of the room, and goes with the inclination by tipping."""
    change = row["change"]
    yield "room", Planned(moved("out", FRONT_LOWER, change["l1"])).arch_room("lower"), *change["explained"]
    yield "degrees per mm", change["l1_deg"] / change["l1"], 0.0, norms.value("kinematics.torque-per-advance")


def k03(row):
    """The room that the change of inclination gives, against the crowding relieved."""
    change = row["change"]
    for rate in change["mm_per_deg"]:
        room = Planned(moved("out", FRONT_LOWER, rate * change["l1_deg"])).arch_room("lower")
        yield around(f"room at {rate} mm per degree", room, change["crowding"], row["tolerance"])
        yield "opened by the inclination", rate, 0.0, norms.value("kinematics.out-per-torque")


def k13(row):
    """Overjet from retraction and protrusion; overbite from intrusion, the rest from the inclination."""
    change = row["change"]
    plan = Planned(
        edges("upper", change["u1"]),
        edges("lower", change["l1"]),
        moved("vertical", FRONT_LOWER, change["l1_vertical"]),
    )
    for measure in ("overjet", "overbite"):
        yield around(measure, plan.change(measure), change[measure], row["tolerance"])


def k14a(row):
    """Molars extruded open the bite; the factor of the group lies between the ends of the hinge."""
    change = row["change"]
    plan = Planned(
        moved("vertical", FIRST_UPPER, change["u6_vertical"]), moved("vertical", FIRST_LOWER, change["l6_vertical"])
    )
    yield around("overbite at the least factor", plan.change("overbite"), change["overbite"], row["tolerance"])
    yield "the group's overbite", change["overbite"], plan.change("overbite", MOST), plan.change("overbite")


def k14b(row):
    """Incisors of both arches intruded."""
    change = row["change"]
    plan = Planned(
        moved("vertical", FRONT_UPPER, change["u1_vertical"]), moved("vertical", FRONT_LOWER, change["l1_vertical"])
    )
    yield around("overbite", plan.change("overbite"), change["overbite"], row["tolerance"])


def k16(row):
    """Extrusion in front and intrusion behind close the bite; the retraction's overjet and room."""
    change, tolerance = row["change"], within(row)
    plan = Planned(
        edges("upper", change["u1"]),
        edges("lower", change["l1"]),
        moved("vertical", FRONT_UPPER, change["u1_vertical"]),
        moved("vertical", FRONT_LOWER, change["l1_vertical"]),
        moved("vertical", FIRST_UPPER, change["u6_vertical"]),
        moved("vertical", FIRST_LOWER, change["l6_vertical"]),
    )
    least, most = change["overbite"]
    yield "overbite, least factor", plan.change("overbite"), least - tolerance, most
    yield "overbite, most factor", plan.change("overbite", MOST), least, norms.value("kinematics.hinge.most") + most
    yield around("overjet", plan.change("overjet"), change["overjet"], tolerance)
    for arch in ("upper", "lower"):
        yield f"{arch} room taken", -plan.arch_room(arch), *change[f"{arch}_space"]


def k19(row):
    """Overjet from the upper incisors, molar relation from the upper molars."""
    change = row["change"]
    plan = Planned(edges("upper", change["u1"]), moved("along", BACK_UPPER, -change["u6_distal"]))
    yield around("overjet", plan.change("overjet"), change["overjet"], row["tolerance"])
    for side in ("right", "left"):
        relation = plan.change(f"molar-relation-{side}")
        yield around(f"molar relation {side}", relation, change["molar_relation"], row["tolerance"])


def k20(row):
    """Half a cusp, against the upper molars' distal movement."""
    change = row["change"]
    plan = Planned(
        moved("along", FIRST_UPPER, -change["u6_distal"]), moved("along", teeth("upper", 7), -change["u7_distal"])
    )
    for cusp in change["half_cusp"]:
        for side in ("right", "left"):
            yield around(f"half a cusp, {side}", -plan.change(f"molar-relation-{side}"), cusp, row["tolerance"])


def k23(row):
    """The whole upper arch back: the same at molars and incisors, and no room gained or lost."""
    amount, tolerance = row["change"]["u6_distal"], within(row)
    plan = Planned(moved("along", BACK_UPPER, -amount), edges("upper", -amount))
    for measure in ("molar-relation-right", "molar-relation-left", "overjet"):
        yield around(measure, plan.change(measure), -amount, tolerance)
    yield around("room", Planned(forward(UPPER, -amount)).arch_room("upper"), 0.0, tolerance)


def k29b(row):
    """Six front teeth straight back and molars forward, against the premolar's place."""
    change = row["change"]
    plan = Planned(
        forward(teeth("upper", 1, 2, 3), change["u1"]),
        moved("along", teeth("upper", 5, 6, 7), change["u6_mesial"]),
        moved("vertical", FIRST_UPPER, change["u6_vertical"]),
        taken=("14", "24"),
    )
    for site in ("15-13", "23-25"):
        yield around(f"room taken at {site}", -plan.room(site), change["premolar"], row["tolerance"])
    yield "intruded upper molars close the bite", plan.change("overbite"), 0.1, -change["u6_vertical"] * 2.5


def k33(row):
    """Room from widening, against the crowding relieved."""
    change = row["change"]
    plan = Planned(
        apart(teeth("lower", 3), change["lower_3"]),
        apart(teeth("lower", 4, 5), change["lower_premolars"]),
        apart(teeth("lower", 6, 7), change["lower_6"]),
    )
    yield around("room", plan.arch_room("lower", 6), -change["crowding"], row["tolerance"])


def k38(row):
    """More torque at constant overjet moves the arch behind it back: the edge's travel, at the molars."""
    change = row["change"]
    rate = change["molar_relation"] / change["deg"]
    yield "edge travel per degree", rate, 0.0, norms.value("kinematics.out-per-torque")
    back = -change["molar_relation"]
    plan = Planned(forward([t for t in UPPER if t not in teeth("upper", 1)], back), moved("torque", ["11", "21"], 20))
    yield around("overjet", plan.change("overjet"), 0.0, within(row))
    yield around("molar relation", plan.change("molar-relation-right"), back, within(row))


def k39(row):
    """Tip takes no room in the model; published, too little of it to matter."""
    tipped = Planned(moved("tip", FRONT_UPPER, 10))
    for per_degree in row["change"]["per_deg"]:
        yield around("room of 10 degrees", -tipped.arch_room("upper"), 10 * per_degree, within(row))


def k47(row):
    """Levelling takes no room in the model; measured at the contacts it takes almost none."""
    change = row["change"]
    level = [*teeth("lower", 1, 2), *teeth("lower", 7)]
    plan = Planned(moved("vertical", level, -change["depth"] / 2), moved("vertical", teeth("lower", 4, 5), 2.35))
    yield around("curve of Spee", plan.change("curve-of-spee"), -change["depth"], 1e-6)
    yield around("room taken", -plan.arch_room("lower"), change["by_contacts"], within(row))
    yield "never more than the least published", -plan.arch_room("lower"), -1e-6, change["by_contacts"]


def k48(row):
    """Canines drawn along their own arch form, to make 1 mm of room in front, come apart."""
    change = row["change"]
    spread = change["per_mm_shortage"] * change["widened_sd"] / change["widened"]
    for offset in DEPTHS:
        plan = Planned(moved("along", teeth("lower", 3), -0.5), offset=offset)
        widened = plan.change("lower-inter-canine-width")
        yield around(f"inter-canine width, depth {offset:+}", widened, change["per_mm_shortage"], spread)


SUMS = {
    "C05": c05,
    "C10": c10,
    "C19": c19,
    "C21": c21,
    "K01": k01,
    "K02": k02,
    "K03a": k03,
    "K03b": k03,
    "K13": k13,
    "K14a": k14a,
    "K14b": k14b,
    "K16": k16,
    "K19": k19,
    "K20": k20,
    "K23": k23,
    "K29b": k29b,
    "K33": k33,
    "K38": k38,
    "K39": k39,
    "K47": k47,
    "K48": k48,
}


@pytest.mark.parametrize("row_id", SUMS, ids=titled)
def test_the_sum_closes(row_id):
    found = list(SUMS[row_id](ROWS[row_id]))
    assert found
    assert [line for line in found if not line[2] <= line[1] <= line[3]] == []


def test_every_row_is_used_or_said_to_have_nothing_to_compute():
    assert sorted([*SUMS, *ROWS_OF_ROOM, *NOTHING_TO_COMPUTE]) == sorted(ROWS)


def test_a_movement_left_out_is_noticed():
    """Without the intrusion the overbite of K14b does not close, so its sum could fail."""
    unmoved = Planned().change("overbite")
    assert abs(unmoved - ROWS["K14b"]["change"]["overbite"]) > ROWS["K14b"]["tolerance"]
