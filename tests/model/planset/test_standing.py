"""Chains of sizes along pieces: they add up, and lead to edges that are there."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.cutting.record import Box
from model.drawings.dimensioning.told import Told
from model.planset.plate import SIDES
from model.planset.standing import chain_along, row_of, whole

TOLD = Told("inch")
SLATS = st.tuples(st.integers(6, 20), st.integers(40, 120), st.integers(10, 90), st.integers(0, 60))


def boxes(count: int, wide: float, gap: float, start: float) -> list[Box]:
    """Slats in a row along the right side of a view, seen from above."""
    return [
        Box(0.0, start + n * (wide + gap), 900.0, start + n * (wide + gap) + wide)
        for n in range(count)
    ]


@given(SLATS)
def test_a_row_of_slats_adds_up_to_its_well(row: tuple[int, int, int, int]) -> None:
    count, wide, gap, first = row
    slats = boxes(*row)
    low, high = 0.0, slats[-1].y1 + first
    chains = list(row_of(slats, "right", TOLD, low, high))

    assert sum(sum(chain.sizes()) for chain in chains) == pytest.approx(high - low + wide)
    # The span from the first slat's start to the last one's start lies over the first slat.
    assert all(len(chain.words) in (0, len(chain.sizes())) for chain in chains)
    (told,) = (chain.words[0] for chain in chains if "in all" in chain.words[0])
    assert told.startswith(f"{count} in all, gaps ")
    assert f"gaps {TOLD.size(gap)}: " in told
    assert str(count - 1) in re.findall(r"\d+", told)


def test_a_short_row_is_told_one_by_one() -> None:
    slats = boxes(3, 90.0, 60.0, 20.0)
    (chain,) = row_of(slats, "right", TOLD, 0.0, 430.0)

    assert chain.sizes() == (20.0, 90.0, 60.0, 90.0, 60.0, 90.0, 20.0)


def test_an_uneven_row_is_told_one_by_one() -> None:
    slats = [*boxes(7, 90.0, 60.0, 20.0), Box(0.0, 1200.0, 900.0, 1290.0)]
    (chain,) = row_of(slats, "right", TOLD, 0.0, 1300.0)

    assert sum(chain.sizes()) == pytest.approx(1300.0)
    assert len(chain.sizes()) == 2 * len(slats) + 1


@given(st.lists(st.tuples(st.integers(0, 2000), st.integers(0, 500), st.integers(1, 400),
                          st.integers(1, 400)), min_size=1, max_size=9),
       st.sampled_from(SIDES))  # fmt: skip
def test_a_chain_runs_over_all_edges_once(
    found: list[tuple[int, int, int, int]], side: str
) -> None:
    pieces = [Box(x, y, x + w, y + h) for x, y, w, h in found]
    axis = 0 if side in ("below", "above") else 1
    (chain,) = chain_along(pieces, side)  # type: ignore[arg-type]
    edges = sorted({box[at] for box in pieces for at in (axis, axis + 2)})

    assert [point[axis] for point in chain.points] == edges
    assert sum(chain.sizes()) == edges[-1] - edges[0]
    for point in chain.points:
        assert any(
            point[axis] in (box[axis], box[axis + 2])
            and point[1 - axis] in (box[1 - axis], box[3 - axis])
            for box in pieces
        )


def test_nothing_is_told_of_less_than_a_span() -> None:
    assert list(chain_along([], "below")) == []


def test_the_whole_stands_farthest_out() -> None:
    chain = whole(Box(10.0, 20.0, 110.0, 80.0), "left")

    assert chain.level == 1
    assert chain.points == ((10.0, 20.0), (10.0, 80.0))


@given(st.lists(st.integers(40, 1500), min_size=2, max_size=6))
def test_what_is_told_of_a_chain_adds_up_to_what_is_told_of_the_whole(sizes: list[int]) -> None:
    told = [Fraction(0)] + [inches(words) for words in TOLD.row([float(each) for each in sizes])]

    assert sum(told) == inches(TOLD.size(float(sum(sizes))))


def inches(words: str) -> Fraction:
    return Fraction(sum(Fraction(each) for each in words.strip('~"').split()))
