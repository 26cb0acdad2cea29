"""The scales that drawings are made to, the largest first."""

from __future__ import annotations

from collections.abc import Iterator

from model.units import Share

# 1 : n. Sources: ISO 5455 for mm (from memory); common on architects' scales for inches, from
# memory: 1 : 12 is an inch to the foot.
REDUCED: dict[str, tuple[int, ...]] = {
    "mm": (1, 2, 5, 10, 20, 50, 100),
    "inch": (1, 2, 4, 8, 12, 16, 24, 32, 48, 96),
}
ENLARGED = 2  # the only one that is larger than life


def scales(unit: str, largest: Share = 1.0) -> Iterator[Share]:
    """mm on paper to mm of wood, from the largest on."""
    if largest > 1:
        yield float(ENLARGED)
    for divisor in REDUCED[unit]:
        if 1 / divisor <= largest:
            yield 1 / divisor


def scale_words(scale: Share) -> str:
    """`1 : 10`, `2 : 1`."""
    return f"1 : {round(1 / scale)}" if scale <= 1 else f"{round(scale)} : 1"


def scale_of(words: str) -> Share:
    """What `scale_words` says, as a figure."""
    paper, wood = (int(part) for part in words.split(":"))
    return paper / wood
