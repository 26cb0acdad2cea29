"""Letters of a page in its own fonts, each where every other player sets it.

Set one by one: a screen's own words come out longer or shorter than those of a file. A raw font may
only be used by the thread that has made it, so each thread keeps its own.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

from PySide6.QtCore import QByteArray, QPointF, Qt
from PySide6.QtGui import QFont, QGlyphRun, QPainterPath, QRawFont, QTransform

from model.drawings.fonts import CAPITAL, Face, advances, face_file, runs
from model.drawings.letters import words_width
from model.drawings.paper import Text
from model.units import Mm, Share

LARGE = 100.0  # px of the letters that are kept: they are drawn smaller, and stay true
SHARES = {"left": 0.0, "middle": 0.5, "right": 1.0}
_KEPT = threading.local()


class Letter(NamedTuple):
    """One letter of a line and how far from its anchor it stands, mm."""

    face: Face
    letter: str
    x: Mm


def letters_of(text: Text) -> Iterator[Letter]:
    """Where each letter of a line stands."""
    size = size_of(text)
    x = -SHARES[text.anchor] * words_width(text.words, text.height, text.bold)
    for run in runs(text.words, text.bold):
        widths = advances(run.face)
        for letter in run.letters:
            yield Letter(run.face, letter, x)
            x += widths[letter] * size


def size_of(text: Text) -> Mm:
    """The size of its letters, of which a capital is a share."""
    return text.height / CAPITAL


def glyph_runs(text: Text) -> tuple[QGlyphRun, ...]:
    """A line in LARGE letters, y down, from its anchor: half-way up its capitals."""
    by_face: dict[Face, list[Letter]] = {}
    for each in letters_of(text):
        by_face.setdefault(each.face, []).append(each)
    share, baseline = LARGE / size_of(text), CAPITAL * LARGE / 2
    return tuple(_run(face, some, share, baseline) for face, some in by_face.items())


def _run(face: Face, some: list[Letter], share: Share, baseline: float) -> QGlyphRun:
    font = _raw(face)
    made = QGlyphRun()
    made.setRawFont(font)
    made.setGlyphIndexes(font.glyphIndexesForString("".join(each.letter for each in some)))
    made.setPositions([QPointF(each.x * share, baseline) for each in some])
    return made


def letters_path(text: Text) -> QPainterPath:
    """The outlines of a line in mm, y down, from its anchor; turned, where it is turned."""
    size = size_of(text)
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    placed = QTransform()
    if text.turned:
        placed.rotate(-90)
    for each in letters_of(text):
        there = QTransform(placed).translate(each.x, text.height / 2).scale(size, size)
        path.addPath(there.map(_outline(each.face, each.letter)))
    return path


def _outline(face: Face, letter: str) -> QPainterPath:
    """One letter, its size 1."""
    known: dict[tuple[Face, str], QPainterPath] = _KEPT.__dict__.setdefault("outlines", {})
    if (face, letter) not in known:
        font = _raw(face)
        large = font.pathForGlyph(font.glyphIndexesForString(letter)[0])
        known[face, letter] = QTransform.fromScale(1 / LARGE, 1 / LARGE).map(large)
    return known[face, letter]


def _raw(face: Face) -> QRawFont:
    known: dict[Face, QRawFont] = _KEPT.__dict__.setdefault("fonts", {})
    if face not in known:
        no_hinting = QFont.HintingPreference.PreferNoHinting
        known[face] = QRawFont(_file(face), LARGE, no_hinting)
    return known[face]


@cache
def _file(face: Face) -> QByteArray:
    return QByteArray(face_file(face))
