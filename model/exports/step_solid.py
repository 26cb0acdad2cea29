"""One solid of an exchange file: its corners, edges and faces, down to the points.

Source: ISO 10303-42, topology and geometry; `manifold_solid_brep` with `advanced_face`s, as ISO
10303-514 (advanced boundary representation) has them.
"""

from __future__ import annotations

import math

from model.exports.step_file import Ref, StepFile, length
from model.parts.pieces import Floats
from model.solids.brep import Brep, Cap, Rim, Wall
from model.solids.planar import Planar
from model.solids.shafts import axes_across

_Point = list[float]
_Along = tuple[Ref, bool]  # an edge, and whether it is run along forwards


def add_solid(file: StepFile, name: str, brep: Brep) -> Ref:
    """Add a solid under a name; its number."""
    made = _Solid(file, brep)
    shell = file.add("CLOSED_SHELL", "", made.faces())
    return file.add("MANIFOLD_SOLID_BREP", name, shell)


class _Solid:
    def __init__(self, file: StepFile, brep: Brep) -> None:
        self.file, self.brep = file, brep
        self.corners: dict[int, Ref] = {}
        self.edges: dict[tuple[int, int], Ref] = {}
        self.seams = [self._vertex(rim.seam.tolist()) for rim in brep.rims]
        self.rims = [self._rim(rim, seam) for rim, seam in zip(brep.rims, self.seams, strict=True)]

    def faces(self) -> list[Ref]:
        """All faces: flat ones, walls of holes, and the ground and shoulders within holes."""
        flats = self._flats(self.brep.flats) if self.brep.flats is not None else []
        walls = [self._wall(wall) for wall in self.brep.walls]
        return [*flats, *walls, *(self._cap(cap) for cap in self.brep.caps)]

    def _flats(self, surface: Planar) -> list[Ref]:
        found = []
        corners = surface.corners.tolist()
        for f, rings in enumerate(surface.loops):
            loops = [self._ring(corners, ring.tolist()) for ring in rings]
            loops += [[(self.rims[rim], way)] for rim, way in self.brep.openings[f]]
            at = surface.corners[rings[0][0]]
            found.append(self._flat(at, surface.normals[f], loops))
        return found

    def _cap(self, cap: Cap) -> Ref:
        loops = [[(self.rims[rim], way)] for rim, way in cap.rims]
        return self._flat(cap.at, cap.normal, loops)

    def _flat(self, at: Floats, normal: Floats, loops: list[list[_Along]]) -> Ref:
        """A flat face between loops of edges, the outer one first."""
        file = self.file
        place = file.axes(at.tolist(), normal.tolist(), axes_across(normal)[0].tolist())
        plane = file.shared(f"PLANE('',#{place})")
        return self._face(loops, plane, is_outward=True)

    def _wall(self, wall: Wall) -> Ref:
        """A cylinder's wall: around one rim, along the seam, around the other, and back."""
        file, start, end = self.file, wall.start, wall.end
        place = file.axes(wall.at.tolist(), wall.way.tolist(), wall.side.tolist())
        round_face = file.shared(f"CYLINDRICAL_SURFACE('',#{place},{length(wall.radius)})")
        points = [self.brep.rims[rim].seam.tolist() for rim in (start, end)]
        seam = self._straight(points[0], points[1], self.seams[start], self.seams[end])
        loop = [
            (self.rims[start], wall.is_bar), (seam, True),
            (self.rims[end], not wall.is_bar), (seam, False),
        ]  # fmt: skip
        return self._face([loop], round_face, is_outward=wall.is_bar)

    def _face(self, loops: list[list[_Along]], surface: Ref, *, is_outward: bool) -> Ref:
        """A face; a surface whose own normal looks into the solid is turned."""
        bounds = []
        for k, loop in enumerate(loops):
            edges = ",".join(f"#{self._along(edge, way)}" for edge, way in loop)
            ring = self.file.record(f"EDGE_LOOP('',({edges}))")
            kind = "FACE_BOUND" if k else "FACE_OUTER_BOUND"
            bounds.append(self.file.record(f"{kind}('',#{ring},.T.)"))
        way = ".T." if is_outward else ".F."
        rows = ",".join(f"#{bound}" for bound in bounds)
        return self.file.record(f"ADVANCED_FACE('',({rows}),#{surface},{way})")

    def _along(self, edge: Ref, way: bool) -> Ref:
        return self.file.record(f"ORIENTED_EDGE('',*,*,#{edge},{'.T.' if way else '.F.'})")

    def _ring(self, corners: list[_Point], ring: list[int]) -> list[_Along]:
        """The edges around a loop of corners; an edge is shared by the two faces it parts."""
        found = []
        for one, other in zip(ring, [*ring[1:], ring[0]], strict=True):
            if (other, one) in self.edges:
                found.append((self.edges[other, one], False))
                continue
            ends = self._corner(corners, one), self._corner(corners, other)
            edge = self._straight(corners[one], corners[other], *ends)
            self.edges[one, other] = edge
            found.append((edge, True))
        return found

    def _corner(self, corners: list[_Point], corner: int) -> Ref:
        if corner not in self.corners:
            self.corners[corner] = self._vertex(corners[corner])
        return self.corners[corner]

    def _vertex(self, at: _Point) -> Ref:
        return self.file.record(f"VERTEX_POINT('',#{self.file.point(at)})")

    def _straight(self, start: _Point, end: _Point, first: Ref, last: Ref) -> Ref:
        """A straight edge between two corners."""
        file, long = self.file, math.dist(start, end)
        way = file.direction([(b - a) / long for a, b in zip(start, end, strict=True)])
        vector = file.shared(f"VECTOR('',#{way},1.)")
        line = file.shared(f"LINE('',#{file.point(start)},#{vector})")
        return file.record(f"EDGE_CURVE('',#{first},#{last},#{line},.T.)")

    def _rim(self, rim: Rim, seam: Ref) -> Ref:
        """A circle or ellipse as one closed edge."""
        file, (long, short) = self.file, rim.halves
        place = file.axes(rim.centre.tolist(), rim.normal.tolist(), rim.major.tolist())
        if long == short:
            curve = file.shared(f"CIRCLE('',#{place},{length(short)})")
        else:
            curve = file.shared(f"ELLIPSE('',#{place},{length(long)},{length(short)})")
        return file.record(f"EDGE_CURVE('',#{seam},#{seam},#{curve},.T.)")
