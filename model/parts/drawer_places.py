"""Where pieces stand that belong to the drawers of a row."""

from __future__ import annotations

from model.part import Place
from model.units import Count, Places


def of_drawers(*rows: Places, first: Count = 1) -> tuple[Place, ...]:
    """One piece at each place, shifted from the very first; each row has one piece for each drawer.

    `first` is the number of the first drawer, 0 for pieces that move with none.
    """
    start = rows[0][0]
    return tuple(
        Place(u=at - start, drawer=first + i if first else 0)
        for row in rows
        for i, at in enumerate(row)
    )


def standing(*rows: Places, planes: Places = (0.0,)) -> tuple[Place, ...]:
    """One piece at each place and plane, shifted from the first of both; none moves."""
    start = rows[0][0]
    return tuple(
        Place(u=at - start, v=plane - planes[0]) for plane in planes for row in rows for at in row
    )
