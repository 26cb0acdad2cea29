"""Above the plans: pieces that are cut and no longer fit, and what can still become of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

if TYPE_CHECKING:
    from model.shop.tracking_fit import Fit

SAID = 2  # sentences that are said at once; all are in the note


class CuttingMisfits(QFrame):
    """Shown only while a piece that is cut fits nowhere as it is."""

    recut_taken = Signal(object)  # a Recut

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.fit: Fit | None = None
        self.setProperty("kind", "banner")
        self.label = QLabel(wordWrap=True)
        self.recut_button = QPushButton("Recut it so")
        line = QHBoxLayout(self)
        line.setContentsMargins(10, 5, 10, 5)
        line.addWidget(self.label, 1)
        line.addWidget(self.recut_button)
        self.recut_button.clicked.connect(self._take)
        self.show_fit(None)

    def show_fit(self, fit: Fit | None) -> None:
        """What of the pieces that are cut still serves; None while none is cut."""
        self.fit = fit
        unfit = fit.unfit if fit is not None else ()
        self.setVisible(bool(unfit))
        if fit is None or not unfit:
            return
        offers = [each.sentence for each in fit.recuts[:1]]
        told = [each.sentence for each in unfit]
        rest = len(told) - SAID
        more = [f"And {rest} more."] if rest > 0 else []
        self.label.setText(" ".join((*told[:SAID], *more, *offers)))
        self.setToolTip("\n".join((*told, *(each.sentence for each in fit.recuts))))
        self.setAccessibleName("Pieces that are cut and no longer fit")
        self.setAccessibleDescription(self.toolTip())
        self.recut_button.setVisible(bool(offers))
        self.recut_button.setToolTip("".join(offers))

    def _take(self) -> None:
        if self.fit is not None and self.fit.recuts:
            self.recut_taken.emit(self.fit.recuts[0])
