"""Rough sizes of every part: what is sawn before it is milled.

Allowances and classes: common practice, no source. What a rough class surfaces to is a hardwood
dealer's table: 4/4 to 13/16 in, 5/4 to 1 1/16 in, 6/4 to 1 5/16 in, 8/4 to 1 3/4 in.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from model.bed import Bed
from model.shop.cut_list import CutPiece, cut_list
from model.shop.part_sizes import sizes
from model.stock.rows import Board, SoldSize, StockRows

Beds = Callable[..., Bed]


def by_name(bed: Bed) -> dict[str, CutPiece]:
    return {piece.name: piece for piece in cut_list(bed)}


def by_part(bed: Bed, part: str) -> CutPiece:
    return next(piece for piece in cut_list(bed) if piece.part == part)


# ---------------------------------------------------------------- allowances


def test_a_solid_part_is_sawn_25_mm_longer_13_wider_and_from_the_next_class(oak_bed: Beds) -> None:
    rail = by_part(oak_bed(), "top rail")

    assert rail.rough.length == rail.finished.length + 25
    assert rail.rough.width == rail.finished.width + 13
    assert (rail.finished.thickness, rail.rough.thickness) == (27.0, 38.1)  # 5/4 gives 26.99


@pytest.mark.parametrize(
    ("finished", "rough"), [(19.05, 25.4), (20.6, 25.4), (20.7, 31.75), (26.9, 31.75), (28, 38.1)]
)
def test_the_class_is_the_thinnest_that_surfaces_to_the_part(
    oak_bed: Beds, finished: float, rough: float
) -> None:
    assert by_part(oak_bed(slat_stock=finished), "slat").rough.thickness == rough


def test_the_maker_says_what_is_added(oak_bed: Beds) -> None:
    slat = by_part(oak_bed(rough_length_more=38.0, rough_width_more=6.0), "slat")

    assert slat.rough.length == slat.finished.length + 38
    assert slat.rough.width == slat.finished.width + 6


def test_sheet_parts_are_cut_to_size_from_the_measured_sheet(oak_bed: Beds) -> None:
    bed = oak_bed(box_stock_measured=11.7)

    side = by_part(bed, "box side")

    assert side.rough == side.finished
    assert side.finished.thickness == 11.7
    assert side.task == "birch_ply_12-11.7"


def test_a_sheet_that_is_not_as_thick_as_it_is_reckoned_says_so(oak_bed: Beds) -> None:
    right, wrong = by_part(oak_bed(), "box side"), by_part(oak_bed(box_stock=15.0), "box side")

    assert right.notes == ()
    assert "15 mm" in wrong.notes[0] and "Birch plywood, sanded, 12 mm" in wrong.notes[0]


def test_fibreboard_has_no_grain_to_keep(oak_bed: Beds) -> None:
    assert by_part(oak_bed(), "panel").grain == "free"
    assert by_part(oak_bed(), "box side").grain == "length"


# ---------------------------------------------------------------- layers and strips


def test_a_laminated_post_is_sawn_layer_by_layer(oak_bed: Beds) -> None:
    post = by_name(oak_bed())["H1/1"]

    assert (post.mark, post.layers, post.strips, post.quantity) == ("H1", 2, 1, 2)
    assert post.finished.thickness == 27.0
    assert post.rough.thickness == 38.1


def test_a_part_wider_than_any_board_is_glued_up_from_strips(oak_bed: Beds) -> None:
    """Fronts of 235 mm need 248 mm rough; 6 mm over for a jointed and a ripped edge are 241 mm, two
    strips of 121 mm.
    """
    front = by_part(oak_bed(widest_board=228.6), "front")

    assert (front.name, front.strips, front.quantity) == ("R1/1", 2, 12)
    assert (front.finished.width, front.rough.width) == (121, 134)
    assert "121 mm" in front.notes[0] and "235 mm" in front.notes[0]


def test_strips_are_thicker_than_the_panel_that_is_planed_flat(oak_bed: Beds) -> None:
    """Common practice: strips slip when they are clamped, so 1.5 to 3 mm are left to plane off."""
    bed = oak_bed(widest_board=228.6)
    front = by_part(bed, "front")
    mark = next(each for each in bed.marks if each.mark == front.mark)

    assert 1.5 <= front.finished.thickness - mark.thickness <= 3.0
    assert f"planed flat to {mark.thickness:g} mm" in front.notes[0]
    assert sizes(bed, mark).rough.width == 2 * 121
    assert sizes(bed, mark).rough.thickness == front.finished.thickness


def test_strips_of_planed_boards_are_as_thick_as_these(oak_bed: Beds) -> None:
    """They are bought as thick as the part: nothing is there to plane off."""
    bed = oak_bed(StockRows(sold=(sold(114),)), boards_from="sold sizes")

    rail = by_part(bed, "end rail")

    assert rail.strips == 2
    assert rail.finished.thickness == 27.0
    assert "planed flat" not in rail.notes[0]


@pytest.mark.parametrize(("widest", "strips", "width"), [(120, 3, 81), (121, 2, 121), (81, 3, 81)])
def test_no_strip_is_wider_than_the_maker_likes(
    oak_bed: Beds, widest: float, strips: int, width: float
) -> None:
    front = by_part(oak_bed(widest_strip=float(widest)), "front")

    assert (front.strips, front.finished.width) == (strips, width)
    assert front.strips * front.finished.width >= 235 + 6


def test_a_board_that_is_wide_enough_gives_the_front_in_one_piece(oak_bed: Beds) -> None:
    front = by_part(oak_bed(widest_board=248.0), "front")

    assert (front.name, front.strips, front.rough.width, front.notes) == ("R1", 1, 248, ())


def test_all_pieces_of_the_bed_are_sawn(oak_bed: Beds) -> None:
    bed = oak_bed()

    sawn = {piece.mark: piece.quantity / piece.for_each for piece in cut_list(bed)}

    assert sawn == {mark.mark: mark.quantity for mark in bed.marks}


# ---------------------------------------------------------------- resawing


def test_thin_planks_can_be_resawn_from_one_board(oak_bed: Beds) -> None:
    """Two slabs of 12 + 3 mm and a bandsaw's 1.6 mm take 31.6 mm: 5/4, less than twice 3/4."""
    planked = oak_bed(**{"head.style": "planks"}, panel_stock=12.0, panel_material="white_oak")

    assert by_part(planked, "plank").notes == ("Two can be resawn from one board of 5/4.",)


def test_thick_parts_are_not_resawn(oak_bed: Beds) -> None:
    assert by_part(oak_bed(), "top rail").notes == ()


# ---------------------------------------------------------------- where boards come from


def sold(width: float, thickness: float = 27.0, planed: bool = True) -> SoldSize:
    return SoldSize(
        material="white_oak", thickness=thickness, length=2400.0, width=width, planed=planed
    )


def test_planed_stock_as_wide_as_the_part_is_only_cut_to_length(oak_bed: Beds) -> None:
    bed = oak_bed(StockRows(sold=(sold(114), sold(220))), boards_from="sold sizes")

    rail = by_part(bed, "top rail")

    assert (rail.rough.width, rail.rough.thickness) == (114, 27)
    assert rail.rough.length == rail.finished.length + 25
    assert rail.task == "white_oak-27x114"


def test_planed_stock_that_is_hardly_wider_is_cut_to_length_first(oak_bed: Beds) -> None:
    bed = oak_bed(StockRows(sold=(sold(120), sold(150))), boards_from="sold sizes")

    rail = by_part(bed, "top rail")  # 114 mm, so that 127 would do

    assert (rail.rough.width, rail.task) == (120, "white_oak-27x120")


def test_planed_stock_that_is_wider_is_ripped(oak_bed: Beds) -> None:
    bed = oak_bed(StockRows(sold=(sold(114), sold(220))), boards_from="sold sizes")

    stile = by_part(bed, "end stile")

    assert stile.rough.width == stile.finished.width + 13
    assert stile.task == "white_oak-27-planed"


def test_a_part_wider_than_all_sold_sizes_is_glued_up(oak_bed: Beds) -> None:
    bed = oak_bed(StockRows(sold=(sold(114),)), boards_from="sold sizes")

    rail = by_part(bed, "end rail")  # 191 mm

    assert rail.strips == 2
    assert rail.rough.width <= 114


def test_thicker_sold_boards_are_planed_down(oak_bed: Beds) -> None:
    rows = (sold(150, thickness=38.1, planed=False), sold(150, thickness=50.8, planed=False))

    rail = by_part(oak_bed(StockRows(sold=rows), boards_from="sold sizes"), "bottom rail")

    assert (rail.rough.thickness, rail.rough.width) == (38.1, rail.finished.width + 13)


def test_a_rack_without_a_wide_board_has_wide_parts_glued_up(oak_bed: Beds) -> None:
    board = Board(name="A", material="white_oak", thickness=38.1, length=2400.0, width=180.0)

    rail = by_part(oak_bed(StockRows(boards=(board,)), boards_from="rack"), "end rail")

    assert rail.strips == 2
    assert rail.rough.width <= 180


def test_planed_boards_of_the_rack_serve_where_they_are_thick_enough(oak_bed: Beds) -> None:
    """A board of 28 mm was 6/4, as the rails' class is; one of 26 mm is too thin for them."""
    for thickness, kind in ((28.0, "rack"), (26.0, "board foot")):
        board = Board(
            name="A", material="white_oak", thickness=thickness, length=2400.0, width=300.0,
            planed=True,
        )  # fmt: skip
        rail = by_part(oak_bed(StockRows(boards=(board,)), boards_from="rack"), "top rail")
        assert rail.source is not None
        assert rail.source.kind == kind
