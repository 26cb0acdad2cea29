"""Drawings as DXF, opened again by the reader: sizes of wood, layers, dimensions, hatches."""

from __future__ import annotations

import math
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from model.drawings.paper import Drawing, Fill, Hatch, Item, Measure, Ring, Stroke, Text
from model.exports.drawing_dxf import dxf_file
from tests.model.exports.dxf_reader import dimensions, extents, opened, plain

ROOT = Path(__file__).resolve().parents[3]
SCALE = 0.1
SQUARE = ((10.0, 10.0), (60.0, 10.0), (60.0, 40.0), (10.0, 40.0))


def drawing(*items: Item, scale: float = SCALE) -> Drawing:
    return Drawing(width=100, height=80, scale=scale, items=items)


def level(size: float, words: str, drawn: float = 50.0) -> Measure:
    """A dimension below a part that is drawn so long, in mm on paper."""
    return Measure((10.0, 10.0), (10.0 + drawn, 10.0), 2.0, False, words, size)


def only(document: Any, kind: str) -> Any:
    (entity,) = document.modelspace().query(kind)
    return entity


@pytest.mark.parametrize(("unit", "code", "per_mm"), [("mm", 4, 1.0), ("inch", 1, 1 / 25.4)])
def test_wood_stands_at_true_size_in_the_unit_that_the_header_names(
    unit: Any, code: int, per_mm: float
) -> None:
    document = opened(dxf_file(drawing(Stroke(SQUARE[:2], "wide")), unit))

    line = only(document, "LINE")
    assert document.header["$INSUNITS"] == code
    assert line.dxf.start.distance(line.dxf.end) == pytest.approx(500 * per_mm, abs=1e-9)


def test_each_pen_has_its_layer_with_its_width_and_dashes() -> None:
    pens = ("wide", "narrow", "fine", "hidden", "centre")
    document = opened(dxf_file(drawing(*(Stroke(SQUARE[:2], pen) for pen in pens)), "mm"))

    drawn = [document.layers.get(each.dxf.layer) for each in document.modelspace().query("LINE")]
    assert [layer.dxf.name for layer in drawn] == [
        "outline", "edges", "fine-lines", "hidden", "centre-lines",
    ]  # fmt: skip
    assert [layer.dxf.lineweight for layer in drawn] == [50, 25, 13, 25, 25]
    assert [layer.dxf.linetype for layer in drawn][2:] == ["Continuous", "hidden", "centre"]


def test_dashes_come_out_as_on_paper_when_plotted_to_scale() -> None:
    """A dash of 12 and a gap of 3 pen widths. Source: ISO 128-2, from memory."""
    document = opened(dxf_file(drawing(), "mm"))

    steps = [abs(tag.value) for tag in document.linetypes.get("hidden").pattern_tags.tags
             if tag.code == 49]  # fmt: skip
    plotted = [step * document.header["$LTSCALE"] * SCALE for step in steps]
    assert plotted == pytest.approx([12 * 0.25, 3 * 0.25])


def test_a_stroke_that_comes_back_is_a_closed_polyline() -> None:
    document = opened(dxf_file(drawing(Stroke((*SQUARE, SQUARE[0]))), "mm"))

    line = only(document, "LWPOLYLINE")
    assert line.closed and len(line) == 4


def test_a_ring_is_a_circle_of_its_true_size() -> None:
    circle = only(opened(dxf_file(drawing(Ring((30.0, 20.0), 4.0)), "mm")), "CIRCLE")

    assert (circle.dxf.center.x, circle.dxf.center.y) == pytest.approx((300.0, 200.0))
    assert circle.dxf.radius == pytest.approx(40.0)


def test_words_are_as_high_as_on_paper_when_plotted() -> None:
    text = only(opened(dxf_file(drawing(Text((5.0, 6.0), "⌀ 8°", 2.5, turned=True)), "mm")), "TEXT")

    assert text.dxf.height * SCALE == pytest.approx(2.5)
    assert text.dxf.rotation == 90
    assert text.dxf.text == "%%c 8%%d"
    assert (text.dxf.align_point.x, text.dxf.align_point.y) == pytest.approx((50.0, 60.0))


# ---------------------------------------------------------------- dimensions


def told(unit: Any, *measures: Measure) -> Any:
    (found,) = dimensions(opened(dxf_file(drawing(*measures), unit)))
    return found


@pytest.mark.parametrize(
    ("unit", "size", "words"),
    [
        ("mm", 500.0, "500"),
        ("mm", 500.5, "500.5"),
        ("inch", 500.0625, '19 11/16"'),
        ("inch", 254.0, '10"'),
        ("inch", 9.525, '3/8"'),
    ],
)
def test_a_dimension_that_prints_its_words_by_itself_has_none_of_its_own(
    unit: Any, size: float, words: str
) -> None:
    found = told(unit, level(size, words, size * SCALE))

    assert found.words == words and not found.is_override
    assert found.size == pytest.approx(size, abs=1e-6)


@pytest.mark.parametrize("words", ["~500", "5 × 100 = 500", '500 [~19 11/16"]'])
def test_words_that_say_more_override_the_measured_ones(words: str) -> None:
    found = told("mm", level(500.0, words))

    assert found.words == words and found.is_override
    assert found.size == pytest.approx(500.0)


def test_signs_of_the_file_cannot_slip_in_through_words() -> None:
    assert plain(told("mm", level(500.0, "{a} ⌀5 <>")).words) == "{a} ⌀5 < >"


def test_what_is_enlarged_or_broken_off_measures_as_the_wood_does() -> None:
    found = told("mm", level(19.0, "19", drawn=19.0))  # at 1 : 1 on a sheet at 1 : 10

    assert found.size == pytest.approx(19.0)
    assert found.words == "19"


def test_an_upright_dimension_measures_upwards() -> None:
    up = Measure((10.0, 10.0), (12.0, 40.0), 4.0, True, "300", 300.0)
    document = opened(dxf_file(drawing(up), "mm"))

    entity = only(document, "DIMENSION")
    assert entity.dxf.angle == 90
    assert entity.get_measurement() == pytest.approx(300.0)
    assert entity.dxf.actual_measurement == pytest.approx(300.0)


def test_a_dimension_shows_its_ink_in_a_block_of_its_own() -> None:
    document = opened(dxf_file(drawing(level(500.0, "500")), "mm"))

    block = document.blocks.get(only(document, "DIMENSION").dxf.geometry)
    assert [text.dxf.text for text in block.query("TEXT")] == ["500"]
    assert len(block.query("LINE")) == 5  # its line, two that lead to it, two ticks


# ---------------------------------------------------------------- what is filled


def test_hatching_is_a_hatch_with_its_lines_as_far_apart_as_on_paper() -> None:
    hole = ((20.0, 20.0), (30.0, 20.0), (30.0, 30.0), (20.0, 30.0))
    hatch = only(opened(dxf_file(drawing(Hatch(SQUARE, 2.0, 45.0, (hole,))), "mm")), "HATCH")

    (line,) = hatch.pattern.lines
    assert not hatch.dxf.solid_fill and len(hatch.paths) == 2
    assert line.angle == 45.0
    assert math.hypot(line.offset.x, line.offset.y) * SCALE == pytest.approx(2.0)
    assert line.offset.x == pytest.approx(-line.offset.y)  # square to the lines


def test_hatching_leaves_out_what_a_blank_ring_covers() -> None:
    inside, across, away = Ring((30.0, 25.0), 5.0, blank=True), (60.0, 25.0), (90.0, 70.0)
    rings = (inside, Ring(across, 5.0, blank=True), Ring(away, 5.0, blank=True))
    hatch = only(opened(dxf_file(drawing(Hatch(SQUARE, 2.0), *rings), "mm")), "HATCH")

    outer, *holes = [[(x, y) for x, y, _ in path.vertices] for path in hatch.paths]
    assert outer == [(10 * x, 10 * y) for x, y in SQUARE]
    assert len(holes) == 2
    assert max(x for x, _ in holes[1]) == pytest.approx(600.0)


def test_a_fill_is_solid_in_its_grey() -> None:
    hatch = only(opened(dxf_file(drawing(Fill(SQUARE, 0.25)), "mm")), "HATCH")

    assert hatch.dxf.solid_fill
    assert hatch.rgb == (191, 191, 191)


# ---------------------------------------------------------------- the file


def test_the_same_drawing_gives_the_same_bytes_and_bears_no_date() -> None:
    items = (Stroke(SQUARE), Hatch(SQUARE, 2.0), level(500.0, "500"))

    assert dxf_file(drawing(*items), "mm") == dxf_file(drawing(*items), "mm")
    lines = dxf_file(drawing(*items), "mm").decode("utf-8").split("\r\n")
    dates = {lines[lines.index(f"$TD{name}") + 2] for name in ("CREATE", "UPDATE", "UUPDATE")}
    assert dates == {"2451545.0"}  # 1 January 2000, as a Julian day


def test_other_processes_write_the_same_bytes() -> None:
    """The library goes through sets, which each process orders in its own way."""
    code = (
        "import sys; from tests.model.exports.test_drawing_dxf import SQUARE, drawing, dxf_file;"
        "from model.drawings.paper import Stroke;"
        "sys.stdout.buffer.write(dxf_file(drawing(Stroke(SQUARE)), 'mm'))"
    )
    written = {
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, check=True, cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "4", "5")
    }  # fmt: skip

    assert written == {dxf_file(drawing(Stroke(SQUARE)), "mm")}


def test_the_header_names_the_extents() -> None:
    document = opened(dxf_file(drawing(Stroke(SQUARE)), "inch"))

    assert document.header["$EXTMAX"][:2] == pytest.approx((600 / 25.4, 400 / 25.4))
    assert extents(document) == pytest.approx((100, 100, 600, 400))
