"""`bed.glb`: the bed in three dimensions, a node for each piece, drawers that can be slid.

glTF counts in metres with Y up: X is across the bed, Y up, Z from the head towards the foot. Groups
and drawers do not move their pieces, so `axis` of a drawer is a direction of the file itself.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np

from model.bed import Bed
from model.exports.drawer_ways import drawer_way
from model.exports.glb_file import Floats, GlbFile
from model.exports.looks import TICKING, Look, look
from model.exports.plain import number
from model.exports.scene import Group, Item, Shape, scene
from model.exports.version import version
from model.part import Part, Point
from model.solids.exact import solid_mesh

_METRE = 1000.0  # mm
_FROM_BED = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])  # X = x, Y = z, Z = -y


def write(bed: Bed, path: Path) -> None:
    """Write the bed with its drawers closed, grouped by assembly."""
    path.write_bytes(content(bed))


def content(bed: Bed) -> bytes:
    """The bytes of the file."""
    return _Scene(bed).to_bytes()


class _Scene:
    def __init__(self, bed: Bed) -> None:
        self.bed = bed
        self.file = GlbFile(bed.design.name, f"Bedwright {version()}")
        self.meshes: dict[Shape, int] = {}

    def to_bytes(self) -> bytes:
        groups = [self._group(each) for each in scene(self.bed).groups]
        return self.file.to_bytes(self.file.node("bed", children=[*groups, self._mattress()]))

    def _group(self, group: Group) -> int:
        """An assembly or drawer as one node, after the nodes that it holds."""
        inside = [self._place(each) for each in group.items]
        inside += [self._group(each) for each in group.groups]
        if group.drawer:
            return self._drawer(group, inside)
        return self.file.node(group.name, children=inside)

    def _place(self, item: Item) -> int:
        """One piece as a node."""
        matrix, extras = _node_matrix(item.matrix), {"part": item.shape.form.name}
        return self.file.node(item.name, mesh=self._mesh(item.shape), matrix=matrix, extras=extras)

    def _mesh(self, shape: Shape) -> int:
        """The mesh of a shape; pieces that are cut alike share it."""
        if shape not in self.meshes:
            self.meshes[shape] = self._made(shape.name, shape.form, look(shape))
        return self.meshes[shape]

    def _made(self, name: str, form: Part, look: Look) -> int:
        corners, faces = solid_mesh(form)
        return self.file.mesh(name, corners / _METRE, faces, look)

    def _drawer(self, group: Group, inside: list[int]) -> int:
        """A drawer as one node: moved by `travel_mm` along `axis`, it stands open."""
        way = drawer_way(self.bed, group.drawer)
        axis = (_FROM_BED @ way.toward + 0.0).tolist()  # + 0.0: no minus zero
        extras = {"travel_mm": number(way.travel), "axis": axis}
        return self.file.node(group.name, children=inside, extras=extras)

    def _mattress(self) -> int:
        size = (self.bed["mattress_across"], self.bed["mattress_along"], self.bed["mattress_high"])
        place = np.eye(4)
        place[:3, 3] = (-size[0] / 2, self.bed["mattress_foot_y"], self.bed["deck_top"])
        mesh = self._made("mattress", _body("mattress", size), TICKING)
        return self.file.node("mattress", mesh=mesh, matrix=_node_matrix(place))


def _body(name: str, size: Point) -> Part:
    """A plain box as a part, so that it is made solid as parts are."""
    across, along, high = size
    return Part(
        name=name, assembly="", length=across, width=along, thickness=high, lies="uvz",
        at=(0.0, 0.0, 0.0), material="",
    )  # fmt: skip


def _node_matrix(place: Floats) -> list[float]:
    """From a part's axes in m to the file's, as glTF wants it: column by column."""
    matrix = np.eye(4)
    matrix[:3, :3] = _FROM_BED @ place[:3, :3]
    matrix[:3, 3] = _FROM_BED @ place[:3, 3] / _METRE
    return [round(float(each), 9) + 0.0 for each in matrix.T.ravel()]  # 1 nm; + 0.0: no minus zero
