"""Brings the shop's name and logo into the design, as a step that can be undone."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QWidget

from app.panes.plan_pane import PlanPane
from app.panes.publisher_dialog import PublisherDialog
from app.session import Session
from model.errors import BedError
from model.publisher import Publisher


class PublisherDesk(QObject):
    """Asks who publishes the plan set."""

    def __init__(self, session: Session, pane: PlanPane, window: QWidget) -> None:
        super().__init__(session)
        self._session, self._pane, self._window = session, pane, window
        self.dialog: PublisherDialog | None = None
        pane.foot.shop_asked.connect(self.ask)

    def ask(self) -> None:
        """Show who is named, to be changed."""
        if not self._session.has_bed:
            return
        dialog = PublisherDialog(self._session.design.publisher, self._window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.given.connect(self._take)
        self.dialog = dialog
        dialog.open()

    def _take(self, publisher: Publisher) -> None:
        try:
            self._session.take(lambda design: replace(design, publisher=publisher))
        except BedError as trouble:
            self._pane.foot.say(trouble.sentence, is_trouble=True)
