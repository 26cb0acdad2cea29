"""Brings the maker's own materials into the design, and the design's into pane and choices."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QFileDialog, QWidget

from app.panes.choices_pane import ChoicesPane
from app.panes.materials_pane import MaterialsPane
from app.session import Session
from model.errors import BadInput, BedError
from model.materials import OwnRows
from model.materials.own import NONE

TABLES = "Tables (*.csv *.tsv *.txt)"
PASTED = "the pasted rows"


class MaterialsDesk(QObject):
    """Every change is a step that can be undone; what is refused is said in the pane."""

    def __init__(
        self, session: Session, pane: MaterialsPane, choices: ChoicesPane, window: QWidget
    ) -> None:
        super().__init__(session)
        self.session, self.pane, self.choices, self.window = session, pane, choices, window
        self.dialog: QFileDialog | None = None
        self._shown: tuple[OwnRows, str] = (NONE, "")
        session.changed.connect(lambda _: self.follow())
        pane.table_asked.connect(self.ask_table)
        pane.pasted.connect(self.paste)
        pane.taken_out.connect(self.take_out)
        if session.has_bed:
            self.follow()

    def follow(self) -> None:
        """Show the materials of the design that is open, if they are others than before."""
        design = self.session.design
        now = (design.own, design.value("stock_grade"))
        if now == self._shown:
            return
        if design.own != self._shown[0]:
            self.choices.offer(design.own)
        self._shown = now
        self.pane.show_materials(*now)

    def ask_table(self) -> None:
        """Ask for a file with woods or sheets."""
        path = self.session.path
        start = str(path.parent if path else Path.home())
        dialog = QFileDialog(self.window, "Add woods or sheets from a table", start, TABLES)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(lambda name: self.add_table(Path(name)))
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.dialog = dialog
        dialog.open()

    def add_table(self, path: Path) -> None:
        """Add the rows of a file."""
        from model.designs import read_own

        self._add(lambda: read_own(path))

    def paste(self, text: str) -> None:
        """Add rows copied from a spreadsheet."""
        from model.materials.own_rows import rows_of_table

        if not text.strip():
            self.pane.say("There is no text on the clipboard to paste.", is_trouble=True)
            return
        self._add(lambda: rows_of_table(text, PASTED))

    def take_out(self, key: str) -> None:
        """Take a row out, unless something is made of it."""
        self._change(lambda own: own.without(key), f"{key} is taken out.")

    def _add(self, read: Callable[[], OwnRows]) -> None:
        try:
            rows = read()
        except BadInput as trouble:
            self.pane.say(f"Nothing is added. {trouble.sentence}", is_trouble=True)
            return
        names = ", ".join(row.name for row in (*rows.species, *rows.sheets))
        if self._change(lambda own: own.joined(rows), f"Added, and kept in this bed: {names}."):
            self.pane.choose(rows.keys[0])

    def _change(self, change: Callable[[OwnRows], OwnRows], said: str) -> bool:
        try:
            self.session.take_own(change(self.session.design.own))
        except BedError as trouble:
            self.pane.say(trouble.sentence, is_trouble=True)
            return False
        self.pane.say(said)
        return True
