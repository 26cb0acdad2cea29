"""Where the pieces of a part stand, written so that part functions need no arithmetic."""

from __future__ import annotations

from model.part import Place
from model.units import Places


def along_u(at: Places, *, drawer_from: int = 0) -> tuple[Place, ...]:
    """One piece at each of these places along the run, shifted from the first.

    With `drawer_from` the pieces belong to drawers counted from there.
    """
    return tuple(
        Place(u=x - at[0], drawer=drawer_from + i if drawer_from else 0) for i, x in enumerate(at)
    )


def along_v(at: Places) -> tuple[Place, ...]:
    """One piece at each of these places, going inwards, or along the bed in its own frame."""
    return tuple(Place(v=x - at[0]) for x in at)
