"""What speaks against a bed is found, and nothing else."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.part import Face, Hold, Hole, Part, Place, Screw
from model.parts.pieces import Pieces
from model.solids.exact import exact_overlaps
from model.solids.proof import (
    Proof,
    joints_meet,
    overlaps,
    prove,
    reaches_floor,
    screw_points,
    sweeps,
)
from tests.model.solids.small_bed import Parts, changed, cut, part, small_bed, travel


def proof_of(bed: Parts, drawers: int = 2) -> Proof:
    return prove(bed, Pieces.of(bed), travel(drawers))


def block(name: str, at: tuple[float, float, float], size: Any = (100.0, 60.0, 40.0)) -> Part:
    return part(name, size, at=at)


def bed_of(*made: Part) -> Parts:
    return {each.name: (each,) for each in made}


# ---------------------------------------------------------------- the whole bed


@pytest.mark.parametrize("drawers", [1, 2, 5])
def test_a_bed_whose_joints_meet_is_proved(drawers: int) -> None:
    bed = small_bed(drawers)

    proof = proof_of(bed, drawers)

    assert [fault.sentence() for fault in proof.faults] == []
    assert exact_overlaps(bed, Pieces.of(bed)) == ()


def test_every_piece_of_a_bed_that_is_not_held_would_be_afloat() -> None:
    bed = {
        rule: tuple(replace(each, held=()) for each in made) for rule, made in small_bed().items()
    }
    pieces = Pieces.of(bed)

    proof = prove(bed, pieces, {})

    assert len(proof.afloat) == len(pieces)
    assert not proof.holds


def test_a_refusal_names_the_rule_and_both_parts() -> None:
    bed = small_bed()
    low = changed(bed, "slats", at=(-650.0, 80.0, 375.0))

    field, sentence, involved = proof_of(low).refusal()

    assert field in low and "slats" in involved
    assert "slat" in sentence and "cleat" in sentence.lower()


# ---------------------------------------------------------------- sharing space


def test_pieces_that_touch_share_no_space() -> None:
    bed = bed_of(block("one", (0, 0, 0)), block("two", (100, 0, 0)), block("three", (0, 60, 0)))

    assert overlaps(Pieces.of(bed)) == ()


def test_the_shared_volume_is_told() -> None:
    bed = bed_of(block("one", (0, 0, 0)), block("two", (90, 50, 30)))

    (found,) = overlaps(Pieces.of(bed))

    assert found.volume == pytest.approx(10 * 10 * 10)
    assert found.sentence() == "One of the deck and two of the deck fill the same space."


@settings(max_examples=settings().max_examples * 2 // 5)  # each makes solids
@given(
    st.sampled_from(["slats", "panel", "left.rail", "right.cleats", "left.box_bottoms"]),
    st.tuples(*[st.integers(-300, 300).map(lambda tenths: tenths / 10)] * 3),
)
def test_shifted_parts_overlap_as_manifold3d_says(
    rule: str, shift: tuple[float, float, float]
) -> None:
    """Source: manifold3d, booleans of the same parts."""
    bed = small_bed(2, slats=6)
    at = bed[rule][0].at
    moved = changed(bed, rule, at=(at[0] + shift[0], at[1] + shift[1], at[2] + shift[2]))
    pieces = Pieces.of(moved)

    found = {(each.one, each.other): each.volume for each in overlaps(pieces)}

    exact = {(each.one, each.other): each.volume for each in exact_overlaps(moved, pieces)}
    wooden = {pair for pair in exact if not any(pieces.form(k).is_round for k in pair)}
    assert wooden == {pair for pair in found if not any(pieces.form(k).is_round for k in pair)}
    for pair in wooden:
        # The proof leaves holes out, so that it sees a little more wood than there is.
        assert found[pair] == pytest.approx(exact[pair], rel=0.05, abs=60 * 8 * 8)


# ---------------------------------------------------------------- round bars

BAR = part("bolt", (80.0, 10.0, 10.0), at=(-20.0, 25.0, 15.0), is_round=True)


def drilled(diameter: float = 10.0, depth: float = 60.0, y: float = 30.0, z: float = 20.0) -> Part:
    hole = Hole("bolt", Face.NEAR, (0.0, y, z), (1.0, 0.0, 0.0), diameter, depth)
    return replace(block("rail", (0, 0, 0)), holes=(hole,))


@pytest.mark.parametrize(
    ("rail", "fits"),
    [
        (drilled(), True),
        (drilled(diameter=12.0, depth=100.0), True),
        (drilled(diameter=9.5), False),
        (drilled(depth=59.0), False),
        (drilled(y=30.5), False),
        (drilled(z=19.0), False),
        (block("rail", (0, 0, 0)), False),
    ],
)
def test_a_bar_goes_through_wood_only_where_it_is_drilled(rail: Part, fits: bool) -> None:
    bed = bed_of(rail, BAR)
    pieces = Pieces.of(bed)

    assert (overlaps(pieces) == ()) == fits
    assert (exact_overlaps(bed, pieces) == ()) == fits  # source: manifold3d


def test_a_bar_in_a_hole_too_short_takes_the_rest_of_its_round() -> None:
    (found,) = overlaps(Pieces.of(bed_of(drilled(depth=45.0), BAR)))

    assert found.volume == pytest.approx(math.pi * 25 * 15)


def test_a_bar_is_round_where_its_box_has_corners() -> None:
    """Its box reaches 1 mm into the rail's corner, its round does not."""
    near_corner = replace(BAR, at=(-20.0, -9.0, -9.0))

    assert overlaps(Pieces.of(bed_of(block("rail", (0, 0, 0)), near_corner))) == ()


def test_two_drills_that_meet_make_one_hole() -> None:
    first = drilled(depth=30.0)
    second = Hole("bolt", Face.FAR, (100.0, 30.0, 20.0), (-1.0, 0.0, 0.0), 10.0, 70.0)
    both = replace(first, holes=(*first.holes, second))

    assert overlaps(Pieces.of(bed_of(both, BAR))) == ()
    assert len(overlaps(Pieces.of(bed_of(first, BAR)))) == 1


def test_a_wider_bore_within_a_hole_takes_nothing_from_it() -> None:
    rail = drilled(depth=60.0)
    wider = Hole("counterbore", Face.NEAR, (5.0, 30.0, 20.0), (1.0, 0.0, 0.0), 16.0, 10.0)

    assert overlaps(Pieces.of(bed_of(replace(rail, holes=(*rail.holes, wider)), BAR))) == ()


def test_a_bolt_goes_through_the_cross_hole_of_its_barrel_nut() -> None:
    nut_hole = Hole("thread", Face.LOWER, (15.0, 0.0, 6.0), (0.0, 1.0, 0.0), 10.0, 12.0)
    nut = part(
        "nut",
        (30.0, 12.0, 12.0),
        lies="zuv",
        at=(40.0, 24.0, 5.0),
        is_round=True,
        holes=(nut_hole,),
        held=(Hold("bolt", "thread"),),
    )
    nut_drill = Hole("nut", Face.FACE, (46.0, 30.0, 40.0), (0.0, 0.0, -1.0), 12.0, 40.0)
    rail = drilled()
    rail = replace(rail, holes=(*rail.holes, nut_drill))
    bed = bed_of(rail, BAR, nut)

    assert overlaps(Pieces.of(bed)) == ()
    assert overlaps(Pieces.of(bed_of(nut, rail, BAR))) == ()
    assert joints_meet(bed, Pieces.of(bed)).loose == ()
    assert len(overlaps(Pieces.of(bed_of(rail, BAR, replace(nut, holes=()))))) == 1


def test_a_bar_holds_what_it_sits_in_and_bears_on_with_its_end() -> None:
    bar = replace(BAR, held=(Hold("rail", "bolt"), Hold("plate", "head")))
    plate = block("plate", (-60, 0, 0), (40.0, 60.0, 40.0))
    beside = block("plate", (-20, 35, 0), (20.0, 60.0, 40.0))

    held, aside = (bed_of(drilled(), bar, each) for each in (plate, beside))

    assert joints_meet(held, Pieces.of(held)).loose == ()
    (loose,) = joints_meet(aside, Pieces.of(aside)).loose
    assert loose.by == "plate"


# ---------------------------------------------------------------- joints


@pytest.mark.parametrize(
    ("at", "within", "met"),
    [
        ((100, 0, 0), 0.0, True),  # face to face
        ((100, 59, 0), 0.0, True),  # a strip of 1 mm
        ((100, 60, 0), 0.0, False),  # an edge only
        ((100, 60, 40), 0.0, False),  # a corner only
        ((101, 0, 0), 0.0, False),
        ((101, 0, 0), 1.0, True),
        ((101.5, 0, 0), 1.0, False),
        ((101, 61, 0), 1.0, False),
    ],
)
def test_a_joint_needs_a_face_within_its_clearance(at: Any, within: float, met: bool) -> None:
    other = replace(block("rail", at), held=(Hold("post", "butt", within=within),))
    bed = bed_of(block("post", (0, 0, 0)), other)

    loose = joints_meet(bed, Pieces.of(bed)).loose

    assert (loose == ()) == met


def test_a_loose_joint_tells_how_far_it_is_off() -> None:
    bed = changed(small_bed(), "left.cleats", at=(80.0, 48.0, 340.0))

    loose = [each for each in proof_of(bed).loose if each.by == "rail"]

    assert [each.gap for each in loose] == [pytest.approx(3.0)]
    assert loose[0].sentence() == (
        "Cleat of the left side should be held by rail, but ends 3.00 mm away from it."
    )


def test_a_name_means_the_own_side_first() -> None:
    """A left rail that touches right posts only is loose."""
    bed = small_bed()
    swapped = {**bed, "left.rail": bed["right.rail"], "right.rail": ()}

    loose = joints_meet(swapped, Pieces.of(swapped)).loose

    assert {("posts", "left.rail")} <= {(each.by, each.rules[0]) for each in loose}


def test_either_of_two_names_will_do_and_a_missing_one_is_told() -> None:
    post = block("post", (0, 0, 0))
    other = replace(block("rail", (100, 0, 0)), held=(Hold("beam | post", "butt"),))
    lone = replace(other, held=(Hold("centre_beam", "butt"),))

    either, none = bed_of(post, other), bed_of(post, lone)

    assert joints_meet(either, Pieces.of(either)).loose == ()
    (loose,) = joints_meet(none, Pieces.of(none)).loose
    assert loose.sentence() == (
        "Rail of the deck has nothing to hold it: this bed has no centre beam."
    )


def test_a_piece_does_not_hold_itself_but_may_hold_its_like() -> None:
    held = (Hold("layer", "glued"),)
    alone = replace(block("layer", (0, 0, 0)), held=held)
    pair = replace(alone, places=(Place(), Place(z=40.0)))

    assert len(joints_meet(bed_of(alone), Pieces.of(bed_of(alone))).loose) == 1
    assert joints_meet(bed_of(pair), Pieces.of(bed_of(pair))).loose == ()


def test_a_drawer_is_not_held_by_its_neighbour() -> None:
    """Boxes that stand side by side touch, but each must be held by its own parts."""
    sides = replace(block("side", (0, 0, 0)), places=(Place(drawer=1),), row="left")
    front = replace(
        block("front", (100, 0, 0)),
        places=(Place(drawer=2),),
        row="left",
        held=(Hold("side", "butt"),),
    )
    bed = bed_of(sides, front)
    same = bed_of(sides, replace(front, places=(Place(drawer=1),)))

    assert len(joints_meet(bed, Pieces.of(bed)).loose) == 1
    assert joints_meet(same, Pieces.of(same)).loose == ()


def test_what_stands_on_the_floor_is_at_height_zero() -> None:
    post = replace(block("post", (0, 0, 0)), held=(Hold("floor", "stands"),))
    raised = replace(post, at=(0.0, 0.0, 2.0))
    glides = replace(raised, held=(Hold("floor", "glides", within=2.0),))

    assert joints_meet(bed_of(post), Pieces.of(bed_of(post))).loose == ()
    (loose,) = joints_meet(bed_of(raised), Pieces.of(bed_of(raised))).loose
    assert loose.gap == pytest.approx(2.0)
    assert joints_meet(bed_of(glides), Pieces.of(bed_of(glides))).loose == ()


def test_parts_that_hold_each_other_in_the_air_are_afloat() -> None:
    post = replace(block("post", (0, 0, 0)), held=(Hold("floor", "stands"),))
    rail = replace(block("rail", (100, 0, 0)), held=(Hold("post", "butt"),))
    shelf = replace(block("shelf", (500, 0, 300)), held=(Hold("bracket", "rests"),))
    bracket = replace(block("bracket", (500, 0, 260)), held=(Hold("shelf", "screwed"),))
    bed = bed_of(post, rail, shelf, bracket)
    pieces = Pieces.of(bed)

    afloat = reaches_floor(pieces, joints_meet(bed, pieces))

    assert [each.rules[0] for each in afloat] == ["shelf", "bracket"]


# ---------------------------------------------------------------- drawers


def test_a_drawer_that_slides_along_a_rail_strikes_nothing() -> None:
    assert sweeps(Pieces.of(small_bed()), travel()) == ()


def test_a_drawer_strikes_what_stands_in_its_way() -> None:
    bed = small_bed()
    block_at = part("stop", (50.0, 20.0, 20.0), at=(-900.0, 500.0, 100.0))

    hits = sweeps(Pieces.of({**bed, "stop": (block_at,)}), travel())

    assert {hit.drawer for hit in hits} == {"left-1"}
    first = min(hits, key=lambda hit: hit.after)
    # The front's panel stands at x = -687, behind its frame, and the stop's near face at x = -850.
    assert first.after == pytest.approx(163.0)
    assert "drawer left-1 is pulled" in first.sentence()


def test_drawers_strike_each_other_wherever_they_are() -> None:
    """Two that come out across each other's path collide, though neither starts in the way."""
    one = replace(block("one", (0, 0, 0)), places=(Place(drawer=1),), row="left")
    two = replace(block("two", (-300, 300, 0)), places=(Place(drawer=1),), row="foot")
    ways = {"left-1": ((-1.0, 0.0, 0.0), 400.0), "foot-1": ((0.0, -1.0, 0.0), 400.0)}
    pieces = Pieces.of(bed_of(one, two))

    assert len(sweeps(pieces, ways)) == 1
    assert sweeps(pieces, {**ways, "foot-1": ((0.0, -1.0, 0.0), 100.0)}) == ()
    assert sweeps(pieces, {"left-1": ways["left-1"]}) == ()


def test_a_slanted_travel_is_a_bug_of_ours() -> None:
    with pytest.raises(ValueError, match="one bed axis"):
        sweeps(Pieces.of(small_bed()), {"left-1": ((0.6, 0.8, 0.0), 100.0)})


# ---------------------------------------------------------------- screws


def screwed(**changes: Any) -> Parts:
    """A cleat 25 thick on a rail 25 thick; the rail's back stands at y = 0, the cleat's at 25."""
    screw = Screw("screw", (50.0, 20.0, 25.0), (0.0, 0.0, -1.0), 45.0, 4.0, "rail")
    cleat = part(
        "cleat",
        (200.0, 40.0, 25.0),
        lies="uzv",
        at=(0.0, 25.0, 30.0),
        screws=(screw._replace(**changes),),
    )
    return bed_of(part("rail", (300.0, 100.0, 25.0), lies="uzv"), cleat)


@pytest.mark.parametrize(
    ("changes", "holds", "says"),
    [
        ({}, True, "leaves 5.0 mm"),
        ({"length": 47.0}, True, "leaves 3.0 mm"),
        ({"length": 47.5}, False, "leaves 2.5 mm of wood before its point in rail; 3.0 mm are"),
        ({"length": 52.0}, False, "does not end in rail"),
        ({"length": 24.0}, False, "does not end in rail"),
        ({"into": "post"}, False, "does not end in post"),
    ],
)
def test_a_screw_ends_in_the_wood_it_is_meant_for(changes: Any, holds: bool, says: str) -> None:
    bed = screwed(**changes)

    (found,) = screw_points(bed, Pieces.of(bed))

    assert found.holds == holds
    assert says in found.sentence()


def test_a_screw_tells_its_bite_and_the_wood_before_its_point() -> None:
    bed = screwed()

    (found,) = screw_points(bed, Pieces.of(bed))

    assert found.bite == pytest.approx(20.0)
    assert found.cover == pytest.approx(5.0)


def test_a_screw_that_breaks_out_at_the_side_is_found() -> None:
    """The rail's top edge is cut away until 1 mm above the screw's axis: its shank is 2 mm wide."""
    bed = screwed()
    thin = replace(bed["rail"][0], cuts=(cut((0, 51, 0), (300, 100, 25)),))
    bed = {**bed, "rail": (thin,)}

    (found,) = screw_points(bed, Pieces.of(bed))

    assert not found.has_walls
    assert found.sentence() == "A screw of the cleat comes out at the side of rail."


def test_cover_goes_on_through_wood_that_only_the_proof_cuts_in_boxes() -> None:
    """A groove elsewhere divides the rail in boxes; the wood before the point is still whole."""
    bed = screwed(length=35.0)
    grooved = replace(bed["rail"][0], cuts=(cut((0, 80, 0), (300, 90, 8)),))
    bed = {**bed, "rail": (grooved,)}

    (found,) = screw_points(bed, Pieces.of(bed))

    assert found.cover == pytest.approx(15.0)


def test_a_point_in_a_groove_is_in_no_wood() -> None:
    bed = screwed()
    grooved = replace(bed["rail"][0], cuts=(cut((0, 40, 0), (300, 60, 8)),))
    bed = {**bed, "rail": (grooved,)}

    (found,) = screw_points(bed, Pieces.of(bed))

    assert not found.holds


def test_a_pocket_screw_is_followed_along_its_slant() -> None:
    """15 degrees: 30 mm of screw go 29 mm along and 7.8 mm across."""
    slant = math.radians(15)
    way = (math.cos(slant), 0.0, math.sin(slant))
    screw = Screw("pocket screw", (80.0, 30.0, 5.0), way, 45.0, 4.0, "stile")
    rail = replace(block("rail", (0, 0, 0), (100.0, 60.0, 20.0)), screws=(screw,))
    bed = bed_of(rail, block("stile", (100, 0, 0), (50.0, 60.0, 20.0)))

    (found,) = screw_points(bed, Pieces.of(bed))

    assert found.holds
    assert found.bite == pytest.approx(45.0 - 20.0 / math.cos(slant))
    assert found.cover == pytest.approx((20.0 - 5.0) / math.sin(slant) - 45.0)
