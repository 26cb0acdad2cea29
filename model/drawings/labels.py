"""Words that name a piece, in the largest and fullest way that its place on paper has room for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.letters import words_width
from model.drawings.paper import Text, is_free
from model.units import Mm

HEIGHTS: tuple[Mm, ...] = (2.5, 1.8)  # of capitals. Source: ISO 3098, from memory
EDGE: Mm = 0.5  # kept free inside the outline
LINE = 1.7  # from line to line, in heights
TRIED = (0.5, 0.3, 0.7, 0.12, 0.88, 0.0, 1.0)  # where in the room left over a label is tried


class Label(NamedTuple):
    """A block of lines and where it stands."""

    lines: tuple[str, ...]
    height: Mm
    turned: bool
    box: Box

    def texts(self, about: str) -> Iterator[Text]:
        """Its lines, from the first to the last."""
        step = LINE * self.height
        x, y = (self.box.x0 + self.box.x1) / 2, (self.box.y0 + self.box.y1) / 2
        for place, words in enumerate(self.lines):
            down = (place - (len(self.lines) - 1) / 2) * step
            at = (x + down, y) if self.turned else (x, y - down)
            yield Text(at, words, self.height, turned=self.turned, about=about)


def label_in(
    room: Box, ways: Sequence[Sequence[tuple[str, ...]]], taken: Sequence[Box]
) -> Label | None:
    """The first way of saying it that fits clear of what is taken.

    `ways` are groups: the first group is tried in large letters and then in small ones before the
    next group is. Words stand level where they can, else turned; None where nothing has room.
    """
    near = [box for box in taken if not is_free(room, (box,))]
    for group in ways:
        for height, lines, turned in product(HEIGHTS, group, (False, True)):
            found = _placed(room, lines, height, turned, near)
            if found is not None:
                return found
    return None


def _placed(
    room: Box, lines: tuple[str, ...], height: Mm, turned: bool, taken: Sequence[Box]
) -> Label | None:
    long = max(words_width(words, height) for words in lines)
    high = (LINE * (len(lines) - 1) + 1.4) * height
    across, up = (high, long) if turned else (long, high)
    spare_x = room.x1 - room.x0 - 2 * EDGE - across
    spare_y = room.y1 - room.y0 - 2 * EDGE - up
    if spare_x < 0 or spare_y < 0:
        return None
    for share_y, share_x in product(TRIED, TRIED):
        x, y = room.x0 + EDGE + share_x * spare_x, room.y0 + EDGE + share_y * spare_y
        box = Box(x, y, x + across, y + up)
        if is_free(box, taken):
            return Label(lines, height, turned, box)
    return None
