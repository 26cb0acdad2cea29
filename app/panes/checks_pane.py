"""Every check, worst first: what was found, the limit, and in full words why it matters."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from app.fields.wording import in_unit
from app.panes.cautions import Cautions
from app.panes.remedy_line import RemedyLine
from app.style import verdict_icon
from app.tables.checks import CHECK_COLUMNS, SAID, title_text
from app.tables.rows import Rows
from app.tables.view import TableView
from model.checks.record import Finding, Verdict


class ChecksPane(QWidget):
    """The list, buttons for each verdict, the sentence of the check that is picked, and what would
    mend it.
    """

    asked_why = Signal(str)
    picked = Signal(object)  # the finding, or None; again when the bed or the pane comes on view

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._findings: tuple[Finding, ...] = ()
        self._unit = "mm"
        self._fitted = False
        self._kept = "", ""  # id and place of the check that stays picked as the bed changes
        self.table = TableView(Rows(CHECK_COLUMNS), "Checks, worst first")
        self.filter_line = QLineEdit(placeholderText="Show checks that hold these words")
        self.filter_line.setAccessibleName("Filter the checks")
        self.filter_line.setClearButtonEnabled(True)
        self.verdict_buttons = {verdict: _verdict_button(verdict) for verdict in Verdict}
        self._reason = QLabel("Pick a check to read its reason and source.", wordWrap=True)
        self.remedy = RemedyLine()
        self._lay_out()
        self.table.asked_why.connect(self.asked_why)
        self.table.row_chosen.connect(self._tell)
        self.filter_line.textChanged.connect(self.table.sorted.keep)
        for button in self.verdict_buttons.values():
            button.toggled.connect(self._show)

    def _lay_out(self) -> None:
        line = QHBoxLayout()
        line.setContentsMargins(6, 6, 6, 6)
        line.setSpacing(6)
        for button in self.verdict_buttons.values():
            line.addWidget(button)
        line.addWidget(self.filter_line, 1)
        foot = QFrame()
        foot.setProperty("kind", "help")
        told = QVBoxLayout(foot)
        told.setContentsMargins(8, 4, 8, 4)
        told.setSpacing(0)
        told.addWidget(self._reason)
        told.addWidget(self.remedy)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(line)
        whole.addWidget(self.table, 1)
        whole.addWidget(foot)
        whole.addWidget(Cautions())

    def show_findings(self, findings: Sequence[Finding], unit: str) -> None:
        """The checks of another bed."""
        self._findings, self._unit = tuple(findings), unit
        counts = Counter(finding.verdict for finding in findings)
        for verdict, button in self.verdict_buttons.items():
            button.setText(f"{counts[verdict]} {SAID[verdict]}")
        self._show()

    @property
    def finding(self) -> Finding | None:
        """The check that is picked."""
        record: Finding | None = self.table.record
        return record

    def keep_in_view(self, finding: Finding) -> None:
        """Pick this check in the list of the next bed, whatever its verdict is there."""
        self._kept = finding.id, finding.place
        self.table.setFocus()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.picked.emit(self.finding)

    def _show(self) -> None:
        on = {verdict for verdict, button in self.verdict_buttons.items() if button.isChecked()}
        kept = self._kept
        shown = tuple(f for f in self._findings if f.verdict in on)
        self.table.sorted.rows.show_records(shown, self._unit)
        self.table.choose(lambda finding: (finding.id, finding.place) == kept)
        self._tell(self.finding)  # the row may have stayed where it is while its check moved on
        self._kept = kept
        if not self._fitted and shown:
            self.table.fit_columns()
            self._fitted = True

    def _tell(self, finding: Any) -> None:
        if finding is not None:
            self._kept = finding.id, finding.place
            self._reason.setText(
                f"<b>{title_text(finding)}.</b> {in_unit(finding.reason, self._unit)} "
                f"<i>Source: {finding.source}.</i>"
            )
        self.picked.emit(finding)


def _verdict_button(verdict: Verdict) -> QPushButton:
    button = QPushButton(
        verdict_icon(str(verdict)), f"0 {SAID[verdict]}", checkable=True, checked=True
    )
    button.setToolTip(f"Show the checks that say “{SAID[verdict]}”")
    return button
