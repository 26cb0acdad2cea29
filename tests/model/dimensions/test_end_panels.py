"""Panels, planks and open slats: what the grid leaves over has its place."""

import pytest

from model.dimensions import end_planks as planks
from model.dimensions.end_panels import (
    end_stile_places,
    end_stile_spans,
    filling_bottom,
    filling_float,
    filling_height,
    groove_wall,
    panel_float_built,
    panel_hold,
    panel_opening,
    panel_places,
    panel_spans,
    panel_width,
    stile_count,
    stile_web,
)
from model.dimensions.end_slats import (
    spindle_end_gap,
    spindle_gap,
    spindle_length,
    spindle_places,
    spindle_shoulder,
    spindles,
)
from model.errors import CannotBuild
from model.units import GRIDS

GRID = GRIDS["1 mm"]
BETWEEN, DEPTH, FLOAT = 1400.0, 9.5, 3.2


def test_panels_and_floats_add_up_to_the_grooves_of_the_posts() -> None:
    opening = panel_opening("panel", BETWEEN, 70, 2)
    width = panel_width(opening, DEPTH - FLOAT, GRID)
    room = panel_float_built(opening, width, DEPTH)

    assert GRID.holds(width)
    assert FLOAT <= room < FLOAT + GRID.step / 2 + 1e-9
    assert 3 * (width + 2 * room) + 2 * (70 - 2 * DEPTH) == pytest.approx(BETWEEN + 2 * DEPTH)


def test_panels_show_alike_from_stile_to_stile() -> None:
    opening = panel_opening("panel", BETWEEN, 70, 2)

    spans = panel_spans("panel", BETWEEN / 2, opening, 70, 2)

    assert spans[0][0] == -BETWEEN / 2 and spans[-1][1] == pytest.approx(BETWEEN / 2)
    assert [high - low for low, high in end_stile_spans(spans)] == pytest.approx([70, 70])
    assert end_stile_places(end_stile_spans(spans)) == (spans[0][1], spans[1][1])
    assert panel_places(spans, DEPTH, FLOAT)[0] == pytest.approx(-BETWEEN / 2 - (DEPTH - FLOAT))


def test_only_a_panelled_end_has_stiles() -> None:
    assert stile_count("panel", 2) == 2
    assert stile_count("planks", 2) == 0


def test_a_panel_is_kept_in_the_middle_of_its_height() -> None:
    height = filling_height(709.7, DEPTH - FLOAT, GRID)
    room = filling_float(709.7, height, DEPTH)
    bottom = filling_bottom(400, room, DEPTH)

    below, above = bottom - (400 - DEPTH), (400 + 709.7 + DEPTH) - (bottom + height)
    assert below == pytest.approx(above) == pytest.approx(room)


def test_a_groove_leaves_two_walls_or_is_refused_with_the_stock_that_works() -> None:
    assert groove_wall(True, 22, 6) == 8

    with pytest.raises(CannotBuild) as refusal:
        groove_wall(True, 22, 12)

    assert refusal.value.field == "frame_stock"


def test_a_panel_that_would_drop_out_is_refused() -> None:
    with pytest.raises(CannotBuild, match="drops out"):
        panel_hold(True, 9.5, 7)


def test_a_stile_keeps_wood_between_its_grooves() -> None:
    assert stile_web("panel", 70, 10, 1) == 50
    with pytest.raises(CannotBuild):
        stile_web("panel", 35, 12, 1)


def test_too_many_stiles_are_refused() -> None:
    with pytest.raises(CannotBuild, match="stiles"):
        panel_opening("panel", 600, 100, 5)


@pytest.mark.parametrize("wished", [50.0, 90.0, 200.0])
def test_planks_and_gaps_add_up_to_the_grooves_of_the_posts(wished: float) -> None:
    across = planks.planks_across(BETWEEN, DEPTH - FLOAT)
    count = planks.plank_count("planks", across, wished, 1)
    inner = planks.inner_plank_count(count)
    cover = planks.plank_cover(across, count, 1, GRID)
    edge = planks.edge_plank_cover(across, cover, inner, 1, GRID)

    built = planks.planks_built(cover, edge, inner, 1)
    room = planks.plank_float_built(BETWEEN, DEPTH, built)

    assert GRID.holds(cover) and GRID.holds(edge)
    assert 2 * edge + inner * cover + (count - 1) * 1 == pytest.approx(built)
    assert FLOAT <= room < FLOAT + GRID.step
    assert edge > wished / 2


def test_planks_stand_a_gap_apart_from_post_to_post() -> None:
    first = planks.first_plank_from(400)
    places = planks.inner_plank_places(first, 95, 100, 5, 2)

    assert places == (-100, 5)
    assert planks.last_plank_from(400, 95) == 105  # 5 mm behind the last inner plank


def test_a_plank_is_cut_as_wide_as_it_shows_and_its_tongue() -> None:
    tongue = planks.plank_tongue(1, GRID)

    assert tongue == 7
    assert planks.plank_cut_width(90, tongue) == 97


@pytest.mark.parametrize("width", [15.0, 40.0, 120.0])
@pytest.mark.parametrize("most", [20.0, 60.0, 230.0])
@pytest.mark.parametrize("grid", GRIDS.values(), ids=GRIDS)
def test_no_gap_between_open_slats_is_wider_than_allowed(width, most, grid) -> None:  # type: ignore[no-untyped-def]
    found = spindles("slats", 1469.0, width, most, grid)
    gap, end = spindle_gap(found), spindle_end_gap(found)

    total = found.number * width + (found.number - 1) * gap + 2 * end
    assert total == pytest.approx(1469)
    assert 0 < gap <= most + 1e-6 and gap / 2 <= end <= most + 1e-6


def test_open_slats_stand_alike_between_the_posts() -> None:
    places = spindle_places(500, 30, 50, 40, 3)

    assert places == (-470, -380, -290)


def test_an_open_slat_is_cut_with_a_stub_tenon_at_both_ends() -> None:
    assert spindle_length(700, 10) == 720
    assert spindle_shoulder(15, 6, GRID) == 3  # half of a narrow slat stays
