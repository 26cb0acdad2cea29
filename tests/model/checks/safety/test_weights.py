"""What must be lifted, and what the floor bears."""

from __future__ import annotations

import numpy as np
import pytest

from model.bed import Design, solve
from model.checks.record import Finding, Verdict
from model.checks.safety.weights import (
    GRAVITY,
    floor_bears,
    lifters,
    lifting,
    whole_sheets,
)
from model.materials import material, materials
from model.solids.carried import Assembly


def carried(name: str, kg: float, count: int = 1) -> Assembly:
    return Assembly(
        key=name, name=name, count=count, pieces=(0,), size=(50.0, 600.0, 1600.0), kg=kg
    )


def said(*of: Assembly) -> dict[str, Finding]:
    return {each.id: each for each in lifting(of)}


def test_light_pieces_are_told_in_one_line() -> None:
    found = said(carried("headboard", 15), carried("slat", 1.2, 14))

    assert list(found) == ["rest"]
    assert (found["rest"].value, found["rest"].verdict) == (15, Verdict.HOLDS)


def test_a_piece_for_two_is_a_note() -> None:
    found = said(carried("headboard", 31), carried("left side", 9))

    assert found["headboard"].verdict is Verdict.NOTE
    assert found["headboard"].reason == "It takes two to carry the headboard."
    assert found["rest"].value == 9


def test_a_headboard_with_bookcases_that_two_cannot_carry_fails() -> None:
    """Bookcases were added, and the bed became far too heavy to move: a blog, 2013."""
    found = said(carried("headboard", 60))

    assert (found["headboard"].verdict, found["headboard"].limit) == (Verdict.FAILS, 46)


def test_a_heavy_mattress_is_no_fault_of_the_bed() -> None:
    found = said(carried("mattress", 60))

    assert found["mattress"].verdict is Verdict.NOTE
    assert "three" in found["mattress"].reason


def test_each_who_lifts_bears_no_more_than_one_may() -> None:
    """NIOSH: 23 kg for one in the best of grips; what is long is carried by two all the same."""
    assert [lifters(kg) for kg in (5.0, 23.0, 23.1, 46.0, 46.3, 69.0, 130.0)] == [
        1, 1, 2, 2, 3, 3, 6,
    ]  # fmt: skip
    assert (lifters(8.0, 2000.0), lifters(60.0, 2000.0)) == (2, 3)


def test_alike_pieces_are_told_once() -> None:
    (found,) = lifting((carried("mattress", 30, 2),))

    assert found.title == "Weight of each mattress"


def test_an_mdf_sheet_of_ninety_pounds_is_broken_down_first() -> None:
    """MDF-core sheets at 90 lb were wrestled onto the saw: a blog, 2023. 41 kg."""
    bed = solve(Design().with_choices({"front_material": "mdf_3_4in", "front_stock": 19.05}))
    found = whole_sheets(bed.pieces, materials())

    weight = 2.44 * 1.22 * 0.01905 * material("mdf_3_4in").density_kg_m3
    assert found is not None and found.value == pytest.approx(weight)
    assert found.value == pytest.approx(90 * 0.4536, rel=0.1)
    assert found.verdict is Verdict.NOTE
    assert "Break a whole sheet" in found.reason


def test_a_bed_of_boards_alone_needs_no_sheet() -> None:
    wood = {"panel_material": "yellow_poplar"}
    bed = solve(Design().with_choices({"left.side": "plain", "right.side": "plain", **wood}))

    assert whole_sheets(bed.pieces, materials()) is None


def test_the_floor_bears_a_full_storage_bed_about_as_the_code_reckons() -> None:
    """120 + 45 kg of bed and mattress, 220 of sleepers, 150 in drawers on 1.6 x 2.1 m: 1.56 kPa."""
    spread, spot = floor_bears(np.array([120.0, 45.0]), 1600, 2100, 220, 150)

    assert spread.value == pytest.approx(1.56, abs=0.005)
    assert spread.verdict is Verdict.NOTE
    assert spot.value == pytest.approx(535 * GRAVITY / 4000)
    assert spot.verdict is Verdict.HOLDS


def test_a_heavy_bed_presses_too_hard_on_one_spot() -> None:
    """2 kN a post: 8 kN, or 816 kg."""
    _, under = floor_bears(np.array([200.0]), 2000, 2100, 300, 310)
    _, over = floor_bears(np.array([200.0]), 2000, 2100, 300, 320)

    assert (under.verdict, over.verdict) == (Verdict.HOLDS, Verdict.NOTE)


def test_what_the_floor_bears_is_all_that_the_bed_holds() -> None:
    bed = solve(Design())
    found = next(f for f in bed.findings if f.id == "floor_bears")

    full = bed["left.drawer_count"] * bed["left.drawer_contents"] * 2  # both sides are alike
    mass = bed.weights.sum() + 2 * 110 + full
    area = bed["bed_width"] * bed["bed_length"] / 1e6
    assert found.value == pytest.approx(mass * GRAVITY / 1000 / area)
