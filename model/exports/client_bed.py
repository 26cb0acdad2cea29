"""What the client's page is given of the bed: shapes, pieces, drawers and colours, as JSON holds
them.

Shapes are those of a view, without drilled holes, which nobody sees from where a client stands.
"""

from __future__ import annotations

import base64
from typing import Any, NamedTuple

import numpy as np
import numpy.typing as npt

from model.bed import Bed
from model.cost.surfaces import is_finished
from model.exports.client_finishes import Finishes
from model.exports.drawer_ways import drawer_ways
from model.exports.plain import number, numbers
from model.materials.colour import wood_colour
from model.part import Part
from model.solids.carried import MATTRESS
from model.solids.mesh import Shape, shapes

_STEEL = "#8f979c"
_LARGEST = 65535  # corners of a shape that can be counted in two bytes


class Look(NamedTuple):
    """The colour of a piece's wood, `#rrggbb`, and whether paint can take its place."""

    colour: str
    takes_paint: bool


def look_of(part: Part, finished: str) -> Look:
    """How a part looks; `finished` is the maker's choice of the surfaces that get a finish."""
    if part.hardware:
        return Look(_STEEL, False)
    return Look(f"#{wood_colour(part.material).lower()}", is_finished(part, finished))


def is_mattress(part: Part) -> bool:
    """Whether a part is the mattress, which the page draws as a soft body."""
    return part.hardware == MATTRESS


def content(bed: Bed, finishes: Finishes) -> dict[str, Any]:
    """The whole record. Lengths are mm in bed axes: x across, y from foot to head, z up.

    `corners`, `faces`, `edges` hold the figures of all shapes one after the other, `places` three
    rows of four for each piece; `pieces` are a shape, a drawer (0 for the bed) and a look.
    """
    hard = [k for k in range(len(bed.pieces)) if not is_mattress(bed.pieces.form(k))]
    made = shapes([bed.pieces.form(piece) for piece in hard])
    shape_at = {id(shape): at for at, shape in enumerate({id(s): s for s in made}.values())}
    different = list({id(shape): shape for shape in made}.values())
    ways = drawer_ways(bed)
    group_at = {"": 0} | {way.name: at for at, way in enumerate(ways, start=1)}
    groups = [group_at[bed.pieces.groups[bed.pieces.group[piece]]] for piece in hard]
    worn = [look_of(bed.pieces.form(piece), bed["finished"]) for piece in hard]
    looks = list(dict.fromkeys(worn))
    rows = zip(made, groups, worn, strict=True)
    return {
        "shapes": [_counts(shape) for shape in different],
        "corners": _packed([shape.vertices for shape in different], "<f4"),
        "faces": _packed([shape.triangles for shape in different], "<u2"),
        "edges": _packed([shape.edges for shape in different], "<f4"),
        "places": _packed([bed.pieces.matrices[hard][:, :3]], "<f4"),
        "pieces": [[shape_at[id(shape)], group, looks.index(look)] for shape, group, look in rows],
        "looks": [{"colour": each.colour, "takesPaint": each.takes_paint} for each in looks],
        "drawers": [
            {"name": way.name, "toward": numbers(way.toward), "travel": number(way.travel)}
            for way in ways
        ],
        "boxes": _boxes(bed, hard, groups),
        "mattresses": _mattresses(bed),
        "deck": number(bed["deck_top"]),
        "finishes": [{"colour": each.colour} for each in finishes.all],
    }


def _counts(shape: Shape) -> list[int]:
    if len(shape.vertices) > _LARGEST:
        raise ValueError(f"a shape of {len(shape.vertices)} corners is too large for the page")
    return [len(shape.vertices), len(shape.triangles), len(shape.edges)]


def _packed(arrays: list[npt.NDArray[Any]], kind: str) -> str:
    """Figures of all arrays in a row, as text; low bytes first, as browsers hold them."""
    rows = np.concatenate([each.ravel() for each in arrays] or [np.zeros(0)]).astype(kind)
    return base64.b64encode(rows.tobytes()).decode("ascii")


def _boxes(bed: Bed, pieces: list[int], groups: list[int]) -> list[Any]:
    """The box round each piece, for its shadow, to the mm."""
    low, high = bed.pieces.bounds
    return [
        [
            group,
            np.round(low[piece]).astype(int).tolist(),
            np.round(high[piece]).astype(int).tolist(),
        ]
        for piece, group in zip(pieces, groups, strict=True)
    ]


def _mattresses(bed: Bed) -> list[Any]:
    low, high = bed.pieces.bounds
    soft = [k for k in range(len(bed.pieces)) if is_mattress(bed.pieces.form(k))]
    return [[numbers(low[k]), numbers(high[k])] for k in soft]
