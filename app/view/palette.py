"""Colours of the view: bare woods as they look planed, a painted frame, one accent."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from model.materials import colour

Rgb = tuple[float, float, float]


def rgb(code: str) -> Rgb:
    """A colour from its six hexadecimal digits."""
    red, green, blue = (int(code[i : i + 2], 16) / 255 for i in (0, 2, 4))
    return (red, green, blue)


class Backdrop(NamedTuple):
    """From the top of the picture to its foot."""

    top: Rgb = rgb("E3E9EA")
    foot: Rgb = rgb("F8F6F1")


STEEL = rgb("8F979C")
PAINT = rgb("FAF7EF")
BEDDING = rgb("F7F7F6")
PIPING = rgb("B4BABD")
ACCENT = rgb("1F7F8C")
MARKED = rgb("45A5B1")
HOVER = rgb("7FB4BA")
INK = rgb("2F3B40")

UNKNOWN_ASSEMBLY = "D9C4A0"
ASSEMBLIES = {
    "headboard": "B9A48C",
    "footboard": "C6A98A",
    "left side": "A9B29B",
    "right side": "B4B9A0",
    "deck": "DDCDA6",
    "drawers": "E0D3BA",
    "fronts": "A7B4BA",
    "under the bed": "A99F93",
}
PAINTED = {"headboard", "footboard", "left side", "right side", "fronts"}
COLOUR_BY = ("wood", "paint", "assembly")


def wood_colour(material: str) -> Rgb:
    """The planed, unfinished look of a material."""
    return rgb(colour.wood_colour(material))


@lru_cache(maxsize=1024)
def piece_colour(material: str, assembly: str, is_hardware: bool, colour_by: str) -> Rgb:
    """What a piece is drawn in: its wood, its paint, or the tone of its assembly."""
    if is_hardware:
        return STEEL
    if colour_by == "assembly":
        return rgb(ASSEMBLIES.get(assembly, UNKNOWN_ASSEMBLY))
    if colour_by == "paint" and assembly in PAINTED:
        return PAINT
    return wood_colour(material)


def toned(colours: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    """(n, 3): neighbours a little lighter or darker, as boards are, and the same every time."""
    steps = (np.arange(len(colours)) * 0.618034) % 1.0 - 0.5
    return np.clip(colours * (1 + 0.05 * steps[:, None]), 0, 1)
