"""Why is this size what it is? Down to the maker's own choices, each a link to its field."""

from __future__ import annotations

import html
import re
from collections.abc import Callable, Iterable

from PySide6.QtCore import Qt, QUrl, Signal
from PySide6.QtGui import QTextOption
from PySide6.QtWidgets import QLabel, QTextBrowser, QVBoxLayout, QWidget

from app.style import FAINT, INK, SPRUCE

INDENT, DEEPEST = 11, 121  # pixels for each step down, and in all
EMPTY = (
    f'<p style="color:{FAINT}">Click a length, width or thickness in the parts list, a number on '
    "a section or on the bed, or a value in the list of checks; or a choice's name, to see what "
    "hangs on it.</p>"
)
_LINE = re.compile(r"(?P<margin> *)(?P<name>[\w.]+) = (?P<rest>.*)", re.DOTALL)


class WhyPane(QWidget):
    """Shows the chain of reasons of one dimension."""

    asked = Signal(str)  # a dimension named in the chain
    choice_shown = Signal(str)  # a choice named in the chain

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.name = ""
        self._heading = QLabel("Why this size", margin=6)
        self._heading.setProperty("kind", "title")
        self.text = QTextBrowser()
        self.text.setOpenLinks(False)
        self.text.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.text.setWordWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        self.text.anchorClicked.connect(self._follow)
        self.text.setHtml(EMPTY)
        self.text.setAccessibleName("Why this size")
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self._heading)
        whole.addWidget(self.text, 1)

    def tell(self, name: str, lines: Iterable[str], is_choice: Callable[[str], bool]) -> None:
        """The lines that the model says about one dimension."""
        same, place = name == self.name, self.text.verticalScrollBar().value()
        self.name = name
        self.text.setHtml("".join(_paragraph(line, is_choice) for line in lines))
        self.text.verticalScrollBar().setValue(place if same else 0)

    def clear(self) -> None:
        """Nothing is asked any more."""
        self.name = ""
        self.text.setHtml(EMPTY)

    def _follow(self, link: QUrl) -> None:
        kind, _, name = link.toString().partition(":")
        (self.choice_shown if kind == "choice" else self.asked).emit(name)


def _paragraph(line: str, is_choice: Callable[[str], bool]) -> str:
    """One line of a chain as a paragraph, its name a link."""
    depth = (len(line) - len(line.lstrip(" "))) / 4
    found = _LINE.fullmatch(line)
    if found is None:
        told = f'<span style="color:{FAINT}">{html.escape(line.strip())}</span>'
    else:
        name, rest = found["name"], found["rest"]
        value, mark, reason = rest.partition(". ")
        kind = "choice" if is_choice(name) else "dimension"
        shown = html.escape(name.replace("_", " ").replace(".", " · "))
        told = (
            f'<a href="{kind}:{html.escape(name)}" style="color:{SPRUCE}">{shown}</a> = '
            f'<b style="color:{INK}">{html.escape(value)}</b>{mark}{html.escape(reason)}'
        )
    return f'<p style="margin:2px 4px 2px {4 + min(round(depth * INDENT), DEEPEST)}px">{told}</p>'
