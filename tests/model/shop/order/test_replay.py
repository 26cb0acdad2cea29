"""Whoever follows the work order, and nothing else, makes every part of the bed as it is drawn."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from pathlib import Path

import pytest

from model import designs
from model.bed import Bed, solve
from model.errors import CannotBuild
from model.part import Cut, Hole
from model.parts.marks import Mark
from model.shop.cut_list import cut_list
from model.shop.order.build import work_order
from model.shop.order.record import WorkOrder
from tests.model.shop.order.one_each import one_each
from tests.model.shop.order.replay import Workpiece, bench
from tests.properties.designs import random_design

DEMOS = sorted((Path(__file__).resolve().parents[4] / "resources" / "demos").glob("*.bedwright"))
STEP = 0.0011  # mm: figures that a machine cannot tell apart share a setting


@cache
def demo(path: Path) -> tuple[Bed, WorkOrder]:
    bed = solve(designs.read(path))
    return bed, work_order(bed, one_each(bed))


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_a_demo_made_from_its_work_order_is_the_demo(path: Path) -> None:
    assert_made(*demo(path))


def test_any_bed_made_from_its_work_order_is_that_bed() -> None:
    beds = [bed for seed in range(40) if (bed := drawn(seed)) is not None]

    assert len(beds) > 20, "most of the designs that are drawn can be built"
    for bed in beds:
        assert_made(bed, work_order(bed, one_each(bed)))


def drawn(seed: int) -> Bed | None:
    try:
        return solve(random_design(seed))
    except CannotBuild:
        return None


def assert_made(bed: Bed, order: WorkOrder) -> None:
    made = bench(order, cut_list(bed))

    for mark in bed.marks:
        part = made[mark.mark]
        assert part.size == pytest.approx(mark.part.size, abs=STEP), (
            f"{bed.design.name}: {mark.mark}"
        )
        assert_same_cuts(mark, part)
        assert_same_holes(mark, part)
        assert part.taper == pytest.approx((mark.part.taper, mark.part.taper_length)), mark.mark
        assert part.eased == pytest.approx(mark.part.eased), mark.mark
        assert part.is_sanded, mark.mark


def assert_same_cuts(mark: Mark, part: Workpiece) -> None:
    drawn_corners = sorted(corners(cut, mark.part.size) for cut in mark.part.cuts)
    made_corners = sorted(corners(cut, part.size) for cut in part.cuts)
    assert len(made_corners) == len(drawn_corners), mark.mark
    unmatched = list(made_corners)
    for cut in drawn_corners:
        match = next((each for each in unmatched if near(each, cut)), None)
        assert match is not None, f"{mark.mark} lacks {cut}"
        unmatched.remove(match)


def corners(cut: Cut, size: Sequence[float]) -> tuple[float, ...]:
    low = (max(each, 0.0) for each in cut.low)
    high = (min(each, side) for each, side in zip(cut.high, size, strict=True))
    return (*low, *high)


def assert_same_holes(mark: Mark, part: Workpiece) -> None:
    """Compared by axis, diameter and floor: a bit enters at the face, not at a counterbore."""
    assert len(part.holes) == len(mark.part.holes), mark.mark
    unmatched = [bore(hole) for hole in part.holes]
    for hole in mark.part.holes:
        match = next((each for each in unmatched if near(each, bore(hole))), None)
        assert match is not None, f"{mark.mark} lacks {hole}"
        unmatched.remove(match)


def bore(hole: Hole) -> tuple[float, ...]:
    """Where a hole ends, which way it goes, how wide: (7,), mm and a unit vector."""
    floor = (a + hole.depth * way for a, way in zip(hole.at, hole.toward, strict=True))
    return (*floor, *hole.toward, hole.diameter)


def near(one: Sequence[float], other: Sequence[float]) -> bool:
    return all(abs(a - b) <= STEP for a, b in zip(one, other, strict=True))
