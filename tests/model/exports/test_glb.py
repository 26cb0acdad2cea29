"""The model of the bed, reopened with a reader that did not write it."""

from __future__ import annotations

import json
import math
import struct
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import trimesh

from model.exports import glb

# x across, y from foot to head, z up in mm: X across, Y up, Z from head to foot in m.
TO_FILE = np.array([[1, 0, 0, 0], [0, 0, 1, 0], [0, -1, 0, 0], [0, 0, 0, 1]]) / 1000.0


def written(bed: Any, folder: Path) -> Path:
    glb.write(bed, folder / "bed.glb")
    return folder / "bed.glb"


def record(path: Path) -> dict[str, Any]:
    """The JSON chunk, read by the letter of the format."""
    content = path.read_bytes()
    magic, version, whole, length, kind = struct.unpack("<4sIII4s", content[:20])
    assert (magic, version, whole, kind) == (b"glTF", 2, len(content), b"JSON")
    found: dict[str, Any] = json.loads(content[20 : 20 + length])
    return found


def node(found: dict[str, Any], name: str) -> dict[str, Any]:
    (one,) = [each for each in found["nodes"] if each["name"] == name]
    return one


def children(found: dict[str, Any], name: str) -> list[str]:
    return [found["nodes"][each]["name"] for each in node(found, name)["children"]]


def pieces(scene: trimesh.Scene) -> dict[str, trimesh.Trimesh]:
    """Every node that has a mesh, where it stands in the scene."""
    found = {}
    for name in scene.graph.nodes_geometry:
        matrix, mesh = scene.graph[name]
        found[name] = scene.geometry[mesh].copy().apply_transform(matrix)
    return found


def test_every_piece_is_one_watertight_node(small_bed: Any, tmp_path: Path) -> None:
    found = pieces(trimesh.load_scene(written(small_bed, tmp_path)))

    wood = {f"{m.mark}-{k}" for m in small_bed.marks for k in range(1, m.quantity + 1)}
    assert set(found) == wood | {"HW-slide-450-1", "mattress"}
    assert all(mesh.is_watertight and mesh.is_winding_consistent for mesh in found.values())


def test_volumes_are_those_of_the_wood(small_bed: Any, tmp_path: Path) -> None:
    found = pieces(trimesh.load_scene(written(small_bed, tmp_path)))
    named = {mark.name: mark.mark for mark in small_bed.marks}

    rail = found[f"{named['side rail']}-1"]
    assert rail.volume * 1e9 == pytest.approx(2000 * 150 * 25 - 140 * 6 * 8, rel=1e-6)
    post = found[f"{named['post']}-1"]
    # The drilled round is a prism of 48 sides, 0.3 % short of a circle's section.
    assert post.volume * 1e9 == pytest.approx(600 * 70 * 60 - math.pi * 16 * 60, rel=1e-5)
    assert found["mattress"].volume * 1e9 == pytest.approx(1500 * 1950 * 250, rel=1e-6)


def test_every_piece_stands_where_the_bed_has_it(small_bed: Any, tmp_path: Path) -> None:
    found = pieces(trimesh.load_scene(written(small_bed, tmp_path)))
    low, high = small_bed.pieces.bounds

    for mark in small_bed.marks:
        for count, piece in enumerate(mark.pieces, start=1):
            corners = np.array([[*low[piece], 1000.0], [*high[piece], 1000.0]]) @ TO_FILE.T
            expected = np.sort(corners[:, :3], axis=0)
            assert np.allclose(found[f"{mark.mark}-{count}"].bounds, expected, atol=1e-6)


def test_a_groove_is_on_the_side_where_the_bed_has_it(small_bed: Any, tmp_path: Path) -> None:
    """Both rails have it 8 mm deep in their outer faces, 20 mm above their lower edges."""
    found = pieces(trimesh.load_scene(written(small_bed, tmp_path)))
    rails = [mark for mark in small_bed.marks if mark.name == "side rail"]

    for name in [f"{mark.mark}-{k + 1}" for mark in rails for k in range(mark.quantity)]:
        inner = [each for each in found[name].vertices if abs(abs(each[0]) - 0.792) < 1e-6]
        assert len(inner) == 4
        assert {round(each[1], 6) for each in inner} == {0.220, 0.226}
        assert {round(each[2], 6) for each in inner} == {-0.010, -0.150}


def test_pieces_are_grouped_by_assembly_and_drawers_stand_alone(
    small_bed: Any, tmp_path: Path
) -> None:
    found = record(written(small_bed, tmp_path))
    named = {mark.name: mark.mark for mark in small_bed.marks}

    groups = ["headboard", "left side", "right side", "drawers", "mattress"]
    assert sorted(children(found, "bed")) == sorted(groups)
    assert children(found, "drawers") == ["drawer-left-1"]
    side = named["box side"]
    assert children(found, "drawer-left-1") == [f"{side}-1", f"{side}-2", "HW-slide-450-1"]
    assert children(found, "headboard") == [f"{named['post']}-1", f"{named['post']}-2"]


def test_a_drawer_says_how_far_and_which_way_it_slides(small_bed: Any, tmp_path: Path) -> None:
    found = record(written(small_bed, tmp_path))

    drawer = node(found, "drawer-left-1")
    assert drawer["extras"] == {"travel_mm": 450, "axis": [-1, 0, 0]}
    assert "matrix" not in drawer and "translation" not in drawer  # so it slides along the axis


def test_pieces_of_a_mark_share_one_mesh(small_bed: Any, tmp_path: Path) -> None:
    found = record(written(small_bed, tmp_path))
    mark = next(mark.mark for mark in small_bed.marks if mark.name == "post")

    assert node(found, f"{mark}-1")["mesh"] == node(found, f"{mark}-2")["mesh"]
    assert len(found["meshes"]) == len(small_bed.marks) + 2  # a slide and the mattress


def test_a_hostile_name_stays_a_text(bed_named: Callable[[str], Any], tmp_path: Path) -> None:
    name = 'a"b\\c</script>\u2028é'
    found = record(written(bed_named(name), tmp_path))

    assert found["scenes"][0]["name"] == name


def test_figures_are_where_the_format_wants_them(small_bed: Any, tmp_path: Path) -> None:
    """Chunks on multiples of four; bounds of corners are given, as the format asks."""
    path = written(small_bed, tmp_path)
    found = record(path)

    assert len(path.read_bytes()) % 4 == 0
    assert all(each["byteOffset"] % 4 == 0 for each in found["bufferViews"])
    corners = [each for each in found["accessors"] if each["type"] == "VEC3"]
    assert all(len(each["min"]) == len(each["max"]) == 3 for each in corners)
