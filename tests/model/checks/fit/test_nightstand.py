"""A drawer opens beside the nightstand, or as far as the nightstand lets it."""

from __future__ import annotations

import pytest

from model.checks.fit.nightstand import drawer_clears_nightstand
from model.checks.record import Finding, Verdict

INCH = 25.4


def asked(clearance: float, gap: float = 50.0, drawers: int = 3) -> Finding | None:
    return drawer_clears_nightstand(drawers, 400.0, gap, clearance, 559.0, 40.0)


@pytest.mark.parametrize(
    ("clearance", "expected"), [(20.0, Verdict.HOLDS), (2.0, Verdict.TIGHT), (-2.0, Verdict.FAILS)]
)
def test_a_drawer_beside_the_nightstand_needs_its_clearance(
    clearance: float, expected: Verdict
) -> None:
    finding = asked(clearance)

    assert finding is not None and finding.verdict is expected


def test_a_drawer_behind_the_nightstand_opens_four_inches_and_no_more() -> None:
    """A pull of 40 mm in a gap of 142 leaves 102 of the 559 that it travels."""
    finding = asked(-100.0, gap=4 * INCH + 40)

    assert finding is not None
    assert finding.value == pytest.approx(4 * INCH)
    assert finding.margin == pytest.approx(4 * INCH - 559)


def test_a_nightstand_far_out_lets_the_drawer_open() -> None:
    finding = asked(-100.0, gap=600.0)

    assert finding is not None and finding.verdict is Verdict.HOLDS


def test_no_nightstand_or_no_drawers_is_no_question() -> None:
    assert asked(-100.0, drawers=0) is None
    assert drawer_clears_nightstand(3, 0.0, 50.0, -100.0, 559.0, 40.0) is None
