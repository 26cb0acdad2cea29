"""Bolts and barrel nuts, by hand."""

from __future__ import annotations

from model.checks.record import Verdict
from model.materials import allowed
from tests.model.checks.strength.made import bed, carried, said, silent

BOLTED = {
    "connector": "cross_bolt_5_16", "frame_stock": 38.1, "left__side": "plain",
    "right__side": "plain",
}  # fmt: skip


def test_the_wood_before_a_barrel_nut_by_hand() -> None:
    """Yellow-poplar: 15 mm nut, 25 mm long, 44.5 mm from the end: crushed at 15 x 25 x 77.2 G / 4,
    sheared out at 2 x (44.45 - 7.5) x 25 x 2.74 / 1.5.
    """
    found = said(bed(**BOLTED), "left.bolts_hold.pulled")
    crushed = 15 * 25 * 77.22 * 0.42 / 4
    sheared = 2 * (44.45 - 7.5) * 25 * allowed("yellow_poplar").shear_mpa / 1.5

    time = found.limit / min(crushed, sheared)  # what the load's time and a test's margin allow

    assert any(abs(time - each) < 0.01 for each in (0.9, 1.0, 1.25, 1.6, 1.25 * 1.3, 1.6 * 1.3))


def test_bolts_hold_the_side_of_the_default_bed() -> None:
    for way in ("pulled", "sideways"):
        assert said(bed(**BOLTED), f"left.bolts_hold.{way}").verdict is not Verdict.FAILS


def test_no_bolt_is_pulled_harder_than_the_frame_says() -> None:
    of = bed(**BOLTED)
    joints = carried(of).joints
    names = [
        (of.pieces.made_by(a)[0], of.pieces.made_by(b)[0] if b >= 0 else "")
        for a, b in joints.pieces.tolist()
    ]
    rows = [
        j for j, (a, b) in enumerate(names)
        if a == "left.side_rail" and ".post_" in b
    ]  # fmt: skip

    hardest = float(abs(joints.force[:, rows, 1]).max())

    assert said(of, "left.bolts_hold.pulled_moved").value <= hardest + 1e-6


def test_plated_sides_have_no_bolts() -> None:
    assert silent(bed(), "left.bolts_hold")
