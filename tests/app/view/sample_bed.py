"""A bed of plain boxes for the tests of the view: quick to make, and free of real beds' rules."""

from dataclasses import dataclass, field
from types import SimpleNamespace
from typing import Any

import numpy as np

CORNERS = np.array([(x, y, z) for x in (0, 1) for y in (0, 1) for z in (0, 1)], float)
QUADS = [(0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3)]
NORMALS = [(-1, 0, 0), (1, 0, 0), (0, -1, 0), (0, 1, 0), (0, 0, -1), (0, 0, 1)]
LINES = [
    (0, 1),
    (0, 2),
    (0, 4),
    (1, 3),
    (1, 5),
    (2, 3),
    (2, 6),
    (3, 7),
    (4, 5),
    (4, 6),
    (5, 7),
    (6, 7),
]


@dataclass
class SamplePieces:
    """As much of `model.parts.pieces.Pieces` as the view reads."""

    parts: list[Any] = field(default_factory=list)
    groups: list[str] = field(default_factory=lambda: [""])
    drawer_of: list[int] = field(default_factory=list)
    boxes: list[tuple[Any, Any]] = field(default_factory=list)

    def add(self, name: str, assembly: str, low: Any, high: Any, **more: Any) -> None:
        """One piece, a box between two corners."""
        drawer = more.get("drawer", "")
        if drawer not in self.groups:
            self.groups.append(drawer)
        self.drawer_of.append(self.groups.index(drawer))
        material = more.get("material", "yellow_poplar")
        hardware = more.get("hardware", "")
        self.parts.append(
            SimpleNamespace(name=name, assembly=assembly, material=material, hardware=hardware)
        )
        self.boxes.append((low, high))

    def __len__(self) -> int:
        return len(self.boxes)

    @property
    def place(self) -> Any:
        """How many pieces of its name came before each piece."""
        names = [part.name for part in self.parts]
        return np.array([names[:k].count(name) for k, name in enumerate(names)])

    @property
    def part(self) -> Any:
        return np.arange(len(self))

    @property
    def group(self) -> Any:
        return np.array(self.drawer_of)

    @property
    def bounds(self) -> Any:
        corners = np.array(self.boxes, float)
        return corners[:, 0], corners[:, 1]


class SampleBed:
    """A bed with two drawers on each side, `width` and `length` of the mattress in mm."""

    def __init__(self, width: float = 1524.0, length: float = 2032.0) -> None:
        self.parts: dict[str, Any] = {}
        self.pieces = SamplePieces()
        half, post, stock = width / 2 + 6 + 19, 70.0, 19.0
        outer, far = half + 25, length + 12 + 2 * post
        self.dims: dict[str, Any] = {
            "deck_top": 330.0, "sleeping_height": 584.0,
            "bed_width": 2 * outer, "bed_length": far, "rail_top": 380.0, "post_outer_x": outer,
            "left.travel": 500.0, "right.travel": 500.0, "opening_height": 200.0,
            "opening_bottom": 80.0, "opening_top": 280.0, "head.end_height_built": 1150.0,
            "frame_bottom": 35.0, "box_bottom": 95.0, "box_top": 255.0, "box_top_room_built": 25.0,
            "box_bottom_room": 15.0, "slat_width": 89.0, "slat_end_gap": 12.0,
            "slat_spacer": (length - 101) / 13 - 89, "post_along": post,
            "slat_places": tuple(post + 12 + k * (length - 101) / 13 for k in range(14)),
        }  # fmt: skip
        pitch = (far - 2 * post - 50) / 2
        for row in ("left", "right"):
            self.dims |= {
                f"{row}.opening_width": pitch - 50, f"{row}.drawer_count": 2,
                f"{row}.box_side_room": 13.0, f"{row}.front_plane": 20.0,
                f"{row}.opening_places": (post + 50, post + 50 + pitch),
            }  # fmt: skip
        self._ends(outer, post, far)
        self._sides(outer, post, far, stock)
        self._deck(half, post, length)

    def __getitem__(self, name: str) -> Any:
        return self.dims[name]

    def _ends(self, outer: float, post: float, far: float) -> None:
        add = self.pieces.add
        for name, y, top in (("footboard", 0.0, 480.0), ("headboard", far - post, 1150.0)):
            for x in (-outer, outer - post):
                add("post", name, (x, y, 0), (x + post, y + post, top))
            inner = outer - post
            add("top rail", name, (-inner, y + 20, top - 120), (inner, y + 45, top))
            add("bottom rail", name, (-inner, y + 20, 60), (inner, y + 45, 160))
            add("panel", name, (-inner, y + 28, 160), (inner, y + 37, top - 120), material="mdf_9")

    def _sides(self, outer: float, post: float, far: float, stock: float) -> None:
        for sign, row in ((-1, "left"), (1, "right")):

            def box(
                x0: float, x1: float, y0: float, y1: float, z0: float, z1: float, s: int = sign
            ) -> Any:
                xs = sorted((s * (outer - 20 - x0), s * (outer - 20 - x1)))
                return (xs[0], y0, z0), (xs[1], y1, z1)

            add, side = self.pieces.add, f"{row} side"
            y0, y1 = post, far - post
            add("top rail", side, *box(0, stock + 6, y0, y1, 280, 380))
            add("bottom rail", side, *box(0, stock + 6, y0, y1, 35, 80))
            pitch = (y1 - y0 - 50) / 2
            for k in range(3):
                at = y0 + k * pitch
                add("stile", side, *box(0, stock + 6, at, at + 50, 80, 280))
            for k in range(2):
                at, drawer = y0 + 50 + k * pitch, f"{row}-{k + 1}"
                self._drawer(box, at, at + pitch - 50, drawer)

    def _drawer(self, box: Any, y0: float, y1: float, drawer: str) -> None:
        add = self.pieces.add
        add("front", "fronts", *box(-19, 0, y0 - 12, y1 + 12, 70, 290), drawer=drawer)
        middle = (y0 + y1) / 2
        pull = box(-44, -19, middle - 60, middle + 60, 190, 200)
        add("pull", "fronts", *pull, drawer=drawer, hardware="pull")
        ply = {"drawer": drawer, "material": "birch_ply_12"}
        for at in (y0 + 13, y1 - 25):
            add("box side", "drawers", *box(0, 550, at, at + 12, 95, 255), **ply)
        for at in (0, 538):
            add("box end", "drawers", *box(at, at + 12, y0 + 25, y1 - 25, 95, 255), **ply)
        add("bottom", "drawers", *box(6, 544, y0 + 19, y1 - 19, 103, 109), **ply)

    def _deck(self, half: float, post: float, length: float) -> None:
        for x in (-half, half - 25):
            self.pieces.add("cleat", "deck", (x, post, 273), (x + 25, post + length, 311))
        for k in range(14):
            y = post + 12 + k * (length - 101) / 13
            self.pieces.add("slat", "deck", (-half + 2, y, 311), (half - 2, y + 89, 330))
        low, high = (25 - half, post + 6, 330), (half - 25, post + 6 + length, 584)
        self.pieces.add("mattress", "mattress", low, high, hardware="MATTRESS")


def sample_mesh(bed: SampleBed) -> Any:
    """The mesh of the boxes, in the shape of `model.solids.mesh.Mesh`."""
    low, high = bed.pieces.bounds
    corners = low[:, None] + CORNERS * (high - low)[:, None]
    faces = [(corners[:, (a, b, c)], corners[:, (a, c, d)]) for a, b, c, d in QUADS]
    triangles = np.stack([t for pair in faces for t in pair], 1)
    count = len(low)
    return SimpleNamespace(
        vertices=triangles.reshape(-1, 3, 3).astype(np.float32),
        normals=np.tile(np.repeat(NORMALS, 2, axis=0), (count, 1)).astype(np.float32),
        piece=np.repeat(np.arange(count), 12),
        edges=corners[:, LINES].reshape(-1, 2, 3).astype(np.float32),
        edge_piece=np.repeat(np.arange(count), 12),
    )
