"""Bed-rail connectors find wood, and the side can be lifted off again."""

from __future__ import annotations

import pytest

from model.checks.fit.connectors import post_backs_connector, rail_backs_connector
from model.checks.fit.side_connectors import room_to_lift, wood_round_plate
from model.checks.record import Finding, Verdict
from model.dimensions.connector_sizes import rail_spare_thickness
from model.materials import connectors

INCH = 25.4
PLATES = [row for row in connectors().values() if row.is_plate]
BOLTS = [row for row in connectors().values() if not row.is_plate]


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


@pytest.mark.parametrize("bolt", BOLTS, ids=lambda row: row.key)
def test_a_rail_too_thin_for_its_barrel_nut_fails(bolt: object) -> None:
    """Barrel nuts often need 1 1/2 in: a magazine on bed building, 2007. 3/4 in is too thin."""
    spare = rail_spare_thickness(0.75 * INCH, bolt)  # type: ignore[arg-type]

    assert verdict(rail_backs_connector(bolt, spare)) is Verdict.FAILS  # type: ignore[arg-type]


@pytest.mark.parametrize("row", [*PLATES, *BOLTS], ids=lambda row: row.key)
def test_a_rail_of_an_inch_and_a_half_backs_every_connector(row: object) -> None:
    spare = rail_spare_thickness(1.5 * INCH, row)  # type: ignore[arg-type]

    assert verdict(rail_backs_connector(row, spare)) is Verdict.HOLDS  # type: ignore[arg-type]


def test_a_pocket_that_leaves_the_post_thin_fails() -> None:
    """Half an inch stays behind the hooks: common practice, no source."""
    assert verdict(post_backs_connector(PLATES[0], 0.4 * INCH)) is Verdict.FAILS
    assert verdict(post_backs_connector(PLATES[0], 0.5 * INCH)) is Verdict.HOLDS


def test_a_plate_as_tall_as_its_rail_fails() -> None:
    """Rails broke where their ends were slotted for hooks: wood stays above and below the plate."""
    assert verdict(wood_round_plate(PLATES[0], 0.0)) is Verdict.FAILS
    assert verdict(wood_round_plate(PLATES[0], INCH)) is Verdict.HOLDS


def test_a_side_that_cannot_rise_off_its_hooks_fails() -> None:
    assert verdict(room_to_lift(PLATES[0], -1.0)) is Verdict.FAILS
    assert verdict(room_to_lift(PLATES[0], 0.0)) is Verdict.HOLDS


def test_bolts_have_no_plate_and_no_hooks() -> None:
    assert post_backs_connector(BOLTS[0], 0.0) is None
    assert wood_round_plate(BOLTS[0], 0.0) is None
    assert room_to_lift(BOLTS[0], -1.0) is None
