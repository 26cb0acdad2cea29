"""Screws: each in its place is counted once, the rest by practice, and said so."""

from __future__ import annotations

from collections import Counter

import pytest

from model.bed import Bed
from model.cost.joint_screws import reckoned, screw_through
from model.cost.screws import driven, screw_needs
from tests.model.cost.beds import DEMOS, bed_of

QUEEN = "painted_storage_queen"


def needs(bed: Bed) -> dict[str, float]:
    return {need.key: need.quantity for need in screw_needs(bed, driven(bed))}


@pytest.mark.parametrize("name", DEMOS)
def test_every_placed_screw_is_counted_once(name: str) -> None:
    bed = bed_of(name)
    placed = sum(
        len(part.screws) * len(part.places) for made in bed.parts.values() for part in made
    )

    assert sum(each.placed for each in driven(bed)) == placed > 0


def test_screws_of_the_queen_by_hand() -> None:
    """With none to spare: four pairs of 28 in slides with three screws to a member, four pairs of
    hook plates with four screws to a half, two cleats of 15, 14 slats of two.
    """
    found = needs(bed_of(QUEEN, spare_screws=0))

    # Inner members, into sides of 11.9 mm through 1.2 of steel: 1 mm stays before their points
    assert found["screws/6/9.53"] == 8 * 3
    assert found["screws/6/15.88"] == 8 * 3  # outer members
    assert found["screws/10/38.1"] == 4 * 2 * 4
    assert found["screws/8/50.8"] == 2 * 15  # in the 13 gaps between slats, and at either end
    assert found["screws/8/57.15"] == 14 * 2
    assert found["screws/pull/8_32_1_1_4"] == 8 * 2


def test_some_are_bought_to_spare_but_no_pull_screws() -> None:
    found = needs(bed_of(QUEEN, spare_screws=25))

    assert found["screws/8/50.8"] == 38  # 37.5
    assert found["screws/pull/8_32_1_1_4"] == 16


def test_boxes_hold_a_hundred_or_fifty_of_the_long_ones() -> None:
    bed = bed_of(QUEEN)
    packs = {need.key: need.pack for need in screw_needs(bed, driven(bed))}

    assert (packs["screws/8/50.8"], packs["screws/8/57.15"]) == (100, 50)


def test_screwed_joints_without_placed_screws_are_reckoned_once_a_pair() -> None:
    """The queen's beam lies on four packers: beam and packer name each other, and are screwed once.
    Packers and legs have screws of their own into the bearers.
    """
    bed = bed_of(QUEEN)
    marks = Counter({mark.name: mark.quantity for mark in bed.marks})

    found = list(reckoned(bed))

    assert len(found) == marks["beam packer"] == 4
    assert not [each for each in found if {"beam packer", "bearer leg"} & set(each.through)]
    assert {each.kind for each in found} == {"wood screw"}
    notes = [need.note for need in screw_needs(bed, driven(bed))]
    assert sum("common practice, no source" in note for note in notes) == 1


def test_no_reckoned_screw_is_longer_than_those_that_slant() -> None:
    found = [each for name in DEMOS for each in reckoned(bed_of(name))]

    assert found
    for each in found:
        assert each.length <= 63.5
        assert each.reckoned >= 1


@pytest.mark.parametrize("held", [12.0, 12.7, 18.0, 19.05, 25.0, 38.1])
@pytest.mark.parametrize("into", [12.0, 18.0, 19.05, 25.0, 38.1, 90.0])
def test_no_reckoned_screw_comes_through(held: float, into: float) -> None:
    """Its point stays 3 mm below the far face: `COVER`, common practice."""
    assert held < screw_through(held, into).length <= held + into - 3.0


@pytest.mark.parametrize(
    ("held", "into", "length"),
    [
        (19.05, 19.05, 31.75),  # 35.1 mm of wood less what stays before the point
        (12.7, 60.0, 38.1),  # three times 1/2 in
        (19.05, 100.0, 57.15),  # three times 3/4 in
        (64.0, 64.0, 63.5),  # too thick to be screwed through: slanting
    ],
)
def test_a_screw_is_as_long_as_both_pieces_allow(held: float, into: float, length: float) -> None:
    assert screw_through(held, into).length == length


def test_battens_take_the_pocket_screw_of_their_thickness() -> None:
    """Six battens of 1 in, screwed at both ends by two pocket screws of 1 1/2 in."""
    pockets = [each for each in reckoned(bed_of("split_king_foot_drawers"))
               if each.kind == "pocket screw"]  # fmt: skip

    assert sum(each.reckoned for each in pockets) == 6 * 2 * 2
    assert {each.length for each in pockets} == {38.1}


def test_bottoms_are_screwed_only_under_a_cut_down_back() -> None:
    grooved = len(list(reckoned(bed_of(QUEEN))))
    under = list(reckoned(bed_of(QUEEN, bottom_fit="under back")))

    assert len(under) == grooved + 4  # a back each


def test_the_buying_list_says_what_each_size_of_screw_goes_through() -> None:
    bed = bed_of(QUEEN)
    notes = {need.key: need.note for need in screw_needs(bed, driven(bed))}

    assert all(": through " in note for key, note in notes.items())
    assert notes["screws/8/50.8"].endswith(": through cleat")
    assert notes["screws/8/57.15"].endswith(": through slat")
