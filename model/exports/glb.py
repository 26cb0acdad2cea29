"""`bed.glb`: the bed in three dimensions, a node for each piece, drawers that can be slid.

glTF counts in metres with Y up: X is across the bed, Y up, Z from the head towards the foot. Groups
and drawers do not move their pieces, so `axis` of a drawer is a direction of the file itself.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np

from model.bed import Bed
from model.exports.glb_file import Floats, GlbFile, Look
from model.exports.parts_table import made_of
from model.exports.plain import number
from model.exports.version import version
from model.materials import Material
from model.part import Part, Point
from model.solids.exact import solid_mesh

_METRE = 1000.0  # mm
_FROM_BED = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])  # X = x, Y = z, Z = -y
_OPENS = {"left": [-1.0, 0.0, 0.0], "right": [1.0, 0.0, 0.0], "foot": [0.0, 0.0, 1.0]}

_METAL = Look("metal", (0.42, 0.43, 0.45), is_metal=True)
_TICKING = Look("mattress", (0.82, 0.81, 0.78))
_SOLID, _SHEET = (0.55, 0.36, 0.19), (0.66, 0.5, 0.31)


def write(bed: Bed, path: Path) -> None:
    """Write the bed with its drawers closed, grouped by assembly."""
    path.write_bytes(_Scene(bed).to_bytes())


class _Scene:
    def __init__(self, bed: Bed) -> None:
        self.bed, self.pieces = bed, bed.pieces
        self.file = GlbFile(bed.design.name, f"Bedwright {version()}")
        self.meshes: dict[tuple[Any, ...], int] = {}
        self.assemblies: dict[str, list[int]] = {}
        self.drawers: dict[str, list[int]] = {}

    def to_bytes(self) -> bytes:
        for mark in self.bed.marks:
            mesh = self._mesh(mark.mark, mark.part, _wood_look(made_of(self.bed, mark)))
            for count, (piece, matrix) in enumerate(zip(mark.pieces, mark.matrices, strict=True)):
                self._place(piece, f"{mark.mark}-{count + 1}", mesh, matrix)
        for bought in self.bed.hardware:
            name = f"HW-{bought.code}"
            for count, piece in enumerate(bought.pieces):
                mesh = self._mesh(name, self.pieces.form(piece), _METAL)
                self._place(piece, f"{name}-{count + 1}", mesh, self.pieces.matrices[piece])
        if self.drawers:
            nodes = [self._drawer(name, inside) for name, inside in self.drawers.items()]
            self.assemblies.setdefault("drawers", []).extend(nodes)
        groups = [self.file.node(name, children=c) for name, c in self.assemblies.items()]
        return self.file.to_bytes(self.file.node("bed", children=[*groups, self._mattress()]))

    def _mesh(self, name: str, form: Part, look: Look) -> int:
        """The mesh of a part; pieces that are cut alike share it."""
        key = (name, form.size, form.cuts, form.holes, form.is_round)
        if key not in self.meshes:
            corners, faces = solid_mesh(form)
            self.meshes[key] = self.file.mesh(name, corners / _METRE, faces, look)
        return self.meshes[key]

    def _place(self, piece: int, name: str, mesh: int, matrix: Floats) -> None:
        """One piece as a node, in its drawer or else in its assembly."""
        part = self.pieces.form(piece).name
        node = self.file.node(name, mesh=mesh, matrix=_node_matrix(matrix), extras={"part": part})
        self._group_of(piece).append(node)

    def _group_of(self, piece: int) -> list[int]:
        drawer = self.pieces.groups[self.pieces.group[piece]]
        if drawer:
            return self.drawers.setdefault(drawer, [])
        return self.assemblies.setdefault(self.pieces.form(piece).assembly, [])

    def _drawer(self, name: str, inside: list[int]) -> int:
        """A drawer as one node: moved by `travel_mm` along `axis`, it stands open."""
        row = name.rpartition("-")[0]
        extras = {"travel_mm": number(self.bed[f"{row}.travel"]), "axis": _OPENS[row]}
        return self.file.node(f"drawer-{name}", children=inside, extras=extras)

    def _mattress(self) -> int:
        size = (self.bed["mattress_across"], self.bed["mattress_along"], self.bed["mattress_high"])
        place = np.eye(4)
        place[:3, 3] = (-size[0] / 2, self.bed["mattress_foot_y"], self.bed["deck_top"])
        mesh = self._mesh("mattress", _body("mattress", size), _TICKING)
        return self.file.node("mattress", mesh=mesh, matrix=_node_matrix(place))


def _body(name: str, size: Point) -> Part:
    """A plain box as a part, so that it is made solid as parts are."""
    across, along, high = size
    return Part(
        name=name, assembly="", length=across, width=along, thickness=high, lies="uvz",
        at=(0.0, 0.0, 0.0), material="",
    )  # fmt: skip


def _wood_look(wood: Material) -> Look:
    return Look(wood.name, _SOLID if wood.kind == "solid" else _SHEET)


def _node_matrix(place: Floats) -> list[float]:
    """From a part's axes in m to the file's, as glTF wants it: column by column."""
    matrix = np.eye(4)
    matrix[:3, :3] = _FROM_BED @ place[:3, :3]
    matrix[:3, 3] = _FROM_BED @ place[:3, 3] / _METRE
    return [round(float(each), 9) + 0.0 for each in matrix.T.ravel()]  # 1 nm; + 0.0: no minus zero
