"""A part bounded by true faces: flat polygons, and round holes as cylinders with their rims.

For exchange with programs that want a drilled hole to be one. Holes that meet others or break
through an edge are flats in it, as in the exact solid (see `model.solids.shafts`).
"""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

import numpy as np

from model.part import Part
from model.parts.pieces import Floats
from model.solids.breaches import Breach, Edges, breaches
from model.solids.exact import solid
from model.solids.planar import Planar, planar
from model.solids.shafts import Shaft, axes_across, near_another, shafts


class Rim(NamedTuple):
    """A circle or ellipse, counter-clockwise about `normal`, mm.

    `major` is the unit vector along the longer half axis, `halves` both half axes; `seam` is the
    point where it begins and ends.
    """

    centre: Floats
    normal: Floats
    major: Floats
    halves: tuple[float, float]
    seam: Floats


class Wall(NamedTuple):
    """The wall of a cylinder from the rim `start` along its `way` to the rim `end` (indices);
    `side` is the way from the axis to the seams. `is_bar` where the wood is inside.
    """

    at: Floats
    way: Floats
    side: Floats
    radius: float
    start: int
    end: int
    is_bar: bool = False


class Cap(NamedTuple):
    """A flat face between rims: through `at`, outward `normal`; the outer rim comes first.

    Each of `rims` is its index, and whether it is run through forwards.
    """

    at: Floats
    normal: Floats
    rims: tuple[tuple[int, bool], ...]


class Brep(NamedTuple):
    """A closed solid, mm, in a part's own axes.

    `flats` are its flat faces with straight edges; `openings[f]` the rims within flat face f, as in
    `Cap`; then the rims, the walls and the caps.
    """

    flats: Planar | None
    openings: tuple[tuple[tuple[int, bool], ...], ...]
    rims: tuple[Rim, ...]
    walls: tuple[Wall, ...]
    caps: tuple[Cap, ...]


def brep(part: Part) -> Brep:
    """A part with all its cuts, its taper, and its holes as round as can be."""
    if part.is_round and not part.cuts and not part.holes:
        return _bar(part)
    every = shafts(part.holes)
    flat = near_another(every)
    while True:  # a hole that cannot be round makes flats, and these may spoil another
        as_flats = {hole for shaft, is_flat in zip(every, flat, strict=True) if is_flat
                    for hole in shaft.holes}  # fmt: skip
        cut = tuple(hole for k, hole in enumerate(part.holes) if k in as_flats)
        surface = planar(solid(replace(part, holes=cut)))
        edges = Edges.of(surface)
        found = [
            None if is_flat else breaches(shaft, surface, edges)
            for shaft, is_flat in zip(every, flat, strict=True)
        ]
        spoilt = np.array([each is None for each in found], bool)
        if np.array_equal(spoilt, flat):
            break
        flat = spoilt
    made = _Drilled(surface)
    for shaft, through in zip(every, found, strict=True):
        if through is not None:
            made.drill(shaft, through)
    return made.brep()


class _Drilled:
    """A flat solid that holes are drilled into."""

    def __init__(self, surface: Planar) -> None:
        self.surface = surface
        self.openings: list[list[tuple[int, bool]]] = [[] for _ in surface.loops]
        self.rims: list[Rim] = []
        self.walls: list[Wall] = []
        self.caps: list[Cap] = []

    def brep(self) -> Brep:
        openings = tuple(tuple(each) for each in self.openings)
        return Brep(self.surface, openings, tuple(self.rims), tuple(self.walls), tuple(self.caps))

    def drill(self, shaft: Shaft, through: list[Breach]) -> None:
        """Walls wherever the shaft is in wood, from each breach that enters to the next."""
        first = [] if through[0].enters else [None]
        last: list[Breach | None] = [None] if through[-1].enters else []
        ends = [*first, *through, *last]
        for enters, leaves in zip(ends[::2], ends[1::2], strict=True):
            self._stretch(shaft, enters, leaves)

    def _stretch(self, shaft: Shaft, enters: Breach | None, leaves: Breach | None) -> None:
        """The walls of one stretch in wood; None is an end within the wood."""
        low = shaft.bores[0].start if enters is None else enters.along
        high = shaft.bores[-1].end if leaves is None else leaves.along
        inside = [bore for bore in shaft.bores if bore.end > low and bore.start < high]
        start = self._end(shaft, enters, low, inside[0].radius, is_start=True)
        for bore, after in zip(inside, inside[1:], strict=False):
            end = self._level(shaft, bore.end, bore.radius)
            self._wall(shaft, bore.radius, start, end)
            start = self._level(shaft, bore.end, after.radius)
            self._shoulder(shaft, end, start, narrows=after.radius < bore.radius)
        end = self._end(shaft, leaves, high, inside[-1].radius, is_start=False)
        self._wall(shaft, inside[-1].radius, start, end)

    def _end(
        self, shaft: Shaft, breach: Breach | None, along: float, radius: float, *, is_start: bool
    ) -> int:
        """The rim at one end of a stretch, and what it bounds: an opening, or the hole's ground.

        Seen along the way a rim runs forwards in the face at the start of a stretch, backwards in
        that at its end: then wood is on its outside, and its wall runs it the other way round.
        """
        if breach is None:
            rim = self._level(shaft, along, radius)
            normal = shaft.way if is_start else -shaft.way
            self.caps.append(Cap(self.rims[rim].centre, normal, ((rim, is_start),)))
            return rim
        rim = self._rim(shaft, along, radius, self.surface.normals[breach.face])
        self.openings[breach.face].append((rim, is_start))
        return rim

    def _shoulder(self, shaft: Shaft, end: int, start: int, *, narrows: bool) -> None:
        """The ring where a hole changes its width."""
        rims = ((end, False), (start, True)) if narrows else ((start, True), (end, False))
        normal = -shaft.way if narrows else shaft.way
        self.caps.append(Cap(self.rims[end].centre, normal, rims))

    def _wall(self, shaft: Shaft, radius: float, start: int, end: int) -> None:
        side = axes_across(shaft.way)[0]
        self.walls.append(Wall(shaft.at, shaft.way, side, radius, start, end))

    def _level(self, shaft: Shaft, along: float, radius: float) -> int:
        return self._rim(shaft, along, radius, shaft.way)

    def _rim(self, shaft: Shaft, along: float, radius: float, face: Floats) -> int:
        """The rim that a shaft has on a plane with the normal `face`."""
        normal = face if face @ shaft.way > 0 else -face
        cosine = float(normal @ shaft.way)
        centre = shaft.at + along * shaft.way
        side = axes_across(shaft.way)[0]
        steep = shaft.way - cosine * normal
        is_circle = float(np.linalg.norm(steep)) < 1e-9
        major = side if is_circle else steep / np.linalg.norm(steep)
        lift = -float(side @ normal) / cosine  # from the axis sideways, then along it to the plane
        halves = (radius, radius) if is_circle else (radius / cosine, radius)
        seam = centre + radius * (side + lift * shaft.way)
        self.rims.append(Rim(centre, normal, major, halves, seam))
        return len(self.rims) - 1


def _bar(part: Part) -> Brep:
    """A round bar along its length."""
    radius = float(part.width) / 2
    way, side = np.array([1.0, 0.0, 0.0]), np.array([0.0, 1.0, 0.0])
    at = np.array([0.0, radius, radius])
    ends = [at, at + float(part.length) * way]
    rims = tuple(Rim(each, way, side, (radius, radius), each + radius * side) for each in ends)
    caps = (Cap(ends[0], -way, ((0, False),)), Cap(ends[1], way, ((1, True),)))
    return Brep(None, (), rims, (Wall(at, way, side, radius, 0, 1, is_bar=True),), caps)
