"""The exchange file, reopened with a geometry kernel that did not write it (Open CASCADE)."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from model.exports import step
from model.part import Cut, Face, Hole
from model.solids.exact import solid
from tests.model.exports import step_reader
from tests.model.exports.conftest import small_parts
from tests.model.exports.step_reader import Node


def read(bed: Any, folder: Path) -> Node:
    step.write(bed, folder / "bed.step")
    return step_reader.read(folder / "bed.step")


def test_every_piece_is_one_sound_solid_with_its_name(small_bed: Any, tmp_path: Path) -> None:
    found = list(read(small_bed, tmp_path).pieces())

    wood = {f"{m.mark}-{k}": m.mark for m in small_bed.marks for k in range(1, m.quantity + 1)}
    expected = wood | {"HW-slide-450-1": "HW-slide-450"}
    assert {piece.name: piece.product for piece in found} == expected
    assert len(found) == len(expected)
    assert all(step_reader.solids(piece.shape) == 1 for piece in found)
    assert all(step_reader.is_valid(piece.shape) for piece in found)


def test_the_solid_itself_has_the_name_of_its_mark(small_bed: Any) -> None:
    text = step.content(small_bed).decode("ascii")

    named = re.findall(r"MANIFOLD_SOLID_BREP\('([^']*)'", text)
    assert named == [*dict.fromkeys(named)]  # pieces of a mark share one
    assert set(named) == {mark.mark for mark in small_bed.marks} | {"HW-slide-450"}


def test_pieces_lie_in_their_assemblies_and_drawers(small_bed: Any, tmp_path: Path) -> None:
    bed = read(small_bed, tmp_path)
    named = {mark.name: mark.mark for mark in small_bed.marks}

    groups = {each.name: [inner.name for inner in each.inside] for each in bed.inside}
    assert groups["headboard"] == [f"{named['post']}-1", f"{named['post']}-2"]
    assert groups["drawers"] == ["drawer-left-1"]
    (drawer,) = next(each for each in bed.inside if each.name == "drawers").inside
    side = named["box side"]
    assert [each.name for each in drawer.inside] == [f"{side}-1", f"{side}-2", "HW-slide-450-1"]


def test_volumes_are_those_of_the_wood_with_round_holes(small_bed: Any, tmp_path: Path) -> None:
    found = {piece.name: piece for piece in read(small_bed, tmp_path).pieces()}
    named = {mark.name: mark.mark for mark in small_bed.marks}

    rail = found[f"{named['side rail']}-1"].shape
    assert step_reader.volume(rail) == pytest.approx(2000 * 150 * 25 - 140 * 6 * 8, rel=1e-9)
    post = found[f"{named['post']}-1"].shape
    assert step_reader.volume(post) == pytest.approx(600 * 70 * 60 - math.pi * 16 * 60, rel=1e-9)
    assert step_reader.surfaces(post) == {"Plane": 6, "Cylinder": 1}


def test_every_piece_stands_where_the_bed_has_it(small_bed: Any, tmp_path: Path) -> None:
    found = {piece.name: piece for piece in read(small_bed, tmp_path).pieces()}
    low, high = small_bed.pieces.bounds

    for mark in small_bed.marks:
        for count, piece in enumerate(mark.pieces, start=1):
            bounds = step_reader.bounds(found[f"{mark.mark}-{count}"].shape)
            assert np.allclose(bounds, [low[piece], high[piece]], atol=1e-4)


def test_a_groove_is_on_the_side_where_the_bed_has_it(small_bed: Any, tmp_path: Path) -> None:
    """Mirror images are two marks, and a solid is only ever turned."""
    found = {piece.product for piece in read(small_bed, tmp_path).pieces()}

    rails = [mark for mark in small_bed.marks if mark.name == "side rail"]
    assert len(rails) == 2 and {mark.mark for mark in rails} <= found


@pytest.mark.parametrize("name", ["Zoé's bed", "سرير بأدراج", "a\\b", "床 \N{BED}", "x';#1=BAD('"])
def test_a_name_comes_back_as_it_was_given(
    bed_named: Callable[[str], Any], tmp_path: Path, name: str
) -> None:
    assert read(bed_named(name), tmp_path).product == name


def test_the_clock_is_not_read(small_bed: Any) -> None:
    text = step.content(small_bed)

    assert text == step.content(small_bed)
    assert re.findall(rb"'\d{4}-\d\d-\d\dT[^']*'", text) == [b"'2000-01-01T00:00:00'"]


def drilled(**more: Any) -> Any:
    """The posts of the small bed, with other holes or cuts in them."""
    (post,) = small_parts()["head.posts"]
    return (replace(post, **more),)


DOWN = (0.0, 0.0, -1.0)
SLANT = (-math.cos(math.radians(15)), 0.0, -math.sin(math.radians(15)))


@pytest.mark.parametrize(
    ("holes", "taken", "round_walls"),
    [
        pytest.param(
            (Hole("dowel", Face.FACE, (300.0, 35.0, 60.0), DOWN, 10.0, 25.0),),
            math.pi * 25 * 25,
            1,
            id="blind",
        ),
        pytest.param(
            (
                Hole("counterbore", Face.FACE, (300.0, 35.0, 60.0), DOWN, 20.0, 15.0),
                Hole("bolt", Face.FACE, (300.0, 35.0, 60.0), DOWN, 8.0, 60.0),
            ),
            math.pi * (100 * 15 + 16 * 45),
            2,
            id="counterbore with its bolt",
        ),
        pytest.param(
            (
                Hole("bolt", Face.FACE, (300.0, 35.0, 60.0), DOWN, 8.0, 60.0),
                Hole("counterbore", Face.BACK, (300.0, 35.0, 0.0), (0.0, 0.0, 1.0), 20.0, 15.0),
            ),
            math.pi * (100 * 15 + 16 * 45),
            2,
            id="counterbore from behind",
        ),
        pytest.param(
            # A cylinder cut off aslant holds as much as one cut off square at its middle.
            (Hole("pocket", Face.FACE, (300.0, 35.0, 60.0), SLANT, 9.5, 60.0),),
            math.pi * 4.75**2 * 60,
            1,
            id="slanted",
        ),
    ],
)
def test_holes_are_true_cylinders(
    bed_with: Callable[..., Any],
    tmp_path: Path,
    holes: tuple[Hole, ...],
    taken: float,
    round_walls: int,
) -> None:
    bed = bed_with(head_posts=drilled(holes=holes))
    mark = next(mark.mark for mark in bed.marks if mark.name == "post")

    post = next(each for each in read(bed, tmp_path).pieces() if each.name == f"{mark}-1").shape

    assert step_reader.is_valid(post)
    assert step_reader.surfaces(post)["Cylinder"] == round_walls
    # The kernel sums up what an ellipse bounds to a few millionths; flats would be off by 0.3 %.
    assert step_reader.volume(post) == pytest.approx(600 * 70 * 60 - taken, abs=1e-4 * taken)


@pytest.mark.parametrize(
    ("holes", "cuts"),
    [
        pytest.param(
            (
                Hole("bolt", Face.NEAR, (0.0, 35.0, 30.0), (1.0, 0.0, 0.0), 8.0, 100.0),
                Hole("nut", Face.FACE, (80.0, 35.0, 60.0), DOWN, 12.0, 40.0),
            ),
            (),
            id="a bolt that meets its nut",
        ),
        pytest.param(
            (Hole("dowel", Face.FACE, (300.0, 4.0, 60.0), DOWN, 10.0, 25.0),),
            (),
            id="through the edge of a face",
        ),
        pytest.param(
            (Hole("dowel", Face.FACE, (300.0, 35.0, 60.0), DOWN, 10.0, 25.0),),
            (Cut("groove", Face.BACK, (0.0, 30.0, 0.0), (600.0, 37.0, 40.0)),),
            id="into the middle of a groove",
        ),
    ],
)
def test_what_is_no_plain_round_hole_is_flats_of_the_same_volume(
    bed_with: Callable[..., Any],
    tmp_path: Path,
    holes: tuple[Hole, ...],
    cuts: tuple[Cut, ...],
) -> None:
    bed = bed_with(head_posts=drilled(holes=holes, cuts=cuts))
    mark = next(each for each in bed.marks if each.name == "post")

    post = next(p for p in read(bed, tmp_path).pieces() if p.product == mark.mark).shape

    assert step_reader.is_valid(post)
    assert step_reader.surfaces(post)["Cylinder"] == 0
    assert step_reader.volume(post) == pytest.approx(solid(mark.part).volume(), rel=1e-7)


def test_a_round_bar_is_a_cylinder(bed_with: Callable[..., Any], tmp_path: Path) -> None:
    (slide,) = small_parts()["left.slide"]
    dowel = replace(
        slide, name="dowel", width=10.0, thickness=10.0, length=50.0, hardware="dowel",
        is_round=True,
    )  # fmt: skip
    found = read(bed_with(left_slide=(dowel,)), tmp_path).pieces()

    bar = next(each for each in found if each.name == "HW-dowel-1").shape
    assert step_reader.surfaces(bar) == {"Plane": 2, "Cylinder": 1}
    assert step_reader.volume(bar) == pytest.approx(math.pi * 25 * 50, rel=1e-9)


# ---------------------------------------------------------------- by the letter of the file


class Records:
    """The records of a file by number: kind and text between its brackets."""

    def __init__(self, content: bytes) -> None:
        lines = re.findall(r"^#(\d+)=([A-Z0-9_]+)\((.*)\);$", content.decode("ascii"), re.MULTILINE)
        self.of = {int(number): (kind, text) for number, kind, text in lines}

    def named(self, kind: str) -> list[int]:
        return [number for number, (each, _) in self.of.items() if each == kind]

    def within(self, number: int) -> list[int]:
        """The numbers that a record refers to, in order."""
        return [int(each) for each in re.findall(r"#(\d+)", self.of[number][1])]

    def kind(self, number: int) -> str:
        return self.of[number][0]

    def is_true(self, number: int) -> bool:
        """The flag that a record ends with."""
        return self.of[number][1].endswith(".T.")

    def figures(self, number: int) -> np.ndarray[Any, Any]:
        return np.array(self.of[number][1].split("(")[1].rstrip(")").split(","), float)


def bolted(bed_with: Callable[..., Any]) -> Records:
    """The small bed with counterbored, blind and slanted holes in its posts, and a round bar."""
    holes = (
        Hole("counterbore", Face.FACE, (300.0, 35.0, 60.0), DOWN, 20.0, 15.0),
        Hole("bolt", Face.FACE, (300.0, 35.0, 60.0), DOWN, 8.0, 60.0),
        Hole("dowel", Face.FACE, (400.0, 35.0, 60.0), DOWN, 10.0, 25.0),
        Hole("pocket", Face.FACE, (150.0, 35.0, 60.0), SLANT, 9.5, 60.0),
    )
    (slide,) = small_parts()["left.slide"]
    bar = replace(slide, width=10.0, thickness=10.0, length=50.0, is_round=True)
    return Records(step.content(bed_with(head_posts=drilled(holes=holes), left_slide=(bar,))))


def test_each_edge_is_run_along_once_each_way(bed_with: Callable[..., Any]) -> None:
    """Readers mend what is turned the wrong way, so what they find would not tell."""
    found = bolted(bed_with)

    ways: dict[int, list[bool]] = {edge: [] for edge in found.named("EDGE_CURVE")}
    for use in found.named("ORIENTED_EDGE"):
        ways[found.within(use)[0]].append(found.is_true(use))
    assert all(sorted(each) == [False, True] for each in ways.values())


def test_faces_look_out_of_the_wood(bed_with: Callable[..., Any]) -> None:
    """A cylinder's own normal leads away from its axis: out of a bar, into the wood about a hole.
    Source: ISO 10303-42, cylindrical_surface and face_surface.
    """
    found = bolted(bed_with)

    holes, bars = [], []
    for solid_record in found.named("MANIFOLD_SOLID_BREP"):
        is_bar = found.of[solid_record][1].startswith("'HW-")
        (shell,) = found.within(solid_record)
        for face in found.within(shell):
            surface = found.within(face)[-1]
            if found.kind(surface) == "CYLINDRICAL_SURFACE":
                (bars if is_bar else holes).append(found.is_true(face))
            else:
                assert found.is_true(face)  # planes are given with the normal that leads out
    assert (holes, bars) == ([False] * 4, [True])


def test_loops_run_counter_clockwise_around_the_way_a_face_looks(
    bed_with: Callable[..., Any],
) -> None:
    """Source: ISO 10303-42, face_bound: the face lies to the left of its loop."""
    found = bolted(bed_with)
    checked = 0
    for face in found.named("ADVANCED_FACE"):
        *bounds, surface = found.within(face)
        if found.kind(surface) != "PLANE":
            continue
        (place,) = found.within(surface)
        normal = found.figures(found.within(place)[1])
        for bound in bounds:
            corners = [_start(found, use) for use in found.within(found.within(bound)[0])]
            if len(corners) > 2:  # a rim is one closed edge
                at = np.array(corners)
                turned = float(np.cross(at, np.roll(at, -1, axis=0)).sum(axis=0) @ normal)
                assert (turned > 0) == (found.kind(bound) == "FACE_OUTER_BOUND")
                checked += 1
    assert checked > 20


def _start(found: Records, use: int) -> Any:
    (edge,) = found.within(use)
    first, last = found.within(edge)[:2]
    return found.figures(found.within(first if found.is_true(use) else last)[0])


def test_rims_of_faces_run_clockwise_where_they_are_holes(bed_with: Callable[..., Any]) -> None:
    """A circle runs counter-clockwise about its axis (ISO 10303-42, conic); within a face the wood
    lies outside it.
    """
    found = bolted(bed_with)
    checked = 0
    for face in found.named("ADVANCED_FACE"):
        *bounds, surface = found.within(face)
        if found.kind(surface) != "PLANE":
            continue
        normal = found.figures(found.within(found.within(surface)[0])[1])
        for bound in bounds:
            uses = found.within(found.within(bound)[0])
            if len(uses) == 1:
                (edge,) = found.within(uses[0])
                place = found.within(found.within(edge)[2])[0]
                axis = found.figures(found.within(place)[1])
                leads = float(axis @ normal) * (1 if found.is_true(uses[0]) else -1)
                assert (leads > 0) == (found.kind(bound) == "FACE_OUTER_BOUND")
                checked += 1
    # Counterbore and bolt: two mouths, both rims of the shoulder; dowel: mouth and ground; pocket
    # the same; the bar its two ends.
    assert checked == 4 + 2 + 2 + 2
