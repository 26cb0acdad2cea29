"""Which part a piece that no longer fits can be cut down to.

Larger or as large, of the same material and thickness, and nothing cut into it yet. Which becomes
which is chosen for the most parts, then the least waste.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

import numpy as np
from scipy.optimize import linear_sum_assignment

from model.shop.tracking_need import Need, present, wanted
from model.shop.tracking_parts import SAME
from model.shop.tracking_words import recut_sentence
from model.stock.progress import CutPart


class Recut(NamedTuple):
    """A piece that no longer fits, and the part that it can be cut down to."""

    part: CutPart
    need: Need
    sentence: str


def recuts(parts: Sequence[CutPart], needs: Sequence[Need], unit: str) -> Iterator[Recut]:
    """The most parts, then the least waste: an assignment, each piece to one part at most."""
    if not parts or not needs:
        return
    waste = np.array([[_waste(part, need) for need in needs] for part in parts])
    fits = np.isfinite(waste)
    if not fits.any():
        return
    none = 1.0 + waste[fits].max() * min(waste.shape)  # dearer than any waste: most parts first
    rows, columns = linear_sum_assignment(np.where(fits, waste, none))
    for row, column in zip(rows.tolist(), columns.tolist(), strict=True):
        if fits[row, column]:
            yield Recut(parts[row], needs[column], recut_sentence(parts[row], needs[column], unit))


def _waste(part: CutPart, need: Need) -> float:
    """The face of wood that is lost, mm2; infinite where the piece cannot become the part."""
    if part.material != need.material or part.work or (need.whole and "/" in part.mark):
        return np.inf
    have, asked = present(part), wanted(part, need)
    if abs(have[2] - asked[2]) > SAME or min(have[0] - asked[0], have[1] - asked[1]) < -SAME:
        return np.inf
    return have[0] * have[1] - asked[0] * asked[1]


def recut(part: CutPart, need: Need) -> CutPart:
    """The record of a piece that is to become another part: what is over is still to be cut off."""
    have = present(part)
    over = [h if h > size + SAME else 0.0 for h, size in zip(have, need.size, strict=True)]
    return replace(
        part,
        mark=need.mark,
        piece=need.piece,
        name=need.name,
        length=need.size[0],
        width=need.size[1],
        thickness=need.size[2],
        rough_length=over[0],
        rough_width=over[1],
        rough_thickness=over[2],
    )
