"""Do screws stand far enough from edges, ends and each other not to split the wood?

Asked of solid wood, and of pilot holes, as the bed's are drawn: sheets do not split. Pocket screws
stand where their jig puts them, and pull screws pass through: no published distances are asked of
these.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import NamedTuple

import numpy as np

from model.checks.record import Finding, advice, at_least, check
from model.materials import Material
from model.mechanics.fasteners.spacing import SOURCE_SCREWS, screw_distances
from model.parts.pieces import Bools, Floats, Ints, Pieces
from model.solids.screwing import ScrewPoint
from model.units import Mm

LIGHT = ("slat", "front block")  # screws that only keep a piece in its place: advice
SKIPPED = ("pocket screw", "pull screw")
END, EDGE, NEXT = range(3)
PARALLEL = 0.99  # cosine: screws that cross stand apart where it counts
FLAT = 0.3  # sine of the angle below which a screw runs along a face and not through it
AT_FACE: Mm = 0.5  # what is so near to a face is at it
_SAID = ("the end of the {}", "the edge of the {}", "the next one in the {}")


# Diameters, through wood and through steel.
_FACTORS = tuple(
    screw_distances(1.0, has_pilot=True, through_steel=steel) for steel in (False, True)
)


class Rows(NamedTuple):
    """Distances (k) of screws: which screw, what to (END, EDGE or NEXT), in which piece, mm, and
    the least it should be.
    """

    screw: Ints
    to: Ints
    piece: Ints
    value: Floats
    least: Floats


class Axes(NamedTuple):
    """Screws (s) in one of the two pieces each of them is in: that piece, where the middle of its
    shank there lies on the piece's own axes (s, 3), the way it runs on them, unit vectors, how far
    back along it the screw comes in (s,), and whether it is the piece that carries the heads.
    """

    piece: Ints
    at: Floats
    way: Floats
    back: Floats
    has_heads: bool

    def passes(self, size: Floats) -> Bools:
        """(s, 3): the axes whose faces a screw goes in or out through, in pieces of that size
        (s, 3).

        One that slants leaves the piece of its head through another face than it came in by; in the
        piece that holds its point, the face that it comes in by is no edge.
        """
        way = np.abs(self.way)
        mostly = np.arange(3)[None] == way.argmax(axis=1)[:, None]
        if self.has_heads:
            return np.asarray(mostly | (way > FLAT))
        enters = self.at - self.way * self.back[:, None]
        by = (np.minimum(enters, size - enters) < AT_FACE) & (way > FLAT)
        return np.where(by.any(axis=1, keepdims=True), by, mostly)


@check(
    "strength",
    "Screws stand clear of edges and ends",
    source=SOURCE_SCREWS,
    remedies=("cleat_screw", "cleat_width", "frame_stock", "bearer_fixing", "connector"),
)
def screws_stand_clear(
    pieces: Pieces, screw_points: tuple[ScrewPoint, ...], materials: Mapping[str, Material]
) -> Iterator[Finding]:
    """A screw too near to an edge, an end or the next one splits the wood that it should hold."""
    points = [p for p in screw_points if p.into >= 0 and not p.screw.kind.startswith(SKIPPED)]
    if not points:
        return
    rows = _rows(pieces, points, materials)
    share = rows.value / rows.least
    names = np.array([point.name for point in points])[rows.screw]
    for name in dict.fromkeys(point.name for point in points):
        mine = np.flatnonzero(names == name)
        if len(mine):
            worst = int(mine[share[mine].argmin()])
            yield _finding(pieces, name, points[int(rows.screw[worst])], rows, worst)


def _finding(pieces: Pieces, name: str, point: ScrewPoint, rows: Rows, k: int) -> Finding:
    """The worst of alike screws; where steel has the holes, or nothing hangs on them, advice."""
    value, least = float(rows.value[k]), float(rows.least[k])
    found = at_least(value, least, tight=least / 20)
    is_steel = bool(pieces.parts[pieces.part[point.piece]].hardware)
    wood = pieces.parts[pieces.part[int(rows.piece[k])]].name
    said = (
        f"A screw of the {name} stands {value:.1f} mm, {value / point.screw.diameter:.1f} "
        f"diameters, from {_SAID[int(rows.to[k])].format(wood)}, in a pilot hole."
    )
    if is_steel and found.margin < 0:
        said += " The holes are those of the bought part: choose one with its holes farther apart."
    return replace(
        advice(found) if is_steel or name.startswith(LIGHT) else found,
        id=name.replace(",", "").replace(" ", "_"),
        title=f"Wood round the screws of the {name}",
        reason=said,
        pieces=(point.piece, point.into),
    )


def _rows(pieces: Pieces, points: list[ScrewPoint], materials: Mapping[str, Material]) -> Rows:
    """Every distance of every screw, in the wood it passes through and in that it ends in."""
    known = [materials.get(part.material) for part in pieces.parts]
    splits = np.array([row is not None and row.kind == "solid" for row in known])[pieces.part]
    bought = np.array([bool(part.hardware) for part in pieces.parts])[pieces.part]
    diameter = np.array([p.screw.diameter for p in points])
    steel = bought[[p.piece for p in points]]
    found = [
        each
        for axes in _axes(pieces, points)
        for each in (
            _from_faces(pieces, axes, diameter, steel, splits[axes.piece]),
            _from_each_other(points, axes, diameter, steel, splits[axes.piece]),
        )
    ]
    return Rows(*(np.concatenate(column) for column in zip(*found, strict=True)))


def _axes(pieces: Pieces, points: list[ScrewPoint]) -> Iterator[Axes]:
    bite = np.array([p.bite for p in points])
    length = np.array([p.screw.length for p in points])
    at = np.array([p.screw.at for p in points], float)
    way = np.array([p.screw.toward for p in points], float)
    way /= np.linalg.norm(way, axis=1, keepdims=True)
    through, into = (np.array([getattr(p, name) for p in points]) for name in ("piece", "into"))
    turn = pieces.matrices[through]
    on_bed = np.einsum("sij,sj->si", turn[:, :3, :3], at) + turn[:, :3, 3]
    along = np.einsum("sij,sj->si", turn[:, :3, :3], way)
    for piece, back, has_heads in ((through, (length - bite) / 2, True), (into, bite / 2, False)):
        deep = back if has_heads else length - back
        matrix = pieces.matrices[piece]
        middle = on_bed + along * deep[:, None] - matrix[:, :3, 3]
        own = np.einsum("sji,sj->si", matrix[:, :3, :3], middle)
        yield Axes(piece, own, np.einsum("sji,sj->si", matrix[:, :3, :3], along), back, has_heads)


def _from_faces(pieces: Pieces, axes: Axes, diameter: Floats, steel: Bools, is_wood: Bools) -> Rows:
    """Ends are square to the piece's length, edges to its width and thickness."""
    size = np.array([pieces.parts[k].size for k in pieces.part[axes.piece].tolist()])
    away = np.minimum(axes.at, size - axes.at)
    ends = np.array([(each.end, each.edge, each.edge) for each in _FACTORS])
    least = ends[steel.astype(int)] * diameter[:, None]
    kept = ~axes.passes(size) & is_wood[:, None]
    screw, face = np.nonzero(kept)
    to = np.where(face == 0, END, EDGE)
    return Rows(screw, to, axes.piece[screw], away[screw, face], least[screw, face])


def _from_each_other(
    points: list[ScrewPoint], axes: Axes, diameter: Floats, steel: Bools, is_wood: Bools
) -> Rows:
    """Two screws through one piece into one other: along the grain, or across it."""
    through = np.array([p.piece for p in points])
    same = (through[:, None] == through) & (axes.piece[:, None] == axes.piece) & is_wood
    one, other = np.nonzero(np.triu(same, 1))
    are_parallel = np.abs(np.einsum("ki,ki->k", axes.way[one], axes.way[other])) > PARALLEL
    one, other = one[are_parallel], other[are_parallel]
    apart = np.abs(axes.at[one] - axes.at[other])  # alike screws start from one face
    is_along = apart[:, 0] >= np.maximum(apart[:, 1], apart[:, 2])
    factors = np.array([(each.across, each.along) for each in _FACTORS])
    least = factors[steel[one].astype(int), is_along.astype(int)] * diameter[one]
    value = np.sqrt((apart**2).sum(axis=1))
    return Rows(one, np.full(len(one), NEXT), axes.piece[one], value, least)
