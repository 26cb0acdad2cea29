"""Finding what nothing holds in a frame, whether or not a load pushes at it.

The frame is shaken: every unknown is pushed as hard as it is stiff, each a little differently, so
that no movement is missed. What is held gives by about the hair that it was pushed; what is loose
is stopped by nothing but rounding, and flies off by many powers of ten.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]

# Between what the softest of many beds gives (4e8) and what is held by a hair only (3e11).
_FLOWN = 1e11


class Unstable(Exception):
    """A frame of which some part is held by nothing; `node` (index) moves with it."""

    def __init__(self, node: int) -> None:
        super().__init__(f"Node {node} is held by nothing.")
        self.node = node


class Shake:
    """A push at every unknown of a frame whose own stiffnesses are `own` (6n,)."""

    def __init__(self, own: Floats) -> None:
        if own.min(initial=1.0) <= 0:
            raise Unstable(int(np.argmin(own)) // 6)
        self._firm = np.sqrt(own)[:, None]
        self.push = self._firm * np.random.default_rng(0).uniform(0.5, 1.0, self._firm.shape)

    def refuse_loose(self, moved: Floats) -> None:
        """Unstable: a node that flies off under the shake; `moved` (6n, c) is what it did."""
        far = np.abs(np.nan_to_num(self._firm * moved, nan=np.inf)).max(axis=1, initial=0.0)
        if far.max(initial=0.0) > _FLOWN:
            raise Unstable(int(np.argmax(far)) // 6)
