"""Every piece of the cut list is asked for once, with the stock that it may come from."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import replace

import pytest

from model.bed import Bed, solve
from model.cutting.record import Box, Stock, Task, Trim
from model.materials import OwnRows, materials, sheet
from model.shop.cut_list import cut_list
from model.shop.plans import first_plans
from model.shop.tasks import CutTask, tasks
from model.stock.prices import PriceRow, Prices
from model.stock.rows import Board, SheetSize, SoldSize, StockRows

Beds = Callable[..., Bed]
PLY = "birch_ply_12"


def task_of(bed: Bed, key: str) -> CutTask:
    return next(task for task in tasks(bed) if task.key == key)


def stock_of(bed: Bed, key: str) -> tuple[Stock, ...]:
    return task_of(bed, key).task.stock


def asked(task: Task) -> Counter[tuple[str, int]]:
    return Counter(
        (piece.mark, piece.first + n) for piece in task.pieces for n in range(piece.quantity)
    )


# ---------------------------------------------------------------- pieces


@pytest.mark.parametrize("style", ["slab", "frame and panel"])
def test_every_piece_is_asked_for_once(oak_bed: Beds, style: str) -> None:
    bed = oak_bed(front_style=style, front_panel_material="birch_ply_9", front_panel_stock=9.0)

    found = sum((asked(task.task) for task in tasks(bed)), Counter[tuple[str, int]]())

    assert found == Counter(
        (piece.name, n) for piece in cut_list(bed) for n in range(1, piece.quantity + 1)
    )


def test_a_task_is_one_material_in_one_thickness(oak_bed: Beds) -> None:
    found = {task.key: (task.material, task.thickness, task.task.kind) for task in tasks(oak_bed())}

    assert found[f"{PLY}-12"] == (PLY, 12, "sheets")
    assert found["white_oak-38.1"] == ("white_oak", 38.1, "boards")
    assert [task.key for task in tasks(oak_bed())] == [task.task.name for task in tasks(oak_bed())]


def test_pieces_of_a_row_share_width_and_grain(oak_bed: Beds) -> None:
    rows: dict[tuple[str, str], set[tuple[float, str, bool]]] = {}
    for task in tasks(oak_bed()):
        for piece in task.task.pieces:
            if piece.row:
                kind = (piece.width, piece.grain, piece.stays_whole)
                rows.setdefault((task.key, piece.row), set()).add(kind)

    assert rows
    assert {row: kinds for row, kinds in rows.items() if len(kinds) > 1} == {}


def test_a_row_longer_than_any_stock_is_cut_in_parts(oak_bed: Beds) -> None:
    """Three fronts of 644 + 25 mm and two kerfs are 2013 mm; a board of 1500 mm holds two."""
    board = Board(name="A", material="white_oak", thickness=25.4, length=1500.0, width=300.0)
    bed = oak_bed(
        StockRows(boards=(board,)), boards_from="rack", widest_board=248.0, board_end_trim=0.0
    )

    rows = Counter[str]()
    for piece in task_of(bed, "white_oak-25.4").task.pieces:
        if piece.mark == "R1" and "left" in piece.row:
            rows[piece.row] += piece.quantity

    assert rows == {"left fronts (1)": 2}  # the third is alone: a row of one is none


def test_the_makers_wishes_reach_the_plan(oak_bed: Beds) -> None:
    bed = oak_bed(
        kerf=2.4, least_offcut=200.0, plan_prefers="large offcut", first_cut_kg=15.0,
        first_cut_share=0.4, strips_only=True,
    )  # fmt: skip

    task = task_of(bed, f"{PLY}-12").task

    assert task.kerf == 2.4
    wishes = task.wishes
    assert (wishes.least_offcut, wishes.heaviest_kg, wishes.largest_share) == (200, 15, 0.4)
    assert wishes.offcut_before_settings and wishes.strips


def test_a_strip_of_board_is_worth_keeping_where_a_strip_of_sheet_is_not(oak_bed: Beds) -> None:
    bed = oak_bed(least_offcut=150.0, least_board_offcut=65.0)

    kept = {each.task.kind: each.task.wishes.least_offcut for each in tasks(bed)}

    assert kept == {"sheets": 150.0, "boards": 65.0}


# ---------------------------------------------------------------- sheets


def test_sheets_are_those_of_the_trade_trimmed_on_two_edges(oak_bed: Beds) -> None:
    (sheet,) = stock_of(oak_bed(), f"{PLY}-12")

    assert (sheet.length, sheet.width, sheet.quantity) == (2440, 1220, None)
    assert sheet.trim == Trim(lower=6, left=6)
    assert sheet.kg_per_m2 == pytest.approx(materials()[PLY].density_kg_m3 * 0.012)


def test_all_sizes_of_the_table_may_be_bought(oak_bed: Beds) -> None:
    found = stock_of(oak_bed(sheets_from="all sizes"), f"{PLY}-12")

    assert [(each.length, each.width) for each in found] == [(2440, 1220), (1525, 1525)]


def test_offcuts_come_first_and_are_not_trimmed(oak_bed: Beds) -> None:
    rows = (
        SheetSize(material=PLY, length=900.0, width=600.0, quantity=2, on_hand=True),
        SheetSize(material="birch_ply_9", length=500.0, width=500.0, on_hand=True),
        SheetSize(material=PLY, length=2440.0, width=1220.0, on_hand=True),
    )

    offcut, whole, sold = stock_of(oak_bed(StockRows(sheets=rows)), f"{PLY}-12")

    assert (offcut.length, offcut.quantity, offcut.on_hand, offcut.trim) == (900, 2, True, Trim())
    assert (whole.on_hand, whole.quantity, whole.trim) == (True, 1, Trim(lower=6, left=6))
    assert (sold.on_hand, sold.quantity) == (False, None)


def test_the_makers_sheet_takes_the_place_of_the_tables(oak_bed: Beds) -> None:
    rows = (SheetSize(material=PLY, length=2500.0, width=1250.0, price=80.0),)

    (sheet,) = stock_of(oak_bed(StockRows(sheets=rows)), f"{PLY}-12")

    assert (sheet.length, sheet.width, sheet.price) == (2500, 1250, 80)


def test_the_price_list_prices_a_sheet_without_a_price_of_its_own(oak_bed: Beds) -> None:
    bed = oak_bed()
    listed = Prices(rows=(PriceRow(key=f"sheet/{PLY}/2440x1220", price=64.0),))
    priced = replace(bed, design=replace(bed.design, prices=listed))

    assert stock_of(priced, f"{PLY}-12")[0].price == 64
    assert stock_of(bed, f"{PLY}-12")[0].price is None


# ---------------------------------------------------------------- boards


def test_every_board_of_the_rack_is_its_own_stock_with_its_bad_spans(oak_bed: Beds) -> None:
    knots = Board(
        name="B", material="white_oak", thickness=38.1, length=3000.0, width=200.0,
        bad=((400.0, 0.0, 460.0, 200.0),), price=31.0,
    )  # fmt: skip
    plain = Board(
        name="A", material="white_oak", thickness=38.1, length=2500.0, width=220.0, quantity=40
    )
    other = Board(name="C", material="white_oak", thickness=25.4, length=2500.0, width=220.0)
    rows = StockRows(boards=(knots, plain, other))

    b, a = stock_of(oak_bed(rows, boards_from="rack"), "white_oak-38.1")

    assert (b.key, b.bad, b.quantity, b.price) == ("B", (Box(400, 0, 460, 200),), 1, 31)
    assert (a.key, a.quantity, a.trim) == ("A", 40, Trim(left=25, right=25))
    assert a.on_hand and not b.on_hand  # what has a price is still to be bought


def test_two_boards_with_one_name_are_told_apart(oak_bed: Beds) -> None:
    one = Board(
        name="A", material="white_oak", thickness=38.1, length=2500.0, width=220.0, quantity=30
    )

    found = stock_of(oak_bed(StockRows(boards=(one, one)), boards_from="rack"), "white_oak-38.1")

    assert [each.key for each in found] == ["A", "A (2)"]


def test_planed_stock_as_wide_as_its_parts_is_only_crosscut(oak_bed: Beds) -> None:
    rows = StockRows(
        sold=tuple(
            SoldSize(material="white_oak", thickness=27.0, length=a, width=b, planed=True)
            for a, b in ((2400.0, 114.0), (3000.0, 114.0), (2400.0, 220.0))
        )
    )

    task = task_of(oak_bed(rows, boards_from="sold sizes"), "white_oak-27x114").task

    assert task.kind == "lengths"
    assert [(each.length, each.width) for each in task.stock] == [(2400, 114), (3000, 114)]
    assert {piece.width for piece in task.pieces} == {114}


def test_what_the_rack_has_not_is_drawn_at_random_and_said_so(oak_bed: Beds) -> None:
    board = Board(name="A", material="white_oak", thickness=38.1, length=2500.0, width=220.0)
    bed = oak_bed(StockRows(boards=(board,)), boards_from="rack")

    slats = task_of(bed, "yellow_poplar-31.75")

    assert all(each.is_assumed for each in slats.task.stock)
    assert "rack" in slats.notes[0] and "random" in slats.notes[0]


def test_boards_by_the_foot_are_said_to_be_drawn_at_random(oak_bed: Beds) -> None:
    slats = task_of(oak_bed(), "yellow_poplar-31.75")

    assert all(each.is_assumed and each.quantity == 1 for each in slats.task.stock)
    assert "random" in slats.notes[0]


def test_the_same_bed_asks_the_same(oak_bed: Beds) -> None:
    assert tasks(oak_bed()) == tasks(oak_bed())


# ---------------------------------------------------------------- what the maker is told


def test_glue_ups_and_what_stays_together_are_told(oak_bed: Beds) -> None:
    fronts = " ".join(task_of(oak_bed(), "white_oak-25.4").notes)
    frame = " ".join(task_of(oak_bed(), "white_oak-38.1").notes)

    assert "R1: Glued up from 2 strips" in fronts
    assert "the grain runs on: left fronts, 1; left fronts, 2; right fronts, 1" in fronts
    assert "milled as one piece, cut apart after:" in frame
    assert "H6-1 with F6-1" in frame


def test_like_parts_are_told_of_together(oak_bed: Beds) -> None:
    planked = oak_bed(**{"head.style": "planks"}, panel_stock=12.0, panel_material="white_oak")

    (said,) = (note for note in task_of(planked, "white_oak-19.05").notes if "resawn" in note)

    assert said.count(",") >= 1  # first, last and all other planks
    assert said.endswith(": Two can be resawn from one board of 5/4.")


def test_a_sheet_without_a_size_is_told_of_and_the_rest_is_planned(oak_bed: Beds) -> None:
    bare = replace(sheet(PLY), key="my_ply", product="My ply", sheet_sizes_mm=())
    design = replace(oak_bed().design, own=OwnRows(sheets=(bare,)))
    bed = solve(design.with_choices({"box_sheet": "my_ply"}))

    found = {plan.key: plan for plan in first_plans(bed)}

    assert (
        found["my_ply-12"].notes[0] == "No size of a sheet is known for My ply, 12 mm: type one in."
    )
    assert {left.mark for left in found["my_ply-12"].plan.left_out} == {"B1", "B2", "B3"}
    assert all(left.sentence.endswith(".") for left in found["my_ply-12"].plan.left_out)
    assert found["birch_ply_6_5-6.5"].plan.left_out == ()


def test_a_part_larger_than_every_sheet_says_what_would_do(oak_bed: Beds) -> None:
    rows = (SheetSize(material=PLY, length=600.0, width=600.0),)
    bed = oak_bed(StockRows(sheets=rows))

    plan = next(each.plan for each in first_plans(bed) if each.key == f"{PLY}-12")

    (left,) = plan.left_out  # sides of 769 mm; fronts and backs of 580 still fit
    assert (left.mark, left.quantity) == ("B1", 12)
    assert "769" in left.sentence or "would do" in left.sentence
    assert plan.layouts
