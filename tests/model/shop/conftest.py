"""Beds whose cut lists are looked at, each solved once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from model.bed import Bed, Design, solve
from model.brief.metric import IN_MM
from model.stock.rows import NO_STOCK, StockRows

# A bed with slab fronts of wood, half of which stand before fixed blocks: it has short parts,
# matched fronts, sheets, and a part that no board is wide enough for.
OAK: dict[str, Any] = {
    **IN_MM, "shown_unit": "mm", "front_style": "slab", "front_material": "white_oak",
    "frame_wood": "white_oak", "front_stock": 19.0, "frame_stock": 27.0,
}  # fmt: skip


@cache
def _solved(choices: tuple[tuple[str, Any], ...]) -> Bed:
    return solve(Design().with_choices(dict(choices)))


@pytest.fixture
def oak_bed() -> Callable[..., Bed]:
    """The bed with other choices and stock."""

    def made(stock: StockRows = NO_STOCK, **choices: Any) -> Bed:
        bed = _solved(tuple(sorted((OAK | choices).items())))
        return replace(bed, design=replace(bed.design, stock=stock))

    return made
