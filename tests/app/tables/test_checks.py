"""What the list of checks shows of figures that have no end."""

from __future__ import annotations

import math

from app.tables.cells import quantity_text
from app.tables.checks import rank
from model.checks.record import Finding, Verdict


def finding(margin: float, limit: float) -> Finding:
    return Finding(value=1.0, limit=limit, margin=margin, verdict=Verdict.HOLDS)


def test_a_check_without_a_limit_shows_none() -> None:
    assert quantity_text(math.inf, "mm", "inch") == ""
    assert quantity_text(math.nan, "MPa", "mm") == ""


def test_a_check_without_a_limit_is_listed_last() -> None:
    endless, near, far = finding(math.inf, math.inf), finding(0.1, 1.0), finding(9.0, 1.0)

    assert sorted((endless, far, near), key=rank) == [near, far, endless]
