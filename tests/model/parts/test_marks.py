"""Pieces that can be turned onto each other share a mark; mirror images do not."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.part import Cut, Face, Hole, Part, Place
from model.parts.marks import Mark, hardware_counts, marks, piece_names, work_digest
from model.parts.pieces import Pieces
from model.parts.wood import wood_boxes
from model.rules import Dim
from tests.model.parts.test_pieces import same_wood
from tests.model.solids.small_bed import Parts, changed, cut, part, small_bed

SIZE = (300.0, 80.0, 20.0)


def marked(*made: Part) -> tuple[Mark, ...]:
    return marks({"rail": made})


def rail(*cuts: Cut, **more: Any) -> Part:
    return part("rail", SIZE, assembly="left side", cuts=cuts, **more)


CORNER = cut((0.0, 0.0, 0.0), (50.0, 20.0, 5.0))


@pytest.mark.parametrize(
    ("low", "high", "turned"),
    [
        ((0, 60, 15), (50, 80, 20), "about the length"),
        ((250, 0, 15), (300, 20, 20), "end for end"),
        ((250, 60, 0), (300, 80, 5), "flat on its face"),
    ],
)
def test_a_rail_turned_over_is_the_same_rail(low: Any, high: Any, turned: str) -> None:
    found = marked(rail(CORNER), rail(cut(low, high)))

    assert [(mark.mark, mark.quantity) for mark in found] == [("S1", 2)], turned


def test_a_digest_of_the_work_is_the_same_for_what_can_be_turned_and_for_nothing_else() -> None:
    corner = work_digest(rail(CORNER))

    assert work_digest(rail(cut((250, 0, 0), (300, 20, 5)))) != corner, "a mirror image"
    assert work_digest(rail(cut((250, 0, 15), (300, 20, 20)))) == corner, "turned end for end"
    assert work_digest(rail(cut((0, 0, 0), (50, 20, 6)))) != corner, "cut deeper"
    assert work_digest(rail()) == ""


@pytest.mark.parametrize(
    ("low", "high"),
    [
        ((250, 0, 0), (300, 20, 5)),
        ((0, 60, 0), (50, 80, 5)),
        ((0, 0, 15), (50, 20, 20)),
        ((250, 60, 15), (300, 80, 20)),
    ],
)
def test_a_mirror_image_is_another_mark_that_names_its_pair(low: Any, high: Any) -> None:
    found = marked(rail(CORNER), rail(cut(low, high)))

    assert [(mark.mark, mark.handed) for mark in found] == [
        ("S1", "mirror image of S2"),
        ("S2", "mirror image of S1"),
    ]


def test_a_square_post_may_be_given_a_quarter_turn() -> None:
    def post(low: Any, high: Any) -> Part:
        return part("post", (600.0, 70.0, 70.0), assembly="headboard", cuts=(cut(low, high),))

    on_face = post((300, 20, 60), (400, 45, 70))
    # A quarter turn about the length brings the face to the upper edge; the slot's sides follow.
    on_edge = post((300, 60, 25), (400, 70, 50))
    mirrored = post((300, 60, 20), (400, 70, 45))

    assert len(marked(on_face, on_edge)) == 1
    assert [mark.handed for mark in marked(on_face, mirrored)] == [
        "mirror image of H2",
        "mirror image of H1",
    ]


def test_a_flat_rail_may_not_be_given_a_quarter_turn() -> None:
    one, other = rail(cut((0, 0, 0), (300, 5, 10))), rail(cut((0, 0, 0), (300, 10, 5)))

    assert len(marked(one, other)) == 2


def test_a_tapered_post_keeps_its_foot_down() -> None:
    post = part("post", (600.0, 70.0, 70.0), assembly="headboard", taper=10.0, taper_length=100.0)
    low = replace(post, cuts=(cut((100, 60, 20), (200, 70, 50)),))
    high = replace(post, cuts=(cut((400, 60, 20), (500, 70, 50)),))

    assert len(marked(low, high)) == 2
    assert len(marked(replace(low, taper=0.0), replace(high, taper=0.0))) == 1


@pytest.mark.parametrize(
    "difference",
    [
        {"name": "long rail"},
        {"material": "oak"},
        {"assembly": "deck"},
        {"length": 300.5},
        {"grain": "width"},
        {"layers": 2, "layer_thickness": 10.0},
        {"holes": (Hole("pilot", Face.FACE, (50.0, 40.0, 20.0), (0.0, 0.0, -1.0), 3.0, 9.0),)},
    ],
)
def test_what_differs_in_the_shop_has_its_own_mark(difference: Any) -> None:
    assert len(marked(rail(CORNER), replace(rail(CORNER), **difference))) == 2


def test_holes_count_as_much_as_cuts() -> None:
    def bored(x: float, y: float) -> Part:
        return rail(holes=(Hole("pilot", Face.FACE, (x, y, 20.0), (0.0, 0.0, -1.0), 3.0, 9.0),))

    assert len(marked(bored(50, 30), bored(250, 50))) == 1  # turned flat on the bench
    assert [mark.handed for mark in marked(bored(50, 30), bored(250, 30))] == [
        "mirror image of S2",
        "mirror image of S1",
    ]


def test_a_cut_that_runs_off_the_part_is_the_cut_it_leaves() -> None:
    over = cut((-5.0, -3.0, -1.0), (50.0, 20.0, 5.0))
    beside = cut((300.0, 0.0, 0.0), (310.0, 20.0, 5.0))

    assert len(marked(rail(CORNER), rail(over, beside))) == 1


@pytest.mark.parametrize("step", range(1, 40, 2))
def test_holes_on_half_a_step_of_the_tape_are_alike_from_both_ends(step: int) -> None:
    """1/64 in halved has seven decimals: a turn must not round it to another place."""
    at = step * 25.4 / 128

    def bored(x: float, y: float) -> Part:
        return rail(holes=(Hole("pilot", Face.FACE, (x, y, 20.0), (0.0, 0.0, -1.0), 3.0, 9.0),))

    # The first is turned: 300 - (300 - at) is not quite at.
    assert len(marked(bored(SIZE[0] - at, SIZE[1] - at), bored(at, at))) == 1


@given(
    st.lists(
        st.tuples(*[st.tuples(st.integers(0, 6), st.integers(1, 3)) for _ in range(3)]), max_size=4
    ),
    st.sampled_from([(1, 1, 1), (1, -1, -1), (-1, 1, -1), (-1, -1, 1)]),
    st.sampled_from(["uvz", "vuz", "zuv"]),
)
def test_all_pieces_of_a_mark_are_one_part_turned_and_moved(
    steps: Any, signs: tuple[int, int, int], lies: str
) -> None:
    """Whatever the turn, the matrices bring the one common part onto the wood of every piece."""
    grid = (300 / 9, 80 / 9, 1.0)
    first = [
        [[a * g for (a, _), g in zip(each, grid, strict=True)] for each in steps],
        [[(a + b) * g for (a, b), g in zip(each, grid, strict=True)] for each in steps],
    ]
    lows, highs = (np.array(ends, float).reshape(-1, 3) for ends in first)
    highs[:, 2] = np.minimum(highs[:, 2], 19.0)  # a face stays whole: nothing falls in two
    lows[:, 2] = np.minimum(lows[:, 2], 15.0)
    flip = np.array(signs) < 0
    size = np.array(SIZE)
    turned_lows, turned_highs = (
        np.where(flip, size - highs, lows),
        np.where(flip, size - lows, highs),
    )
    one = rail(*(cut(tuple(a), tuple(b)) for a, b in zip(lows, highs, strict=True)))
    other = rail(
        *(cut(tuple(a), tuple(b)) for a, b in zip(turned_lows, turned_highs, strict=True)),
        lies=lies,
        at=(1000.0, 50.0, 20.0),
        places=(Place(), Place(v=500.0)),
    )
    bed = {"rail": (one, other)}
    pieces = Pieces.of(bed)

    found = marks(bed, pieces)

    assert sum(mark.quantity for mark in found) == 3
    check_matrices(found, pieces)


def check_matrices(found: tuple[Mark, ...], pieces: Pieces) -> None:
    for mark in found:
        wood = wood_boxes(mark.part.size, mark.part.cuts)
        for piece, matrix in zip(mark.pieces, mark.matrices, strict=True):
            rows = slice(pieces.first[piece], pieces.first[piece + 1])
            placed = wood @ matrix[:3, :3].T + matrix[:3, 3]
            standing = np.stack([pieces.lo[rows], pieces.hi[rows]], axis=1)
            assert np.linalg.det(matrix[:3, :3]) == pytest.approx(1.0)
            assert same_wood(placed, standing), mark.name


def test_every_mark_of_a_bed_stands_where_its_pieces_stand() -> None:
    bed = small_bed(2)
    pieces = Pieces.of(bed)

    found = marks(bed, pieces)

    check_matrices(found, pieces)
    wooden = [k for k in range(len(pieces)) if not pieces.form(k).hardware]
    assert sorted(piece for mark in found for piece in mark.pieces) == wooden


def test_left_and_right_share_what_can_be_turned_and_pair_what_cannot() -> None:
    found = {mark.name: mark for mark in marks(small_bed(2))}

    assert found["rail"].quantity == 2 and not found["rail"].handed
    assert found["box side"].quantity == 8
    assert found["head post"].quantity == 1
    assert found["head post"].handed == "mirror image of H1"


def test_numbers_follow_the_order_of_building() -> None:
    found = [mark.mark for mark in marks(small_bed(2))]

    assert found == [
        *("H1", "H2", "H3", "F1", "F2", "S1", "S2", "D1", "U1", "B1", "B2", "B3", "R1", "R2", "R3")
    ]


def test_marks_hang_on_the_bed_alone() -> None:
    """Parts kept from an earlier bed and parts made afresh give the same list."""
    bed = small_bed(2)
    marks(changed(bed, "slats", length=1299.0))

    again, afresh = marks(bed), marks(small_bed(2))

    assert again == afresh


def test_a_mark_still_knows_where_its_sizes_come_from() -> None:
    one = part("rail", (Dim(300.0, "rail_length"), 80.0, 20.0), assembly="deck")

    (mark,) = marked(one)

    assert isinstance(mark.length, Dim) and mark.length.name == "rail_length"


def test_hardware_is_counted_by_code_and_has_no_mark() -> None:
    bed = small_bed(2)

    counted = {each.code: each.quantity for each in hardware_counts(bed)}

    assert counted == {"dowel": 4, "pull": 4}
    assert {mark.name for mark in marks(bed)}.isdisjoint({"dowel", "pull"})


def test_every_piece_has_a_name_of_its_own() -> None:
    bed: Parts = small_bed(3)

    names = piece_names(bed)

    assert len(set(names)) == len(names) == len(Pieces.of(bed))
    assert {"S1-1", "S1-2", "HW-dowel-4", "D1-12"} <= set(names)


def test_an_assembly_without_a_letter_is_a_bug_of_ours() -> None:
    with pytest.raises(ValueError, match="no assembly"):
        marked(part("rail", SIZE, assembly="roof"))
