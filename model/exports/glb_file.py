"""GLB as bytes: meshes and nodes go in by name, the same order gives the same bytes.

Written by hand, for a GLB is a page of JSON and one row of figures, and every key stays in our
hands: names, groups, extras, their order. Source: the glTF 2.0 specification.
"""

from __future__ import annotations

import json
import struct
from typing import Any

import numpy as np
import numpy.typing as npt

from model.exports.looks import Look

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]

_FLOAT, _SHORT, _LONG = 5126, 5123, 5125  # kinds of figures
_CORNERS, _FACES = 34962, 34963  # what a stretch of figures is for
_MAGIC, _JSON, _BIN = 0x46546C67, 0x4E4F534A, 0x004E4942


class GlbFile:
    """A GLB in the making. Lengths are metres, Y points up."""

    def __init__(self, title: str, generator: str) -> None:
        self._content = bytearray()
        self._looks: dict[Look, int] = {}
        self._record: dict[str, list[dict[str, Any]]] = {
            each: [] for each in ("nodes", "meshes", "materials", "accessors", "bufferViews")
        }
        self._title, self._generator = title, generator

    def mesh(self, name: str, corners: Floats, faces: Ints, look: Look) -> int:
        """Add a mesh: corners (n, 3) in m, faces (m, 3) counter-clockwise from outside. Its number.

        Normals are left out: readers then shade each face flat, which wood is.
        """
        at = corners.astype("<f4")
        kind, index = ("<u2", _SHORT) if len(at) < 65535 else ("<u4", _LONG)
        span = {"min": at.min(axis=0).tolist(), "max": at.max(axis=0).tolist()}
        place = self._figures(at, _CORNERS, _FLOAT, "VEC3", len(at), **span)
        order = self._figures(faces.astype(kind), _FACES, index, "SCALAR", int(faces.size))
        surface = {
            "attributes": {"POSITION": place},
            "indices": order,
            "material": self._look(look),
            "mode": 4,
        }
        return self._add("meshes", {"name": name, "primitives": [surface]})

    def node(self, name: str, **more: Any) -> int:
        """Add a node with what glTF lets a node have: `mesh`, `matrix`, `children`, `extras`."""
        return self._add("nodes", {"name": name} | more)

    def to_bytes(self, root: int) -> bytes:
        """The whole file, with the node that holds all others."""
        record = {
            "asset": {"version": "2.0", "generator": self._generator},
            "scene": 0,
            "scenes": [{"name": self._title, "nodes": [root]}],
            **{name: each for name, each in self._record.items() if each},
            "buffers": [{"byteLength": len(self._content)}],
        }
        text = json.dumps(record, separators=(",", ":"), allow_nan=False).encode("ascii")
        chunks = _chunk(_JSON, text, b" ") + _chunk(_BIN, bytes(self._content), b"\0")
        return struct.pack("<III", _MAGIC, 2, 12 + len(chunks)) + chunks

    def _add(self, kind: str, entry: dict[str, Any]) -> int:
        self._record[kind].append(entry)
        return len(self._record[kind]) - 1

    def _figures(
        self, rows: npt.NDArray[Any], target: int, kind: int, shape: str, count: int, **span: Any
    ) -> int:
        content = rows.tobytes()
        place = {"buffer": 0, "byteOffset": len(self._content), "byteLength": len(content)}
        self._content += content + b"\0" * (-len(content) % 4)
        view = self._add("bufferViews", place | {"target": target})
        told = {"bufferView": view, "componentType": kind, "count": count, "type": shape}
        return self._add("accessors", told | span)

    def _look(self, look: Look) -> int:
        if look not in self._looks:
            metal, rough = (1.0, 0.4) if look.is_metal else (0.0, 0.8)
            paint = {
                "baseColorFactor": [*look.colour, 1.0],
                "metallicFactor": metal,
                "roughnessFactor": rough,
            }
            self._looks[look] = self._add(
                "materials", {"name": look.name, "pbrMetallicRoughness": paint}
            )
        return self._looks[look]


def _chunk(kind: int, content: bytes, filling: bytes) -> bytes:
    whole = content + filling * (-len(content) % 4)
    return struct.pack("<II", len(whole), kind) + whole
