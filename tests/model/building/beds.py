"""The demos, solved once."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from model.bed import Bed, solve
from model.designs import read

FOLDER = Path(__file__).parents[3] / "resources" / "demos"
DEMOS = tuple(sorted(path.stem for path in FOLDER.glob("*.bedwright")))
QUEEN, GUEST = "painted_storage_queen", "guest_room_double"
LOFT, KING = "loft_single", "split_king_foot_drawers"


@cache
def demo(name: str) -> Bed:
    """A demo as it is shipped."""
    return solve(read(FOLDER / f"{name}.bedwright"))


def turned(name: str, **choices: Any) -> Bed:
    """A demo with some choices changed."""
    changes = {key.replace("__", "."): value for key, value in choices.items()}
    return solve(read(FOLDER / f"{name}.bedwright").with_choices(changes))
