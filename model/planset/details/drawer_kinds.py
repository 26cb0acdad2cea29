"""Which kinds of drawer a bed has: those of the same marks are alike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.bed import travel_of
from model.building.joined import Joined
from model.drawings.views.gaze import BACK, FRONT, LEFT, RIGHT, Gaze
from model.part import Point


@dataclass(frozen=True, kw_only=True)
class Drawer:
    """Drawers that are alike: their names (`left-1`), and the pieces of the first one by what they
    are: of the `box`, of the `front`, bought ones.
    """

    names: tuple[str, ...]
    pieces: tuple[int, ...]
    box: tuple[int, ...]
    front: tuple[int, ...]
    slides: tuple[int, ...]
    out: Point

    @property
    def gaze(self) -> Gaze:
        """From where its front is seen."""
        return max((FRONT, BACK, LEFT, RIGHT), key=lambda each: float(each.toward @ self.out))

    @property
    def side_gaze(self) -> Gaze:
        """From where its side is seen, the front on the left or the right."""
        return FRONT if abs(self.out[0]) > abs(self.out[1]) else RIGHT


def drawers(all_of: Joined) -> tuple[Drawer, ...]:
    """The kinds of drawer: of the same marks."""
    held: dict[str, list[int]] = {}
    for piece in range(len(all_of.pieces)):
        if all_of.group(piece):
            held.setdefault(all_of.group(piece), []).append(piece)
    alike: dict[tuple[str, ...], list[str]] = {}
    for name, pieces in held.items():
        marks = sorted(all_of.mark_of.get(each, all_of.hardware[each]) for each in pieces)
        alike.setdefault(tuple(marks), []).append(name)
    return tuple(_drawer(all_of, names, held[names[0]]) for names in alike.values())


def _drawer(all_of: Joined, names: Sequence[str], pieces: Sequence[int]) -> Drawer:
    def of(assembly: str) -> tuple[int, ...]:
        return tuple(
            each for each in pieces
            if all_of.is_wood(each) and all_of.part(each).assembly == assembly
        )  # fmt: skip

    return Drawer(
        names=tuple(names), pieces=tuple(pieces), box=of("drawers"), front=of("fronts"),
        slides=tuple(each for each in pieces if all_of.hardware[each].startswith("SLIDE-")),
        out=travel_of(all_of.bed.dimensions)[names[0]][0],
    )  # fmt: skip
