"""What a new bed in mm starts from, where the usual choices are those of a shop in inches."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

# Paper and projection as where mm are read: ISO 216 and ISO 5456-2, from memory. Allowances, trims
# and kerf are what a maker in mm would say for the same: common practice, no source. Sizes of stock
# stay: what is sold differs from land to land.
IN_MM: Mapping[str, Any] = MappingProxyType(
    {
        "grid": "1 mm",
        "paper": "A4",
        "views_stand": "first angle",
        "rough_length_more": 25.0,
        "rough_width_more": 13.0,
        "board_end_trim": 25.0,
        "kerf": 3.2,
        "sheet_trim_long": 6.0,
        "sheet_trim_short": 6.0,
    }
)
