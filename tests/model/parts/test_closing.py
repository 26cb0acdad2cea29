"""Panels that close a frame hang in its grooves, free to move and never glued."""

from __future__ import annotations

from typing import Any

from model.dimensions.closing import (
    closing_float,
    closing_panel_bottom,
    closing_panel_height,
    closing_panel_plane,
    closing_panel_tuck,
    closing_panel_width,
)
from model.frame import side_frame_at
from model.materials import material
from model.part import Part
from model.parts.closing import blind_panels, closing_panels
from model.units import GRIDS

GRID = GRIDS["1 mm"]
DEPTH, FLOAT, THICK, OPENING = 10.0, 3.0, 6.0, (619.0, 233.0)
BAYS = (116.0, 785.0, 1454.0)
HEIGHT = closing_panel_height(OPENING[1], DEPTH, FLOAT, GRID)
WIDTH = closing_panel_width(OPENING[0], DEPTH, FLOAT, GRID)
SHARED = {
    "closing_panel_plane": closing_panel_plane(6.0, 22.0, THICK, BAYS, ()),
    "closing_panel_bottom": closing_panel_bottom(65.0, OPENING[1], HEIGHT),
    "closing_panel_height": HEIGHT, "panel_thickness": THICK, "frame": side_frame_at(-803, 1),
    "panel_material": material("mdf_1_4in"), "row_name": "left",
    "closing_float": closing_float(DEPTH, HEIGHT, OPENING[1], GRID),
}  # fmt: skip


def closed(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "closed_bays": BAYS, "closing_panel_width": WIDTH,
        "closing_panel_tuck": closing_panel_tuck(WIDTH, OPENING[0]),
    }  # fmt: skip
    return closing_panels(**(SHARED | needs | changes))


def blind(**changes: Any) -> tuple[Part, ...]:
    needs = {"blind_bays": (116.0,), "blind_panel_width": 464.0, "blind_panel_tuck": 7.0}
    return blind_panels(**(SHARED | needs | changes))


def test_a_closed_side_has_a_panel_in_every_bay() -> None:
    (part,) = closed()

    assert len(part.places) == len(BAYS)
    for place, bay in zip(part.places, BAYS, strict=True):
        start = part.at[0] + place.u
        assert bay - start == (start + part.width) - (bay + OPENING[0])


def test_a_panel_stays_inside_its_grooves_with_its_float_at_every_edge() -> None:
    (part,) = closed()

    at_the_foot = part.at[0] - (BAYS[0] - DEPTH)
    below = part.at[2] - (65 - DEPTH)
    above = 65 + OPENING[1] + DEPTH - (part.at[2] + part.length)

    assert at_the_foot == below == above == FLOAT


def test_a_panel_lies_in_the_middle_of_the_frame() -> None:
    (part,) = closed()

    assert part.at[1] - 6 == (6 + 22) - (part.at[1] + part.thickness)


def test_panels_are_never_glued_and_keep_their_room() -> None:
    for part in (*closed(), *blind()):
        assert {hold.by for hold in part.held} == {"stiles", "top_rail", "bottom_rail"}
        assert not any(hold.glued for hold in part.held)
        assert all(hold.within >= FLOAT for hold in part.held)


def test_the_blind_bay_is_closed_by_a_panel_of_its_own_width() -> None:
    (part,) = blind()

    assert part.width == 464
    assert part.at[0] == 116 - 7
    assert part.length == HEIGHT


def test_an_open_row_has_no_panels() -> None:
    assert closed(closed_bays=()) == ()
    assert blind(blind_bays=()) == ()
