"""The 3MF package, reopened with the 3MF Consortium's own library (lib3mf) in its strict mode."""

from __future__ import annotations

import math
import zipfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import lib3mf
import numpy as np
import pytest
import trimesh

from model.exports import threemf

CORE = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"


def written(bed: Any, folder: Path) -> Path:
    threemf.write(bed, folder / "bed.3mf")
    return folder / "bed.3mf"


@dataclass(frozen=True, kw_only=True)
class Read:
    """What a file holds: its metadata, the names of its meshes, and its pieces: the name of each
    as an item and as an object, and its mesh where it lies.
    """

    told: dict[str, str]
    meshes: list[str]
    items: list[tuple[str, str]]
    placed: dict[str, trimesh.Trimesh]


def read(path: Path) -> Read:
    model = lib3mf.get_wrapper().CreateModel()
    reader = model.QueryReader("3mf")
    reader.SetStrictModeActive(True)
    reader.ReadFromFile(str(path))
    assert reader.GetWarningCount() == 0
    group = model.GetMetaDataGroup()
    rows = [group.GetMetaData(k) for k in range(group.GetMetaDataCount())]
    items = each(model.GetBuildItems())
    return Read(
        told={row.GetName(): row.GetValue() for row in rows},
        meshes=[mesh.GetName() for mesh in each(model.GetMeshObjects(), "GetCurrentMeshObject")],
        items=[(item.GetPartNumber(), item.GetObjectResource().GetName()) for item in items],
        placed={item.GetPartNumber(): placed(model, item) for item in items},
    )


def each(iterator: Any, current: str = "GetCurrent") -> list[Any]:
    found = []
    while iterator.MoveNext():
        found.append(getattr(iterator, current)())
    return found


def placed(model: Any, item: Any) -> trimesh.Trimesh:
    """The one mesh of a piece, where it lies."""
    whole = model.GetComponentsObjectByID(item.GetObjectResourceID())
    assert whole.GetComponentCount() == 1
    mesh = model.GetMeshObjectByID(whole.GetComponent(0).GetObjectResourceID())
    corners = np.array([list(corner.Coordinates) for corner in mesh.GetVertices()])
    faces = np.array([list(face.Indices) for face in mesh.GetTriangleIndices()])
    turn = np.array([list(row) for row in item.GetObjectTransform().Fields])  # four rows of three
    return trimesh.Trimesh(corners @ turn[:3] + turn[3], faces, process=False)


def test_every_piece_is_an_item_with_its_name(small_bed: Any, tmp_path: Path) -> None:
    found = read(written(small_bed, tmp_path))

    wood = [f"{m.mark}-{k}" for m in small_bed.marks for k in range(1, m.quantity + 1)]
    assert found.items == [(name, name) for name in (*wood, "HW-slide-450-1")]


def test_pieces_of_a_mark_share_one_shape(small_bed: Any, tmp_path: Path) -> None:
    found = read(written(small_bed, tmp_path))

    assert found.meshes == [*(mark.mark for mark in small_bed.marks), "HW-slide-450"]


def test_every_piece_stands_where_the_bed_has_it(small_bed: Any, tmp_path: Path) -> None:
    found = read(written(small_bed, tmp_path)).placed
    low, high = small_bed.pieces.bounds

    for mark in small_bed.marks:
        for count, piece in enumerate(mark.pieces, start=1):
            mesh = found[f"{mark.mark}-{count}"]
            assert np.allclose(mesh.bounds, [low[piece], high[piece]], atol=1e-3)
            assert mesh.is_watertight and mesh.is_winding_consistent


def test_volumes_are_those_of_the_wood(small_bed: Any, tmp_path: Path) -> None:
    found = read(written(small_bed, tmp_path)).placed
    named = {mark.name: mark.mark for mark in small_bed.marks}

    rail = found[f"{named['side rail']}-1"]
    assert rail.volume == pytest.approx(2000 * 150 * 25 - 140 * 6 * 8, rel=1e-5)
    post = found[f"{named['post']}-1"]
    # The drilled round is a prism of 48 sides, 0.3 % short of a circle's section.
    assert post.volume == pytest.approx(600 * 70 * 60 - math.pi * 16 * 60, rel=1e-5)


@pytest.mark.parametrize(
    "name", ['a"b\\c</metadata>&amp;', "Lit de Zoé", "سرير بأدراج", "床 🛏", "two\nlines"]
)
def test_a_title_comes_back_as_it_was_given(
    bed_named: Callable[[str], Any], tmp_path: Path, name: str
) -> None:
    told = read(written(bed_named(name), tmp_path)).told

    assert told["Title"] == name
    assert set(told) == {"Title", "Application"}


def test_what_xml_cannot_hold_becomes_a_space(
    bed_named: Callable[[str], Any], tmp_path: Path
) -> None:
    with zipfile.ZipFile(written(bed_named("a\x00b\x1bc\ud800"), tmp_path)) as package:
        model = ElementTree.fromstring(package.read("3D/3dmodel.model"))

    assert model.findtext(f"{CORE}metadata") == "a b c "


def test_the_unit_and_the_parts_of_the_package_are_those_of_the_format(
    small_bed: Any, tmp_path: Path
) -> None:
    """Source: 3MF Core Specification 1.3.0, chapters 2 (package) and 3 (model), from memory."""
    with zipfile.ZipFile(written(small_bed, tmp_path)) as package:
        assert package.testzip() is None
        names = package.namelist()
        model = ElementTree.fromstring(package.read("3D/3dmodel.model"))
        dates = {each.date_time for each in package.infolist()}

    assert names == ["[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"]
    assert (model.tag, model.get("unit")) == (f"{CORE}model", "millimeter")
    assert len(dates) == 1  # no clock is read: the same bed gives the same bytes
