"""A verdict follows from its margin: below zero fails, within the tight band is tight."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.checks.record import Finding, Verdict, advice, at_least, at_most, between
from model.checks.run import worst_first

sizes = st.floats(-1000, 1000)
bands = st.floats(0, 50)


@pytest.mark.parametrize(
    ("value", "verdict"),
    [
        (9.9, Verdict.FAILS), (10.0, Verdict.TIGHT), (12.9, Verdict.TIGHT),
        (13.0, Verdict.HOLDS), (50.0, Verdict.HOLDS),
    ],
)  # fmt: skip
def test_a_value_must_reach_its_limit(value: float, verdict: Verdict) -> None:
    finding = at_least(value, 10, tight=3)

    assert finding.verdict is verdict
    assert finding.margin == pytest.approx(value - 10)


@pytest.mark.parametrize(
    ("value", "verdict"),
    [
        (10.1, Verdict.FAILS), (10.0, Verdict.TIGHT), (7.1, Verdict.TIGHT),
        (7.0, Verdict.HOLDS), (-50.0, Verdict.HOLDS),
    ],
)  # fmt: skip
def test_a_value_must_stay_below_its_limit(value: float, verdict: Verdict) -> None:
    finding = at_most(value, 10, tight=3)

    assert finding.verdict is verdict
    assert finding.margin == pytest.approx(10 - value)


def test_a_value_at_its_limit_holds_where_nothing_is_tight() -> None:
    assert at_least(10, 10).verdict is Verdict.HOLDS
    assert at_most(10, 10).verdict is Verdict.HOLDS


def test_floating_point_dust_fails_nothing() -> None:
    """0.1 + 0.2 is a hair more than 0.3; no saw knows."""
    assert at_most(0.1 + 0.2, 0.3).verdict is Verdict.HOLDS
    assert at_least(-1e-9, 0).verdict is Verdict.HOLDS


def test_both_ends_of_a_band_hold_where_nothing_is_tight() -> None:
    assert between(25, 25, 76).verdict is between(76, 25, 76).verdict is Verdict.HOLDS
    assert between(75, 25, 76, tight=3).verdict is Verdict.TIGHT


def test_a_band_shows_the_end_that_is_nearer() -> None:
    assert between(30, 25, 76).limit == 25
    assert between(70, 25, 76).limit == 76
    assert between(20, 25, 76).limit == 25
    assert between(80, 25, 76).limit == 76


@given(sizes, sizes, bands)
def test_a_band_holds_its_own_values_and_no_others(value: float, low: float, wide: float) -> None:
    finding = between(value, low, low + wide)

    inside = low - 1e-6 <= value <= low + wide + 1e-6
    assert (finding.verdict is not Verdict.FAILS) is inside


@given(sizes, sizes, bands)
def test_a_margin_below_zero_fails_and_no_other_does(
    value: float, limit: float, tight: float
) -> None:
    for finding in (at_least(value, limit, tight=tight), at_most(value, limit, tight=tight)):
        assert (finding.verdict is Verdict.FAILS) is (finding.margin < -1e-6)
        assert abs(finding.margin) == pytest.approx(abs(value - limit))


@given(sizes, sizes, bands)
def test_advice_never_fails_a_bed(value: float, limit: float, tight: float) -> None:
    plain = at_least(value, limit, tight=tight, unit="%")

    finding = advice(plain)

    assert finding.verdict in (Verdict.NOTE, Verdict.HOLDS)
    assert (finding.verdict is Verdict.HOLDS) is (plain.verdict is Verdict.HOLDS)
    assert (finding.value, finding.limit) == (plain.value, plain.limit)
    assert (finding.margin, finding.unit) == (plain.margin, plain.unit)


def found(verdict: Verdict, id: str = "") -> Finding:
    return Finding(id=id, value=0, limit=0, margin=0, verdict=verdict)


def test_the_worst_come_first() -> None:
    mixed = [found(verdict) for verdict in (*Verdict, *reversed(Verdict))]

    verdicts = [finding.verdict for finding in worst_first(mixed)]

    assert verdicts == [v for v in ("fails", "tight", "note", "holds") for _ in range(2)]


def test_findings_of_one_verdict_keep_their_order() -> None:
    ids = [finding.id for finding in worst_first([found(Verdict.NOTE, id) for id in "cab"])]

    assert ids == ["c", "a", "b"]
