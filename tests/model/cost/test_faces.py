"""Areas of wood, against solid booleans and against sums by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from model.bed import Bed
from model.cost.faces import fixed, glued_area, shown, surface
from model.part import Hole
from model.solids.exact import solid
from tests.model.cost.beds import DEMOS, bed_of

NO_HOLES: tuple[Hole, ...] = ()


@pytest.mark.parametrize("name", DEMOS)
def test_surfaces_are_those_of_the_solids(name: str) -> None:
    """The manifold library is the second opinion; holes and tapers are left out on both sides."""
    bed = bed_of(name)
    found = surface(bed.pieces)

    for mark in bed.marks:
        whole = solid(replace(mark.part, holes=NO_HOLES, taper=0.0, taper_length=0.0))
        assert found[mark.pieces[0]] == pytest.approx(whole.surface_area(), rel=1e-6), mark.name


def test_glue_on_a_tenon_is_its_four_sides_and_its_end_is_not_reached() -> None:
    bed = bed_of("guest_room_double")
    met = fixed(bed)
    (rail,) = [m for m in bed.marks if m.name == "end rail" and m.assembly == "footboard"]
    cheeks = [cut for cut in rail.part.cuts if cut.kind == "tenon cheek"]
    deep = cheeks[0].high[0] - cheeks[0].low[0]
    cut_away = cheeks[0].high[2] - cheeks[0].low[2], cheeks[1].high[2] - cheeks[1].low[2]
    thick = float(rail.thickness) - sum(cut_away)
    shoulders = [cut for cut in rail.part.cuts if cut.kind == "tenon shoulder"]
    high = float(rail.width) - sum(c.high[1] - c.low[1] for c in shoulders[:2])

    own = (met.one == rail.pieces[0]) | (met.other == rail.pieces[0])
    glued = met.area[own & met.glued].sum()

    ends = 2 * (float(rail.width) * float(rail.thickness) - high * thick)  # shoulders meet posts
    assert glued == pytest.approx(2 * 2 * deep * (high + thick) + ends, rel=0.02)  # mortise room


def test_dowels_are_glued_all_round() -> None:
    bed = bed_of("loft_single")
    met = fixed(bed)
    flat = met.glued & ~dowels(bed)[met.one] & ~dowels(bed)[met.other]

    round_area = glued_area(bed, met) - met.area[flat].sum()

    assert round_area == pytest.approx(16 * math.pi * 10 * 50)  # 16 dowels, 10 x 50 mm


def dowels(bed: Bed) -> np.typing.NDArray[np.bool_]:
    return np.array([part.name == "dowel" for part in bed.pieces.parts])[bed.pieces.part]


def test_what_a_fixed_piece_covers_is_not_shown() -> None:
    bed = bed_of("painted_storage_queen")
    met = fixed(bed)
    (panel,) = [m for m in bed.marks if m.name == "front panel"]
    piece = panel.pieces[0]

    hidden = surface(bed.pieces)[piece] - shown(bed, met)[piece]

    # Its four tongues sit in the grooves of the frame: both faces of each, 9.5 mm deep or nearly.
    assert hidden == pytest.approx(2 * 9.5 * 2 * (panel.length + panel.width), rel=0.25)


def test_what_comes_apart_covers_nothing() -> None:
    """Rails are finished where they meet the posts: they come apart for every move."""
    bed = bed_of("loft_single")
    met = fixed(bed)
    posts = {k for mark in bed.marks if mark.name == "post" for k in mark.pieces}
    rails = {k for mark in bed.marks if mark.name == "side rail" for k in mark.pieces}

    pairs = set(zip(met.one.tolist(), met.other.tolist(), strict=True))

    assert not any({one, other} & posts and {one, other} & rails for one, other in pairs)
