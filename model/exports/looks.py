"""How the shapes of a model file look: plain tones of wood, board and metal, one for all files."""

from __future__ import annotations

from typing import NamedTuple

from model.exports.scene import Shape

_SOLID, _SHEET = (0.55, 0.36, 0.19), (0.66, 0.5, 0.31)


class Look(NamedTuple):
    """How a surface looks: red, green, blue from 0 to 1 (linear), and whether it is metal."""

    name: str
    colour: tuple[float, float, float]
    is_metal: bool = False

    @property
    def on_screen(self) -> tuple[float, float, float]:
        """The colour as screens count, 0 to 1. Source: IEC 61966-2-1, from memory."""
        red, green, blue = (_as_srgb(each) for each in self.colour)
        return red, green, blue


METAL = Look("metal", (0.42, 0.43, 0.45), is_metal=True)
TICKING = Look("mattress", (0.82, 0.81, 0.78))


def look(shape: Shape) -> Look:
    """The look of a shape, named after its material."""
    if shape.material is None:
        return METAL
    return Look(shape.material.name, _SOLID if shape.material.kind == "solid" else _SHEET)


def _as_srgb(light: float) -> float:
    return 12.92 * light if light <= 0.0031308 else float(1.055 * light ** (1 / 2.4) - 0.055)
