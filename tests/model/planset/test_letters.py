"""Lines broken where they are full."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.drawings.letters import words_width
from model.planset.letters import BODY, HEADING, SMALL, leading, wrapped

ROOM = 1e-6
# Latin with accents, Greek, Hebrew, Chinese, figures, signs and hints where a word may be broken.
LETTERS = st.characters(
    codec="utf-8", categories=("L", "N", "P", "S", "Zs"), max_codepoint=0x4FFF,
    exclude_characters="\u2028\u2029",
)  # fmt: skip


@given(st.text(LETTERS, max_size=120), st.floats(12, 150), st.sampled_from((SMALL, BODY, HEADING)))
def test_no_line_is_wider_than_its_room(words: str, width: float, height: float) -> None:
    for each in wrapped(words, width, height):
        assert words_width(each, height) <= width + ROOM or len(each) == 1


@given(st.text(LETTERS, max_size=120), st.floats(12, 150))
def test_every_letter_is_kept_in_its_order(words: str, width: float) -> None:
    told = "".join(wrapped(words, width, BODY))

    assert "".join(told.split()) == "".join(words.split())


@given(st.lists(st.text("abcdefgh", min_size=1, max_size=9), max_size=30), st.floats(40, 150))
def test_words_that_have_room_are_not_broken(words: list[str], width: float) -> None:
    told = " ".join(wrapped(" ".join(words), width, BODY)).split()

    assert told == words


@given(st.lists(st.text("abcdefgh", min_size=1, max_size=9), max_size=30), st.floats(40, 150))
def test_a_line_is_broken_only_where_the_next_word_has_no_room(
    words: list[str], width: float
) -> None:
    lines = wrapped(" ".join(words), width, BODY)
    for one, after in zip(lines, lines[1:], strict=False):
        assert words_width(f"{one} {after.split()[0]}", BODY) > width - ROOM


@pytest.mark.parametrize("width", [18.0, 20.0, 22.0, 24.0, 26.0, 28.0])
def test_a_whole_number_stays_with_its_fraction(width: float) -> None:
    for each in wrapped('rail 27 3/8" long, 3 1/2" wide', width, BODY):
        assert not each.endswith(("27", " 3", ", 3")) and each != "3"


def test_a_word_longer_than_a_line_is_broken_within() -> None:
    lines = wrapped("W" * 120, 60.0, BODY)

    assert len(lines) > 2 and "".join(lines) == "W" * 120


def test_lines_are_apart_by_more_than_their_letters() -> None:
    """1.2 to 1.45 times the size of the letters is usual for running text (common practice, no
    source).
    """
    assert 1.2 <= leading(BODY) * 0.689 / BODY <= 1.45


@given(st.lists(st.text("abcdefgh", min_size=1, max_size=6), min_size=4, max_size=12))
def test_a_line_takes_what_just_fits_and_no_more(words: list[str]) -> None:
    first = " ".join(words[:3])
    long = words_width(first, BODY)

    assert wrapped(" ".join(words), long, BODY)[0] == first
    assert len(wrapped(" ".join(words), long - 0.01, BODY)[0]) < len(first)
