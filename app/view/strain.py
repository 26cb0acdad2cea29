"""What the view shows of a bed's strength: how hard its frame works, and how it bends."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from model.structure.bent import Body
from model.structure.record import Carried
from model.structure.worst import station_use

Floats = npt.NDArray[np.float32]


@dataclass(frozen=True, kw_only=True, eq=False)
class Strain:
    """Some load `cases` of a bed: coloured by each piece's worst of them. Where one of them is the
    `shape`, the frame is drawn as it moves in that, some `times` as far; 0 draws it unloaded.
    """

    carried: Carried
    body: Body
    cases: tuple[int, ...]
    shape: int | None = None
    times: float = 0.0

    @property
    def is_bent(self) -> bool:
        """Whether the frame is drawn as it moves."""
        return self.times > 0 and self.shape is not None

    @cached_property
    def use(self) -> Floats:
        """(n, 3): the share of its limit at each corner; 1 at the limit."""
        return self.body.corner.along(station_use(self.carried, self.cases)).astype(np.float32)

    @property
    def triangles(self) -> Floats:
        """(n, 3, 3), mm."""
        return self._shape[0]

    @property
    def edges(self) -> Floats:
        """(m, 2, 3), mm."""
        return self._shape[1]

    @cached_property
    def _shape(self) -> tuple[Floats, Floats]:
        if self.shape is None or not self.is_bent:
            return self.body.triangles, self.body.edges
        return self.body.bent(self.carried.moved[self.shape], self.times)
