"""`bed.stl`: all wood of the bed as one surface in mm, z up, the drawers closed.

For viewers and printers that take nothing else. It knows no names and no units, so what is bought
is left out: nobody could tell it from the wood. Source: the binary form of STL, an 80-byte heading,
a count, and for each triangle its normal, three corners and two bytes left empty.
"""

from __future__ import annotations

import struct
from pathlib import Path

import numpy as np

from model.bed import Bed
from model.exports.scene import items
from model.exports.version import version
from model.parts.pieces import Floats, Ints
from model.solids.exact import solid_mesh

_TRIANGLE = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("empty", "<u2")])


def write(bed: Bed, path: Path) -> None:
    """Write every piece of wood, piece by piece in the order of the parts list."""
    path.write_bytes(content(bed))


def content(bed: Bed) -> bytes:
    """The bytes of the file."""
    wood = (item for item in items(bed) if item.shape.is_wood)
    corners = [_placed(*solid_mesh(item.shape.form), item.matrix) for item in wood]
    every = np.concatenate([np.zeros((0, 3, 3)), *corners])
    rows = np.zeros(len(every), _TRIANGLE)
    rows["corners"] = every
    rows["normal"] = _normals(every)
    # A reader takes a file that begins with "solid" for the text form.
    heading = f"Bedwright {version()}: wood of a bed, mm, z up".encode("ascii")
    return heading[:80].ljust(80, b"\0") + struct.pack("<I", len(rows)) + rows.tobytes()


def _placed(corners: Floats, faces: Ints, matrix: Floats) -> Floats:
    """Triangles (t, 3, 3) of a shape where a piece of it lies on the bed."""
    on_bed = corners @ matrix[:3, :3].T + matrix[:3, 3]
    return np.asarray(on_bed[faces])


def _normals(triangles: Floats) -> Floats:
    """The outward unit normal of each triangle (t, 3); none of one without area."""
    edges = triangles[:, 1:] - triangles[:, :1]
    normals = np.cross(edges[:, 0], edges[:, 1])
    long = np.linalg.norm(normals, axis=1, keepdims=True)
    return np.asarray(normals / np.where(long > 0, long, 1.0)) + 0.0
