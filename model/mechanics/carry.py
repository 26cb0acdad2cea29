"""Whether a thing goes through a door, round a corner and up a stair.

Things are boxes: `sizes` (n, 3), mm, each row rising. Every answer is a `Passage` for each of them:
the size that decides in the best way of carrying it, and what the way leaves for that size.
"""

from __future__ import annotations

from itertools import permutations
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from model.units import Mm

Floats = npt.NDArray[np.float64]

_STEPS = 64
_THETA = np.linspace(0.0, np.pi / 2, _STEPS + 2)[1:-1]
_SINE, _COSINE = np.sin(_THETA), np.cos(_THETA)
# What stands by the widths before and after the corner, and by the thickness: (3, steps).
_TURNING = np.array([1 / _SINE, 1 / _COSINE, -1 / (_SINE * _COSINE)])
_WAYS = np.array(list(permutations(range(3))))  # which size lies along, which up, which across


class Passage(NamedTuple):
    """For each thing (n,): the `size` that decides, and the `limit` it must not exceed, mm."""

    size: Floats
    limit: Floats

    @property
    def room(self) -> Floats:
        """What is to spare: (n,), mm; below zero it does not pass."""
        return self.limit - self.size


def through_opening(low: Floats, high: Floats, width: Mm, height: Mm) -> Passage:
    """A face of `low` by `high` (n,) through an opening, upright, on its side or turned askew.

    Askew counts only where the face is longer than the opening's longer side.
    Source: W. B. Carver, solution of problem E 1225, American Mathematical Monthly 64 (1957); from
    memory
    """
    small, large = min(width, height), max(width, height)
    is_low = small - low <= large - high
    straight = Passage(np.where(is_low, low, high), np.where(is_low, small, large))
    square = low**2 + high**2
    reach = np.sqrt(np.maximum(square - large**2, 0.0))
    askew = (2 * low * high * large + (high**2 - low**2) * reach) / square
    turned = (high > large) & (low <= small) & (small - askew > straight.room)
    return Passage(np.where(turned, askew, straight.size), np.where(turned, small, straight.limit))


def through_door(sizes: Floats, width: Mm, height: Mm) -> Passage:
    """Lengthwise through a door of this clear width and height."""
    return through_opening(sizes[:, 0], sizes[:, 1], width, height)


def longest_round_corner(before: Mm, after: Mm, thick: Floats) -> Floats:
    """The longest thing of each thickness (n,) that is carried level round a square corner.

    L = min over theta of a / sin theta + b / cos theta - t / (sin theta cos theta): its outer face
    slides along both outer walls and clears the inner corner. Without thickness this is the ladder,
    (a^(2/3) + b^(2/3))^(3/2). What is thinner than both widths also goes round without turning,
    lengthwise before and sideways after, so that it may always be as long as the wider one.
    0 where it is thicker than a width.
    """
    widths = np.column_stack([np.full(len(thick), before), np.full(len(thick), after), thick])
    lengths = widths @ _TURNING
    # The least step and its neighbours lie on a parabola; its lowest point gives the angle.
    k = np.clip(lengths.argmin(axis=1), 1, _STEPS - 2)
    y0, y1, y2 = (lengths[np.arange(len(thick)), k + step] for step in (-1, 0, 1))
    bend = np.maximum(y0 - 2 * y1 + y2, 1e-12)
    theta = _THETA[k] + np.clip((y0 - y2) / (2 * bend), -1, 1) * (_THETA[1] - _THETA[0])
    sine, cosine = np.sin(theta), np.cos(theta)
    least = before / sine + after / cosine - thick / (sine * cosine)
    fits = thick <= min(before, after)
    return np.where(fits, np.maximum(least, max(before, after)), 0.0)


def tipped_length(length: Floats, height: Floats, ceiling: Mm) -> Floats:
    """How long a thing still is in plan when it is tipped up as far as the ceiling lets it.

    Tipped by alpha it is L sin alpha + H cos alpha high and L cos alpha + H sin alpha long. Where
    its diagonal is no longer than the ceiling is high it can be stood on end.
    """
    diagonal = np.hypot(length, height)
    lean = np.arcsin(np.minimum(ceiling / diagonal, 1.0)) - np.arctan2(height, length)
    tipped = diagonal * np.cos(lean - np.arctan2(height, length))
    found = np.where(lean > 0, np.minimum(length, tipped), length)
    return np.where(diagonal <= ceiling, np.minimum(length, height), found)


def round_corner(sizes: Floats, before: Mm, after: Mm, ceiling: Mm) -> Passage:
    """Round a square corner between two clear widths, in the best of six ways of carrying.

    Each size in turn lies along, up or across; the thing is carried level, or tipped up under the
    ceiling. It counts as the box round it, so that what is left out is to the good: a tipped thing
    is slimmer at its ends.
    """
    along, up, thick = (sizes[:, _WAYS[:, k]].ravel() for k in range(3))
    plan = tipped_length(along, up, ceiling)
    length, across = np.maximum(plan, thick), np.minimum(plan, thick)
    longest = longest_round_corner(before, after, across)
    narrow = min(before, after)
    size = np.where(across > narrow, across, length)
    limit = np.where(across > narrow, narrow, longest)
    size, limit = np.where(up > ceiling, up, size), np.where(up > ceiling, ceiling, limit)
    return _best(Passage(size, limit), len(sizes))


def up_stair(sizes: Floats, width: Mm, headroom: Mm, riser: Mm, tread: Mm) -> Passage:
    """Up a straight flight, lengthwise and along its slope.

    Headroom is measured upright over the nosings, so that square to the slope only headroom times
    tread / sqrt(riser^2 + tread^2) is left. Left out: the turn from floor to flight, above which
    there is more room as a rule.
    """
    square_to_slope = headroom * tread / np.hypot(riser, tread)
    return through_opening(sizes[:, 0], sizes[:, 1], width, float(square_to_slope))


def _best(ways: Passage, count: int) -> Passage:
    """For each thing the way of carrying that leaves the most room."""
    room = ways.room.reshape(count, -1)
    pick = room.argmax(axis=1) + np.arange(count) * room.shape[1]
    return Passage(ways.size[pick], ways.limit[pick])
