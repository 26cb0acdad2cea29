"""Where the mark of each kind of piece may stand on it in a view: on wood that nothing hides."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from model.bed import Bed
from model.drawings.letters import words_width
from model.drawings.measures import inked
from model.drawings.paper import Item, Stroke, Text
from model.drawings.views.view import View
from model.part import Point
from model.parts.pieces import Bools, Floats
from model.units import Mm, Share

HEIGHT: Mm = 1.9  # of its capitals
AIR: Mm = 0.6  # around it
TOUCH: Mm = 1e-3
_ALONG: tuple[Share, ...] = (0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9)  # of a piece's outline
_SHARES = np.array([(across, up) for across in _ALONG for up in _ALONG])

Edges = tuple[Floats, Floats]  # lower left and upper right corners around them, (n, 2) each


class Marks(NamedTuple):
    """The marks of a view's pieces, "" where one has none, and boxes around these: right, up, and
    how near they are to the eye, (n, 3), mm of wood.
    """

    marks: tuple[str, ...]
    low: Floats
    high: Floats

    def places(self, row: int) -> Floats:
        """Places on a piece before which no box of another lies, the best first: (n, 2)."""
        ends = np.stack([self.low[row, :2], self.high[row, :2]])
        at = ends[0] + _SHARES * (ends[1] - ends[0])
        nearer = self.high[:, 2] > self.high[row, 2] + TOUCH
        low, high = self.low[nearer, None, :2], self.high[nearer, None, :2]
        hidden = ((low <= at) & (at <= high)).all(axis=2).any(axis=0)
        return np.asarray(at[~hidden])


def marks_of(bed: Bed, view: View, pieces: Sequence[int], through: Point | None = None) -> Marks:
    """Of a view square to the bed; `pieces` are those of its scene. Of a bed that is cut open by a
    plane `through` a point what lies behind it is named: cut wood is hatched.
    """
    named = {piece: mark.mark for mark in bed.marks for piece in mark.pieces}
    one, other = (view.gaze.placed(bound[list(pieces)]) for bound in bed.pieces.bounds)
    low, high = np.minimum(one, other), np.maximum(one, other)
    marks = [named.get(piece, "") for piece in pieces]
    if through is not None:
        plane = float(view.gaze.placed(np.array(through))[2])
        behind = high[:, 2] <= plane
        marks = [mark if is_behind else "" for mark, is_behind in zip(marks, behind, strict=True)]
        high[:, 2] = np.where(low[:, 2] < plane, np.minimum(high[:, 2], plane), -np.inf)
    return Marks(tuple(marks), low, high)


def mark_words(
    view: View, marks: Marks, scale: Share, there: Iterable[Item] = ()
) -> Iterator[Text]:
    """One word for each mark that has room between the edges that are seen and the lines that are
    `there`, level or turned.
    """
    lines = [pair for item in inked(there) if isinstance(item, Stroke)
             for pair in pairwise(item.points)]  # fmt: skip
    cut = [np.stack([loop, np.roll(loop, -1, axis=0)], axis=1) * scale
           for face in view.sections for loop in (face.outline, *face.holes)]  # fmt: skip
    ends = np.concatenate([view.visible * scale, np.array(lines).reshape(-1, 2, 2), *cut])
    edges = ends.min(axis=1), ends.max(axis=1)
    done = {""}
    for row, mark in enumerate(marks.marks):
        if mark not in done:
            word = _word(mark, marks.places(row) * scale, edges)
            if word is not None:
                done.add(mark)
                yield word


def _word(mark: str, places: Floats, edges: Edges) -> Text | None:
    """The mark at the first place that no edge runs into, level or turned."""
    long, high = words_width(mark, HEIGHT, bold=True) / 2 + AIR, HEIGHT / 2 + AIR
    clear = np.stack(
        [_are_clear(places, (long, high), edges), _are_clear(places, (high, long), edges)]
    )
    at = int(clear.any(axis=0).argmax()) if clear.any() else -1
    if at < 0:
        return None
    x, y = places[at].tolist()
    return Text((x, y), mark, HEIGHT, turned=not clear[0, at], bold=True)


def _are_clear(places: Floats, half: tuple[Mm, Mm], edges: Edges) -> Bools:
    """Around which places (n, 2) no edge runs into a box; near it counts where it runs aslant."""
    low, high = edges
    start, end = places[:, None] - half, places[:, None] + half
    meets = np.asarray(np.logical_and(low <= end, start <= high).all(axis=2))
    return ~np.asarray(meets.any(axis=1))
