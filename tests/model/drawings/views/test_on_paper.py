"""A view on paper: which pens, how short, how rounded, and in which order."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from model.bed import Bed, solve
from model.cutting.record import Box
from model.designs import read
from model.drawings.hatching import hatch_strokes
from model.drawings.paper import PEN_WIDTHS, Drawing, Fill, Hatch, Item, Ring, Stroke
from model.drawings.views.cropped import cropped
from model.drawings.views.gaze import FOOT_LEFT, FRONT, LEFT, PLAN
from model.drawings.views.on_paper import LEAST, on_paper, origin_for
from model.drawings.views.scene import bed_scene, drawer_offsets
from model.drawings.views.section import Plane
from model.drawings.views.view import View, seen
from model.exports.drawing_svg import svg_text
from tests.model.drawings.views.blocks import block, blocks, bore, scene_of, total

MIDDLE = Plane(point=(0.0, 700.0, 0.0), normal=(0.0, -1.0, 0.0))


@pytest.fixture(scope="module")
def queen() -> Bed:
    return solve(read(Path("resources/demos/painted_storage_queen.bedwright")))


@pytest.fixture(scope="module", params=["front", "section", "slanted"])
def view(queen: Bed, request: pytest.FixtureRequest) -> View:
    scene = bed_scene(queen, bought=True)
    return {
        "front": lambda: seen(scene, FRONT),
        "section": lambda: seen(scene, FRONT, MIDDLE),
        "slanted": lambda: seen(scene, FOOT_LEFT, hidden=False),
    }[request.param]()


def drawn(view: View, scale: float = 0.1) -> list[Item]:
    return list(on_paper(view, scale, origin_for(view, scale, (10.0, 20.0))))


def strokes(items: list[Item]) -> list[Stroke]:
    return [item for item in items if isinstance(item, Stroke)]


def test_a_view_has_at_most_three_widths_of_line(view: View) -> None:
    items = drawn(view)

    widths = {PEN_WIDTHS[item.pen] for item in items if isinstance(item, Stroke | Ring)}
    fine = {PEN_WIDTHS["fine"] for item in items if isinstance(item, Hatch)}
    assert len(widths | fine) <= 3


def test_it_stands_in_its_corner_of_the_paper(view: View) -> None:
    points = [point for stroke in strokes(drawn(view)) for point in stroke.points]
    xs, ys = zip(*points, strict=True)

    assert (min(xs), min(ys)) == pytest.approx((10.0, 20.0), abs=0.002)
    size = (view.box.x1 - view.box.x0) * 0.1, (view.box.y1 - view.box.y0) * 0.1
    assert (max(xs) - 10.0, max(ys) - 20.0) == pytest.approx(size, abs=0.002)


def test_no_stroke_is_a_speck(view: View) -> None:
    for stroke in strokes(drawn(view)):
        xs, ys = zip(*stroke.points, strict=True)
        assert max(max(xs) - min(xs), max(ys) - min(ys)) >= LEAST - 0.001


def test_points_are_whole_millionths_of_a_millimetre(view: View) -> None:
    """No coarser: files at true size tell them thirty times as large."""
    for stroke in strokes(drawn(view)):
        for x, y in stroke.points:
            assert (x, y) == (round(x, 6), round(y, 6))


def test_each_stroke_is_about_a_piece_of_the_bed(view: View, queen: Bed) -> None:
    known = {f"piece/{m.mark}-{k}" for m in queen.marks for k in range(1, m.quantity + 1)}
    known |= {f"piece/HW-{h.code}-{k}" for h in queen.hardware for k in range(1, h.quantity + 1)}

    assert {item.about for item in drawn(view)} <= known


def test_the_same_bed_gives_the_same_bytes(queen: Bed) -> None:
    again = solve(queen.design)
    texts = []
    for bed in (queen, again):
        scene = bed_scene(bed, offsets=drawer_offsets(bed, {"left-1": 300.0}), bought=True)
        items = tuple(drawn(seen(scene, FOOT_LEFT, hidden=False)))
        texts.append(svg_text(Drawing(width=400, height=400, scale=0.1, items=items)))

    assert texts[0] == texts[1]


def test_a_bore_is_one_ring_or_one_curve() -> None:
    part = block(
        (100.0, 60.0, 40.0), holes=(bore((30.0, 25.0, 40.0), (0.0, 0.0, -1.0), 20.0, 9.0),)
    )
    scene = scene_of((part, (0.0, 0.0, 0.0)))

    rings = [item for item in drawn(seen(scene, PLAN, hidden=False), 1.0) if isinstance(item, Ring)]
    curves = [
        s for s in strokes(drawn(seen(scene, FOOT_LEFT, hidden=False), 0.2)) if len(s.points) > 9
    ]

    assert [(ring.radius, ring.pen) for ring in rings] == [(10.0, "narrow")]
    assert len(curves) == 1
    assert math.dist(curves[0].points[0], curves[0].points[-1]) < 0.03


def test_of_lines_that_would_print_as_one_the_lesser_is_left_out() -> None:
    """Boards a millimetre apart: at 1 : 10 the gap is 0.1 mm, at 1 : 1 it shows."""
    scene = blocks(((0.0, 0.0, 0.0), (99.0, 20.0, 80.0)), ((100.0, 0.0, 0.0), (200.0, 20.0, 80.0)))
    view = seen(scene, FRONT)

    def upright(scale: float) -> list[Stroke]:
        return [
            each for each in strokes(drawn(view, scale))
            if abs(each.points[0][0] - each.points[-1][0]) < 0.01
            and math.dist(each.points[0], each.points[-1]) > 79 * scale
        ]  # fmt: skip

    assert len(upright(1.0)) == 4
    assert len(upright(0.1)) == 3


def test_cut_faces_are_hatched_and_thin_ones_filled(queen: Bed) -> None:
    """The drawers' bottoms of 6 mm are 0.6 mm thick on paper."""
    items = drawn(seen(bed_scene(queen), FRONT, MIDDLE, hidden=False))

    hatched = {item.about.partition("-")[0] for item in items if isinstance(item, Hatch)}
    filled = {item.about.partition("-")[0] for item in items if isinstance(item, Fill)}
    by_name = {mark.name: f"piece/{mark.mark}" for mark in queen.marks}
    assert by_name["box bottom"] in filled
    assert by_name["side rail" if "side rail" in by_name else "top rail"] in hatched


def test_no_cut_face_is_left_white(queen: Bed) -> None:
    """However narrow, a stroke of its hatching runs through it."""
    for at in (-700.0, -500.0, -120.0, 0.0, 130.0, 600.0):
        cut = Plane(point=(at, 0.0, 0.0), normal=(-1.0, 0.0, 0.0))
        for item in drawn(seen(bed_scene(queen, bought=True), LEFT, cut, hidden=False), 0.05):
            assert not isinstance(item, Hatch) or hatch_strokes(item)


def test_neighbours_are_hatched_in_different_ways() -> None:
    scene = blocks(
        ((0.0, 0.0, 0.0), (50.0, 100.0, 50.0)), ((50.0, 0.0, 0.0), (100.0, 100.0, 50.0)),
        ((0.0, 0.0, 50.0), (100.0, 100.0, 90.0)),
    )  # fmt: skip
    cut = Plane(point=(0.0, 50.0, 0.0), normal=(0.0, -1.0, 0.0))

    hatches = [item for item in drawn(seen(scene, FRONT, cut), 0.5) if isinstance(item, Hatch)]

    assert len({(each.angle, each.spacing) for each in hatches}) == 3


def test_a_detail_ends_at_its_box(queen: Bed) -> None:
    box = Box(-850.0, 0.0, -600.0, 400.0)
    whole = seen(bed_scene(queen), FRONT, MIDDLE, hidden=False)

    detail = cropped(whole, box)

    for points in (detail.visible, *(face.outline for face in detail.sections)):
        assert points[..., 0].min() >= box.x0 - 1e-6
        assert points[..., 0].max() <= box.x1 + 1e-6
        assert points[..., 1].max() <= box.y1 + 1e-6
    assert 0 < len(detail.sections) < len(whole.sections)
    assert 0 < total(detail.visible) < total(whole.visible)
    sides = [
        stroke for stroke in strokes(drawn(detail, 0.5))
        if stroke.pen != "hidden" and all(abs(x - 135.0) < 1e-6 for x, _ in stroke.points)
    ]  # fmt: skip
    assert sides == []  # what is broken off has no edge there


def test_one_piece_of_many_is_seen_alone(queen: Bed) -> None:
    view = seen(bed_scene(queen, [5]), LEFT)

    assert set(view.visible_piece.tolist()) == {0}
    assert len(view.names) == 1
