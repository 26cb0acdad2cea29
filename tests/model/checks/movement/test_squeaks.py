"""What would squeak."""

from __future__ import annotations

from model.checks.movement.squeaks import bolts_stay_tight
from model.checks.record import Verdict
from model.materials import connector
from tests.model.checks.strength.made import bed, said, silent


def test_joints_that_bolts_alone_hold_are_noted() -> None:
    """A magazine on bed building, 2007: two dowels, or a shallow tenon, unglued."""
    for key in ("cross_bolt_m6", "cross_bolt_5_16", "bed_bolt_3_8"):
        found = bolts_stay_tight(connector(key))

        assert found is not None and found.verdict is Verdict.NOTE
        for word in ("dowels", "tenon", "unglued", "lock washers", "after a month", "not drawn"):
            assert word in found.reason


def test_plates_need_none() -> None:
    assert bolts_stay_tight(connector("hook_plate_100")) is None


def test_slats_on_a_strap_rub_on_their_cleats() -> None:
    of = bed(slat_fixing="strap")
    found = said(of, "deck_lies_quiet")

    assert found.verdict is Verdict.NOTE
    assert "felt" in found.reason
    assert {of.pieces.made_by(k)[0] for k in found.pieces} == {"slat_pieces"}
    assert found.value == len(found.pieces) > 5


def test_loose_panels_do_too() -> None:
    of = bed(deck="panels")
    found = said(of, "deck_lies_quiet")

    assert "deck panels" in found.reason
    assert {of.pieces.made_by(k)[0] for k in found.pieces} == {"deck_panel_pieces"}


def test_screwed_slats_lie_quiet() -> None:
    assert silent(bed(), "deck_lies_quiet")
