"""The letters of drawings on the screen: the same as in every file, whatever the system has."""

from __future__ import annotations

from functools import cache

from PySide6.QtCore import QByteArray
from PySide6.QtGui import QFont, QFontDatabase

from model.drawings.fonts import Face, face_file

FACES: tuple[Face, ...] = ("regular", "bold", "signs")
LARGE = 100  # px of the letters that widths are measured with


def drawing_letters(bold: bool) -> QFont:
    """A font in which words are set large, to be made smaller: then widths are true at any size."""
    font = QFont()
    font.setFamilies(list(_families()))
    font.setPixelSize(LARGE)
    font.setBold(bold)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    font.setKerning(False)  # letters one by one, as widths are reckoned and as they are printed
    for joined in ("liga", "calt", "dlig"):
        font.setFeature(QFont.Tag(joined), 0)
    return font


@cache
def _families() -> tuple[str, ...]:
    """What Qt calls them; each once."""
    numbers = [
        QFontDatabase.addApplicationFontFromData(QByteArray(face_file(face))) for face in FACES
    ]
    return tuple(
        dict.fromkeys(
            family for number in numbers for family in QFontDatabase.applicationFontFamilies(number)
        )
    )
