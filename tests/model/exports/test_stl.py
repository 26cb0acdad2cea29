"""The surface of the wood, read by the letter of the format and by a reader that did not write it.

Source of the layout: the binary form of STL (80 bytes, a count, 50 bytes a triangle), from memory.
"""

from __future__ import annotations

import struct
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import trimesh

from model.exports import stl

ROW = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("empty", "<u2")])


def rows(content: bytes) -> np.ndarray[Any, Any]:
    (count,) = struct.unpack("<I", content[80:84])
    assert len(content) == 84 + 50 * count
    return np.frombuffer(content, ROW, offset=84)


def test_the_heading_is_not_taken_for_text(small_bed: Any) -> None:
    content = stl.content(small_bed)

    assert not content.startswith(b"solid")
    assert b"mm" in content[:80]


def test_it_holds_the_wood_and_nothing_that_is_bought(small_bed: Any, tmp_path: Path) -> None:
    stl.write(small_bed, tmp_path / "bed.stl")
    found = trimesh.load_mesh(tmp_path / "bed.stl")

    rails, sides = 2 * (2000 * 150 * 25 - 140 * 6 * 8), 2 * 500 * 120 * 12
    # A drilled round is a prism of 48 sides: 24 r2 sin(360 deg / 48).
    posts = 2 * (600 * 70 * 60 - 24 * 16 * np.sin(np.pi / 24) * 60)
    assert found.volume == pytest.approx(rails + sides + posts, rel=1e-6)


def test_z_is_up_and_lengths_are_mm(small_bed: Any) -> None:
    corners = rows(stl.content(small_bed))["corners"].reshape(-1, 3)
    wood = [piece for mark in small_bed.marks for piece in mark.pieces]
    low, high = (bound[wood] for bound in small_bed.pieces.bounds)

    assert np.allclose(corners.min(axis=0), low.min(axis=0), atol=1e-4)  # single precision
    assert np.allclose(corners.max(axis=0), high.max(axis=0), atol=1e-4)


def test_normals_point_out_of_the_wood(small_bed: Any) -> None:
    found = rows(stl.content(small_bed))
    edges = found["corners"][:, 1:].astype(float) - found["corners"][:, :1]
    turned = np.cross(edges[:, 0], edges[:, 1])
    turned /= np.linalg.norm(turned, axis=1, keepdims=True)

    assert np.allclose(turned, found["normal"], atol=1e-3)
    assert np.allclose(np.linalg.norm(found["normal"], axis=1), 1.0, atol=1e-6)
