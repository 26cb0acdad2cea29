"""The letters: every sign that the set prints, and names in other scripts."""

from __future__ import annotations

import io

import pytest
from fontTools.ttLib import TTFont

from model.drawings.fonts import CAPITAL, advances, as_set, face_file, runs, unprintable
from model.drawings.letters import words_width


@pytest.mark.parametrize("sign", "½¼¾⅛⅜⅝⅞⌀×°±–—·…“”’☐✓⚠→≤≥²³éßøłşİ")
@pytest.mark.parametrize("bold", [False, True])
def test_signs_of_a_plan_have_letters(sign: str, bold: bool) -> None:
    assert not unprintable(sign)
    assert "".join(run.letters for run in runs(sign, bold)) == sign


def test_a_letter_that_no_font_has_is_told_and_becomes_a_box() -> None:
    assert unprintable("床 oak 床") == "床"
    assert [run.letters for run in runs("a床b")] == ["a", "□", "b"]


def test_hebrew_stands_the_other_way_round() -> None:
    assert as_set("אב") == "בא"
    # A number after such words belongs to them (Unicode bidirectional algorithm, rules N0 to L2).
    assert as_set("bed אב 12") == "bed 12 בא"


def test_arabic_letters_are_joined() -> None:
    """Unicode, Arabic Presentation Forms-B: seen from the left, final, medial and initial form."""
    assert as_set("سرير") != "ريرس"
    assert not unprintable("سرير الأطفال")


def test_widths_are_those_of_the_font() -> None:
    """Read by fontTools from the file as it is embedded."""
    font = TTFont(io.BytesIO(face_file("regular")))
    units = sum(font["hmtx"].metrics[font.getBestCmap()[ord(each)]][0] for each in "Bed 12")
    assert words_width("Bed 12", 2.5) == pytest.approx(units / 1000 / CAPITAL * 2.5)
    assert font["OS/2"].sCapHeight == CAPITAL * 1000


def test_the_small_font_of_signs_is_always_the_same_file() -> None:
    again = face_file.__wrapped__("signs")  # type: ignore[attr-defined]
    assert again == face_file("signs")
    assert set(advances("signs")) == set("⌀☐✓⚠□")


def test_accents_written_apart_are_letters_of_one_piece() -> None:
    """Unicode, normalization form C."""
    assert runs("e\u0301te\u0301") == runs("été")


@pytest.mark.parametrize("hint", ["\u00ad", "\u2060", "\ufe0f"])
def test_hints_leave_no_ink(hint: str) -> None:
    assert runs(f"W{hint}ald") == runs("Wald")
    assert not unprintable(hint)


@pytest.mark.parametrize("space", ["\u2009", "\u202f", "\u3000", "\u00a0"])
def test_any_space_is_as_wide_as_the_plain_one(space: str) -> None:
    assert words_width(f"27{space}mm", 2.0) == words_width("27 mm", 2.0)
