"""Fittings as they are sold."""

from __future__ import annotations

from typing import Any

from model.cost.hardware import hardware_needs
from tests.model.cost.beds import bed_of


def told(name: str, **changes: Any) -> dict[str, tuple[float, str]]:
    found = hardware_needs(bed_of(name, **changes))
    return {need.key: (need.quantity, need.unit) for need in found}


def test_slides_are_bought_by_the_pair_at_their_length() -> None:
    """Four drawers, four pairs; the model has sixteen members."""
    found = told("painted_storage_queen")

    assert found["slides/side_mount_full/711"] == (4, "pair")
    assert [key for key in found if key.startswith("slides")] == ["slides/side_mount_full/711"]


def test_rows_with_slides_of_two_lengths_are_two_lines() -> None:
    found = told("split_king_foot_drawers")

    assert sum(n for key, (n, _) in found.items() if key.startswith("slides/")) == 6


def test_plates_are_bought_by_the_pair_and_bolts_with_their_nuts() -> None:
    assert told("painted_storage_queen")["connectors/hook_plate_150"] == (4, "pair")
    found = told("loft_single")
    assert found["connectors/bed_bolt_3_8"] == (8, "set")
    assert not [key for key in found if "nut" in key]


def test_every_bolt_has_a_washer_and_plates_have_none() -> None:
    assert told("loft_single")["washers/9.53"] == (8, "piece")
    washers = [key for key in told("painted_storage_queen") if key.startswith("washers")]
    assert washers == ["washers/flat"]  # those of its fronts


def test_screws_in_wide_holes_have_washers_under_their_heads() -> None:
    """Three drawers of the guest room, four screws a front, in holes 3 mm wider than their shank
    holes: the head of a No. 8, about 8 mm, would slip through.
    """
    assert told("guest_room_double")["washers/flat"] == (3 * (4 + 2), "piece")  # and the pulls
    assert "washers/flat" not in told("loft_single")


def test_dowels_have_some_to_spare() -> None:
    assert told("painted_storage_queen", spare_screws=25)["dowels/10x50"] == (30, "piece")


def test_slats_that_are_not_screwed_take_two_straps() -> None:
    """14 slats over 2032 mm of deck: two straps, a foot longer each, in tenths of a metre."""
    assert "strap/slats" not in told("painted_storage_queen")

    metres, unit = told("painted_storage_queen", slat_fixing="strap")["strap/slats"]

    assert unit == "metre"
    assert 2 * (2.0 + 0.3) <= metres <= 2 * (2.1 + 0.3)
