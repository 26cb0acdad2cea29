"""Each demo is made by hand from the printed work order: nothing missing, nothing to guess."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import pytest

from model import designs
from model.bed import Bed, solve
from model.errors import CannotBuild
from model.exports.work_order_text import COLUMNS, lines
from model.part import Cut, Hole
from model.parts.marks import Mark
from model.shop.order.build import work_order
from model.shop.plans import CutPlan, first_plans
from model.stock.progress import NOT_BEGUN, Progress
from tests.model.shop.order import paper
from tests.model.shop.order.one_each import one_each
from tests.model.shop.order.paper import Setting
from tests.properties.designs import random_design

DEMOS = sorted((Path(__file__).resolve().parents[4] / "resources" / "demos").glob("*.bedwright"))
ROUNDED = {"mm": 0.11, "inch": 0.41}  # mm: half of 0.1 mm, of 1/64 in; twice, where two add up

SLOTS = (
    "Grooves", "Rabbets", "Dadoes", "Mortises", "Tenons", "Tongues", "Dovetails",
    "Recesses for bed plates", "Pockets behind bed plates", "Hand holes",
)  # fmt: skip
HOLES = ("holes", "Counterbores", "Holes for", "Vents")

demo = pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)


@cache
def printed(path: Path) -> tuple[Bed, tuple[CutPlan, ...], str]:
    bed = solve(designs.read(path))
    plans = first_plans(bed)
    return bed, plans, "\n".join(lines(work_order(bed, plans), NOT_BEGUN))


@demo
def test_every_line_fits_the_page(path: Path) -> None:
    assert max(len(line) for line in printed(path)[2].splitlines()) <= COLUMNS


@demo
def test_every_cut_and_hole_can_be_made_from_what_is_printed(path: Path) -> None:
    bed, _, text = printed(path)

    assert_printed(bed, text)


def test_any_bed_can_be_made_from_what_is_printed() -> None:
    made = 0
    for seed in range(60, 85):
        try:
            bed = solve(random_design(seed))
        except CannotBuild:
            continue
        order = work_order(bed, one_each(bed))
        assert_printed(bed, "\n".join(lines(order, NOT_BEGUN)))
        made += 1

    assert made > 10, "most of the designs that are drawn can be built"


def assert_printed(bed: Bed, text: str) -> None:
    settings = paper.read(text)
    tolerance = ROUNDED[bed.design.value("shown_unit")]

    for mark in bed.marks:
        cuts, holes, pockets = made_on_paper(mark, bed, settings)
        straight = [hole for hole in mark.part.holes if not hole.kind.startswith("pocket")]
        assert_alike(
            [corners(c, mark) for c in mark.part.cuts], [corners(c, mark) for c in cuts], tolerance
        )
        assert_alike([bore(h) for h in straight], [bore(h) for h in holes], tolerance)
        assert pockets == sum(hole.kind == "pocket hole" for hole in mark.part.holes), mark.mark


def made_on_paper(
    mark: Mark, bed: Bed, settings: list[Setting]
) -> tuple[list[Cut], list[Hole], int]:
    cuts: list[Cut] = []
    holes: list[Hole] = []
    pockets = 0
    for setting in settings:
        for where in places(setting, mark.mark, bed):
            if setting.head.startswith("Pocket holes"):
                pockets += count_of(where)
            elif setting.head.startswith(SLOTS):
                cuts += paper.slots(setting.set_to, where, mark.part.size)
            elif any(word in setting.head.partition("(")[0] for word in HOLES):
                holes += paper.holes(setting.set_to, where, mark.part.size)
    return cuts, holes, pockets


def count_of(where: str) -> int:
    """How many pockets a line asks for: places from edges, at one end or at both."""
    total = 0
    for place in where.split("; "):
        match = paper.WHERE.match(place)
        assert match is not None, place
        total += len(paper.faces(match[3])) * len(paper.centres(match[4]))
    return total


def places(setting: Setting, mark: str, bed: Bed) -> list[str]:
    """What a setting says of one mark."""
    names = {each.mark: each.name for each in bed.marks}
    found = []
    for line in setting.lines:
        if re.match(rf"{re.escape(mark)} +\d", line):
            _, quantity, where = paper.marked(line, names)
            assert quantity == next(each.quantity for each in bed.marks if each.mark == mark)
            found.append(where)
    return found


def corners(cut: Cut, mark: Mark) -> tuple[float, ...]:
    low = (max(each, 0.0) for each in cut.low)
    high = (min(each, side) for each, side in zip(cut.high, mark.part.size, strict=True))
    return (*low, *high)


def bore(hole: Hole) -> tuple[float, ...]:
    floor = (a + hole.depth * way for a, way in zip(hole.at, hole.toward, strict=True))
    return (*floor, *hole.toward, hole.diameter)


def assert_alike(
    drawn: Sequence[tuple[float, ...]], made: Sequence[tuple[float, ...]], tolerance: float
) -> None:
    assert len(made) == len(drawn)
    left = list(made)
    for each in drawn:
        near = min(left, key=lambda other: distance(each, other))
        assert distance(each, near) <= tolerance, f"{each} is printed as {near}"
        left.remove(near)


def distance(one: Sequence[float], other: Sequence[float]) -> float:
    return max(abs(a - b) for a, b in zip(one, other, strict=True))


@demo
def test_every_piece_of_the_cut_plans_is_freed_by_one_printed_cut(path: Path) -> None:
    _, plans, text = printed(path)
    wanted = Counter(
        f"{piece.mark}-{number}"
        for cut in plans
        for piece in cut.plan.task.pieces
        for number in range(piece.first, piece.first + piece.quantity)
    )

    freed = Counter(
        name
        for setting in paper.read(text)
        for line in setting.lines
        if re.match(r"(cut \d+, )?(board|sheet) \d+:", line)
        for name in re.findall(r"[A-Z]\d+(?:/\d+)?-\d+", re.sub(r"\(.*?\)", "", line))
    )

    assert freed == wanted


@demo
def test_every_solid_part_is_cut_once_to_the_length_that_is_printed(path: Path) -> None:
    bed, _, text = printed(path)
    settings, tolerance = paper.read(text), ROUNDED[bed.design.value("shown_unit")]

    for mark in bed.marks:
        if mark.made_of is None or mark.made_of.kind == "sheet":
            continue
        (length,) = (
            s
            for s in settings
            if s.head.startswith("Crosscut to length") and places(s, mark.mark, bed)
        )
        match = re.search(r"stop at (.+)$", length.set_to)
        assert match is not None
        assert paper.size(match[1]) == pytest.approx(float(mark.length), abs=tolerance)


@demo
def test_what_is_done_is_printed_with_its_box_ticked(path: Path) -> None:
    bed, plans, text = printed(path)
    order = work_order(bed, plans)
    done = [line.key for line in order.lines][3::7]

    ticked = "\n".join(lines(order, Progress(steps_done=frozenset(done))))

    assert text.count("[x]") == 0
    assert ticked.count("[x]") == len(done)
