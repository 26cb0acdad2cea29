"""The bed on the graphics card: its scene, moved and coloured, in one set of buffers.

Where it is coloured by strength, the frame is left to `WorkedLayers`: all else is glass.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from app.view.items import EdgesItem, FacesItem, Item
from app.view.palette import ACCENT, BEDDING, HOVER, MARKED, PIPING, piece_colour, toned
from app.view.scene import Scene
from app.view.use_scale import UNKNOWN

Floats = npt.NDArray[np.float32]
GHOST, GHOST_EDGE = 0.10, 0.34  # opacity of what is seen through
FAINT, FAINT_EDGE = 0.05, 0.20  # and of what stands round a frame that is coloured by strength
STRENGTH = "strength"  # a way to colour, beside those of the palette
EDGE_TONE = 0.44  # edges are the piece's own colour, darker
HIDDEN_EDGE = 0.42  # opacity of a chosen piece's edges where other pieces cover it


@dataclass(frozen=True, kw_only=True)
class Style:
    """What the view was asked to show. `frame`: the pieces that another layer colours by strength,
    None while their strength is not known.
    """

    colour_by: str = "wood"
    selected: Collection[int] = ()
    hovered: int = -1
    is_see_through: bool = False
    has_mattress: bool = True
    frame: frozenset[int] | None = None

    @property
    def is_by_strength(self) -> bool:
        """Whether pieces are coloured by how hard they work."""
        return self.colour_by == STRENGTH

    @property
    def worked(self) -> frozenset[int]:
        """The pieces that are left to the layer that colours by strength."""
        return self.frame if self.is_by_strength and self.frame is not None else frozenset()

    @property
    def shows_mattress(self) -> bool:
        """A mattress hides the slats that carry it."""
        return self.has_mattress and not self.is_by_strength


class BedLayers:
    """Solid faces and edges, ghosts, and the outline of what is selected."""

    def __init__(self) -> None:
        self.faces, self.edges = FacesItem(0), EdgesItem(10, is_solid=True)
        self.ghosts, self.ghost_edges = FacesItem(20, is_ghost=True), EdgesItem(30)
        self.outline = EdgesItem(40, is_through=True)
        self.items: tuple[Item, ...] = (
            self.faces, self.edges, self.ghosts, self.ghost_edges, self.outline,
        )  # fmt: skip
        self.triangles: Floats = np.zeros((0, 3, 3), np.float32)  # as shown, mattress or not
        self._lines: Floats = np.zeros((0, 2, 3), np.float32)
        self._ghosts: tuple[Floats, Floats, npt.NDArray[np.uint8]] | None = None

    def place(self, scene: Scene, moved: Floats) -> None:
        """Put every piece where it stands now: `moved` (pieces, 3) from its place on the bed."""
        self.triangles, self._lines = scene.triangles, scene.edges
        if moved.any():
            self.triangles = self.triangles + moved[scene.piece_of_triangle][:, None]
            self._lines = self._lines + moved[scene.piece_of_edge][:, None]

    def paint(self, scene: Scene, style: Style) -> None:
        """Send faces and edges in the colours of a style; what is hidden is left out."""
        colours = _body_colours(scene, style)
        of_triangle, of_edge = scene.piece_of_triangle, scene.piece_of_edge
        alpha = colours[:, 3]
        shown, solid = alpha > 0, alpha >= 1
        self._send_faces(self.faces, scene, solid[of_triangle], colours)
        self._send_faces(self.ghosts, scene, (shown & ~solid)[of_triangle], colours)
        lines = colours.copy()
        lines[:, :3] *= EDGE_TONE
        lines[shown & ~solid, 3] = FAINT_EDGE if style.is_by_strength else GHOST_EDGE
        lines[scene.is_mattress, :3] = PIPING
        self._send_edges(self.edges, solid[of_edge], of_edge, lines)
        self._send_edges(self.ghost_edges, (shown & ~solid)[of_edge], of_edge, lines)
        marked = np.zeros(len(colours), bool)
        marked[list(set(style.selected) - style.worked)] = True
        lines[:] = (*(0.7 * np.array(ACCENT)), HIDDEN_EDGE)
        self._send_edges(self.outline, marked[of_edge], of_edge, lines)

    def sort_ghosts(self, toward: npt.NDArray[np.float64]) -> None:
        """Order what is seen through from far to near; `toward` points to the eye."""
        if self._ghosts is None:
            return
        triangles, normals, colours = self._ghosts
        order = np.argsort(triangles.sum(1) @ toward.astype(np.float32))
        self.ghosts.put(
            a_position=triangles[order], a_normal=normals[order], a_color=colours[order]
        )

    def _send_faces(
        self, item: FacesItem, scene: Scene, keep: npt.NDArray[np.bool_], colours: Floats
    ) -> None:
        if item is self.ghosts:
            self._ghosts = None
        if not keep.any():
            item.corners = 0
            return
        every = keep.all()
        triangles = self.triangles if every else self.triangles[keep]
        normals = scene.normals if every else scene.normals[keep]
        bytes_ = (colours * 255).astype(np.uint8)
        painted = bytes_[scene.piece_of_triangle if every else scene.piece_of_triangle[keep]]
        corners = np.repeat(painted[:, None], 3, axis=1)
        item.put(a_position=triangles, a_normal=normals, a_color=corners)
        if item is self.ghosts:
            self._ghosts = (triangles, normals, corners)

    def _send_edges(
        self,
        item: EdgesItem,
        keep: npt.NDArray[np.bool_],
        of_edge: npt.NDArray[np.intp],
        colours: Floats,
    ) -> None:
        if not keep.any():
            item.corners = 0
            return
        painted = (colours * 255).astype(np.uint8)[of_edge[keep]]
        item.put(a_position=self._lines[keep], a_color=np.repeat(painted, 2, axis=0))


def _body_colours(scene: Scene, style: Style) -> Floats:
    """(pieces, 4); what is not shown at all has no opacity."""
    colours = _grey(scene, style) if style.is_by_strength else _own_colours(scene, style)
    for piece in set(style.selected) - style.worked:
        colours[piece] = (*_mixed(colours[piece, :3], MARKED, 0.85), 1.0)
    if style.hovered >= 0 and style.hovered not in style.selected:
        colours[style.hovered, :3] = _mixed(colours[style.hovered, :3], HOVER, 0.45)
    return colours


def _grey(scene: Scene, style: Style) -> Floats:
    """All in one light grey: glass round the frame, or solid while nothing is known of it."""
    colours = np.full((len(scene.looks), 4), (*UNKNOWN, 1.0), np.float32)
    if style.frame is not None:
        colours[:, 3] = FAINT
        colours[list(style.frame), 3] = 0.0
    colours[scene.is_mattress, 3] = 0.0
    return colours


def _own_colours(scene: Scene, style: Style) -> Floats:
    """Wood, paint, or the tone of the assembly."""
    plain = [
        piece_colour(look.material, look.assembly, look.is_hardware, style.colour_by)
        for look in scene.looks
    ]
    colours = np.ones((len(plain), 4), np.float32)
    colours[:, :3] = toned(np.array(plain).reshape(-1, 3))
    colours[scene.is_mattress] = (*BEDDING, 1.0 if style.has_mattress else 0.0)
    if style.is_see_through:
        colours[colours[:, 3] > 0, 3] = GHOST
    return colours


def _mixed(colour: Floats, other: tuple[float, float, float], share: float) -> Floats:
    return colour * (1 - share) + np.array(other, np.float32) * share
