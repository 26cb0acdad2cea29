"""Pieces stand on the bed where their frames say, and are never mirrored."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import CannotBuild
from model.frame import BED, end_frame_at, side_frame_at
from model.part import Cut, Face, Hole, Part, Place, Screw
from model.parts.pieces import Pieces, as_cut, is_turned_over
from model.parts.wood import wood_boxes
from tests.model.solids.small_bed import cut, part, small_bed

FRAMES = [
    BED,
    side_frame_at(-700.0, 1),
    side_frame_at(700.0, -1),
    end_frame_at(0.0, 1),
    end_frame_at(2000.0, -1),
]
LIES = ["".join(letters) for letters in permutations("uvz")]


@st.composite
def laid_parts(draw: st.DrawFn) -> Part:
    return part(
        "rail",
        (300.0, 80.0, 20.0),
        lies=draw(st.sampled_from(LIES)),
        frame=draw(st.sampled_from(FRAMES)),
        at=(11.0, 23.0, 37.0),
        cuts=(
            cut((20.0, 0.0, 14.0), (60.0, 10.0, 20.0)),
            cut((100.0, 70.0, 0.0), (300.0, 80.0, 5.0)),
        ),
        places=(Place(), Place(u=50.0, v=7.0), Place(z=100.0, drawer=2)),
    )


def corners_of(boxes: Any) -> set[tuple[float, ...]]:
    both = np.sort(np.asarray(boxes), axis=1).reshape(-1, 6)
    return {tuple(row) for row in np.round(both, 6).tolist()}


@given(laid_parts())
def test_boxes_stand_where_the_frame_takes_them(one: Part) -> None:
    """The frame's own matrix is the definition; here it takes the corners one by one."""
    pieces = Pieces.of({"left.rail": (one,)})

    for k, place in enumerate(one.places):
        wanted = []
        for box in wood_boxes(one.size, one.cuts):
            ends = []
            for corner in box:
                in_frame = dict(zip(one.lies, corner, strict=True))
                point = [
                    in_frame[letter] + start + step
                    for letter, start, step in zip("uvz", one.at, place[:3], strict=True)
                ]
                ends.append((one.frame.matrix @ [*point, 1.0])[:3])
            wanted.append(ends)
        rows = slice(pieces.first[k], pieces.first[k + 1])
        found = np.stack([pieces.lo[rows], pieces.hi[rows]], axis=1)
        assert corners_of(found) == corners_of(wanted)


@given(laid_parts())
def test_a_matrix_turns_the_part_as_it_is_cut_onto_its_boxes(one: Part) -> None:
    pieces = Pieces.of({"left.rail": (one,)})
    wood = wood_boxes(one.size, as_cut(one).cuts)

    for k, matrix in enumerate(pieces.matrices):
        rows = slice(pieces.first[k], pieces.first[k + 1])
        placed = wood @ matrix[:3, :3].T + matrix[:3, 3]
        found = np.stack([pieces.lo[rows], pieces.hi[rows]], axis=1)
        assert np.linalg.det(matrix[:3, :3]) == pytest.approx(1.0)
        # Box by box may differ: cutting from the other face can split the wood otherwise.
        assert np.sort(placed, axis=1).min(axis=(0, 1)) == pytest.approx(found.min(axis=(0, 1)))
        assert same_wood(placed, found)


def same_wood(one: Any, other: Any) -> bool:
    """Both fill the same room of the bed with wood, looked at in a grid of 17 points each way."""
    grid, filled = covered(one)
    other_grid, other_filled = covered(other)
    stand_alike = np.allclose(grid, other_grid, rtol=0.0, atol=1e-3)  # matrices turn in floats
    return stand_alike and np.array_equal(filled, other_filled)


def covered(boxes: Any) -> tuple[Any, Any]:
    """Points of each axis, (3, 17), and which of the points of their grid lie in the wood."""
    boxes = np.sort(np.asarray(boxes), axis=1)
    low, high = boxes.min(axis=(0, 1)), boxes.max(axis=(0, 1))
    grid = np.linspace(low + 0.5, high - 0.5, 17, axis=1)
    lows, highs = boxes.transpose(1, 2, 0)[:, :, None]
    within = (grid[:, :, None] > lows) & (grid[:, :, None] < highs)
    return grid, np.einsum("ib, jb, kb -> ijk", *within.astype(int)) > 0


def test_a_part_seen_from_behind_swaps_its_faces() -> None:
    one = part(
        "rail",
        (300.0, 80.0, 20.0),
        lies="uzv",
        frame=BED,
        cuts=(Cut("groove", Face.FACE, (0.0, 10.0, 14.0), (300.0, 16.0, 20.0)),),
        holes=(Hole("pilot", Face.BACK, (50.0, 40.0, 0.0), (0.0, 0.0, 1.0), 3.0, 12.0),),
        screws=(Screw("screw", (50.0, 40.0, 0.0), (0.0, 0.0, 1.0), 30.0, 4.0, "post"),),
    )

    behind = as_cut(one)

    assert is_turned_over(one)
    assert behind.cuts == (Cut("groove", Face.BACK, (0.0, 10.0, 0.0), (300.0, 16.0, 6.0)),)
    assert behind.holes[0].face is Face.FACE
    assert (behind.holes[0].at, behind.holes[0].toward) == ((50.0, 40.0, 20.0), (0.0, 0.0, -1.0))
    assert (behind.screws[0].at, behind.screws[0].toward) == ((50.0, 40.0, 20.0), (0.0, 0.0, -1.0))
    assert as_cut(one) is behind


def test_a_part_that_is_no_mirror_image_is_cut_as_it_is() -> None:
    one = part("slat", (300.0, 80.0, 20.0))

    assert as_cut(one) is one


def test_pieces_come_in_the_order_of_rules_parts_and_places() -> None:
    bed = small_bed(3)

    pieces = Pieces.of(bed)

    counted = [
        (rule, k, place)
        for rule, made in bed.items()
        for k, each in enumerate(made)
        for place in range(len(each.places))
    ]
    found = [
        (pieces.rules[r], bed[pieces.rules[r]].index(pieces.parts[p]), int(place))
        for r, p, place in zip(pieces.rule, pieces.part, pieces.place, strict=True)
    ]
    assert found == counted
    assert (np.diff(pieces.piece) >= 0).all()
    assert pieces.first[-1] == len(pieces.lo)


def test_pieces_know_the_drawer_they_move_with() -> None:
    bed = small_bed(2)
    pieces = Pieces.of(bed)

    of_rule = {
        rule: {pieces.groups[g] for g in pieces.group[pieces.rule == k]}
        for k, rule in enumerate(pieces.rules)
    }

    assert of_rule["left.box_sides"] == {"left-1", "left-2"}
    assert of_rule["right.pulls"] == {"right-1", "right-2"}
    assert of_rule["left.bearers"] == {""}


def test_bounds_hold_all_boxes_of_a_piece() -> None:
    pieces = Pieces.of(small_bed(2))

    lo, hi = pieces.bounds

    assert (lo[pieces.piece] <= pieces.lo).all() and (hi[pieces.piece] >= pieces.hi).all()
    assert len(lo) == len(pieces)


@pytest.mark.parametrize(
    ("owner", "by", "finds"),
    [
        ("left.rail", "posts", ("left.posts",)),
        ("slats", "left_cleats", ("left.cleats",)),
        ("slats", "right.cleats", ("right.cleats",)),
        ("left.rail", "opposite_posts", ("right.posts",)),
        ("left.rail", "panel | slats", ("panel", "slats")),
        ("left.rail", "panel|nothing", ("panel",)),
        ("slats", "posts", ()),
    ],
)
def test_names_are_looked_up_as_a_rules_needs_are(
    owner: str, by: str, finds: tuple[str, ...]
) -> None:
    pieces = Pieces.of(small_bed(1))

    assert tuple(pieces.rules[k] for k in pieces.rules_named(owner, by)) == finds


def test_labels_tell_pieces_apart() -> None:
    pieces = Pieces.of(small_bed(2))

    assert len(set(pieces.labels)) == len(pieces)
    assert "bearer 8 under the bed" in pieces.labels
    assert "box side 2 of drawer left-1" in pieces.labels
    assert "slat 12 of the deck" in pieces.labels


def test_a_part_that_falls_in_two_names_its_rule() -> None:
    broken = part("box side", (300.0, 80.0, 20.0), cuts=(cut((100, 0, 0), (110, 80, 20)),))

    with pytest.raises(CannotBuild, match="box side") as refused:
        Pieces.of({"left.box_sides": (broken,)})

    assert refused.value.field == "left.box_sides"


def test_no_parts_make_no_pieces() -> None:
    pieces = Pieces.of({"left.rail": ()})

    assert len(pieces) == 0
    assert pieces.bounds[0].shape == (0, 3)


def test_a_wrong_direction_is_a_bug_of_ours() -> None:
    with pytest.raises(ValueError, match="once each"):
        Pieces.of({"rail": (replace(part("rail", (1.0, 1.0, 1.0)), lies="uuz"),)})
