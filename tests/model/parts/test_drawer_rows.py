"""Whole rows of drawers, proved: nothing shares space, joints meet, drawers run free."""

from __future__ import annotations

from typing import Any

import pytest

from model.book import open_book
from model.brief import given
from model.part import Made
from model.parts.pieces import Pieces
from model.rules import Dimensions
from model.solids.proof import Proof, prove

OUTWARD = {"left": (-1.0, 0.0, 0.0), "right": (1.0, 0.0, 0.0), "foot": (0.0, -1.0, 0.0)}
KINDS = ("side_mount_full", "side_mount_three_quarter_metric", "wooden_runner", "centre_runner")
SIDES: dict[str, dict[str, Any]] = {
    "both alike": {},
    "unlike rows": {"right.drawers": 2},
    "a plain side": {"right.side": "plain"},
    "a high plain rail": {"right.side": "plain", "rail_width": 340.0},
    "a closed side": {"right.side": "closed frame"},
    "a dummy side": {"left.side": "dummy"},
    "from the foot": {"left.side": "plain", "right.side": "plain", "foot.drawers": 2},
    "foot and sides": {"foot.drawers": 1, "left.drawers": 2, "right.drawers": 2},
}


def proved(choices: dict[str, Any]) -> Proof:
    book = open_book()
    values = given({"beam": "none", **choices})
    dimensions = Dimensions(book).changed(values)
    made = {n: dimensions[n] for n in book.rules if book.kinds[n] == Made and dimensions[n]}
    travels = {
        f"{row}-{i + 1}": (outward, float(dimensions[f"{row}.travel"]))
        for row, outward in OUTWARD.items()
        for i in range(dimensions[f"{row}.drawer_count"])
    }
    return prove(made, Pieces.of(made), travels)


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("kind", KINDS)
def test_drawers_run_free_against_any_other_side(kind: str, side: str) -> None:
    proof = proved({"slide": kind, **SIDES[side]})

    assert [*proof.overlaps, *proof.loose, *proof.hits] == []


@pytest.mark.parametrize("joint", ["butt", "rabbet", "dado", "dovetail"])
@pytest.mark.parametrize("bottom", ["groove", "under back"])
def test_boxes_go_together_with_any_joint(joint: str, bottom: str) -> None:
    proof = proved({"box_joint": joint, "bottom_fit": bottom})

    assert [*proof.overlaps, *proof.loose, *proof.hits] == []


@pytest.mark.parametrize("style", ["slab", "frame and panel"])
@pytest.mark.parametrize("fit", ["overlay", "inset"])
@pytest.mark.parametrize("kind", KINDS)
def test_fronts_clear_their_frame(style: str, fit: str, kind: str) -> None:
    proof = proved({"front_style": style, "front_fit": fit, "slide": kind, "left.side": "dummy"})

    assert [*proof.overlaps, *proof.loose, *proof.hits] == []


@pytest.mark.parametrize("fixing", ["brackets", "screws"])
@pytest.mark.parametrize("kind", KINDS)
def test_no_screw_of_a_row_comes_through(fixing: str, kind: str) -> None:
    proof = proved(
        {"bearer_fixing": fixing, "slide": kind, "rear_support": "skid", "bearer_stock": 25.4}
    )

    row = [s for s in proof.screws if s.rules[0].split(".")[-1] not in ("cleat", "slat_pieces")]
    assert [s for s in row if s.into is None or s.cover < s.screw.cover - 1e-6] == []


def test_a_half_depth_row_with_dust_backs_and_skids_is_sound() -> None:
    proof = proved(
        {"has_dust_back": True, "rear_support": "skid", "slide": "side_mount_three_quarter"}
    )

    assert [*proof.overlaps, *proof.loose, *proof.hits] == []
