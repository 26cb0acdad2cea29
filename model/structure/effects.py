"""The worst that each piece of the frame bears, effect by effect; counted when first asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from model.parts.pieces import Bools, Floats, Ints
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

    @cached_property
    def _judged_sag(self) -> Floats:
        """(s, c): sag where it is judged, else 0."""
        return np.where(judged(self.frame.bones.role, self.cases)[self.piece], self.sag, 0.0)

    def hardest(self, kind: EffectKind, pieces: Ints) -> Effect | None:
        """The worst of one kind of effect on some pieces of the frame; None where there is none."""
        if kind == "bearing":
            return self._bearing(pieces)
        rows = np.flatnonzero(self._among(pieces)[self.piece])
        if kind == "sag":
            rows = rows[np.isfinite(self.sag_limit[self.piece[rows]])]
        if not len(rows):
            return None
        value, limit, unit, source = self._figures(kind, rows)
        station, case = np.unravel_index(np.argmax(value / limit), value.shape)
        row, i = int(rows[station]), int(self.piece[rows[station]])
        if kind == "sag":
            source = SAG_LIMITS[self.frame.bones.role[i]].source
        return Effect(
            piece=int(self.frame.bones.piece[i]), kind=kind, value=float(value[station, case]),
            limit=float(np.broadcast_to(limit, value.shape)[station, case]), unit=unit,
            case=int(case), at=float(self.at[row]), source=source,
        )  # fmt: skip

    def _among(self, pieces: Ints) -> Bools:
        """(p,): whether each piece of the frame is one of these."""
        found = np.zeros(len(self.frame.bones.piece), bool)
        found[pieces] = True
        return found

    @cached_property
    def _bears(self) -> Bools:
        """(j,): joints at which one piece lies on another."""
        kind = self.frame.joints.kind
        return np.asarray((kind == REST) | (kind == HINGE))

    def _figures(self, kind: EffectKind, rows: Ints) -> tuple[Floats, Floats, str, str]:
        if kind == "bending":
            return self.bending[rows], self.bending_limit[rows], "MPa", BENDING
        if kind == "shear":
            return self.shear[rows], self.shear_limit[rows], "MPa", SHEAR
        return self._judged_sag[rows], self.sag_limit[self.piece[rows], None], "mm", ""

    def _bearing(self, pieces: Ints) -> Effect | None:
        joints, bones = self.frame.joints, self.frame.bones
        mine = self._among(pieces)[joints.one] & self._bears
        rows = np.flatnonzero(mine & (joints.area > _FACE))
        if not len(rows):
            return None
        value, limit = self.press[rows], self.press_limit[rows, None]
        joint, case = np.unravel_index(np.argmax(value / limit), value.shape)
        row, i = int(rows[joint]), int(joints.one[rows[joint]])
        return Effect(
            piece=int(bones.piece[i]), kind="bearing", value=float(value[joint, case]),
            limit=float(limit[joint, 0]), unit="MPa", case=int(case),
            at=float((joints.at[row] - bones.start[i]) @ bones.axes[i, 0]), source=BEARING,
        )  # fmt: skip


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
