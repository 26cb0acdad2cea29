"""Drawers that slide open and shut by themselves, a step per picture, for the eye."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from PySide6.QtCore import QObject, QTimer, Signal

STEP = 0.10  # share of its way that a drawer moves per picture
PICTURE = 15  # ms


class DrawerSlide(QObject):
    """Tells where each drawer is on its way: its name, and how far open, 0 to 1."""

    moved = Signal(str, float)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._here: dict[str, float] = {}
        self._goals: dict[str, float] = {}
        self._timer = QTimer(self, interval=PICTURE, timeout=self._step)

    def send(self, drawers: Mapping[str, float], share: float) -> None:
        """Slide drawers from where they are to a share of their travel."""
        self._here |= drawers
        self._goals |= dict.fromkeys(drawers, share)
        self._timer.start()

    def forget(self, drawers: Iterable[str]) -> None:
        """Leave drawers where they are: a hand has taken them."""
        for drawer in drawers:
            self._goals.pop(drawer, None)

    def _step(self) -> None:
        for drawer, goal in tuple(self._goals.items()):
            here = self._here[drawer]
            self._here[drawer] = min(max(goal, here - STEP), here + STEP)
            if self._here[drawer] == goal:
                del self._goals[drawer]
            self.moved.emit(drawer, self._here[drawer])
        if not self._goals:
            self._timer.stop()
