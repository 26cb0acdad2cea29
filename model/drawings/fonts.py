"""The letters of every drawing and page: one family, and a few signs that it lacks.

FiraGO has Latin, Greek, Cyrillic, Hebrew and Arabic letters with fractions; the diameter sign and
the boxes to tick come from Noto Sans Symbols. Both are under the SIL Open Font License, which
allows them in documents, and come with the package `pymupdf-fonts`.
"""

from __future__ import annotations

import io
import unicodedata
from collections.abc import Iterator, Mapping
from functools import cache, lru_cache
from itertools import groupby
from typing import Any, Literal, NamedTuple

import pymupdf_fonts
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

from model.units import Share

Face = Literal["regular", "bold", "signs"]

CAPITAL = 0.689  # height of a capital to the size of its letters (the font's own OS/2 table)
UNITS = 1000  # to the size of the letters, in all of these fonts
MISSING = "□"  # printed for a letter that no font has
SIGNS = {"symbol1": "⌀", "symbol2": "☐✓⚠□"}
HINTS = frozenset("\u00ad\u2060" + "".join(map(chr, range(0xFE00, 0xFE10))))
CURVE_ERROR = 0.5  # units by which a curve may be off when it is written in the other way

_FILES: dict[Face, str] = {"regular": "figo", "bold": "figbo"}


class Run(NamedTuple):
    """Letters that follow each other in one font."""

    face: Face
    letters: str


@cache
def face_file(face: Face) -> bytes:
    """The TrueType file of a face."""
    if face == "signs":
        return _signs()
    return bytes(pymupdf_fonts.fontbuffers[_FILES[face]]())


@cache
def _letters(face: Face) -> frozenset[str]:
    return frozenset(advances(face))


@cache
def advances(face: Face) -> Mapping[str, Share]:
    """How far each letter of a face takes the pen, in sizes of its letters."""
    with _opened(face_file(face)) as font:
        widths = font["hmtx"].metrics
        return {chr(code): widths[name][0] / UNITS for code, name in font.getBestCmap().items()}


@lru_cache(maxsize=16384)
def runs(words: str, bold: bool = False) -> tuple[Run, ...]:
    """Words as they are set from left to right, broken where the font changes.

    Right-to-left words are turned round and Arabic letters joined (Unicode bidirectional
    algorithm); a letter that no font has becomes an empty box.
    """
    own: Face = "bold" if bold else "regular"
    if words.isascii() and _letters(own).issuperset(words):
        return (Run(own, words),) if words else ()
    faced = ((_face(letter, bold), letter) for letter in as_set(words))
    known = ((face or "signs", letter if face else MISSING) for face, letter in faced)
    return tuple(
        Run(face, "".join(letter for _, letter in some))
        for face, some in groupby(known, key=lambda each: each[0])
    )


def unprintable(words: str) -> str:
    """The letters of these words that no font has, each once, in their order."""
    return "".join(dict.fromkeys(each for each in as_set(words) if _face(each, False) is None))


@cache
def as_set(words: str) -> str:
    """The letters of a line in the order in which they stand from left to right."""
    if words.isascii():
        return words
    words = _inked(words)
    if any(_is_arabic(letter) for letter in words):
        words = "".join(map(_plain_where_alone, _joiner().reshape(words)))
    if any("\u0590" <= letter <= "\u08ff" or letter >= "\ufb1d" for letter in words):
        from bidi import get_display

        return str(get_display(words))
    return words


def _inked(words: str) -> str:
    """Letters with their accents in one, any space as a plain one, and no hints that leave no ink:
    where a word may be broken, or which of two drawings of a sign is meant.
    """
    composed = unicodedata.normalize("NFC", words)
    spaced = (" " if unicodedata.category(each) == "Zs" else each for each in composed)
    return "".join(each for each in spaced if each not in HINTS)


def _plain_where_alone(letter: str) -> str:
    """The font has no second drawing of a letter that stands alone."""
    plain = unicodedata.normalize("NFKC", letter)
    is_twice = "\ufe70" <= letter <= "\ufeff" and letter not in advances("regular")
    return plain if is_twice and len(plain) == 1 else letter


def _is_arabic(letter: str) -> bool:
    return "\u0600" <= letter <= "\u06ff" or "\u0750" <= letter <= "\u077f"


@cache
def _joiner() -> Any:
    import arabic_reshaper

    return arabic_reshaper.ArabicReshaper({"delete_harakat": False})


def _face(letter: str, bold: bool) -> Face | None:
    for face in ("bold" if bold else "regular", "regular", "signs"):
        if letter in advances(face):
            return face
    return None


def _opened(file: bytes) -> TTFont:
    return TTFont(io.BytesIO(file), lazy=True)


def _signs() -> bytes:
    """A small font of signs: their outlines written as TrueType has them, so that any player takes
    them. Built anew each time from the same outlines, it is always the same file.
    """
    glyphs, widths, letters = {}, {}, {}
    for name, letter, glyph, width in _sign_outlines():
        glyphs[name], widths[name], letters[ord(letter)] = glyph, (width, 0), name
    names = [".notdef", *widths]
    blank = TTGlyphPen(None).glyph()
    built = FontBuilder(UNITS, isTTF=True)
    built.setupGlyphOrder(names)
    built.setupCharacterMap(letters)
    built.setupGlyf({".notdef": blank, **glyphs})
    built.setupHorizontalMetrics({".notdef": (UNITS // 2, 0), **widths})
    built.setupHorizontalHeader(ascent=935, descent=-265)
    built.setupNameTable({"familyName": "Bedwright Signs", "styleName": "Regular"})
    built.setupOS2(sTypoAscender=935, sTypoDescender=-265, sCapHeight=round(CAPITAL * UNITS))
    built.setupPost()
    built.setupHead(unitsPerEm=UNITS, created=0, modified=0)
    return _saved(built.font)


def _saved(font: TTFont) -> bytes:
    font.recalcTimestamp = False
    file = io.BytesIO()
    font.save(file)
    return file.getvalue()


def _sign_outlines() -> Iterator[tuple[str, str, Any, int]]:
    for source, letters in SIGNS.items():
        with _opened(bytes(pymupdf_fonts.fontbuffers[source]())) as font:
            cmap, outlines, widths = font.getBestCmap(), font.getGlyphSet(), font["hmtx"].metrics
            for letter in letters:
                name = cmap[ord(letter)]
                pen = TTGlyphPen(None)
                outlines[name].draw(Cu2QuPen(pen, CURVE_ERROR, reverse_direction=True))
                yield f"uni{ord(letter):04X}", letter, pen.glyph(), widths[name][0]
