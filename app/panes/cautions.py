"""The usual cautions: one line that says whose word counts, and the whole list when opened."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSizePolicy, QTextBrowser, QToolButton, QVBoxLayout, QWidget

from model.checks.safety.cautions import all_cautions

LIST_HEIGHT = 190


class Cautions(QWidget):
    """A heading that opens and closes the list; the list is made when it is first opened."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        first = all_cautions()[0]
        self.heading = QToolButton(checkable=True)
        self.heading.setProperty("kind", "heading")
        self.heading.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.heading.setArrowType(Qt.ArrowType.RightArrow)
        self.heading.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.heading.setText("Cautions: a maker's checks, not an engineer's certificate")
        self.heading.setAccessibleName("Show the cautions")
        self.heading.setToolTip(first.text)
        self.list = QTextBrowser(visible=False)
        self.list.setAccessibleName("Cautions")
        self.list.setFixedHeight(LIST_HEIGHT)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.heading)
        whole.addWidget(self.list)
        self.heading.toggled.connect(self._open)

    def _open(self, is_open: bool) -> None:
        if is_open and not self.list.toPlainText():
            said = (f"<b>{escape(c.title)}.</b> {escape(c.text)}" for c in all_cautions())
            self.list.setHtml("".join(f"<p>{each}</p>" for each in said))
        self.heading.setArrowType(Qt.ArrowType.DownArrow if is_open else Qt.ArrowType.RightArrow)
        self.list.setVisible(is_open)
