"""What may be turned so that a check holds: the workshop's choices, in steps that can be had."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from model.book import check_list
from model.brief import all_choices, loads, mattress
from model.brief.declare import choices_of
from model.brief.leeway import turnable, turns
from model.brief.turn import Turns
from model.materials import OwnRows, materials, rough_stock, wood

INCH = 25.4


def having(**changes: Any) -> Callable[[str], Any]:
    """The choices of a design that differs from the defaults in these."""
    return lambda name: changes.get(name, all_choices()[name].default)


def values(found: Turns, name: str) -> list[list[Any]]:
    return [[turn.changes[name] for turn in run] for run in found.runs]


# ---------------------------------------------------------------- what is left alone


ASKED = [
    *(c.name for c in choices_of(loads.Sleepers) if c.name != "joint_play"),
    *(c.name for c in choices_of(mattress.Mattress) if not c.name.endswith("_fit")),
    *("left.drawers", "foot.drawers", "left.side", "right.room", "left.nightstand_width"),
    *("grid", "shown_unit", "deck", "head.style", "front_style", "wished_sleeping_height"),
    *("screw_cover", "pull_count_from"),  # what the maker demands of screws and pulls
]


@pytest.mark.parametrize("name", ASKED)
def test_what_the_client_asked_for_is_never_turned(name: str) -> None:
    assert name not in turnable()
    assert turns(name, having()) == Turns()


@pytest.mark.parametrize("name", [n for n in all_choices() if n.endswith("_measured")])
def test_what_was_measured_is_never_turned(name: str) -> None:
    assert name not in turnable()


def test_a_measured_stock_is_not_made_thicker_by_another_label() -> None:
    assert turns("slat_stock", having(slat_stock_measured=18.4)) == Turns()


def test_every_remedy_that_a_check_names_may_be_turned() -> None:
    named = {name for step in check_list().steps for name in step.remedies}

    assert named - turnable() == set()


# ---------------------------------------------------------------- steps


def test_boards_get_thicker_by_what_is_sold_dressed_and_what_a_planer_is_set_to() -> None:
    """4/4 hardwood surfaces to 13/16, 5/4 to 1 1/16: a hardwood dealer's page. Eighths between."""
    up, down = values(turns("slat_stock", having(slat_stock=19.05)), "slat_stock")

    inches = [thickness / INCH for thickness in up]
    assert inches[:4] == pytest.approx([13 / 16, 7 / 8, 1, 1 + 1 / 16])
    assert [thickness / INCH for thickness in down] == pytest.approx([5 / 8, 9 / 16, 1 / 2])


def test_boards_in_a_metric_shop_go_by_whole_millimetres() -> None:
    up, _ = values(turns("slat_stock", having(grid="1 mm", slat_stock=20.0)), "slat_stock")

    assert up[:3] == [21, 22, 23]


@pytest.mark.parametrize("name", ["frame_stock", "slat_stock", "beam_stock", "bearer_stock"])
def test_a_rough_board_mills_to_every_thickness(name: str) -> None:
    for run in values(turns(name, having()), name):
        for thickness in run:
            rough_stock(thickness)  # it refuses what no board is thick enough for


def test_a_sheet_brings_the_thickness_that_it_is_sold_in() -> None:
    up, down = turns("bottom_stock", having()).runs

    for turn in (*up, *down):
        sheet = materials()[turn.changes["bottom_sheet"]]
        assert turn.choice == "bottom_sheet"
        assert sheet.name.startswith("Birch plywood, sanded, ")
        assert turn.changes["bottom_stock"] == sheet.nominal_mm
    assert [turn.changes["bottom_stock"] for turn in up] == [9, 12, 15]


def test_a_sheet_that_is_reckoned_too_thick_can_be_reckoned_as_sold() -> None:
    (turn,) = turns("box_stock", having(box_stock=16.0)).alone

    assert turn.changes == {"box_stock": 12}


def test_planks_are_boards_whatever_sheet_the_panels_would_be() -> None:
    """Planks and panels share their thickness; where no sheet is in the bed it is milled."""
    used = {"yellow_poplar", "birch_ply_12"}

    found = turns("panel_stock", having(panel_stock=12.7), used=used)

    assert [list(turn.changes) for run in found.runs for turn in run[:1]] == [["panel_stock"]] * 2


def test_another_sheet_is_as_thick_as_the_one_it_stands_in_for() -> None:
    sheets = [materials()[turn.changes["box_sheet"]] for turn in turns("box_sheet", having()).alone]

    assert len(sheets) > 3
    assert all(s.nominal_mm is not None and abs(s.nominal_mm - 12) <= 1 for s in sheets)


def test_slats_of_plywood_may_be_made_of_wood_and_boxes_may_not() -> None:
    slats = turns("slat_wood", having(slat_wood="birch_ply_18", slat_stock=18.0)).alone
    boxes = turns("box_sheet", having()).alone

    assert "northern_red_oak" in {turn.changes["slat_wood"] for turn in slats}
    assert {materials()[turn.changes["box_sheet"]].kind for turn in boxes} == {"sheet"}


def test_slats_of_plywood_are_as_thick_as_one_sheet_or_two() -> None:
    """18 mm lies in no sheet of this list: birch plywood is sold with 15, 18 and 21 mm."""
    ply = having(slat_wood="birch_ply_18", slat_stock=18.0)

    up, down = values(turns("slat_stock", ply), "slat_stock")

    assert up[:4] == [21, 24, 30, 36]  # 2 x 18 is the next that two layers give
    assert down[:2] == [15, 13]  # 2 x 6.5


def test_sizes_go_by_the_shop_grid_and_counts_by_one() -> None:
    up, down = values(turns("rail_height", having()), "rail_height")
    more, fewer = values(turns("slat_count", having()), "slat_count")

    assert (up[0], down[0]) == pytest.approx((400.05 + INCH / 16, 400.05 - INCH / 16))
    assert (more[:2], fewer[:2]) == ([15, 16], [13, 12])


def test_a_fine_setting_goes_by_fine_steps() -> None:
    """Side play reaches from 0.1 to 3 mm: sixteenths of an inch would miss what a slide allows."""
    up, _ = values(turns("slide_play", having()), "slide_play")

    assert up[0] - 0.3 < 0.2


def test_slides_come_in_the_lengths_that_are_sold() -> None:
    assert turns("slide_length", having()) == Turns()  # none is asked for: the longest is taken

    up, down = values(turns("slide_length", having(slide_length=585.0)), "slide_length")

    sold = all_choices()["slide"].table()["side_mount_full"].lengths_mm  # type: ignore[misc]
    assert {up[0], down[0]} <= set(sold)
    assert down[0] < 585 < up[0]


@pytest.mark.parametrize("name", sorted(turnable()))
def test_the_smallest_change_comes_first_and_lies_in_range(name: str) -> None:
    found = turns(name, having())

    for run in (*found.runs, found.alone):
        sizes = [turn.size for turn in run]
        assert sizes == sorted(sizes)
        for turn in run:
            assert all(all_choices()[n].checked(v) == v for n, v in turn.changes.items())
            assert turn.changes[turn.choice] != having()(turn.choice)
    assert all(turn.size <= 1 for run in found.runs for turn in run)


def test_another_kind_counts_more_than_a_size_and_another_wood_most() -> None:
    size = max(turn.size for run in turns("slat_stock", having()).runs for turn in run)
    kind = [turn.size for turn in turns("beam", having()).alone]
    wood = [turn.size for turn in turns("slat_wood", having()).alone]

    assert size < min(kind) <= max(kind) < min(wood)


def test_a_wood_of_the_makers_own_may_be_turned_away_from_and_to() -> None:
    own = OwnRows(species=(replace(wood("yellow_poplar"), key="mine", name="My poplar"),))

    to = {turn.changes["frame_wood"] for turn in turns("frame_wood", having(), own).alone}
    away = turns("frame_wood", having(frame_wood="mine"), own)
    thickness = turns("frame_stock", having(frame_wood="mine"), own)

    assert "mine" in to
    assert away.alone[0].changes == {"frame_wood": "yellow_poplar"}  # the most alike in weight
    assert thickness.runs
