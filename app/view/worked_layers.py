"""The frame on the graphics card, coloured by how hard it works, with its own edges.

Bent, it leaves the outline of its unloaded shape behind as thin grey lines.
"""

from __future__ import annotations

import numpy as np

from app.view.items import EdgesItem, Item, WorkedItem
from app.view.strain import Floats, Strain

EDGE = (58, 36, 22, 150)  # the hue of the scale, darker than all but its last step
STILL = (96, 104, 108, 120)


class WorkedLayers:
    """Faces and edges of the frame, and what it looks like without its load."""

    def __init__(self) -> None:
        self.faces, self.edges = WorkedItem(1), EdgesItem(12)
        self.still = EdgesItem(11)
        self.items: tuple[Item, ...] = (self.faces, self.still, self.edges)
        self.triangles: Floats = np.zeros((0, 3, 3), np.float32)  # as drawn
        self.ends: Floats = np.zeros((0, 2, 3), np.float32)

    def show(self, strain: Strain | None, moved: Floats) -> None:
        """Send the frame; `moved` (pieces, 3), mm: how far each piece stands from its place."""
        if strain is None:
            for item in (self.faces, self.edges, self.still):
                item.corners = 0
            self.triangles = self.triangles[:0]
            return
        body = strain.body
        of_face, of_edge = moved[body.piece][:, None], moved[body.edge_piece][:, None]
        self.triangles, self.ends = strain.triangles + of_face, strain.edges + of_edge
        normals = np.repeat(body.normals[:, None], 3, axis=1).astype(np.float32, copy=False)
        self.faces.put(a_position=self.triangles, a_normal=normals, a_use=strain.use)
        _send(self.edges, self.ends, EDGE)
        _send(self.still, body.edges + of_edge if strain.is_bent else self.ends[:0], STILL)


def _send(item: EdgesItem, ends: Floats, colour: tuple[int, int, int, int]) -> None:
    item.corners = 0
    if len(ends):
        item.put(a_position=ends, a_color=np.full((2 * len(ends), 4), colour, np.uint8))
