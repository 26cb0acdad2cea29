"""Who publishes the plan set: the shop's name, a line below it, and a logo from a picture file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from model.errors import BadInput
from model.exports.files import told_in_a_sentence
from model.publisher import LARGEST_FILE, LONGEST_LINE, Publisher, checked_line

LOGO_WIDE, LOGO_HIGH = 230, 90  # px: the proportions of its room on the cover
ABOUT = "They stand on the cover and at the foot of every page, and are kept with the design."
NO_LOGO = "no logo"


class PublisherDialog(QDialog):
    """Says whom the maker wants named; a picture that cannot be read is told of, and not taken."""

    given = Signal(object)  # Publisher

    def __init__(self, publisher: Publisher, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Shop's name and logo")
        self.publisher = publisher
        self.name, self.line = QLineEdit(publisher.name), QLineEdit(publisher.line)
        for edit in (self.name, self.line):
            edit.setMaxLength(LONGEST_LINE)
            edit.textChanged.connect(lambda _: self._tell_letters())
        self.logo = QLabel(alignment=Qt.AlignmentFlag.AlignCenter)
        self.logo.setFixedSize(LOGO_WIDE, LOGO_HIGH)
        self.logo.setStyleSheet("background: white; border: 1px solid #d5d0c5;")
        self.logo.setAccessibleName("Logo")
        self.choose_button = QPushButton("Choose a picture …")
        self.without_button = QPushButton("Without logo")
        self.trouble = QLabel(wordWrap=True, visible=False)
        self.trouble.setProperty("kind", "refusal")
        self.buttons = QDialogButtonBox(
            QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel
        )
        self._lay_out()
        self._show_logo()
        self._tell_letters()
        self.choose_button.clicked.connect(self._choose)
        self.without_button.clicked.connect(self._drop_logo)
        self.buttons.accepted.connect(self._give)
        self.buttons.rejected.connect(self.reject)

    def _lay_out(self) -> None:
        about = QLabel(ABOUT, wordWrap=True)
        about.setProperty("kind", "faint")
        tools = QVBoxLayout()
        for button in (self.choose_button, self.without_button):
            tools.addWidget(button)
        tools.addStretch(1)
        picture = QHBoxLayout()
        picture.addWidget(self.logo)
        picture.addLayout(tools)
        form = QFormLayout()
        form.addRow("Shop's &name", self.name)
        form.addRow("&Line below it", self.line)
        form.addRow("Logo", picture)
        whole = QVBoxLayout(self)
        whole.addWidget(about)
        whole.addLayout(form)
        whole.addWidget(self.trouble)
        whole.addWidget(self.buttons)

    # ------------------------------------------------------------ the logo

    def take_logo(self, path: Path) -> None:
        """Show the picture in a file as the logo; what is wrong with it is said."""
        try:
            with told_in_a_sentence(f"{path.name} was not read", "logo"), path.open("rb") as file:
                content = file.read(LARGEST_FILE + 1)
            self.publisher = self.publisher.with_logo(content)
        except BadInput as trouble:
            self._say(trouble.sentence)
            return
        self._say("")
        self._show_logo()

    def _choose(self) -> None:
        kinds = "Pictures (*.png *.jpg *.jpeg *.webp *.gif *.bmp);;All files (*)"
        dialog = QFileDialog(self, "The logo", str(Path.home()), kinds)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(lambda name: self.take_logo(Path(name)))
        dialog.open()

    def _drop_logo(self) -> None:
        self.publisher = replace(self.publisher, logo=b"")
        self._say("")
        self._show_logo()

    def _show_logo(self) -> None:
        self.without_button.setEnabled(bool(self.publisher.logo))
        if not self.publisher.logo:
            self.logo.setText(NO_LOGO)
            return
        picture = QPixmap()
        picture.loadFromData(self.publisher.logo)
        smooth = Qt.TransformationMode.SmoothTransformation
        ratio = Qt.AspectRatioMode.KeepAspectRatio
        self.logo.setPixmap(picture.scaled(LOGO_WIDE - 8, LOGO_HIGH - 8, ratio, smooth))

    # ------------------------------------------------------------ the words

    def _tell_letters(self) -> None:
        """Letters that no page can show are told of while they are typed."""
        from model.planset.unprinted import unprinted_letters

        self._say(unprinted_letters(f"{self.name.text()} {self.line.text()}"))

    def _give(self) -> None:
        try:
            given = replace(
                self.publisher,
                name=checked_line(self.name.text(), "shop's name"),
                line=checked_line(self.line.text(), "line below the shop's name"),
            )
        except BadInput as trouble:
            self._say(trouble.sentence)
            return
        self.given.emit(given)
        self.accept()

    def _say(self, sentence: str) -> None:
        self.trouble.setText(sentence)
        self.trouble.setVisible(bool(sentence))
