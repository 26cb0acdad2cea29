"""The worst that each piece of the frame bears, effect by effect; counted when first asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from model.parts.pieces import Floats, Ints
from model.structure.joints import HINGE, KINDS, REST
from model.structure.lattice import Lattice
from model.structure.record import Case, Effect, EffectKind
from model.structure.spans import SAG_LIMITS, judged

_FACE = 100.0  # mm2: pieces that meet on less stand beside, not on each other

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
    def sag_counts(self) -> Floats:
        """(s, c): sag where it is judged, else 0."""
        return np.where(judged(self.frame.bones.role, self.cases)[self.piece], self.sag, 0.0)


class Effects(Mapping[int, tuple[Effect, ...]]):
    """By piece of the bed: its effects, worst first."""

    def __init__(self, measured: Measured) -> None:
        self._m = measured
        self._place = {int(p): i for i, p in enumerate(measured.frame.bones.piece)}
        self._found: dict[int, tuple[Effect, ...]] = {}

    def __len__(self) -> int:
        return len(self._place)

    def __iter__(self) -> Iterator[int]:
        return iter(self._place)

    def __getitem__(self, piece: int) -> tuple[Effect, ...]:
        if piece not in self._found:
            found = sorted(self._of(self._place[piece], piece), key=lambda e: -e.use)
            self._found[piece] = tuple(found)
        return self._found[piece]

    def _of(self, i: int, piece: int) -> Iterator[Effect]:
        m = self._m
        rows = slice(int(m.first[i]), int(m.first[i + 1]))
        if rows.stop > rows.start:
            sources: tuple[tuple[EffectKind, Floats, Floats, str], ...] = (
                ("bending", m.bending, m.bending_limit, BENDING),
                ("shear", m.shear, m.shear_limit, SHEAR),
            )
            for kind, stress, limit, source in sources:
                at = np.unravel_index(np.argmax(stress[rows] / limit[rows]), stress[rows].shape)
                station, case = rows.start + int(at[0]), int(at[1])
                yield Effect(
                    piece=piece, kind=kind, value=float(stress[station, case]),
                    limit=float(limit[station, case]), unit="MPa", case=case,
                    at=float(m.at[station]), source=source,
                )  # fmt: skip
            yield from self._sag(i, piece, rows)
        yield from self._bearing(i, piece)

    def _sag(self, i: int, piece: int, rows: slice) -> Iterator[Effect]:
        m = self._m
        if not np.isfinite(m.sag_limit[i]):
            return
        sag = m.sag_counts[rows]
        at = np.unravel_index(np.argmax(sag), sag.shape)
        yield Effect(
            piece=piece, kind="sag", value=float(sag[at]), limit=float(m.sag_limit[i]), unit="mm",
            case=int(at[1]), at=float(m.at[rows.start + int(at[0])]),
            source=SAG_LIMITS[m.frame.bones.role[i]].source,
        )  # fmt: skip

    def _bearing(self, i: int, piece: int) -> Iterator[Effect]:
        m, joints = self._m, self._m.frame.joints
        mine = (joints.one == i) & np.isin(joints.kind, (REST, HINGE)) & (joints.area > _FACE)
        rows = np.flatnonzero(mine)
        if not len(rows):
            return
        use = m.press[rows] / m.press_limit[rows][:, None]
        at = np.unravel_index(np.argmax(use), use.shape)
        joint, case = int(rows[at[0]]), int(at[1])
        bones = m.frame.bones
        along = float((joints.at[joint] - bones.start[i]) @ bones.axes[i, 0])
        yield Effect(
            piece=piece, kind="bearing", value=float(m.press[joint, case]),
            limit=float(m.press_limit[joint]), unit="MPa", case=case, at=along,
            source=f"{BEARING}; it {KINDS[int(joints.kind[joint])]} there",
        )  # fmt: skip
