"""The status line: outer size, sleeping height, and how many checks got which verdict."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from app.style import verdict_icon
from model.checks.record import Finding, Verdict
from model.units import show_length

if TYPE_CHECKING:
    from model.bed import Bed

FACTS = {"Width": "bed_width", "Length": "bed_length", "Sleeping height": "sleeping_height"}


class SummaryLine(QWidget):
    """The bed in one line; a click on the checks shows them."""

    checks_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sizes = QLabel()
        self.sizes.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.working = QLabel()
        self.working.setProperty("kind", "faint")
        self.counts = {verdict: _count_button(verdict) for verdict in Verdict}
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 0, 8, 0)
        line.addWidget(self.sizes, 1)
        line.addWidget(self.working)
        line.addWidget(QLabel("Checks:"))
        for button in self.counts.values():
            button.clicked.connect(self.checks_asked)
            line.addWidget(button)

    def show_bed(self, bed: Bed, unit: str) -> None:
        """Sizes of the bed on view."""
        said = (f"{words} {show_length(bed[name], unit)}" for words, name in FACTS.items())
        self.sizes.setText("   ·   ".join(said))

    def show_findings(self, findings: Sequence[Finding]) -> None:
        """How many checks got which verdict."""
        counts = Counter(finding.verdict for finding in findings)
        for verdict, button in self.counts.items():
            button.setText(f"{counts[verdict]} {verdict}")
            button.setAccessibleName(f"{counts[verdict]} checks: {verdict}")


def _count_button(verdict: Verdict) -> QPushButton:
    button = QPushButton(verdict_icon(str(verdict)), f"– {verdict}")
    button.setFlat(True)
    button.setToolTip("Show the list of checks")
    button.setStyleSheet("QPushButton { border: none; background: transparent; padding: 1px 5px; }")
    return button
