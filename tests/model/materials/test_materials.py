"""The shipped tables hold together, and every figure says where it comes from."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Callable, Mapping
from dataclasses import fields, replace
from typing import Any

import pytest

from model import materials as m
from model.errors import BadInput, CannotBuild

INCH = 25.4
TABLES: tuple[Callable[[], Mapping[str, Any]], ...] = (
    m.mattresses,
    m.species,
    m.sheets,
    m.lumber,
    m.slides,
    m.connectors,
    m.screws,
    m.pocket_screws,
    m.pull_screws,
    m.pulls,
    m.glides,
    m.materials,
)
# Our own shorthand for a source (M7, W21, "read:", "drawer_hardware S2") tells a maker nothing.
SHORTHAND = re.compile(r"\b(M\d{2}|M[1-35-79]|W\d\d[ab]?|NH\d|BP|PT)\b|read:|[a-z]+_[a-z]+ [A-Z]\d")


@pytest.mark.parametrize("table", TABLES)
def test_every_row_has_a_source_that_a_maker_can_read(
    table: Callable[[], Mapping[str, Any]],
) -> None:
    for row in table().values():
        sources = [f.name for f in fields(row) if "source" in f.name]
        assert row.source, row.key
        for name in sources:
            assert not SHORTHAND.search(getattr(row, name)), (row.key, name)


@pytest.mark.parametrize("table", TABLES)
def test_a_row_is_found_by_its_key_and_can_be_kept_in_a_set(
    table: Callable[[], Mapping[str, Any]],
) -> None:
    rows = table()

    assert all(row.key == key for key, row in rows.items())
    assert len({*rows.values()}) == len(rows)


def test_every_figure_of_a_wood_has_its_own_source() -> None:
    for row in m.species().values():
        for field in fields(row):
            if f"source_{field.name}" in row.__dataclass_fields__:
                given = getattr(row, field.name) is not None
                assert bool(row.source_of(field.name)) == given, (row.key, field.name)


def test_an_unknown_slide_is_refused_with_its_neighbours() -> None:
    with pytest.raises(BadInput, match="no slide called “side_mount_ful”.*side_mount_full"):
        m.slide("side_mount_ful")


def test_the_makers_own_mattress_stands_beside_the_trades() -> None:
    own = replace(m.mattress("us_queen"), key="mine", width_mm=1500.0)

    assert m.mattress("mine", (own,)).width_mm == 1500.0
    assert m.mattress("us_queen", (own,)).width_mm == 1524.0
    with pytest.raises(BadInput):
        m.mattress("mine")


def test_a_two_piece_mattress_counts_as_its_sum() -> None:
    assert m.mattress("us_split_king").whole_width_mm == pytest.approx(76 * INCH)
    assert m.mattress("us_queen").whole_width_mm == 60 * INCH


def test_a_material_is_the_same_for_wood_and_sheet() -> None:
    poplar, birch = m.material("yellow_poplar"), m.material("birch_ply_18")

    assert (poplar.kind, birch.kind) == ("solid", "sheet")
    assert poplar.density_kg_m3 == m.wood("yellow_poplar").density_kg_m3
    assert birch.name == "Birch plywood, sanded, 18 mm"
    assert len(m.materials()) == len(m.species()) + len(m.sheets())


def test_a_sheet_lies_between_its_limits() -> None:
    for sheet in m.sheets().values():
        assert sheet.least_mm <= sheet.actual_mm <= sheet.most_mm, sheet.key
        assert all(length >= width > 1000 for length, width in sheet.sizes), sheet.key


def test_slides_play_is_above_nothing_and_travel_follows_the_class() -> None:
    for slide in m.slides().values():
        assert 0 < slide.side_space_low_mm < slide.side_space_high_mm, slide.key
        assert slide.lengths_mm == tuple(sorted(slide.lengths_mm)), slide.key
        assert slide.is_cut_to_length != slide.holds_the_drawer, slide.key
    shares = [m.slide(f"side_mount_{c}").travel_share for c in ("three_quarter", "full", "over")]
    assert shares == [0.75, 1.0, 1.1]


def test_the_longest_slide_that_fits_is_taken() -> None:
    slide = m.slide("side_mount_full")

    assert slide.longest_within(23 * INCH) == pytest.approx(22 * INCH)
    assert slide.longest_within(22 * INCH) == pytest.approx(22 * INCH)
    assert slide.longest_within(9 * INCH) is None
    assert m.slide("wooden_runner").longest_within(640.0) == 640.0


def test_inch_and_metric_slides_are_sold_in_steps() -> None:
    inches = m.slide("side_mount_full").lengths_mm
    metric = m.slide("side_mount_full_metric").lengths_mm

    assert inches == pytest.approx([i * INCH for i in range(10, 29, 2)])
    assert metric == pytest.approx(range(250, 701, 50))


@pytest.mark.parametrize(
    ("stock", "length"),
    [(12.0, 25.4), (16.0, 25.4), (17.7, 31.75), (18.0, 31.75), (21.0, 38.1), (45.0, 63.5)],
)
def test_metric_stock_takes_the_screw_of_the_nearest_class(stock: float, length: float) -> None:
    assert m.pocket_screw_for(stock) == pytest.approx(length)


@pytest.mark.parametrize("stock", [6.0, 60.0])
def test_no_pocket_screw_is_offered_for_stock_beyond_the_table(stock: float) -> None:
    with pytest.raises(CannotBuild, match="no pocket screw"):
        m.pocket_screw_for(stock)


def test_a_gauge_is_asked_for_as_it_is_written() -> None:
    assert m.wood_screw("#8") is m.wood_screw(8) is m.wood_screw("8")
    with pytest.raises(BadInput, match="no screw called “11”"):
        m.wood_screw(11)


def test_holes_of_a_wood_screw_grow_from_root_to_head() -> None:
    for screw in m.screws().values():
        assert screw.pilot_softwood_mm < screw.pilot_hardwood_mm < screw.shank_mm, screw.key
        assert screw.root_mm < screw.shank_mm
        # The charts' 3/16 in for No. 10 is 0.07 mm under the shank: nominal sizes, as drills are.
        assert screw.shank_mm - 0.1 < screw.shank_hole_mm < screw.counterbore_mm


def test_a_screw_whose_point_stays_inside_is_the_longest_sold() -> None:
    assert m.screw_no_longer_than(8, 35.0) == pytest.approx(31.75)
    with pytest.raises(CannotBuild, match="come through"):
        m.screw_no_longer_than(8, 10.0)


def test_a_pull_screw_reaches_through_front_and_box() -> None:
    screw = m.pull_screw_for(2 * 19.05, 6.0)

    assert screw.length_mm == pytest.approx(44.45)
    assert m.pull_screw_for(36.0, 6.0, "m4").length_mm == 45
    with pytest.raises(CannotBuild, match="too thick"):
        m.pull_screw_for(60.0, 6.0)
    with pytest.raises(BadInput, match="thread"):
        m.pull_screw_for(20.0, 6.0, "m5")


@pytest.mark.parametrize(
    ("finished", "nominal"),
    [(19.05, "4/4"), (20.6, "4/4"), (22.2, "5/4"), (25.4, "5/4"), (38.1, "8/4"), (44.45, "8/4")],
)
def test_rough_stock_mills_to_its_finished_thickness(finished: float, nominal: str) -> None:
    assert m.rough_stock(finished).nominal == nominal


def test_no_rough_board_mills_to_a_whole_post() -> None:
    with pytest.raises(CannotBuild, match="glue it up"):
        m.rough_stock(120.0)


def test_a_connector_fits_the_least_post_it_asks_for() -> None:
    """Common practice, no source: half an inch of post stays behind a plate's pocket."""
    for connector in m.connectors().values():
        if connector.is_plate:
            kept = connector.least_post_thickness_mm - connector.pocket_depth_mm
            assert kept >= 12.7, connector.key
            assert connector.least_rail_width_mm - connector.plate_length_mm >= 25.3, connector.key
            assert connector.lift_mm > 0
            assert m.wood_screw(connector.screw_gauge)
        else:
            assert connector.nut_length_mm < connector.least_rail_thickness_mm, connector.key
            assert connector.lift_mm == 0


def test_asking_for_materials_loads_no_heavy_library() -> None:
    code = (
        "import sys, model.materials\n"
        "print([n for n in ('numpy', 'pandas', 'PySide6', 'csv_tables') if n in sys.modules])\n"
    )

    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert done.stdout.strip() == "[]"
