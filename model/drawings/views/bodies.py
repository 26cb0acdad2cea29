"""The wood that a view looks at, as arrays: edges, and the bodies that hide what lies behind."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from model.drawings.views.surfaces import Surface, surface_of
from model.part import Part
from model.parts.pieces import Floats, Ints
from model.parts.wood import wood_boxes
from model.solids.mesh import shapes


class Bodies(NamedTuple):
    """Pieces in the axes of a scene, mm; each row knows its `piece`, a row of the scene.

    `edges` (e, 2, 3): corners of wood. `lo`, `hi` (b, 3): boxes along the axes that fill a piece.
    `facets` (t, 3, 3): triangles of what no boxes fill. `bends` (c, 2, 3): edges of rounded
    surfaces, seen only where one of the two faces that meet there looks at the eye; their normals
    are `bend_normals` (c, 2, 3).
    """

    edges: Floats
    edge_piece: Ints
    lo: Floats
    hi: Floats
    box_piece: Ints
    facets: Floats
    facet_piece: Ints
    bends: Floats
    bend_normals: Floats
    bend_piece: Ints


def bodies(forms: Sequence[Part], matrices: Floats, exact: bool) -> Bodies:
    """Of parts as they are cut, at their places (n, 4, 4); `exact` ones with their round holes."""
    boxed = np.array(
        [_is_boxed(form, matrix, exact) for form, matrix in zip(forms, matrices, strict=True)], bool
    )
    plain, rest = np.flatnonzero(boxed), np.flatnonzero(~boxed)
    cut = [forms[k] for k in plain.tolist()]
    wood = [wood_boxes(form.size, form.cuts, form.name) for form in cut]
    corners, box_piece = _laid(wood, plain, matrices)
    return of_surfaces(
        [*(Surface.of_edges(each.edges) for each in shapes(cut)),
         *(surface_of(forms[k], exact) for k in rest.tolist())],
        np.concatenate([plain, rest]), matrices,
    )._replace(lo=corners.min(axis=1), hi=corners.max(axis=1), box_piece=box_piece)  # fmt: skip


def of_surfaces(surfaces: Sequence[Surface], rows: Ints, matrices: Floats) -> Bodies:
    """Of surfaces in the axes of their parts; `rows` (s,) are the pieces that they belong to."""
    edges, edge_piece = _laid([each.edges for each in surfaces], rows, matrices)
    facets, facet_piece = _laid([each.facets for each in surfaces], rows, matrices, corners=3)
    bends, bend_piece = _laid([each.bends for each in surfaces], rows, matrices)
    normals = np.concatenate([_NONE[:, :2], *(each.bend_normals for each in surfaces)])
    turned = np.einsum("nij,nkj->nki", matrices[bend_piece, :3, :3], normals)
    return Bodies(
        edges, edge_piece, _NONE[:, 0], _NONE[:, 0], np.zeros(0, np.intp),
        facets, facet_piece, bends, turned, bend_piece,
    )  # fmt: skip


_NONE = np.zeros((0, 3, 3))


def _is_boxed(form: Part, matrix: Floats, exact: bool) -> bool:
    """Whether boxes along the axes of the scene fill a piece."""
    round_or_slanted = form.is_round or bool(form.taper) or (exact and bool(form.holes))
    return not round_or_slanted and bool(np.abs(matrix[:3, :3]).max(axis=1).min() > 1 - 1e-12)


def _laid(
    lines: Sequence[Floats], rows: Ints, matrices: Floats, corners: int = 2
) -> tuple[Floats, Ints]:
    """Points (m, k, 3) of pieces at their places, and the piece (m,) that each belongs to."""
    piece = np.repeat(rows, [len(each) for each in lines]).astype(np.intp)
    points = np.concatenate([_NONE[:, :corners], *lines])
    placed = np.einsum("nij,nkj->nki", matrices[piece, :3, :3], points)
    return placed + matrices[piece, None, :3, 3], piece
