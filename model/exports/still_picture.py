"""The closed bed as a small picture, for a page whose reader has nothing that turns it.

A picture of dots, nearest surface first: each face in the light of the window's view, a dark line
wherever two pieces or two faces meet, drawn twice as large and then made smaller to smooth it.
"""

from __future__ import annotations

import math
import struct
import zlib
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from model.bed import Bed
from model.exports.client_bed import is_mattress, look_of
from model.parts.pieces import Floats, Ints
from model.solids.mesh import bed_mesh

SIZE = (660, 440)  # px
_FINER = 2  # times as large while it is drawn
_AZIMUTH, _ELEVATION = math.radians(-58), math.radians(19)
_ROOM = 0.92  # share of the picture that the bed fills
_PAPER = np.array((246, 244, 239), np.uint8)
_BEDDING = "#f4f3f0"
_EDGE = 0.52  # an edge is the face's own colour, darker
_HAIR = 1e-5  # of a side
_LAMP = np.array((-0.5, 0.42, 0.8))
_INSIDE = ("drawers", "under the bed")  # nothing of them is seen while drawers are closed


Float32s = npt.NDArray[np.float32]
Int32s = npt.NDArray[np.int32]


class _Faces(NamedTuple):
    """What can be seen: corners (n, 3, 3) as right, up, near; colour (n, 3); whose face (n)."""

    corners: Floats
    colour: Floats
    face: Ints


def still_picture(bed: Bed, paint: str | None) -> bytes:
    """A PNG file; `paint` (`#rrggbb`) covers what is painted, None shows the wood."""
    return _png(_drawn(_faces(bed, paint)))


def _faces(bed: Bed, paint: str | None) -> _Faces:
    mesh, axes = bed_mesh(bed.pieces, bed.parts), _axes()
    forms = [bed.pieces.form(piece) for piece in range(len(bed.pieces))]
    shows = np.array([part.assembly not in _INSIDE and not part.is_round for part in forms], bool)
    kept = np.flatnonzero(shows[mesh.piece] & (mesh.normals @ axes[2] > 1e-6))
    looks = [look_of(part, bed["finished"]) for part in forms]
    worn = [
        _BEDDING if is_mattress(part) else paint if paint and look.takes_paint else look.colour
        for part, look in zip(forms, looks, strict=True)
    ]
    tones = np.array([_rgb(each) for each in worn]).reshape(-1, 3)
    normals, piece = mesh.normals[kept], mesh.piece[kept]
    way = np.unique(np.round(normals, 3), axis=0, return_inverse=True)[1].ravel()
    colour = tones[piece] * _light(normals.astype(float), axes)[:, None]
    return _Faces(
        mesh.vertices[kept].astype(float) @ axes.T, colour, piece * (way.max(initial=0) + 1) + way
    )


def _axes() -> Floats:
    """(3, 3): rows to the right, up, and towards the eye."""
    a, e = _AZIMUTH, _ELEVATION
    return np.array(
        [
            [-math.sin(a), math.cos(a), 0.0],
            [-math.sin(e) * math.cos(a), -math.sin(e) * math.sin(a), math.cos(e)],
            [math.cos(e) * math.cos(a), math.cos(e) * math.sin(a), math.sin(e)],
        ]
    )


def _rgb(code: str) -> list[int]:
    return [int(code[at : at + 2], 16) for at in (1, 3, 5)]


def _light(normals: Floats, axes: Floats) -> Floats:
    """Daylight from above and a lamp over the left shoulder, as the page's own."""
    lamp = 0.5 + 0.5 * (normals @ axes.T) @ (_LAMP / np.linalg.norm(_LAMP))
    return np.asarray(0.56 + 0.13 * (0.5 + 0.5 * normals[:, 2]) + 0.36 * lamp)


def _drawn(faces: _Faces) -> npt.NDArray[np.uint8]:
    """The picture (rows, columns, 3)."""
    width, height = (each * _FINER for each in SIZE)
    corners = _on_picture(faces.corners, width, height)
    near = np.full((height, width), -np.inf, np.float32)
    seen = np.full((height, width), len(corners), np.int32)  # the last one is the paper
    for at in np.argsort(-corners[:, :, 2].max(axis=1), kind="stable").tolist():
        _put(corners[at], at, near, seen)  # the nearest first: most others are then hidden
    colour = np.append(np.clip(faces.colour, 0, 255), [_PAPER], axis=0)
    seen += np.int32(len(corners) + 1) * _edges(np.append(faces.face, -1)[seen])
    drawn = np.append(colour, colour * _EDGE, axis=0).astype(np.uint16)[seen]
    dots = [drawn[y::_FINER, x::_FINER] for y in range(_FINER) for x in range(_FINER)]
    return ((sum(dots[1:], dots[0]) + len(dots) // 2) // len(dots)).astype(np.uint8)


def _on_picture(corners: Floats, width: int, height: int) -> Floats:
    """Corners as column, row, and how near they are, with the bed in the middle."""
    low, high = corners.reshape(-1, 3).min(axis=0), corners.reshape(-1, 3).max(axis=0)
    scale = _ROOM * min(width / (high[0] - low[0]), height / (high[1] - low[1]))
    middle = (low + high) / 2
    placed = (corners - middle) * (scale, -scale, 1.0)
    placed[..., :2] += (width / 2, height / 2)
    return np.asarray(placed)


def _put(corners: Floats, at: int, near: Float32s, seen: Int32s) -> None:
    """Put one triangle on the picture, where nothing nearer is."""
    (ax, ay, az), (bx, by, bz), (cx, cy, cz) = corners.tolist()
    twice = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    x0, x1 = math.ceil(min(ax, bx, cx) - 0.5), math.floor(max(ax, bx, cx) - 0.5)
    y0, y1 = math.ceil(min(ay, by, cy) - 0.5), math.floor(max(ay, by, cy) - 0.5)
    if x0 > x1 or y0 > y1 or twice == 0.0:
        return
    window = (slice(y0, y1 + 1), slice(x0, x1 + 1))
    if max(az, bz, cz) < near[window].min():
        return
    x = (np.arange(x0, x1 + 1) + (0.5 - ax)).astype(np.float32)
    y = (np.arange(y0, y1 + 1) + (0.5 - ay)).astype(np.float32)[:, None]
    # Shares of the second and third corner, of dots within the box round the triangle.
    b = x * ((cy - ay) / twice) - y * ((cx - ax) / twice)
    c = y * ((bx - ax) / twice) - x * ((by - ay) / twice)
    depth = b * (bz - az) + c * (cz - az) + az
    # A hair more than the triangle, so that none is left between two; its neighbour is as near.
    front = (b >= -_HAIR) & (c >= -_HAIR) & (b + c <= 1 + _HAIR) & (depth > near[window])
    np.copyto(near[window], depth, where=front)
    np.copyto(seen[window], np.int32(at), where=front)


def _edges(face: Ints) -> npt.NDArray[np.bool_]:
    """Dots of the bed beside which, to any side, another face begins or none is."""
    found = np.zeros(face.shape, bool)
    sideways, down = face[:, :-1] != face[:, 1:], face[:-1] != face[1:]
    found[:, :-1] |= sideways
    found[:, 1:] |= sideways
    found[:-1] |= down
    found[1:] |= down
    return found & (face >= 0)


def _png(picture: npt.NDArray[np.uint8]) -> bytes:
    """Source: the PNG specification (ISO/IEC 15948), from memory."""
    height, width, _ = picture.shape
    rows = np.concatenate([np.zeros((height, 1), np.uint8), picture.reshape(height, -1)], axis=1)
    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    chunks = ((b"IHDR", header), (b"IDAT", zlib.compress(rows.tobytes(), 9)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(_chunk(kind, content) for kind, content in chunks)


def _chunk(kind: bytes, content: bytes) -> bytes:
    check = zlib.crc32(kind + content)
    return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", check)
