"""How long work beside the window may go on, and that the window gets its turn meanwhile."""

from __future__ import annotations

import time

EVERY, BREATH = 0.003, 0.0005  # s: how often work lets the window run, and how long


class Breath:
    """Asked often by work in another thread; what the work finds does not depend on it.

    The window waits for each of its own steps as long as another thread runs Python.
    """

    def __init__(self) -> None:
        self.is_stopped = False
        self._last = time.perf_counter()

    def stop(self) -> None:
        """Nobody wants the answer any more."""
        self.is_stopped = True

    def stops(self) -> bool:
        """Whether the work should end; now and then the window gets its turn while it is asked."""
        now = time.perf_counter()
        if now - self._last > EVERY:
            time.sleep(BREATH)
            self._last = time.perf_counter()
        return self.is_stopped
