"""Places along a run, moved together."""

from __future__ import annotations

from model.units import Mm, Places


def shifted(places: Places, by: Mm) -> Places:
    """The same places, each moved by `by` along the run."""
    return tuple(float(at + by) for at in places)
