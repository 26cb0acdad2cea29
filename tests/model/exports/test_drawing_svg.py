"""The SVG of a drawing, read back by a parser of XML."""

from pathlib import Path
from xml.etree import ElementTree

import pytest

from model.drawings.cut_layout import cut_layout
from model.drawings.cut_sheet import Room
from model.drawings.cut_told import Shown
from model.drawings.paper import Area, Ring
from model.exports.drawing_svg import svg_text, write
from tests.model.drawings.sample_layout import sheet, small_sheet

SVG = "{http://www.w3.org/2000/svg}"
A4 = Room(277.0, 170.0)


def test_it_prints_true_to_scale() -> None:
    """A unit of the view box is a mm of paper, as SVG defines both."""
    drawing = cut_layout(small_sheet(), A4, Shown(), scale=0.1)

    root = ElementTree.fromstring(svg_text(drawing))

    assert root.get("width") == f"{drawing.width:g}mm"
    assert root.get("viewBox") == f"0 0 {drawing.width:g} {drawing.height:g}"
    wide = next(each for each in root.iter(f"{SVG}path") if each.get("stroke-width") == "0.5")
    points = [tuple(map(float, p.split())) for p in wide.get("d")[1:].split(" L")]
    assert max(x for x, _ in points) - min(x for x, _ in points) == pytest.approx(244.0)
    assert max(y for _, y in points) - min(y for _, y in points) == pytest.approx(122.0)


def test_all_ink_is_there_and_places_are_none() -> None:
    drawing = cut_layout(sheet(), A4, Shown())

    root = ElementTree.fromstring(svg_text(drawing))

    count = {name: len(list(root.iter(f"{SVG}{name}"))) for name in ("text", "circle", "path")}
    assert count["text"] == len(list(drawing.texts()))
    assert count["circle"] == sum(isinstance(item, Ring) for item in drawing.items)
    places = sum(isinstance(item, Area) for item in drawing.items)
    assert sum(count.values()) == len(drawing.items) - places


def test_up_is_up() -> None:
    """The first strip lies at the lower edge, so its words stand below those of the second."""
    root = ElementTree.fromstring(svg_text(cut_layout(small_sheet(), A4, Shown())))

    height = {each.text: float(each.get("y")) for each in root.iter(f"{SVG}text")}

    assert height["B1-1"] > height["B2-1"]


def test_signs_of_the_makers_own_are_written_as_text() -> None:
    drawing = cut_layout(small_sheet(), A4, Shown(title='3/4" ply <A & B>'))

    root = ElementTree.fromstring(svg_text(drawing))

    assert root.find(f"{SVG}title").text == '3/4" ply <A & B>'


def test_it_is_the_same_file_every_time(tmp_path: Path) -> None:
    one, other = tmp_path / "one.svg", tmp_path / "other.svg"

    write(cut_layout(sheet(), A4, Shown()), one)
    write(cut_layout(sheet(), A4, Shown()), other)

    assert one.read_bytes() == other.read_bytes()
