"""The worst that each piece of the frame bears, effect by effect; counted when first asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np

from model.parts.pieces import Floats, Ints
from model.structure.joints import HINGE, REST
from model.structure.lattice import Lattice
from model.structure.record import Case, Effect, EffectKind
from model.structure.spans import SAG_LIMITS, judged

_FACE = 100.0  # mm2: pieces that meet on less stand beside, not on each other

KINDS_OF_EFFECT: tuple[EffectKind, ...] = ("bending", "shear", "bearing", "sag")

BENDING = "bending: Wood Handbook 2021 (FPL-GTR-282), equation 9-13; allowable stress step by step"
SHEAR = "shear: Wood Handbook 2021 (FPL-GTR-282), equation 9-14; allowable stress step by step"
BEARING = "force over the wood that meets; allowable compression across the grain step by step"


@dataclass(frozen=True, kw_only=True, eq=False)
class Measured:
    """What the frame's stations (s) and joints (j) bear per load case (c): (s, c), (j, c).

    `bending`, `shear` MPa and what they may be, `bending_limit`, `shear_limit`; `sag` mm; `press`
    MPa of each joint across the grain, `press_limit` (j,).
    """

    frame: Lattice
    cases: tuple[Case, ...]
    piece: Ints
    at: Floats
    first: Ints
    bending: Floats
    bending_limit: Floats
    shear: Floats
    shear_limit: Floats
    sag: Floats
    sag_limit: Floats
    press: Floats
    press_limit: Floats

    def hardest(self, kind: EffectKind, pieces: Ints) -> Effect | None:
        """The worst of one kind of effect on some pieces of the frame; None where there is none."""
        figures = self._figures[kind]
        among = np.zeros(len(self.frame.bones.piece), bool)
        among[pieces] = True
        rows = np.flatnonzero(among[figures.piece])
        if not len(rows):
            return None
        row = int(rows[np.argmax(figures.peak[rows])])
        limit = np.broadcast_to(figures.limit[row], figures.value[row].shape)
        case, i = int(np.argmax(figures.value[row] / limit)), int(figures.piece[row])
        source = figures.source or SAG_LIMITS[self.frame.bones.role[i]].source
        return Effect(
            piece=int(self.frame.bones.piece[i]), kind=kind, value=float(figures.value[row, case]),
            limit=float(limit[case]), unit=figures.unit, case=case, at=float(figures.at[row]),
            source=source,
        )  # fmt: skip

    @cached_property
    def _figures(self) -> Mapping[EffectKind, _Figures]:
        return {
            "bending": self._stress(self.bending, self.bending_limit, BENDING),
            "shear": self._stress(self.shear, self.shear_limit, SHEAR),
            "bearing": self._bearing(),
            "sag": self._sag(),
        }

    def _stress(self, value: Floats, limit: Floats, source: str) -> _Figures:
        return _figures(value, limit, self.piece, self.at, "MPa", source)

    def _sag(self) -> _Figures:
        """Sag where it is judged, of pieces that have a limit."""
        rows = np.flatnonzero(np.isfinite(self.sag_limit[self.piece]))
        piece = self.piece[rows]
        counts = judged(self.frame.bones.role, self.cases)[piece]
        sag = np.where(counts, self.sag[rows], 0.0)
        return _figures(sag, self.sag_limit[piece, None], piece, self.at[rows], "mm", "")

    def _bearing(self) -> _Figures:
        """Pressure at joints at which one piece lies on another; told of the one that lies."""
        joints, bones = self.frame.joints, self.frame.bones
        lies = (joints.kind == REST) | (joints.kind == HINGE)
        rows = np.flatnonzero(lies & (joints.area > _FACE))
        piece = joints.one[rows]
        way = bones.axes[piece, 0]
        at = np.einsum("ji,ji->j", joints.at[rows] - bones.start[piece], way)
        return _figures(
            self.press[rows], self.press_limit[rows, None], piece, at, "MPa", BEARING
        )  # fmt: skip


class _Figures(NamedTuple):
    """One kind of effect, row by row (r): `value` and `limit` per load case, the frame's `piece`,
    `at` mm from its near end; `peak` (r,) the greatest share of the limit.
    """

    value: Floats
    limit: Floats
    piece: Ints
    at: Floats
    unit: str
    source: str
    peak: Floats


def _figures(
    value: Floats, limit: Floats, piece: Ints, at: Floats, unit: str, source: str
) -> _Figures:
    peak = (value / limit).max(axis=1, initial=0.0)
    return _Figures(value, limit, piece, at, unit, source, peak)


class Effects(Mapping[int, tuple[Effect, ...]]):
    """By piece of the bed: its effects, worst first."""

    def __init__(self, measured: Measured) -> None:
        self._measured = measured
        self._place = {int(p): i for i, p in enumerate(measured.frame.bones.piece)}
        self._found: dict[int, tuple[Effect, ...]] = {}

    def __len__(self) -> int:
        return len(self._place)

    def __iter__(self) -> Iterator[int]:
        return iter(self._place)

    def __getitem__(self, piece: int) -> tuple[Effect, ...]:
        if piece not in self._found:
            here = np.array([self._place[piece]])
            found = (self._measured.hardest(kind, here) for kind in KINDS_OF_EFFECT)
            self._found[piece] = tuple(
                sorted((each for each in found if each is not None), key=lambda e: -e.use)
            )
        return self._found[piece]


class Hardest(Mapping[tuple[str, EffectKind], Effect]):
    """By role in the frame and kind of effect: the worst on any piece of that role."""

    def __init__(self, measured: Measured) -> None:
        self._measured = measured
        self._found: dict[tuple[str, EffectKind], Effect | None] = {}
        roles = dict.fromkeys(measured.frame.bones.role)
        self._keys = tuple((role, kind) for role in roles for kind in KINDS_OF_EFFECT)

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def __iter__(self) -> Iterator[tuple[str, EffectKind]]:
        return (key for key in self._keys if self._worst(*key) is not None)

    def __getitem__(self, key: tuple[str, EffectKind]) -> Effect:
        found = self._worst(*key)
        if found is None:
            raise KeyError(key)
        return found

    def _worst(self, role: str, kind: EffectKind) -> Effect | None:
        if (role, kind) not in self._found:
            of_role = self._measured.frame.bones.of_role(role)
            self._found[role, kind] = self._measured.hardest(kind, of_role)
        return self._found[role, kind]
