"""A drawing on the screen: words in the room that was kept for them, lights where they belong."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QFontMetricsF, QImage, QPainter
from pytestqt.qtbot import QtBot

from app.view.drawing_letters import LARGE, drawing_letters
from app.view.drawing_player import Light, Screen, play, prepared
from model.cutting.record import Box
from model.drawings.cut_layout import cut_layout
from model.drawings.cut_sheet import Room
from model.drawings.cut_told import Shown
from model.drawings.fonts import CAPITAL
from model.drawings.letters import text_box, words_width
from model.drawings.paper import Drawing, Text
from tests.model.drawings.sample_layout import sheet, small_sheet

SCALE = 4.0  # px to a mm


def painted(drawing: Drawing, lights: dict[str, Light] | None = None) -> np.ndarray:
    """(rows, columns, 3) of the picture."""
    size = (round(drawing.width * SCALE), round(drawing.height * SCALE))
    picture = QImage(*size, QImage.Format.Format_RGB32)
    picture.fill("white")
    painter = QPainter(picture)
    screen = Screen(QPointF(0, 0), SCALE, drawing.height)
    play(painter, prepared(drawing), screen, lights or {})
    painter.end()
    pixels = np.frombuffer(picture.constBits(), np.uint8).reshape(size[1], size[0], 4)
    return pixels[:, :, 2::-1].copy()


def pixels_of(picture: np.ndarray, drawing: Drawing, box: Box) -> np.ndarray:
    rows = slice(round((drawing.height - box.y1) * SCALE), round((drawing.height - box.y0) * SCALE))
    return picture[rows, round(box.x0 * SCALE) : round(box.x1 * SCALE)]


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("words", ["B1-3 box side", "27 3/8 × 11 13/16", "WWWWWWWW", "iiiiiiii"])
def test_words_stay_in_the_room_that_was_kept_for_them(
    qtbot: QtBot, words: str, bold: bool, turned: bool
) -> None:
    text = Text((40.0, 40.0), words, 2.5, turned=turned, bold=bold)
    drawing = Drawing(width=80.0, height=80.0, scale=1.0, items=(text,))

    picture = painted(drawing)

    inked = np.argwhere((picture < 128).all(axis=2))
    assert len(inked) > 20
    box = text_box(text)
    low, high = inked.min(axis=0) / SCALE, inked.max(axis=0) / SCALE
    assert box.x0 - 0.5 <= low[1] and high[1] <= box.x1 + 0.5
    assert box.y0 - 0.5 <= 80.0 - high[0] and 80.0 - low[0] <= box.y1 + 0.5


@pytest.mark.parametrize(
    "words", ["B1-3 box side", "695.3 × 120", "offcut", "centre beam leg", "⌀ 5 ☐"]
)
def test_the_room_is_what_the_letters_take_on_the_screen(qtbot: QtBot, words: str) -> None:
    """Widths are reckoned from the font's file; the screen sets the same letters."""
    real = QFontMetricsF(drawing_letters(False)).horizontalAdvance(words) / (CAPITAL * LARGE)

    assert words_width(words, 1.0) == pytest.approx(real, rel=0.005)


def test_a_light_colours_its_own_place_and_no_other(qtbot: QtBot) -> None:
    drawing = cut_layout(small_sheet(), Room(160.0, 100.0), Shown())
    boxes = {each.about: each.box for each in drawing.areas()}

    plain = painted(drawing)
    lit = painted(drawing, {"piece/B1-2": Light(ground="#00ff00")})

    moved = (plain != lit).any(axis=2)
    assert pixels_of(moved, drawing, boxes["piece/B1-2"]).mean() > 0.5
    assert pixels_of(moved, drawing, boxes["piece/B1-1"])[:, 8:-8].mean() == 0.0


def test_the_next_cut_is_wider_and_in_its_own_colour(qtbot: QtBot) -> None:
    drawing = cut_layout(small_sheet(), Room(160.0, 100.0), Shown())

    lit = painted(drawing, {"cut/4": Light("#ff0000", "#ff0000", 3.0, "#ffffff")})

    red = (lit[:, :, 0] > 200) & (lit[:, :, 1] < 60) & (lit[:, :, 2] < 60)
    assert red.any(axis=0).sum() > 3 and red.any(axis=1).sum() > 20
    ring = next(each.box for each in drawing.areas() if each.about == "cut/4")
    assert (pixels_of(lit, drawing, ring) > 230).all(axis=2).any()  # white figures in it


def test_a_crowded_sheet_is_painted_whole(qtbot: QtBot) -> None:
    picture = painted(cut_layout(sheet(), Room(277.0, 170.0), Shown(title="Sheet 1")))

    dark = (picture < 100).all(axis=2)
    assert dark.any(axis=0).mean() > 0.8 and dark.any(axis=1).mean() > 0.6
