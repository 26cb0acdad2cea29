"""What is looked at: pieces of a bed where they stand, or moved apart; or one part by itself."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import cast

import numpy as np

from model.bed import Bed, travel_of
from model.drawings.views.bodies import Bodies, bodies
from model.drawings.views.rounds import Rounds, rounds
from model.part import Part
from model.parts.marks import piece_names
from model.parts.pieces import Floats, Ints
from model.solids.carried import MATTRESS
from model.units import Mm


@dataclass(frozen=True, kw_only=True, eq=False)
class Scene:
    """Pieces of wood in one set of axes.

    `forms` (n) are parts as they are cut, `matrices` (n, 4, 4) take their axes to the scene's, mm.
    `names` (n) are what drawings call them (`B1-2`; "" for a part by itself), `pieces` (n,) their
    places among the bed's, and `is_sheet` (n) says which are of sheet goods. Round holes narrower
    than `least_hole` are left out; `exact` bodies have their holes, so that one sees through them
    and into those that are cut open, and take some ten times as long.
    """

    forms: tuple[Part, ...]
    matrices: Floats
    names: tuple[str, ...]
    pieces: Ints
    is_sheet: tuple[bool, ...]
    least_hole: Mm = 0.0
    exact: bool = False

    def __len__(self) -> int:
        return len(self.forms)

    @cached_property
    def bodies(self) -> Bodies:
        """Edges, and what hides them."""
        return bodies(self.forms, self.matrices, self.exact)

    @cached_property
    def rounds(self) -> Rounds:
        """Round holes that are drawn as lines; exact bodies have their own."""
        return rounds(() if self.exact else self.forms, self.matrices, self.least_hole)

    def turned(self, matrix: Floats) -> Scene:
        """The whole scene turned and moved by a matrix (4, 4), as on the bench."""
        return replace(self, matrices=matrix @ self.matrices)


def bed_scene(
    bed: Bed,
    pieces: Iterable[int] | None = None,
    *,
    offsets: Floats | None = None,
    bought: bool = False,
    mattress: bool = False,
    least_hole: Mm = 0.0,
    exact: bool = False,
) -> Scene:
    """Pieces of a bed in bed axes: these, or all of wood, with what is `bought` or the mattress.

    `offsets` (n, 3), mm, move each of the bed's pieces: drawers pulled, a bed taken apart. What is
    asked for by its number is shown, whatever it is.
    """
    chosen = tuple(sorted(set(_shown(bed, bought, mattress) if pieces is None else pieces)))
    if offsets is not None:
        return _scene(bed, chosen, offsets, least_hole, exact)
    kept: dict[object, Scene] = bed.__dict__.setdefault("_scenes", {})
    key = (chosen, least_hole, exact)
    if key not in kept:
        if len(kept) >= _KEPT:
            kept.clear()
        kept[key] = _scene(bed, chosen, None, least_hole, exact)
    return kept[key]


def part_scene(part: Part, *, is_sheet: bool = False, exact: bool = False) -> Scene:
    """One part by itself in its own axes (length, width, thickness), as it is cut: see `as_cut`;
    the part of a mark is.
    """
    return Scene(
        forms=(part,), matrices=np.eye(4)[None], names=("",),
        pieces=np.zeros(1, np.intp), is_sheet=(is_sheet,), exact=exact,
    )  # fmt: skip


_KEPT = 64  # scenes of one bed: a plan set looks at its pieces in a few dozen ways


def _shown(bed: Bed, bought: bool, mattress: bool) -> list[int]:
    """What is looked at when no piece is named."""
    code = [part.hardware for part in bed.pieces.parts]
    keeps = [mattress if each == MATTRESS else bought or not each for each in code]
    return np.flatnonzero(np.array(keeps, bool)[bed.pieces.part]).tolist()


def _scene(
    bed: Bed, chosen: tuple[int, ...], offsets: Floats | None, least_hole: Mm, exact: bool
) -> Scene:
    own = np.array(chosen, np.intp)
    forms = tuple(bed.pieces.form(piece) for piece in chosen)
    matrices = bed.pieces.matrices[own]
    if offsets is not None:
        matrices = matrices.copy()
        matrices[:, :3, 3] += offsets[own]
    names = _names(bed)
    made_of = [bed.materials.get(form.material) for form in forms]
    return Scene(
        forms=forms, matrices=matrices, names=tuple(names[piece] for piece in chosen), pieces=own,
        is_sheet=tuple(each is not None and each.kind == "sheet" for each in made_of),
        least_hole=least_hole, exact=exact,
    )  # fmt: skip


def _names(bed: Bed) -> tuple[str, ...]:
    """A name for every piece of a bed; kept on it."""
    if "_piece_names" not in bed.__dict__:
        bed.__dict__["_piece_names"] = piece_names(bed.parts, bed.pieces)
    return cast(tuple[str, ...], bed.__dict__["_piece_names"])


def drawer_offsets(bed: Bed, travel: Mapping[str, Mm]) -> Floats:
    """How far each piece (n, 3) moves when drawers (`left-1`) are pulled out by so much, mm."""
    found = np.zeros((len(bed.pieces), 3))
    ways = travel_of(bed.dimensions)
    for name, far in travel.items():
        found[bed.pieces.group == bed.pieces.groups.index(name)] = np.multiply(ways[name][0], far)
    return found
