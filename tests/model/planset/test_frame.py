"""What stands around every page, whatever its title, its number and the shop's name."""

from __future__ import annotations

import pytest

from model.cutting.record import Box
from model.drawings.letters import text_box, words_width
from model.drawings.paper import Ring, Stroke, Text
from model.planset.frame import Around, framed, projection_sign, shortened
from model.planset.letters import SMALL
from model.planset.page import A4, LETTER, Page
from model.planset.sheet import FOOT, HEAD, MARGIN, Content, Sheet

LONG = "Wide and Wonderful Workshop of Wagons, Wardrobes and Wide Beds " * 2


def page(
    title: str = "Parts list", at: int = 0, many: int = 1, scale: str = "", shop: str = ""
) -> Page:
    sheets = [Sheet("parts", title, lambda room: Content((), scale=scale))] * many
    return framed(sheets, at, A4, Around("Guest bed", shop, "sizes in inches"))


def texts(one: Page) -> dict[str, Text]:
    return {item.words: item for item in one.drawing.items if isinstance(item, Text)}


@pytest.mark.parametrize("title", ["Parts list", LONG, "W" * 120])
def test_a_title_stays_between_the_margins(title: str) -> None:
    box = text_box(next(iter(texts(page(title)).values())))

    assert box.x0 >= MARGIN - 1e-6 and box.x1 <= A4.width - MARGIN + 1e-6


@pytest.mark.parametrize(
    "shop",
    ["", "The Bed Shop", LONG[:120], "W" * 120, "נגריית שני הנהרות", "سرير الأطفال", "床" * 120,
     "a\u00a0b\u00a0" * 30],
)  # fmt: skip
@pytest.mark.parametrize("many", [1, 9, 99, 999])
def test_no_words_at_the_foot_lie_on_others(shop: str, many: int) -> None:
    one = page(many=many, at=many - 1, scale="1 : 10, 1 : 5", shop=shop)
    low = [text_box(text) for text in texts(one).values() if text.at[1] < MARGIN + FOOT]
    across = sorted((box.x0, box.x1) for box in low)

    assert len(across) == 3
    assert all(end <= start for (_, end), (start, _) in zip(across, across[1:], strict=False))
    assert across[0][0] >= MARGIN - 1e-6 and across[-1][1] <= A4.width - MARGIN + 1e-6


def test_only_the_number_differs_from_page_to_page() -> None:
    """Long before the list of pages is known, a page can be shown as it will be."""
    ones, others = (texts(page(at=at, many=many)) for at, many in ((0, 9), (110, 120)))

    assert set(ones) - set(others) == {"1 / 9"}
    assert all(text == others[words] for words, text in ones.items() if words in others)


def test_drawings_get_the_room_within() -> None:
    found: list[Box] = []

    def draw(room: Box) -> Content:
        found.append(room)
        return Content(())

    for bare in (False, True):
        framed([Sheet("a", "A", draw, is_bare=bare)], 0, LETTER, Around("", "", ""))
    inner, whole = found

    assert whole == Box(MARGIN, MARGIN, LETTER.width - MARGIN, LETTER.height - MARGIN)
    assert (whole.y1 - inner.y1, inner.y0 - whole.y0) == (HEAD, FOOT)


def test_a_bare_page_has_nothing_around_it() -> None:
    bare = Sheet("cover", "Cover", lambda room: Content(()), is_bare=True)

    assert framed([bare], 0, A4, Around("a", "b", "c")).drawing.items == ()


@pytest.mark.parametrize("is_first", [True, False])
def test_the_sign_of_projection_is_that_of_the_standard(is_first: bool) -> None:
    """The cone's small end looks to its end view in third angle, away from it in first (ISO 5456-2,
    from memory).
    """
    items = list(projection_sign((0.0, 0.0), is_first))
    rings = {item.at[0] for item in items if isinstance(item, Ring)}
    (cone,) = (item for item in items if isinstance(item, Stroke) and len(item.points) == 5)
    small = min(x for x, y in cone.points if abs(y) == min(abs(y) for _, y in cone.points))
    large = min(x for x, y in cone.points if abs(y) == max(abs(y) for _, y in cone.points))

    (ring,) = rings
    assert (abs(small - ring) < abs(large - ring)) == (not is_first)


@pytest.mark.parametrize("words", ["", "oak", LONG, "W" * 200, "床" * 90, "שלום " * 30])
@pytest.mark.parametrize("room", [2.0, 20.0, 90.0])
def test_shortened_words_have_room_and_say_that_there_is_more(words: str, room: float) -> None:
    told = shortened(words, room, SMALL)

    assert words_width(told, SMALL) <= room or told == "…"
    assert told == words or (told.endswith("…") and words.startswith(told[:-1]))
