"""The frames of some beds, step by step as the model reads them; each bed is worked once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np

from model.bed import Bed, Design, solve
from model.designs import read
from model.mechanics.line_loads import LineLoads
from model.parts.pieces import Floats, Ints
from model.structure.contacts import contacts, hosts
from model.structure.joints import Contacts
from model.structure.lattice import Lattice, lattice
from model.structure.skeleton import Skeleton, skeleton

FOLDER = Path(__file__).resolve().parents[3] / "resources" / "demos"
DEMOS = ("guest_room_double", "loft_single", "painted_storage_queen", "split_king_foot_drawers")


@dataclass(frozen=True, kw_only=True, eq=False)
class Worked:
    """A bed, the frame read from its pieces, and the piece of the frame that each belongs to."""

    bed: Bed
    host: Ints
    frame: Lattice

    @property
    def bones(self) -> Skeleton:
        return self.frame.bones

    @property
    def joints(self) -> Contacts:
        return self.frame.joints

    def label(self, piece: int) -> str:
        """What a maker calls a piece of the frame."""
        return self.bed.pieces.labels[self.bones.piece[piece]]

    def roles(self, pieces: Ints) -> list[str]:
        """What pieces of the frame are to it; the floor is the floor."""
        return [self.bones.role[i] if i >= 0 else "floor" for i in pieces.tolist()]

    def bounds(self, piece: int) -> tuple[Floats, Floats]:
        """Lower and upper corner of a piece of the frame, mm."""
        low, high = self.bed.pieces.bounds
        return low[self.bones.piece[piece]], high[self.bones.piece[piece]]

    def on_bed(self, loads: LineLoads) -> Floats:
        """Loads along members as forces on the bed's axes: (p, 3), N."""
        axes = self.frame.frame.members.axes[loads.member]
        return np.asarray(np.einsum("lij,li->lj", axes, loads.force))

    def down_on(self, loads: LineLoads) -> Floats:
        """What weighs on each piece of the frame in all these loads together: (pieces,), N."""
        piece = self.frame.member_piece[loads.member]
        return np.bincount(piece, -self.on_bed(loads)[:, 2], minlength=len(self.bones.piece))


def worked(bed: Bed) -> Worked:
    """The frame of a bed."""
    pieces, holding = bed.pieces, bed.proof.holding
    bones = skeleton(pieces, bed["stock_grade"].key, bed.design.own)
    host = hosts(pieces, holding, bones)
    met = contacts(pieces, holding, bed.proof.touching, bones, host)
    return Worked(bed=bed, host=host, frame=lattice(bones, met))


@cache
def demo(name: str) -> Worked:
    """One of the designs that come with the program."""
    return worked(solve(read(FOLDER / f"{name}.bedwright")))


def design(name: str, **choices: Any) -> Design:
    """A design that comes with the program, with some choices changed; `__` stands for a dot."""
    return read(FOLDER / f"{name}.bedwright").with_choices(
        {key.replace("__", "."): value for key, value in choices.items()}
    )


@cache
def _usual(choices: tuple[tuple[str, Any], ...]) -> Worked:
    return worked(solve(Design().with_choices(dict(choices))))


def usual(**choices: Any) -> Worked:
    """The usual bed with some choices; `__` stands for the dot in a full name."""
    return _usual(tuple(sorted((k.replace("__", "."), v) for k, v in choices.items())))
